package print

import (
	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/drawing"
	"oakum/print/page"
)

var tow = Paper{
	Name: "tow", Title: "Tow data sheet", For: "tow master, warranty surveyor, harbour: what she is and how she is made ready",
	Needs: func(b *assess.Brief) string { return needs[plan.Tow](b, "no tow is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Cautions([]string{calc.Towing.Text(), calc.Stability.Text()})
		d.Heading("The tows")
		sideBySide(d, b, dossier.All[plan.Tow](b.Dossier()))
		d.Heading("The ship")
		if dr, err := b.Drawing(); err == nil {
			drawing.Profile(d, dr, nil)
		}
		r.figures(d, b.Ship.Particulars)
		d.Heading("As she floats")
		r.figures(d, b.Docking.Afloat)
		pulls(d, b, &r)
		ready(d, b, "tow", "Made ready for the tow")
		watches(d, b, "tow")
		hazards(d, b)
		r.list(d, b)
		d.Keep(80)
		d.Sign(page.Signer{Who: "Keeper", For: "ready as listed"}, page.Signer{Who: "Warranty surveyor", For: "seen"}, page.Signer{Who: "Tow master", For: "accepted, on the day"})
	},
}

// pulls prints what each tow takes, with and without the propellers in the water.
func pulls(d *page.Document, b *assess.Brief, r *references) {
	for _, t := range b.Docking.Tows {
		d.Heading(words(", ", t.Name, t.Date) + ": " + t.Verdict)
		d.Text(sentences(t.Reason, words(": ", "Limits", t.Limits), words(": ", "Places of refuge", t.Refuge)))
		d.Text(t.Weather.Says)
		r.figures(d, said(t.Total, t.Without, t.Share, t.Pull, t.PullOff, t.Hold, t.Line, t.Fastest, t.UnderWay, t.Weather.Below, t.Weather.Calm, t.Weather.Wait, t.Weather.Chance))
	}
}

// sheetResults prints what the sheets of a subject give, without their working.
func sheetResults(d *page.Document, b *assess.Brief, subject string) {
	for _, id := range sheetsOf(b, subject) {
		s, ok := b.Sheet(id)
		if !ok {
			continue
		}
		d.Heading(words(": ", s.Title, s.Subject))
		lines(d, s.Results, false, mostRows)
		for _, w := range s.Warnings {
			d.Strong(w)
		}
		d.Note("Sheet " + s.ID + ". " + s.Accuracy)
	}
}

// ready is a list of what must stand, with what shows it.
func ready(d *page.Document, b *assess.Brief, occasion, title string) {
	list := only(dossier.All[plan.Readiness](b.Dossier()), func(r plan.Readiness) bool { return r.For == occasion })
	if len(list) == 0 {
		return
	}
	d.Heading(title)
	t := page.Table{Columns: []page.Column{{Head: "Done"}, {Head: "What", Share: 1, Face: page.Bold}, {Head: "Shown by", Share: 1}, {Head: "Who"}, {Head: "By"}, {Head: "On"}}}
	for _, e := range list {
		r := e.Body
		done := "not known"
		if r.Done != nil {
			done = plain(*r.Done, "")
		}
		t.Rows = append(t.Rows, []string{done, r.Item, r.Evidence, r.Who, r.Due.String(), r.DoneOn.String()})
	}
	d.Table(keep(t))
}

func watches(d *page.Document, b *assess.Brief, occasion string) {
	list := only(dossier.All[plan.Watch](b.Dossier()), func(w plan.Watch) bool { return w.Occasion == occasion })
	if len(list) == 0 {
		return
	}
	d.Heading("Who watches")
	recordTable(d, b, list, "space", "who", "begins", "ends", "hours", "reach", "looks_for")
}
