package assess

import (
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/plan"
)

// WeighedRow is what a course is worth by the swings, 0 to 100. The table of scores stands beside it.
type WeighedRow struct {
	Matter    string `json:"matter"`
	Course    string `json:"course"`
	Rank      int    `json:"rank"`
	Value     Figure `json:"value"`
	First     Figure `json:"first_in"`        // share of all weightings there are
	Between   Figure `json:"first_in_voices"` // share of those between the voices
	HeardFor  int    `json:"voices_for"`
	Dominated bool   `json:"dominated"` // another equals or beats it on every criterion
}

// VoiceValueRow is what a course is worth to one voice.
type VoiceValueRow struct {
	Matter string `json:"matter"`
	Voice  string `json:"voice"`
	Course string `json:"course"`
	Value  Figure `json:"value"`
	Says   string `json:"says"` // what the voice itself says of the course
}

// SwitchRow is where the lead changes.
type SwitchRow struct {
	Matter    string `json:"matter"`
	Criterion string `json:"criterion"`
	Now       Figure `json:"swing_now"`
	At        Figure `json:"lead_changes_at"`
	To        string `json:"lead_goes_to"`
}

// weighing is one matter on the scales.
type weighing struct {
	matter MatterRow
	in     choice.WeighIn
	ids    map[string]string // of a course by its name
	voices []dossier.Entry[plan.Voice]
}

func (c *inquiry) weighings(p *ChoicesPage) {
	for _, m := range p.Matters {
		if m.State == "dropped" {
			continue
		}
		w, why := c.weighing(p, m)
		if why != "" {
			p.Missing = append(p.Missing, Notice{What: m.Name + ": the courses can't be weighed, as " + why + ".", Do: "The table of scores stands without it.", Kind: "criterion", Page: "choices"})
			continue
		}
		if len(w.in.Courses) < 2 {
			continue
		}
		sheet, out, err := work(c.book, choice.Weigh, m.ID, m.Name, w.in, map[string]field.Given{
			"criteria": how(field.Assumed, "the criteria entered, with their swings"), "courses": how(field.Assumed, "the scores entered"), "voices": how(field.Documented, "as heard; a criterion that a voice does not name has no swing for it"), "close": how(field.Assumed, "default, from memory")})
		if err != nil {
			p.Missing = append(p.Missing, Notice{What: m.Name + ": the courses can't be weighed: " + refusalWords(err) + ".", Do: "Correct that entry.", Kind: "criterion", Page: "choices", Worry: 1})
			continue
		}
		c.weighedRows(p, w, sheet, out)
	}
	c.objections(p)
}

// weighing puts a matter on the scales: the criteria on which every scored course has a score. why says what is lacking.
func (c *inquiry) weighing(p *ChoicesPage, m MatterRow) (w weighing, why string) {
	w = weighing{matter: m, in: choice.Weigh.New(), ids: map[string]string{}}
	byCourse := map[string]map[string]float64{}
	var order []string
	for _, s := range p.Scores {
		if s.matter != m.ID || !s.known {
			continue
		}
		if byCourse[s.course] == nil {
			byCourse[s.course] = map[string]float64{}
			order = append(order, s.course)
		}
		byCourse[s.course][s.criterion] = s.mid
	}
	if len(order) == 0 {
		return w, "" // nobody has scored anything: the page asks for that elsewhere
	}
	var used []string
	for _, k := range c.criteriaOf(m.ID) {
		all := !slices.ContainsFunc(order, func(id string) bool { _, ok := byCourse[id][k.ID]; return !ok })
		if b := k.Body; all && b.Worst != nil && b.Best != nil && *b.Worst != *b.Best {
			used = append(used, k.ID)
			w.in.Criteria = append(w.in.Criteria, choice.Criterion{Name: b.Name, Unit: b.Unit, Worst: *b.Worst, Best: *b.Best, Swing: b.Swing})
		}
	}
	if len(used) == 0 {
		return w, "no criterion has both its ends and a score for every course"
	}
	for _, id := range order {
		t := choice.Contender{Name: c.nameOf(id)}
		if _, twice := w.ids[t.Name]; twice {
			t.Name += " (" + id + ")"
		}
		w.ids[t.Name] = id
		for _, k := range used {
			t.Scores = append(t.Scores, byCourse[id][k])
		}
		w.in.Courses = append(w.in.Courses, t)
	}
	c.hear(&w, used)
	return w, w.settle()
}

// hear adds the voices that give swings for this matter.
func (c *inquiry) hear(w *weighing, used []string) {
	for _, e := range dossier.All[plan.Voice](c.d) {
		b := e.Body
		if b.Matter != "" && b.Matter != w.matter.ID || len(b.Swings) == 0 {
			continue
		}
		v := choice.Voice{Name: b.Name, Swings: make([]float64, len(used))}
		heard := false
		for i, id := range b.Criteria {
			if k := slices.Index(used, id); k >= 0 && i < len(b.Swings) {
				v.Swings[k] = b.Swings[i]
				heard = heard || b.Swings[i] > 0
			}
		}
		if heard {
			w.in.Voices, w.voices = append(w.in.Voices, v), append(w.voices, e)
		}
	}
}

