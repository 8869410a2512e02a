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
		answers(d, b)
		d.Heading("How she floats")
		r.figures(d, b.Docking.Afloat)
		landings(d, b, &r)
		docks(d, b, &r)
		blockLoads(d, b, &r)
		ballast(d, b, &r)
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
	for _, id := range sheetsOf(b, "docking.") {
		if !tried(id) {
			ids = append(ids, id)
		}
	}
	return ids
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

// answers says what is unsafe first, in heavy type, then the rest.
func answers(d *page.Document, b *assess.Brief) {
	for _, line := range b.Docking.Heading {
		if strings.Contains(line, "UNSAFE") {
			d.Strong(sentence(line))
		} else {
			d.Text(sentence(line))
		}
	}
}

// landings compares what the hull gives with what the hand formula gives: two ways to one answer are a check.
func landings(d *page.Document, b *assess.Brief, r *references) {
	for _, l := range b.Docking.Landing {
		d.Heading(l.What)
		d.Strong(sentence(l.Reason))
		d.Text(sentence(l.Change))
		t := page.Table{Columns: []page.Column{{Head: "What", Share: 1}, {Head: "With the hull", Face: page.Bold}, {Head: "By hand"}, {Head: "How known"}}}
		for _, row := range [][2]assess.Figure{{l.Upthrust, l.HandUpthrust}, {l.Draft}, {l.GM, l.HandGM}, {l.Margin, l.HandMargin}, {l.TrimMax}} {
			t.Rows = append(t.Rows, []string{row[0].Label, row[0].Text, row[1].Text, words("; ", r.from(row[0]), r.mark(row[1].Sheet))})
		}
		d.Table(t)
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
		r.figures(d, []assess.Figure{k.Tide, k.Spring, k.Neap, k.Line})
		waterWindows(d, k)
	}
}

func waterWindows(d *page.Document, k assess.DockRow) {
	if len(k.Windows) == 0 {
		return
	}
	list, title := windowsToPrint(k.Windows)
	d.Subheading(title)
	t := page.Table{Columns: []page.Column{{Head: "From"}, {Head: "To"}, {Head: "Highest, m above datum", Right: true}, {Head: "", Share: 1}}}
	for _, w := range list {
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
