package shellmap

import "math"

// held is the most readings that Coverage holds out.
const held = 400

// Coverage holds out readings, one at a time, and gives the share of them that fall within z standard deviations of what the others say
// (instrument counted). It is nil below five readings. With many readings every so many-th is held out.
func (m *Map) Coverage(z float64) *float64 {
	n := len(m.readings)
	if n < 5 {
		return nil
	}
	step := (n + held - 1) / held
	in := make([]float64, n)
	each(n, func(i int, s *scratch) {
		if i%step == 0 && m.without(i, s) <= z {
			in[i] = 1
		}
	})
	inside, all := 0.0, 0.0
	for i := 0; i < n; i += step {
		inside += in[i]
		all++
	}
	share := inside / all
	return &share
}

// without gives how many standard deviations reading i lies from what its neighbours say.
func (m *Map) without(i int, s *scratch) float64 {
	r := m.readings[i]
	s.near = m.index.nearest(r.X, r.Y, Neighbours+1, s.near)
	s.set = s.set[:0]
	for _, f := range s.near {
		if f.n != i {
			s.set = append(s.set, m.readings[f.n])
		}
	}
	n := len(s.set)
	s.k, s.y, s.h, s.a = grow(s.k, n), grow(s.y, n), grow(s.h, n), grow(s.a, n*n)
	for q, p := range s.set {
		s.k[q], s.y[q], s.h[q] = m.local.Cov(p.X-r.X, p.Y-r.Y), p.Value-m.Mean, 1
	}
	fill(s.a, s.set, m.local)
	if !factor(s.a, n) {
		return math.Inf(1)
	}
	forward(s.a, n, s.k)
	forward(s.a, n, s.y)
	forward(s.a, n, s.h)
	u := (1 - dot(s.k, s.h)) * m.MeanSD
	sd := math.Sqrt(max(m.local.SD*m.local.SD-dot(s.k, s.k), 0) + u*u + m.local.noise(r.SD))
	return math.Abs(r.Value-m.Mean-dot(s.k, s.y)) / sd
}
