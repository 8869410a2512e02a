package quantity

import (
	"math"
	"time"
)

// First gives the start of the first day of the date (UTC), or the zero time
// where there is no date.
func (d Date) First() time.Time {
	if d.IsZero() {
		return time.Time{}
	}
	return midnight(int(d.year), max(int(d.month), 1), max(int(d.day), 1))
}

// Last gives the start of the last day of the date (UTC), or the zero time.
func (d Date) Last() time.Time {
	switch d.Precision() {
	case ToDay:
		return d.First()
	case ToMonth:
		return midnight(int(d.year), int(d.month)+1, 0)
	case ToYear:
		return midnight(int(d.year), 12, 31)
	}
	return time.Time{}
}

// Time gives the middle of the date (UTC): noon of the day, the middle of the
// month or of the year; the zero time where there is no date.
func (d Date) Time() time.Time {
	if d.IsZero() {
		return time.Time{}
	}
	end := d.Last().AddDate(0, 0, 1)
	return d.First().Add(end.Sub(d.First()) / 2)
}

// DecimalYear gives the middle of the date as a year and its part, each year
// divided by its own length: 1996.5 for "1996". It is 0 where there is no date.
func (d Date) DecimalYear() float64 {
	if d.IsZero() {
		return 0
	}
	start := midnight(int(d.year), 1, 1)
	end := midnight(int(d.year)+1, 1, 1)
	return float64(d.year) + float64(d.Time().Sub(start))/float64(end.Sub(start))
}

// YearsUntil gives the years from the middle of d to the middle of o, negative
// where o is earlier. ok is false where either is absent: no span, not zero.
func (d Date) YearsUntil(o Date) (years float64, ok bool) {
	if d.IsZero() || o.IsZero() {
		return 0, false
	}
	return o.DecimalYear() - d.DecimalYear(), true
}

// HalfWidth gives how far, in years, the true moment may lie from the middle
// of the date: 0.5 for a year, about 0.04 for a month, under 0.002 for a day.
func (d Date) HalfWidth() float64 {
	if d.IsZero() {
		return 0
	}
	end := d.Last().AddDate(0, 0, 1)
	return end.Sub(d.First()).Hours() / 48 / float64(midnight(int(d.year), 12, 31).YearDay())
}

// AddYears gives the day that lies so many years after the middle of the date,
// or no date where the sum leaves the calendar of this package.
func (d Date) AddYears(years float64) Date {
	y := d.DecimalYear() + years
	if d.IsZero() || !(y >= firstYear && y < lastYear+1) {
		return Date{}
	}
	whole := math.Floor(y)
	start := midnight(int(whole), 1, 1)
	length := midnight(int(whole)+1, 1, 1).Sub(start)
	return DateOf(start.Add(time.Duration((y - whole) * float64(length))))
}

// AddDays gives the day so many days after the first day of the date.
func (d Date) AddDays(days int) Date {
	if d.IsZero() {
		return Date{}
	}
	return DateOf(d.First().AddDate(0, 0, days))
}

// DaysUntil gives the days from the first day of d to the first day of o.
// ok is false where either is absent.
func (d Date) DaysUntil(o Date) (days int, ok bool) {
	if d.IsZero() || o.IsZero() {
		return 0, false
	}
	return int(math.Round(o.First().Sub(d.First()).Hours() / 24)), true
}

func midnight(year, month, day int) time.Time {
	return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
}
