package print

import (
	"fmt"

	"oakum/assess"
	"oakum/calc"
	"oakum/print/drawing"
	"oakum/print/page"
)

var fieldNext = Paper{
	Name: "field-next", Title: "Field sheet: where to measure next", For: "two people and a gauge: the ten places where a reading tells most, on a map and with room for the pencil",
	Across: true, Needs: thickness.Needs,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Confined.Text(), calc.Lead.Text()})
		m, err := b.Shell()
		if err != nil {
			d.Note("The shell can't be mapped: " + err.Error())
			return
		}
		shellMap(d, b, m)
		whoWhen(d, "gauge and its number", "calibrated on, block", "probe", "through coating: yes or no")
		d.Note("Write what the gauge shows, with the unit once at the head. A place not reached is written as NOT REACHED, one without echo as NO ECHO: never leave it empty. On a doubler write DOUBLER: the plate behind was not gauged.")
		g := page.Grid{Columns: []page.Box{{Head: "No.", Width: 4}, {Head: "Place", Width: 24}, {Head: "Why there", Width: 20}, {Head: "Expected", Width: 10}, {Head: "Least", Width: 8}, {Head: "1", Width: 8}, {Head: "2", Width: 8}, {Head: "3", Width: 8}, {Head: "pit, deepest", Width: 9}, {Head: "remarks", Width: 18}}}
		for _, n := range m.Next {
			g.Rows = append(g.Rows, []string{fmt.Sprint(n.Number), n.Place, n.Why, n.Expected.Text, n.Limit.Text})
		}
		d.Grid(g)
	},
}

// shellMap prints the map of the shell, both sides, with its legend.
func shellMap(d *page.Document, b *assess.Brief, m *assess.ShellMap) {
	dr, err := b.Drawing()
	if err != nil || len(m.Cells) == 0 {
		return
	}
	for _, starboard := range []bool{false, true} {
		side := "port"
		if starboard {
			side = "starboard"
		}
		d.Keep(56)
		d.Subheading("What the readings say of the shell, " + side + "; rolled out from the keel up, bow to the right, frames along the foot")
		drawing.Map(d, dr, m, starboard)
	}
	d.Legend([]page.Pattern{page.Blank, page.Dots, page.Hatch, page.Solid, page.Unknown, page.Covered, page.Unjudged},
		[]string{"under a tenth gone", "a tenth to a fifth", "a fifth to a quarter", "a quarter or more", "nobody looked here: unknown, not sound", "behind a doubler: unknown, not sound", "original thickness not known"})
	d.Note(fmt.Sprintf("%s of the shell is unknown; %s of the rest are to be expected below their limit. Between readings the map guesses; its sheet is %s.", m.Share.Text, m.Below.Text, m.Sheet))
}
