package days

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"oakum/demo"
	"oakum/dossier"
	"oakum/quantity"
)

// Last is how many days there are.
const Last = 12

// first is the day on which she takes the blocks.
var first = time.Date(2027, 4, 8, 0, 0, 0, 0, time.UTC)

// Date is the date of a day in dock, the first being 1.
func Date(day int) time.Time { return first.AddDate(0, 0, day-1) }

// desk stands in the place of a phone's name for what is entered at the desk.
const desk = ""

// step is what one person enters at one moment.
type step struct {
	at      time.Time
	by      string
	phone   string
	records []dossier.Record
}

// stage is one state of one record on its way.
type stage struct {
	at   time.Time
	by   string
	what string // phone, or desk
	body any
}

// script lays out the twelve days and what was signed before them, earliest first.
func script() ([]step, error) {
	before, err := demo.Ship("corran-vey")
	if err != nil {
		return nil, err
	}
	after, err := demo.Ship("corran-vey-in-dock")
	if err != nil {
		return nil, err
	}
	var steps []step
	for r := range after.Records("") {
		was, _ := before.Get(r.ID)
		list, err := stages(r, was.Body)
		if err != nil {
			return nil, err
		}
		for _, s := range list {
			one := r
			one.Body, one.Version = s.body, 0
			steps = append(steps, step{s.at, s.by, s.what, []dossier.Record{one}})
		}
	}
	slices.SortStableFunc(steps, func(a, b step) int {
		return cmp.Or(a.at.Compare(b.at), cmp.Compare(a.phone, b.phone), cmp.Compare(a.by, b.by))
	})
	return joined(steps), nil
}

// joined puts what one hand enters at one moment into one step.
func joined(steps []step) (out []step) {
	for _, s := range steps {
		if n := len(out) - 1; n >= 0 && out[n].at.Equal(s.at) && out[n].by == s.by && out[n].phone == s.phone {
			out[n].records = append(out[n].records, s.records...)
			continue
		}
		out = append(out, s)
	}
	return out
}

// on is an hour of a date; a record without one is a slip in the demonstration's records.
func on(d quantity.Date, hour string) (time.Time, error) {
	t, err := time.Parse("2006-01-02 15:04", d.String()+" "+hour)
	if err != nil {
		return t, fmt.Errorf("%q is no day on which somebody entered something", d.String())
	}
	return t, nil
}
