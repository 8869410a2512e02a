package assess

import (
	"math"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// box is a box hull, 60 m by 12 m and 6 m deep, drawing 3 m: 2214 t, 7.38 t/cm, 36.9 t.m/cm (all by closed form).
func box(t *testing.T) *dossier.Dossier {
	d := dossier.New()
	put(t, d, "ship", ship.Particulars{Name: "Box", LBP: new(60.0), Beam: new(12.0), Depth: new(6.0), KG: new(5.0), Keeper: "the trust", TitleOwner: "the state"})
	corners := [][]float64{}
	for _, x := range []float64{0, 60} {
		for _, y := range []float64{-6, 6} {
			for _, z := range []float64{0, 6} {
				corners = append(corners, []float64{x, y, z})
			}
		}
	}
	faces := [][4]int{{0, 1, 3, 2}, {4, 6, 7, 5}, {0, 4, 5, 1}, {2, 3, 7, 6}, {0, 2, 6, 4}, {1, 5, 7, 3}}
	triangles := [][]int{}
	for _, f := range faces {
		triangles = append(triangles, []int{f[0], f[1], f[2]}, []int{f[0], f[2], f[3]})
	}
	put(t, d, "hull", ship.HullForm{Vertices: corners, Triangles: triangles})
	put(t, d, "mark-f", ship.DraftMark{Position: "forward", X: new(60.0)})
	put(t, d, "mark-a", ship.DraftMark{Position: "aft", X: new(0.0)})
	put(t, d, "draft-1", survey.Draft{Seen: survey.Seen{Date: date(t, "2026-04-01")}, FwdPort: new(3.0), AftPort: new(3.0), Density: new(1025.0)})
	return d
}

func TestCourseMovesTheShip(t *testing.T) {
	d := box(t)
	put(t, d, "m", plan.Matter{Name: "Propellers", Due: date(t, "2026-12-01")})
	// 7.38 t off from 20 m abaft the centre of flotation: 1 cm up, 7.38*20/36.9 = 4 cm of trim by the head.
	put(t, d, "off", plan.Course{Matter: "m", Name: "Off", CostLow: new(60000.0), CostLikely: new(80000.0), CostHigh: new(130000.0), Days: new(5 * 86400.0), MassOff: new(7380.0), X: new(10.0), Z: new(2.0), Custody: "ashore", Consent: "asked"})
	put(t, d, "on", plan.Course{Matter: "m", Name: "Stay", Leaves: new(true)})
	b := brief(t, d, "2026-05-01")
	if len(b.Choices.Courses) != 2 {
		t.Fatalf("%d courses", len(b.Choices.Courses))
	}
	off, on := b.Choices.Courses[0], b.Choices.Courses[1]
	for _, w := range []struct {
		f    Figure
		want float64
		tol  float64
	}{{off.Mass, 7.38, 1e-9}, {off.Sinkage, -0.01, 1e-5}, {off.Trim, -4, 1e-3}, {off.Days, 5, 1e-9}, {off.Low, 60000, 0}, {off.Likely, 80000, 0}, {off.High, 130000, 0}, {on.Mass, 0, 0}, {on.Sinkage, 0, 0}} {
		if w.f.Value == nil || math.Abs(*w.f.Value-w.want) > w.tol {
			t.Errorf("%s: %+v, want %v", w.f.Label, w.f, w.want)
		}
	}
	if s, ok := b.Sheet(off.Trim.Sheet); !ok || s.Method != "afloat.weight-change" {
		t.Errorf("the trim has no sheet: %q", off.Trim.Sheet)
	}
	if s, ok := b.Sheet(off.Cost.Sheet); !ok || s.Method != "money.estimate" || *off.Cost.P10 < 60000 || *off.Cost.P90 > 130000 {
		t.Errorf("the cost has no band within its ends: %+v", off.Cost)
	}
	if on.Cost.Text != notYet || on.Cost.Value != nil {
		t.Errorf("a course without a cost must say not yet: %+v", on.Cost)
	}
	if !strings.HasPrefix(off.Gate, "shut: the state was asked") || len(b.Choices.Gates) != 1 || on.Gate != "" {
		t.Errorf("gate %q, %d notices", off.Gate, len(b.Choices.Gates))
	}
	if d := b.Front.Decision; d == nil || d.ID != "m" || d.Due != "2026-12-01" {
		t.Errorf("next decision %+v", d)
	}
}

func TestGateOpensOnlyOnAnAnswer(t *testing.T) {
	c := &inquiry{}
	for _, w := range []struct{ consent, owner, want string }{
		{"given", "", gateOpen}, {"not needed", "the state", gateOpen}, {"refused", "the state", "shut: the state refused"}, {"", "", "shut: nobody has written down"},
		{"unknown", "the state", "shut: title rests with the state"}, {"needed", "", "shut: consent of the holder of title"},
	} {
		if got := c.gateWords(w.consent, w.owner); !strings.HasPrefix(got, w.want) {
			t.Errorf("%q, %q: %q", w.consent, w.owner, got)
		}
	}
}

func TestPlanThatContradictsItself(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Glands"})
	put(t, d, "a", plan.Course{Matter: "m", Name: "Repack"})
	put(t, d, "b", plan.Course{Matter: "m", Name: "Cover", Excludes: []string{"w"}})
	put(t, d, "w", plan.Work{Name: "Shafts turned", Needs: []string{"v"}})
	put(t, d, "v", plan.Work{Name: "Bearings opened"})
	put(t, d, "s", plan.Scheme{Name: "all", Standing: new(true), Courses: []string{"a", "b"}, Works: []string{"w"}})
	b := brief(t, d, "2026-05-01")
	put(t, d, "y", plan.Work{Name: "Plates", Needs: []string{"z"}})
	put(t, d, "z", plan.Work{Name: "Frames", Needs: []string{"y"}})
	if n := len(brief(t, d, "2026-05-01").Choices.Conflicts); n != 4 {
		t.Errorf("%d conflicts with two works that wait for each other", n)
	}
	if n := len(b.Choices.Conflicts); n != 3 {
		t.Errorf("%d conflicts: %+v", n, b.Choices.Conflicts)
	}
}

func TestTriggerReadsAsASentence(t *testing.T) {
	d := dossier.New()
	put(t, d, "t", plan.Trigger{Place: ship.Place{Strake: "G", Side: ship.Port}, Finding: "doubler", Measure: "thickness", Limit: new(7.5), Unit: "mm", When: "below", Then: "all six off", Money: new(150000.0), Days: new(6 * 86400.0), Decider: "the board's three", Hours: new(24 * 3600.0), Agreed: date(t, "2026-10-15")})
	put(t, d, "u", plan.Trigger{Finding: "coating", Direction: "better", Then: "spot repair", Money: new(70000.0)})
	b := brief(t, d, "2026-11-01")
	want := "If a doubler at strake G, port is found with its thickness below 7.5 mm, then all six off, worth up to 150 000 EUR and 6 days, decided by the board's three within 24 hours."
	if got := spaced(b.Choices.Triggers[0].Sentence); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got := b.Choices.Triggers[1]; spaced(got.Sentence) != "If the coating is found good, then spot repair, which releases up to 70 000 EUR." || got.Lacks != "who decides, how fast, the day it was agreed" {
		t.Errorf("%+v", got)
	}
}
