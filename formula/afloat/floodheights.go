package afloat

import (
	"math"
	"sort"

	"oakum/formula/hullform"
)

// heights is how high water stands in a space, by its volume: cut from the space at rows of levels for one upright, and kept while the ship tilts little from
// it. Levels count from the middle of the space, where a small tilt moves them by its square only.
type heights struct {
	made   bool
	up     hullform.Point
	volume []float64 // m3
	level  []float64 // m over the middle
}

const (
	heightRows = 48
	tilt       = 0.25 * degree // from this on the rows are cut anew
)

// along are the rows for an upright.
func (h *heights) along(space *hullform.Space, up hullform.Point) *heights {
	if h.made && h.up.Minus(up).Length() < tilt {
		return h
	}
	b := space.Bounds()
	centre := b.Low.Plus(b.High).Times(0.5)
	middle := up.Dot(centre)
	low, high := space.Surface(up, 0).Offset, space.Surface(up, space.Capacity()).Offset
	h.made, h.up, h.volume, h.level = true, up, h.volume[:0], h.level[:0]
	for i := range heightRows + 1 {
		z := low + (high-low)*math.Pow(float64(i)/heightRows, 1.5) // closer together at the floor, where she is narrow
		v := space.Capacity()
		if i < heightRows {
			v = max(space.Fill(hullform.Plane{Normal: up, Offset: z}).Volume, 0)
		}
		if n := len(h.volume); n > 0 && v <= h.volume[n-1] { // under the lowest corner, or over the highest, nothing more goes in
			if v <= 0 {
				h.level[n-1] = z - middle
			}
			continue
		}
		h.volume, h.level = append(h.volume, v), append(h.level, z-middle)
	}
	return h
}

// at is the level of a volume, by the straight line between two rows.
func (h *heights) at(v float64) float64 {
	i := min(max(sort.SearchFloat64s(h.volume, v), 1), len(h.volume)-1)
	a, b := h.volume[i-1], h.volume[i]
	return h.level[i-1] + (h.level[i]-h.level[i-1])*(v-a)/(b-a)
}
