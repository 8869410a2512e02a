package afloat

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func ship120() WeightChangeIn {
	v := WeightChange.New()
	v.LBP, v.LCF, v.TPC, v.MCT = new(120.0), new(60.0), in(10, "t/cm"), in(250, "t.m/cm")
	v.DraftFwd, v.DraftAft = new(6.70), new(7.30)
	return v
}

// Published: Derrett, trim: 220 t discharged from 24 m forward of the centre of flotation.
func TestWeightChangePublishedDerrettDischarge(t *testing.T) {
	v := ship120()
	v.Changes = []Change{{Mass: *in(-220, "t"), X: 84}}
	out, err := WeightChange.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "rise", -out.Sinkage, "m", 0.22, 0.01)
	agrees(t, "change of trim", out.TrimChange, "cm", 21.12, 0.01)
	agrees(t, "draft aft", out.DraftAft, "m", 7.19, 0.01)
	agrees(t, "draft forward", out.DraftFwd, "m", 6.37, 0.01)
}

// Published: Derrett, the same example goes on: 380 t shifted from 5 m aft to 20 m forward of the centre of flotation brings the draft aft to 7 m. (A
// worked copy of the example on the web adds the whole change of trim forward, 6.75 m; with the centre of flotation amidships half of it is due,
// 6.56 m.) The source rounds each step to a centimetre, so its sum may be out by one.
func TestWeightChangePublishedDerrettShift(t *testing.T) {
	v := ship120()
	v.Changes = []Change{{Mass: *in(-220, "t"), X: 84}, {Mass: *in(-380, "t"), X: 55}, {Mass: *in(380, "t"), X: 80}}
	out, err := WeightChange.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "draft aft", out.DraftAft, "m", 7.00, 0.02)
	agrees(t, "draft forward", out.DraftFwd, "m", 6.56, 0.02)
}

// Published inputs: Derrett, p. 148: 4.50 aft and 3.80 forward become 5.10 and 4.40 with 100 t 24 m aft, 30 t 30 m and 60 t 15 m forward of
// amidships. The trim does not change if the centre of flotation lies where the moments cancel, 3.158 m aft of amidships.
func TestWeightChangeDerrettCentreOfFlotation(t *testing.T) {
	v := WeightChange.New()
	v.LBP, v.LCF, v.TPC, v.MCT = new(100.0), new(50-3.158), in(190.0/60, "t/cm"), in(100, "t.m/cm")
	v.DraftFwd, v.DraftAft = new(3.80), new(4.50)
	v.Changes = []Change{{Mass: 100e3, X: 26}, {Mass: 30e3, X: 80}, {Mass: 60e3, X: 65}}
	out, err := WeightChange.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "change of trim", out.TrimChange, "cm", 0, 0.01)
	agrees(t, "draft aft", out.DraftAft, "m", 5.10, 0.01)
	agrees(t, "draft forward", out.DraftFwd, "m", 4.40, 0.01)
}

// Identity: weights put on and taken off again leave her as she was; a weight at the centre of flotation changes no trim.
func TestWeightChangeIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := ship120()
		v.Displacement, v.GM, v.KG = in(9000, "t"), new(0.8), new(6.0)
		c := Change{Mass: *in(rapid.Float64Range(-300, 300).Draw(t, "m"), "t"), X: rapid.Float64Range(0, 120).Draw(t, "x"),
			Y: rapid.Float64Range(-8, 8).Draw(t, "y"), Z: new(rapid.Float64Range(0, 15).Draw(t, "z"))}
		back := c
		back.Mass = -c.Mass
		v.Changes = []Change{c, back}
		out, err := WeightChange.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(out.DraftAft-*v.DraftAft) > 1e-9 || math.Abs(out.DraftFwd-*v.DraftFwd) > 1e-9 || math.Abs(*out.VCG-*v.KG) > 1e-9 || math.Abs(*out.Heel) > 1e-9 {
			t.Fatalf("on and off again leaves %+v", out)
		}
		c.X = *v.LCF
		v.Changes = []Change{c}
		if out, err = WeightChange.Fn(v); err != nil || math.Abs(out.TrimChange) > 1e-12 {
			t.Fatalf("a weight at the centre of flotation trims her by %g (%v)", out.TrimChange, err)
		}
		if out.Heel != nil && c.Mass*c.Y != 0 && math.Signbit(*out.Heel) != math.Signbit(c.Mass*c.Y) {
			t.Fatalf("%g t at y %g heels her by %g", c.Mass, c.Y, *out.Heel)
		}
	})
}

