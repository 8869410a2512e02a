package reliability

import (
	"math"
)

// expected is the worth of the course where the unknown is normal.
func (c Course) expected(mean, sd float64) float64 {
	w := c.Worth + c.Slope*mean
	if c.Limit != nil {
		w -= c.Loss * below(*c.Limit, mean, sd)
	}
	return w
}

// below is the chance that a normal variable lies below x; for no deviation it is a step.
func below(x, mean, sd float64) float64 {
	if sd <= 0 {
		if mean < x {
			return 1
		}
		return 0
	}
	return 0.5 * math.Erfc((mean-x)/sd/math.Sqrt2)
}

func (in MeasureIn) lookNormal(l Look, m, s float64, best int, now float64, worth func(float64, float64) []float64) Looked {
	r := Looked{Name: l.Name}
	if l.Below != nil {
		r.EVSI, r.Changes = in.lookBelow(l, m, s, best, now)
	} else {
		noise := *l.Error**l.Error/float64(l.Readings) + l.Bias*l.Bias
		spread := s * s / math.Sqrt(s*s+noise)
		left := math.Sqrt(max(s*s-spread*spread, 0))
		total := in.integrate(m, spread, s, left, func(x, weight float64) float64 {
			list := worth(x, left)
			k := argmax(list)
			if k != best {
				r.Changes += weight
			}
			return list[k]
		})
		r.EVSI = max(total-now, 0)
	}
	r.Net = r.EVSI - l.Price
	return r
}

// lookBelow is a look that shows, or not, that the unknown lies below a limit.
func (in MeasureIn) lookBelow(l Look, m, s float64, best int, now float64) (evsi, changes float64) {
	under := below(*l.Below, m, s)
	shown := l.Detect*under + l.False*(1-under)
	total := 0.0
	for _, sign := range []struct{ chance, under, over float64 }{{shown, l.Detect, l.False}, {1 - shown, 1 - l.Detect, 1 - l.False}} {
		if sign.chance <= 0 {
			continue
		}
		list := make([]float64, len(in.Courses))
		for i, c := range in.Courses {
			whole, part := c.expected(m, s), c.partBelow(*l.Below, m, s)
			list[i] = sign.under*part + sign.over*(whole-part)
		}
		k := argmax(list)
		total += list[k]
		if k != best {
			changes += sign.chance
		}
	}
	return max(total-now, 0), changes
}

// partBelow is the mean worth of the course over the unknowns below x, times the chance of them.
func (c Course) partBelow(x, mean, sd float64) float64 {
	z := (x - mean) / sd
	p := below(x, mean, sd)
	w := c.Worth*p + c.Slope*(mean*p-sd*math.Exp(-z*z/2)/math.Sqrt(2*math.Pi))
	if c.Limit != nil {
		w -= c.Loss * below(min(*c.Limit, x), mean, sd)
	}
	return w
}
