package hullform

import "math"

// crossings counts pairs of facets that pass through each other without sharing a corner, and gives one place.
func crossings(m Mesh) (count int, at Point) {
	t := newTree(m)
	tol := 1e-7 * m.Bounds().Size().Length()
	for i := range t.facets {
		f := &t.facets[i]
		box := f.box()
		ti := m.Triangles[t.source[i]]
		t.near(box, func(j int) {
			if j <= i || shareCorner(ti, m.Triangles[t.source[j]]) {
				return
			}
			if g := &t.facets[j]; pierces(f, g, tol) || pierces(g, f, tol) {
				count++
				at = f.centre().Times(1.0 / 3).Plus(t.middle)
			}
		})
	}
	return count, at
}

func (f *facet) box() Box {
	b := emptyBox()
	b.add(f.a)
	b.add(f.b)
	b.add(f.c)
	return b
}

func shareCorner(s, t [3]int) bool {
	for _, v := range s {
		if v == t[0] || v == t[1] || v == t[2] {
			return true
		}
	}
	return false
}

// near calls visit with each facet whose box meets another, both measured from the middle of the tree.
func (t *tree) near(b Box, visit func(facet int)) {
	var stack [64]int32
	top := 1
	for top > 0 {
		top--
		nd := &t.nodes[stack[top]]
		if !b.meets(Box{nd.middle.Minus(nd.half), nd.middle.Plus(nd.half)}) {
			continue
		}
		if nd.count == 0 {
			stack[top], stack[top+1] = nd.first, nd.first+1
			top += 2
			continue
		}
		for i := nd.first; i < nd.first+nd.count; i++ {
			if b.meets(t.facets[i].box()) {
				visit(int(i))
			}
		}
	}
}

// pierces tells whether an edge of f passes through g, clear of its rim by a distance (m).
func pierces(f, g *facet, tol float64) bool {
	n := g.b.Minus(g.a).Cross(g.c.Minus(g.a)).unit()
	for _, e := range [3][2]Point{{f.a, f.b}, {f.b, f.c}, {f.c, f.a}} {
		hp, hq := n.Dot(e[0].Minus(g.a)), n.Dot(e[1].Minus(g.a))
		if hp*hq >= 0 || math.Abs(hp) < tol || math.Abs(hq) < tol {
			continue
		}
		if g.holds(mix(e[0], e[1], hp/(hp-hq)), n, tol) {
			return true
		}
	}
	return false
}

// holds tells whether a point of f's plane lies inside f, clear of its rim.
func (f *facet) holds(p, n Point, tol float64) bool {
	for _, e := range [3][2]Point{{f.a, f.b}, {f.b, f.c}, {f.c, f.a}} {
		along := e[1].Minus(e[0]).unit()
		if n.Cross(along).Dot(p.Minus(e[0])) < tol {
			return false
		}
	}
	return true
}
