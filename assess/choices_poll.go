package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
)

// PollRow counts what the voices say of a course, in three ways.
type PollRow struct {
	Matter string `json:"matter"`
	Course string `json:"course"`
	Prefer int    `json:"prefer"`  // it is their first
	LiveBy int    `json:"live_by"` // first, or could live with it
	Refuse int    `json:"refuse"`
	Heard  int    `json:"heard"`
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
	for _, r := range p.Courses {
		if r.MatterID != m.ID {
			continue
		}
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
	slices.SortStableFunc(rows, func(a, b PollRow) int { return cmp.Or(b.LiveBy-a.LiveBy, a.Refuse-b.Refuse, b.Prefer-a.Prefer) })
	return rows
}

// differ says how first choices, assent and refusal point to different courses; "" where they agree.
func differ(rows []PollRow) string {
	first := leaders(rows, func(r PollRow) int { return r.Prefer })
	assent := leaders(rows, func(r PollRow) int { return r.LiveBy })
	calm := leaders(rows, func(r PollRow) int { return -r.Refuse })
	for _, r := range first {
		if slices.Contains(assent, r) && slices.Contains(calm, r) {
			return ""
		}
	}
	return fmt.Sprintf("by first choices %s; by what most could live with %s; refused least %s.", strings.Join(first, " and "), strings.Join(assent, " and "), strings.Join(calm, " and "))
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
