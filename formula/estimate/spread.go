package estimate

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Kind is the shape of an uncertain amount between its low and high ends.
type Kind string

// The shapes.
const (
	Triangular Kind = "triangular"
	PERT       Kind = "pert" // beta law with shapes 1+4(likely-low)/(high-low) and 1+4(high-likely)/(high-low)
	Fixed      Kind = "fixed"
)

// Spread is an uncertain amount: Low and High are the ends, which are never passed, Likely is the top.
type Spread struct {
	Low, Likely, High float64
	Kind              Kind
}

// Mean is the mean.
func (s Spread) Mean() float64 {
	switch s.Kind {
	case Fixed:
		return s.Likely
	case PERT:
		return (s.Low + 4*s.Likely + s.High) / 6
	}
	return (s.Low + s.Likely + s.High) / 3
}

// Variance is the exact variance of the law. For PERT it is (mean-low)(high-mean)/7 and not the classic ((high-low)/6)^2, which is right only
// near the middle.
func (s Spread) Variance() float64 {
	a, m, b := s.Low, s.Likely, s.High
	switch s.Kind {
	case Fixed:
		return 0
	case PERT:
		return (s.Mean() - a) * (b - s.Mean()) / 7
	}
	return max((a*a+m*m+b*b-a*m-a*b-m*b)/18, 0)
}

// Below is the share of the law at or below x.
func (s Spread) Below(x float64) float64 {
	a, m, b := s.Low, s.Likely, s.High
	switch {
	case s.Kind == Fixed || a == b:
		if x >= m {
			return 1
		}
		return 0
	case x <= a:
		return 0
	case x >= b:
		return 1
	case s.Kind == PERT:
		p, q := s.shapes()
		return mathext.RegIncBeta(p, q, (x-a)/(b-a))
	case x < m:
		return (x - a) * (x - a) / ((b - a) * (m - a))
	}
	return 1 - (b-x)*(b-x)/((b-a)*(b-m))
}

// At is the amount below which the share u lies.
func (s Spread) At(u float64) float64 {
	a, m, b := s.Low, s.Likely, s.High
	switch {
	case s.Kind == Fixed || a == b:
		return m
	case s.Kind == PERT:
		p, q := s.shapes()
		return a + (b-a)*mathext.InvRegIncBeta(p, q, u)
	case u*(b-a) < m-a:
		return a + math.Sqrt(u*(b-a)*(m-a))
	}
	return b - math.Sqrt((1-u)*(b-a)*(b-m))
}

func (s Spread) shapes() (p, q float64) {
	w := s.High - s.Low
	return 1 + 4*(s.Likely-s.Low)/w, 1 + 4*(s.High-s.Likely)/w
}

// Times is the spread with every amount multiplied by f, which is not negative.
func (s Spread) Times(f float64) Spread {
	return Spread{s.Low * f, s.Likely * f, s.High * f, s.Kind}
}

// quick is a function that gives At fast: the closed form, or a table of the beta law over the normal variable of the same share, where the law
// is smooth to its ends, with straight lines between. The table is kept for the middle; the tails, where one share in a thousand lies, are
// worked as they are asked for.
func (s Spread) quick() func(u float64) float64 {
	if s.Kind != PERT || s.Low == s.High {
		return s.At
	}
	const n, reach, tail = 512, 6.5, 512 / 4
	knot := func(i int) float64 { return s.At(normalShare(reach * (2*float64(i)/n - 1))) }
	var middle [n - 2*tail + 1]float64
	for i := range middle {
		middle[i] = knot(i + tail)
	}
	return func(u float64) float64 {
		x := (mathext.NormalQuantile(u)/reach + 1) * n / 2
		i := min(max(int(x), 0), n-1)
		share := min(max(x-float64(i), 0), 1)
		if k := i - tail; k >= 0 && k+1 < len(middle) {
			return middle[k] + share*(middle[k+1]-middle[k])
		}
		low := knot(i)
		return low + share*(knot(i+1)-low)
	}
}

// quickBelow is a function that gives Below fast, in the same way.
func (s Spread) quickBelow() func(x float64) float64 {
	switch {
	case s.Kind == Fixed || s.Low == s.High:
		return s.Below
	case s.Kind != PERT:
		return s.triangleBelow()
	}
	const n = 512
	var table [n + 1]float64
	for i := range table {
		table[i] = s.Below(s.Low + (s.High-s.Low)*float64(i)/n)
	}
	return func(x float64) float64 {
		p := (x - s.Low) / (s.High - s.Low) * n
		i := min(max(int(p), 0), n-1)
		return table[i] + min(max(p-float64(i), 0), 1)*(table[i+1]-table[i])
	}
}

// triangleBelow is Below of a triangle, with what does not change worked once.
func (s Spread) triangleBelow() func(x float64) float64 {
	a, m, b := s.Low, s.Likely, s.High
	up, down := (b-a)*(m-a), (b-a)*(b-m)
	return func(x float64) float64 {
		switch {
		case x <= a:
			return 0
		case x >= b:
			return 1
		case x < m:
			return (x - a) * (x - a) / up
		}
		return 1 - (b-x)*(b-x)/down
	}
}

func normalShare(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
