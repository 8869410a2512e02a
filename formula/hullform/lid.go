package hullform

import "fmt"

// lidded closes openings: the edges used once are followed round, and each ring gets a flat lid to its middle. Lids are outside the skin: they
// displace water but add no wetted area worth having, since a lid under water means that water would pour in.
func (r *Report) lidded(m Mesh, body []int32) (Mesh, []int32, error) {
	next, err := r.rims(m)
	if err != nil || len(next) == 0 {
		return m, body, err
	}
	out := Mesh{append([]Point(nil), m.Vertices...), append([][3]int(nil), m.Triangles...)}
	rings, edges := 0, len(next)
	var at Point
	for i, t := range m.Triangles { // in the order of the triangles, so that the outcome doesn't depend on a map's
		for k := range 3 {
			from := t[(k+1)%3]
			if to, open := next[from]; !open || to != t[k] {
				continue
			}
			ring, closed := ringFrom(next, from)
			if !closed {
				return Mesh{}, nil, fmt.Errorf("triangles: the edge of the surface at %s does not close", m.Vertices[from])
			}
			rings, at = rings+1, m.Vertices[from]
			out.lid(ring)
			for range ring {
				body = append(body, body[i])
			}
			for _, v := range ring {
				r.lids = append(r.lids, m.Vertices[v])
			}
		}
	}
	r.find(OpenEdges, edges, at, "%d edges belong to one facet only, round %d openings: closed with flat lids; water over an opening is not seen",
		edges, rings)
	return out, body, nil
}

// rims are the edges still to be matched, each from the vertex a lid's outline would leave to the one it would reach.
func (r *Report) rims(m Mesh) (map[int]int, error) {
	balance := make(map[[2]int]int)
	for e, s := range m.edges() {
		if s.count != 2 {
			balance[e] = int(s.count)
		}
	}
	if len(balance) == 0 {
		return nil, nil
	}
	sum := make(map[[2]int]int, len(balance))
	for _, t := range m.Triangles {
		for k := range 3 {
			e := edgeOf(t[k], t[(k+1)%3])
			if _, odd := balance[e]; !odd {
				continue
			}
			if runs(t, e) {
				sum[e]++
			} else {
				sum[e]--
			}
		}
	}
	next, branching := make(map[int]int), 0
	var at Point
	for e, n := range balance {
		if n > 2 {
			branching, at = branching+1, m.Vertices[e[0]]
		}
		from, to := e[0], e[1]
		switch s := sum[e]; {
		case s == 0:
			continue
		case n > 2:
			return nil, fmt.Errorf("triangles: %d facets meet at the edge at %s: leave out decks and bulkheads inside the hull", n, m.Vertices[e[0]])
		case s > 0:
			from, to = to, from
		}
		if _, twice := next[from]; twice {
			return nil, fmt.Errorf("triangles: two openings touch at %s: close one of them", m.Vertices[from])
		}
		next[from] = to
	}
	if branching > 0 {
		r.find(Branching, branching, at, "%d edges belong to more than two facets: bodies touch there", branching)
	}
	return next, nil
}

// ringFrom takes one ring out of the map, starting at a vertex.
func ringFrom(next map[int]int, start int) (ring []int, closed bool) {
	for v := start; ; {
		to, ok := next[v]
		if !ok {
			return ring, v == start && len(ring) > 0
		}
		delete(next, v)
		ring = append(ring, v)
		v = to
	}
}

// lid fans a ring from its middle.
func (m *Mesh) lid(ring []int) {
	var sum Point
	for _, v := range ring {
		sum = sum.Plus(m.Vertices[v])
	}
	hub := len(m.Vertices)
	m.Vertices = append(m.Vertices, sum.Times(1/float64(len(ring))))
	for i, v := range ring {
		m.Triangles = append(m.Triangles, [3]int{v, ring[(i+1)%len(ring)], hub})
	}
}
