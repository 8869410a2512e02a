package quantity

import (
	"cmp"
	"fmt"
	"strconv"
	"time"
)

// Date is a day, a month or a year of the Gregorian calendar: as much as the
// paper says and no more. The zero value means that there is no date.
type Date struct {
	year       int16
	month, day uint8 // 0: not said
}

// Precision of a date.
type Precision string

const (
	ToYear  Precision = "year"
	ToMonth Precision = "month"
	ToDay   Precision = "day"
)

// Years that a date may have: a ship's papers, not history or astronomy.
const (
	firstYear = 1000
	lastYear  = 9999
)

// NewDate makes a date from year, month 1..12 and day; 0 for a month or day
// that is not known.
func NewDate(year, month, day int) (Date, error) {
	if year < firstYear || year > lastYear {
		return Date{}, fmt.Errorf("year %d is outside %d to %d", year, firstYear, lastYear)
	}
	if month == 0 && day == 0 {
		return Date{year: int16(year)}, nil
	}
	if month < 1 || month > 12 {
		return Date{}, fmt.Errorf("month %d is outside 1 to 12", month)
	}
	if n := daysIn(year, month); day < 0 || day > n {
		return Date{}, fmt.Errorf("day %d is outside 1 to %d of %s %d", day, n, time.Month(month), year)
	}
	return Date{int16(year), uint8(month), uint8(day)}, nil
}

// DateOf gives the calendar day of a time in its own zone.
func DateOf(t time.Time) Date {
	d, err := NewDate(t.Year(), int(t.Month()), t.Day())
	if err != nil {
		return Date{}
	}
	return d
}

// IsZero tells whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// Year gives the year, 0 where there is no date.
func (d Date) Year() int { return int(d.year) }

// Month gives the month 1..12, 0 where it is not known.
func (d Date) Month() int { return int(d.month) }

// Day gives the day of the month, 0 where it is not known.
func (d Date) Day() int { return int(d.day) }

// Precision tells how much of the date is known; "" where there is none.
func (d Date) Precision() Precision {
	switch {
	case d.day > 0:
		return ToDay
	case d.month > 0:
		return ToMonth
	case d.year > 0:
		return ToYear
	}
	return ""
}

// String gives "1996-10-15", "1996-10", "1996" (ISO 8601), or "".
func (d Date) String() string {
	if d.year <= 0 {
		return ""
	}
	b := padded(make([]byte, 0, 10), int(d.year), 1000)
	if d.month > 0 {
		b = padded(append(b, '-'), int(d.month), 10)
	}
	if d.month > 0 && d.day > 0 {
		b = padded(append(b, '-'), int(d.day), 10)
	}
	return string(b)
}

// padded appends a number with noughts before it, up to the place given.
func padded(b []byte, n, place int) []byte {
	for ; place > n && place > 1; place /= 10 {
		b = append(b, '0')
	}
	return strconv.AppendInt(b, int64(n), 10)
}

// Words gives "15 October 1996", "October 1996", "1996", or "no date".
func (d Date) Words() string {
	switch d.Precision() {
	case ToDay:
		return fmt.Sprintf("%d %s %d", d.day, time.Month(d.month), d.year)
	case ToMonth:
		return fmt.Sprintf("%s %d", time.Month(d.month), d.year)
	case ToYear:
		return fmt.Sprint(d.year)
	}
	return "no date"
}

// Compare orders dates by their first day, the less precise one first where
// that is the same; no date comes before any.
func (d Date) Compare(o Date) int {
	return cmp.Or(cmp.Compare(d.year, o.year), cmp.Compare(d.month, o.month), cmp.Compare(d.day, o.day))
}

// Before tells whether all of d lies before all of o. It is false where the
// two overlap, or where either is absent.
func (d Date) Before(o Date) bool {
	return !d.IsZero() && !o.IsZero() && d.Last().Before(o.First())
}

// Contains tells whether all of o lies within d: "1996" contains "1996-10".
func (d Date) Contains(o Date) bool {
	if d.IsZero() || o.IsZero() {
		return false
	}
	return !o.First().Before(d.First()) && !o.Last().After(d.Last())
}

func daysIn(year, month int) int {
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}
