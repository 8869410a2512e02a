package hullform

import (
	"fmt"
	"math"
	"sort"
)

// AtGirth is the place a girth (m) up from the keel.
func (r *Rib) AtGirth(girth float64) (Place, error) {
	if !(girth >= 0 && girth <= r.Total()*(1+1e-9)) {
		return Place{}, fmt.Errorf("girth: %.3f m, at x %.3f m the shell measures %.3f m from keel to deck edge", girth, r.X, r.Total())
	}
	i := max(1, min(len(r.Girth)-1, sort.SearchFloat64s(r.Girth, girth)))
	return r.on(i, (girth-r.Girth[i-1])/(r.Girth[i]-r.Girth[i-1])), nil
}

// on is the place a share t along the piece that ends at point i.
func (r *Rib) on(i int, t float64) Place {
	if !finite(t) {
		t = 0
	}
	t = max(0, min(1, t))
	return Place{
		At:     mix(r.Points[i-1], r.Points[i], t),
		Normal: r.normals[i],
		Girth:  r.Girth[i-1] + t*(r.Girth[i]-r.Girth[i-1]),
	}
}

// AtHeight is the outermost place at height z (m above the baseline).
func (r *Rib) AtHeight(z float64) (Place, error) {
	best, found := Place{}, false
	low, high := math.Inf(1), math.Inf(-1)
	for i := 1; i < len(r.Points); i++ {
		a, b := r.Points[i-1], r.Points[i]
		low, high = min(low, a.Z, b.Z), max(high, a.Z, b.Z)
		if z < min(a.Z, b.Z) || z > max(a.Z, b.Z) {
			continue
		}
		t := (z - a.Z) / (b.Z - a.Z)
		if a.Z == b.Z && math.Abs(b.Y) > math.Abs(a.Y) {
			t = 1
		}
		if p := r.on(i, t); !found || math.Abs(p.At.Y) > math.Abs(best.At.Y) {
			best, found = p, true
		}
	}
	if !found {
		return Place{}, fmt.Errorf("z: %.3f m, at x %.3f m the shell runs from %.3f to %.3f m", z, r.X, low, high)
	}
	return best, nil
}

// Nearest is the place on the rib nearest to a point.
func (r *Rib) Nearest(p Point) Place {
	best, least := Place{}, math.Inf(1)
	for i := 1; i < len(r.Points); i++ {
		d := r.Points[i].Minus(r.Points[i-1])
		at := r.on(i, p.Minus(r.Points[i-1]).Dot(d)/d.Dot(d))
		if away := at.At.Minus(p).Length(); away < least {
			best, least = at, away
		}
	}
	return best
}

// PointAt is the place at x a girth (m) up from the keel on one side.
func (h *Hull) PointAt(x, girth float64, side Side) (Place, error) {
	r, err := h.Rib(x, side)
	if err != nil {
		return Place{}, err
	}
	return r.AtGirth(girth)
}

// PointAtHeight is the outermost place at x and height z on one side.
func (h *Hull) PointAtHeight(x, z float64, side Side) (Place, error) {
	r, err := h.Rib(x, side)
	if err != nil {
		return Place{}, err
	}
	return r.AtHeight(z)
}

// HalfBreadth is how far the shell lies off the centre plane at x and height z on one side, m.
func (h *Hull) HalfBreadth(x, z float64, side Side) (float64, error) {
	p, err := h.PointAtHeight(x, z, side)
	return math.Abs(p.At.Y), err
}

// Girth is the length of the shell at x from keel to deck edge on one side, m.
func (h *Hull) Girth(x float64, side Side) (float64, error) {
	r, err := h.Rib(x, side)
	if err != nil {
		return 0, err
	}
	return r.Total(), nil
}

// OnShell is the place on the shell nearest to a point, in the section through it, on its own side (port when it lies on the centreline).
func (h *Hull) OnShell(p Point) (Place, Side, error) {
	side := Port
	if p.Y < 0 {
		side = Starboard
	}
	r, err := h.Rib(p.X, side)
	if err != nil {
		return Place{}, side, err
	}
	return r.Nearest(p), side, nil
}
