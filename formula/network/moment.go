package network

import (
	"fmt"
	"strings"
	"time"

	"oakum/quantity"
)

// Moment is a point in time, or a whole day where no hour is known. It keeps the zone it was written in.
type Moment struct {
	time  time.Time
	whole bool // a day
}

// NewMoment reads an RFC 3339 time ("2031-05-12T07:30:00+01:00") or a day ("2031-05-12").
func NewMoment(text string) (Moment, error) {
	text = strings.TrimSpace(text)
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return Moment{time: t}, nil
	}
	if t, err := time.Parse(time.DateOnly, text); err == nil {
		return Moment{time: t, whole: true}, nil
	}
	return Moment{}, fmt.Errorf("%q is no moment: write 2031-05-12 or 2031-05-12T07:30:00+01:00", text)
}

// UnmarshalText implements encoding.TextUnmarshaler.
func (m *Moment) UnmarshalText(text []byte) error {
	if len(strings.TrimSpace(string(text))) == 0 {
		*m = Moment{}
		return nil
	}
	n, err := NewMoment(string(text))
	if err == nil {
		*m = n
	}
	return err
}

// MarshalText implements encoding.TextMarshaler.
func (m Moment) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// String prints the moment as it is read.
func (m Moment) String() string {
	switch {
	case m.time.IsZero():
		return ""
	case m.whole:
		return m.time.Format(time.DateOnly)
	}
	return m.time.Format(time.RFC3339)
}

// IsZero tells whether there is no moment.
func (m Moment) IsZero() bool { return m.time.IsZero() }

// Date is the calendar day in its own zone.
func (m Moment) Date() quantity.Date { return quantity.DateOf(m.time) }

// add is the moment so many days later, to the second, with its hour.
func (m Moment) add(days float64) Moment {
	return Moment{time: m.time.Add(time.Duration(days * 86400 * float64(time.Second))).Truncate(time.Second)}
}

// until is the time to another moment in days.
func (m Moment) until(o Moment) float64 { return o.time.Sub(m.time).Hours() / 24 }

// days is the number of calendar days from the day of m to that of o, each in its own zone.
func (m Moment) days(o Moment) int {
	n, _ := m.Date().DaysUntil(o.Date())
	return n
}
