package print

import (
	"fmt"
	"slices"
	"strings"

	"oakum/assess"
	"oakum/print/drawing"
	"oakum/print/page"
)

var dockmaster = Paper{
	Name: "dockmaster", Title: "Dockmaster's data sheet", For: "dockmaster: what he needs to set the blocks, and what to keep them clear of",
	Needs: func(b *assess.Brief) string {
		if len(b.Ship.Particulars) == 0 {
			return "her particulars are not entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Cautions(b.Docking.Cautions)
		answers(d, b)
		dockSummary(d, b)
		d.Heading("The ship")
		onBlocks(d, b, b.Docking)
		r.figures(d, b.Ship.Particulars)
		projections(d, b)
		readAt(d, b)
		d.Heading("How she will come")
		d.Note("As she floats on the day of this paper. Read the marks again on the morning of the docking and write them in.")
		r.figures(d, b.Docking.Afloat)
		d.Grid(page.Grid{Columns: []page.Box{{Head: "On the day", Width: 3}, {Head: "forward", Width: 2}, {Head: "amidships", Width: 2}, {Head: "aft", Width: 2}, {Head: "list", Width: 2}, {Head: "who read it, hour", Width: 3}},
			Rows: [][]string{{"port"}, {"starboard"}}})
		hydrostatics(d, b)
		for _, k := range b.Docking.Docks {
			one := atDock(b.Docking, k.ID)
			docks(d, one, &r)
			landings(d, one, &r)
			blockLoads(d, one, &r)
			ballast(d, one, &r)
		}
		tanksAllowed(d, b)
		keepClear(d, b)
		hazards(d, b)
		weightsLeft(d, b)
		tanks(d)
		r.list(d, b)
		d.Keep(55)
		d.Sign(page.Signer{Who: "Keeper", For: "the records say this"}, page.Signer{Who: "Dockmaster", For: "received; his own calculation governs"})
	},
}

// keepClear lists what a block or a shore must not stand on: holes through the bottom, and plates that are thin or that nobody has read.
func keepClear(d *page.Document, b *assess.Brief) {
	d.Keep(80)
	d.Heading("Keep blocks and shores clear of")
	dr, err := b.Drawing()
	if err == nil {
		places := holes(dr)
		drawing.Plan(d, dr, places)
		d.Note("Seen from above, port up, bow to the right: the holes through the shell below the design draft, by the numbers of the list. The frame numbers run along the foot.")
		t := page.Table{Columns: []page.Column{{Head: "No.", Right: true}, {Head: "Hole", Face: page.Bold}, {Head: "Where", Share: 1}}}
		for _, p := range places {
			t.Rows = append(t.Rows, []string{fmt.Sprint(p.Number), p.Mark.Label, p.Mark.Place})
		}
		if len(t.Rows) > 0 {
			d.Table(t)
		}
	}
	weak := page.Table{Columns: []page.Column{{Head: "Thin bottom plate", Share: 1}, {Head: "Left", Face: page.Bold}, {Head: "Least allowed"}, {Head: "Read"}}}
	for _, p := range b.Standing.Plates {
		if p.Life.Worry >= 2 && slices.Contains(bottom, strings.ToUpper(p.Strake)) {
			weak.Rows = append(weak.Rows, []string{p.Place, p.Thickness.Text, p.Limit.Text, p.Newest})
		}
	}
	if len(weak.Rows) > 0 {
		d.Table(weak)
	}
	if len(b.Standing.NeverSeen) > 0 {
		d.Subheading("Nobody has looked here: unknown, not sound")
		notices(d, b.Standing.NeverSeen, "Where")
	}
}

// bottom are the strakes that blocks and shores bear on: the keel and the first three beside it, by the usual letters.
var bottom = []string{"K", "A", "B", "C"}

// holes are the openings below the design draft; where no draft is known, all of them.
func holes(dr *assess.Drawing) []drawing.Place {
	var places []drawing.Place
	for _, m := range dr.Marks {
		if m.Kind != "opening" || m.Z != nil && dr.Particulars.Draft != nil && *m.Z > *dr.Particulars.Draft {
			continue
		}
		m.Worry = 0
		places = append(places, drawing.Place{Mark: m})
	}
	slices.SortStableFunc(places, func(a, b drawing.Place) int {
		switch {
		case a.Mark.X < b.Mark.X:
			return -1
		case a.Mark.X > b.Mark.X:
			return 1
		}
		return 0
	})
	for i := range places {
		places[i].Number = i + 1
	}
	return places
}

func hazards(d *page.Document, b *assess.Brief) {
	if len(b.Record.Hazards) == 0 {
		return
	}
	d.Heading("What is on board that harms")
	t := page.Table{Columns: []page.Column{{Head: "What", Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "State", Share: 1}}}
	for _, h := range b.Record.Hazards {
		t.Rows = append(t.Rows, []string{h.Material, strings.ReplaceAll(h.Place, `"`, ""), h.State})
	}
	d.Table(t)
}

// tanks leaves room for what only the day tells.
func tanks(d *page.Document) {
	d.Heading("To be agreed and written in")
	d.Grid(page.Grid{Columns: []page.Box{{Head: "What", Width: 5}, {Head: "Agreed", Width: 6}, {Head: "Who", Width: 3}},
		Rows: [][]string{{"height of the blocks"}, {"hour of the gate, and the tide counted on"}, {"tanks and bilges: full, empty, slack"}, {"who watches inside as she lands"}, {"lines, tugs, pilot"}, {"power, fire main and drain ashore"}, {"whom to call, day and night"}}})
}

// weightsLeft lists what may come off or on while she stands there, so that she floats off as somebody has worked out.
func weightsLeft(d *page.Document, b *assess.Brief) {
	t := page.Table{Columns: []page.Column{{Head: "If this is done in dock", Share: 1}, {Head: "Taken off", Right: true, Face: page.Bold}, {Head: "In the plan"}}}
	for _, w := range b.Docking.Undocking {
		t.Rows = append(t.Rows, []string{w.Name, w.Mass.Text, mark(w.Plan)})
	}
	if len(t.Rows) > 0 {
		d.Heading("Weights that change before she floats off")
		d.Table(t)
	}
}
