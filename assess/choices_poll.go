package assess

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/choice"
	"oakum/plan"
)

// PollRow counts what the voices say of a course, in five ways.
type PollRow struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"`
	Matter string `json:"matter"`
	Course string `json:"course"`
	Prefer Figure `json:"prefer"`  // it is their first
	LiveBy Figure `json:"live_by"` // first, or could live with it
	Refuse Figure `json:"refuse"`
	Heard  Figure `json:"heard"`
	// By whole orders: what they prefer stands above what they could live with, that above what they say nothing of, and that above what they refuse.
	Points Figure `json:"points"` // one for each course below it, half for each beside it
	Beats  Figure `json:"beats"`  // how many other courses it beats one against one

	poll *choice.PollOut // of its matter
}

// PollWords says of one matter how the ways of counting come out, and why they may differ.
type PollWords struct {
	Matter string `json:"matter"`
	Words  string `json:"words"`
	Agree  bool   `json:"agree"`
}

// polls counts the voices of each matter, and says where the ways of counting differ: the first choice of most may be what others refuse.
func (c *inquiry) polls(p *ChoicesPage) {
	for _, m := range p.Matters {
		rows := c.pollOf(p, m)
		if len(rows) == 0 {
			continue
		}
		p.Polls = append(p.Polls, rows...)
		if words := differ(rows); words != "" {
			p.Close = append(p.Close, Notice{What: m.Name + ": " + words, Do: "The way of counting decides here: agree on it before counting.", Kind: "matter", ID: m.ID, Page: "choices"})
		}
	}
}

func (c *inquiry) pollOf(p *ChoicesPage, m MatterRow) []PollRow {
	var voices []plan.Voice
	for _, e := range dossier.All[plan.Voice](c.d) {
		if e.Body.Matter == m.ID && (e.Body.Prefers != "" || len(e.Body.Accepts)+len(e.Body.Refuses) > 0) {
			voices = append(voices, e.Body)
		}
	}
	if len(voices) == 0 {
		return nil
	}
	in := choice.PollIn{}
	names, courses := map[string]string{}, map[string]CourseRow{}
	for _, r := range p.Courses {
		if _, twice := courses[r.Name]; r.MatterID == m.ID {
			if twice {
				r.Name += " (" + r.ID + ")"
			}
			names[r.ID], courses[r.Name], in.Courses = r.Name, r, append(in.Courses, r.Name)
		}
	}
	for _, v := range voices {
		b := choice.Ballot{Who: v.Name, Count: 1}
		for _, r := range p.Courses {
			name, known := names[r.ID]
			if !known || r.MatterID != m.ID {
				continue
			}
			switch says(v, r.ID) {
			case "prefers":
				b.Prefers = append(b.Prefers, name)
			case "could live with":
				b.Accepts = append(b.Accepts, name)
			case "refuses":
				b.Refuses = append(b.Refuses, name)
			}
		}
		in.Ballots = append(in.Ballots, b)
	}
	sheet, out, err := work(c.book, choice.Poll, m.ID, "the voices on "+m.Name, in, map[string]field.Given{"courses": how(field.Documented, "as entered"), "ballots": how(field.Documented, "the voices entered")})
	if err != nil {
		return nil
	}
	var rows []PollRow
	for _, t := range out.Table {
		cell := func(key, label string, x float64, note string) Figure {
			f := known(key, label, x, "-", field.Computed, "")
			f.Text, f.Note, f.Sheet = strconv.FormatFloat(x, 'f', -1, 64), note, sheet.ID
			return f
		}
		rows = append(rows, PollRow{ID: courses[t.Course].ID, Kind: "course", Matter: m.Name, Course: t.Course, poll: &out,
			Prefer: cell("prefer", "whose first it is", float64(t.First), ""), LiveBy: cell("live_by", "who could live with it", float64(t.LiveBy), ""), Refuse: cell("refuse", "who refuse it", float64(t.Refuse), ""),
			Points: cell("points", "points by rank", t.Points, ""), Beats: cell("beats", "courses it beats", float64(t.Beats), "of "+count(len(in.Courses)-1, "other", "others")), Heard: cell("heard", "voices heard", float64(out.Heard), "")})
	}
	of := func(f Figure) int { return int(*f.Value) }
	slices.SortStableFunc(rows, func(a, b PollRow) int {
		return cmp.Or(of(b.LiveBy)-of(a.LiveBy), of(a.Refuse)-of(b.Refuse), of(b.Prefer)-of(a.Prefer))
	})
	return rows
}

// differ says how the ways of counting point to different courses; "" where they agree on one at least.
func differ(rows []PollRow) string {
	out := rows[0].poll
	if len(out.Agreed) > 0 {
		return ""
	}
	var said []string
	for _, w := range out.Ways {
		lead := strings.Join(w.Lead, " and ")
		if lead == "" {
			lead = "none, as each is beaten by another"
		}
		said = append(said, w.By+" "+lead)
	}
	return strings.Join(said, "; ") + "."
}

// pollWords says for each matter that was polled how the ways of counting come out.
func pollWords(polls []PollRow) []PollWords {
	list := []PollWords{}
	for from := 0; from < len(polls); {
		to := from
		for to < len(polls) && polls[to].Matter == polls[from].Matter {
			to++
		}
		rows := polls[from:to]
		w := PollWords{Matter: rows[0].Matter, Words: differ(rows)}
		if w.Agree = w.Words == ""; w.Agree {
			w.Words = "Every way of counting puts " + strings.Join(rows[0].poll.Agreed, " and ") + " first, alone or with another."
		} else {
			w.Words = "The ways of counting differ: " + w.Words + " First choices can split among courses that are alike; assent and rank favour what few mind; one against one can go round. Agree on the way before counting."
		}
		list = append(list, w)
		from = to
	}
	return list
}
