package assess

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// CarriedRow is something that one docking hands to the next: left undone, patched for a time, under guarantee, harmful and still there.
type CarriedRow struct {
	Kind  string `json:"kind"`
	ID    string `json:"id"`
	What  string `json:"what"`
	Place string `json:"place"`
	From  string `json:"from"` // which list it comes from
	Why   string `json:"why"`
	Due   string `json:"due"`  // the day it must be done or looked at, "" where nobody set one
	When  Figure `json:"when"` // the same as a date on the line of years
	State string `json:"state"`
	Cost  Figure `json:"cost"`

	due   quantity.Date
	place ship.Place
}

const (
	noDay     = "no day is set"
	pastDay   = "past its day"
	stillTime = "in time"
)

// carried lists what is handed to the next docking, the earliest day first; what nobody dated stands before all, since it is forgotten first.
func (c *inquiry) carried() []CarriedRow {
	rows := []CarriedRow{}
	covered := map[string]bool{} // found reports and works that have an entry in the deferred list
	for _, e := range dossier.All[plan.Deferred](c.d) {
		b := e.Body
		covered[b.Found], covered[b.Work] = true, true
		if b.State == "done" || b.State == "dropped" {
			continue
		}
		r := CarriedRow{Kind: "deferred", ID: e.ID, What: b.What, From: "left undone", Why: b.Why, due: firstOf(b.Due, b.Review), place: b.Place}
		if c.past(b.Review) && !b.Review.IsZero() {
			r.due = firstOf(b.Review, b.Due)
		}
		r.Cost = c.costOf("deferred", e.Head, b.Cost)
		rows = append(rows, r)
	}
	rows = append(rows, c.carriedFound(covered)...)
	rows = append(rows, c.carriedWorks(covered)...)
	rows = append(rows, c.carriedRepairs()...)
	rows = append(rows, c.carriedGuarantees()...)
	for i := range rows {
		c.dateCarried(&rows[i])
	}
	slices.SortStableFunc(rows, func(a, b CarriedRow) int { return cmp.Compare(a.Due, b.Due) })
	return rows
}

// firstOf is the first date that somebody set.
func firstOf(days ...quantity.Date) quantity.Date {
	for _, d := range days {
		if !d.IsZero() {
			return d
		}
	}
	return quantity.Date{}
}

func (c *inquiry) costOf(kind string, h dossier.Head, cost *float64) Figure {
	if cost == nil {
		return notYetFigure("cost", "cost").of(kind, h.ID)
	}
	return known("cost", "cost", *cost, "money", basisOf(h, field.Assumed), h.BasisNote).of(kind, h.ID)
}

func (c *inquiry) dateCarried(r *CarriedRow) {
	r.Place = r.place.String()
	r.When = Figure{Key: "when", Label: r.What, Unit: calendar, Text: noDay, Basis: field.Unknown, Place: r.Place, Kind: r.Kind, ID: r.ID, Note: r.From}
	if r.State == "" {
		r.State = noDay
	}
	if r.due.IsZero() {
		return
	}
	r.Due = r.due.String()
	r.When.Basis, r.When.Text = field.Documented, r.due.Words()
	r.When.Value = new(round(r.due.DecimalYear()))
	if r.State == noDay {
		r.State = stillTime
	}
	if c.past(r.due) {
		r.State, r.When.Worry = pastDay, 2
	}
}

// behind tells whether the docking in which something was found on a day is over: what it left open is no longer the yard's.
func (c *inquiry) behind(day quantity.Date) bool {
	if day.IsZero() || day.Compare(c.day) >= 0 {
		return false
	}
	s := c.stay()
	if s.to.IsZero() {
		return c.past(day.AddDays(quiet))
	}
	return !s.in && (day.Compare(s.to) <= 0 || c.past(day.AddDays(quiet)))
}

// quiet is after how many days a docking that nobody gave an end to is taken to be over.
const quiet = 60

// carriedFound are the places that were found in dock and left, watched or put off, where nobody put them on the deferred list.
func (c *inquiry) carriedFound(covered map[string]bool) (rows []CarriedRow) {
	for _, e := range dossier.All[plan.Found](c.d) {
		b := e.Body
		if covered[e.ID] || !c.behind(b.Date) {
			continue
		}
		why := map[string]string{"defer": "found in dock and put off", "monitor": "found in dock, to be watched", "open": "found in dock, and nobody wrote down what was done", "": "found in dock, and nobody wrote down what was done"}[b.Disposition]
		if why == "" {
			continue
		}
		rows = append(rows, CarriedRow{Kind: "found", ID: e.ID, What: cmp.Or(b.Condition, b.Finding), From: "found in dock", Why: why, place: b.Place, Cost: c.costOf("found", e.Head, b.Cost)})
	}
	return rows
}

