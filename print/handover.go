package print

import (
	"slices"
	"strings"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/page"
	"oakum/ship"
)

var handover = Paper{
	Name: "handover", Title: "Handed to the next docking", For: "whoever docks her next, and the keeper until then: what was left, what is patched, what harms, what is ashore",
	Needs: func(b *assess.Brief) string {
		if len(b.Record.Carried)+len(b.Record.Hazards)+len(b.Record.Parts) == 0 {
			return "nothing is left, patched, harmful or ashore on record yet"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Asbestos.Text(), calc.Lead.Text(), calc.Confined.Text()})
		d.Heading("Left, patched, watched and guaranteed: by the day it asks for")
		t := page.Table{Columns: []page.Column{{Head: "What", Share: 1, Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "From"}, {Head: "Day"}, {Head: "State"}, {Head: "Why", Share: 1}, {Head: "Cost", Right: true}}, Size: page.Small}
		for _, r := range b.Record.Carried {
			t.Rows = append(t.Rows, []string{r.What, r.Place, r.From, orUnset(r.Due), r.State, r.Why, known(r.Cost)})
		}
		if len(t.Rows) == 0 {
			d.Text("Nothing is on record as left undone, patched, watched or guaranteed. That is not the same as there being nothing.")
		} else {
			d.Table(keep(t))
		}
		harmful(d, b)
		pairs(d, b)
		for _, p := range b.Record.Parts {
			ashore(d, p)
		}
		d.Sign(page.Signer{Who: "Handed over by", For: "as written"}, page.Signer{Who: "Taken over by", For: "read, and the open days noted"})
	},
}

func orUnset(day string) string {
	if day == "" {
		return "none set"
	}
	return day
}

// harmful hands over every harmful material: where it was sampled, with what result, what was taken out and what was left.
func harmful(d *page.Document, b *assess.Brief) {
	d.Heading("Harmful materials: what was found, and what was left")
	list := dossier.All[ship.Hazard](b.Dossier())
	if len(list) == 0 {
		d.Text("No harmful material is on record. On a ship of her age that means nobody has looked: take old lagging, packing, paint and cable as harmful until a sample says otherwise.")
		return
	}
	state := map[string]string{}
	for _, h := range b.Record.Hazards {
		state[h.ID] = h.State
	}
	fields := fieldsOf[ship.Hazard]()
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Material", Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "Sampled"}, {Head: "Result"}, {Head: "Laboratory", Right: true}, {Head: "How much"}, {Head: "Taken out"}, {Head: "Now", Share: 1, Face: page.Bold}, {Head: "Report"}}}
	for _, e := range list {
		of := func(key string) string { return cell(b, e, fields, key) }
		t.Rows = append(t.Rows, []string{of("material"), strings.ReplaceAll(e.Body.Place.String(), `"`, ""), of("sampled"), of("result"), of("level"), of("quantity"), of("removed"), state[e.ID], of("paper")})
	}
	d.Table(keep(t))
	d.Note("What was not sampled is treated as present. What was left stays where it is until licensed people deal with it under the rules of the place.")
}

// pairs sets what was found beside how it was left, place by place.
func pairs(d *page.Document, b *assess.Brief) {
	list := only(dossier.All[plan.Found](b.Dossier()), func(f plan.Found) bool { return f.Condition != "" || f.AsLeft != "" })
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(x, y dossier.Entry[plan.Found]) int { return compareItems(x.Body.Number, y.Body.Number) })
	d.Heading("As found, and as left")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "No", Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "As found", Share: 1}, {Head: "What was done"}, {Head: "As left", Share: 1}, {Head: "Who decided"}}}
	for _, e := range list {
		f := e.Body
		left := f.AsLeft
		if left == "" {
			left = "nobody has written it down"
		}
		t.Rows = append(t.Rows, []string{f.Number, f.Place.String(), words(": ", f.Finding, f.Condition), f.Disposition, left, words(", ", f.Decider, f.Decided.String())})
	}
	d.Table(keep(t))
	for _, f := range b.InDock.Found {
		if len(f.Pictures) > 1 {
			d.Keep(75)
			d.Subheading(words(" ", f.Number, f.Finding) + words("", ", ", f.Place))
			pictured(d, f.Pictures)
		}
	}
}

// ashore is one part that left her: who has it, who had it, and how it goes back.
func ashore(d *page.Document, p assess.PartRow) {
	d.Keep(40)
	d.Heading("Off the ship: " + words(", ", p.Name, p.Mark))
	if p.State != "nothing waits" {
		d.Strong("Waiting: " + sentence(p.State))
	}
	said := page.Table{Size: page.Small, Columns: []page.Column{{Face: page.Bold}, {Share: 1}}}
	for _, h := range p.Described {
		if h.Text != "" {
			said.Rows = append(said.Rows, []string{h.Heading, h.Text})
		}
	}
	if p.Lacks != "" {
		said.Rows = append(said.Rows, []string{"not yet described", p.Lacks})
	}
	d.Table(said)
	chain := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Since", Face: page.Bold}, {Head: "Held by", Share: 1}, {Head: "Kept at", Share: 1}, {Head: "Terms", Share: 1}, {Head: "Called back"}, {Head: "Ends"}, {Head: "Next look"}, {Head: "Last look"}, {Head: "Condition", Share: 1}, {Head: "Answered"}}}
	for _, l := range p.Chain {
		chain.Rows = append(chain.Rows, []string{l.Since, l.Holder, l.Place, l.Terms, l.Recall, l.Ends, l.NextCheck, l.Checked, l.Condition, l.Answered})
	}
	if len(chain.Rows) == 0 {
		d.Text("Nobody is written down as holding it.")
		return
	}
	d.Table(keep(chain))
}
