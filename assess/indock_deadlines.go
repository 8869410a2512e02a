package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/network"
	"oakum/plan"
	"oakum/quantity"
)

// deadlines are what must be done while she stands there. The standard ones set themselves from the days promised: inspections reported within the
// first fifth, final readings 72 and 24 hours before flooding, an answer to every trigger that is lit. An inspection by a share of the docking or by
// hours before flooding gets its day the same way; one with a day of its own keeps it.
func (c *inquiry) deadlines(p *InDockPage, s stay) {
	c.dockDeadlines(p, s)
	for _, e := range dossier.All[plan.Inspection](c.d) {
		b := e.Body
		if c.inspected(b) {
			continue
		}
		due := b.Due
		inside := !s.from.IsZero() && due.Compare(s.from) >= 0 && (s.to.IsZero() || due.Compare(s.to) <= 0)
		if b.Share == nil && b.Before == nil && !yes(b.Hold) && !inside {
			continue
		}
		if due.IsZero() {
			due = c.dueInDock(s, b)
		}
		if due.IsZero() {
			continue
		}
		n := Notice{What: b.What, Due: due.String(), Who: b.Who, Kind: "inspection", ID: e.ID, Place: b.Place.String(), Page: "indock"}
		if yes(b.Hold) {
			n.Do = "Work stops here until it is done."
		}
		if c.past(due) {
			n.Worry = 2
		}
		p.Deadlines = append(p.Deadlines, n)
	}
	slices.SortStableFunc(p.Deadlines, func(a, b Notice) int { return cmp.Compare(a.Due, b.Due) })
}

// inspected tells whether it is done by the day that is looked at.
func (c *inquiry) inspected(b plan.Inspection) bool {
	return !b.Done.IsZero() && b.Result != "not done" && !c.later(b.Done)
}

// daysIn is the docking as calendar.days takes it; ok is false where its first or last day is not known.
func (c *inquiry) daysIn(s stay) (in network.DaysIn, ok bool) {
	if s.from.Day() == 0 || s.to.Day() == 0 || s.to.Before(s.from) {
		return in, false
	}
	in = network.Days.New()
	in.Docked, in.Undock, in.Now = wholeDay(s.from), wholeDay(s.to), wholeDay(c.day)
	if dock, found := dossier.Find[plan.Dock](c.d, c.plan.Dock); found {
		in.DayRate = or0(dock.Body.DayRate) + or0(dock.Body.Services)
	}
	for _, e := range dossier.All[plan.Season](c.d) {
		in.LostIncome += seasonDay(e.Body, c.day)
	}
	if w, found := dossier.Find[plan.DockWindow](c.d, s.window); found && w.Body.Extra != nil {
		in.FreeDays = *w.Body.Extra
	}
	return in, true
}

func wholeDay(d quantity.Date) network.Moment {
	m, _ := network.NewMoment(d.String()) // a whole day is always a moment
	return m
}

// dockDeadlines are the standard deadlines and the triggers that wait.
func (c *inquiry) dockDeadlines(p *InDockPage, s stay) {
	in, ok := c.daysIn(s)
	if !ok {
		return
	}
	about := map[string]LitRow{}
	for _, l := range p.Lit {
		f, found := dossier.Find[plan.Found](c.d, l.Found)
		t, known := dossier.Find[plan.Trigger](c.d, l.Trigger)
		if l.State == "answered" || !found || !known || t.Body.Hours == nil || f.Body.Date.Day() == 0 || len(in.Decisions) >= 1000 {
			continue
		}
		name := l.Finding
		if t.Body.Name != "" {
			name += " (" + t.Body.Name + ")"
		}
		about[name] = l
		in.Decisions = append(in.Decisions, network.Pending{Name: name, Found: wholeDay(f.Body.Date), Hours: *t.Body.Hours, Who: l.Who})
	}
	sheet, out, err := work(c.book, network.Days, "dock", "what day it is in dock", in, daysGiven())
	if err != nil {
		return
	}
	p.days = sheet.ID
	for _, d := range out.Deadlines {
		n := Notice{What: upperFirst(d.What), Due: d.Due.Date().String(), Who: d.Who, Page: "indock", Do: "The yard's contract may set another day."}
		switch name := strings.TrimPrefix(d.What, "decide: "); {
		case name != d.What:
			n.Kind, n.ID, n.Place, n.Do = "found", about[name].Found, about[name].Place, "Decide, and write down why."
		case c.answeredBy(d):
			continue
		case !d.Opens.IsZero():
			n.Do = "Not before " + d.Opens.Date().Words() + ", so that they are of the hull that floats. The yard's contract may say otherwise."
		}
		if d.Overdue {
			n.Worry = 2
		}
		p.Deadlines = append(p.Deadlines, n)
	}
}

// answeredBy tells whether inspections of the dossier speak for a standard deadline: all those by a share of the docking are done, or one by the same
// hours before flooding is entered.
func (c *inquiry) answeredBy(d network.Deadline) bool {
	shares, open := 0, 0
	for _, e := range dossier.All[plan.Inspection](c.d) {
		switch b := e.Body; {
		case b.Share != nil:
			shares++
			if d.Opens.IsZero() && !c.inspected(b) && *b.Share <= fifth+1e-9 {
				return true // that record stands in the list itself
			}
			if !c.inspected(b) {
				open++
			}
		case b.Before != nil && !d.Opens.IsZero() && strings.HasSuffix(d.What, hoursWords(*b.Before)):
			return true
		}
	}
	return d.Opens.IsZero() && shares > 0 && open == 0
}

// fifth is the share of the docking by which the standard wants inspections reported.
const fifth = 0.2

func hoursWords(seconds float64) string { return inWhole(seconds, "h", "hour", "hours") }

// dueInDock is the day of an inspection by a share of the docking, or by hours before flooding.
func (c *inquiry) dueInDock(s stay, b plan.Inspection) quantity.Date {
	in, ok := c.daysIn(s)
	if !ok {
		return quantity.Date{}
	}
	switch {
	case b.Share != nil && *b.Share > 0:
		in.Share = *b.Share
		if out, err := network.Days.Fn(in); err == nil {
			return out.Inspection.Date()
		}
	case b.Before != nil && *b.Before > 0:
		in.Readings = []float64{*b.Before}
		if out, err := network.Days.Fn(in); err == nil {
			for _, d := range out.Deadlines {
				if !d.Opens.IsZero() {
					return d.Opens.Date()
				}
			}
		}
	}
	return quantity.Date{}
}

func daysGiven() map[string]field.Given {
	return map[string]field.Given{
		"docked": how(field.Documented, "the log of the days, or the dock window"), "undock": how(field.Documented, "dock window"), "now": how(field.Assumed, "the day looked at"), "inspection_share": how(field.Assumed, "a fifth"),
		"day_rate": how(field.Documented, "dock record: day rate and services"), "lost_income": how(field.Documented, "season records"), "extra_days": how(field.Documented, "dock window"), "decisions": how(field.Computed, "triggers lit and not answered"),
	}
}
