package gland

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Published: Valve Selection Handbook, p. 21: solid PTFE, Poisson's ratio 0.46 at 23 degC and 0.36 at 100 degC, passes on 85 % and 56 % of the
// axial stress.
func TestConfinedRatioPublishedPTFE(t *testing.T) {
	near(t, "23 degC", ConfinedRatio(0.46), 0.85, 0.005)
	near(t, "100 degC", ConfinedRatio(0.36), 0.56, 0.005)
	near(t, "23 degC, closed form", ConfinedRatio(0.46), 0.852, 0.0005)
	near(t, "100 degC, closed form", ConfinedRatio(0.36), 0.5625, 1e-12)
}

const (
	lbf = 4.4482216152605
	psi = lbf / (inch * inch)
)

// Closed form: 4 in box, 2 in shaft, 500 psi: 4712.4 lbf; five rings as deep as the section at mu 0.1, K 0.5: exp(-0.5) = 0.60653.
func TestPressureClosedForm(t *testing.T) {
	in := Pressure.New()
	in.Bore, in.Shaft, in.Rings, in.GlandStress = 4*inch, 2*inch, 5, 500*psi
	in.Studs, in.StudDiameter, in.Head = new(4.0), new(0.5*inch), new(10.0)
	out, err := Pressure.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "follower force, lbf", out.FollowerForce/lbf, 4712.4, 0.05)
	near(t, "stress ratio", out.StressRatio, 0.60653, 0.000005)
	near(t, "radial stress at the water, psi", out.RadialBottom/psi, 0.5*500*0.60653, 0.002)
	near(t, "water pressure, Pa", *out.WaterPressure, 1025*9.80665*10, 1e-9)
	near(t, "torque, lbf.in", *out.StudTorque/lbf/inch, 0.2*0.5*4712.4/4, 0.002)
	near(t, "last row of the profile", out.Profile[4].Radial, out.RadialBottom, 1e-6)
}

// Identity: the follower's force is what the water end still carries and what friction takes out of the walls of box and shaft on the way,
// summed over slices, with the section small beside the shaft.
func TestPressureBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Pressure.New()
		in.Shaft = rapid.Float64Range(0.05, 0.8).Draw(t, "shaft")
		in.Bore = in.Shaft + rapid.Float64Range(0.01, 0.1).Draw(t, "gap")
		in.Rings = rapid.IntRange(1, 20).Draw(t, "rings")
		in.GlandStress = rapid.Float64Range(1e5, 1e7).Draw(t, "stress")
		in.Friction = rapid.Float64Range(0.05, 0.3).Draw(t, "friction")
		in.Ratio = rapid.Float64Range(0.3, 0.9).Draw(t, "ratio")
		out, err := Pressure.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		depth, slices := float64(in.Rings)*out.Depth, 2000
		wall := math.Pi * (in.Bore + in.Shaft)
		drag := 0.0
		for i := range slices {
			x := (float64(i) + 0.5) / float64(slices) * depth
			drag += in.Friction * in.Ratio * in.GlandStress * math.Exp(-2*in.Friction*in.Ratio*x/out.Section) * wall * depth / float64(slices)
		}
		bottom := out.FollowerForce * out.StressRatio
		if math.Abs(bottom+drag-out.FollowerForce) > 1e-4*out.FollowerForce {
			t.Fatalf("%g at the bottom and %g of drag do not make %g", bottom, drag, out.FollowerForce)
		}
		for i := 1; i < len(out.Profile); i++ {
			if out.Profile[i].Axial > out.Profile[i-1].Axial {
				t.Fatal("the stress grows towards the water")
			}
		}
	})
}

func TestPressureWarnsAndRefuses(t *testing.T) {
	in := Pressure.New()
	in.Bore, in.Shaft, in.Rings, in.GlandStress, in.Head, in.Ratio = 0.4, 0.35, 8, 0.2e6, new(8.0), 0.3
	out, err := Pressure.Fn(in)
	if err != nil || *out.SealMargin >= 1 || !strings.Contains(strings.Join(out.Warnings, ";"), "weeps") {
		t.Errorf("%v, %v, %v", out.SealMargin, out.Warnings, err)
	}
	in.Shaft = 0.5
	if _, err := Pressure.Fn(in); err == nil || !strings.Contains(err.Error(), "bore must be larger") {
		t.Errorf("%v", err)
	}
	_, err = Pressure.Run(map[string]any{"bore": 400.0, "shaft": 350.0, "rings": 5.0, "gland_stress": 1.0, "stud_diameter": 20.0})
	if err == nil || !strings.Contains(err.Error(), "studs") {
		t.Errorf("%v", err)
	}
}
