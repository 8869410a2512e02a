package futures

import "math"

// left is the time to failure from now, given that the part has lived to its age, below which a share u of such parts have failed:
// scale*((age/scale)^shape - ln(1-u))^(1/shape) - age.
func (w Weibull) left(u float64) float64 {
	if w.Scale <= 0 {
		return math.Inf(1)
	}
	h := -math.Log1p(-u)
	if w.Shape == 1 {
		return w.Scale * h
	}
	if w.Age > 0 {
		h += math.Pow(w.Age/w.Scale, w.Shape)
	}
	return w.Scale*math.Pow(h, 1/w.Shape) - w.Age
}

// by is the chance of failing within t years from now.
func (w Weibull) by(t float64) float64 {
	if w.Scale <= 0 {
		return 0
	}
	return -math.Expm1(math.Pow(w.Age/w.Scale, w.Shape) - math.Pow((w.Age+t)/w.Scale, w.Shape))
}

// through is when a plate with left metres over its limit wears through in a zone whose protection is dead from dead to mended.
func through(left, rate, bare, dead, mended float64) float64 {
	if left <= 0 {
		return 0
	}
	if rate <= 0 {
		return math.Inf(1)
	}
	if t := left / rate; t <= dead {
		return t
	}
	left -= rate * dead
	if t := left / (rate * bare); dead+t <= mended {
		return dead + t
	}
	left -= rate * bare * (mended - dead)
	return mended + left/rate
}
