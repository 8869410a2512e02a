package assess

import (
	"math"
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

// Swings 100, 80, 40, 20 and points (100,60,0,100), (60,100,70,40), (0,30,100,0): by hand 70.000, 73.333, 26.667; the first two tie where the first
// swing is 120.
func TestCoursesAreWeighed(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Propellers"})
	names := []string{"k1", "k2", "k3", "k4"}
	for i, s := range []float64{100, 80, 40, 20} {
		put(t, d, names[i], plan.Criterion{Name: names[i], Worst: new(0.0), Best: new(100.0), Swing: new(s)})
	}
	for id, scores := range map[string][]float64{"a": {100, 60, 0, 100}, "b": {60, 100, 70, 40}, "c": {0, 30, 100, 0}} {
		put(t, d, id, plan.Course{Matter: "m", Name: "course " + id, Criteria: names, Scores: scores})
	}
	put(t, d, "v", plan.Voice{Name: "curator", Matter: "m", Criteria: []string{"k1"}, Swings: []float64{100}, Prefers: "a", Refuses: []string{"b"}})
	put(t, d, "s", plan.Scheme{Name: "one", Standing: new(true), Courses: []string{"b"}})
	p := brief(t, d, "2026-05-01").Choices
	if len(p.Weighed) != 3 {
		t.Fatalf("%+v %+v", p.Weighed, p.Missing)
	}
	for i, want := range []struct {
		name  string
		value float64
	}{{"course b", 73.333}, {"course a", 70}, {"course c", 26.667}} {
		if r := p.Weighed[i]; r.Course != want.name || math.Abs(*r.Value.Value-want.value) > 0.0005 {
			t.Errorf("%d: %s %v", i, r.Course, *r.Value.Value)
		}
	}
	tie := false
	for _, s := range p.Switches {
		tie = tie || s.Criterion == "k1" && math.Abs(*s.At.Value-120) < 1e-6 && s.To == "course a"
	}
	if !tie {
		t.Errorf("no tie at 120: %+v", p.Switches)
	}
	// For the curator only the first criterion counts: a 100, b 60; the plan takes what the curator refuses.
	for _, v := range p.VoiceValues {
		if v.Course == "course a" && (*v.Value.Value != 100 || v.Says != "prefers") || v.Course == "course b" && (*v.Value.Value != 60 || v.Says != "refuses") {
			t.Errorf("%+v", v)
		}
	}
	if len(p.Close) < 2 {
		t.Errorf("a lead of 3.3 that a voice refuses is a close call: %+v", p.Close)
	}
	if len(p.Scores) != 12 {
		t.Errorf("%d scores in the table", len(p.Scores))
	}
}

// Three voices: two first choices for a, which the third refuses; all could live with b.
func TestWaysOfCountingDiffer(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Propellers"})
	put(t, d, "a", plan.Course{Matter: "m", Name: "off"})
	put(t, d, "b", plan.Course{Matter: "m", Name: "sealed"})
	put(t, d, "v1", plan.Voice{Name: "one", Matter: "m", Prefers: "a", Accepts: []string{"b"}})
	put(t, d, "v2", plan.Voice{Name: "two", Matter: "m", Prefers: "a", Accepts: []string{"b"}})
	put(t, d, "v3", plan.Voice{Name: "three", Matter: "m", Prefers: "b", Refuses: []string{"a"}})
	p := brief(t, d, "2026-05-01").Choices
	if r := p.Polls[0]; r.Course != "sealed" || *r.Prefer.Value != 1 || *r.LiveBy.Value != 3 || *r.Refuse.Value != 0 || *r.Heard.Value != 3 {
		t.Errorf("%+v", p.Polls)
	}
	if len(p.Close) != 1 || p.Close[0].What != "Propellers: by first choices off; by what most could live with sealed; refused least sealed; by rank off; one against one off." { // two of three put off above sealed
		t.Errorf("%+v", p.Close)
	}
}

// A course beyond the worst of a criterion is said to be so, and keeps its points below nought: it is not cut off at the end of the range.
func TestScoreOutsideItsCriterionIsFlagged(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Coating"})
	put(t, d, "k", plan.Criterion{Name: "Cost", Unit: "thousand euro", Worst: new(260.0), Best: new(0.0), Swing: new(100.0)})
	put(t, d, "a", plan.Course{Matter: "m", Name: "Full", Criteria: []string{"k"}, Scores: []float64{560}})
	put(t, d, "b", plan.Course{Matter: "m", Name: "Spot", Criteria: []string{"k"}, Scores: []float64{130}, ScoresLow: []float64{100}, ScoresHigh: []float64{300}})
	c := brief(t, d, "2026-05-01").Choices
	for _, s := range c.Scores {
		want := map[string]struct {
			worry int
			note  string
		}{"Full": {2, "outside the range of the criterion, 260 to 0"}, "Spot": {1, "its range reaches outside that of the criterion, 260 to 0"}}[s.Course]
		if s.Score.Worry != want.worry || s.Score.Note != want.note {
			t.Errorf("%s: worry %d, %q", s.Course, s.Score.Worry, s.Score.Note)
		}
	}
	// 100 (560-260)/(0-260) = -115.4
	if v := c.Weighed[1].Value; v.Value == nil || *v.Value > -115 || *v.Value < -116 {
		t.Errorf("value %+v", v)
	}
}
