package docking

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/formula/afloat"
)

func boxShape(l, b, d float64) *afloat.Hull {
	row := []float64{b / 2, b / 2}
	return &afloat.Hull{Offsets: &afloat.Offsets{Stations: []float64{0, l}, Waterlines: []float64{0, d}, HalfBreadths: [][]float64{row, row}}}
}

func boxLanding(mass, lcg, kg float64) LandingIn {
	v := Landing.New()
	v.Hull, v.Mass, v.LCG, v.VCG = boxShape(60, 12, 6), in(mass, "t"), &lcg, &kg
	return v
}

// Computed, closed form: box 60 x 12 m, 2214 t, KG 5: flat at 3.0 m with GM 0.500; at 2.9 m 0.40167; none left at sqrt(6) m, where the blocks carry
// 406.28 t. At constant KM that would be 201.3 t.
func TestLandingHullBox(t *testing.T) {
	v := boxLanding(2214, 30, 5)
	out, err := Landing.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "landing draft", out.LandingDraft, "m", 3, 1e-6)
	agrees(t, "GM", out.GM, "m", 0.500, 1e-6)
	agrees(t, "instability draft", out.Instability, "m", math.Sqrt(6), 1e-6)
	agrees(t, "upthrust there", out.Critical, "t", 406.28, 0.01)
	agrees(t, "constant KM", *out.CriticalHand, "t", 201.3, 0.1)
	agrees(t, "margin", out.Margin, "m", 3-math.Sqrt(6), 1e-6)
	d, _, err := v.lowering(v.Particulars, 0)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "GM at 2.9 m", d.stage(2.9, 0).gm, "m", 0.40167, 0.00001)
	if out.Verdict != Safe {
		t.Errorf("%q: %s", out.Verdict, out.Reason)
	}
}

// Computed, closed form for a box: with the trim taken out about a block at the after end, rho L B T (L/2) = W xg gives the landing draft, and the
// upthrust is what is left of the weight.
func TestLandingHullBoxTrimmed(t *testing.T) {
	out, err := Landing.Fn(boxLanding(2214, 28.5, 4.6))
	if err != nil {
		t.Fatal(err)
	}
	draft := 2214 * 28.5 / (1.025 * 60 * 12 * 30)
	agrees(t, "landing draft", out.LandingDraft, "m", draft, 1e-6)
	agrees(t, "upthrust", out.Upthrust, "t", 2214-1.025*60*12*draft, 1e-4)
	km := draft/2 + 144/(12*draft)
	agrees(t, "GM", out.GM, "m", (1.025*60*12*draft*km-2214*4.6)/2214, 1e-6)
	if out.ContactUsed != 0 || out.Trim <= 0 {
		t.Errorf("trim %g, touches at %g", out.Trim, out.ContactUsed)
	}
	head, err := Landing.Fn(boxLanding(2214, 31.5, 4.6))
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "by the head the same", head.Upthrust, "t", out.Upthrust/1000, 1e-4)
	if head.ContactUsed != 60 {
		t.Errorf("by the head she touches at %g", head.ContactUsed)
	}
}

// Identity: for small trim the hand formula and the hull agree, the more the smaller it is.
func TestLandingHullAgreesWithHand(t *testing.T) {
	for _, off := range []float64{0.2, 0.02} {
		hull, err := Landing.Fn(boxLanding(2214, 30-off, 4.6))
		if err != nil {
			t.Fatal(err)
		}
		gml := 1.5 + 100 - 4.6
		v := hand(2214, 60, 30, 3-hull.Trim/2, 3+hull.Trim/2, 4.6, 5.5, 7.38, 2214*gml/(100*60))
		byHand, err := Landing.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		if rel := math.Abs(byHand.Upthrust/hull.Upthrust - 1); rel > 0.25*off {
			t.Errorf("lcg %g m aft: by hand %.2f t, with the hull %.2f t", off, byHand.Upthrust/1000, hull.Upthrust/1000)
		}
	}
}

// Identity: the largest trim, put back, leaves the GM wanted.
func TestLandingHullTrimMax(t *testing.T) {
	v := boxLanding(2214, 29.5, 4.9)
	v.GMRequired = 0.3
	out, err := Landing.Fn(v)
	if err != nil || out.TrimMax == nil {
		t.Fatal(out.TrimMax, err)
	}
	lcg := root(func(x float64) float64 {
		o, err := Landing.Fn(boxLanding(2214, x, 4.9))
		if err != nil {
			t.Fatal(err)
		}
		return o.GM - 0.3
	}, 25, 29.9)
	o, _ := Landing.Fn(boxLanding(2214, lcg, 4.9))
	agrees(t, "largest trim", *out.TrimMax, "m", o.Trim, 1e-5)
}

// Identity: mass and centre read from the drafts land her as those themselves do.
func TestLandingHullFromDrafts(t *testing.T) {
	a, err := Landing.Fn(boxLanding(2214, 29, 4.6))
	if err != nil {
		t.Fatal(err)
	}
	v := Landing.New()
	v.Hull, v.VCG = boxShape(60, 12, 6), new(4.6)
	v.DraftFwd, v.DraftAft = new(3-a.Trim/2), new(3+a.Trim/2)
	d, _, _ := boxLanding(2214, 29, 4.6).lowering(Particulars{}, 0)
	up, _ := d.afloat()
	v.DraftFwd, v.DraftAft = new(up.draft-up.trim/2), new(up.draft+up.trim/2)
	b, err := Landing.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", b.Upthrust, "t", a.Upthrust/1000, 1e-4)
}

