package choice

import (
	"math"
	"slices"
)

// dominated lists the courses that another equals or beats on every criterion and beats on one.
func dominated(courses []Contender, points [][]float64) []string {
	list := []string{}
	for i := range courses {
		for k := range courses {
			better, worse := false, false
			for c := range points[i] {
				better = better || points[k][c] > points[i][c]
				worse = worse || points[k][c] < points[i][c]
			}
			if better && !worse {
				list = append(list, courses[i].Name)
				break
			}
		}
	}
	return list
}

// closeCalls finds pairs that differ by less than the limit, or of which each is ahead for some voice while both are near the top.
func (in WeighIn) closeCalls(sorted []Standing) []ClosePair {
	list := []ClosePair{}
	for i, a := range sorted {
		for _, b := range sorted[i+1:] {
			d := a.Value - b.Value
			split := false
			for v := range a.Voices {
				split = split || a.Voices[v] < b.Voices[v]-1e-9
			}
			switch {
			case d < in.Close-1e-9 && split:
				list = append(list, ClosePair{a.Course, b.Course, d, "less apart than the limit, and the voices differ"})
			case d < in.Close-1e-9:
				list = append(list, ClosePair{a.Course, b.Course, d, "less apart than the limit"})
			case split && i == 0:
				list = append(list, ClosePair{a.Course, b.Course, d, "the voices differ"})
			}
		}
	}
	return list
}

// switches finds, for each criterion, the nearest swing above and below at which the leader is no longer first, all other swings kept.
func (in WeighIn) switches(points [][]float64, weights []float64, leader int) []Switch {
	list := []Switch{}
	scale := 1.0
	for k, c := range in.Criteria {
		if c.Swing != nil && weights[k] > 0 {
			scale = *c.Swing / weights[k]
			break
		}
		scale = 100 / slices.Max(weights)
	}
	for k, c := range in.Criteria {
		above, below := math.Inf(1), math.Inf(-1)
		toAbove, toBelow := -1, -1
		for i := range points {
			rest := 0.0
			for m, w := range weights {
				if m != k {
					rest += w * (points[leader][m] - points[i][m])
				}
			}
			d := points[leader][k] - points[i][k]
			if i == leader || d == 0 {
				continue
			}
			at := -rest / d // the weight at which they tie, the others as they are
			if at >= weights[k]-1e-12 && d < 0 && at < above {
				above, toAbove = at, i
			}
			if at <= weights[k]+1e-12 && at >= 0 && d > 0 && at > below {
				below, toBelow = at, i
			}
		}
		others := 1 - weights[k]
		for _, s := range []struct {
			at float64
			to int
		}{{below, toBelow}, {above, toAbove}} {
			if s.to >= 0 {
				list = append(list, Switch{c.Name, weights[k] * scale, s.at * scale, s.at / (s.at + others), in.Courses[s.to].Name})
			}
		}
	}
	return list
}
