package network

import (
	"fmt"
	"slices"

	"oakum/field"
	"oakum/quantity"
)

// Calendar says which days are worked.
type Calendar struct {
	Week   []string `key:"week" optional:"yes" enum:"mon|tue|wed|thu|fri|sat|sun" most:"7" label:"days of the week that are worked" help:"every day where left out"`
	Closed []Span   `key:"closed" optional:"yes" most:"1000" label:"days on which nothing is done" help:"holidays, neaps, the visitors' season"`
}

// Span is a run of days, the last one included.
type Span struct {
	From quantity.Date `key:"from" label:"first day"`
	To   quantity.Date `key:"to" label:"last day"`
	Why  string        `key:"why" optional:"yes" label:"why"`
}

// weekdays in the order of time.Weekday.
var weekdays = []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

// workdays turns working days into dates.
type workdays struct {
	start    quantity.Date
	calendar *Calendar
	dates    []quantity.Date
}

func newWorkdays(start quantity.Date, c *Calendar) (*workdays, error) {
	if c != nil {
		if start.IsZero() {
			return nil, field.Refuse("start", "start is missing: a calendar needs the day on which the works begin")
		}
		for i, s := range c.Closed {
			if s.From.IsZero() || s.To.IsZero() || s.To.Last().Before(s.From.First()) {
				return nil, field.Refuse(fmt.Sprintf("calendar.closed[%d].to", i), "closed days %d: the last day (%s) must not lie before the first (%s)", i, s.To, s.From)
			}
		}
	}
	return &workdays{start: start, calendar: c}, nil
}

// works tells whether a day is worked.
func (w *workdays) works(d quantity.Date) bool {
	if w.calendar == nil {
		return true
	}
	if len(w.calendar.Week) > 0 && !slices.Contains(w.calendar.Week, weekdays[int(d.First().Weekday())]) {
		return false
	}
	return !slices.ContainsFunc(w.calendar.Closed, func(s Span) bool {
		return !d.First().Before(s.From.First()) && !d.First().After(s.To.Last())
	})
}

// date is the n-th working day, counted from 0. ok is false where the calendar leaves no such day within forty years.
func (w *workdays) date(n int) (d quantity.Date, ok bool) {
	next := quantity.DateOf(w.start.First())
	if k := len(w.dates); k > 0 {
		next = w.dates[k-1].AddDays(1)
	}
	for tries := 0; len(w.dates) <= n; tries++ {
		if tries > 40*366 || next.IsZero() {
			return quantity.Date{}, false
		}
		if w.works(next) {
			w.dates, tries = append(w.dates, next), 0
		}
		next = next.AddDays(1)
	}
	return w.dates[n], true
}

// until is how many working days lie before the date.
func (w *workdays) until(d quantity.Date) int {
	n := 0
	for {
		at, ok := w.date(n)
		if !ok || !at.First().Before(d.First()) {
			return n
		}
		n++
	}
}
