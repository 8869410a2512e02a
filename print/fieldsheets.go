package print

import (
	"strconv"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/print/drawing"
	"oakum/print/page"
	"oakum/ship"
)

// most places that a thickness field sheet asks for: what two people read in a day or two.
const placesToRead = 120

var fieldThickness = Paper{
	Name: "field-thickness", Title: "Field sheet: thickness", For: "two people and a gauge: the places to read again, worst first, with room for the pencil",
	Across: true, Needs: thickness.Needs,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Confined.Text(), calc.Lead.Text()})
		whoWhen(d, "gauge and its number", "calibrated on, block", "probe", "through coating: yes or no")
		d.Note("Write what the gauge shows, with the unit once at the head. A place not reached is written as NOT REACHED, one without echo as NO ECHO: never leave it empty.")
		shellMaps(d, b)
		d.Turn()
		g := page.Grid{Columns: []page.Box{{Head: "Place", Width: 26}, {Head: "Last read", Width: 9}, {Head: "then", Width: 9}, {Head: "Least", Width: 9}, {Head: "1", Width: 9}, {Head: "2", Width: 9}, {Head: "3", Width: 9}, {Head: "pit, deepest", Width: 10}, {Head: "coating, rust, remarks", Width: 24}}}
		for i, p := range b.Standing.Plates {
			if i == placesToRead {
				break
			}
			g.Rows = append(g.Rows, []string{p.Place, p.Newest, p.Thickness.Text, p.Limit.Text})
		}
		d.Grid(g)
		d.Subheading("Never looked at before")
		g.Rows = nil
		for _, n := range b.Standing.NeverSeen {
			g.Rows = append(g.Rows, []string{words(", ", n.What, n.Place)})
		}
		g.Empty = 6
		d.Grid(g)
	},
}

var fieldRounds = Paper{
	Name: "field-rounds", Title: "Field sheet: rounds", For: "the watch: marks, bilges, alarms, glands, for a month", Across: true, Needs: always,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Confined.Text()})
		d.Note("Marks in the unit painted on her; bilges from the plate up. Write DRY, NOT LOOKED or what was seen; an empty box says nothing.")
		g := page.Grid{Columns: []page.Box{{Head: "Day, hour", Width: 12}, {Head: "who", Width: 8}, {Head: "mark fwd p", Width: 7}, {Head: "fwd s", Width: 7}, {Head: "aft p", Width: 7}, {Head: "aft s", Width: 7}, {Head: "water, gauge", Width: 8}}}
		for i, e := range dossier.All[ship.Compartment](b.Dossier()) {
			if i == 8 {
				break
			}
			g.Columns = append(g.Columns, page.Box{Head: e.Body.Name, Width: 8})
		}
		g.Columns = append(g.Columns, page.Box{Head: "seen, heard, smelt", Width: 20})
		g.Empty = d.FillEmpty()
		d.Grid(g)
		d.Turn()
		g.Empty = d.FillEmpty()
		d.Grid(g)
	},
}

var fieldGlands = Paper{
	Name: "field-glands", Title: "Field sheet: glands and openings", For: "engineer: each gland and each barrier, tried by hand",
	Needs: func(b *assess.Brief) string {
		if len(b.Standing.Glands)+len(b.Standing.Openings) == 0 {
			return "no gland or opening is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Openings.Text(), calc.Asbestos.Text(), calc.Confined.Text()})
		whoWhen(d, "pumps tried beforehand", "second person standing by")
		d.Subheading("Glands")
		g := page.Grid{Columns: []page.Box{{Head: "Gland", Width: 26}, {Head: "Packed", Width: 9}, {Head: "Travel left, last", Width: 11}, {Head: "now: port", Width: 9}, {Head: "now: starboard", Width: 11}, {Head: "drops a minute", Width: 11}, {Head: "remarks", Width: 23}}}
		for _, k := range b.Standing.Glands {
			g.Rows = append(g.Rows, []string{words(", ", k.Name, k.Place), k.Packed, k.Travel.Text})
		}
		d.Grid(g)
		d.Subheading("Openings")
		openingsDrawn(d, b)
		g = page.Grid{Columns: []page.Box{{Head: "No.", Width: 5}, {Head: "Opening", Width: 30}, {Head: "Barriers on record, outside in", Width: 26}, {Head: "moves: yes, no, not tried", Width: 15}, {Head: "tight: yes, no, not tried", Width: 15}, {Head: "remarks", Width: 18}}}
		for i, o := range b.Standing.Openings {
			g.Rows = append(g.Rows, []string{strconv.Itoa(i + 1), words(", ", o.Name, o.Place), o.Barriers})
		}
		d.Grid(g)
	},
}

var fieldDive = Paper{
	Name: "field-dive", Title: "Field sheet: dive", For: "diving supervisor: where to look, what is there, what was found", Needs: always,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Diving.Text(), calc.Openings.Text()})
		whoWhen(d, "firm and supervisor", "visibility", "fixed by: tape, grid, frames", "suctions shut, tagged, by whom")
		openingsDrawn(d, b)
		g := page.Grid{Columns: []page.Box{{Head: "No.", Width: 5}, {Head: "Where", Width: 36}, {Head: "What was seen, with its size", Width: 34}, {Head: "photograph", Width: 12}, {Head: "fouled, bare", Width: 14}}}
		for _, n := range b.Standing.NeverSeen {
			g.Rows = append(g.Rows, []string{"", words(", ", n.What, n.Place)})
		}
		for i, o := range b.Standing.Openings {
			g.Rows = append(g.Rows, []string{strconv.Itoa(i + 1), words(", ", o.Name, o.Place)})
		}
		for _, a := range b.Standing.Anodes {
			g.Rows = append(g.Rows, []string{"", words(", ", a.Name, a.Place) + ": share left, still joined?"})
		}
		g.Empty = 4
		d.Grid(g)
	},
}

// openingsDrawn numbers the openings on her profile and plan, as the form below numbers them.
func openingsDrawn(d *page.Document, b *assess.Brief) {
	dr, err := b.Drawing()
	if err != nil || len(b.Standing.Openings) == 0 {
		return
	}
	var list []assess.Figure
	for _, o := range b.Standing.Openings {
		list = append(list, o.Sound)
	}
	places := numbered(dr, list)
	d.Keep(60)
	drawing.Profile(d, dr, places)
	drawing.Plan(d, dr, places)
}

// whoWhen leaves boxes for what makes a reading worth keeping: who, when, with what.
func whoWhen(d *page.Document, more ...string) {
	g := page.Grid{Columns: []page.Box{{Head: "Day", Width: 1}, {Head: "Read by, written by", Width: 2}}}
	row := []string{"", ""}
	for _, m := range more {
		g.Columns = append(g.Columns, page.Box{Head: m, Width: 1.5})
		row = append(row, "")
	}
	g.Rows = [][]string{row}
	d.Grid(g)
}
