package assess

import (
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

// Four of nine want to leave, three to seal, two to take off; those who want to take off could live with sealing, and so could two who want to leave. First
// choices say leave; every other way says seal. Counted by hand: seal stands above leave with five and below it with four, above off with seven and below it
// with two; off stands above leave with five, as those who want to seal refuse to leave, and below it with four.
func TestThePollsDiffer(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "propellers", Question: "Where do they go?"})
	for _, id := range []string{"leave", "seal", "off"} {
		put(t, d, id, plan.Course{Matter: "m", Name: id})
	}
	voice := func(id, prefers string, accepts, refuses []string) {
		put(t, d, id, plan.Voice{Name: id, Matter: "m", Prefers: prefers, Accepts: accepts, Refuses: refuses})
	}
	for _, id := range []string{"a", "b"} {
		voice(id, "leave", []string{"seal"}, []string{"off"})
	}
	for _, id := range []string{"c", "d"} {
		voice(id, "leave", nil, []string{"off"})
	}
	for _, id := range []string{"e", "f", "g"} {
		voice(id, "seal", nil, []string{"leave"})
	}
	for _, id := range []string{"h", "i"} {
		voice(id, "off", []string{"seal"}, []string{"leave"})
	}
	p := brief(t, d, "2026-05-01").Record
	got := map[string]PollRow{}
	for _, r := range p.Polls {
		got[r.Course] = r
	}
	// Points: leave 4 x 2 = 8; seal 2 x 1 + 2 x 1 + 3 x 2 + 2 x 1 = 12; off 3 x 1 + 2 x 2 = 7; in all 9 x 3 = 27.
	if r := got["seal"]; *r.Prefer.Value != 3 || *r.LiveBy.Value != 7 || *r.Refuse.Value != 0 || *r.Points.Value != 12 || *r.Beats.Value != 2 {
		t.Errorf("seal: %+v", r)
	}
	if r := got["leave"]; *r.Prefer.Value != 4 || *r.Points.Value != 8 || *r.Beats.Value != 0 {
		t.Errorf("leave: %+v", r)
	}
	for _, r := range p.Polls {
		for _, f := range []Figure{r.Prefer, r.LiveBy, r.Refuse, r.Points, r.Beats, r.Heard} {
			if f.Sheet == "" {
				t.Errorf("%s: no sheet for %s", r.Course, f.Label)
			}
		}
	}
	if r := got["off"]; *r.Points.Value != 7 || *r.Beats.Value != 1 {
		t.Errorf("off: %+v", r)
	}
	if len(p.PollWords) != 1 || p.PollWords[0].Agree || !strings.Contains(p.PollWords[0].Words, "by first choices leave; by what most could live with seal; refused least seal; by rank seal; one against one seal.") {
		t.Errorf("%+v", p.PollWords)
	}
}
