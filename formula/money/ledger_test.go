package money

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

// Computed: present value of an annuity in closed form, 20 000 (1 - 1.04^-5)/0.04 = 89 036.45, and nine tenths of it. The factor 4.4518 stands in
// any interest table (4 %, n 5).
func TestLedgerPledgesOfFiveYears(t *testing.T) {
	in := Ledger.New()
	in.AsOf = date(2026, 12, 31)
	in.Pots = []Pot{{Name: "hull"}}
	for y := range 5 {
		in.Pledges = append(in.Pledges, Pledge{Name: fmt.Sprint(y), Pot: "hull", Amount: 20000, Due: date(2027+y, 12, 31)})
	}
	out, err := Ledger.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "worth today", out.PledgesPresent, 89036.45, 0.005)
	near(t, "less the allowance", out.PledgesCounted, 80132.80, 0.0055) // 80 132.801
	near(t, "interest table, 4 %, n 5", out.PledgesPresent/20000, 4.4518, 0.00005)
	in.Pledges[0].Conditional = true
	if out, err = Ledger.Fn(in); err != nil {
		t.Fatal(err)
	}
	near(t, "waiting", out.PledgesWaiting, 20000, 0)
	near(t, "worth today without it", out.PledgesPresent, 89036.45-20000/1.04, 0.005)
}

// Computed: a one-to-one grant of at most 750 000 with 600 000 of own money gives 600 000, a project of 1.2 million.
func TestLedgerMatchedGrant(t *testing.T) {
	in := Ledger.New()
	in.AsOf = date(2026, 12, 31)
	in.Pots = []Pot{{Name: "hull"}}
	in.Grants = []Grant{{Name: "heritage", Pot: "hull", Cap: 750e3, Match: 1, Held: new(600e3), Arrears: true}}
	out, err := Ledger.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "matched", out.GrantsMatched, 600e3, 0)
	near(t, "project", out.Project, 1.2e6, 0)
	near(t, "own money still to find", out.Grants[0].Lacking, 150e3, 0)
	in.Grants[0].Held = nil
	if out, err = Ledger.Fn(in); err != nil || out.GrantsMatched != 0 || !strings.Contains(strings.Join(out.Warnings, " "), "counts as nothing") {
		t.Errorf("unknown own money must count as nothing, and say so: %v %v", out.Warnings, err)
	}
}

// bookOf is a small account worked by hand below.
func bookOf() LedgerIn {
	in := Ledger.New()
	in.AsOf = date(2030, 6, 30)
	in.Pots = []Pot{{Name: "hull"}, {Name: "shafts", Restricted: "shafts and propellers", Opening: 50e3}, {Name: "way home", Reserve: true}}
	in.Receipts = []Movement{
		{Pot: "hull", Date: date(2030, 1, 10), Amount: 300e3, Paper: "bank 1"}, {Pot: "way home", Date: date(2030, 2, 1), Amount: 80e3, Paper: "bank 2"},
		{Pot: "hull", Date: date(2030, 7, 1), Amount: 5e3, Paper: "bank 9"},
	}
	in.Payments = []Movement{{Pot: "hull", Date: date(2030, 5, 2), Amount: 40e3, Paper: "bill 1", Commitment: "yard"}}
	in.Commitments = []Commitment{
		{Name: "yard", Pot: "hull", Date: date(2030, 3, 1), Amount: 240e3, Paper: "contract", Due: date(2030, 9, 1), Retention: 0.05, Release: date(2031, 3, 1)},
		{Name: "credit", Pot: "hull", Date: date(2030, 6, 1), Amount: -10e3, Paper: "change 1", Due: date(2030, 9, 1)},
	}
	in.Pledges = []Pledge{{Name: "friends", Pot: "hull", Amount: 100e3, Due: date(2030, 12, 0), Allowance: new(0.2)}}
	in.Grants = []Grant{{Name: "lottery", Pot: "hull", Cap: 60e3, Match: 2, Held: new(100e3), Arrears: true, PaysOn: date(2031, 1, 31)}}
	in.Reserve = new(90e3)
	return in
}

// Computed by hand: in hand 260 000 + 50 000 + 80 000; the contract has 200 000 open, 12 000 of it kept back, and the credit takes 10 000 off;
// least cash is on 1 September 2030, 390 000 - 188 000 + 10 000 with the bill before the credit: 202 000, then 212 000.
func TestLedgerByHand(t *testing.T) {
	out, err := Ledger.Fn(bookOf())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"in hand", out.InHand, 390e3}, {"committed", out.Committed, 190e3}, {"kept back", out.Retained, 12e3}, {"reserve", out.Reserve, 90e3},
		{"free", out.Free, 110e3}, {"free for anything", out.Anywhere, 70e3 - 10e3}, {"free of shafts", out.ByPot[1].Free, 50e3},
		{"grant", out.GrantsMatched, 50e3}, {"least cash", out.Lowest, 202e3}, {"gap", out.Gap, 0},
		{"last balance", out.Flow[len(out.Flow)-1].Balance, 390e3 - 190e3 + 80e3 + 50e3},
	} {
		near(t, c.what, c.got, c.want, 1e-6)
	}
	if out.GapDate != date(2030, 9, 1) {
		t.Errorf("least cash on %v", out.GapDate)
	}
	if w := strings.Join(out.Warnings, "; "); !strings.Contains(w, "1 movements are dated after") {
		t.Errorf("warnings: %s", w)
	}
}

