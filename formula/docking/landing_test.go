package docking

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

// hand fills the particulars in the units of the tables: t, m, t/cm, t m/cm.
func hand(w, l, lcf, fwd, aft, kg, km, tpc, mct float64) LandingIn {
	v := Landing.New()
	v.Displacement, v.LBP, v.LCF, v.DraftFwd, v.DraftAft = in(w, "t"), in(l, "m"), in(lcf, "m"), in(fwd, "m"), in(aft, "m")
	v.KG, v.KM, v.TPC, v.MCT = in(kg, "m"), in(km, "m"), in(tpc, "t/cm"), in(mct, "t.m/cm")
	return v
}

// Published: Derrett, Ship Stability for Masters and Mates, ch. 28, largest trim for a GM of 0.30 m: 120 cm by the first method, 126.3 cm by the
// second. The source gives no drafts and no TPC; they do not enter.
func TestLandingPublishedDerrettLargestTrim(t *testing.T) {
	v := hand(3000, 100, 48, 4, 5, 5.5, 6, 10, 40)
	v.GMRequired = 0.30
	out, err := Landing.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "largest trim", *out.TrimMax, "cm", 120, 1)
	agrees(t, "largest trim, second method", *out.TrimMaxAlt, "cm", 126.3, 0.1)
}

// Published: Dubey, exercises on dry docking.
func TestLandingPublishedDubey(t *testing.T) {
	out, err := Landing.Fn(hand(11000, 180, 80, 6.10, 6.70, 6.8, 7.2, 22, 155))
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", out.Upthrust, "t", 116.25, 0.01)
	agrees(t, "GM", out.GM, "m", 0.324, 0.001)
	agrees(t, "landing draft", out.LandingDraft, "m", 6.380, 0.002) // the source rounds two terms to a millimetre before it adds

	out, err = Landing.Fn(hand(3000, 84, 40, 4.0, 4.5, 4.05, 4.5, 12, 80))
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", out.Upthrust, "t", 100, 1)
	agrees(t, "GM", out.GM, "m", 0.30, 0.01)
	agrees(t, "draft at LCF afloat", out.DraftLCF, "m", 4.262, 0.001)
}

// Published: Dubey, exercise 8, question 8 (as worked at marinegyaan.com): free surfaces counted over W - P.
func TestLandingPublishedDubeyFreeSurface(t *testing.T) {
	v := hand(8487, 140, 72.1, 3.0, 5.8, 8.6, 9.57, 20, 161)
	v.FreeSurface = *in(800, "t.m")
	out, err := Landing.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", out.Upthrust, "t", 625.24, 0.01)
	agrees(t, "loss of GM", out.GMLoss, "m", 0.705, 0.001)
	agrees(t, "GM", out.GM, "m", 0.163, 0.001)
	degree, _ := quantity.ToBase(1, "deg")
	agrees(t, "moment of statical stability at 1 degree", out.RightingMoment*math.Sin(degree), "t.m", 8487*0.163*math.Sin(degree), 0.2)
}

// Published: Derrett, ch. 28, example 4: an even-keel ship of 5000 t, KM 6 m, KG 5.5 m, TPC 50, water fallen 0.24 m after she lies flat: upthrust 1200 t.
// At that upthrust KM is no longer enough, which is what the fall from lying flat to turning unstable must say.
func TestLandingPublishedDerrettFlat(t *testing.T) {
	out, err := Landing.Fn(hand(5000, 100, 50, 5, 5, 5.5, 6, 50, 60))
	if err != nil {
		t.Fatal(err)
	}
	if out.Upthrust != 0 {
		t.Errorf("on an even keel the upthrust at landing is %g", out.Upthrust)
	}
	agrees(t, "critical upthrust", out.Critical, "t", 416.67, 0.01)
	if fall := *in(0.24, "m"); out.Margin > fall {
		t.Errorf("she is still stable after a fall of 0.24 m (margin %.4f m), but 1200 t x 6 m > 5000 t x 0.5 m", out.Margin)
	}
}

func TestLandingSaysUnsafeFirst(t *testing.T) {
	v := hand(11000, 180, 80, 6.10, 9.10, 7.0, 7.2, 22, 155)
	out, err := Landing.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	if out.Verdict != Unsafe || !strings.HasPrefix(out.Reason, "UNSAFE") || len(out.Warnings) == 0 || out.Warnings[0] != out.Reason {
		t.Errorf("verdict %q, reason %q, warnings %q", out.Verdict, out.Reason, out.Warnings)
	}
	if !strings.Contains(out.Change, "trim") || !strings.Contains(out.Change, "centre of gravity") {
		t.Errorf("nothing says what would change it: %q", out.Change)
	}
}

// Identity: what the sheet says would change the verdict does change it.
func TestLandingRemedyHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := draw(t)
		out, err := Landing.Fn(v)
		if err != nil || out.Verdict == Safe {
			return
		}
		p := v.Particulars
		s := standing{w: *p.Displacement, kg: *p.KG, km: *p.KM, fsm: p.FreeSurface, tpc: *p.TPC, p: out.Upthrust, gmRequired: p.GMRequired, margin: p.MarginNeeded}
		down := s.lower()
		if s.w-s.p-s.margin*s.tpc <= 0 || down >= *p.KG {
			return
		}
		v.KG = new(*p.KG - down - 1e-9)
		if out, err = Landing.Fn(v); err != nil || out.Verdict != Safe {
			t.Fatalf("with G down by %g she is %q (%s), %v", down, out.Verdict, out.Reason, err)
		}
	})
}

