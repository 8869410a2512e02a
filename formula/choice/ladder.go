package choice

import (
	"errors"
	"math"
	"slices"

	"oakum/field"
)

// ladder finds the best choice for sums that grow in even steps from nothing, or from the pots as they are, until everything worth having is bought.
// Rungs that change nothing are left out.
func (m *scopeModel) ladder(rungs int, e Effort) ([]Rung, error) {
	list := []Rung{}
	if rungs == 0 || m.listed() {
		return list, nil
	}
	all, base := 0.0, 0.0
	for _, w := range m.works {
		if w.Value > 0 || w.Must || len(w.Needs) > 0 {
			all += w.total()
		}
	}
	grown := *m
	if single := len(m.pots) == 1 && len(m.pots[0].Only) == 0; single {
		grown.pots = []Pot{{Name: m.pots[0].Name}}
	} else {
		for _, p := range m.pots {
			base += p.Amount
		}
	}
	step := round(max(all-base, all/4) / float64(rungs))
	for r := range rungs + 1 {
		extra := float64(r) * step
		k, err := grown.best(extra, e)
		if errors.Is(err, ErrInfeasible) {
			continue // not yet enough for what must be done
		}
		if err != nil {
			return nil, field.Refuse("rungs", "%v", err)
		}
		next := Rung{Budget: base + extra, Value: k.value, Cost: k.cost, Chosen: k.names(m.works, true), Proved: k.proved, Dropped: []string{}}
		if len(list) > 0 {
			last := list[len(list)-1]
			if slices.Equal(last.Chosen, next.Chosen) {
				continue
			}
			next.Dropped = without(last.Chosen, next.Chosen)
			next.Added = without(next.Chosen, last.Chosen)
		} else {
			next.Added = next.Chosen
		}
		list = append(list, next)
	}
	return list, nil
}

// round takes a step up to 1, 2, 2.5 or 5 times a power of ten.
func round(step float64) float64 {
	if step <= 0 {
		return 1
	}
	p := math.Pow(10, math.Floor(math.Log10(step)))
	for _, f := range []float64{1, 2, 2.5, 5, 10} {
		if f*p >= step*(1-1e-9) {
			return f * p
		}
	}
	return 10 * p
}

func without(list, gone []string) []string {
	out := []string{}
	for _, x := range list {
		if !slices.Contains(gone, x) {
			out = append(out, x)
		}
	}
	return out
}
