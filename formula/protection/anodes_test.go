package protection

import (
	"testing"

	"pgregory.net/rapid"
)

// Computed by hand (constants from memory): 2000 m2, a 0.02, b 0.012, 200/100/130 mA/m2, 25 years, aluminium 2000 A.h/kg, u 0.85.
func TestAnodesByHand(t *testing.T) {
	_, get := run(t, AnodesNeeded, `{"zones": [{"area": 2000, "density": 100, "density_initial": 200, "density_final": 130, "coating": {"a": 0.02, "b": 0.012}}],
		"life": 25, "alloy": "aluminium", "capacity": 2000, "utilisation": 0.85}`)
	near(t, "initial", get("demand_initial"), 8.0, 1e-9)
	near(t, "mean", get("demand_mean"), 34.0, 1e-9)
	near(t, "final", get("demand_final"), 83.2, 1e-9)
	near(t, "mass", get("mass_needed"), 4380, 1e-6)
	_, get = run(t, AnodesNeeded, `{"current_mean": 34, "life": 25, "alloy": "aluminium", "utilisation": 0.85}`)
	near(t, "mass from the current alone", get("mass_needed"), 4380, 1e-6)
}

// Published: MIL-HDBK-1004/10, page 204: 857 lb of anodes of 44 lb are 19.5, say 20; 57.3 A at 1.5 A an anode are 38.2 (it fits 40, we round up to
// 39): the current decides, not the mass.
func TestAnodesCount(t *testing.T) {
	near(t, "by mass", count(857, 44), 20, 0)
	near(t, "by current", count(57.3, 1.5), 39, 0)
	near(t, "an exact number stays", count(35.25, 0.47), 75, 0)
}

// Identity: the number worked out is enough, and one fewer is not.
func TestAnodesNeededAreEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := AnodesNeeded.New()
		in.Alloy, in.Life = rapid.SampledFrom([]string{"zinc", "aluminium"}).Draw(t, "alloy"), rapid.Float64Range(1, 20).Draw(t, "life")
		in.Demand = &Currents{Mean: rapid.Float64Range(1, 80).Draw(t, "mean")}
		in.Demand.Final = new(in.Demand.Mean * rapid.Float64Range(1, 3).Draw(t, "final"))
		in.Anodes = []AnodeSet{{Shape: Shape{Kind: "flush", Length: new(0.6), Width: new(0.15)}, Mass: rapid.Float64Range(5, 60).Draw(t, "mass")}}
		out, err := AnodesNeeded.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if !*out.Enough || *out.Life < in.Life*(1-1e-9) {
			t.Fatalf("%g anodes are not enough, life %g of %g", *out.Count, *out.Life, in.Life)
		}
		if *out.Count > 1 {
			in.Anodes[0].Count = new(*out.Count - 1)
			if fewer, _ := AnodesNeeded.Fn(in); *fewer.Enough {
				t.Fatalf("%g would do", *out.Count-1)
			}
		}
	})
}

func TestAnodesWarnOfTheWater(t *testing.T) {
	for _, c := range [][2]string{{"zinc", "fresh"}, {"aluminium", "fresh"}, {"magnesium", "sea"}} {
		s, _ := run(t, AnodesNeeded, `{"demand": {"current_mean": 3}, "life": 2, "alloy": "`+c[0]+`", "water": "`+c[1]+`"}`)
		if len(s.Warnings) == 0 {
			t.Errorf("%s in %s water passes without a word", c[0], c[1])
		}
	}
}

func TestAnodesRefuse(t *testing.T) {
	refuses(t, AnodesNeeded, map[string]string{
		`{"current_initial": 3, "life": 10, "alloy": "zinc"}`:                                                                                                                          "current_mean",
		`{"current_mean": 3, "demand": {"current_mean": 3}, "life": 10, "alloy": "zinc"}`:                                                                                              "demand",
		`{"life": 10, "alloy": "zinc"}`:                                                                                                                                                "zones",
		`{"demand": {"current_mean": 0}, "life": 10, "alloy": "zinc"}`:                                                                                                                 "demand.current_mean",
		`{"demand": {"current_mean": 3}, "life": -1, "alloy": "zinc"}`:                                                                                                                 "life",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "lead"}`:                                                                                                                 "alloy",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "zinc", "potential": 1.05}`:                                                                                              "potential",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "zinc", "potential": -0.85, "protected": -0.9}`:                                                                          "potential",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "zinc", "utilisation": 85}`:                                                                                              "utilisation",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "zinc", "anodes": [{"kind": "flush", "mass": 22, "length": 0.6}]}`:                                                       "anodes[0].width",
		`{"demand": {"current_mean": 3}, "zones": [{"area": 10, "density": 5}], "life": 10, "alloy": "zinc"}`:                                                                          "zones",
		`{"demand": {"current_mean": 3}, "life": 10, "alloy": "zinc", "anodes": [{"kind": "plate", "mass": 22, "area": 0.1, "count": 2}, {"kind": "plate", "mass": 22, "area": 0.1}]}`: "anodes[1].count",
	})
}

// Published: MIL-HDBK-1004/10, page 211: 14.7 A through 0.06 ohm with 3 V: 3.882 V; 1 lb an ampere and year, ten years: 147 lb.
func TestImpressedPublished(t *testing.T) {
	_, get := run(t, Impressed, `{"current": 14.7, "resistance": 0.06, "consumption": {"value": 1, "unit": "lb/(A.y)"}, "years": 10, "rated": 18, "rated_voltage": 4}`)
	near(t, "voltage", get("voltage"), 3.882, 0.0005)
	near(t, "mass, lb", get("mass_used")/0.45359237, 147, 0.5)
	near(t, "headroom", get("headroom"), 3.3, 1e-9)
	// The same from its parts, of which the source rounds the sum to 0.06: ten anodes of 0.103 ohm and 0.05 ohm of cable.
	_, get = run(t, Impressed, `{"current": 14.7, "anodes": 10, "resistance": 0.103, "cable": 0.05}`)
	near(t, "circuit", get("circuit_resistance"), 0.06, 0.005)
}

// Identity: at the most current that the rated voltage drives, no voltage is left.
func TestImpressedMost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Impressed.New()
		in.Resistance, in.Cable, in.RatedVolts = rapid.Float64Range(0.05, 5).Draw(t, "ra"), rapid.Float64Range(0, 1).Draw(t, "rc"), new(rapid.Float64Range(4, 24).Draw(t, "v"))
		in.Anodes, in.Current = rapid.IntRange(1, 8).Draw(t, "n"), 1
		out, err := Impressed.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		in.Current = *out.Most
		if again, _ := Impressed.Fn(in); *again.VoltsLeft > 1e-9 || *again.VoltsLeft < -1e-9 {
			t.Fatalf("%g V left", *again.VoltsLeft)
		}
	})
}

func TestImpressedRefuses(t *testing.T) {
	refuses(t, Impressed, map[string]string{
		`{"current": 0, "resistance": 1}`:                         "current",
		`{"current": -5, "resistance": 1}`:                        "current",
		`{"current": 5, "resistance": 0}`:                         "resistance",
		`{"current": 5}`:                                          "resistance",
		`{"current": 5, "resistance": 1, "anodes": 2.5}`:          "anodes",
		`{"current": 5, "resistance": 1, "back_voltage": -3}`:     "back_voltage",
		`{"current": 5, "resistance": 1, "rated_voltage": 2}`:     "rated_voltage",
		`{"current": {"value": 5, "unit": "V"}, "resistance": 1}`: "current",
	})
}
