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
		for _, method := range []string{"protection.demand", "protection.anodes", "protection.impressed"} {
			for _, id := range sheetsOf(b, method+"@") {
				if s, ok := b.Sheet(id); ok {
					d.Heading(words(": ", s.Title, s.Subject))
					lines(d, s.Results, false)
					d.Note("Sheet " + s.ID + ". " + s.Accuracy)
				}
			}
		}
		r.list(d, b)
		d.Sign(page.Signer{Who: "Cathodic protection specialist", For: "checked"}, page.Signer{Who: "Fitted and seen", For: "each as listed, or the remark beside it"})
	},
}
