package futures

import "math"

// life is a Weibull life made ready for drawing within a horizon.
type life struct {
	Weibull
	lived float64  // cumulative hazard already behind it, (age/scale)^shape
	power float64  // 1/shape
	spare []uint64 // by so many whole years: the last word that outlasts them
	dates [2]curve // of the lower half of the words, of the upper; nil where it isn't worth a table
}

// dateOrders is how near to never, and to at once, the dates of a life are read off a table: all but one in eight thousand.
const dateOrders = 12

// table makes a life that is drawn from again and again ready to be read: within 1e-6 of its scale. Shapes below a half are too steep for that.
func (l *life) table() {
	if l.dates[0] != nil || l.Scale <= 0 || l.Shape < 0.5 {
		return
	}
	over := func(hazard float64) (date, slope float64) {
		h := l.lived + hazard
		date = l.Scale * math.Pow(h, l.power)
		return date - l.Age, date * l.power / h
	}
	long := func(u float64) (float64, float64) { d, s := over(-math.Log(u)); return d, -s / u }
	short := func(u float64) (float64, float64) { d, s := over(-math.Log1p(-u)); return d, s / (1 - u) }
	l.dates = [2]curve{curveOf(dateOrders, long), curveOf(dateOrders, short)}
}

func ready(w Weibull, years int) *life {
	l := &life{Weibull: w, power: 1 / w.Shape, spare: make([]uint64, years)}
	if w.Scale > 0 {
		l.lived = math.Pow(w.Age/w.Scale, w.Shape)
	}
	for y := range l.spare {
		l.spare[y] = wordOf(1 - w.By(float64(y)))
	}
	return l
}

// left is the time to failure from now of a part that outlives all but a share u of its like, u being what a word stands for:
// scale*(lived - ln u)^(1/shape) - age.
func (l *life) left(w uint64) float64 {
	upper := uint64(int64(w) >> 63)
	end := w ^ upper
	if c := l.dates[upper&1]; end>>(curveOrders-dateOrders) != 0 && c != nil {
		return c.at(end)
	}
	return l.worked(w)
}

// worked is left without a table.
func (l *life) worked(w uint64) float64 {
	switch {
	case l.Scale <= 0:
		return math.Inf(1)
	case l.lived > 0:
		return l.Scale*exp(l.power*ln(l.lived+exp(lnHazard(w)))) - l.Age
	}
	return l.Scale * exp(l.power*lnHazard(w))
}

// By is the chance of failing within t years from now.
func (w Weibull) By(t float64) float64 {
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

// Quantile is the time to failure from now, given the age already lived, below which a share p of such parts have failed.
func (w Weibull) Quantile(p float64) float64 {
	if w.Scale <= 0 {
		return math.Inf(1)
	}
	return w.Scale*math.Pow(math.Pow(w.Age/w.Scale, w.Shape)-math.Log1p(-p), 1/w.Shape) - w.Age
}
