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
		d.List(c.Heading)
		for _, m := range c.Matters {
			matter(d, b, m, &r)
		}
		if len(c.Conflicts) > 0 {
			d.Heading("Cannot stand together")
			notices(d, c.Conflicts, "What")
		}
		if len(c.Gates) > 0 {
			d.Heading("May not be given away yet")
			notices(d, c.Gates, "What")
		}
		r.list(d, b)
	},
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
