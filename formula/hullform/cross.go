package hullform

// inside moves a cutting plane square to an axis off the very ends of the hull, by a billionth of its size, so that a section at the stem or the
// transom is that just inside.
func (h *Hull) inside(at float64, axis int) float64 {
	low, high := h.bounds.Low.along(axis), h.bounds.High.along(axis)
	edge := 1e-9 * (high - low)
	if at >= low-edge && at < low+edge {
		return low + edge
	}
	if at <= high+edge && at > high-edge {
		return high - edge
	}
	return at
}

// cross calls line with each piece of the outline in which the plane cuts the skin. Seen against the plane's normal the body lies on the right of
// each piece. The order is that of the tree; facet is the triangle's number.
func (t *tree) cross(p Plane, line func(a, b Point, facet int32)) {
	rel := Plane{p.Normal, -p.Height(t.middle)}
	n := absolute(p.Normal)
	var stack [64]int32
	top := 1
	for top > 0 {
		top--
		nd := &t.nodes[stack[top]]
		h, r := rel.Height(nd.middle), nd.half.Dot(n)
		if h-r > 0 || h+r <= 0 {
			continue
		}
		if nd.count == 0 {
			stack[top], stack[top+1] = nd.first, nd.first+1
			top += 2
			continue
		}
		for i := nd.first; i < nd.first+nd.count; i++ {
			f := &t.facets[i]
			if a, b, ok := rel.crossing(f.a, f.b, f.c); ok {
				line(a.Plus(t.middle), b.Plus(t.middle), t.source[i])
			}
		}
	}
}

// crossing is where the plane cuts a triangle, from where its outline leaves the near side to where it comes back.
func (p Plane) crossing(a, b, c Point) (leave, enter Point, ok bool) {
	ha, hb, hc := p.Height(a), p.Height(b), p.Height(c)
	na, nb, nc := ha <= 0, hb <= 0, hc <= 0
	if na == nb && nb == nc {
		return leave, enter, false
	}
	for _, e := range [3]struct {
		p, q   Point
		hp, hq float64
	}{{a, b, ha, hb}, {b, c, hb, hc}, {c, a, hc, ha}} {
		switch {
		case e.hp <= 0 && e.hq > 0:
			leave = mix(e.p, e.q, e.hp/(e.hp-e.hq))
		case e.hp > 0 && e.hq <= 0:
			enter = mix(e.q, e.p, e.hq/(e.hq-e.hp))
		}
	}
	return leave, enter, true
}
