package hullform

import "fmt"

// Hogged is the hull bent along a parabola: amidships stands hog (m) higher against the ends at the perpendiculars; a sag is negative. Drafts then
// refer to the line through the keel at the perpendiculars.
func (h *Hull) Hogged(hog float64) (*Hull, error) {
	if !finite(hog) || hog > 0.02*h.length || hog < -0.02*h.length {
		return nil, fmt.Errorf("hog: %g m, must lie within 2 %% of the length (%.1f m)", hog, h.length)
	}
	bend := func(p Point) Point {
		k := 2*p.X/h.length - 1
		p.Z += hog * (1 - k*k)
		return p
	}
	if hog == 0 {
		return h, nil
	}
	c := *h
	const slices = 32 // facets a thirty-second of her length follow the parabola to a thousandth of the hog
	c.mesh = h.mesh.sliced(h.length / slices).Mapped(bend)
	c.tree, c.bounds = newTree(c.mesh), c.mesh.Bounds()
	c.edge = make([]Point, len(h.edge))
	for i, p := range h.edge {
		c.edge[i] = bend(p)
	}
	c.appendages = append([]Appendage(nil), h.appendages...)
	for i := range c.appendages {
		c.appendages[i].Centre = bend(c.appendages[i].Centre)
	}
	c.fills = newFills(&c)
	return &c, nil
}
