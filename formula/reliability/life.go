package reliability

import "math"

// Life is a law of how long parts of one sort last.
type Life interface {
	// Cumulative is the hazard summed from new to age t (no unit); the share exp(-Cumulative) lives past t.
	Cumulative(t float64) float64
	// Gained is the hazard summed over the years ahead of a part alive at the age: Cumulative(age+ahead) - Cumulative(age), to all digits.
	Gained(age, ahead float64) float64
	// Hazard is the chance a year of failing at age t, for a part that has lived so long (1/y).
	Hazard(t float64) float64
	// Left is the time in years, for a part alive at the age, below which a share u of such parts have failed.
	Left(age, u float64) float64
}

// Survival is the share of new parts that live past age t.
func Survival(l Life, t float64) float64 { return math.Exp(-l.Cumulative(t)) }

// Ahead is the chance that a part alive at the age fails within the years ahead.
func Ahead(l Life, age, ahead float64) float64 {
	return -math.Expm1(-l.Gained(age, ahead))
}

// MedianLeft is the time in years within which half of the parts alive at the age fail.
func MedianLeft(l Life, age float64) float64 { return l.Left(age, 0.5) }

// Exponential is the law of failing by chance alone: Rate per year, whatever the age.
type Exponential struct{ Rate float64 }

// Cumulative implements Life.
func (e Exponential) Cumulative(t float64) float64 { return e.Rate * max(t, 0) }

// Gained implements Life.
func (e Exponential) Gained(_, ahead float64) float64 { return e.Rate * ahead }

// Hazard implements Life.
func (e Exponential) Hazard(float64) float64 { return e.Rate }

// Left implements Life.
func (e Exponential) Left(_, u float64) float64 { return -math.Log1p(-u) / e.Rate }

// Weibull is the law of wearing out: the share exp(-(t/Scale)^Shape) lives past t. Shape 1 is chance alone, below 1 early faults, 2 to 4 wear.
type Weibull struct{ Shape, Scale float64 }

// WithMedian is the law of that shape of which half have failed by the median, in years.
func WithMedian(shape, median float64) Weibull {
	return Weibull{shape, median / math.Pow(math.Ln2, 1/shape)}
}

// Cumulative implements Life.
func (w Weibull) Cumulative(t float64) float64 {
	if t <= 0 {
		return 0
	}
	return math.Pow(t/w.Scale, w.Shape)
}

// Gained implements Life.
func (w Weibull) Gained(age, ahead float64) float64 {
	if age <= ahead {
		return w.Cumulative(age+ahead) - w.Cumulative(age)
	}
	return w.Cumulative(age) * math.Expm1(w.Shape*math.Log1p(ahead/age))
}

// Hazard implements Life. At age 0 it is infinite for a shape below 1.
func (w Weibull) Hazard(t float64) float64 {
	return w.Shape / w.Scale * math.Pow(max(t, 0)/w.Scale, w.Shape-1)
}

// Left implements Life.
func (w Weibull) Left(age, u float64) float64 {
	h, lived := -math.Log1p(-u), w.Cumulative(age)
	if lived <= h {
		return w.Scale*math.Pow(h+lived, 1/w.Shape) - max(age, 0)
	}
	return age * math.Expm1(math.Log1p(h/lived)/w.Shape)
}

// Mixed is a Weibull law whose scale is not known: Scale^-Shape is drawn once per part from a gamma law of shape Strength and rate B
// (y^Shape). The share (B/(B+t^Shape))^Strength lives past t. The more Strength, the surer the prior.
type Mixed struct{ Shape, Strength, B float64 }

// MixedWithMedian is the law of that shape and strength of which half have failed by the median, in years.
func MixedWithMedian(shape, strength, median float64) Mixed {
	return Mixed{shape, strength, math.Pow(median, shape) / math.Expm1(math.Ln2/strength)}
}

// Cumulative implements Life.
func (m Mixed) Cumulative(t float64) float64 {
	if t <= 0 {
		return 0
	}
	return m.Strength * math.Log1p(math.Pow(t, m.Shape)/m.B)
}

// Gained implements Life.
func (m Mixed) Gained(age, ahead float64) float64 {
	if age <= ahead {
		return m.Cumulative(age+ahead) - m.Cumulative(age)
	}
	lived := math.Pow(age, m.Shape)
	return m.Strength * math.Log1p(lived*math.Expm1(m.Shape*math.Log1p(ahead/age))/(m.B+lived))
}

// Hazard implements Life.
func (m Mixed) Hazard(t float64) float64 {
	t = max(t, 0)
	return m.Strength * m.Shape * math.Pow(t, m.Shape-1) / (m.B + math.Pow(t, m.Shape))
}

// Left implements Life.
func (m Mixed) Left(age, u float64) float64 {
	worn := math.Expm1(-math.Log1p(-u) / m.Strength)
	lived := math.Pow(max(age, 0), m.Shape)
	if lived <= (m.B+lived)*worn {
		return math.Pow((m.B+lived)*worn+lived, 1/m.Shape) - max(age, 0)
	}
	return age * math.Expm1(math.Log1p((m.B+lived)*worn/lived)/m.Shape)
}

// Peak is the age in years at which the hazard stops rising, because those that are left are the better ones; 0 where it never rises.
func (m Mixed) Peak() float64 {
	return math.Pow(max(m.Shape-1, 0)*m.B, 1/m.Shape)
}

// Lived is what the law has become once a part has lived to the age: a Weibull law of unknown scale, surer and better than before. Its
// Cumulative counts from new; compare it at the age and beyond.
func (m Mixed) Lived(age float64) Mixed {
	return Mixed{m.Shape, m.Strength, m.B + math.Pow(max(age, 0), m.Shape)}
}