func TestWeightChangeSaysUnstable(t *testing.T) {
	v := ship120()
	v.Displacement, v.GM, v.KG = in(9000, "t"), new(0.1), new(6.0)
	v.Changes = []Change{{Name: "gun house", Mass: 200e3, X: 60, Z: new(16.0)}}
	out, err := WeightChange.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != "unstable" || out.Heel != nil {
		t.Errorf("GM %g, verdict %q, heel %v", *out.GM, out.Verdict, out.Heel)
	}
}

func TestWeightChangeRefuses(t *testing.T) {
	v := ship120()
	v.Changes = []Change{{Name: "anchor", Mass: 1000, X: 840}}
	if _, err := WeightChange.Fn(v); !refused(err, "changes[0].x") {
		t.Errorf("x in decimetres: %v", err)
	}
	v.Changes = nil
	if _, err := WeightChange.Fn(v); !refused(err, "changes") {
		t.Errorf("no weights: %v", err)
	}
	v = ship120()
	v.Displacement, v.Changes = in(100, "t"), []Change{{Mass: -200e3, X: 60}}
	if _, err := WeightChange.Fn(v); !refused(err, "changes") {
		t.Errorf("more off than she weighs: %v", err)
	}
	v.TPC = nil
	if _, err := WeightChange.Fn(v); !refused(err, "tpc") {
		t.Errorf("no tpc: %v", err)
	}
}

// Computed, closed form for a box: the state of rest after a weight comes on; and for a small weight the hand formula says the same.
func TestWeightChangeHull(t *testing.T) {
	v := WeightChange.New()
	v.Hull, v.Mass, v.LCG, v.VCG = new(box(60, 12, 6)), in(2214, "t"), new(30.0), new(4.6)
	v.Changes = []Change{{Mass: *in(73.8, "t"), X: 30, Z: new(4.6)}}
	out, err := WeightChange.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "sinkage", out.Sinkage, "cm", 10, 1e-6)
	agrees(t, "GM", *out.GM, "m", 3.1/2+144/(12*3.1)-4.6, 1e-6)
	v.Changes = []Change{{Mass: *in(5, "t"), X: 40, Y: 0.5, Z: new(6.0)}}
	if out, err = WeightChange.Fn(v); err != nil {
		t.Fatal(err)
	}
	h := WeightChange.New()
	h.LBP, h.LCF, h.TPC, h.MCT = new(60.0), new(30.0), in(7.38, "t/cm"), in(2214*(1.5+100-4.6)/6000, "t.m/cm")
	h.DraftFwd, h.DraftAft, h.Displacement, h.GM, h.KG, h.Changes = new(3.0), new(3.0), in(2214, "t"), new(0.9), new(4.6), v.Changes
	hand, err := WeightChange.Fn(h)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "trim by hand", hand.TrimChange, "cm", out.TrimChange*100, 0.02)
	agrees(t, "heel by hand", *hand.Heel, "deg", *out.Heel/degree, 0.005)
	agrees(t, "centre of gravity by hand", *hand.VCG, "m", *out.VCG, 1e-9)
	v.Changes[0].Z = nil
	if _, err := WeightChange.Fn(v); !refused(err, "changes[0].z") {
		t.Errorf("no height: %v", err)
	}
	v.Changes = []Change{{Name: "gun", Mass: *in(400, "t"), X: 30, Z: new(9.0)}}
	if out, err = WeightChange.Fn(v); err == nil && out.Verdict != "unstable" {
		t.Errorf("400 t at 9 m: %q", out.Verdict)
	}
}

func ExampleWeightChange() {
	v := WeightChange.New()
	v.LBP, v.LCF, v.TPC, v.MCT = new(120.0), new(60.0), new(10e5), new(250e5) // m, kg/m, kg m/m
	v.DraftFwd, v.DraftAft = new(6.70), new(7.30)
	v.Changes = []Change{{Name: "cargo", Mass: -220e3, X: 84}}
	out, _ := WeightChange.Fn(v)
	fmt.Printf("%.2f m forward, %.2f m aft\n", out.DraftFwd, out.DraftAft)
	// Output: 6.37 m forward, 7.19 m aft
}