func TestLandingHullUnsafe(t *testing.T) {
	out, err := Landing.Fn(boxLanding(2214, 30, 5.6))
	if err != nil || out.Verdict != Unsafe || !strings.Contains(out.Reason, "afloat") {
		t.Errorf("unstable afloat: %q %s %v", out.Verdict, out.Reason, err)
	}
	out, err = Landing.Fn(boxLanding(2214, 27, 5.4))
	if err != nil || out.Verdict != Unsafe || out.Margin >= 0 {
		t.Errorf("unstable before flat: %q %s margin %g %v", out.Verdict, out.Reason, out.Margin, err)
	}
	v := boxLanding(2214, 30, 5)
	v.Blocks = []Stand{{X: 35}, {X: 55}}
	if _, err := Landing.Fn(v); !refused(err, "blocks") {
		t.Errorf("no block abaft her centre of gravity: %v", err)
	}
	v = boxLanding(9000, 30, 5)
	if _, err := Landing.Fn(v); !refused(err, "mass") {
		t.Errorf("heavier than all she can displace: %v", err)
	}
}

// Computed, closed form for a box sinking to the blocks step by step: once flat P = W - rho L B T, and the GM at each level.
func TestSequenceBox(t *testing.T) {
	v := Sequence.New()
	v.Hull, v.Mass, v.LCG, v.VCG = boxShape(60, 12, 6), in(2214, "t"), new(29.5), new(4.6)
	v.Step = 0.25
	out, err := Sequence.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	landed := out.LandingLevel
	flat := 0
	for _, s := range out.Stages {
		if s.Level > landed-1e-9 || s.Direction != "docking" {
			continue
		}
		flat++
		agrees(t, "upthrust", s.Upthrust, "t", 2214-738*s.Level, 1e-6)
		if s.Level > 0 {
			agrees(t, "GM", s.GM, "m", (738*s.Level*(s.Level/2+12/s.Level)-2214*4.6)/2214, 1e-6)
		}
	}
	if flat < 8 {
		t.Errorf("%d stages flat", flat)
	}
}

// Identity: at every level the upthrust grows as the water falls and acts on the blocks; back up with the same weights the stages are the same.
func TestSequenceReversible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Sequence.New()
		v.Hull, v.Mass, v.VCG = boxShape(60, 12, 6), in(2214, "t"), new(4.0)
		v.LCG = new(rapid.Float64Range(28.5, 31.5).Draw(t, "lcg"))
		v.BlockSlope = rapid.Float64Range(-0.2, 0.2).Draw(t, "slope")
		v.Step = 0.2
		out, err := Sequence.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		n := len(out.Stages)
		for i, s := range out.Stages {
			back := out.Stages[n-1-i]
			if math.Abs(s.Level-back.Level) > 1e-9 || math.Abs(s.Upthrust-back.Upthrust) > 1e-3 {
				t.Fatalf("stage %d at %g m: %g kg down, %g kg up at %g m", i, s.Level, s.Upthrust, back.Upthrust, back.Level)
			}
			if s.Direction != "docking" {
				break
			}
			if i > 0 && s.Upthrust < out.Stages[i-1].Upthrust-1 {
				t.Fatalf("the water falls to %g m and the upthrust with it", s.Level)
			}
			if s.Centre != nil && (*s.Centre < -1e-3 || *s.Centre > 60+1e-3) {
				t.Fatalf("the blocks push at %g m", *s.Centre)
			}
		}
		dry := out.Stages[n/2]
		if math.Abs(dry.Upthrust-2214e3) > 2214e3*0.01 && dry.Level > 0.01 {
			t.Fatalf("dry at %g m the blocks carry %g of her weight", dry.Level, dry.Upthrust/2214e3)
		}
	})
}

func TestSequenceUndockingWithWeightsAsLeft(t *testing.T) {
	v := Sequence.New()
	v.Hull, v.Mass, v.LCG, v.VCG = boxShape(60, 12, 6), in(2214, "t"), new(30.0), new(4.6)
	v.Changes = []afloat.Change{{Name: "propellers off", Mass: *in(-60, "t"), X: 2, Z: new(1.0)}, {Name: "concrete out of the hold", Mass: *in(-250, "t"), X: 30, Z: new(0.4)}}
	out, err := Sequence.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "mass as left", out.MassLeft, "t", 1904, 1e-6)
	if out.GMLeft >= out.GMAfloat {
		t.Errorf("low weight off raises G: GM %g before, %g after", out.GMAfloat, out.GMLeft)
	}
	if out.VerdictUndocking == Safe && out.GMLeft < v.GMRequired {
		t.Error("undocking is called safe")
	}
	v.Changes[0].Mass = -3e6
	if _, err := Sequence.Fn(v); !refused(err, "changes") {
		t.Errorf("more off than she weighs: %v", err)
	}
}

func ExampleSequence() {
	v := Sequence.New()
	v.Hull, v.Mass, v.LCG, v.VCG = boxShape(60, 12, 6), new(2214e3), new(29.5), new(4.6)
	out, _ := Sequence.Fn(v)
	fmt.Printf("touches at %.2f m, flat at %.2f m, no stability left at %.2f m\n", out.TouchLevel, out.LandingLevel, out.InstabilityLevel)
	// Output: touches at 3.15 m, flat at 2.95 m, no stability left at 1.90 m
}
