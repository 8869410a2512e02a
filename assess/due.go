package assess

import (
	"fmt"
	"math"

	"oakum/quantity"
)

// due is a date band in decimal calendar years: one in ten before early, half before likely, nine in ten before late. Infinite is never.
type due struct{ early, likely, late float64 }

// calendar is the unit of a figure that is a date: a decimal calendar year.
const calendar = "calendar year"

var never = due{math.Inf(1), math.Inf(1), math.Inf(1)}

// dueAfter counts years on from a date.
func dueAfter(from quantity.Date, early, likely, late float64) due {
	if from.IsZero() {
		return never
	}
	y := from.DecimalYear()
	return due{y + early, y + likely, y + late}
}

// horizon is the calendar year beyond which a date is only "later".
func horizon(y float64) bool { return math.IsInf(y, 0) || math.IsNaN(y) || y > 2200 }

func yearText(y float64) string {
	if horizon(y) {
		return "later than anyone can say"
	}
	return fmt.Sprintf("%d", int(math.Floor(y)))
}

// words says the band with the range first, as seen from a day in decimal years.
func (d due) words(day float64) string {
	switch {
	case d.late <= day:
		return "already, since " + yearText(d.likely)
	case d.early <= day && horizon(d.late):
		return "any time from now"
	case d.early <= day:
		return "any time from now, by " + yearText(d.late)
	case horizon(d.early):
		return "not within a century"
	case horizon(d.late):
		return "after " + yearText(d.early)
	case yearText(d.early) == yearText(d.late):
		return yearText(d.early)
	}
	return yearText(d.early) + " to " + yearText(d.late)
}

// earlyBefore tells whether the early date falls before the day and so many years.
func (d due) earlyBefore(day quantity.Date, years float64) bool {
	return d.early <= day.DecimalYear()+years
}

func (d due) likelyBefore(day quantity.Date, years float64) bool {
	return d.likely <= day.DecimalYear()+years
}

// date is the ISO date of a decimal year, "" where there is none.
func dateText(y float64) string {
	if horizon(y) {
		return ""
	}
	year := int(math.Floor(y))
	month := min(int((y-float64(year))*12)+1, 12)
	return fmt.Sprintf("%04d-%02d", year, month)
}
