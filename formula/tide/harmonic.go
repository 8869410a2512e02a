package tide

import (
	"math"
	"time"
)

// Constituent is one harmonic constant of a place. Phase is the Greenwich phase lag, rad.
type Constituent struct {
	Name      string  `key:"name" label:"constituent"`
	Amplitude float64 `key:"amplitude" unit:"m" symbol:"H" min:"0" max:"10" label:"amplitude"`
	Phase     float64 `key:"phase" unit:"deg" symbol:"G" min:"-360" max:"360" label:"Greenwich phase"`
}

// Harmonic predicts from harmonic constants. Node factors are held at the middle of each calendar year, as tide tables do.
type Harmonic struct {
	constants []Constituent
	mean      float64
	years     map[int]yearly
}

// yearly is a year's terms, and the most that height (m/h) and slope (m/h2) can change with them.
type yearly struct {
	terms          []term
	steepest, bend float64
}

// term is one constituent through one year: amplitude times cos(rate x hours since the year began + phase), m, rad/h, rad.
type term struct{ amplitude, rate, phase float64 }

// NewHarmonic makes a predictor; mean is the mean level over the datum, m. Names must be known to waveOf.
func NewHarmonic(constants []Constituent, mean float64) *Harmonic {
	return &Harmonic{constants: constants, mean: mean, years: map[int]yearly{}}
}

func beginning(year int) time.Time { return time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC) }

func (h *Harmonic) year(y int) yearly {
	if known, ok := h.years[y]; ok {
		return known
	}
	start := beginning(y)
	middle := start.Add(beginning(y+1).Sub(start) / 2)
	l, n := longitudesAt(start), nodeAt(longitudesAt(middle))
	year := yearly{terms: make([]term, 0, len(h.constants))}
	for _, c := range h.constants {
		w, ok := waveOf(c.Name)
		if !ok || c.Amplitude == 0 {
			continue
		}
		k := w.node(n)
		t := term{k.f * c.Amplitude, w.rate() * degree, (w.argument(180, l)+k.u)*degree - c.Phase}
		year.terms = append(year.terms, t)
		year.steepest += math.Abs(t.amplitude * t.rate)
		year.bend += math.Abs(t.amplitude * t.rate * t.rate)
	}
	h.years[y] = year
	return year
}

// Steepest is the sum of what its waves can do, until the year ends.
func (h *Harmonic) Steepest(t time.Time) (most float64, until time.Time) {
	y := t.UTC().Year()
	return h.year(y).steepest, beginning(y + 1)
}

// Height of the water over the datum at t, m.
func (h *Harmonic) Height(t time.Time) float64 {
	t = t.UTC()
	hours := t.Sub(beginning(t.Year())).Hours()
	sum := h.mean
	for _, k := range h.year(t.Year()).terms {
		sum += k.amplitude * math.Cos(k.rate*hours+k.phase)
	}
	return sum
}

// slope of the height at t, m/h.
func (h *Harmonic) slope(t time.Time) float64 {
	t = t.UTC()
	hours := t.Sub(beginning(t.Year())).Hours()
	sum := 0.0
	for _, k := range h.year(t.Year()).terms {
		sum -= k.amplitude * k.rate * math.Sin(k.rate*hours+k.phase)
	}
	return sum
}

// Extremes lists high and low waters from start to end.
func (h *Harmonic) Extremes(start, end time.Time) []Extreme {
	const step = 15 * time.Minute
	var list []Extreme
	before := h.slope(start)
	for t := start; t.Before(end); t = t.Add(step) {
		y := t.UTC().Year()
		if n := steps(math.Abs(before), h.year(y).bend, t, beginning(y+1), step); n > 0 {
			t = t.Add(time.Duration(n) * step)
			if !t.Before(end) {
				break
			}
			before = h.slope(t)
		}
		next := t.Add(step)
		after := h.slope(next)
		if before != 0 && (before > 0) != (after > 0) {
			at := h.turning(t, next)
			if !at.After(end) {
				list = append(list, Extreme{at, h.Height(at), before > 0})
			}
		}
		before = after
	}
	return list
}

// turning halves the step in which the slope changes sign, to a second.
func (h *Harmonic) turning(a, b time.Time) time.Time {
	rising := h.slope(a) > 0
	for b.Sub(a) > time.Second {
		mid := a.Add(b.Sub(a) / 2)
		if (h.slope(mid) > 0) == rising {
			a = mid
		} else {
			b = mid
		}
	}
	return a
}
