package estimate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"

	"oakum/calc"
)

// Sum is the law of a sum of uncertain amounts, from draws. Of each draw all amounts but the widest are kept, and the law of the widest, given
// the others, stands for itself: the share below a value is an average of smooth functions, which few points settle to many digits.
type Sum struct {
	Mean, SD float64 // of the draws

	sorted []float64 // sums drawn
	rest   []float64 // the same without the widest amount
	centre []float64 // where the others leave the normal variable of the widest, in its own deviations
	scale  float64   // one over its own deviation
	below  func(float64) float64
}

// NewSum draws the sum of the amounts.
func NewSum(j *Joint) *Sum {
	lines := len(j.at)
	n := pointsFor(lines)
	s := &Sum{sorted: make([]float64, n), rest: make([]float64, n), centre: make([]float64, n), below: j.below}
	u, x := make([]float64, j.Dimensions()), make([]float64, lines)
	for p := range n {
		Point(uint32(p), 1, u)
		centre, own := j.Draw(u, x)
		for _, a := range x {
			s.sorted[p] += a
		}
		s.rest[p] = s.sorted[p] - x[j.wide]
		s.scale = 1 / max(own, 1e-9)
		s.centre[p] = centre * s.scale
		s.Mean += s.sorted[p] / float64(n)
	}
	for _, x := range s.sorted {
		s.SD += (x - s.Mean) * (x - s.Mean) / float64(n)
	}
	s.SD = math.Sqrt(s.SD)
	slices.Sort(s.sorted)
	return s
}

// Points is how many draws there are.
func (s *Sum) Points() int { return len(s.sorted) }

// Below is the chance that the sum is x or less.
func (s *Sum) Below(x float64) float64 {
	x += 1e-12 * math.Abs(x) // a sum of certain amounts is itself, whatever its last bits
	total := 0.0
	for p, rest := range s.rest {
		share := s.below(x - rest)
		switch {
		case share <= 0:
		case share >= 1:
			total++
		case s.scale == 1:
			total += share
		default:
			total += normalShare(mathext.NormalQuantile(share)*s.scale - s.centre[p])
		}
	}
	return total / float64(len(s.rest))
}

// At is the amount that the sum does not pass with the chance p: by false position between draws that surely stand on either side, or where the
// law has a step, the step.
func (s *Sum) At(p float64) float64 {
	const slack = 0.004
	low, high := calc.Quantile(s.sorted, max(p-slack, 0)), calc.Quantile(s.sorted, min(p+slack, 1))
	width := 1e-9 * max(math.Abs(low), math.Abs(high))
	fl, fh := s.Below(low)-p, s.Below(high)-p
	if fl >= 0 {
		return low
	}
	if fh <= 0 {
		return high
	}
	for range 60 {
		if high-low <= width {
			break
		}
		mid := low - fl*(high-low)/(fh-fl)
		if !(mid > low && mid < high) {
			mid = (low + high) / 2
		}
		switch f := s.Below(mid) - p; {
		case math.Abs(f) < 1e-9:
			return mid
		case f < 0:
			low, fl, fh = mid, f, fh/2
		default:
			high, fh, fl = mid, f, fl/2
		}
	}
	return high
}

// pointsFor is how many points are drawn for so many lines: a power of two, many where that costs little.
func pointsFor(lines int) int {
	n := 1 << 13
	for n > 1<<11 && n*lines > 500_000 {
		n /= 2
	}
	return n
}