// settle leaves swings to the criteria where all have one, and to the voices otherwise.
func (w *weighing) settle() string {
	lacking := slices.ContainsFunc(w.in.Criteria, func(k choice.Criterion) bool { return k.Swing == nil })
	if lacking && len(w.in.Voices) == 0 {
		return "not every criterion has a swing and no voice gives any"
	}
	if lacking {
		for i := range w.in.Criteria {
			w.in.Criteria[i].Swing = nil
		}
	}
	return ""
}

func (c *inquiry) weighedRows(p *ChoicesPage, w weighing, sheet calc.Sheet, out choice.WeighOut) {
	cell := func(label string, x float64) Figure {
		f := points(label, round(x), field.Computed, "")
		f.Key, f.Sheet, f.Text = "value", sheet.ID, fmt.Sprintf("%.0f of 100", x)
		return f
	}
	share := func(key, label string, x float64) Figure {
		f := known(key, label, x, "%", field.Computed, "")
		f.Sheet, f.Text = sheet.ID, fmt.Sprintf("%.0f %%", x*100)
		return f
	}
	wins := map[string]choice.WinShare{}
	for _, s := range out.WinShare {
		wins[s.Course] = s
	}
	for i, s := range out.Value {
		id := w.ids[s.Course]
		r := WeighedRow{Matter: w.matter.Name, Course: s.Course, Rank: i + 1, Value: cell("value", s.Value).of("course", id), First: share("first", "first in", wins[s.Course].All),
			Between: notYetFigure("first_voices", "first between the voices"), Dominated: slices.Contains(out.Beaten, s.Course)}
		if v := wins[s.Course].Voices; v != nil {
			r.Between = share("first_voices", "first between the voices", *v)
		}
		if v := wins[s.Course].Heard; v != nil {
			r.HeardFor = *v
		}
		p.Weighed = append(p.Weighed, r)
		for k, v := range w.voices {
			p.VoiceValues = append(p.VoiceValues, VoiceValueRow{Matter: w.matter.Name, Voice: v.Body.Name, Course: s.Course, Value: cell(v.Body.Name, s.Voices[k]).of("voice", v.ID), Says: says(v.Body, id)})
		}
	}
	for _, x := range out.Close {
		if x.A != out.Best && x.B != out.Best {
			continue // further down the order: on the sheet
		}
		p.Close = append(p.Close, Notice{What: fmt.Sprintf("%s: %s and %s are %.0f of 100 apart: %s.", w.matter.Name, x.A, x.B, x.Difference, x.Why), Do: "Decide by what the table of scores can't hold, and write down why.", Kind: "matter", ID: w.matter.ID, Page: "choices"})
	}
	if n := len(out.Warnings); n > 0 {
		p.Missing = append(p.Missing, Notice{What: w.matter.Name + ": " + count(n, "score lies", "scores lie") + " outside the worst and best of its criterion.", Do: "Move the ends, and ask for the swings again: a swing is from this worst to this best.", Kind: "criterion", Page: "choices", Worry: 1})
	}
	for _, x := range out.Switch {
		p.Switches = append(p.Switches, SwitchRow{Matter: w.matter.Name, Criterion: x.Criterion, Now: swing("swing now", x.Now, sheet.ID), At: swing("lead changes at", x.At, sheet.ID), To: x.To})
	}
}

func swing(label string, x float64, sheet string) Figure {
	f := points(label, round(x), field.Computed, "")
	f.Key, f.Sheet, f.Text = "swing", sheet, fmt.Sprintf("%.0f", x)
	return f
}

// says is what a voice itself says of a course.
func says(v plan.Voice, course string) string {
	switch {
	case v.Prefers == course:
		return "prefers"
	case slices.Contains(v.Refuses, course):
		return "refuses"
	case slices.Contains(v.Accepts, course):
		return "could live with"
	}
	return ""
}

// objections says where the plan takes what a voice refuses: a sum of points does not answer a refusal.
func (c *inquiry) objections(p *ChoicesPage) {
	for _, e := range dossier.All[plan.Voice](c.d) {
		for _, id := range e.Body.Refuses {
			if c.takes(id) {
				p.Close = append(p.Close, Notice{What: e.Body.Name + " refuses " + c.nameOf(id) + ", which the plan takes.", Do: "Hear why before it is decided, and write the objection into the decision.", Kind: "voice", ID: e.ID, Page: "choices", Worry: 1})
			}
		}
	}
}
