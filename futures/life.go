package futures

import "math"

// life is a Weibull life made ready for drawing within a horizon.
type life struct {
	Weibull
	lived float64   // cumulative hazard already behind it, (age/scale)^shape
	power float64   // 1/shape
	spare []float64 // chance of outlasting so many whole years
}

func ready(w Weibull, horizon float64) life {
	l := life{Weibull: w, power: 1 / w.Shape, spare: make([]float64, int(math.Ceil(horizon))+1)}
	if w.Scale > 0 {
		l.lived = math.Pow(w.Age/w.Scale, w.Shape)
	}
	for y := range l.spare {
		l.spare[y] = 1 - w.By(float64(y))
	}
	return l
}

// outlasts tells that a life drawn with u is longer than so many years, rounded up; where it can't tell without dating the life, it says no.
func (l *life) outlasts(u, years float64) bool {
	whole := int(math.Ceil(max(years, 0)))
	return whole < len(l.spare) && u <= l.spare[whole]
}

// left is the time to failure from now of a part that outlives all but a share u of its like: scale*(lived - ln u)^(1/shape) - age.
// It is infinite where it lies beyond so many years, which most draws do and which costs no logarithm.
func (l *life) left(u, years float64) float64 {
	if u <= l.spare[min(int(math.Ceil(max(years, 0))), len(l.spare)-1)] {
		return math.Inf(1)
	}
	h := l.lived - math.Log(u)
	if l.Shape == 1 {
		return l.Scale*h - l.Age
	}
	return l.Scale*math.Exp(l.power*math.Log(h)) - l.Age // a third of the time of math.Pow, and as exact as a draw needs
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
