package intake

import (
	"errors"
	"fmt"

	"oakum/quantity"
)

func (r *reader) date(d *draft, s slot, cell string) error {
	reading, iso, err := r.day(cell)
	var word *quantity.NoValue
	switch {
	case errors.As(err, &word):
		if word.Meaning == quantity.SameAsAbove {
			return errNothingAbove
		}
		return nil
	case err != nil:
		return err
	case len(reading.Alternatives) > 0:
		return fmt.Errorf("%q may be %s or %s: say the order of dates", cell, reading.Alternatives[0].Words(), reading.Alternatives[1].Words())
	}
	if _, err := r.codec.SetText(d.body, s.field, iso, ""); err != nil {
		return err
	}
	d.given[s.field] = true
	d.sets++
	if cell != iso {
		r.clock(d, s, cell)
	}
	return nil
}

// mostDays bounds how many dates are remembered: logs have the same day many times, one after another.
const mostDays = 4096

// dayRead is what a cell with a date was read as, and that as text.
type dayRead struct {
	reading quantity.DateReading
	iso     string
}

func (r *reader) day(cell string) (reading quantity.DateReading, iso string, err error) {
	if have, ok := r.days[cell]; ok {
		return have.reading, have.iso, nil
	}
	if reading, err = readDate(r.habit, cell); err != nil {
		return reading, "", err
	}
	if len(r.days) >= mostDays {
		clear(r.days)
	}
	have := dayRead{reading, reading.Date.String()}
	r.days[cell] = have
	return have.reading, have.iso, nil
}

// clock keeps the time of day that stands behind a date.
func (r *reader) clock(d *draft, s slot, cell string) {
	i := r.codec.Index("time")
	if s.f.Key != "date" || i < 0 || r.skip["time"] {
		return
	}
	if m := clockIn.FindString(cell); m != "" {
		if _, err := r.codec.SetText(d.body, i, m, ""); err == nil {
			d.given[i] = true
		}
	}
}
