package estimate

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

const day = 86400.0

// twoYards is worked by hand: at 12 000 lb and 1 000 h, A is 900 000 + 216 000 + 390 000 + 85 000 and B 760 000 + 384 000 + 480 000 + 110 000; their
// difference at no steel is 25 000 and in the rate 14, so they cost the same at 1 785.71 lb.
func twoYards() BidsIn {
	in := Bids.New()
	in.Bids = []Bid{
		{Yard: "A", Lumps: []BidLump{{"dock and works", new(900e3)}}, Rates: []BidRate{{Item: "steel", Rate: new(18.0)}, {Item: "growth hours", Rate: new(85.0)}}, DayRate: new(6500.0), Days: new(60 * day)},
		{Yard: "B", Lumps: []BidLump{{"dock and works", new(760e3)}}, Rates: []BidRate{{Item: "steel", Rate: new(32.0)}, {Item: "growth hours", Rate: new(110.0)}}, DayRate: new(8000.0), Days: new(60 * day)},
	}
	in.Quantities = []BidQuantity{{Item: "steel", Likely: 12000}, {Item: "growth hours", Likely: 1000}}
	return in
}

// Computed by hand.
func TestBidsByHand(t *testing.T) {
	out, err := Bids.Fn(twoYards())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "A", out.Evaluated[0].Likely, 1591000, 1e-6)
	near(t, "B", out.Evaluated[1].Likely, 1734000, 1e-6)
	near(t, "A, middle", out.Evaluated[0].P50, 1591000, 1e-6)
	be := out.BreakEven[0]
	near(t, "break even", be.Quantity, 1785.71, 0.005)
	if be.Below != "B" || be.Above != "A" || len(out.BreakEven) != 1 {
		t.Errorf("%+v", out.BreakEven)
	}
	if out.Lowest[0].Share != 1 || len(out.Warnings) != 0 {
		t.Errorf("%v %v", out.Lowest, out.Warnings)
	}
}

// Computed: quantity 1 000 at 210.00 is 210 000, not the 2 100 written.
func TestBidsUnitPriceGoverns(t *testing.T) {
	in := twoYards()
	in.Bids[1].Rates[0] = BidRate{Item: "steel", Rate: new(210.0), Quantity: new(1000.0), Extension: new(2100.0)}
	out, err := Bids.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if len(out.Conflicts) != 1 || out.Conflicts[0].Right != 210000 || out.Conflicts[0].Written != 2100 {
		t.Errorf("conflicts %+v", out.Conflicts)
	}
	near(t, "B", out.Evaluated[1].Likely, 760e3+210*12000+480e3+110e3, 1e-6)
}

func TestBidsBlankIsNeverZero(t *testing.T) {
	in := twoYards()
	in.Bids[1].Rates = in.Bids[1].Rates[:1]
	in.Bids[0].Exclusions = []BidLump{{"wash water", new(20e3)}, {"crane", nil}}
	out, err := Bids.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "A with what it leaves out", out.Evaluated[0].Likely, 1611000, 1e-6)
	near(t, "B with A's hours", out.Evaluated[1].Likely, 1734000-110e3+85e3, 1e-6)
	all := strings.Join(out.Warnings, "; ")
	if out.Evaluated[1].Complete || len(out.Blanks) != 2 || !strings.Contains(all, "stands in") || !strings.Contains(all, "nothing can stand in") {
		t.Errorf("%+v %s", out.Blanks, all)
	}
}

// Closed form: two yards that differ by 10 (q - 150), q a triangle 0, 100, 300: A is the lowest where q > 150, 1 - F(150) = 150^2/(300 x 200).
func TestBidsChanceOfTheLowest(t *testing.T) {
	in := Bids.New()
	in.Bids = []Bid{
		{Yard: "A", Lumps: []BidLump{{"works", new(3000.0)}}, Rates: []BidRate{{Item: "steel", Rate: new(10.0)}}},
		{Yard: "B", Lumps: []BidLump{{"works", new(1500.0)}}, Rates: []BidRate{{Item: "steel", Rate: new(20.0)}}},
	}
	in.Quantities = []BidQuantity{{Item: "steel", Low: new(0.0), Likely: 100, High: new(300.0)}}
	in.Own = new(5000.0)
	out, err := Bids.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "chance", out.Lowest[0].Share, 0.375, 0.001)
	near(t, "mean of A", out.Evaluated[1].Mean, 3000+10*400.0/3, 0.1)
	near(t, "under", *out.Under, 1-3500.0/5000, 1e-9)
	if !strings.Contains(strings.Join(out.Warnings, " "), "30 to 63") {
		t.Errorf("warnings %v", out.Warnings)
	}
}

