package hullform

// frame is a plane with its axes, as a tree sees it: offset from the tree's own middle.
type frame struct {
	up, forward, port Point
	offset            float64
}

// sums are integrals over wet skin of 1, u, v, h and their products, times the upward part of the outward normal; and the wet area.
type sums struct {
	one, u, v, h           float64
	uu, vv, uv, uh, vh, hh float64
	area                   float64
}

// plus adds k times o: k = -1 takes a flooded space away.
func (s *sums) plus(o *sums, k float64) {
	s.one += k * o.one
	s.u += k * o.u
	s.v += k * o.v
	s.h += k * o.h
	s.uu += k * o.uu
	s.vv += k * o.vv
	s.uv += k * o.uv
	s.uh += k * o.uh
	s.vh += k * o.vh
	s.hh += k * o.hh
}

// moved measures u and v from another origin: u + du, v + dv.
func (s sums) moved(du, dv float64) sums {
	s.uu += 2*du*s.u + du*du*s.one
	s.vv += 2*dv*s.v + dv*dv*s.one
	s.uv += du*s.v + dv*s.u + du*dv*s.one
	s.uh += du * s.h
	s.vh += dv * s.h
	s.u += du * s.one
	s.v += dv * s.one
	return s
}

// corner is a vertex in the frame of a plane.
type corner struct{ u, v, h float64 }

// towards is the point a share t of the way from a to b, which lies in the plane.
func (a corner) towards(b corner, t float64) corner {
	return corner{a.u + t*(b.u-a.u), a.v + t*(b.v-a.v), 0}
}

// add puts in one flat triangle, whole.
func (s *sums) add(a, b, c corner) {
	n := (b.u-a.u)*(c.v-a.v) - (c.u-a.u)*(b.v-a.v) // twice the area as seen from above, signed
	su, sv, sh := a.u+b.u+c.u, a.v+b.v+c.v, a.h+b.h+c.h
	s.one += n / 2
	n /= 6
	s.u += n * su
	s.v += n * sv
	s.h += n * sh
	n /= 4
	s.uu += n * (su*su + a.u*a.u + b.u*b.u + c.u*c.u)
	s.vv += n * (sv*sv + a.v*a.v + b.v*b.v + c.v*c.v)
	s.uv += n * (su*sv + a.u*a.v + b.u*b.v + c.u*c.v)
	s.uh += n * (su*sh + a.u*a.h + b.u*b.h + c.u*c.h)
	s.vh += n * (sv*sh + a.v*a.h + b.v*b.h + c.v*c.h)
	s.hh += n * (sh*sh + a.h*a.h + b.h*b.h + c.h*c.h)
}

// addWet puts in the part of a triangle under the plane. A corner in the plane counts as wet.
func (s *sums) addWet(a, b, c corner, area float64) {
	wet := 0
	if a.h <= 0 {
		wet |= 1
	}
	if b.h <= 0 {
		wet |= 2
	}
	if c.h <= 0 {
		wet |= 4
	}
	switch wet {
	case 0:
	case 1:
		s.addTip(a, b, c, area)
	case 2:
		s.addTip(b, c, a, area)
	case 4:
		s.addTip(c, a, b, area)
	case 3:
		s.addBase(a, b, c, area)
	case 6:
		s.addBase(b, c, a, area)
	case 5:
		s.addBase(c, a, b, area)
	case 7:
		s.add(a, b, c)
		s.area += area
	}
}

// addTip puts in a triangle of which only a is wet.
func (s *sums) addTip(a, b, c corner, area float64) {
	tb, tc := a.h/(a.h-b.h), a.h/(a.h-c.h)
	s.add(a, a.towards(b, tb), a.towards(c, tc))
	s.area += area * tb * tc
}

// addBase puts in a triangle of which only c is dry.
func (s *sums) addBase(a, b, c corner, area float64) {
	ta, tb := a.h/(a.h-c.h), b.h/(b.h-c.h)
	pa, pb := a.towards(c, ta), b.towards(c, tb)
	s.add(a, b, pb)
	s.add(a, pb, pa)
	s.area += area * (1 - (1-ta)*(1-tb))
}
