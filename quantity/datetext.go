package quantity

import (
	"fmt"
	"strings"
)

// MarshalText gives the ISO form; no date is the empty text.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what [ParseDate] reads; the empty text is no date.
func (d *Date) UnmarshalText(text []byte) error {
	if strings.TrimSpace(string(text)) == "" {
		*d = Date{}
		return nil
	}
	read, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = read
	return nil
}

// ParseDate reads a date that can mean only one thing: "1996-10-15",
// "1996-10", "1996", "15 Oct 1996", "25/04/1996". It refuses "03/04/2021" and
// names the readings.
func ParseDate(text string) (Date, error) {
	r, err := ReadDate(text)
	if err != nil {
		return Date{}, err
	}
	if len(r.Alternatives) > 0 {
		return Date{}, fmt.Errorf("date %q may be %s: write year-month-day", text, orList(r.Alternatives))
	}
	return r.Date, nil
}

func orList(dates []Date) string {
	var words []string
	for _, d := range dates {
		words = append(words, d.String())
	}
	return strings.Join(words, " or ")
}
