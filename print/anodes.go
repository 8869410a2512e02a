package print

import (
	"fmt"

	"oakum/assess"
	"oakum/calc"
	"oakum/print/drawing"
	"oakum/print/page"
)

var anodePlan = Paper{
	Name: "anodes", Title: "Anode plan", For: "diver, yard: every anode, where it is, what is left of it, and what she needs", Across: true,
	Needs: func(b *assess.Brief) string {
		if len(b.Standing.Anodes) == 0 {
			return "no anode is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Diving.Text()})
		var r references
		var lives []assess.Figure
		for _, a := range b.Standing.Anodes {
			f := a.Left
			f.Kind, f.ID = "anode", a.ID
			lives = append(lives, f)
		}
		d.List(b.Standing.Protection.Says)
		d.Heading("Where they are")
		if dr, err := b.Drawing(); err == nil {
			places := numbered(dr, lives)
			drawing.Profile(d, dr, places)
			drawing.Plan(d, dr, places)
			d.Note("By the numbers of the list. A black ring is spent or nearly so.")
		}
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "No.", Right: true}, {Head: "Anode", Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "Alloy"}, {Head: "How many", Right: true}, {Head: "Fitted"}, {Head: "Seen"}, {Head: "Left", Right: true}, {Head: "Spent", Face: page.Bold}, {Head: "Says"}, {Head: "How known"}}}
		for i, a := range b.Standing.Anodes {
			t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), a.Name, a.Place, a.Alloy, fmt.Sprint(a.Count), a.Fitted, a.Seen, a.Share.Text, a.Left.Text, a.Says, r.mark(a.Left.Sheet)})
		}
		d.Table(keep(t))
		d.Note("Fit as many forward as aft and as many to port as to starboard; keep clear of suctions, sounders and the arcs of the propellers; weld or bolt, and test that each is joined to the hull (common practice). Never paint an anode.")
		protection(d, b, &r)
		d.Sign(page.Signer{Who: "Cathodic protection specialist", For: "checked"}, page.Signer{Who: "Fitted and seen", For: "each as listed, or the remark beside it"})
		r.list(d, b)
	},
}

// protection prints what she asks for, what would give it, and how she has been protected.
func protection(d *page.Document, b *assess.Brief, r *references) {
	p := b.Standing.Protection
	if len(p.Demand) > 0 {
		d.Heading("What she asks for")
		t := page.Table{Columns: []page.Column{{Head: "Zone", Face: page.Bold, Share: 1}, {Head: "Metal"}, {Head: "Wetted area", Right: true}, {Head: "Bare now", Right: true}, {Head: "Current, mean of ten years", Right: true}, {Head: "Share", Right: true}, {Head: "How known"}}}
		for _, x := range p.Demand {
			t.Rows = append(t.Rows, []string{x.Zone, x.Metal, x.Area.Text, x.Bare.Text, x.Current.Text, x.Share.Text, r.from(x.Current)})
		}
		d.Table(t)
		r.figures(d, append(append([]assess.Figure{}, p.Asked...), p.Water...))
	}
	if len(p.Anodes) > 0 {
		d.Heading("Anodes that would do it")
		t := page.Table{Columns: []page.Column{{Head: "With"}, {Head: "Alloy", Face: page.Bold}, {Head: "Ohm, one", Right: true}, {Head: "Anodes", Right: true}, {Head: "Net mass", Right: true}, {Head: "They last", Right: true}, {Head: "Enough"}, {Head: "Says", Share: 1}, {Head: "How known"}}}
		for _, x := range p.Anodes {
			t.Rows = append(t.Rows, []string{x.For, x.Alloy, x.Ohms.Text, x.Count.Text, x.Mass.Text, x.Life.Text, x.Enough, x.Says, r.from(x.Count)})
		}
		d.Table(t)
	}
	if len(p.Set) > 0 {
		d.Heading("The impressed set")
		r.figures(d, append(append([]assess.Figure{}, p.Set...), p.Log...))
		notices(d, p.Findings, "What the log shows")
	}
	if len(p.Surveys) > 0 {
		d.Heading("Potentials read")
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Day", Face: page.Bold}, {Head: "Electrode", Share: 1}, {Head: "Set"}, {Head: "Readings", Right: true}, {Head: "too weak", Right: true}, {Head: "too strong", Right: true}, {Head: "Weakest, common scale", Right: true}, {Head: "Strongest", Right: true}, {Head: "Says", Share: 1}, {Head: "How known"}}}
		for _, x := range p.Surveys {
			t.Rows = append(t.Rows, []string{x.Date, x.Electrode, x.Current, fmt.Sprint(x.Readings), fmt.Sprint(x.Under), fmt.Sprint(x.Over), x.Weakest.Text, x.Strongest.Text, x.Flags, r.from(x.Weakest)})
		}
		d.Table(keep(t))
	}
}
