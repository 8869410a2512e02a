package hullform

import (
	"math"
	"sort"
)

// curve is a fair line through points: cubic between them, with a slope arriving at and one leaving each. The two differ at a knuckle.
type curve struct {
	x, y         []float64
	arrive, exit []float64
}

// fair draws a line through points at rising x. It is a cubic spline between knuckles, held back where it would overshoot the points (H. T. Huynh,
// Accurate monotone cubic interpolation, SIAM J. Numer. Anal. 30 (1993) 57-100, constraint M3), so that flat stays flat and straight straight.
func fair(x, y []float64) curve {
	n := len(x)
	c := curve{x, y, make([]float64, n), make([]float64, n)}
	from := 0
	for i := 1; i < n; i++ {
		if i < n-1 && !knuckle(x, y, i) {
			continue
		}
		d := held(x[from:i+1], y[from:i+1], splineSlopes(x[from:i+1], y[from:i+1]))
		copy(c.exit[from:i], d[:i-from])
		copy(c.arrive[from+1:i+1], d[1:])
		from = i
	}
	return c
}

// at is the height of the line at x; beyond the ends, that of the end.
func (c *curve) at(x float64) float64 {
	n := len(c.x)
	if x <= c.x[0] {
		return c.y[0]
	}
	if x >= c.x[n-1] {
		return c.y[n-1]
	}
	i := sort.SearchFloat64s(c.x, x)
	if c.x[i] == x {
		return c.y[i]
	}
	i--
	h := c.x[i+1] - c.x[i]
	t := (x - c.x[i]) / h
	rise := c.y[i+1] - c.y[i]
	a, b := c.exit[i]*h-rise, rise-c.arrive[i+1]*h
	return c.y[i] + t*rise + t*(1-t)*(a*(1-t)+b*t)
}

// secants are the slopes from point to point.
func secants(x, y []float64) []float64 {
	s := make([]float64, len(x)-1)
	for i := range s {
		s[i] = (y[i+1] - y[i]) / (x[i+1] - x[i])
	}
	return s
}

// knuckle tells whether the line breaks at point i: the slopes carried on from either side, each by a parabola, then differ about as much as the
// chords do. On a smooth line they nearly agree. The limits are our own choice, tried on round and hard bilges.
func knuckle(x, y []float64, i int) bool {
	n := len(x)
	lo, hi := max(0, i-2), min(n-1, i+2)
	s := secants(x[lo:hi+1], y[lo:hi+1])
	k := i - lo
	left, right := s[k-1], s[k]
	jump := right - left
	if math.Abs(jump)*(x[hi]-x[lo]) < 1e-9*(1e-300+math.Abs(y[lo])+math.Abs(y[hi])+math.Abs(y[i])) {
		return false
	}
	if n == 3 {
		return left*right <= 0 && left+right != 0 && math.Min(math.Abs(left), math.Abs(right)) < 0.05*math.Max(math.Abs(left), math.Abs(right)) ||
			left*right > 0 && math.Min(left/right, right/left) < 0.3
	}
	limit := 0.8
	if i-2 < 0 {
		limit = 0.95
	} else if left != 0 { // flat stays flat
		left += (s[k-1] - s[k-2]) / (x[i] - x[i-2]) * (x[i] - x[i-1])
	}
	if i+2 >= n {
		limit = 0.95
	} else if right != 0 {
		right -= (s[k+1] - s[k]) / (x[i+2] - x[i]) * (x[i+1] - x[i])
	}
	return (right-left)/jump > limit
}

// splineSlopes are those of the cubic spline with no knot next to the ends; a parabola through three points, a straight line through two.
func splineSlopes(x, y []float64) []float64 {
	n, s := len(x), secants(x, y)
	d := make([]float64, n)
	switch n {
	case 2:
		d[0], d[1] = s[0], s[0]
		return d
	case 3:
		bend := (s[1] - s[0]) / (x[2] - x[0])
		d[0] = s[0] - bend*(x[1]-x[0])
		d[1] = s[0] + bend*(x[1]-x[0])
		d[2] = s[1] + bend*(x[2]-x[1])
		return d
	}
	h := func(i int) float64 { return x[i+1] - x[i] }
	low, mid, up := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := 1; i < n-1; i++ {
		low[i], mid[i], up[i] = h(i), 2*(h(i-1)+h(i)), h(i-1)
		d[i] = 3 * (h(i)*s[i-1] + h(i-1)*s[i])
	}
	a, b := h(0), h(1)
	mid[0], up[0], d[0] = b, a+b, ((a+2*(a+b))*b*s[0]+a*a*s[1])/(a+b)
	a, b = h(n-2), h(n-3)
	mid[n-1], low[n-1], d[n-1] = b, a+b, ((a+2*(a+b))*b*s[n-2]+a*a*s[n-3])/(a+b)
	solveThree(low, mid, up, d)
	return d
}

// solveThree solves a three-diagonal system in place; the answer is left in d.
func solveThree(low, mid, up, d []float64) {
	for i := 1; i < len(d); i++ {
		w := low[i] / mid[i-1]
		mid[i] -= w * up[i-1]
		d[i] -= w * d[i-1]
	}
	last := len(d) - 1
	d[last] /= mid[last]
	for i := last - 1; i >= 0; i-- {
		d[i] = (d[i] - up[i]*d[i+1]) / mid[i]
	}
}

// held keeps slopes within what rising or falling data allow and leaves smooth data, crests included, as they are (Huynh's constraint M3). Two equal
// values next to each other are taken for parallel body: straight.
func held(x, y, d []float64) []float64 {
	n, s := len(x), secants(x, y)
	if n == 2 {
		return d
	}
	bend := make([]float64, n) // second divided difference at each inner point
	for i := 1; i < n-1; i++ {
		bend[i] = (s[i] - s[i-1]) / (x[i+1] - x[i-1])
	}
	bend[0], bend[n-1] = bend[1], bend[n-2]
	for i := 1; i < n-1; i++ {
		left := s[i-1] + lesser(bend[i-1], bend[i])*(x[i]-x[i-1])
		right := s[i] - lesser(bend[i], bend[i+1])*(x[i+1]-x[i])
		t := lesser(left, right)
		limit := math.Max(3*math.Abs(lesser(s[i-1], s[i])), 1.5*math.Abs(t))
		d[i] = lesser(d[i], math.Copysign(limit, t))
	}
	d[0] = lesser(d[0], 3*s[0])
	d[n-1] = lesser(d[n-1], 3*s[n-2])
	for i := range s {
		if crest := i > 0 && i+2 < n && s[i-1]*s[i+1] < 0 && s[i] != 0; !crest {
			d[i], d[i+1] = lesser(d[i], 3*s[i]), lesser(d[i+1], 3*s[i])
		}
	}
	return d
}

// lesser is the one nearer to zero of two values of one sign, else zero.
func lesser(a, b float64) float64 {
	switch {
	case a > 0 && b > 0:
		return math.Min(a, b)
	case a < 0 && b < 0:
		return math.Max(a, b)
	}
	return 0
}
