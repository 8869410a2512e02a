package print

import (
	"fmt"
	"slices"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/page"
	"oakum/survey"
)

var foundReport = Paper{
	Name: "found", Title: "Condition found report", For: "board, yard, surveyor: what the hull showed, what is done about it, what it costs",
	Needs: func(b *assess.Brief) string {
		if len(b.InDock.Found) == 0 {
			return "nothing is entered as found yet"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Screening.Text()})
		inDockHead(d, b)
		if len(b.InDock.Lit) > 0 {
			d.Heading("Agreed beforehand, and now lit")
			t := page.Table{Columns: []page.Column{{Head: "Agreed", Share: 1}, {Head: "Found"}, {Head: "Money", Right: true}, {Head: "Days", Right: true}, {Head: "Answer by"}, {Head: "Who"}, {Head: "State", Face: page.Bold}}, Size: page.Small}
			for _, l := range b.InDock.Lit {
				t.Rows = append(t.Rows, []string{l.Sentence, words(", ", l.Found, l.Finding, l.Place), l.Money.Text, l.Days.Text, l.Answer, l.Who, l.State})
			}
			d.Table(keep(t))
		}
		for _, f := range b.InDock.Found {
			d.Subheading(words(" ", f.Number, f.Finding) + words("", ", ", f.Place))
			t := page.Table{Columns: []page.Column{{Head: "What"}, {Head: "", Share: 1}}}
			for _, row := range [][2]string{{"day", f.Date}, {"against expectation", f.Against}, {"condition", f.Condition}, {f.Measure.Label, f.Measure.Text}, {"proposed", f.Proposed}, {"cost", f.Cost.Text}, {"days", f.Days.Text}, {"what is done", f.Disposition}, {"decided by", f.Who}, {"as left", f.AsLeft}, {"photographs", fmt.Sprint(f.Photos)}} {
				if row[1] != "" {
					t.Rows = append(t.Rows, []string{row[0], row[1]})
				}
			}
			d.Table(t)
		}
		d.Sign(page.Signer{Who: "Superintendent", For: "found as written"}, page.Signer{Who: "Surveyor", For: "seen"})
	},
}

// inDockHead is the answer of the page in dock, with its days and money.
func inDockHead(d *page.Document, b *assess.Brief) {
	var r references
	d.List(b.InDock.Heading)
	r.figures(d, append(append([]assess.Figure{}, b.InDock.Time...), b.InDock.Money...))
}

var changeOrders = Paper{
	Name: "changes", Title: "Change orders", For: "board's people of the day, yard: each change with its money, its days and who said yes",
	Needs: func(b *assess.Brief) string {
		if len(b.InDock.Changes) == 0 {
			return "no change order is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		inDockHead(d, b)
		for _, c := range b.InDock.Changes {
			d.Keep(50)
			d.Subheading(words(" ", "Change", c.Number) + words("", ", ", c.Date))
			d.Text(sentence(c.Description))
			d.Table(page.Table{Columns: []page.Column{{Head: "Amount", Face: page.Bold}, {Head: "Days"}, {Head: "Paid from", Share: 1}, {Head: "State"}, {Head: "Approved by"}}, Rows: [][]string{{c.Amount.Text, c.Days.Text, c.Pot, c.State, c.Approver}}})
			if c.State != "refused" && c.State != "done" {
				d.Sign(page.Signer{Who: "Approved", For: "the yard may begin"})
			}
		}
	},
}

var dailyLog = Paper{
	Name: "log", Title: "Daily log", For: "whoever asks later what happened on which day", Across: true,
	Needs: func(b *assess.Brief) string { return needs[plan.Day](b, "no day in dock is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		inDockHead(d, b)
		d.Heading("Day by day")
		days := dossier.All[plan.Day](b.Dossier())
		slices.SortStableFunc(days, func(x, y dossier.Entry[plan.Day]) int { return x.Body.Date.Compare(y.Body.Date) })
		fields := fieldsOf[plan.Day]()
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Day", Face: page.Bold}, {Head: "Weather"}, {Head: "People"}, {Head: "Done", Share: 1}, {Head: "Problems", Share: 1}, {Head: "Decided", Share: 1}, {Head: "Spent to date", Right: true}, {Head: "Notes"}}}
		for _, e := range days {
			of := func(key string) string { return cell(b, e, fields, key) }
			t.Rows = append(t.Rows, []string{words(", day ", of("date"), of("number")), words("; ", of("weather"), unless(of("lost"), " lost"), unless(of("level"), " of water in dock")),
				words("; ", of("people"), of("hours"), unless(of("visitors"), " visitors")), of("done"), of("problems"), of("decided"), of("spent"), of("notes")})
		}
		d.Table(keep(t))
	},
}

var paintLog = Paper{
	Name: "paint", Title: "Paint log", For: "paint maker, inspector: each coat with its weather, its film and its batch", Across: true,
	Needs: func(b *assess.Brief) string { return needs[survey.Coat](b, "no coat is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Lead.Text(), calc.Confined.Text()})
		d.Heading("Coats")
		recordTable(d, b, dossier.All[survey.Coat](b.Dossier()), "date", "zone", "place", "number", "product", "colour", "batch", "area", "used", "grade", "profile", "salts", "method", "started", "stopped", "wet_film", "overcoat_min", "overcoat_max", "defects", "notes")
		d.Heading("Weather and steel at each coat")
		recordTable(d, b, dossier.All[survey.Coat](b.Dossier()), "date", "zone", "number", "air", "steel", "humidity", "dew_point")
		d.Note("Common practice: steel at least 3 °C above the dew point, humidity below 85 %. The maker's sheet governs.")
		if list := dossier.All[survey.Film](b.Dossier()); len(list) > 0 {
			d.Heading("Dry film")
			recordTable(d, b, list, "date", "zone", "place", "coat", "readings", "nominal", "rule", "instrument", "holiday", "notes")
		}
		sheetResults(d, b, "coating.")
		d.Sign(page.Signer{Who: "Paint inspector", For: "seen"})
	},
}

var undocking = Paper{
	Name: "undocking", Title: "Undocking checklist", For: "superintendent, dockmaster: what must be so before the first water, and in the first hours after", Needs: always,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Docking.Text(), calc.Stability.Text(), calc.Openings.Text(), calc.Confined.Text()})
		ready(d, b, "undocking", "On record")
		d.Heading("Before any water")
		d.Tick(beforeWater)
		d.Heading("Every opening, closed and seen from outside")
		lines := []string{}
		for _, o := range b.Standing.Openings {
			lines = append(lines, words(", ", o.Name, o.Place))
		}
		if len(lines) == 0 {
			lines = []string{"No opening is on record. That is not the same as there being none: walk the hull."}
		}
		d.Tick(lines)
		d.Heading("As the water rises")
		d.Tick(asWaterRises)
		d.Heading("First hours afloat")
		d.Tick(firstHours)
		watches(d, b, "in dock")
		d.Sign(page.Signer{Who: "Superintendent", For: "all is closed that should be closed"}, page.Signer{Who: "Naval architect", For: "her weights and stability as she floats off"}, page.Signer{Who: "Dockmaster", For: "flooding may begin"})
	},
}

