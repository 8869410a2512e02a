package hullform

import (
	"fmt"
	"math"
)

// Room is a space bounded by a box and, where that reaches beyond her, by the hull. An infinite side leaves that side to the hull.
func (h *Hull) Room(name string, b Box, permeability float64) (*Space, error) {
	for axis, word := range [3]string{"x", "y", "z"} {
		lo, hi := b.Low.along(axis), b.High.along(axis)
		if math.IsNaN(lo) || math.IsNaN(hi) || lo >= hi {
			return nil, fmt.Errorf("%s: %s0 %g m must lie below %s1 %g m", name, word, lo, word, hi)
		}
	}
	m := h.mesh
	for _, face := range b.faces() {
		if math.IsInf(face.Offset, 0) {
			continue
		}
		if m = clip(m, face); len(m.Triangles) == 0 {
			return nil, fmt.Errorf("%s: the space lies outside the hull", name)
		}
	}
	return newSpace(name, m, permeability)
}
