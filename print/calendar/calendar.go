// Package calendar gives the dates that wait for somebody as iCalendar (RFC 5545): a whole day each, with a stable name, so that a calendar that takes
// the file again moves an entry rather than doubling it.
package calendar

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"
	"github.com/google/uuid"

	"oakum/assess"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// date is one day that waits for somebody, or a run of days, the last included.
type date struct {
	kind, id, what, detail string
	on, to                 quantity.Date
}

// Of is the calendar of a brief: every date that the board may see.
func Of(b *assess.Brief) string {
	cal := ics.NewCalendarFor("Oakum")
	cal.SetMethod(ics.MethodPublish)
	cal.SetName(b.Name)
	stamp, _ := time.Parse(time.DateOnly, b.Day.String())
	for _, d := range sorted(dates(b.Dossier()), ofCarried(b), ofDocking(b)) {
		on, err := time.Parse(time.DateOnly, d.on.String())
		if err != nil {
			continue // a month or a year alone is no day to put into a calendar
		}
		last := on
		if t, err := time.Parse(time.DateOnly, d.to.String()); err == nil {
			last = t
		}
		e := cal.AddEvent(uuid.NewSHA1(uuid.NameSpaceOID, fmt.Append(nil, "oakum", b.Name, d.kind, d.id, d.what)).String())
		e.SetDtStampTime(stamp)
		e.SetAllDayStartAt(on)
		e.SetAllDayEndAt(last.AddDate(0, 0, 1))
		e.SetSummary(d.what)
		if d.detail != "" {
			e.SetDescription(d.detail)
		}
		e.SetProperty(ics.ComponentPropertyTransp, "TRANSPARENT")
	}
	return cal.Serialize(ics.WithNewLineWindows)
}

func dates(d *dossier.Dossier) []date {
	var list []date
	add := func(h dossier.Head, on quantity.Date, what, detail string) {
		if !on.IsZero() && h.Shown(dossier.Board) {
			list = append(list, date{kind: h.Kind, id: h.ID, what: what, detail: detail, on: on})
		}
	}
	for _, e := range dossier.All[plan.Matter](d) {
		if e.Body.State != "settled" && e.Body.State != "dropped" {
			add(e.Head, e.Body.Due, "Decide: "+e.Body.Name, e.Body.Question)
		}
	}
	for _, e := range dossier.All[plan.Deferred](d) {
		if e.Body.State != "done" && e.Body.State != "dropped" {
			add(e.Head, e.Body.Review, "Look again: "+e.Body.What, e.Body.Why)
			add(e.Head, e.Body.Due, "Do: "+e.Body.What, e.Body.Why)
		}
	}
	for _, e := range dossier.All[plan.Custody](d) {
		part := e.Body.Part
		if p, ok := dossier.Find[plan.Part](d, part); ok {
			part = cmp.Or(p.Body.Title, p.Body.Name)
		}
		add(e.Head, e.Body.NextCheck, "Look at its condition: "+part, e.Body.Holder)
		add(e.Head, e.Body.Ends, "Loan ends: "+part, e.Body.Holder)
	}
	for _, e := range dossier.All[plan.Inspection](d) {
		if e.Body.Done.IsZero() {
			add(e.Head, e.Body.Due, e.Body.What, e.Body.Who)
		}
	}
	for _, e := range dossier.All[plan.Readiness](d) {
		if e.Body.Done == nil || !*e.Body.Done {
			add(e.Head, e.Body.Due, e.Body.Item, e.Body.Who)
		}
	}
	for _, e := range dossier.All[ship.Document](d) {
		add(e.Head, e.Body.Expires, "No longer valid: "+e.Body.Title, "")
	}
	return list
}

// ofCarried are the last days of temporary repairs and guarantees, and the days to look at what is guaranteed while a fault can still be claimed.
func ofCarried(b *assess.Brief) []date {
	var list []date
	for _, r := range b.Record.Carried {
		h, ok := b.Dossier().Get(r.ID)
		if !ok || !h.Shown(dossier.Board) {
			continue
		}
		add := func(on quantity.Date, what string) {
			if !on.IsZero() {
				list = append(list, date{kind: r.Kind, id: r.ID, what: what + r.What, detail: words(r.Place, r.Why), on: quantity.DateOf(on.Last())}) // until a month: to its end
			}
		}
		switch body := h.Body.(type) {
		case *ship.Repair:
			if on, err := quantity.ParseDate(r.Due); err == nil {
				add(on, "Temporary repair good until today: ")
			}
		case *plan.Guarantee:
			if body.Looked.IsZero() && body.State != "claimed" {
				add(body.LookBy(), "Look at it under guarantee: ")
			}
			ends, _ := body.Until()
			add(ends, "Guarantee ends: ")
		}
	}
	return list
}

// ofDocking are the dates of the docking: when docks are free and until when they are held, what grants ask, when it can be signed, the days that satisfy
// all, and what falls due in dock.
func ofDocking(b *assess.Brief) []date {
	var list []date
	add := func(kind, id, on, to, what, detail string) {
		if h, ok := b.Dossier().Get(id); id != "" && (!ok || !h.Shown(dossier.Board)) {
			return
		}
		from, err := quantity.ParseDate(on)
		if err != nil {
			return
		}
		until, _ := quantity.ParseDate(to)
		list = append(list, date{kind, id, what, detail, from, until})
	}
	for _, d := range b.Calendar.Dates {
		add(d.Kind, d.ID, d.On, d.To, d.What, d.Note)
	}
	if len(b.Calendar.Cases) > 0 {
		k := b.Calendar.Cases[0]
		for _, w := range k.Windows {
			for i, run := range runs(w.Good) {
				what := "She can leave for " + w.Dock
				if i > 0 {
					what += fmt.Sprintf(" (%d)", i+1)
				}
				add("dock_window", w.ID, run[0].Leaves, run[len(run)-1].Leaves, what, k.Name)
			}
		}
	}
	for _, n := range b.InDock.Deadlines {
		if n.Kind != "inspection" || n.Due == "" { // inspections with a day of their own stand among the dates of the records
			add(n.Kind, n.ID, n.Due, "", "In dock: "+n.What, words(n.Do, n.Who))
		} else if e, ok := dossier.Find[plan.Inspection](b.Dossier(), n.ID); ok && e.Body.Due.IsZero() {
			add(n.Kind, n.ID, n.Due, "", "In dock: "+n.What, words(n.Do, n.Who))
		}
	}
	return list
}

// runs splits days that satisfy all where a day between them does not.
func runs(good []assess.GoodDate) (list [][]assess.GoodDate) {
	for i, g := range good {
		d, _ := quantity.ParseDate(g.Leaves)
		if i == 0 || good[i-1].Leaves != d.AddDays(-1).String() {
			list = append(list, nil)
		}
		list[len(list)-1] = append(list[len(list)-1], g)
	}
	return list
}

func words(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), "; ")
}

func sorted(lists ...[]date) []date {
	list := slices.Concat(lists...)
	slices.SortStableFunc(list, func(a, b date) int {
		return cmp.Or(a.on.Compare(b.on), strings.Compare(a.id, b.id), strings.Compare(a.what, b.what))
	})
	return list
}
