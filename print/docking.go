package print

import (
	"strings"

	"oakum/assess"
	"oakum/print/page"
)

var dockingCalculation = Paper{
	Name: "docking", Title: "Docking calculation", For: "naval architect: the calculation to check, every sheet of it",
	Needs: func(b *assess.Brief) string {
		if len(sheetsOf(b, "docking.")) == 0 {
			return "neither her drafts nor a dock with its sill and blocks are entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Cautions(b.Docking.Cautions)
		unsafe(d, b)
		d.List(b.Docking.Heading)
		d.Heading("How she floats")
		r.figures(d, b.Docking.Afloat)
		landings(d, b, &r)
		docks(d, b, &r)
		d.Sign(page.Signer{Who: "Naval architect", For: "checked; what was changed is written on the sheets"}, page.Signer{Who: "Dockmaster", For: "accepted as a starting point for his own"})
		for _, id := range dockingSheets(b) {
			if s, ok := b.Sheet(id); ok {
				d.Turn()
				sheetPart(d, s)
			}
		}
	},
}

// dockingSheets are those of how she floats now, then those of the docking itself. Those of courses not taken stay out.
func dockingSheets(b *assess.Brief) []string {
	var ids []string
	for _, id := range sheetsOf(b, "afloat.") {
		if strings.HasSuffix(id, "@today") {
			ids = append(ids, id)
		}
	}
	return append(ids, sheetsOf(b, "docking.")...)
}

// sheetsOf lists the sheets of one subject.
func sheetsOf(b *assess.Brief, subject string) []string {
	var ids []string
	for _, id := range b.SheetIDs() {
		if strings.HasPrefix(id, subject) {
			ids = append(ids, id)
		}
	}
	return ids
}

// unsafe stands before everything else that a paper says.
func unsafe(d *page.Document, b *assess.Brief) {
	for _, l := range b.Docking.Landing {
		if l.Verdict != "safe" {
			d.Strong(capital(l.Verdict) + ": " + sentences(l.What, l.Reason, l.Change))
		}
	}
}

func landings(d *page.Document, b *assess.Brief, r *references) {
	for _, l := range b.Docking.Landing {
		d.Heading(l.What)
		d.Strong(sentence(l.Reason))
		d.Text(sentence(l.Change))
		r.figures(d, []assess.Figure{l.Upthrust, l.Draft, l.GM, l.Margin, l.TrimMax})
	}
}

func docks(d *page.Document, b *assess.Brief, r *references) {
	for _, k := range b.Docking.Docks {
		d.Heading(k.Name + ": " + k.Verdict)
		d.Text(sentences(k.Reason, k.Change))
		t := page.Table{Columns: []page.Column{{Head: "Clearance", Share: 1}, {Head: "There is", Face: page.Bold}, {Head: "Wanted"}, {Head: "Says"}, {Head: "How known"}}}
		for _, c := range k.Clearances {
			t.Rows = append(t.Rows, []string{c.Name, c.There.Text, c.Want.Text, c.State, r.from(c.There)})
		}
		if len(t.Rows) > 0 {
			d.Table(t)
		}
		r.figures(d, []assess.Figure{k.Tide, k.Line})
		waterWindows(d, k)
	}
}

func waterWindows(d *page.Document, k assess.DockRow) {
	if len(k.Windows) == 0 {
		return
	}
	d.Subheading("When the water is high enough, Universal Time")
	t := page.Table{Columns: []page.Column{{Head: "From"}, {Head: "To"}, {Head: "Highest, m above datum", Right: true}, {Head: "", Share: 1}}}
	for _, w := range k.Windows {
		t.Rows = append(t.Rows, []string{clock(w.Start), clock(w.End), number(w.Highest), ""})
	}
	d.Table(t)
}

// clock shortens an instant to the minute.
func clock(t string) string {
	if len(t) >= 16 && strings.HasSuffix(t, "Z") {
		return t[:10] + " " + t[11:16]
	}
	return t
}
