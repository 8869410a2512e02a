package protection

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.7g, want %.7g +- %g", what, got, want, tolerance)
	}
}

// Published: Nippon Foundation library 1996/00625, chapter 8.5: hull 4500 m2 at 4.5 mA/m2, bronze propeller 30 m2 at 500, anodes of 470 mA: 75
// anodes, 76 fitted. The 35.25 A and the share follow from these.
func TestDemandPublishedShip(t *testing.T) {
	out, err := Demand.Fn(DemandIn{
		Zones: []Zone{
			{Name: "hull", Area: 4500, Density: 4.5e-3, Breakdown: new(1.0)},
			{Name: "propeller", Area: 30, Density: 0.5, Breakdown: new(1.0), Metal: "bronze"},
		},
		AnodeCurrent: new(0.470),
	})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "current", out.Mean, 35.25, 1e-9)
	near(t, "propeller's share", out.Zones[1].Share, 0.4255, 0.00005)
	near(t, "its area", out.Zones[1].AreaShare, 0.0066, 0.00005)
	near(t, "anodes", *out.Anodes, 75, 0)
	near(t, "fitted", *out.Fitted, 76, 0)
}

// Computed by hand from f = a + b t: 2000 m2, a 0.02, b 0.012, 200/100/130 mA/m2, 25 years: 8.0, 34.0, 83.2 A.
func TestDemandCoating(t *testing.T) {
	out, err := Demand.Fn(DemandIn{Life: new(25.0), Zones: []Zone{
		{Area: 2000, Density: 0.1, Initial: new(0.2), Final: new(0.13), Coating: &Coating{A: 0.02, B: 0.012}},
	}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "initial", out.Initial, 8.0, 1e-9)
	near(t, "mean", out.Mean, 34.0, 1e-9)
	near(t, "final", out.Final, 83.2, 1e-9)
}

// Identity: the exact mean is the integral of the share bare, and never above 1.
func TestMeanBareIsTheIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Coating{A: rapid.Float64Range(0, 1).Draw(t, "a"), B: rapid.Float64Range(0, 0.3).Draw(t, "b"), Age: rapid.Float64Range(0, 40).Draw(t, "age")}
		life := rapid.Float64Range(0.1, 60).Draw(t, "life")
		const n = 4000
		sum := 0.0
		for k := range n {
			sum += c.Bare((float64(k)+0.5)*life/n) / n
		}
		if got := c.MeanBare(life); math.Abs(got-sum) > 1e-5 || got > 1 {
			t.Fatalf("mean %g, midpoints %g", got, sum)
		}
	})
}

// Identity: shares add to 1, and the demand of two halves is that of the whole.
func TestDemandAdds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := Zone{Area: rapid.Float64Range(1, 5000).Draw(t, "area"), Density: rapid.Float64Range(0.001, 1).Draw(t, "density"), Breakdown: new(rapid.Float64Range(0.01, 1).Draw(t, "f"))}
		half := z
		half.Area /= 2
		whole, err := Demand.Fn(DemandIn{Zones: []Zone{z}})
		if err != nil {
			t.Fatal(err)
		}
		two, err := Demand.Fn(DemandIn{Zones: []Zone{half, half}})
		if err != nil || math.Abs(two.Mean-whole.Mean) > 1e-9*whole.Mean || math.Abs(two.Zones[0].Share+two.Zones[1].Share-1) > 1e-12 {
			t.Fatalf("%v, %v, %v", whole, two, err)
		}
	})
}

func TestDemandRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"zones": []}`:                                                                                          "zones",
		`{"zones": [{"area": 0, "density": 5}]}`:                                                                 "zones[0].area",
		`{"zones": [{"area": 100, "density": -5}]}`:                                                              "zones[0].density",
		`{"zones": [{"area": 100, "density": 20000}]}`:                                                           "zones[0].density",
		`{"zones": [{"area": 100, "density": 5, "breakdown": 30}]}`:                                              "zones[0].breakdown",
		`{"zones": [{"area": 100, "density": 5, "coating": {"a": 0.02, "b": 0.01}}]}`:                            "life",
		`{"zones": [{"area": 100, "density": 5, "breakdown": 1, "coating": {"a": 0.02, "b": 0.01}}], "life": 9}`: "zones[0].breakdown",
		`{"zones": [{"area": {"value": 100, "unit": "m"}, "density": 5}]}`:                                       "zones[0].area",
	} {
		_, err := calc.JSON(Demand, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
