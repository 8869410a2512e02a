package handling

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const (
	inch  = 0.0254
	pound = 0.45359237
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

// Published weights: 38 030 lb at 17 ft 4.5 in, and 63 628 lb at 18 ft with five blades. The band must hold both, and their mass over diameter
// cubed is what it was fitted to.
func TestPropellerMassPublishedWeights(t *testing.T) {
	for _, p := range []struct{ pounds, inches, ratio float64 }{{38030, 208.5, 116}, {63628, 216, 174.8}} {
		in := PropellerMass.New()
		in.Diameter = p.inches * inch
		out, err := PropellerMass.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		mass := p.pounds * pound
		near(t, "kg over m3", mass/(in.Diameter*in.Diameter*in.Diameter), p.ratio, 0.5)
		if mass < out.Low || mass > out.High {
			t.Errorf("%.0f kg lies outside %.0f to %.0f kg", mass, out.Low, out.High)
		}
		if !strings.Contains(strings.Join(out.Warnings, ";"), "high end") {
			t.Errorf("a mass by diameter alone must say so: %v", out.Warnings)
		}
	}
}

// Closed form: 1 - 1025/8330 and 1 - 1025/7640.
func TestPropellerMassInWater(t *testing.T) {
	for material, want := range map[string]float64{"bronze": 0.87695, "nickel-aluminium bronze": 0.86584} {
		in := PropellerMass.New()
		in.Diameter, in.Known, in.Material = 5, new(20000.0), material
		out, err := PropellerMass.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, material, out.InWater/out.Mass, want, 0.000005)
	}
}

// Published: Copper Development Association, 0.301 lb/in3 and 0.276 lb/in3.
func TestPropellerMassPublishedDensities(t *testing.T) {
	unit := pound / (inch * inch * inch)
	near(t, "C86500", densities["manganese bronze"]/unit, 0.301, 0.0005)
	near(t, "C95800", densities["nickel-aluminium bronze"]/unit, 0.276, 0.0005)
}

// Identity: what is known beats the rule, and the band always holds the figure taken.
func TestPropellerMassKnownBeatsRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := PropellerMass.New()
		in.Diameter = rapid.Float64Range(1, 8).Draw(t, "diameter")
		in.Drawing = new(rapid.Float64Range(100, 9e4).Draw(t, "drawing"))
		drawn, _ := PropellerMass.Fn(in)
		in.Known = new(rapid.Float64Range(100, 9e4).Draw(t, "known"))
		known, _ := PropellerMass.Fn(in)
		if drawn.Mass != *in.Drawing || known.Mass != *in.Known || known.Basis == drawn.Basis {
			t.Fatalf("%+v %+v", drawn, known)
		}
		if known.InWater >= known.Mass || known.InWater < 0.8*known.Mass {
			t.Fatalf("%g kg in the water of %g kg", known.InWater, known.Mass)
		}
	})
}
