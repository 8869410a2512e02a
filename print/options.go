package print

import (
	"fmt"

	"oakum/assess"
	"oakum/print/page"
)

var options = Paper{
	Name: "options", Title: "Options paper", For: "everybody with a say: each question, its courses side by side, who wants what", Across: true,
	Needs: func(b *assess.Brief) string {
		if len(b.Choices.Matters) == 0 {
			return "no matter is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		c := b.Choices
		d.OnOnePage(func(d *page.Document, short bool) {
			d.List(c.Heading)
			mattersAtOnce(d, b, short)
			plansApart(d, b)
			if len(c.Conflicts) > 0 {
				d.Heading("Cannot stand together")
				notices(d, c.Conflicts, "What")
			}
			if len(c.Gates) > 0 {
				d.Heading("May not be given away yet")
				notices(d, c.Gates, "What")
			}
		})
		d.Turn()
		d.Heading("Annex: each question, its courses side by side")
		for _, m := range c.Matters {
			matter(d, b, m, &r)
		}
		r.list(d, b)
	},
}

// mattersAtOnce is the one table that a board reads: what is asked, by when, what the plan would answer, and how close it is.
func mattersAtOnce(d *page.Document, b *assess.Brief, short bool) {
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Question", Share: 2, Face: page.Bold}, {Head: "By"}, {Head: "Settled by"}, {Head: "The plan takes", Share: 1}, {Head: "Cost", Right: true}, {Head: "State, close calls", Share: 1}}}
	for _, m := range b.Choices.Matters {
		calls := 0
		for _, n := range b.Choices.Close {
			if n.ID == m.ID {
				calls++
			}
		}
		state := m.State
		if calls > 0 {
			state = fmt.Sprintf("%s; %d close", m.State, calls)
		}
		name := words(": ", m.Name, m.Question)
		if short {
			name = m.Name
		}
		t.Rows = append(t.Rows, []string{name, m.Due, m.Who, m.Taken, m.Cost.Text, state})
	}
	d.Table(keep(t))
}

// plansApart says what separates the plans on the same futures.
func plansApart(d *page.Document, b *assess.Brief) {
	f := b.Outlook.Futures
	if f == nil || len(f.Apart) == 0 {
		return
	}
	d.Heading("What separates the plans")
	d.List(f.Apart)
}

func matter(d *page.Document, b *assess.Brief, m assess.MatterRow, r *references) {
	d.Keep(60)
	d.Heading(words(": ", m.Name, m.Question))
	d.Text(sentences(words(", ", capital(m.State), "for "+m.Who+" to settle", "by "+m.Due), "The plan takes: "+m.Taken, m.Why))
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Course", Face: page.Bold, Share: 1}, {Head: "Cost"}, {Head: "A year after"}, {Head: "Days in dock"}, {Head: "Taken off"}, {Head: "Holds for"}, {Head: "Risk", Share: 1}, {Head: "Heritage", Share: 1}, {Head: "Needs, rules out", Share: 1}, {Head: "How known"}}}
	for _, c := range b.Choices.Courses {
		if c.MatterID != m.ID {
			continue
		}
		name := c.Name
		if c.Taken {
			name += " (in the plan)"
		}
		t.Rows = append(t.Rows, []string{name, c.Cost.Text, c.Yearly.Text, c.Days.Text, c.Mass.Text, c.Holds.Text, words("; ", c.Risk, c.RiskLeft.Text+" of the risk stays"), words("; ", c.Heritage, c.Gate), words("; ", c.Needs, c.RulesOut), r.from(c.Cost)})
	}
	if len(t.Rows) > 0 {
		d.Table(keep(t))
	}
	weighed(d, b, m)
	voices(d, b, m)
}

// weighed shows how the courses stand by the swing weights, in the order of the brief.
func weighed(d *page.Document, b *assess.Brief, m assess.MatterRow) {
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Weighed", Face: page.Bold, Share: 1}, {Head: "Rank", Right: true}, {Head: "Value", Right: true}, {Head: "First in this share of all weightings", Right: true}, {Head: "of those between the voices", Right: true}, {Head: "Note"}}}
	for _, w := range b.Choices.Weighed {
		if w.Matter != m.Name {
			continue
		}
		note := ""
		if w.Dominated {
			note = "another equals or beats it on every count"
		}
		t.Rows = append(t.Rows, []string{w.Course, fmt.Sprint(w.Rank), w.Value.Text, w.First.Text, w.Between.Text, note})
	}
	if len(t.Rows) > 0 {
		d.Table(keep(t))
	}
}

func voices(d *page.Document, b *assess.Brief, m assess.MatterRow) {
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Voice", Face: page.Bold}, {Head: "Wants", Share: 1}, {Head: "Could live with", Share: 1}, {Head: "Refuses", Share: 1}, {Head: "In their words", Share: 1}, {Head: "Heard"}}}
	for _, v := range b.Choices.Voices {
		if v.Matter == m.Name {
			t.Rows = append(t.Rows, []string{v.Name, v.Prefers, v.Accepts, v.Refuses, v.Words, v.Heard})
		}
	}
	if len(t.Rows) > 0 {
		d.Table(keep(t))
	}
}