// Identity: the chances add up to one, and at the break-even quantity both cost the same.
func TestBidsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Bids.New()
		rate := rapid.Float64Range(1, 50)
		for i := range rapid.IntRange(1, 4).Draw(t, "yards") {
			in.Bids = append(in.Bids, Bid{Yard: fmt.Sprint(i), Lumps: []BidLump{{"works", new(rapid.Float64Range(1e5, 9e5).Draw(t, "lump"))}},
				Rates: []BidRate{{Item: "steel", Rate: new(rate.Draw(t, "rate"))}, {Item: "paint", Rate: new(rate.Draw(t, "rate"))}}})
		}
		in.Quantities = []BidQuantity{{"steel", new(1e3), 9e3, new(4e4)}, {"paint", new(1e3), 2e3, new(3e3)}}
		out, err := Bids.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, l := range out.Lowest {
			sum += l.Share
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("chances add up to %g", sum)
		}
		for _, b := range out.BreakEven {
			turned := in
			turned.Quantities = []BidQuantity{{"steel", nil, 9e3, nil}, {"paint", nil, 2e3, nil}}
			for i := range turned.Quantities {
				if turned.Quantities[i].Item == b.Item {
					turned.Quantities[i].Likely = b.Quantity
				}
			}
			again, err := Bids.Fn(turned)
			if err != nil {
				t.Fatal(err)
			}
			cost := map[string]float64{}
			for _, e := range again.Evaluated {
				cost[e.Yard] = e.Likely
			}
			if math.Abs(cost[b.A]-cost[b.B]) > 1e-6*cost[b.A] {
				t.Fatalf("at %g %s %s costs %g, %s %g", b.Quantity, b.Item, b.A, cost[b.A], b.B, cost[b.B])
			}
		}
	})
}

func TestBidsRefuse(t *testing.T) {
	for want, change := range map[string]func(*BidsIn){
		"at least one bid":      func(in *BidsIn) { in.Bids = nil },
		"no quantity is given":  func(in *BidsIn) { in.Quantities = in.Quantities[:1] },
		"are both of":           func(in *BidsIn) { in.Bids[1].Yard = "A" },
		"low and high together": func(in *BidsIn) { in.Quantities[0].Low = new(1.0) },
		"low <= likely <= high": func(in *BidsIn) { in.Quantities[0].Low, in.Quantities[0].High = new(9e5), new(1.0) },
		"and no days":           func(in *BidsIn) { in.Bids[0].Days = nil },
	} {
		in := twoYards()
		change(&in)
		_, err := Bids.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleBids() {
	in := Bids.New()
	in.Bids = []Bid{
		{Yard: "A", Lumps: []BidLump{{"works", new(900e3)}}, Rates: []BidRate{{Item: "steel, lb", Rate: new(18.0)}}},
		{Yard: "B", Lumps: []BidLump{{"works", new(760e3)}}, Rates: []BidRate{{Item: "steel, lb", Rate: new(32.0)}}},
	}
	in.Quantities = []BidQuantity{{Item: "steel, lb", Low: new(4e3), Likely: 9e3, High: new(30e3)}}
	out, err := Bids.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	turn := out.BreakEven[0]
	fmt.Printf("%s is cheaper below %.0f, %s above; %s ends as the lowest in %.0f of 100\n", turn.Below, turn.Quantity, turn.Above, out.Lowest[0].Yard, 100*out.Lowest[0].Share)
	// Output: B is cheaper below 10000, A above; A ends as the lowest in 73 of 100
}
