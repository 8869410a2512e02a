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

// date is one day that waits for somebody.
type date struct {
	kind, id, what, detail string
	on                     quantity.Date
}

// Of is the calendar of a brief: every date that the board may see.
func Of(b *assess.Brief) string {
	cal := ics.NewCalendarFor("Oakum")
	cal.SetMethod(ics.MethodPublish)
	cal.SetName(b.Name)
	stamp, _ := time.Parse(time.DateOnly, b.Day.String())
	for _, d := range dates(b.Dossier()) {
		on, err := time.Parse(time.DateOnly, d.on.String())
		if err != nil {
			continue // a month or a year alone is no day to put into a calendar
		}
		e := cal.AddEvent(uuid.NewSHA1(uuid.NameSpaceOID, fmt.Append(nil, "oakum", b.Name, d.kind, d.id, d.what)).String())
		e.SetDtStampTime(stamp)
		e.SetAllDayStartAt(on)
		e.SetAllDayEndAt(on.AddDate(0, 0, 1))
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
			list = append(list, date{h.Kind, h.ID, what, detail, on})
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
	for _, e := range dossier.All[ship.Repair](d) {
		if e.Body.State != "replaced" {
			add(e.Head, e.Body.Expires, "Repair past its date: "+e.Body.Name, e.Body.Place.String())
		}
	}
	for _, e := range dossier.All[ship.Document](d) {
		add(e.Head, e.Body.Expires, "No longer valid: "+e.Body.Title, "")
	}
	slices.SortStableFunc(list, func(a, b date) int {
		return cmp.Or(a.on.Compare(b.on), strings.Compare(a.id, b.id), strings.Compare(a.what, b.what))
	})
	return list
}
