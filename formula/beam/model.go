package beam

import (
	"fmt"
	"math"
)

// Span is a stretch of beam of one stiffness on one bed.
type Span struct {
	X0, X1 float64 // m
	EI     float64 // N.m2; infinite is rigid
	Bed    float64 // N/m a metre run that holds both ways; a bed that only pushes is a Row of supports
}

// Spread is a load spread along the beam, W0 at X0 and W1 at X1, linear between, N/m downward.
type Spread struct{ X0, X1, W0, W1 float64 }

// Point is a load at a point.
type Point struct {
	X      float64
	Force  float64 // N downward
	Moment float64 // N.m clockwise
}

// Support holds the beam at a point.
type Support struct {
	X         float64
	Settle    float64 // m downward: where the support stands unloaded
	Stiffness float64 // N/m; zero means rigid
	Fixed     bool    // the slope is held at zero too
	OneWay    bool    // it pushes up and never pulls
	Yield     float64 // N, the push at which it gives way; zero means never
	After     float64 // N/m, stiffness beyond the yield; zero means that it pushes no harder
}

// Model is a beam with its supports and loads. Spans follow each other without gaps.
type Model struct {
	Spans    []Span
	Supports []Support
	Points   []Point
	Spreads  []Spread
	Stations []float64 // places besides the ends, supports and loads where results are wanted
}

// Row gives n equal one-way springs that stand for a bed of stiffness k (N/m a metre run) from x0 to x1, each in the middle of its stretch.
func Row(x0, x1, k float64, n int) []Support {
	step := (x1 - x0) / float64(n)
	row := make([]Support, n)
	for i := range row {
		row[i] = Support{X: x0 + (float64(i)+0.5)*step, Stiffness: k * step, OneWay: true}
	}
	return row
}

func (m Model) ends() (x0, x1 float64) { return m.Spans[0].X0, m.Spans[len(m.Spans)-1].X1 }

// check says what makes a model no beam.
func (m Model) check() error {
	if len(m.Spans) == 0 {
		return fmt.Errorf("a beam needs at least one span")
	}
	x0, x1 := m.ends()
	near := 1e-9 * (x1 - x0)
	for i, s := range m.Spans {
		switch {
		case !(s.X1 > s.X0):
			return fmt.Errorf("span %d ends at %g m, which is not beyond its start at %g m", i+1, s.X1, s.X0)
		case !(s.EI > 0):
			return fmt.Errorf("span %d has a stiffness of %g N.m2; it must be more than zero", i+1, s.EI)
		case s.Bed < 0:
			return fmt.Errorf("span %d has a bed of %g N/m2; it must not be negative", i+1, s.Bed)
		case i > 0 && (s.X0-m.Spans[i-1].X1 > near || m.Spans[i-1].X1-s.X0 > near):
			return fmt.Errorf("span %d starts at %g m, span %d ends at %g m: they must meet", i+1, s.X0, i, m.Spans[i-1].X1)
		}
	}
	out := func(x float64) bool { return !(x >= x0-near && x <= x1+near) }
	for i, p := range m.Points {
		if out(p.X) {
			return fmt.Errorf("load %d at %g m is off the beam, which runs from %g to %g m", i+1, p.X, x0, x1)
		}
	}
	for i, q := range m.Spreads {
		if out(q.X0) || out(q.X1) || !(q.X1 > q.X0) {
			return fmt.Errorf("spread load %d from %g to %g m does not lie along the beam, which runs from %g to %g m", i+1, q.X0, q.X1, x0, x1)
		}
	}
	for i, x := range m.Stations {
		if out(x) {
			return fmt.Errorf("station %d at %g m is off the beam, which runs from %g to %g m", i+1, x, x0, x1)
		}
	}
	return m.checkSupports(out, near)
}

func (m Model) checkSupports(out func(float64) bool, near float64) error {
	x0, x1 := m.ends()
	for i, s := range m.Supports {
		switch {
		case out(s.X):
			return fmt.Errorf("support %d at %g m is off the beam, which runs from %g to %g m", i+1, s.X, x0, x1)
		case !(s.Stiffness >= 0 && s.Yield >= 0 && s.After >= 0):
			return fmt.Errorf("support %d has a negative stiffness or yield", i+1)
		}
		for j, other := range m.Supports[:i] {
			if math.Abs(s.X-other.X) <= near {
				return fmt.Errorf("supports %d and %d stand at the same place, %g m: make them one", j+1, i+1, s.X)
			}
		}
	}
	return m.checkRigid(near)
}

// checkRigid refuses more than two rigid supports (a fixed one counts twice) under one rigid stretch: how they share the load is not defined.
func (m Model) checkRigid(near float64) error {
	for i := 0; i < len(m.Spans); i++ {
		from := i
		for i < len(m.Spans) && math.IsInf(m.Spans[i].EI, 1) {
			i++
		}
		if i == from {
			continue
		}
		x0, x1, count := m.Spans[from].X0-near, m.Spans[i-1].X1+near, 0
		for _, s := range m.Supports {
			if s.X >= x0 && s.X <= x1 {
				if s.Stiffness == 0 {
					count++
				}
				if s.Fixed {
					count++
				}
			}
		}
		if count > 2 {
			return fmt.Errorf("more than two rigid supports under the rigid span from %g to %g m: their shares are not defined", m.Spans[from].X0, m.Spans[i-1].X1)
		}
	}
	return nil
}
