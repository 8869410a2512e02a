package hullform

import "math"

// reach is the greatest p.d over the wet skin: how far it goes in a direction. Without any, minus infinity.
func (t *tree) reach(p Plane, d Point) float64 {
	best := math.Inf(-1)
	rel := Plane{p.Normal, -p.Height(t.middle)}
	ax := Point{math.Abs(d.X), math.Abs(d.Y), math.Abs(d.Z)}
	var stack [64]int32
	top := 1
	for top > 0 {
		top--
		nd := &t.nodes[stack[top]]
		if nd.middle.Dot(d)+nd.half.Dot(ax) <= best || rel.Height(nd.middle)-nd.half.Dot(absolute(p.Normal)) > 0 {
			continue
		}
		if nd.count == 0 {
			stack[top], stack[top+1] = nd.first, nd.first+1
			top += 2
			continue
		}
		for i := nd.first; i < nd.first+nd.count; i++ {
			f := &t.facets[i]
			best = max(best, rel.wetReach(f.a, f.b, d), rel.wetReach(f.b, f.c, d), rel.wetReach(f.c, f.a, d))
		}
	}
	return best + t.middle.Dot(d)
}

// wetReach is how far the part of an edge under the plane goes in a direction.
func (p Plane) wetReach(a, b, d Point) float64 {
	ha, hb := p.Height(a), p.Height(b)
	if ha > 0 && hb > 0 {
		return math.Inf(-1)
	}
	if ha > 0 {
		a = mix(a, b, ha/(ha-hb))
	} else if hb > 0 {
		b = mix(b, a, hb/(hb-ha))
	}
	return max(a.Dot(d), b.Dot(d))
}

func absolute(p Point) Point { return Point{math.Abs(p.X), math.Abs(p.Y), math.Abs(p.Z)} }
