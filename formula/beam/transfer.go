package beam

import "math"

// element is a piece of beam between two neighbouring nodes.
type element struct {
	h    float64 // m
	flex float64 // 1/EI, 1/(N.m2); zero is rigid
	bed  float64 // N/m2
	a, b float64 // N/m downward at its left and right end, linear between
}

// vector is the beam at a point: deflection, slope, moment, shear.
type vector [4]float64

// series is the sum over n of (-k x^4/EI)^n/(4n+m)! for m = 0 to 5: Hetenyi's functions of a beam on a bed, and without a bed 1/m!.
func (e element) series(x float64) (s [6]float64) {
	q := -e.bed * e.flex * x * x * x * x
	first := 1.0
	for m := range s {
		if m > 0 {
			first /= float64(m)
		}
		term := first
		for n := m; term != 0 && math.Abs(term) > 1e-18*math.Abs(s[m]); n += 4 {
			s[m] += term
			term *= q / float64((n+1)*(n+2)*(n+3)*(n+4))
		}
	}
	return s
}

// transfer carries the beam over a distance x from the left end: out = t in + p, by EI y"" + k y = w with w = a + (b - a) x/h, and y' = slope,
// EI y" = -moment, moment' = shear.
func (e element) transfer(x float64) (t [4]vector, p vector) {
	s := e.series(x)
	f, k := e.flex, e.bed
	x1, x2, x3, x4, x5 := x*s[1], x*x*s[2], x*x*x*s[3], x*x*x*x*s[4], x*x*x*x*x*s[5]
	ramp := (e.b - e.a) / e.h
	t = [4]vector{
		{s[0], x1, -f * x2, -f * x3},
		{-k * f * x3, s[0], -f * x1, -f * x2},
		{k * x2, k * x3, s[0], x1},
		{k * x1, k * x2, -k * f * x3, s[0]},
	}
	p = vector{f * (e.a*x4 + ramp*x5), f * (e.a*x3 + ramp*x4), -(e.a*x2 + ramp*x3), -(e.a*x1 + ramp*x2)}
	return t, p
}

// carry applies transfer.
func (e element) carry(in vector, x float64) vector {
	var a across
	a.t, a.p = e.transfer(x)
	return a.carry(in)
}

func (a *across) carry(in vector) vector {
	out := a.p
	for i := range out {
		for j := range in {
			out[i] += a.t[i][j] * in[j]
		}
	}
	return out
}

// pieces is into how many elements a span is cut: each no longer than the characteristic length (4 EI/k)^(1/4) of its bed, so that neither
// the series nor the system grows out of its digits.
func (s Span) pieces() int {
	if s.Bed == 0 || math.IsInf(s.EI, 1) {
		return 1
	}
	return max(1, int(math.Ceil((s.X1-s.X0)*math.Sqrt(math.Sqrt(s.Bed/(4*s.EI))))))
}
