package tide

import (
	"math"
	"sort"
	"time"
)

// Extreme is a high or a low water.
type Extreme struct {
	Time   time.Time
	Height float64 // m over the datum
	High   bool
}

// Curve is a water level through time.
type Curve interface {
	Height(t time.Time) float64
	Extremes(start, end time.Time) []Extreme
}

// Turns is a curve through known high and low waters, a cosine between them.
type Turns []Extreme

// Height is the level at t; before the first and after the last turn it stands as at that turn.
func (ts Turns) Height(t time.Time) float64 {
	i := sort.Search(len(ts), func(i int) bool { return ts[i].Time.After(t) })
	switch {
	case len(ts) == 0:
		return math.NaN()
	case i == 0:
		return ts[0].Height
	case i == len(ts):
		return ts[i-1].Height
	}
	a, b := ts[i-1], ts[i]
	x := float64(t.Sub(a.Time)) / float64(b.Time.Sub(a.Time))
	return (a.Height+b.Height)/2 + (a.Height-b.Height)/2*math.Cos(math.Pi*x)
}

// Extremes lists the turns from start to end.
func (ts Turns) Extremes(start, end time.Time) []Extreme {
	var list []Extreme
	for _, x := range ts {
		if !x.Time.Before(start) && !x.Time.After(end) {
			list = append(list, x)
		}
	}
	return list
}

// Covers tells whether the turns reach from start to end.
func (ts Turns) Covers(start, end time.Time) bool {
	return len(ts) > 1 && !ts[0].Time.After(start) && !ts[len(ts)-1].Time.Before(end)
}

// Window is a time through which the water stands high enough.
type Window struct{ Start, End time.Time }

// Bounded is a curve that knows how fast it can rise or fall: far from a level it need not be looked at for a while.
type Bounded interface {
	Curve
	// Steepest is the most it changes in an hour from t on, m, and until when that holds.
	Steepest(t time.Time) (most float64, until time.Time)
}

// Above lists the times from start to end at which the level is between low and high, to within a second.
func Above(c Curve, low, high float64, start, end time.Time) []Window {
	const step = 5 * time.Minute
	inside := func(t time.Time) bool { x := c.Height(t); return x >= low && x <= high }
	var list []Window
	x := c.Height(start)
	open := x >= low && x <= high
	from := start
	for t := start; t.Before(end); {
		if n := calm(c, t, min(math.Abs(x-low), math.Abs(x-high)), step); n > 0 {
			t = t.Add(time.Duration(n) * step)
			x = c.Height(t)
			continue
		}
		next := t.Add(step)
		if next.After(end) {
			next = end
		}
		x = c.Height(next)
		if now := x >= low && x <= high; now != open {
			at := crossing(inside, t, next)
			if now {
				from = at
			} else {
				list = append(list, Window{from, at})
			}
			open = now
		}
		t = t.Add(step)
	}
	if open {
		list = append(list, Window{from, end})
	}
	return list
}

// calm is how many steps from t on surely bring no crossing of a level that is so far away.
func calm(c Curve, t time.Time, away float64, step time.Duration) int {
	b, ok := c.(Bounded)
	if !ok {
		return 0
	}
	most, until := b.Steepest(t)
	return steps(away, most, t, until, step)
}

// steps is how many whole steps a value that changes by no more than most in an hour takes to come so far, less a hair for rounding.
func steps(away, most float64, t, until time.Time, step time.Duration) int {
	const hair = 1e-6
	n := (away - hair) / (most * step.Hours())
	if !(n >= 1) {
		return 0
	}
	return int(min(math.Floor(n), max(float64((until.Sub(t)-1)/step), 0)))
}

func crossing(inside func(time.Time) bool, a, b time.Time) time.Time {
	was := inside(a)
	for b.Sub(a) > time.Second {
		mid := a.Add(b.Sub(a) / 2)
		if inside(mid) == was {
			a = mid
		} else {
			b = mid
		}
	}
	if was {
		return a
	}
	return b
}
