package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// ScoreRow is one cell of the performance table: a course under a criterion, in the criterion's own unit.
type ScoreRow struct {
	Matter    string `json:"matter"`
	Course    string `json:"course"`
	Criterion string `json:"criterion"`
	Measured  string `json:"measured_in"`
	Score     Figure `json:"score"`
	Range     string `json:"worst_to_best"`

	matter, course, criterion string
	low, mid, high            float64
	known                     bool
}

// criteriaOf are the criteria a matter is judged by: its own and those that hold for every matter.
func (c *inquiry) criteriaOf(matter string) []dossier.Entry[plan.Criterion] {
	var own []dossier.Entry[plan.Criterion]
	for _, e := range dossier.All[plan.Criterion](c.d) {
		if e.Body.Matter == "" || e.Body.Matter == matter {
			own = append(own, e)
		}
	}
	return own
}

// scores makes the performance table: every course under every criterion of its matter, "not yet" where nobody has scored it.
func (c *inquiry) scores(p *ChoicesPage) {
	for _, m := range p.Matters {
		criteria := c.criteriaOf(m.ID)
		lacking := 0
		for _, r := range p.Courses {
			e, ok := dossier.Find[plan.Course](c.d, r.ID)
			if !ok || r.MatterID != m.ID {
				continue
			}
			for _, k := range criteria {
				s := scoreRow(e, k)
				s.Matter, s.Course, s.matter = m.Name, r.Name, m.ID
				if !s.known {
					lacking++
				}
				p.Scores = append(p.Scores, s)
			}
		}
		if lacking > 0 {
			p.Missing = append(p.Missing, Notice{What: fmt.Sprintf("%s: %s not filled.", m.Name, count(lacking, "score is", "scores are")), Do: "Score every course under every criterion, or the courses can't be weighed.", Kind: "course", Page: "choices"})
		}
	}
}

func scoreRow(e dossier.Entry[plan.Course], k dossier.Entry[plan.Criterion]) ScoreRow {
	s := ScoreRow{Criterion: k.Body.Name, Measured: k.Body.Unit, course: e.ID, criterion: k.ID}
	if k.Body.Worst != nil && k.Body.Best != nil {
		s.Range = fmt.Sprintf("%g to %g", *k.Body.Worst, *k.Body.Best)
	}
	s.Score = notYetFigure("score", k.Body.Name).of("course", e.ID)
	for i, id := range e.Body.Criteria {
		if id != k.ID || i >= len(e.Body.Scores) {
			continue
		}
		s.mid, s.known = e.Body.Scores[i], true
		s.low, s.high = s.mid, s.mid
		s.Score = points(k.Body.Name, s.mid, basisOf(e.Head, field.Assumed), e.BasisNote).of("course", e.ID)
		if i < len(e.Body.ScoresLow) && i < len(e.Body.ScoresHigh) {
			s.low, s.high = e.Body.ScoresLow[i], e.Body.ScoresHigh[i]
			if s.low != s.high {
				s.Score.Text = fmt.Sprintf("%g to %g, likely %g", s.low, s.high, s.mid)
			}
		}
		s.outside(k.Body)
	}
	return s
}

// outside flags a score that lies beyond the worst or the best of its criterion: it is weighed as it stands, and the swings were asked for another range.
func (s *ScoreRow) outside(k plan.Criterion) {
	if k.Worst == nil || k.Best == nil {
		return
	}
	low, high := min(*k.Worst, *k.Best), max(*k.Worst, *k.Best)
	switch {
	case s.mid < low || s.mid > high:
		s.Score.Worry, s.Score.Note = 2, "outside the range of the criterion, "+s.Range
	case s.low < low || s.high > high:
		s.Score.Worry, s.Score.Note = 1, "its range reaches outside that of the criterion, "+s.Range
	}
}

// points is a figure in a unit of the keeper's own.
func points(label string, x float64, basis field.Basis, from string) Figure {
	f := known("score", label, x, "-", basis, from)
	f.Text = fmt.Sprintf("%g", x)
	return f
}

// VoiceRow is one who is heard.
type VoiceRow struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Matter  string `json:"matter"`
	Prefers string `json:"prefers"`
	Accepts string `json:"accepts"`
	Refuses string `json:"refuses"`
	Words   string `json:"words"`
	Heard   string `json:"heard"`
}

func (c *inquiry) voices(p *ChoicesPage) {
	for _, e := range dossier.All[plan.Voice](c.d) {
		b := e.Body
		r := VoiceRow{ID: e.ID, Name: b.Name, Accepts: c.namesOf(b.Accepts), Refuses: c.namesOf(b.Refuses), Words: b.Words, Heard: b.Heard.String()}
		if b.Prefers != "" {
			r.Prefers = c.nameOf(b.Prefers)
		}
		if b.Matter != "" {
			r.Matter = c.nameOf(b.Matter)
		}
		p.Voices = append(p.Voices, r)
	}
}
