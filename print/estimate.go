package print

import (
	"fmt"

	"oakum/assess"
	"oakum/print/page"
)

var estimate = Paper{
	Name: "estimate", Title: "Estimate", For: "treasurer, board: what the plan costs, line by line, and what makes it uncertain",
	Needs: func(b *assess.Brief) string {
		if len(b.Money.Lines) == 0 {
			return "no work with a cost is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.List(b.Money.Heading)
		d.Heading("The whole")
		r.figures(d, b.Money.Estimate)
		outside(d, b, &r)
		d.Heading("Line by line, as they stand in the records")
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Line", Share: 1}, {Head: "Low", Right: true}, {Head: "Likely", Right: true, Face: page.Bold}, {Head: "High", Right: true}, {Head: "Share of the spread", Right: true}, {Head: "State"}}}
		for _, l := range b.Money.Lines {
			t.Rows = append(t.Rows, []string{l.Name, l.Low.Text, l.Likely.Text, l.High.Text, l.Share.Text, l.Note})
		}
		d.Table(t)
		d.Note("The lines do not add up to the whole at low or high: not everything goes badly at once, and some of it does so together. The sheet says how they are added.")
		scope(d, b)
		r.list(d, b)
	},
}

// outside puts what happened to others beside the own lines; the two are never mixed.
func outside(d *page.Document, b *assess.Brief, r *references) {
	v := b.Money.Outside
	if v == nil {
		return
	}
	d.Heading("Beside it: what happened to others")
	t := page.Table{Columns: []page.Column{{Head: "What", Share: 1, Face: page.Bold}, {Head: "By our own lines", Right: true}, {Head: "By the others", Right: true}, {Head: "How known"}}}
	for _, x := range v.Rows {
		t.Rows = append(t.Rows, []string{x.What, x.Inside.Text, x.Outside.Text, r.from(x.Outside)})
	}
	if len(t.Rows) > 0 {
		d.Table(keep(t))
	}
	r.figures(d, v.More)
	for _, s := range v.Says {
		d.Note(s)
	}
}

// scope is what the money of today pays for, and what each further sum adds.
func scope(d *page.Document, b *assess.Brief) {
	if b.Money.Short != "" {
		d.Heading("What today's money pays for")
		d.Strong(sentence(b.Money.Short))
	}
	if len(b.Money.Scope) > 0 {
		d.Heading("What today's money pays for first")
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Work", Share: 1, Face: page.Bold}, {Head: "Now"}, {Head: "Cost", Right: true}, {Head: "Worth", Right: true}, {Head: "Must"}, {Head: "Only in dock"}}}
		for _, s := range b.Money.Scope {
			t.Rows = append(t.Rows, []string{s.Name, s.Now, s.Cost.Text, s.Worth.Text, mark(s.Must), mark(s.Dock)})
		}
		d.Table(keep(t))
	}
	if len(b.Money.Ladder) > 0 {
		d.Heading("As the money grows")
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "With", Face: page.Bold, Right: true}, {Head: "Works", Right: true}, {Head: "Cost", Right: true}, {Head: "Added", Share: 1}, {Head: "Dropped", Share: 1}}}
		for _, l := range b.Money.Ladder {
			t.Rows = append(t.Rows, []string{l.Money.Text, fmt.Sprint(l.Works), l.Cost.Text, l.Added, l.Dropped})
		}
		d.Table(keep(t))
	}
}

func mark(is bool) string {
	if is {
		return "yes"
	}
	return ""
}
