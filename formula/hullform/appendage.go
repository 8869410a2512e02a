package hullform

import "math"

// Appendage is something outside the mesh that displaces water (a rudder, bossings, a bilge keel) or, with a negative volume, lets it in (a sea
// chest, a thruster tunnel).
type Appendage struct {
	Name   string
	Volume float64 // m3
	Centre Point   // m
	Area   float64 // m2, wetted skin it adds
}

// add puts in the wet part. Where the surface cuts an appendage it counts as a ball of its volume: nothing jumps as it comes out of the water.
func (a *Appendage) add(s *sums, p Plane) {
	forward, port := p.axes()
	part := ball(a.Volume, p.Height(a.Centre))
	u, v := forward.Dot(a.Centre), port.Dot(a.Centre)
	one := sums{one: -part.section, h: part.volume, hh: 2 * part.volume * part.height,
		uu: -part.spread, vv: -part.spread, area: a.Area * part.share}
	one = one.moved(u, v)
	s.plus(&one, 1)
	s.area += one.area
}

// wetBall is a ball cut by a plane.
type wetBall struct {
	volume, section, spread float64 // m3 under the plane, m2 in it, m4 its second moment about a diameter
	height, share           float64 // m, centre of the wet volume above the plane; wet share of the skin
}

// ball is a ball of a volume (m3) whose centre stands at height h (m) above the plane. A negative volume gives negative results.
func ball(volume, h float64) wetBall {
	r := math.Cbrt(3 * math.Abs(volume) / (4 * math.Pi))
	switch {
	case r == 0 || h >= r:
		return wetBall{}
	case h <= -r:
		return wetBall{volume: volume, height: h, share: 1}
	}
	k, sign := r-h, math.Copysign(1, volume) // k: depth of the cap under the plane
	v := math.Pi * k * k * (3*r - k) / 3
	q := r*r - h*h
	return wetBall{
		volume: sign * v, section: sign * math.Pi * q, spread: sign * math.Pi * q * q / 4,
		height: h - 3*(2*r-k)*(2*r-k)/(4*(3*r-k)), share: k / (2 * r),
	}
}
