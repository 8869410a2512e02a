package futures

import (
	"cmp"
	"slices"
)

// Event is one thing that happens in a future: the year from now, what in words, and the part it happens to (-1: the ship).
type Event struct {
	Year  float64 `json:"year"`
	Words string  `json:"words"`
	Part  int     `json:"part"`
}

// Story runs one future of a plan and tells what happens in it, in order. A person understands a story before a curve.
func Story(m *Model, p *Plan, seed uint64, future int) ([]Event, Outcome, error) {
	if err := m.Valid(); err != nil {
		return nil, Outcome{}, err
	}
	v := variablesOf(m)
	r := newRunner(m, p, &v, newTerms(m, p, &v, true))
	r.s = newStream(seed, future)
	events := []Event{}
	r.tell = func(year float64, words string, part int) { events = append(events, Event{year, words, part}) }
	o := r.run()
	slices.SortStableFunc(events, func(a, b Event) int { return cmp.Compare(a.Year, b.Year) }) // the parts of a year are taken one after another
	return events, o, nil
}