// Identity: what came in is in hand or was spent; pots add up to the whole; free never counts the reserve twice.
func TestLedgerAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Ledger.New()
		in.AsOf = date(2030, 6, 30)
		in.Pots = []Pot{{Name: "a", Opening: rapid.Float64Range(0, 1e6).Draw(t, "opening")}, {Name: "b", Restricted: "shafts"}, {Name: "c", Reserve: true}}
		name := rapid.SampledFrom([]string{"a", "b", "c"})
		total := in.Pots[0].Opening
		for i := range rapid.IntRange(0, 20).Draw(t, "receipts") {
			m := Movement{Pot: name.Draw(t, "pot"), Date: date(2029, 1+i%12, 0), Amount: rapid.Float64Range(0, 1e5).Draw(t, "amount"), Paper: fmt.Sprint(i)}
			in.Receipts = append(in.Receipts, m)
			total += m.Amount
		}
		for i := range rapid.IntRange(0, 20).Draw(t, "payments") {
			m := Movement{Pot: name.Draw(t, "pot"), Date: date(2030, 1+i%6, 0), Amount: rapid.Float64Range(0, 1e5).Draw(t, "amount"), Paper: fmt.Sprint(i)}
			in.Payments = append(in.Payments, m)
			total -= m.Amount
		}
		for i := range rapid.IntRange(0, 5).Draw(t, "commitments") {
			in.Commitments = append(in.Commitments, Commitment{Name: fmt.Sprint(i), Pot: name.Draw(t, "pot"), Date: in.AsOf, Amount: rapid.Float64Range(-1e4, 1e5).Draw(t, "amount"), Paper: "p"})
		}
		out, err := Ledger.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		pots, free := 0.0, 0.0
		for _, p := range out.ByPot {
			pots += p.InHand
			free += p.Free
		}
		if math.Abs(pots-total) > 1e-6 || math.Abs(out.InHand-total) > 1e-6 {
			t.Fatalf("pots hold %g, in hand %g, movements make %g", pots, out.InHand, total)
		}
		if math.Abs(free-out.Free) > 1e-6 {
			t.Fatalf("pots are free by %g, the whole by %g", free, out.Free)
		}
		if out.Anywhere > out.Free+1e-6 {
			t.Fatalf("%g is free for anything, but only %g in all", out.Anywhere, out.Free)
		}
		if n := len(out.Flow); n > 0 && math.Abs(out.Flow[n-1].Balance-(out.InHand-out.Committed)) > 1e-6 {
			t.Fatalf("cash ends at %g, not at in hand less committed", out.Flow[n-1].Balance)
		}
	})
}

func TestLedgerRefuses(t *testing.T) {
	base := func(change func(*LedgerIn)) LedgerIn {
		in := bookOf()
		change(&in)
		return in
	}
	for _, c := range []struct {
		in   LedgerIn
		want string
	}{
		{base(func(in *LedgerIn) { in.Pots = nil }), "pots is empty"},
		{base(func(in *LedgerIn) { in.Pots[1].Name = "hull" }), "stands twice"},
		{base(func(in *LedgerIn) { in.Receipts[0].Pot = "mast" }), `no pot "mast"`},
		{base(func(in *LedgerIn) { in.Receipts[0].Paper = "" }), "names no paper"},
		{base(func(in *LedgerIn) { in.Payments[0].Amount = -5 }), "must not be negative"},
		{base(func(in *LedgerIn) { in.Payments[0].Date = quantity.Date{} }), "has no date"},
		{base(func(in *LedgerIn) { in.Pledges[0].Received = 2e5 }), "more was received"},
		{base(func(in *LedgerIn) { in.Grants[0].Paid = 55e3 }), "more than the own money held has earned"},
		{base(func(in *LedgerIn) { in.AsOf = quantity.Date{} }), "as_of is missing"},
	} {
		_, err := Ledger.Fn(c.in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, c.want) {
			t.Errorf("%v, want a refusal with %q", err, c.want)
		}
	}
}

func TestLedgerWarns(t *testing.T) {
	in := bookOf()
	in.Receipts = append(in.Receipts, in.Receipts[0])
	in.Payments = append(in.Payments, Movement{Pot: "shafts", Date: date(2030, 6, 1), Amount: 60e3, Paper: "bill 7", Commitment: "mast"})
	in.Pledges[0].Due = date(2029, 1, 1)
	in.Reserve = new(500e3)
	out, err := Ledger.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(out.Warnings, "; ")
	for _, want := range []string{"entered twice", "overdrawn", "is no commitment", "overdue", "below the reserve"} {
		if !strings.Contains(all, want) {
			t.Errorf("no warning of %q in %s", want, all)
		}
	}
}

func Example() {
	in := Ledger.New()
	in.AsOf, _ = quantity.NewDate(2030, 6, 30)
	in.Pots = []Pot{{Name: "hull"}, {Name: "way home", Reserve: true}}
	in.Receipts = []Movement{
		{Pot: "hull", Date: in.AsOf, Amount: 420e3, Paper: "bank 1"},
		{Pot: "way home", Date: in.AsOf, Amount: 90e3, Paper: "bank 2"},
	}
	in.Commitments = []Commitment{{Name: "survey", Pot: "hull", Date: in.AsOf, Amount: 35e3, Paper: "order 4"}}
	out, err := Ledger.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("in hand %.0f, signed for %.0f, reserve %.0f, free %.0f\n", out.InHand, out.Committed, out.Reserve, out.Free)
	// Output: in hand 510000, signed for 35000, reserve 90000, free 385000
}
