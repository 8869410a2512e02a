package beam

import (
	"math"
	"slices"
	"sort"
)

// mesh is the beam cut at every place where something changes.
type mesh struct {
	x        []float64
	elements []element
	at       []int // node of each support
	force    []float64
	moment   []float64
}

func cut(m Model) mesh {
	x0, x1 := m.ends()
	xs := []float64{x0, x1}
	for _, s := range m.Spans {
		xs = append(xs, s.X0, s.X1)
		for i, n := 1, s.pieces(); i < n; i++ {
			xs = append(xs, s.X0+(s.X1-s.X0)*float64(i)/float64(n))
		}
	}
	for _, s := range m.Supports {
		xs = append(xs, s.X)
	}
	for _, p := range m.Points {
		xs = append(xs, p.X)
	}
	for _, q := range m.Spreads {
		xs = append(xs, q.X0, q.X1)
	}
	xs = append(xs, m.Stations...)
	slices.Sort(xs)
	near := 1e-9 * (x1 - x0)
	g := mesh{x: slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(b-a) <= near })}
	n := len(g.x)
	g.elements = make([]element, n-1)
	for i := range g.elements {
		mid := (g.x[i] + g.x[i+1]) / 2
		s := m.Spans[min(sort.Search(len(m.Spans), func(k int) bool { return m.Spans[k].X1 > mid }), len(m.Spans)-1)]
		g.elements[i] = element{h: g.x[i+1] - g.x[i], flex: 1 / s.EI, bed: s.Bed}
	}
	g.force, g.moment = make([]float64, n), make([]float64, n)
	for _, p := range m.Points {
		i := g.node(p.X)
		g.force[i] += p.Force
		g.moment[i] += p.Moment
	}
	for _, s := range m.Supports {
		g.at = append(g.at, g.node(s.X))
	}
	for _, q := range m.Spreads {
		g.spread(q)
	}
	return g
}

// node is the node nearest to x.
func (g mesh) node(x float64) int {
	i := min(sort.SearchFloat64s(g.x, x), len(g.x)-1)
	if i > 0 && x-g.x[i-1] < g.x[i]-x {
		return i - 1
	}
	return i
}

func (g mesh) spread(q Spread) {
	at := func(x float64) float64 { return q.W0 + (q.W1-q.W0)*(x-q.X0)/(q.X1-q.X0) }
	for i := g.node(q.X0); i < g.node(q.X1); i++ {
		g.elements[i].a += at(g.x[i])
		g.elements[i].b += at(g.x[i+1])
	}
}
