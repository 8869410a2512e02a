package estimate

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func casesOf(growth ...float64) (list []Case) {
	for i, g := range growth {
		list = append(list, Case{Name: string(rune('a' + i)), Estimate: new(100.0), Outcome: new(100 * g), Weight: 1})
	}
	return list
}

// Computed by hand: growths 1.0, 1.1, 1.3, 1.6, 2.5 with weights 1, 1, 2, 1, 1 of 6 in all. Up to each lies 1/6, 2/6, 4/6, 5/6, 1 of the weight, so
// P10 is 1.0, P50 1.3, P80 1.6, P90 2.5; the mean is (1.0+1.1+2.6+1.6+2.5)/6.
func TestReferenceByHand(t *testing.T) {
	in := Reference.New()
	in.Cases = casesOf(1.6, 1.0, 2.5, 1.1, 1.3)
	in.Cases[4].Weight = 2
	in.Cases[0].Planned, in.Cases[0].Taken = new(10.0), new(18.0)
	in.Estimate, in.Contingency = new(1e6), new(0.3e6)
	out, err := Reference.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"P10", out.P10, 1.0}, {"P50", out.P50, 1.3}, {"P80", out.P80, 1.6}, {"P90", out.P90, 2.5}, {"mean", out.Mean, 8.8 / 6},
		{"uplift", out.Uplift80, 0.6}, {"own sum", *out.Sum80, 1.6e6}, {"own place", *out.Place, 4.0 / 6}, {"days", *out.Days, 1.8},
	} {
		near(t, c.what, c.got, c.want, 1e-9)
	}
	if out.N != 5 || out.DaysN != 1 || !strings.Contains(strings.Join(out.Warnings, " "), "5 cases only") {
		t.Errorf("n %d, days %d, %v", out.N, out.DaysN, out.Warnings)
	}
}

// Identity: the Bayesian bootstrap of two equal cases puts each in the middle half of the time, so the band spans both; of one case it has no
// width.
func TestReferenceBandOfFew(t *testing.T) {
	in := Reference.New()
	in.Cases = casesOf(1, 2)
	out, _ := Reference.Fn(in)
	if out.P50Low != 1 || out.P50High != 2 {
		t.Errorf("band %g to %g", out.P50Low, out.P50High)
	}
	in.Cases = casesOf(1.4)
	out, _ = Reference.Fn(in)
	if out.P80Low != 1.4 || out.P80High != 1.4 {
		t.Errorf("band %g to %g", out.P80Low, out.P80High)
	}
}

// Closed form: of two equal cases the lesser holds 80 % of a Dirichlet draw in one draw of five, so the band of the P80 spans both; with weights 1
// and 30 the lesser holds half in one draw of 31, so the band of the P50 is the greater alone.
func TestReferenceBootstrapWeights(t *testing.T) {
	list := []Growth{{Growth: 1, Weight: 1}, {Growth: 2, Weight: 1}}
	order(list)
	low50, high50, low80, high80 := bands(list)
	if low50 != 1 || high50 != 2 || low80 != 1 || high80 != 2 {
		t.Errorf("%g %g %g %g", low50, high50, low80, high80)
	}
	list = []Growth{{Growth: 1, Weight: 1}, {Growth: 2, Weight: 30}}
	order(list)
	if low50, _, _, _ = bands(list); low50 != 2 {
		t.Errorf("a case of thirty times the weight must stand in the middle, not %g", low50)
	}
}

// Identity: quantiles rise, stay within the cases, and a case repeated is a case of twice the weight.
func TestReferenceLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		growth := rapid.SliceOfN(rapid.Float64Range(0.5, 4), 2, 12).Draw(t, "growth")
		in := Reference.New()
		in.Cases = casesOf(growth...)
		in.Cases[0].Weight = 2
		out, err := Reference.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if !(out.P10 <= out.P50 && out.P50 <= out.P80 && out.P80 <= out.P90 && out.P80Low <= out.P80High) {
			t.Fatalf("%+v", out)
		}
		in.Cases = append(casesOf(growth...), casesOf(growth[0])...)
		twice, _ := Reference.Fn(in)
		if twice.P50 != out.P50 || twice.P80 != out.P80 || math.Abs(twice.Mean-out.Mean) > 1e-9 {
			t.Fatalf("twice: %g %g %g, weight two: %g %g %g", twice.P50, twice.P80, twice.Mean, out.P50, out.P80, out.Mean)
		}
	})
}

func TestReferenceChooses(t *testing.T) {
	in := Reference.New()
	in.Cases = casesOf(1, 2, 3)
	in.Cases[0].Surveyed, in.Cases[1].Surveyed = new(true), new(false)
	in.Surveyed = new(true)
	out, err := Reference.Fn(in)
	if err != nil || out.N != 2 || out.ByCase[1].Growth != 3 {
		t.Errorf("cases %v, %v: the one surveyed and the one not known stay", out.ByCase, err)
	}
	in.Cases = []Case{{Name: "x", Estimate: new(5.0), Weight: 1}}
	if _, err := Reference.Fn(in); err == nil || !strings.Contains(err.Error(), "nothing can be said") {
		t.Errorf("got %v", err)
	}
}

func ExampleReference() {
	in := Reference.New()
	for _, c := range [][2]float64{{1.2e6, 1.5e6}, {400e3, 410e3}, {2.1e6, 4.4e6}, {900e3, 1.1e6}, {650e3, 1.04e6}} {
		in.Cases = append(in.Cases, Case{Estimate: new(c[0]), Outcome: new(c[1]), Weight: 1})
	}
	in.Estimate = new(1.9e6)
	out, err := Reference.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("half grew by %.0f %% or less, eight in ten by %.0f %%: an estimate of 1.9 million is %.2f million then\n", 100*out.Uplift50, 100*out.Uplift80, *out.Sum80/1e6)
	// Output: half grew by 25 % or less, eight in ten by 60 %: an estimate of 1.9 million is 3.04 million then
}
