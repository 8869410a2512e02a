package print

import (
	"fmt"
	"slices"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/print/drawing"
	"oakum/print/page"
	"oakum/ship"
)

// reach is how far along the ship a reading is drawn on the map, to each side, m. It speaks for the place read alone; less could not be seen on paper.
const reach = 0.9

var thickness = Paper{
	Name: "thickness", Title: "Thickness report", For: "surveyor, yard: every place read, on a map and in a list, with the stretches nobody read",
	Needs: func(b *assess.Brief) string {
		if len(b.Standing.Plates) == 0 {
			return "no thickness reading with a place is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Screening.Text()})
		d.Text(thicknessAnswer(b))
		shellMaps(d, b)
		if m, err := b.Shell(); err == nil {
			d.Heading("The whole shell, worked from the readings")
			shellMap(d, b, m)
		}
		coverage(d, b)
		var r references
		renewal(d, b, &r)
		doublers(d, b, &r)
		zones(d, b, &r)
		doubtful(d, b)
		r.list(d, b)
		plateList(d, b)
		d.Sign(page.Signer{Who: "Survey firm or surveyor", For: "the readings are those taken"}, page.Signer{Who: "Naval architect", For: "the limits are those to be used"})
	},
}

// thicknessAnswer counts the places by how bad they are.
func thicknessAnswer(b *assess.Brief) string {
	var n [4]int
	for _, p := range b.Standing.Plates {
		n[p.Life.Worry]++
	}
	return fmt.Sprintf("%d places are read. At the newest reading, carried forward to today at the rate found: %d are past their limit now, %d ask for action, %d are to be watched, %d are sound as far as they were read.",
		len(b.Standing.Plates), n[3], n[2], n[1], n[0])
}

// fills is the pattern of each worry.
var fills = [4]page.Pattern{page.Blank, page.Dots, page.Hatch, page.Solid}

func shellMaps(d *page.Document, b *assess.Brief) {
	dr, err := b.Drawing()
	if err != nil || len(dr.Strakes) == 0 {
		d.Note("There is no map: her hull form and strakes are not entered.")
		return
	}
	at, covers := map[string]assess.Mark{}, map[string]assess.Mark{}
	for _, m := range dr.Marks {
		switch m.Kind {
		case "thickness":
			at[m.ID] = m
		case "doubler":
			covers[m.ID] = m
		}
	}
	for _, side := range []string{"port", "starboard"} {
		cells := covered(b, covers, side)
		for _, p := range b.Standing.Plates {
			m, ok := at[p.ID]
			if !ok || p.Side != side {
				continue
			}
			to := m.X
			if m.X1 != nil {
				to = *m.X1
			}
			cells = append(cells, drawing.Cell{Strake: p.Strake, From: m.X - reach, To: to + reach, Fill: fills[p.Life.Worry]})
		}
		// the worst are drawn last, so that no sound neighbour hides them
		slices.SortStableFunc(cells, func(a, b drawing.Cell) int { return order(a.Fill) - order(b.Fill) })
		d.Keep(100)
		d.Subheading("Shell, " + side + ", rolled out from the keel up; bow to the right, frames along the foot")
		drawing.Shell(d, dr, cells)
	}
	d.Legend([]page.Pattern{page.Solid, page.Hatch, page.Dots, page.Blank, page.Covered, page.Unknown},
		[]string{"past its limit now", "act", "watch", "read and sound", "behind a doubler: unknown, not sound", "nobody has read here"})
	d.Note(fmt.Sprintf("A reading is drawn %.1f m long so that it can be seen; it speaks for the place read alone. The map shows the newest reading of each place.", 2*reach))
}

// covered are the stretches of strakes on one side that lie behind a doubler.
func covered(b *assess.Brief, at map[string]assess.Mark, side string) []drawing.Cell {
	var cells []drawing.Cell
	for _, e := range dossier.All[ship.Doubler](b.Dossier()) {
		if m, ok := at[e.ID]; ok && m.X1 != nil && e.Body.Side.Meets(ship.Side(side)) {
			cells = append(cells, drawing.Cell{Strake: e.Body.Strake, From: min(m.X, *m.X1), To: max(m.X, *m.X1), Fill: page.Covered})
		}
	}
	return cells
}

// order is that in which cells are drawn: what is behind a doubler first.
func order(p page.Pattern) int {
	if p == page.Covered {
		return -1
	}
	return int(p)
}

func coverage(d *page.Document, b *assess.Brief) {
	if len(b.Standing.Coverage) == 0 {
		return
	}
	d.Heading("How much of each strake was read")
	t := page.Table{Columns: []page.Column{{Head: "Strake"}, {Head: "Side"}, {Head: "Plates", Right: true}, {Head: "of them read", Right: true}, {Head: "Places read", Right: true}, {Head: "Longest stretch nobody read", Right: true}, {Head: "", Share: 1}}}
	for _, c := range b.Standing.Coverage {
		t.Rows = append(t.Rows, []string{c.Strake, c.Side, fmt.Sprint(c.Plates), fmt.Sprint(c.Read), c.Places.Text, c.Gap.Text, ""})
	}
	d.Table(t)
}

// plateList lists every place, strake by strake as a surveyor walks.
func plateList(d *page.Document, b *assess.Brief) {
	d.Heading("Every place, worst first")
	d.Note("The sheet of each place is plating.rate@thickness- and its record.")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Place", Share: 1}, {Head: "Read", Right: true}, {Head: "Newest"}, {Head: "Left", Right: true, Face: page.Bold}, {Head: "First", Right: true}, {Head: "Least", Right: true}, {Head: "Loss a year", Right: true}, {Head: "At its limit"}, {Head: "Says", Face: page.Bold}, {Head: "Record"}}}
	for _, p := range b.Standing.Plates {
		t.Rows = append(t.Rows, []string{p.Place, fmt.Sprint(p.Readings), p.Newest, p.Thickness.Text, p.Original.Text, p.Limit.Text, p.Rate.Text, p.Life.Text, p.Verdict, p.ID})
	}
	d.Table(t)
}
