package futures

import (
	"context"
	"math"
	"sort"
)

// Driver is how much one group of unknowns drives a measure: the share of its variance that knowing the group would take away on average (First), and
// the share that stays while only the group is unknown (Total).
type Driver struct {
	Name         string
	First, Total float64
	FirstSE      float64
	TotalSE      float64
}

// Unknowns names the groups of variables of a model, in the order they are drawn.
func Unknowns(m *Model) []string { return variablesOf(m).names }

// Drivers works out, for every group of variables, its first-order and total shares of the variance of a measure over n futures.
//
// Estimators: with A the futures, B those with every draw of the group taken from other futures: First = 1 - E[(B - A_i)^2]/2V is the complement form;
// here only one group is redrawn at a time, so Total_i = E[(A - A_i)^2] / 2V (Jansen, Computer Physics Communications 117, 1999, eq. 8), and First_i
// comes from redrawing everything else, First_i = 1 - E[(A - A_~i)^2] / 2V (same paper).
func Drivers(ctx context.Context, m *Model, p *Plan, o Options, of func(*Outcome) float64) ([]Driver, error) {
	tell := o.Progress
	step := func(done, of int) {
		if tell != nil {
			tell(done, of)
		}
	}
	o.Progress = nil // it is told of whole runs, two a group and one before
	base, err := Run(ctx, m, p, o)
	if err != nil {
		return nil, err
	}
	_, v := meanVariance(base, of)
	if v == 0 {
		return nil, nil
	}
	vars := variablesOf(m)
	var list []Driver
	runs := 2*len(vars.names) + 1
	step(1, runs)
	other := make([]Outcome, len(base))
	for g, name := range vars.names {
		if _, err := fill(ctx, m, p, Options{Seed: o.Seed, Cores: o.Cores}, group(g), other); err != nil {
			return nil, err
		}
		total, totalSE := jansen(base, other, of, v)
		step(2*g+2, runs)
		if _, err := fill(ctx, m, p, Options{Seed: o.Seed, Cores: o.Cores}, group(g)|others, other); err != nil {
			return nil, err
		}
		rest, se := jansen(base, other, of, v)
		step(2*g+3, runs)
		list = append(list, Driver{Name: name, First: max(1-rest, 0), Total: total, FirstSE: se, TotalSE: totalSE})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Total > list[j].Total })
	return list, nil
}

func jansen(a, b []Outcome, of func(*Outcome) float64, variance float64) (share, se float64) {
	n, mean, m2 := 0.0, 0.0, 0.0
	for i := range a {
		d := of(&a[i]) - of(&b[i])
		x := d * d / (2 * variance)
		n++
		e := x - mean
		mean += e / n
		m2 += e * (x - mean)
	}
	return mean, math.Sqrt(m2 / (n - 1) / n)
}

func meanVariance(out []Outcome, of func(*Outcome) float64) (mean, variance float64) {
	n, m2 := 0.0, 0.0
	for i := range out {
		x := of(&out[i])
		n++
		d := x - mean
		mean += d / n
		m2 += d * (x - mean)
	}
	return mean, m2 / n
}
