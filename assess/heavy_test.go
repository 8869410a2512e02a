package assess

import (
	"math"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// screwed is the box hull with one shaft: a tail of 4 m that can be drawn, a propeller of 2 m and 1000 kg cast in, 12 m2 of bronze in its zone.
func screwed(t *testing.T) *dossier.Dossier {
	t.Helper()
	d := box(t)
	put(t, d, "line", ship.ShaftLine{Name: "Shaft", LineSide: ship.Centre, Z: new(1.0), TubeBore: new(0.3), Tail: new(4.0)})
	put(t, d, "tail", ship.Segment{Line: "line", X0: new(0.5), X1: new(4.5), OuterDiameter: new(0.25), Density: new(7850.0), Tail: new(true), Wet: new(true)})
	put(t, d, "rest", ship.Segment{Line: "line", X0: new(4.5), X1: new(12.5), OuterDiameter: new(0.25), Density: new(7850.0)})
	for id, x := range map[string]float64{"bush": 2, "first": 6, "second": 11} {
		put(t, d, id, ship.Bearing{Line: "line", Name: id, X: new(x), Length: new(0.5), Diameter: new(0.25), Kind: "white-metal"})
	}
	put(t, d, "screw", ship.Propeller{Name: "Screw", Line: "line", X: new(0.8), Z: new(1.0), Diameter: new(2.0), Blades: new(4), BladeArea: new(3.0), Material: "manganese bronze", Mass: new(1000.0), MassFrom: "cast in", State: "on the shaft"})
	put(t, d, "bronze", ship.CoatingZone{Name: "Bronze", Exposure: "immersed", Metal: "bronze", Area: new(12.0), Density: new(0.15)})
	put(t, d, "bottom", ship.CoatingZone{Name: "Bottom", Exposure: "immersed", Metal: "steel", Area: new(100.0), Density: new(0.10), BareShare: new(0.5)})
	put(t, d, "m", plan.Matter{Name: "Propeller"})
	return d
}

func courseNamed(t *testing.T, p ChoicesPage, id string) CourseRow {
	t.Helper()
	for _, r := range p.Courses {
		if r.ID == id {
			return r
		}
	}
	t.Fatalf("no course %s", id)
	return CourseRow{}
}

// The five courses filled from the records. Identities: the tail weighs pi/4*0.25²*4*7850 = 1541.3 kg with its centre at 2.5 m; 3 of the 12 m2 of bronze at
// 150 mA/m2 are 0.45 A; a propeller taken off moves her by its mass as any weight does.
func TestFiveCoursesOfAPropeller(t *testing.T) {
	d := screwed(t)
	for id, parts := range map[string]string{"on": partsStay, "seal": partsSealed, "show": partsShown, "give": partsElsewhere, "tail-off": partsWithTail} {
		put(t, d, "c-"+id, plan.Course{Matter: "m", Name: id, HeavyParts: parts, RoadLimit: new(12000.0), Leaves: new(id == "on")})
	}
	p := brief(t, d, "2026-05-01").Choices
	near := func(what string, f *Figure, want, tolerance float64) {
		t.Helper()
		if f == nil || f.Value == nil || math.Abs(*f.Value-want) > tolerance {
			t.Errorf("%s: %+v, want %v", what, f, want)
		}
	}
	tail := math.Pi / 4 * 0.0625 * 4 * 7850
	for id, mass := range map[string]float64{"c-show": 1000, "c-give": 1000, "c-tail-off": 1000 + tail} {
		r := courseNamed(t, p, id)
		near(id+" mass", &r.Mass, mass/1000, 1e-4)
		near(id+" sinkage", &r.Sinkage, -mass/1000/7.38/100, 1e-5)
		near(id+" bare bronze", &r.Bare, 3, 1e-9)
		near(id+" current", r.Current, -0.45, 1e-3)
		for what, f := range map[string]*Figure{"mass": r.PartMass, "lift": r.Lift, "shackle": r.Shackle, "stand": r.Stand, "road": r.Road, "bearing": r.Bearing, "plate": r.Plate, "bolts": r.Bolts} {
			if f == nil || f.Value == nil || f.Sheet == "" {
				t.Errorf("%s: %s is not worked: %+v", id, what, f)
			}
		}
		if r.Road.Worry != 2 || !strings.Contains(r.Road.Text, "over by") {
			t.Errorf("%s: 12 t allowed, more on wheels, and nothing is said: %+v", id, r.Road)
		}
		if r.Gate == "" || r.Gate == gateOpen {
			t.Errorf("%s takes a part off and no gate stands: %q", id, r.Gate)
		}
	}
	on, seal := courseNamed(t, p, "c-on"), courseNamed(t, p, "c-seal")
	if on.PartMass.Text != "stays on" || on.Plate.Text != "none" || on.Bearing.Text != "as today" || *on.Current.Value != 0 {
		t.Errorf("left alone: %+v %+v", on.Plate, on.Current)
	}
	if seal.Plate.Value == nil || seal.Bolts.Value == nil || seal.Lift.Text != "stays on" {
		t.Errorf("sealed: %+v %+v", seal.Plate, seal.Lift)
	}
	if show := courseNamed(t, p, "c-show"); !strings.Contains(show.Bearing.Text, "more") {
		t.Errorf("a propeller off its overhang loads another bearing: %+v", show.Bearing)
	}
}

// What is entered stands: a weighed mass beats the records of the parts.
func TestEnteredMassOfACourseStands(t *testing.T) {
	d := screwed(t)
	put(t, d, "c", plan.Course{Matter: "m", Name: "off", HeavyParts: partsShown, MassOff: new(1200.0), X: new(1.0)})
	if r := courseNamed(t, brief(t, d, "2026-05-01").Choices, "c"); math.Abs(*r.Mass.Value-1.2) > 1e-9 || r.Mass.Basis == "computed" {
		t.Errorf("%+v", r.Mass)
	}
}

func TestEighthsAreSaid(t *testing.T) {
	for m, want := range map[float64]string{0.0254: "1", 0.015875: "5/8", 0.0254 * 1.125: "1 1/8", 0.0254 * 2.5: "2 1/2"} {
		if got := eighths(m); got != want {
			t.Errorf("%v m: %q, want %q", m, got, want)
		}
	}
}
