package plating

import "math"

// margin is how much a plate has over its limit and how fast that goes, both uncertain: margin m (m) with standard deviation s, rate r (m/y)
// with standard deviation sr, and the covariance c between thickness and rate (a thinner reading means a faster loss too, so it is negative).
type margin struct{ m, s, r, sr, c float64 }

// z90 is the standard normal quantile of 0.9.
const z90 = 1.2815515655446004

// belowNow is the chance that the plate is below the limit already.
func (g margin) belowNow() float64 { return g.belowAfter(0) }

// belowAfter is the chance that the plate is below the limit x years ahead: m - r x is normal.
func (g margin) belowAfter(x float64) float64 {
	mean, sd := g.m-g.r*x, math.Sqrt(max(g.s*g.s-2*x*g.c+x*x*g.sr*g.sr, 0))
	if sd == 0 {
		if mean < 0 {
			return 1
		}
		return 0
	}
	return math.Erfc(mean/sd/math.Sqrt2) / 2
}

// life returns the years until the chance of being below the limit is 10 % and 90 %: the two roots of (m - r x)^2 = z^2 var(m - r x)
// (Fieller's interval). A side that the readings leave open is absent.
func (g margin) life() (p10, p90 *float64) {
	z2 := z90 * z90
	a := g.r*g.r - z2*g.sr*g.sr
	b := g.m*g.r - z2*g.c
	c := g.m*g.m - z2*g.s*g.s
	if g.m < 0 && c >= 0 {
		return new(0.0), new(0.0)
	}
	if a == 0 {
		if b > 0 {
			p10 = new(max(c, 0) / (2 * b))
		}
		return p10, nil
	}
	d := b*b - a*c
	if d < 0 {
		return nil, nil
	}
	lo, hi := (b-math.Sqrt(d))/a, (b+math.Sqrt(d))/a
	if a < 0 {
		hi = lo
		if c <= 0 {
			return new(0.0), nil
		}
		return positive(hi), nil
	}
	p10 = new(0.0)
	if c > 0 {
		p10 = positive(lo)
	}
	if g.r > 0 {
		p90 = positive(hi)
	}
	return p10, p90
}

func positive(x float64) *float64 {
	if x < 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}
