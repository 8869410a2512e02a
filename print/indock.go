package print

import (
	"slices"
	"strings"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/formula/coating"
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
		r := inDockHead(d, b)
		if len(b.InDock.Lit) > 0 {
			d.Heading("Agreed beforehand, and now lit")
			t := page.Table{Columns: []page.Column{{Head: "Agreed", Share: 1}, {Head: "Found"}, {Head: "Money", Right: true}, {Head: "Days", Right: true}, {Head: "Answer by"}, {Head: "Who"}, {Head: "State", Face: page.Bold}}, Size: page.Small}
			for _, l := range b.InDock.Lit {
				t.Rows = append(t.Rows, []string{l.Sentence, words(", ", l.Finding, l.Place), l.Money.Text, l.Days.Text, l.Answer, l.Who, l.State})
			}
			d.Table(keep(t))
		}
		for _, f := range b.InDock.Found {
			d.Keep(60)
			d.Subheading(words(" ", f.Number, f.Finding) + words("", ", ", f.Place))
			t := page.Table{Columns: []page.Column{{Face: page.Bold}, {Share: 1}}}
			for _, row := range foundLines(f) {
				if row[1] != "" {
					t.Rows = append(t.Rows, row)
				}
			}
			d.Table(t)
			pictured(d, f.Pictures)
		}
		r.list(d, b)
		d.Sign(page.Signer{Who: "Superintendent", For: "found as written"}, page.Signer{Who: "Surveyor", For: "seen"})
	},
}

// foundLines are what a found report says, line by line; a line without words is left out.
func foundLines(f assess.FoundRow) [][]string {
	against := map[string]string{"better": "better than expected", "worse": "worse than expected", "as expected": "as expected"}[f.Against]
	asks := ""
	for _, x := range []assess.Figure{f.Cost, f.Days} {
		if x.Value != nil && *x.Value != 0 {
			asks = words(", ", asks, x.Text)
		}
	}
	measured := ""
	if f.Measure.Value != nil {
		measured = words(" ", f.Measure.Label, f.Measure.Text)
	}
	return [][]string{{"found", words(", ", f.Date, against)}, {"measured", measured}, {"condition", f.Condition}, {"proposed", f.Proposed}, {"asks for", asks}, {"what is done", words(", ", f.Disposition, unlessBefore("decided by ", f.Who))}, {"as left", f.AsLeft}}
}

// pictured prints the photographs of something found, as found beside as left.
func pictured(d *page.Document, list []assess.PictureRow) {
	var out []page.Picture
	for _, p := range list {
		data := d.Photo(p.Small)
		if data == nil {
			data = d.Photo(p.SHA256)
		}
		out = append(out, page.Picture{Data: data, Caption: words(", ", strings.ToUpper(p.Moment[:1])+p.Moment[1:], p.Date, p.Place, p.Title)})
	}
	d.Pictures(out)
}

// inDockHead is the answer of the page in dock, with its days and money. The sheets it names are listed where the paper lists its sheets.
func inDockHead(d *page.Document, b *assess.Brief) *references {
	r := &references{}
	d.List(b.InDock.Heading)
	r.figures(d, append(append([]assess.Figure{}, b.InDock.Time...), b.InDock.Money...))
	return r
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
		r := inDockHead(d, b)
		for _, c := range b.InDock.Changes {
			changeOrder(d, c)
		}
		r.list(d, b)
	},
}

func changeOrder(d *page.Document, c assess.ChangeRow) {
	d.Keep(62)
	d.Subheading(words(" ", "Change", c.Number) + words("", ", ", c.Date))
	d.Text(sentence(c.Description))
	if c.Why != "" {
		d.Note("Because of " + c.Why + ".")
	}
	d.Table(page.Table{Columns: []page.Column{{Head: "Quantity"}, {Head: "Rate asked"}, {Head: "Rate agreed"}, {Head: "Amount", Face: page.Bold}, {Head: "Days"}, {Head: "Paid from", Share: 1}, {Head: "State"}, {Head: "By"}},
		Rows: [][]string{{c.Quantity, words(", ", c.Rate.Text, c.Rate.Note), c.Agreed.Text, c.Amount.Text, c.Days.Text, c.Pot, c.State, c.Approver}}})
	if c.State != "refused" && c.State != "done" {
		d.Sign(page.Signer{Who: "Approved", For: "the yard may begin"})
	}
}

