package estimate

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/quantity"
)

// Published: compound interest factor tables of Blank and Tarquin, A/F at 0.25 %: n 10 0.09888, n 20 0.04882, n 25 0.03881; and of a table at 35 %:
// n 5 .1005, n 10 .0183.
func TestSinkingPublishedFactors(t *testing.T) {
	for _, c := range []struct{ i, n, factor, half float64 }{
		{0.0025, 10, 0.09888, 5e-6}, {0.0025, 20, 0.04882, 5e-6}, {0.0025, 25, 0.03881, 5e-6}, {0.35, 5, 0.1005, 5e-5}, {0.35, 10, 0.0183, 5e-5},
	} {
		near(t, fmt.Sprintf("A/F %g, %g", c.i, c.n), Sinking(1, 0, c.i, c.n), c.factor, c.half)
	}
	near(t, "no interest", Sinking(12, 2, 0, 5), 2, 1e-12)
	near(t, "enough is saved", Sinking(10, 11, 0.02, 5), 0, 0)
}

// Identity: sums put by at the end of each year, with interest, make the cost.
func TestSinkingFills(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.Float64Range(0, 0.2).Draw(t, "interest")
		years := rapid.IntRange(1, 40).Draw(t, "years")
		saved := rapid.Float64Range(0, 5e5).Draw(t, "saved")
		cost := rapid.Float64Range(6e5, 3e6).Draw(t, "cost")
		a := Sinking(cost, saved*math.Pow(1+i, float64(years)), i, float64(years))
		fund := saved
		for range years {
			fund = fund*(1+i) + a
		}
		if a > 0 && math.Abs(fund-cost) > 1e-6*cost {
			t.Fatalf("the fund ends at %g of %g", fund, cost)
		}
	})
}

// Computed: the least of two like triangles 0, 0, 20 has survival (1-t/20)^4, so its median is 20 (1 - 2^-1/4); each is first half of the time.
func TestNextDueIsTheLeastOfTheLives(t *testing.T) {
	in := Next.New()
	in.Cost = 1e6
	in.Lives = []LifeLeft{{"coating", 0, 0, 20}, {"anodes", 0, 0, 20}}
	in.From, _ = quantity.NewDate(2030, 1, 1)
	out, err := Next.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "median", out.DueP50, 20*(1-math.Pow(0.5, 0.25)), 0.01)
	near(t, "first decile", out.DueP10, 20*(1-math.Pow(0.9, 0.25)), 0.01)
	near(t, "share", out.First[0].Share, 0.5, 0.005)
	if out.DateP50.Year() != 2033 {
		t.Errorf("due %v", out.DateP50)
	}
	if len(out.Warnings) == 0 || !strings.Contains(strings.Join(out.Warnings, " "), "within a year") {
		t.Errorf("warnings: %v", out.Warnings)
	}
}

// Identity: certain lives and cost give the same sum in every draw.
func TestNextCertain(t *testing.T) {
	in := Next.New()
	in.Cost, in.Saved, in.Escalation, in.Interest = 900e3, 100e3, 0.04, 0.03
	in.Lives = []LifeLeft{{"coating", 12, 12, 12}, {"anodes", 15, 15, 15}}
	out, err := Next.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	want := Sinking(900e3*math.Pow(1.04, 12), 100e3*math.Pow(1.03, 12), 0.03, 12)
	for _, got := range []float64{out.Yearly, out.P50, out.P80} {
		near(t, "yearly", got, want, 1e-6)
	}
	in.Years = new(20.0)
	if out, _ = Next.Fn(in); !strings.Contains(strings.Join(out.Warnings, " "), "fails by 12") {
		t.Errorf("a docking after the lives must be said: %v", out.Warnings)
	}
	in.CostLow = new(1e6)
	if _, err := Next.Fn(in); err == nil {
		t.Error("one end of a range alone must be refused")
	}
}

func ExampleSinking() {
	// 1.6 million in twelve years, 2 % interest, 100 000 saved that will have grown to 127 000.
	fmt.Printf("%.0f a year\n", Sinking(1.6e6, 127e3, 0.02, 12))
	// Output: 109826 a year
}
