package gland

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func crushed(load, precompression float64) CrushIn {
	in := Crush.New()
	in.Load, in.Shaft, in.PackingLength, in.Modulus, in.Section, in.Precompression = load, 0.4, 0.3, 20e6, 0.025, precompression
	return in
}

// Closed form: before anything opens the sag is load section/(pi r length modulus).
func TestCrushBeforeTheTopOpens(t *testing.T) {
	out, err := Crush.Fn(crushed(30e3, 1e-3))
	if err != nil {
		t.Fatal(err)
	}
	want := 30e3 * 0.025 / (math.Pi * 0.2 * 0.3 * 20e6)
	near(t, "sag", out.Sag, want, 1e-15)
	if out.TopOpening != 0 || out.OpenArc != 0 || out.GapArea != 0 {
		t.Errorf("nothing is open yet: %+v", out)
	}
}

// Closed form: without squeeze half the bed carries, the sag is twice that of a bed that pulls, the upper half circle is open, and the gap is
// a lune of area 2 r v.
func TestCrushWithoutSqueeze(t *testing.T) {
	out, err := Crush.Fn(crushed(30e3, 0))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "sag", out.Sag, 2*30e3*0.025/(math.Pi*0.2*0.3*20e6), 1e-12)
	near(t, "open arc, deg", out.OpenArc*180/math.Pi, 180, 1e-9)
	near(t, "gap, m2", out.GapArea, 2*0.2*out.Sag, 1e-12)
}

// Second method: the bed summed over 7200 strips, each pushing or not, must carry the load, and the open strips make the gap.
func TestCrushBalanceByStrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := crushed(rapid.Float64Range(1e3, 3e5).Draw(t, "load"), rapid.Float64Range(0, 4e-3).Draw(t, "squeeze"))
		out, err := Crush.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		const n = 7200
		up, gap := 0.0, 0.0
		for i := range n {
			a := 2 * math.Pi * (float64(i) + 0.5) / n
			u := in.Precompression - out.Sag*math.Cos(a)
			part := 0.2 * 2 * math.Pi / n
			if u > 0 {
				up += in.Modulus * u / in.Section * in.PackingLength * part * -math.Cos(a)
			} else {
				gap -= u * part
			}
		}
		if math.Abs(up-in.Load) > 1e-5*in.Load || math.Abs(gap-out.GapArea) > 1e-5*(out.GapArea+1e-9) {
			t.Fatalf("strips carry %g of %g N and leave %g of %g m2", up, in.Load, gap, out.GapArea)
		}
	})
}

func TestCrushWarnsWhenThePackingIsSquashed(t *testing.T) {
	out, err := Crush.Fn(crushed(2e6, 0))
	if err != nil || !strings.Contains(strings.Join(out.Warnings, ";"), "no longer holds") {
		t.Errorf("%v %v", out.Warnings, err)
	}
}