// Common practice, from memory; the yard's own list comes first where it asks for more.
var (
	beforeWater = []string{
		"Weights put on and taken off since she docked are listed; drafts, trim and stability at float-off are worked out and agreed.",
		"Every plate, weld and rivet of the work is tested and signed.",
		"Hold points of the specification are passed; none is open.",
		"Docking plugs are in, counted against the list of those taken out.",
		"Anodes fitted and not painted; earths tested.",
		"Glands packed, followers set, shafts turned or locked.",
		"Block patches painted, or marked on the plan for the next docking.",
		"Tanks as agreed; manholes closed; nobody in any closed space: counted.",
		"Pumps tried on their own power; alarms tried; lamps at every place to be watched.",
		"Staging, hoses, cables, tools out of the dock; the dock bottom walked.",
		"Each watcher knows his space and how he calls stop; the word is heard by the dockmaster.",
	}
	asWaterRises = []string{
		"Stop when the water stands over the lowest opening: every space looked at, reported dry.",
		"Stop before she lifts: every space looked at, reported dry; list, trim and drafts against those worked out.",
		"She lifts evenly, or flooding stops until it is known why not.",
	}
	firstHours = []string{
		"Every space looked at each hour for the first day; what each pump takes out is written down.",
		"Marks read on all sides; displacement against the sum of the weights.",
		"Glands adjusted, one hand's turn at a time.",
		"Potential of the hull read at the same places as before.",
		"Next look at every repair is entered with its date.",
	}
)

var completion = Paper{
	Name: "completion", Title: "Completion report", For: "board, givers, whoever docks her next: what was done, what was left, what she is now",
	Needs: func(b *assess.Brief) string {
		if len(b.InDock.Log)+len(b.InDock.Found) == 0 {
			return "nothing is entered of a docking yet"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		inDockHead(d, b)
		d.Heading("Done")
		done := only(dossier.All[plan.Work](b.Dossier()), func(w plan.Work) bool { return w.State == "done" })
		if len(done) == 0 {
			d.Text("No work is entered as done yet.")
		}
		recordTable(d, b, done, "number", "name", "place", "done", "spent", "notes")
		d.Heading("Left undone on purpose")
		t := page.Table{Columns: []page.Column{{Head: "What", Share: 1, Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "Why", Share: 1}, {Head: "Do by"}, {Head: "Watched"}, {Head: "Cost", Right: true}}}
		for _, x := range b.Record.Deferred {
			t.Rows = append(t.Rows, []string{x.What, x.Place, x.Why, x.Due, x.Watched, x.Cost.Text})
		}
		if len(t.Rows) > 0 {
			d.Table(keep(t))
		}
		d.Heading("What the hull showed")
		recordTable(d, b, dossier.All[plan.Found](b.Dossier()), "number", "date", "place", "finding", "condition", "disposition", "as_left", "cost")
		d.Heading("Changes")
		recordTable(d, b, dossier.All[plan.Change](b.Dossier()), "number", "date", "description", "amount", "days", "state", "approved_by")
		partsOff(d, b)
		d.Heading("How she stands now")
		d.List(b.Standing.Heading)
		d.Heading("Money")
		var r references
		r.figures(d, b.Money.Account)
		r.list(d, b)
		d.Sign(page.Signer{Who: "Superintendent", For: "done as written"}, page.Signer{Who: "Keeper", For: "received"})
	},
}

func partsOff(d *page.Document, b *assess.Brief) {
	if len(b.Record.Parts) == 0 {
		return
	}
	d.Heading("Parts off the ship")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Part", Face: page.Bold, Share: 1}, {Head: "Mark"}, {Head: "Taken off"}, {Head: "Fate"}, {Head: "With", Share: 1}, {Head: "Where", Share: 1}, {Head: "How to put it back", Share: 1}}}
	for _, p := range b.Record.Parts {
		t.Rows = append(t.Rows, []string{p.Name, p.Mark, p.TakenOff, p.Fate, p.Holder, p.Where, p.Refit})
	}
	d.Table(keep(t))
}

// unless puts a word behind what somebody has said.
func unless(said, word string) string {
	if said == "" {
		return ""
	}
	return said + word
}
