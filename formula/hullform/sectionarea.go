package hullform

// SectionArea is the area under a plane of water of the section square to the ship's x axis at x, m2. It is had from the outline alone, heights
// measured from the water: the waterline itself adds nothing.
func (h *Hull) SectionArea(x float64, water Plane) float64 {
	x = h.inside(x, 0)
	area := 0.0
	h.tree.cross(Plane{Point{1, 0, 0}, x}, func(a, b Point, _ int32) {
		area += under(a, b, water)
	})
	return area
}

// under is what one directed piece of an outline adds: the integral of height above water over y, along its wet part.
func under(a, b Point, water Plane) float64 {
	n := water.Normal.Z
	if n <= 0 {
		return 0
	}
	ha, hb := water.Height(a)/n, water.Height(b)/n
	switch {
	case ha >= 0 && hb >= 0:
		return 0
	case ha <= 0 && hb <= 0:
		return (ha + hb) / 2 * (b.Y - a.Y)
	case ha < 0:
		return ha / 2 * (b.Y - a.Y) * ha / (ha - hb)
	}
	return hb / 2 * (b.Y - a.Y) * hb / (hb - ha)
}

// SectionAreas is the curve of sectional area at an attitude: one area for each x.
func (h *Hull) SectionAreas(xs []float64, a Attitude) ([]float64, error) {
	if err := a.valid(); err != nil {
		return nil, err
	}
	water := a.Plane(h.length)
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[i] = h.SectionArea(x, water)
	}
	return out, nil
}
