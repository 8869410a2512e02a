package assess

import (
	"math"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/survey"
)

// Identity: a box of 60 x 12 m that sags 0.2 m along a parabola displaces two thirds of it more than her ends say, on the Choices page as on the Docking page.
func TestChoicesWeighHerBentForm(t *testing.T) {
	d := box(t)
	put(t, d, "draft-2", survey.Draft{Seen: survey.Seen{Date: date(t, "2026-04-20")}, FwdPort: new(3.0), AftPort: new(3.0), MidPort: new(3.2), MidStarboard: new(3.2), Density: new(1025.0)})
	put(t, d, "m", plan.Matter{Name: "Propellers"})
	put(t, d, "off", plan.Course{Matter: "m", Name: "Off", MassOff: new(7380.0), X: new(10.0), Z: new(2.0)})
	b := brief(t, d, "2026-05-01")
	s, ok := b.Sheet(b.Choices.Courses[0].Trim.Sheet)
	if !ok {
		t.Fatal("the trim has no sheet")
	}
	want := 60 * 12 * (3 + 0.2*2/3) * 1.025
	seen := false
	for _, in := range s.Inputs {
		if in.Key == "displacement" {
			seen = true
			if w, ok := in.Value.(float64); !ok || math.Abs(w-want) > 0.5 {
				t.Errorf("weighed as %v %s, %v t by her bent form", in.Value, in.Unit, want)
			}
		}
	}
	if !seen {
		t.Error("the sheet has no displacement")
	}
	if f := number(t, b.Docking.Afloat, "displacement"); math.Abs(f-want) > 0.5 {
		t.Errorf("the Docking page has %v t, want %v t", f, want)
	}
}

// A ship whose marks nobody read is taken at her design draft, and the sheet says so.
func TestChoicesWithoutMarks(t *testing.T) {
	c := newCase(dossier.New(), Plan{}, date(t, "2026-05-01"))
	if _, why := c.afloatNow(); why != "no hull form is entered" {
		t.Error(why)
	}
}
