package opening

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Published: nominal stress areas of coarse metric threads, ISO 898-1, mm2.
func TestStressAreaPublished(t *testing.T) {
	for bolt, want := range map[string]float64{"M10": 58.0, "M12": 84.3, "M16": 157, "M20": 245, "M24": 353, "M30": 561} {
		tolerance := 0.5
		if want < 100 {
			tolerance = 0.05
		}
		near(t, bolt, stressArea(bolt)*1e6, want, tolerance)
	}
}

// Closed form: 0.5 m gasket under 4 m of sea water; 1025*9.80665*4 = 40 207 Pa on 0.19635 m2 is 7 894.7 N; the gasket adds 2*0.01*pi*0.5*40 207 = 1 263.1 N;
// seating 1.4 MPa over pi*0.01*0.5 m2 is 21 991 N, which governs: 274.9 mm2 at 80 MPa, two M16. Spacing: pi*540/96 = 17.7, so twenty.
func TestBoltsClosedForm(t *testing.T) {
	in := Bolts.New()
	in.Gasket, in.Head = 0.5, new(4.0)
	out, err := Bolts.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "push, N", out.Push, 7894.7, 0.1)
	near(t, "hold, N", out.Hold, 7894.7+1263.1, 0.2)
	near(t, "seat, N", out.Seat, 21991, 0.5)
	near(t, "area, mm2", out.Needed*1e6, 274.9, 0.05)
	near(t, "bolts", out.Count, 20, 0)
	in.Side = "outside"
	if out, err = Bolts.Fn(in); err != nil || out.Hold != 0 {
		t.Errorf("outside the water holds it: %v %v", out.Hold, err)
	}
}

// Identities: the bolts carry the load within what is allowed, stand in fours and no further apart than the gasket bears.
func TestBoltsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Bolts.New()
		in.Gasket = rapid.Float64Range(0.05, 3).Draw(t, "gasket")
		in.Head = new(rapid.Float64Range(0.1, 20).Draw(t, "head"))
		in.Bolt = rapid.SampledFrom([]string{"M10", "M12", "M16", "M20", "M24", "M30"}).Draw(t, "bolt")
		in.Side = rapid.SampledFrom([]string{"inside", "outside"}).Draw(t, "side")
		out, err := Bolts.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if out.Used > 1+1e-9 || math.Mod(out.Count, 4) != 0 || out.Spacing > in.Spread*threads[in.Bolt].diameter/1000+1e-9 {
			t.Fatalf("%+v", out)
		}
		if math.Abs(out.Each*out.Count-max(out.Hold, out.Seat)) > 1e-6*out.Seat {
			t.Fatalf("the bolts carry %v of %v", out.Each*out.Count, max(out.Hold, out.Seat))
		}
	})
}

func TestBoltsRefuse(t *testing.T) {
	in := Bolts.New()
	in.Gasket = 0.3
	if _, err := Bolts.Fn(in); err == nil {
		t.Error("no head, no difference: worked all the same")
	}
	in.Head, in.Difference = new(1.0), new(1e4)
	if _, err := Bolts.Fn(in); err == nil {
		t.Error("both head and difference: worked all the same")
	}
}
