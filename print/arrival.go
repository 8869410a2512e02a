package print

import (
	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/print/page"
	"oakum/ship"
)

var arrival = Paper{
	Name: "arrival", Title: "Arrival condition letter", For: "dock and naval architect: how she will arrive, in writing, before the gate is opened",
	Needs: func(b *assess.Brief) string {
		if len(b.Docking.Afloat) == 0 {
			return "her drafts are not known"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Cautions(b.Docking.Cautions)
		answers(d, b)
		d.Text("To the dockmaster and the naval architect.")
		d.Text("This is the condition in which " + b.Name + " lay on the day named at the foot, as her records have it. She will arrive in it, but for what is written in below. The marks are read again, and this letter signed again, on the day.")
		d.Heading("How she floats")
		r.figures(d, b.Docking.Afloat)
		landings(d, b.Docking, &r)
		d.Heading("Tanks and bilges")
		tanksOnRecord(d, b)
		weightRegister(d, b, &r)
		d.Heading("What has changed since, and on the day")
		d.Grid(page.Grid{Columns: []page.Box{{Head: "What", Width: 40}, {Head: "Mass", Width: 14}, {Head: "Where", Width: 20}, {Head: "When, by whom", Width: 26}}, Empty: 6})
		hazards(d, b)
		d.Heading("Nobody has looked here: unknown, not sound")
		notices(d, b.Standing.NeverSeen, "Where")
		r.list(d, b)
		d.Keep(80)
		d.Sign(page.Signer{Who: "Keeper", For: "this is how she will arrive"}, page.Signer{Who: "Dockmaster", For: "received"}, page.Signer{Who: "Naval architect", For: "received; the docking calculation is checked against it"})
	},
}

// tanksOnRecord lists the tanks with what is known of their state, and room for what they hold on the day.
func tanksOnRecord(d *page.Document, b *assess.Brief) {
	list := dossier.All[ship.Tank](b.Dossier())
	if len(list) == 0 {
		d.Text("No tank is on record. That is not the same as there being none.")
		return
	}
	fields := fieldsOf[ship.Tank]()
	g := page.Grid{Columns: []page.Box{{Head: "Tank", Width: 26}, {Head: "Meant for", Width: 14}, {Head: "Capacity", Width: 12}, {Head: "State on record", Width: 18}, {Head: "Sounding on the day", Width: 15}, {Head: "full, slack, empty", Width: 15}}}
	for _, e := range list {
		g.Rows = append(g.Rows, []string{e.Body.Name, e.Body.Contents, cell(b, e, fields, "capacity"), e.Body.Cleaned})
	}
	d.Grid(g)
	d.Note("A slack tank has a free surface: it costs stability just when the blocks take it away. " + calc.Stability.Text())
}