func (c *inquiry) carriedWorks(covered map[string]bool) (rows []CarriedRow) {
	for _, e := range dossier.All[plan.Work](c.d) {
		b := e.Body
		if b.State == "deferred" && !covered[e.ID] {
			rows = append(rows, CarriedRow{Kind: "work", ID: e.ID, What: b.Name, From: "work put off", Why: b.Notes, place: b.Place, Cost: c.costOf("work", e.Head, b.Likely)})
		}
	}
	return rows
}

func (c *inquiry) carriedRepairs() (rows []CarriedRow) {
	for _, e := range dossier.All[ship.Repair](c.d) {
		b := e.Body
		if b.State == "gone" || b.State == "replaced" || b.Fitted.Compare(c.day) > 0 {
			continue
		}
		why := "good until " + b.Expires.String()
		if b.Expires.IsZero() {
			why = "nobody wrote how long it is good for; common practice: ten years at the very most"
		}
		rows = append(rows, CarriedRow{Kind: "repair", ID: e.ID, What: b.Name, From: "temporary repair", Why: why, due: expiryOf(b.Expires, b.Fitted), place: b.Place, Cost: notYetFigure("cost", "cost").of("repair", e.ID)})
	}
	return rows
}

// carriedGuarantees are those that run: their day is the one to look by, so that a fault is claimed in time.
func (c *inquiry) carriedGuarantees() (rows []CarriedRow) {
	for _, e := range dossier.All[plan.Guarantee](c.d) {
		b := e.Body
		ends, written := b.Until()
		if b.State == "made good" || b.State == "ended" || c.past(ends) || b.Begins.Compare(c.day) > 0 {
			continue
		}
		r := CarriedRow{Kind: "guarantee", ID: e.ID, What: b.What, From: "guarantee", Why: "of " + cmp.Or(b.Giver, "nobody named") + ", until " + ends.String(), place: b.Place, due: b.LookBy(), Cost: notYetFigure("cost", "cost").of("guarantee", e.ID)}
		if !written {
			r.Why += ", as six months are common practice and nothing is written"
		}
		if b.State == "claimed" {
			r.State = "claimed " + b.Claimed.String()
		} else if !b.Looked.IsZero() {
			r.due, r.State = ends, "looked at "+b.Looked.String()
		}
		rows = append(rows, r)
	}
	return rows
}

// overdueGuarantees are those that nobody looked at while a fault can still be claimed.
func (c *inquiry) overdueGuarantees() (list []Notice) {
	for _, r := range c.carriedGuarantees() {
		if r.State == "" && c.past(r.due) {
			list = append(list, Notice{What: r.What + ": guarantee " + r.Why + ", and nobody has looked yet", Do: "Look at all of it, and claim in writing before it runs out.", Due: r.due.String(), Kind: r.Kind, ID: r.ID, Place: r.place.String(), Page: "record", Worry: 2})
		}
	}
	return list
}

// carriedDated adds what is carried to the outlook's list, where it is not there already by its own life. It says nothing of water: that was not worked.
func (c *inquiry) carriedDated(p *OutlookPage) {
	have := map[string]bool{}
	for _, r := range p.Dated {
		have[r.ID] = true
	}
	for _, r := range c.carried() {
		if have[r.ID] || r.due.IsZero() {
			continue
		}
		row := OutlookRow{Kind: r.Kind, ID: r.ID, What: r.What + " (" + r.From + ")", Place: r.Place, Space: c.spaceAt(c.locator().Locate(r.place)), When: r.When,
			Water: noWater(r.Kind, r.ID).noted("a date to keep"), Pumps: noWater(r.Kind, r.ID)}
		if r.Kind == "deferred" || r.Kind == "found" || r.Kind == "work" {
			row.Water = unknown("flow", "water", "what was left undone was not worked out").of(r.Kind, r.ID)
			row.Pumps = unknown("pumps", "pumps", "").of(r.Kind, r.ID)
		}
		p.Dated = append(p.Dated, row)
	}
	slices.SortStableFunc(p.Dated, func(a, b OutlookRow) int { return cmp.Compare(early(a.When), early(b.When)) })
}

func early(f Figure) float64 {
	switch {
	case f.P10 != nil:
		return *f.P10
	case f.Value != nil:
		return *f.Value
	}
	return 9999
}

// carriedOverdue are the carried things past their day or without one, for the page that says how she is today.
func (c *inquiry) carriedOverdue() []Notice {
	list := []Notice{}
	list = append(list, c.overdueDeferred()...)
	list = append(list, c.overdueGuarantees()...)
	for _, r := range c.carried() {
		if r.Due == "" && r.Kind != "repair" {
			list = append(list, Notice{What: r.What + ": " + r.Why + "; " + noDay + " for it", Do: "Put it on the deferred list with a day to look again.", Kind: r.Kind, ID: r.ID, Place: r.Place, Page: "record", Worry: 1})
		}
	}
	return list
}
