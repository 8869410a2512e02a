package shellmap

import (
	"errors"
	"math"
	"runtime"
	"sync"
)

// ExactMost is the largest number of readings worked exactly; Neighbours how many pooled readings each place is worked out from beyond that.
const (
	ExactMost  = 400
	Neighbours = 40
)

// ErrSingular is returned where readings and kernel contradict each other beyond the last bits.
var ErrSingular = errors.New("the covariance of the readings is not positive definite")

// Map is a field conditioned on readings.
type Map struct {
	Kernel Kernel
	Mean   float64 // of the process, given or by generalised least squares
	MeanSD float64 // 0 where the mean is given
	Exact  bool

	readings []Reading
	local    Kernel // the kernel readings are used with: without the nugget once pooled
	index    *index
	l, v     []float64 // Cholesky factor; L^-1 (y - mean)
	h        []float64 // L^-1 1
}

// New conditions the process on readings. A nil mean is estimated, and its uncertainty goes into every place.
func New(readings []Reading, k Kernel, mean *float64) (*Map, error) {
	if len(readings) == 0 {
		return nil, errors.New("no readings")
	}
	m := &Map{Kernel: k, local: k, readings: readings, Exact: len(readings) <= ExactMost}
	if !m.Exact {
		m.readings = pool(readings, k)
		m.local.Nugget = 0
	}
	m.index = newIndex(m.readings, m.local)
	if m.Exact {
		return m, m.condition(mean)
	}
	if mean != nil {
		m.Mean = *mean
		return m, nil
	}
	c := chain(m.readings, m.local, m.index)
	m.Mean, m.MeanSD = c.mean(m.local)
	return m, nil
}

func (m *Map) condition(mean *float64) error {
	n := len(m.readings)
	m.l = make([]float64, n*n)
	fill(m.l, m.readings, m.local)
	if !factor(m.l, n) {
		return ErrSingular
	}
	m.h = make([]float64, n)
	m.v = make([]float64, n)
	for i, r := range m.readings {
		m.h[i], m.v[i] = 1, r.Value
	}
	forward(m.l, n, m.h)
	forward(m.l, n, m.v)
	if mean != nil {
		m.Mean = *mean
	} else {
		hh := dot(m.h, m.h)
		m.Mean, m.MeanSD = dot(m.h, m.v)/hh, math.Sqrt(1/hh)
	}
	for i := range m.v {
		m.v[i] -= m.Mean * m.h[i]
	}
	return nil
}

// fill writes the covariance of readings into the lower triangle of a.
func fill(a []float64, readings []Reading, k Kernel) {
	n := len(readings)
	for i, r := range readings {
		for j, s := range readings[:i] {
			a[i*n+j] = k.Cov(r.X-s.X, r.Y-s.Y)
		}
		a[i*n+i] = k.SD*k.SD + k.noise(r.SD)
	}
}

// Estimate is what the map says of one place: mean and standard deviation of the value there (nugget counted, instrument not), and how far the
// nearest reading lies, in ranges.
type Estimate struct{ Mean, SD, Nearest float64 }

// scratch is the working space of one goroutine.
type scratch struct {
	near    []found
	set     []Reading
	a       []float64
	k, y, h []float64
}

// At gives the estimate at a place.
func (m *Map) At(x, y float64) Estimate { return m.at(x, y, new(scratch)) }

// All gives the estimates of many places, on all cores; the answers do not depend on how many there are.
func (m *Map) All(xs, ys []float64) []Estimate {
	out := make([]Estimate, len(xs))
	workers := max(runtime.GOMAXPROCS(0), 1)
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			s := new(scratch)
			for i := w; i < len(xs); i += workers {
				out[i] = m.at(xs[i], ys[i], s)
			}
		})
	}
	wg.Wait()
	return out
}

func (m *Map) at(x, y float64, s *scratch) Estimate {
	if m.Exact {
		return m.exact(x, y, s)
	}
	s.near = m.index.nearest(x, y, Neighbours, s.near)
	n := len(s.near)
	s.set, s.k, s.y, s.h = s.set[:0], grow(s.k, n), grow(s.y, n), grow(s.h, n)
	for i, f := range s.near {
		r := m.readings[f.n]
		s.set = append(s.set, r)
		s.k[i], s.y[i], s.h[i] = m.local.Cov(r.X-x, r.Y-y), r.Value-m.Mean, 1
	}
	s.a = grow(s.a, n*n)
	fill(s.a, s.set, m.local)
	if !factor(s.a, n) {
		return Estimate{m.Mean, math.Hypot(m.Kernel.SD, m.Kernel.Nugget), s.near[0].d}
	}
	forward(s.a, n, s.k)
	forward(s.a, n, s.y)
	forward(s.a, n, s.h)
	return m.estimate(s.k, s.y, s.h, s.near[0].d)
}

func (m *Map) exact(x, y float64, s *scratch) Estimate {
	n := len(m.readings)
	s.k = grow(s.k, n)
	nearest := math.Inf(1)
	for i, r := range m.readings {
		s.k[i] = m.local.Cov(r.X-x, r.Y-y)
		nearest = min(nearest, m.Kernel.Distance(r.X-x, r.Y-y))
	}
	forward(m.l, n, s.k)
	return m.estimate(s.k, m.v, m.h, nearest)
}

// estimate joins the whitened covariance with the place (k), the whitened readings less their mean (v) and the whitened ones (h).
func (m *Map) estimate(k, v, h []float64, nearest float64) Estimate {
	u := (1 - dot(k, h)) * m.MeanSD
	smooth := max(m.Kernel.SD*m.Kernel.SD-dot(k, k), 0) + u*u
	return Estimate{m.Mean + dot(k, v), math.Sqrt(smooth + m.Kernel.Nugget*m.Kernel.Nugget), nearest}
}

func grow(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n)
	}
	return s[:n]
}
