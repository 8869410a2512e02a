package hullform

import (
	"errors"
	"fmt"
	"math"
)

// Repair makes a closed mesh, the right way out, of what was drawn: joins corners that lie within two millionths of the ship's size, drops doubled
// facets, turns facets alike, mirrors a half hull, leaves out inner skins and closes openings with flat lids. It reports what it did, and what it only
// suspects: units, axes, upside down, facets that cross. What can't be a hull is an error.
func Repair(m Mesh) (Mesh, Report, error) {
	var r Report
	if err := m.valid(); err != nil {
		return Mesh{}, r, err
	}
	m = weld(m, 2e-6*m.Bounds().Size().Length())
	m = r.dropped(m)
	if len(m.Triangles) == 0 {
		return Mesh{}, r, errors.New("triangles: none with an area")
	}
	m = r.mirrored(m)
	m, bodies, err := r.turned(m)
	if err != nil {
		return Mesh{}, r, err
	}
	r.Area = m.Area()
	m, bodies, err = r.lidded(m, bodies)
	if err != nil {
		return Mesh{}, r, err
	}
	m, err = r.outward(m, bodies)
	if err != nil {
		return Mesh{}, r, err
	}
	r.Volume = m.Volume()
	r.suspect(m)
	return m, r, nil
}

// valid tells whether triangles refer to vertices that are numbers.
func (m Mesh) valid() error {
	if len(m.Triangles) == 0 {
		return errors.New("triangles: none given")
	}
	if len(m.Triangles) > math.MaxInt32/4 {
		return fmt.Errorf("triangles: %d given, more than this program can hold", len(m.Triangles))
	}
	for i, v := range m.Vertices {
		if !v.finite() || math.Abs(v.X) > 1e12 || math.Abs(v.Y) > 1e12 || math.Abs(v.Z) > 1e12 {
			return fmt.Errorf("vertices: number %d is (%g, %g, %g)", i, v.X, v.Y, v.Z)
		}
	}
	for i, t := range m.Triangles {
		for _, v := range t {
			if v < 0 || v >= len(m.Vertices) {
				return fmt.Errorf("triangles: number %d refers to vertex %d of %d", i, v, len(m.Vertices))
			}
		}
	}
	return nil
}

// dropped leaves out facets whose corners have become one and facets given twice.
func (r *Report) dropped(m Mesh) Mesh {
	seen := make(map[[3]int]bool, len(m.Triangles))
	var kept [][3]int
	doubled, flat := 0, 0
	var at, flatAt Point
	for _, t := range m.Triangles {
		if t[0] == t[1] || t[1] == t[2] || t[2] == t[0] {
			flat, flatAt = flat+1, m.Vertices[t[0]]
			continue
		}
		k := sorted(t)
		if seen[k] {
			doubled, at = doubled+1, m.Vertices[t[0]]
			continue
		}
		seen[k] = true
		kept = append(kept, t)
	}
	if doubled > 0 {
		r.find(Duplicate, doubled, at, "%d facets are given twice: one of each was kept", doubled)
	}
	if flat > 0 {
		r.find(Degenerate, flat, flatAt, "%d facets have no area: left out", flat)
	}
	return Mesh{m.Vertices, kept}
}

func sorted(t [3]int) [3]int {
	a, b, c := t[0], t[1], t[2]
	if a > b {
		a, b = b, a
	}
	if b > c {
		b, c = c, b
	}
	if a > b {
		a, b = b, a
	}
	return [3]int{a, b, c}
}

// mirrored adds the other side of a hull drawn to the centreline only.
func (r *Report) mirrored(m Mesh) Mesh {
	b := m.Bounds()
	wide := b.Size().Y
	near := 1e-6 * b.Size().Length()
	port, star := math.Abs(b.Low.Y) < near, math.Abs(b.High.Y) < near
	if wide < 10*near || !port && !star {
		return m
	}
	onCentre, open := 0, 0
	for e, n := range m.edges() {
		if n.count == 1 {
			open++
			if math.Abs(m.Vertices[e[0]].Y) < near && math.Abs(m.Vertices[e[1]].Y) < near {
				onCentre++
			}
		}
	}
	if onCentre < 2 {
		return m
	}
	r.find(OneSide, onCentre, Point{b.centre().X, 0, b.Low.Z}, "only the %s half is drawn, open at the centreline: mirrored",
		map[bool]string{true: "port", false: "starboard"}[port])
	flat := m.Mapped(func(p Point) Point {
		if math.Abs(p.Y) < near {
			p.Y = 0
		}
		return p
	})
	return weld(flat.BothSides(), 0)
}
