package reliability

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func costs(shape, scale, planned, failure float64) ReplacementIn {
	in := Replacement.New()
	in.Shape, in.Scale, in.Planned, in.Failure = shape, scale, planned, failure
	return in
}

// Published: a worked example of age replacement (Weibull 2.5, 1000 h, costs 1 and 5) prints an optimum of 493.19 h, read off a grid of times; the
// exact root is 493.05, and the curve is so flat there that both cost the same to six digits.
func TestReplacementPublishedExample(t *testing.T) {
	out, err := Replacement.Fn(costs(2.5, 1000, 1, 5))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "best age", *out.BestAge, 493.05, 0.005)
	near(t, "cost rate", out.CostRate, 0.003462, 5e-7)
	w := Weibull{2.5, 1000}
	at := (Survival(w, 493.19) + 5*Ahead(w, 0, 493.19)) / lived(w, 493.19)
	near(t, "cost rate at the printed age", at, out.CostRate, 5e-10)
}

// Computed: closed forms and quadrature; shape 3, scale 30, age 20, costs 10 and 20, discount ln 1.035.
func TestReplacementPresentValueOfWaiting(t *testing.T) {
	in := costs(3, 30, 10, 20)
	in.Age, in.Discount = new(20.0), math.Log(1.035)
	out, err := Replacement.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{10.0000, 10.2676, 10.8584, 12.0310} {
		near(t, fmt.Sprintf("wait %g y", out.PresentVal[i].Wait), out.PresentVal[i].Cost, want, 5e-5)
	}
	near(t, "threshold age", *out.Threshold, 17.596, 5e-4)
	if !*out.PastIt {
		t.Error("20 years is past 17.6")
	}
}

// General library: SciPy quadrature and minimiser; version in testdata/replacement.json, input in testdata/replacement.py.
func TestReplacementAgainstSciPy(t *testing.T) {
	var ref struct {
		Cases []struct {
			Shape, Scale, Planned, Failure, Saving float64
			BestAge                                float64 `json:"best_age"`
			CostRate                               float64 `json:"cost_rate"`
			RunToFailure                           float64 `json:"run_to_failure"`
		}
		Waits []struct{ Shape, Scale, Age, Wait, Planned, Failure, R, Value float64 }
	}
	reference(t, "replacement.json", &ref)
	if len(ref.Cases) != 5 || len(ref.Waits) != 15 {
		t.Fatal("the reference is not whole")
	}
	for _, c := range ref.Cases {
		out, err := Replacement.Fn(costs(c.Shape, c.Scale, c.Planned, c.Failure))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "best age", *out.BestAge, c.BestAge, 2e-6*c.BestAge) // a minimiser finds a flat bottom to the root of its digits
		near(t, "cost rate", out.CostRate, c.CostRate, 1e-9*c.CostRate)
		near(t, "run to failure", out.RunToFail, c.RunToFailure, 1e-12)
		near(t, "saving", out.Saving, c.Saving, 1e-9)
	}
	for _, c := range ref.Waits {
		got := PresentValue(Weibull{c.Shape, c.Scale}, c.Age, c.Wait, c.Planned, c.Failure, c.R)
		near(t, fmt.Sprintf("present value, shape %g, wait %g", c.Shape, c.Wait), got, c.Value, 1e-8)
	}
}

// Trade: at twice the planned cost alone prevention saves 3 to 23 % of the long-run rate, for shapes 2 to 5.
func TestReplacementSavesLittleAtTwiceTheCost(t *testing.T) {
	for shape, want := range map[float64]float64{2: 0.03, 5: 0.23} {
		out, err := Replacement.Fn(costs(shape, 30, 1, 2))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "saving", out.Saving, want, 0.005)
		if !strings.Contains(strings.Join(out.Warnings, " "), "about twice") {
			t.Error("the ratio of two must say what is missing from it")
		}
	}
}

// Identity: no age costs less than the best one; money in another currency moves no date; for an exponential life nothing is saved.
func TestReplacementLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Float64Range(1.2, 6).Draw(t, "shape")
		scale := rapid.Float64Range(2, 100).Draw(t, "scale")
		ratio := rapid.Float64Range(1.5, 50).Draw(t, "ratio")
		w := Weibull{shape, scale}
		out, err := Replacement.Fn(costs(shape, scale, 1, ratio))
		if err != nil {
			t.Fatal(err)
		}
		if out.BestAge == nil {
			return
		}
		for _, f := range []float64{0.5, 0.9, 0.99, 1.01, 1.1, 2} {
			T := *out.BestAge * f
			if c := (Survival(w, T) + ratio*Ahead(w, 0, T)) / lived(w, T); c < out.CostRate*(1-1e-9) {
				t.Fatalf("age %g costs %g, the best %g costs %g", T, c, *out.BestAge, out.CostRate)
			}
		}
		big, _ := Replacement.Fn(costs(shape, scale, 1e5, ratio*1e5))
		if math.Abs(*big.BestAge-*out.BestAge) > 1e-6*scale || math.Abs(big.CostRate-1e5*out.CostRate) > 1e-3*out.CostRate {
			t.Fatalf("in another currency: %v at %g, was %v at %g", *big.BestAge, big.CostRate, *out.BestAge, out.CostRate)
		}
		if h := w.Hazard(*out.Threshold) * (ratio - 1); math.Abs(h-0.0344014) > 1e-9 {
			t.Fatalf("at the threshold the hazard costs %g, the delay saves 0.0344", h)
		}
	})
	out, err := Replacement.Fn(costs(1, 20, 1, 10))
	if err != nil || out.BestAge != nil || out.Saving != 0 || out.Threshold != nil {
		t.Errorf("chance alone: %+v %v", out, err)
	}
}

// Identity: waiting for ever costs the discounted failure, for an exponential life cf rate/(rate + r).
func TestPresentValueOfWaitingForEver(t *testing.T) {
	got := PresentValue(Exponential{0.1}, 7, 1000, 3, 20, 0.04)
	near(t, "present value", got, 20*0.1/0.14, 1e-9)
	near(t, "no wait", PresentValue(Weibull{3, 30}, 20, 0, 10, 20, 0.05), 10, 1e-12)
}

func ExamplePresentValue() {
	// A gland of 24 years, half of such leak by 26: repack it with the docking for 14 000, or at a failure for 90 000?
	life := WithMedian(3, 26)
	for _, wait := range []float64{0, 2, 5} {
		fmt.Printf("wait %g y: %.0f\n", wait, PresentValue(life, 24, wait, 14e3, 90e3, 0.0344))
	}
	// Output:
	// wait 0 y: 14000
	// wait 2 y: 23233
	// wait 5 y: 35961
}
