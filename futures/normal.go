package futures

import "math"

// cubic is a cubic in the distance from the foot of its cell.
type cubic [4]float64

func (c *cubic) at(d float64) float64 { return c[0] + d*(c[1]+d*(c[2]+d*c[3])) }

// between is the cubic over a cell of width h that meets a curve and its slope at both ends: off by at most h^4/384 of its fourth derivative.
func between(h, y0, y1, slope0, slope1 float64) cubic {
	chord := (y1 - y0) / h
	return cubic{y0, slope0, (3*chord - 2*slope0 - slope1) / h, (slope0 + slope1 - 2*chord) / (h * h)}
}

// A curve of a draw that runs away at both ends is read off two tables, of the lower half of the words and of the upper, mirrored. Their cells narrow by
// halves towards the ends: 32 to each binary order, so that the leading bits of a word made a float number its cell.
type curve [63<<curveBits + 1]cubic

const (
	curveBits  = 5
	curveShift = 52 - curveBits
	curveFoot  = 1023 << curveBits
)

// curveOf takes a curve and its slope, over shares of half the words counted from an end.
func curveOf(f, slope func(share float64) float64) *curve {
	foot := func(i int) float64 { return math.Ldexp(1+float64(i%(1<<curveBits))/(1<<curveBits), i>>curveBits-64) }
	c := &curve{}
	for i := range c {
		u, next := foot(i), min(foot(i+1), 0.5)
		scale := math.Ldexp(1, i>>curveBits-64) // a cell is measured in its own binary order
		c[i] = cubic{f(u)}
		if u < next {
			c[i] = between((next-u)/scale, f(u), f(next), scale*slope(u), scale*slope(next))
		}
	}
	return c
}

// at reads the curve at a word that is less than half of all.
func (c *curve) at(w uint64) float64 {
	b := math.Float64bits(float64(int64(w | 1)))
	return c[b>>curveShift-curveFoot].at(math.Float64frombits(1023<<52|b&(1<<curveShift-1)) - 1)
}

var scores = curveOf(quantile, func(u float64) float64 { return 1 / density(quantile(u)) })

// normal is the standard normal score of a word, within 2e-8.
func normal(w uint64) float64 {
	upper := uint64(int64(w) >> 63) // all ones in the upper half, which mirrors the lower
	return math.Float64frombits(math.Float64bits(scores.at(w^upper)) ^ upper&(1<<63))
}

var (
	longLives  = curveOf(func(u float64) float64 { return math.Log(-math.Log(u)) }, func(u float64) float64 { return 1 / (u * math.Log(u)) })
	shortLives = curveOf(func(u float64) float64 { return math.Log(-math.Log1p(-u)) }, func(u float64) float64 { return -1 / ((1 - u) * math.Log1p(-u)) })
)

// lnHazard is the logarithm of the hazard that a life drawn with a word outlives, ln(-ln u), within 2e-8.
func lnHazard(w uint64) float64 {
	if int64(w) < 0 {
		return shortLives.at(^w)
	}
	return longLives.at(w)
}

// below is the share of a standard normal below x.
func below(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }

func density(x float64) float64 { return math.Exp(-x*x/2) / math.Sqrt(2*math.Pi) }

// quantile is the score below which a share u up to a half lies: from the tail's leading term, sharpened by Halley's steps until it stands.
func quantile(u float64) float64 {
	if u == 0.5 {
		return 0
	}
	x := -math.Sqrt(-2*math.Log(2*u)) * 0.9
	for range 60 {
		e := (below(x) - u) / density(x)
		step := e / (1 + x*e/2)
		x -= step
		if math.Abs(step) < 1e-15 {
			break
		}
	}
	return x
}
