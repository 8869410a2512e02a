package hullform

import "math"

// WettedIn is the wetted area inside each box (m2), at an attitude: zones of the shell by x, side and height. An infinite side leaves that side open.
// A flat facet in the border of two zones counts in both. Appendages are not counted.
func (h *Hull) WettedIn(zones []Box, a Attitude) ([]float64, error) {
	if err := a.valid(); err != nil {
		return nil, err
	}
	return h.areaIn(zones, a.Plane(h.length)), nil
}

// AreaIn is the whole area of skin inside each box, wet or not, m2.
func (h *Hull) AreaIn(zones []Box) []float64 {
	return h.areaIn(zones, Plane{Point{0, 0, 1}, math.Inf(1)})
}

func (h *Hull) areaIn(zones []Box, water Plane) []float64 {
	out := make([]float64, len(zones))
	for k, z := range zones {
		faces := z.faces()
		limits := append(faces[:], water)
		t := h.tree
		t.near(Box{z.Low.Minus(t.middle), z.High.Minus(t.middle)}, func(i int) {
			f := &t.facets[i]
			out[k] += areaWithin([]Point{f.a.Plus(t.middle), f.b.Plus(t.middle), f.c.Plus(t.middle)}, limits)
		})
	}
	return out
}

// areaWithin is the area of a flat polygon under all of the planes, m2.
func areaWithin(ring []Point, limits []Plane) float64 {
	for _, p := range limits {
		if math.IsInf(p.Offset, 1) {
			continue
		}
		ring = cutRing(ring, p)
	}
	return Ring{Points: ring}.Area()
}

// cutRing is the part of a convex polygon under a plane.
func cutRing(ring []Point, p Plane) []Point {
	out := make([]Point, 0, len(ring)+1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		ha, hb := p.Height(a), p.Height(b)
		if ha <= 0 {
			out = append(out, a)
		}
		if ha <= 0 != (hb <= 0) {
			out = append(out, mix(a, b, ha/(ha-hb)))
		}
	}
	return out
}