var dailyLog = Paper{
	Name: "log", Title: "Daily log", For: "whoever asks later what happened on which day", Across: true,
	Needs: func(b *assess.Brief) string { return needs[plan.Day](b, "no day in dock is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		d.List(b.InDock.Heading)
		d.Heading("Day by day")
		days := dossier.All[plan.Day](b.Dossier())
		slices.SortStableFunc(days, func(x, y dossier.Entry[plan.Day]) int { return x.Body.Date.Compare(y.Body.Date) })
		fields := fieldsOf[plan.Day]()
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Day", Right: true, Face: page.Bold}, {Head: "Date"}, {Head: "Weather", Share: 0.6}, {Head: "At work", Share: 0.6}, {Head: "Done", Share: 1}, {Head: "Found"}, {Head: "Problems", Share: 1}, {Head: "Decided", Share: 1}, {Head: "Spent to date", Right: true}, {Head: "Notes"}}}
		for _, e := range days {
			of := func(key string) string { return cell(b, e, fields, key) }
			lost := ""
			if e.Body.Lost != nil && *e.Body.Lost > 0 {
				lost = of("lost") + " lost"
			}
			t.Rows = append(t.Rows, []string{of("number"), of("date"), words("; ", of("weather"), lost, unless(of("level"), " of water in dock")),
				words("; ", unless(of("people"), " people"), of("hours"), unless(of("visitors"), " visitors")), of("done"), foundOn(b, e.Body.Date.String()), of("problems"), of("decided"), of("spent"), of("notes")})
		}
		d.Table(keep(t))
	},
}

// foundOn names what was found on a day.
func foundOn(b *assess.Brief, day string) string {
	var list []string
	for _, f := range b.InDock.Found {
		if f.Date == day {
			list = append(list, words(" ", f.Number, f.Finding))
		}
	}
	slices.Sort(list)
	return strings.Join(list, "; ")
}

var paintLog = Paper{
	Name: "paint", Title: "Paint log", For: "paint maker, inspector: each coat with its weather, its film and its batch", Across: true,
	Needs: func(b *assess.Brief) string { return needs[survey.Coat](b, "no coat is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Lead.Text(), calc.Confined.Text()})
		coats := dossier.All[survey.Coat](b.Dossier())
		slices.SortStableFunc(coats, func(x, y dossier.Entry[survey.Coat]) int { return y.Body.Date.Compare(x.Body.Date) })
		d.Heading("Coats, newest first")
		recordTable(d, b, coats, "date", "zone", "place", "number", "product", "colour", "batch", "area", "used", "method", "started", "stopped", "defects")
		d.Heading("Surface before, film and time to the next coat")
		recordTable(d, b, coats, "date", "zone", "place", "number", "grade", "profile", "salts", "wet_film", "overcoat_min", "overcoat_max", "notes")
		d.Heading("Weather and steel at each coat")
		recordTable(d, b, coats, "date", "zone", "place", "number", "air", "steel", "humidity", "dew_point")
		d.Note("Common practice: steel at least 3 °C above the dew point, humidity below 85 %. The maker's sheet governs.")
		films(d, b)
		paintHours(d, b)
		d.Sign(page.Signer{Who: "Paint inspector", For: "seen"})
	},
}

// films are the film readings, each held to its rule.
func films(d *page.Document, b *assess.Brief) {
	list := dossier.All[survey.Film](b.Dossier())
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(x, y dossier.Entry[survey.Film]) int { return y.Body.Date.Compare(x.Body.Date) })
	fields := fieldsOf[survey.Film]()
	d.Heading("Dry film, newest first")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Day", Face: page.Bold}, {Head: "Zone"}, {Head: "Where"}, {Head: "Readings", Share: 1}, {Head: "Nominal", Right: true}, {Head: "Rule"}, {Head: "Mean", Right: true}, {Head: "Accepted", Share: 1, Face: page.Bold}, {Head: "Holiday test"}, {Head: "Gauge"}, {Head: "Notes", Share: 1}}}
	for _, e := range list {
		of := func(key string) string { return cell(b, e, fields, key) }
		mean, verdict := "", "readings or nominal missing"
		if s, ok := b.Sheet(coating.Acceptance.ID + "@" + e.ID); ok {
			mean, verdict = resultOf(s, "mean"), words(": ", resultOf(s, "pass"), resultOf(s, "failed"))
		}
		t.Rows = append(t.Rows, []string{of("date"), of("zone"), of("place"), of("readings"), of("nominal"), of("rule"), mean, verdict, of("holiday"), of("instrument"), of("notes")})
	}
	d.Table(keep(t))
}

func resultOf(s calc.Sheet, key string) string {
	for _, l := range s.Results {
		if yes, is := l.Value.(bool); l.Key == key && is {
			return plain(yes, "")
		}
		if l.Key == key {
			return l.Text
		}
	}
	return ""
}

// paintHours are the unbroken hours in which the weather allows painting.
func paintHours(d *page.Document, b *assess.Brief) {
	if len(b.InDock.Spells) == 0 {
		return
	}
	d.Heading("Hours that allow painting, read and forecast")
	t := page.Table{Columns: []page.Column{{Head: "From", Face: page.Bold}, {Head: "To"}, {Head: "Hours", Right: true}, {Share: 1}}}
	for _, s := range b.InDock.Spells {
		t.Rows = append(t.Rows, []string{strings.Replace(s.From, "T", " ", 1), strings.Replace(s.To, "T", " ", 1), s.Hours.Text, ""})
	}
	d.Table(t)
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
		r := inDockHead(d, b)
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

// unlessBefore puts words before what somebody has said.
func unlessBefore(words, said string) string {
	if said == "" {
		return ""
	}
	return words + said
}

// unless puts a word behind what somebody has said.
func unless(said, word string) string {
	if said == "" {
		return ""
	}
	return said + word
}