func draw(t *rapid.T) LandingIn {
	l := rapid.Float64Range(20, 250).Draw(t, "l")
	km := rapid.Float64Range(2, 15).Draw(t, "km")
	w := rapid.Float64Range(3, 200).Draw(t, "w/l") * l
	v := hand(w, l, l*rapid.Float64Range(0.4, 0.6).Draw(t, "lcf"), 4, 4+rapid.Float64Range(-2, 3).Draw(t, "trim"),
		km*rapid.Float64Range(0.7, 1).Draw(t, "kg"), km, w/300, w*l/8000)
	v.FreeSurface = *in(rapid.Float64Range(0, 0.1).Draw(t, "fsm")*w, "t.m")
	v.BlockSlope = rapid.Float64Range(-0.3, 0.3).Draw(t, "slope")
	return v
}

// Identity: the two ways to write the loss of GM are one righting moment, and all of the water fall is accounted for.
func TestLandingIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := draw(t)
		out, err := Landing.Fn(v)
		if err != nil {
			return
		}
		w, p := *v.Displacement, out.Upthrust
		if a, b := w*out.GM, (w-p)*out.GMAlt; math.Abs(a-b) > 1e-9*math.Abs(a)+1e-9 {
			t.Fatalf("W GM = %g, (W-P) GM' = %g", a, b)
		}
		if v.FreeSurface == 0 {
			if lost := out.GMAfloat - out.GMAlt; math.Abs(lost-p**v.KG/(w-p)) > 1e-9 {
				t.Fatalf("second loss %g, P KG/(W-P) %g", lost, p**v.KG/(w-p))
			}
		}
		before := draftAt(out.ContactUsed, *v.LBP, *v.DraftFwd, *v.DraftAft)
		after := draftAt(out.ContactUsed, *v.LBP, out.LandingFwd, out.LandingAft)
		if math.Abs(before-after-out.WaterFall) > 1e-9 {
			t.Fatalf("draft at the block goes from %g to %g, the water falls %g", before, after, out.WaterFall)
		}
		if math.Abs(out.LandingAft-out.LandingFwd-v.BlockSlope) > 1e-9 {
			t.Fatalf("she does not lie on the blocks: %g", out.LandingAft-out.LandingFwd)
		}
	})
}

// Identity: at the critical upthrust no righting moment is left; at the largest trim the GM is the one wanted.
func TestLandingCritical(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := draw(t)
		v.BlockSlope = 0
		out, err := Landing.Fn(v)
		if err != nil || *out.TrimMax <= 0 {
			return
		}
		v.DraftAft = new(*v.DraftFwd + math.Copysign(*out.TrimMax, out.Trim))
		if *v.DraftAft < 0 {
			return
		}
		again, err := Landing.Fn(v)
		if err != nil {
			return
		}
		if math.Abs(again.GM-v.GMRequired) > 1e-9 {
			t.Fatalf("at the largest trim GM is %g, wanted %g", again.GM, v.GMRequired)
		}
	})
}

func TestLandingRefuses(t *testing.T) {
	good := func() LandingIn { return hand(3000, 84, 40, 4.0, 4.5, 4.05, 4.5, 12, 80) }
	cases := map[string]struct {
		field string
		spoil func(*LandingIn)
	}{
		"LCF from amidships":       {"lcf", func(v *LandingIn) { v.LCF = new(-2.0) }},
		"LCF beyond the bow":       {"lcf", func(v *LandingIn) { v.LCF = new(90.0) }},
		"contact on the wrong end": {"contact", func(v *LandingIn) { v.Contact = new(80.0) }},
		"contact ashore":           {"contact", func(v *LandingIn) { v.Contact = new(400.0) }},
		"drafts in feet":           {"draft_aft", func(v *LandingIn) { v.DraftAft, v.DraftFwd = new(35.0), new(3.0) }},
		"mct in kg":                {"draft_aft", func(v *LandingIn) { v.MCT = in(80000, "t.m/cm") }},
		"no KM":                    {"km", func(v *LandingIn) { v.KM = nil }},
		"no drafts":                {"draft_fwd", func(v *LandingIn) { v.DraftFwd = nil }},
	}
	for name, c := range cases {
		v := good()
		c.spoil(&v)
		_, err := Landing.Fn(v)
		var e *field.Error
		if !errors.As(err, &e) || e.Field != c.field {
			t.Errorf("%s: %v, wanted a refusal of %s", name, err, c.field)
		}
	}
}

func ExampleLanding() {
	v := Landing.New()
	v.Displacement, v.LBP, v.LCF = new(11000e3), new(180.0), new(80.0) // kg, m
	v.DraftFwd, v.DraftAft = new(6.10), new(6.70)
	v.KG, v.KM = new(6.8), new(7.2)
	v.TPC, v.MCT = new(22e5), new(155e5) // kg/m, kg m/m
	out, _ := Landing.Fn(v)
	fmt.Printf("%.2f t, GM %.3f m, flat at %.2f m: %s\n", out.Upthrust/1000, out.GM, out.LandingDraft, out.Verdict)
	// Output: 116.25 t, GM 0.324 m, flat at 6.38 m: marginal
}
