package hullform

import "math"

// sliced is the same surface with every edge that reaches further along her than most (m) halved until none does: a bend can then be told from a
// straight line. An edge is halved by its own length alone, so that the facets on either side of it agree and the mesh stays closed.
func (m Mesh) sliced(most float64) Mesh {
	long := func(a, b int) bool { return math.Abs(m.Vertices[a].X-m.Vertices[b].X) > most }
	m.Vertices = append([]Point(nil), m.Vertices...)
	for range 40 { // halving 40 times is beyond any ship
		halves := map[[2]int]int{}
		half := func(a, b int) int {
			key := [2]int{min(a, b), max(a, b)}
			if v, ok := halves[key]; ok {
				return v
			}
			m.Vertices = append(m.Vertices, mix(m.Vertices[a], m.Vertices[b], 0.5))
			halves[key] = len(m.Vertices) - 1
			return halves[key]
		}
		var next [][3]int
		for _, t := range m.Triangles {
			next = append(next, cutFacet(t, long, half)...)
		}
		m.Triangles = next
		if len(halves) == 0 {
			break
		}
	}
	return m
}

// cutFacet cuts a facet at the middle of each of its long edges; what is left on the far side of them is cut from the middle of the first.
func cutFacet(t [3]int, long func(a, b int) bool, half func(a, b int) int) [][3]int {
	for i := range 3 {
		a, b, c := t[i], t[(i+1)%3], t[(i+2)%3]
		if !long(a, b) {
			continue
		}
		m := half(a, b)
		switch {
		case long(b, c) && long(c, a):
			n, o := half(b, c), half(c, a)
			return [][3]int{{a, m, o}, {m, b, n}, {o, n, c}, {m, n, o}}
		case long(b, c):
			n := half(b, c)
			return [][3]int{{m, b, n}, {a, m, n}, {a, n, c}}
		case long(c, a):
			o := half(c, a)
			return [][3]int{{a, m, o}, {m, b, c}, {m, c, o}}
		}
		return [][3]int{{a, m, c}, {m, b, c}}
	}
	return [][3]int{t}
}
