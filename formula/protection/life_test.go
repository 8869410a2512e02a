package protection

import (
	"encoding/json"
	"errors"
	"testing"

	"pgregory.net/rapid"

	"oakum/calc"
	"oakum/field"
)

// Computed by hand: zinc of 11.3 kg, 55 % left after 3 years, 780 A.h/kg, utilisation 0.85: 5.085 kg * 780 / 26280 h.
func TestAnodeLifeByHand(t *testing.T) {
	in := AnodeLife.New()
	in.MassNew, in.ShareLeft, in.Years = 11.3, 0.55, 3
	out, err := AnodeLife.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "current", out.Current, 0.1509, 0.00005)
	near(t, "life left", *out.Left, 2.67, 0.005)
	near(t, "rate", out.Rate, 1.695, 1e-9)
	if out.Reading != "normal" {
		t.Errorf("reading %s", out.Reading)
	}
}

// Identity: a current held for the whole life spends exactly the part of the mass that works.
func TestAnodeLifeSpendsItsMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := AnodeLife.New()
		in.MassNew = rapid.Float64Range(1, 200).Draw(t, "mass")
		in.ShareLeft = rapid.Float64Range(0.2, 0.99).Draw(t, "left")
		in.Years = rapid.Float64Range(0.2, 30).Draw(t, "years")
		out, err := AnodeLife.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		spent := out.Current * (in.Years + *out.Left) * HoursPerYear / in.Capacity
		if d := spent - in.Utilisation*in.MassNew; d > 1e-9*in.MassNew || d < -1e-9*in.MassNew {
			t.Fatalf("spends %g of %g kg", spent, in.MassNew)
		}
	})
}

func TestAnodeLifeReadings(t *testing.T) {
	for _, c := range []struct {
		left, years float64
		want        string
	}{{1, 5, "barely used"}, {0.97, 5, "barely used"}, {0.5, 5, "normal"}, {0.1, 1, "early gone"}, {0, 4, "normal"}} {
		in := AnodeLife.New()
		in.MassNew, in.ShareLeft, in.Years = 22, c.left, c.years
		out, err := AnodeLife.Fn(in)
		if err != nil || out.Reading != c.want {
			t.Errorf("%g left after %g years: %s (%v), want %s", c.left, c.years, out.Reading, err, c.want)
		}
		if c.left == 1 && out.Left != nil {
			t.Error("an anode that gave nothing has no life to give")
		}
		if c.left == 0 && len(out.Warnings) == 0 {
			t.Error("an anode that is gone passes without a word")
		}
	}
}

func TestAnodeLifeRefuses(t *testing.T) {
	for raw, want := range map[string]string{
		`{"mass_new": 11.3, "share_left": 55, "years": 3}`:                        "share_left",
		`{"mass_new": -11.3, "share_left": 0.55, "years": 3}`:                     "mass_new",
		`{"mass_new": 11.3, "share_left": 0.55, "years": 0}`:                      "years",
		`{"mass_new": 11.3, "share_left": 0.55, "years": 0.001}`:                  "years",
		`{"mass_new": 11.3, "share_left": 0.55, "years": 3, "capacity": 78000}`:   "capacity",
		`{"mass_new": {"value": 3, "unit": "m"}, "share_left": 0.55, "years": 3}`: "mass_new",
		`{"mass_new": 11.3, "years": 3}`:                                          "share_left",
		`{"mass_new": 11.3, "share_left": 0.55, "years": 3, "utilisation": 85}`:   "utilisation",
	} {
		_, err := calc.JSON(AnodeLife, json.RawMessage(raw))
		var e *field.Error
		if !errors.As(err, &e) || e.Field != want {
			t.Errorf("%s: %v, want a refusal of %s", raw, err, want)
		}
	}
}
