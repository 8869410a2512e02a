package docking

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

// stranded fills the particulars in the units of the tables; w, kg and km of zero are left out.
func stranded(w, l, lcf, fwd, aft, kg, km, tpc, mct float64) AgroundIn {
	v := Aground.New()
	v.LBP, v.LCF, v.TPC, v.MCT = in(l, "m"), in(lcf, "m"), in(tpc, "t/cm"), in(mct, "t.m/cm")
	v.DraftFwd, v.DraftAft = in(fwd, "m"), in(aft, "m")
	if w > 0 {
		v.Displacement, v.KG, v.KM = in(w, "t"), in(kg, "m"), in(km, "m")
	}
	return v
}

// Published: Dubey, exercise 9 (grounding), question 2: a rock 12 m abaft the stem or 55 m from the centre of flotation, fall of 80 cm.
// The source calls it "12 m abaft the stern" and works it forward of the centre of flotation, 73 m from aft.
func TestAgroundPublishedDubeyFall(t *testing.T) {
	v := stranded(18500, 140, 73, 5.23, 5.74, 5.80, 6.40, 18, 130)
	v.Contact, v.Fall = new(128.0), in(80, "cm")
	out, err := Aground.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", out.Upthrust, "t", 360.74, 0.01)
	agrees(t, "trim change", out.TrimChange, "m", 1.526, 0.001)
	agrees(t, "GM", *out.GM, "m", 0.475, 0.001)
	agrees(t, "rise", out.Rise, "m", 0.200, 0.001)
	agrees(t, "draft forward", *out.DraftFwd, "m", 4.300, 0.002) // the source adds two terms, each rounded to a millimetre
	agrees(t, "draft aft", *out.DraftAft, "m", 6.336, 0.002)
}

// Published: Dubey, exercise 9, question 1: from the drafts aground; free-surface moment 1372 t m, KG such that the solid GM is 0.98 m.
func TestAgroundPublishedDubeyDrafts(t *testing.T) {
	v := stranded(16130, 142, 71, 6.70, 8.86, 7.26, 8.24, 23.4, 192)
	v.AgroundFwd, v.AgroundAft, v.FreeSurface = new(5.90), new(9.30), *in(1372, "t.m")
	out, err := Aground.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "upthrust", out.Upthrust, "t", 421.2, 0.1)
	agrees(t, "contact forward of LCF", out.ContactFromLCF, "m", 56.52, 0.02) // 56.525: the source cuts
	agrees(t, "contact from the after perpendicular", out.Contact, "m", 127.52, 0.02)
	agrees(t, "loss of GM", *out.GMLoss, "m", 0.215, 0.001)
	agrees(t, "GM", *out.GM, "m", 0.678, 0.002)                      // 0.765 less 0.0873, each rounded
	agrees(t, "refloating rise", out.RefloatRise, "cm", 67.35, 0.02) // the source cuts 18 + 49.359 to 67.35
}

// Published: Dubey, exercise 9, question 3: she turns unstable at 450 t, after a fall of 1.067 m, drafts then 2.969 and 5.833 m.
func TestAgroundPublishedDubeyInstability(t *testing.T) {
	v := stranded(7200, 120, 62, 4.200, 5.100, 6.0, 6.4, 16, 110)
	v.Contact, v.Fall = new(110.0), in(1.0665, "m")
	out, err := Aground.Fn(v)
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, "critical upthrust", *out.Critical, "t", 450, 1)
	agrees(t, "fall to instability", *out.FallCritical, "m", 1.067, 0.001)
	agrees(t, "draft forward", *out.DraftFwd, "m", 2.969, 0.002)
	agrees(t, "draft aft", *out.DraftAft, "m", 5.833, 0.002)
	if out.Verdict == Safe {
		t.Error("on the brink she is called safe")
	}
	v.Fall = in(1.2, "m")
	if out, err = Aground.Fn(v); err != nil || out.Verdict != Unsafe {
		t.Errorf("past it she is %q, %v", out.Verdict, err)
	}
}

// Published: Dubey, exercise 9, questions 4, 5 and 8: residual GM.
func TestAgroundPublishedDubeyMore(t *testing.T) {
	for name, c := range map[string]struct {
		w, l, lcf, kg, km, tpc, mct, contact float64
		p, gm                                float64
	}{
		"question 4": {6400, 120, 62, 5.1, 6.4, 15, 110, 105, 386.95, 0.913},
		"question 8": {15185, 180, 94.06, 8.0, 8.5, 36.9, 378, 172.5, 680.67, 0.119},
	} {
		v := stranded(c.w, c.l, c.lcf, 4.4, 4.7, c.kg, c.km, c.tpc, c.mct)
		v.Contact, v.Fall = &c.contact, in(80, "cm")
		out, err := Aground.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, name+" upthrust", out.Upthrust, "t", c.p, 0.02)
		agrees(t, name+" GM", *out.GM, "m", c.gm, 0.001)
	}
}

// Identity: the drafts that the first form gives, put into the second, give back the upthrust, the point and the fall.
func TestAgroundFormsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.Float64Range(20, 250).Draw(t, "l")
		v := stranded(0, l, l*rapid.Float64Range(0.4, 0.6).Draw(t, "lcf"), 6, 6.5, 0, 0, l/8, l*l/150)
		v.Contact, v.Fall = new(l*rapid.Float64Range(0, 1).Draw(t, "contact")), new(rapid.Float64Range(0.01, 1).Draw(t, "fall"))
		a, err := Aground.Fn(v)
		if err != nil {
			return
		}
		v.AgroundFwd, v.AgroundAft, v.Fall, v.Contact = a.DraftFwd, a.DraftAft, nil, nil
		b, err := Aground.Fn(v)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(a.Upthrust-b.Upthrust) > 1e-6*a.Upthrust || math.Abs(a.Contact-b.Contact) > 1e-6*l || math.Abs(a.Fall-b.Fall) > 1e-6 {
			t.Fatalf("%+v\n%+v", a, b)
		}
	})
}

func TestAgroundRefuses(t *testing.T) {
	v := stranded(7200, 120, 62, 4.2, 5.1, 6, 6.4, 16, 110)
	v.AgroundFwd, v.AgroundAft = new(4.3), new(5.2)
	if _, err := Aground.Fn(v); !refused(err, "draft_fwd_aground") {
		t.Errorf("deeper than afloat: %v", err)
	}
	v.AgroundFwd, v.AgroundAft, v.Contact, v.Fall = nil, nil, new(62.0), new(9.0)
	if _, err := Aground.Fn(v); !refused(err, "fall") {
		t.Errorf("more upthrust than weight: %v", err)
	}
	v.Fall = nil
	if _, err := Aground.Fn(v); !refused(err, "fall") {
		t.Errorf("neither fall nor drafts: %v", err)
	}
}

func refused(err error, name string) bool {
	var e *field.Error
	return errors.As(err, &e) && e.Field == name
}

func ExampleAground() {
	v := Aground.New()
	v.LBP, v.LCF, v.TPC, v.MCT = new(140.0), new(73.0), new(18e5), new(130e5) // m, kg/m, kg m/m
	v.Contact, v.Fall = new(128.0), new(0.80)
	out, _ := Aground.Fn(v)
	fmt.Printf("%.2f t on the bottom, %.3f m by the stern\n", out.Upthrust/1000, out.TrimChange)
	// Output: 360.74 t on the bottom, 1.526 m by the stern
}
