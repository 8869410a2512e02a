package hullform

// Cut is what a plane of water finds of a body: the part under it and the section in it. Directions along and across lie in the plane: forward
// (the ship's x laid on it) and, square to that, to port.
type Cut struct {
	Plane  Plane
	Volume float64 // m3, under the plane
	Centre Point   // m, of that volume

	Waterplane   float64 // m2
	Flotation    Point   // m, centroid of the waterplane
	Transverse   float64 // m4, second moment of the waterplane about the fore and aft axis through its centroid
	Longitudinal float64 // m4, about the athwartships axis through its centroid
	Product      float64 // m4, product of inertia about the same axes

	Wetted float64 // m2, skin under the plane
}

// Cut is the hull, with its appendages, under a plane of water.
func (h *Hull) Cut(p Plane) Cut {
	s := h.wet(p)
	return s.cut(p)
}

func (h *Hull) wet(p Plane) sums {
	s := h.tree.wet(p)
	for i := range h.appendages {
		h.appendages[i].add(&s, p)
	}
	return s
}

// cut reads the integrals as volume and waterplane: the skin's upward normals and those of the water's surface add up to nothing.
func (s *sums) cut(p Plane) Cut {
	forward, port := p.axes()
	at := func(u, v, h float64) Point {
		return forward.Times(u).Plus(port.Times(v)).Plus(p.Normal.Times(h + p.Offset))
	}
	c := Cut{Plane: p, Volume: s.h, Waterplane: -s.one, Wetted: s.area}
	if c.Volume != 0 {
		c.Centre = at(s.uh/s.h, s.vh/s.h, s.hh/(2*s.h))
	}
	if c.Waterplane != 0 {
		u, v := s.u/s.one, s.v/s.one
		c.Flotation = at(u, v, 0)
		c.Transverse = -s.vv + v*s.v
		c.Longitudinal = -s.uu + u*s.u
		c.Product = -s.uv + u*s.v
	}
	return c
}
