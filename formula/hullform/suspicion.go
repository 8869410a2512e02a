package hullform

import "math"

// suspect reports what makes a mesh look as if it were drawn in other units, other axes or the wrong way up. The limits are our own judgement.
func (r *Report) suspect(m Mesh) {
	b := m.Bounds()
	s, mid := b.Size(), b.centre()
	largest := max(s.X, s.Y, s.Z)
	switch {
	case largest > 600: // no ship has been longer than 458.45 m
		r.find(Unit, 1, b.High, "the hull measures %.0f m: is it drawn in millimetres or feet?", largest)
	case largest < 2:
		r.find(Unit, 1, b.High, "the hull measures %.3g m: is it a model, or drawn in another unit?", largest)
	}
	if s.X < max(s.Y, s.Z) {
		r.find(Axes, 1, mid, "the hull is longest across (x %.2f m, y %.2f m, z %.2f m): x must run forward, y to port, z up", s.X, s.Y, s.Z)
	}
	if math.Abs(mid.Y) > 0.02*s.Y {
		r.find(Axes, 1, mid, "the hull lies %.2f m off the centre plane y = 0", mid.Y)
	}
	if c := centroid(m); (c.Z-b.Low.Z)/s.Z < 0.42 {
		r.find(UpsideDown, 1, c, "the hull is fuller below than above (centre of volume at %.0f %% of its height): is it upside down?",
			100*(c.Z-b.Low.Z)/s.Z)
	}
	if n := len(m.Triangles); n < 200 {
		r.find(Coarse, n, mid, "the hull is %d facets: good for a box, coarse for a ship", n)
	}
	if n, at := crossings(m); n > 0 {
		r.find(Crossing, n, at, "%d pairs of facets run through each other: the part inside both counts twice", n)
	}
}

// centroid is the centre of the volume.
func centroid(m Mesh) Point {
	b := m.Bounds()
	o := b.centre()
	volume, sum := 0.0, Point{}
	for i := range m.Triangles {
		p, q, s := m.Corners(i)
		p, q, s = p.Minus(o), q.Minus(o), s.Minus(o)
		v := p.Dot(q.Cross(s)) / 6
		volume += v
		sum = sum.Plus(p.Plus(q).Plus(s).Times(v / 4))
	}
	return o.Plus(sum.Times(1 / volume))
}
