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
type curve []cubic

const (
	curveBits   = 5
	curveShift  = 52 - curveBits
	curveFoot   = 1023 << curveBits
	curveOrders = 63 // down to a single word
)

// curveOf takes a curve and its slope, over shares of half the words counted from an end, down to so many binary orders.
func curveOf(orders int, f func(share float64) (y, slope float64)) curve {
	c := make(curve, orders<<curveBits+1)
	u := math.Ldexp(1, -1-orders)
	y, rise := f(u)
	for i := range c[:len(c)-1] {
		scale := math.Ldexp(1, i>>curveBits-1-orders) // a cell is measured in its own binary order
		next := scale * (1 + float64(i%(1<<curveBits)+1)/(1<<curveBits))
		y1, rise1 := f(next)
		c[i] = between((next-u)/scale, y, y1, scale*rise, scale*rise1)
		u, y, rise = next, y1, rise1
	}
	c[len(c)-1] = cubic{y}
	return c
}

// at reads the curve at a word that is less than half of all.
func (c curve) at(w uint64) float64 {
	b := math.Float64bits(float64(int64(w | 1)))
	return c[int(b>>curveShift)-curveFoot-curveOrders<<curveBits-1+len(c)].at(math.Float64frombits(1023<<52|b&(1<<curveShift-1)) - 1)
}

var scores = curveOf(curveOrders, func(u float64) (float64, float64) {
	x := quantile(u)
	return x, 1 / density(x)
})

// normal is the standard normal score of a word, within 2e-8.
func normal(w uint64) float64 {
	upper := uint64(int64(w) >> 63) // all ones in the upper half, which mirrors the lower
	return math.Float64frombits(math.Float64bits(scores.at(w^upper)) ^ upper&(1<<63))
}

var (
	longLives  = curveOf(curveOrders, func(u float64) (float64, float64) { l := math.Log(u); return math.Log(-l), 1 / (u * l) })
	shortLives = curveOf(curveOrders, func(u float64) (float64, float64) { l := math.Log1p(-u); return math.Log(-l), -1 / ((1 - u) * l) })
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
	switch u {
	case 0:
		return math.Inf(-1)
	case 0.5:
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
