package hullform

import "math"

// deckEdge are the corners where side meets weather deck: ends of sharp, outward edges (more than 25 degrees) between a facet that faces mostly up
// and one that doesn't; and the rims of openings. A round hull has none but at its ends.
func deckEdge(m Mesh, rims []Point) []Point {
	up := make([]Point, len(m.Triangles))
	for i := range up {
		up[i] = m.areaVector(i).unit()
	}
	seen := make(map[int]bool)
	for e, s := range m.edges() {
		if s.count != 2 {
			continue
		}
		a, b := int(s.a), int(s.b)
		if up[a].Z < up[b].Z {
			a, b = b, a
		}
		deck, side := up[a], up[b]
		if deck.Z < math.Sqrt2/2 || side.Z > math.Sqrt2/2 || deck.Dot(side) > math.Cos(25*math.Pi/180) || !m.outwardEdge(a, b, e) {
			continue
		}
		seen[e[0]], seen[e[1]] = true, true
	}
	edge := append([]Point(nil), rims...)
	for v := range m.Vertices {
		if seen[v] {
			edge = append(edge, m.Vertices[v])
		}
	}
	return edge
}

// outwardEdge tells whether facets a and b bend away from their outside at edge e.
func (m Mesh) outwardEdge(a, b int, e [2]int) bool {
	for _, v := range m.Triangles[b] {
		if v != e[0] && v != e[1] {
			return m.areaVector(a).Dot(m.Vertices[v].Minus(m.Vertices[e[0]])) < 0
		}
	}
	return false
}

// DeckEdge are the points where side meets weather deck, in no order; a round hull has none but at its ends.
func (h *Hull) DeckEdge() []Point { return h.edge }
