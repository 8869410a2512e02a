package choice

import (
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
)

// points turns scores into 0 (worst) to 100 (best).
func (in WeighIn) points(warn *calc.Warnings) [][]float64 {
	list := make([][]float64, len(in.Courses))
	for i, c := range in.Courses {
		list[i] = make([]float64, len(c.Scores))
		for k, s := range c.Scores {
			cr := in.Criteria[k]
			list[i][k] = 100 * (s - cr.Worst) / (cr.Best - cr.Worst)
			if list[i][k] < -1e-9 || list[i][k] > 100+1e-9 {
				*warn = append(*warn, fmt.Sprintf("%s scores %g on %s, outside %g to %g: move the ends, and ask for the swing again", c.Name, s, cr.Name, cr.Worst, cr.Best))
			}
		}
	}
	return list
}

// weights come from swings or weights, ranks, or else the mean of the voices.
func (in WeighIn) weights() ([]float64, error) {
	swings, ranks := 0, 0
	list := make([]float64, len(in.Criteria))
	for i, c := range in.Criteria {
		if c.Swing != nil && c.Weight != nil {
			return nil, field.Refuse(fmt.Sprintf("criteria[%d].weight", i), "%s has a swing and a weight: give one of them", c.Name)
		}
		switch {
		case c.Swing != nil:
			list[i] = *c.Swing
			swings++
		case c.Weight != nil:
			list[i] = *c.Weight
			swings++
		case c.Rank != nil:
			ranks++
		}
	}
	switch n := len(list); {
	case swings == n:
		if slices.Max(list) <= 0 {
			return nil, field.Refuse("criteria", "no criterion has any swing")
		}
		return normalised(list), nil
	case swings > 0 && len(in.Voices) == 0:
		i := slices.IndexFunc(in.Criteria, func(c Criterion) bool { return c.Swing == nil && c.Weight == nil })
		return nil, field.Refuse(fmt.Sprintf("criteria[%d].swing", i), "%s has no swing: give every criterion one, or none", in.Criteria[i].Name)
	case ranks == n:
		return in.centroid()
	case len(in.Voices) > 0:
		for _, v := range in.Voices {
			for k, w := range normalised(v.Swings) {
				list[k] += w / float64(len(in.Voices))
			}
		}
		if swings > 0 {
			return nil, field.Refuse("criteria", "some criteria have a swing and some have none: give all of them one, or leave it to the voices")
		}
		return list, nil
	}
	return nil, field.Refuse("criteria[0].swing", "the criteria have no swings: give each a swing (100 for the greatest), a rank, or voices")
}

// centroid is the rank order centroid.
func (in WeighIn) centroid() ([]float64, error) {
	n := len(in.Criteria)
	list, seen := make([]float64, n), map[int]bool{}
	for i, c := range in.Criteria {
		if *c.Rank > n || seen[*c.Rank] {
			return nil, field.Refuse(fmt.Sprintf("criteria[%d].rank", i), "%s: rank %d stands twice or lies beyond %d; give each of 1 to %d once", c.Name, *c.Rank, n, n)
		}
		seen[*c.Rank] = true
		for k := *c.Rank; k <= n; k++ {
			list[i] += 1 / float64(k) / float64(n)
		}
	}
	return list, nil
}

func normalised(list []float64) []float64 {
	sum := 0.0
	for _, x := range list {
		sum += x
	}
	out := make([]float64, len(list))
	for i, x := range list {
		out[i] = x / sum
	}
	return out
}
