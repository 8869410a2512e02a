package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/formula/choice"
	"oakum/plan"
)

// PollRow counts what the voices say of a course, in five ways.
type PollRow struct {
	Matter string `json:"matter"`
	Course string `json:"course"`
	Prefer int    `json:"prefer"`  // it is their first
	LiveBy int    `json:"live_by"` // first, or could live with it
	Refuse int    `json:"refuse"`
	Heard  int    `json:"heard"`
	// By whole orders: what they prefer stands above what they could live with, that above what they say nothing of, and that above what they refuse.
	Points float64 `json:"points"` // one for each course below it, half for each beside it
	Beats  int     `json:"beats"`  // how many other courses it beats one against one
	Beaten int     `json:"beaten"` // how many beat it
	Others int     `json:"others"` // how many others there are
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
	var rows []PollRow
	var ids []string
	for _, r := range p.Courses {
		if r.MatterID != m.ID {
			continue
		}
		ids = append(ids, r.ID)
		row := PollRow{Matter: m.Name, Course: r.Name, Heard: len(voices)}
		for _, v := range voices {
			switch says(v, r.ID) {
			case "prefers":
				row.Prefer, row.LiveBy = row.Prefer+1, row.LiveBy+1
			case "could live with":
				row.LiveBy++
			case "refuses":
				row.Refuse++
			}
		}
		rows = append(rows, row)
	}
	byOrder(rows, voices, ids)
	slices.SortStableFunc(rows, func(a, b PollRow) int { return cmp.Or(b.LiveBy-a.LiveBy, a.Refuse-b.Refuse, b.Prefer-a.Prefer) })
	return rows
}

// level is how high a course stands with a voice.
func level(v plan.Voice, course string) int {
	switch says(v, course) {
	case "prefers":
		return 3
	case "could live with":
		return 2
	case "refuses":
		return 0
	}
	return 1
}

// byOrder counts whole orders: points by rank, and course against course.
func byOrder(rows []PollRow, voices []plan.Voice, ids []string) {
	var ballots []choice.Ballot
	for _, v := range voices {
		b := choice.Ballot{Count: 1}
		for _, id := range ids {
			b.Level = append(b.Level, level(v, id))
		}
		ballots = append(ballots, b)
	}
	t := choice.Count(len(ids), ballots)
	for i := range rows {
		rows[i].Points, rows[i].Beats, rows[i].Others = t.Borda[i], t.Beats[i], len(ids)-1
		for j := range rows {
			if t.Over[j][i] > t.Over[i][j] {
				rows[i].Beaten++
			}
		}
	}
}

// counting is one way to count, with the courses it puts first.
type counting struct {
	by   string
	lead []string
}

func countings(rows []PollRow) []counting {
	return []counting{
		{"by first choices", leaders(rows, func(r PollRow) int { return r.Prefer })},
		{"by what most could live with", leaders(rows, func(r PollRow) int { return r.LiveBy })},
		{"refused least", leaders(rows, func(r PollRow) int { return -r.Refuse })},
		{"by rank", leaders(rows, func(r PollRow) int { return int(2 * r.Points) })},
		{"one against one", unbeaten(rows)},
	}
}

// agreed are the courses that every way of counting puts first, alone or with others.
func agreed(rows []PollRow) []string {
	ways := countings(rows)
	return slices.DeleteFunc(slices.Clone(ways[0].lead), func(course string) bool {
		return slices.ContainsFunc(ways, func(w counting) bool { return !slices.Contains(w.lead, course) })
	})
}

// differ says how the ways of counting point to different courses; "" where they agree on one at least.
func differ(rows []PollRow) string {
	if len(agreed(rows)) > 0 {
		return ""
	}
	var said []string
	for _, w := range countings(rows) {
		lead := strings.Join(w.lead, " and ")
		if lead == "" {
			lead = "none, as each is beaten by another"
		}
		said = append(said, w.by+" "+lead)
	}
	return strings.Join(said, "; ") + "."
}

// unbeaten are the courses that no other beats, one against one.
func unbeaten(rows []PollRow) (names []string) {
	for _, r := range rows {
		if r.Beaten == 0 {
			names = append(names, r.Course)
		}
	}
	return names
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
			w.Words = "Every way of counting puts " + strings.Join(agreed(rows), " and ") + " first, alone or with another."
		} else {
			w.Words = "The ways of counting differ: " + w.Words + " First choices can split among courses that are alike; assent and rank favour what few mind; one against one can go round. Agree on the way before counting."
		}
		list = append(list, w)
		from = to
	}
	return list
}

func leaders(rows []PollRow, score func(PollRow) int) []string {
	best := score(slices.MaxFunc(rows, func(a, b PollRow) int { return cmp.Compare(score(a), score(b)) }))
	var names []string
	for _, r := range rows {
		if score(r) == best {
			names = append(names, r.Course)
		}
	}
	return names
}
