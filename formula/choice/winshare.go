package choice

import (
	"math"

	"oakum/formula/estimate"
)

// weightings is how many weightings are drawn for the shares.
const weightings = 1 << 14

// winShares counts how often each course comes first: over all weightings, drawn evenly over the simplex, and over those between the voices, drawn as
// mixtures of them. A tie is split.
func (in WeighIn) winShares(points, voices [][]float64) []WinShare {
	out := make([]WinShare, len(points))
	n := len(in.Criteria)
	all, between := make([]float64, len(points)), make([]float64, len(points))
	for d := range weightings {
		firsts(points, simplex(d, n), all, 1.0/weightings)
		if len(voices) > 0 {
			mix := make([]float64, n)
			for v, share := range simplex(d, len(voices)) {
				for k, w := range voices[v] {
					mix[k] += share * w
				}
			}
			firsts(points, mix, between, 1.0/weightings)
		}
	}
	heard := make([]float64, len(points))
	for _, v := range voices {
		firsts(points, v, heard, 1)
	}
	for i, c := range in.Courses {
		out[i] = WinShare{Course: c.Name, All: all[i]}
		if len(voices) > 0 {
			out[i].Voices, out[i].Heard = new(between[i]), new(int(heard[i]))
		}
	}
	return out
}

// firsts adds the share to the courses that are first under the weights.
func firsts(points [][]float64, weights, sum []float64, share float64) {
	best := math.Inf(-1)
	var who []int
	for i, p := range points {
		switch v := expect(p, weights); {
		case v > best+1e-9:
			best, who = v, append(who[:0], i)
		case v > best-1e-9:
			who = append(who, i)
		}
	}
	for _, i := range who {
		sum[i] += share / float64(len(who))
	}
}

// simplex is draw number d of n shares that add up to one, even over all such: logarithms of evenly spread numbers, made to add up.
func simplex(d, n int) []float64 {
	w := make([]float64, n)
	estimate.Point(uint32(d), 5, w)
	sum := 0.0
	for k, u := range w {
		w[k] = -math.Log(u)
		sum += w[k]
	}
	for k := range w {
		w[k] /= sum
	}
	return w
}
