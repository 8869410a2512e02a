package days

import (
	"cmp"
	"fmt"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/survey"
)

// The hands, and the phones they carry.
const (
	superintendent = "superintendent"
	treasurer      = "treasurer"
	dockPhone      = "dock"
)

// asLeft is when each found report was closed; the report itself keeps no day for that.
var asLeft = map[string]string{"found-01": "2027-04-14", "found-02": "2027-04-18", "found-03": "2027-04-17", "found-04": "2027-04-18", "found-05": "2027-04-19",
	"found-06": "2027-04-16", "found-07": "2027-04-16", "found-09": "2027-04-17", "found-10": "2027-04-18"}

// stages are the states a record went through; was is its body before she docked, nil for a new record.
func stages(r dossier.Record, was any) ([]stage, error) {
	w := &writer{id: r.ID}
	switch b := r.Body.(type) {
	case *plan.Found:
		w.found(*b)
	case *plan.Change:
		w.change(*b)
	case *plan.Activity:
		w.activity(*b)
	case *plan.DockWindow:
		w.window(*b, was)
	default:
		w.atOnce(r)
	}
	if w.err != nil {
		return nil, fmt.Errorf("%s %s: %w", r.Kind, r.ID, w.err)
	}
	return w.out, nil
}

type writer struct {
	id  string
	out []stage
	err error
}

func (w *writer) add(d quantity.Date, hour, by, what string, body any) {
	at, err := on(d, hour)
	w.err = cmp.Or(w.err, err)
	w.out = append(w.out, stage{at, by, what, body})
}

// found: seen in the dock, numbered and priced at the desk that evening, decided by whoever may, closed as left.
func (w *writer) found(b plan.Found) {
	seen := plan.Found{Date: b.Date, Who: b.Who, Place: b.Place, Finding: b.Finding, Against: b.Against, Condition: b.Condition, Proposed: b.Proposed, Thickness: b.Thickness, ShareLost: b.ShareLost,
		Area: b.Area, Length: b.Length, Depth: b.Depth, Clearance: b.Clearance, Share: b.Share, Count: b.Count, Disposition: "open"}
	w.add(b.Date, "11:00", b.Who, dockPhone, &seen)
	priced := b
	priced.Disposition, priced.Decider, priced.Decided, priced.AsLeft = "open", "", quantity.Date{}, ""
	w.add(b.Date, "18:00", superintendent, desk, &priced)
	if b.Decided.IsZero() {
		return
	}
	decided := b
	decided.AsLeft = ""
	w.add(b.Decided, "20:00", b.Decider, desk, &decided)
	if b.AsLeft == "" {
		return
	}
	left, err := quantity.ParseDate(asLeft[w.id])
	w.err = cmp.Or(w.err, err)
	w.add(left, "16:30", superintendent, dockPhone, &b)
}

func (w *writer) change(b plan.Change) {
	priced := b
	priced.State, priced.Approver, priced.Approved = "priced", "", quantity.Date{}
	w.add(b.Date, "18:30", superintendent, desk, &priced)
	w.add(b.Approved, "20:30", b.Approver, desk, &b)
}

func (w *writer) activity(b plan.Activity) {
	begun := b
	begun.Finished = quantity.Date{}
	w.add(b.Started, "07:30", superintendent, desk, &begun)
	if !b.Finished.IsZero() {
		w.add(b.Finished, "17:15", superintendent, desk, &b)
	}
}

// window: signed in February as it was offered, for fourteen days; lengthened on the evening of the eleventh day.
func (w *writer) window(b plan.DockWindow, was any) {
	offered, ok := was.(*plan.DockWindow)
	if !ok {
		w.err = fmt.Errorf("she was not offered this window")
		return
	}
	signed := b
	signed.Days, signed.Notes = offered.Days, offered.Notes
	w.add(date("2027-02-22"), "11:00", superintendent, desk, &signed)
	w.add(date("2027-04-18"), "20:45", superintendent, desk, &b)
}

// atOnce is for what is entered in one piece.
func (w *writer) atOnce(r dossier.Record) {
	switch b := r.Body.(type) {
	case *plan.Day:
		w.add(b.Date, "21:00", superintendent, dockPhone, b)
	case *plan.Decision:
		w.add(b.Date, "20:15", b.Who, desk, b)
	case *plan.Watch:
		w.add(b.Begins, "17:30", superintendent, desk, b)
	case *plan.Inspection:
		w.add(b.Done, "16:00", superintendent, desk, b)
	case *plan.Landing:
		w.add(b.Date, "21:45", superintendent, desk, b)
	case *plan.Commitment:
		w.add(b.Date, "10:00", treasurer, desk, b)
	case *plan.Receipt:
		w.add(b.Date, "10:00", treasurer, desk, b)
	case *plan.Payment:
		w.add(b.Date, "10:30", treasurer, desk, b)
	case *plan.Work, *plan.Guarantee, *plan.Matter: // opened to the public, agreed or settled with the contract
		w.add(date("2027-02-22"), "11:30", superintendent, desk, b)
	case *plan.Deferred: // done at last, when the plates it speaks of are renewed
		w.add(date("2027-04-18"), "17:45", superintendent, desk, b)
	case *survey.Draft:
		w.add(b.Date, b.Time, superintendent, dockPhone, b)
	case *survey.Thickness:
		w.add(b.Date, "16:00", cmp.Or(b.Who, b.Firm), dockPhone, b)
	case *survey.Photo:
		w.add(b.Date, "12:00", b.Who, dockPhone, b)
	case *survey.Leak:
		w.add(b.Date, cmp.Or(b.Time, "14:00"), b.Who, dockPhone, b)
	case *survey.Film:
		w.add(b.Date, cmp.Or(b.Time, "15:30"), b.Who, dockPhone, b)
	case *survey.Coat:
		w.add(b.Date, "17:00", b.Who, dockPhone, b)
	case *survey.Climate:
		w.climate(b)
	default:
		w.err = fmt.Errorf("nobody knows who enters this, and when")
	}
}

// climate is entered when it is read; a forecast on the evening of the last day.
func (w *writer) climate(b *survey.Climate) {
	if b.Forecast != nil && *b.Forecast {
		w.add(quantity.DateOf(Date(Last)), "18:00", superintendent, dockPhone, b)
		return
	}
	w.add(b.Date, b.Time, b.Who, dockPhone, b)
}

func date(text string) quantity.Date {
	d, err := quantity.ParseDate(text)
	if err != nil {
		panic(err) //nolint:forbidigo // a slip in this file, found by its own test
	}
	return d
}
