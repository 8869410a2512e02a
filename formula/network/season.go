package network

import (
	"fmt"
	"strings"

	"oakum/quantity"
)

// YearDay is a month and a day that come every year: "05-01".
type YearDay struct{ month, day int }

// UnmarshalText implements encoding.TextUnmarshaler.
func (y *YearDay) UnmarshalText(text []byte) error {
	s := strings.TrimPrefix(strings.TrimSpace(string(text)), "--")
	if s == "" {
		*y = YearDay{}
		return nil
	}
	var m, d int
	if n, err := fmt.Sscanf(s, "%d-%d", &m, &d); err != nil || n != 2 || len(s) > 5 {
		return fmt.Errorf("%q is no day of the year: write month and day, 05-01", s)
	}
	if _, err := quantity.NewDate(2000, m, d); err != nil || d == 0 {
		return fmt.Errorf("%q is no day of the year: write month and day, 05-01", s)
	}
	*y = YearDay{m, d}
	return nil
}

// MarshalText implements encoding.TextMarshaler.
func (y YearDay) MarshalText() ([]byte, error) {
	if y == (YearDay{}) {
		return nil, nil
	}
	return fmt.Appendf(nil, "%02d-%02d", y.month, y.day), nil
}

// Season is a run of days that comes every year, the last one included. It may run over the turn of the year.
type Season struct {
	From YearDay `key:"from" label:"first day" help:"month and day: 05-01"`
	To   YearDay `key:"to" label:"last day"`
}

// Has tells whether the day lies in the season.
func (s Season) Has(d quantity.Date) bool {
	at, from, to := 100*d.Month()+d.Day(), 100*s.From.month+s.From.day, 100*s.To.month+s.To.day
	if from <= to {
		return at >= from && at <= to
	}
	return at >= from || at <= to
}
