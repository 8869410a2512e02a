package print

import (
	"fmt"
	"maps"
	"slices"
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
		ids := dockingSheets(b)
		for _, id := range ids {
			r.mark(id)
		}
		d.Cautions(b.Docking.Cautions)
		answers(d, b)
		dockSummary(d, b)
		d.Text(fmt.Sprintf("Behind this page stand: how she floats, each dock by itself (fit, landing, keel blocks, side blocks, ballast), and %d sheets with every input, formula and step, in the order of the list at the end.", len(ids)))
		d.Keep(55)
		d.Sign(page.Signer{Who: "Naval architect", For: "checked; what was changed is written on the sheets"}, page.Signer{Who: "Dockmaster", For: "accepted as a starting point for his own"})
		d.Turn()
		d.Heading("How she floats")
		r.figures(d, b.Docking.Afloat)
		weightRegister(d, b, &r)
		for _, k := range b.Docking.Docks {
			one := atDock(b.Docking, k.ID)
			d.Turn()
			d.Say(k.Name, page.Bold, page.TitleSize-3)
			onBlocks(d, b, one)
			docks(d, one, &r)
			landings(d, one, &r)
			blockLoads(d, one, &r)
			ballast(d, one, &r)
		}
		d.Turn()
		sources := map[string]bool{}
		for i, id := range ids {
			if s, ok := b.Sheet(id); ok {
				sheetPart(d, s, i+1)
				for _, w := range s.Sources {
					sources[w] = true
				}
			}
		}
		d.Heading("Sources of the sheets")
		d.ListOf(slices.Sorted(maps.Keys(sources)), page.CellSize)
		r.list(d, b)
	},
}

// dockSummary is every dock in one line: what it turns on, as she lies.
func dockSummary(d *page.Document, b *assess.Brief) {
	t := page.Table{Columns: []page.Column{{Head: "Dock", Face: page.Bold, Share: 1}, {Head: "Says"}, {Head: "Tide needed"}, {Head: "Landing"}, {Head: "GM left"}, {Head: "Fall until unstable"}, {Head: "Line aft / forward"}, {Head: "Allowed"}}}
	for _, k := range b.Docking.Docks {
		one := atDock(b.Docking, k.ID)
		row := []string{k.Name, k.Verdict, k.Tide.Text, "not known", "", "", "not known", ""}
		for i, l := range one.Landing {
			if i == 0 {
				row[3], row[4], row[5] = l.Verdict, l.GM.Text, l.Margin.Text
			}
		}
		for _, x := range one.Blocks {
			row[6], row[7] = x.Aft.Text+" / "+x.Fwd.Text, x.Limit.Text
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 0 {
		d.Table(t)
		d.Note("As she lies. What ballast would change stands with each dock.")
	}
}

// atDock is what the page says of one dock.
func atDock(p assess.DockingPage, dock string) assess.DockingPage {
	return assess.DockingPage{
		Docks:   those(p.Docks, func(x assess.DockRow) bool { return x.ID == dock }),
		Landing: those(p.Landing, func(x assess.LandingRow) bool { return x.Dock == dock }),
		Blocks:  those(p.Blocks, func(x assess.BlockRow) bool { return x.Dock == dock }),
		Side:    those(p.Side, func(x assess.SideRow) bool { return x.Dock == dock }),
		Ballast: those(p.Ballast, func(x assess.BallastRow) bool { return x.Dock == dock }),
	}
}

// dockingSheets are those of how she floats now, then those of the docking itself. Those of courses not taken stay out.
func dockingSheets(b *assess.Brief) []string {
	var ids []string
	for _, id := range sheetsOf(b, "afloat.") {
		if strings.HasSuffix(id, "@today") {
			ids = append(ids, id)
		}
	}
	for _, k := range b.Docking.Docks {
		for _, part := range dockParts {
			for _, id := range sheetsOf(b, part) {
				if of := strings.TrimPrefix(id, part); !tried(id) && (of == k.ID || strings.HasPrefix(of, k.ID+"-")) {
					ids = append(ids, id)
				}
			}
		}
	}
	for _, id := range sheetsOf(b, "docking.") {
		if !tried(id) && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// dockParts are the sheets of one dock, in the order in which they are worked.
var dockParts = []string{"docking.fit@dock-", "docking.landing@", "docking.blocks@", "docking.side-blocks@", "docking.ballast@", "afloat.equilibrium@ballasted-", "afloat.hydrostatics@ballasted-"}

func those[T any](list []T, take func(T) bool) (kept []T) {
	for _, x := range list {
		if take(x) {
			kept = append(kept, x)
		}
	}
	return kept
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
func landings(d *page.Document, p assess.DockingPage, r *references) {
	for _, l := range p.Landing {
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

func docks(d *page.Document, p assess.DockingPage, r *references) {
	for _, k := range p.Docks {
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
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "From"}, {Head: "To"}, {Head: "Highest, m", Right: true}, {Head: "From"}, {Head: "To"}, {Head: "Highest, m", Right: true}, {Head: "", Share: 1}}}
	half := (len(list) + 1) / 2
	for i, w := range list[:half] {
		row := []string{clock(w.Start), clock(w.End), fmt.Sprintf("%.2f", w.Highest), "", "", "", ""}
		if i+half < len(list) {
			v := list[i+half]
			row[3], row[4], row[5] = clock(v.Start), clock(v.End), fmt.Sprintf("%.2f", v.Highest)
		}
		t.Rows = append(t.Rows, row)
	}
	d.Table(keep(t))
	d.Note("Highest water above datum in that time. Read down the left, then down the right.")
}

// clock shortens an instant to the minute.
func clock(t string) string {
	if len(t) >= 16 && strings.HasSuffix(t, "Z") {
		return t[:10] + " " + t[11:16]
	}
	return t
}
