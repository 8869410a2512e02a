package hullform

import "math"

// balance is a condition under one plane of water: what carries her, what weighs, and how stiffly the two pull together.
type balance struct {
	cut      Cut
	forward  Point // the plane's axes
	port     Point
	centre   Point   // of all weight
	weight   float64 // kg
	wanted   float64 // m3, weight over density
	pitch    float64 // m4, moment of volume about the centre of weight, forward
	roll     float64 // m4, to port, free surfaces given as a moment taken off
	uu, vv   float64 // m4, stiffness to a tilt of the surface about the flotation: rising forward, rising to port
	uv       float64
	su, sv   float64 // m3, first moments of the waterplane about the centre of weight
	freeRoll float64 // m4, the given free-surface moment over density
}

// weigh puts a condition under a plane.
func (h *Hull) weigh(c *Condition, p Plane) balance {
	wet := h.wet(p)
	for _, s := range c.Open {
		s.loseTo(&wet, p)
	}
	b := balance{cut: wet.cut(p), weight: c.Mass}
	b.forward, b.port = p.axes()
	moment := c.Centre().Times(c.Mass)
	for i := range c.Closed {
		t := c.Closed[i].lie(p)
		b.weight += t.mass
		moment = moment.Plus(t.centre.Times(t.mass))
		k := c.Closed[i].Density / c.Density
		b.uu -= k * t.uu
		b.vv -= k * t.vv
		b.uv -= k * t.uv
	}
	b.centre = moment.Times(1 / b.weight)
	b.wanted = b.weight / c.Density
	b.freeRoll = c.FreeSurface / c.Density
	b.settle()
	return b
}

// settle works out moments and stiffness. Tilting the surface by a small angle about its own centroid moves a wedge of volume (second moment of the
// waterplane) and lifts the centre of buoyancy against that of weight.
func (b *balance) settle() {
	n := b.cut.Plane.Normal
	lever := b.cut.Centre.Minus(b.centre)
	if b.cut.Volume == 0 {
		lever = Point{}
	}
	b.pitch = b.cut.Volume * lever.Dot(b.forward)
	b.roll = b.cut.Volume*lever.Dot(b.port) - b.freeRoll*b.port.Z
	rise := b.cut.Volume * lever.Dot(n)
	b.uu += b.cut.Longitudinal + rise
	b.vv += b.cut.Transverse + rise - b.freeRoll*n.Z
	b.uv += b.cut.Product
	arm := b.cut.Flotation.Minus(b.centre)
	b.su, b.sv = b.cut.Waterplane*arm.Dot(b.forward), b.cut.Waterplane*arm.Dot(b.port)
}

// gm is the height of the transverse metacentre above the centre of weight, free surfaces in, m.
func (b *balance) gm() float64 { return b.vv / b.cut.Volume }

// gml is the same lengthwise, m.
func (b *balance) gml() float64 { return b.uu / b.cut.Volume }

// lever is GZ, m: positive when it turns a heel to port back.
func (b *balance) lever() float64 { return b.roll / b.wanted }

// shift is a move of the water surface: up by rise at the centre of weight, and tilted (rad) up towards the bow and up to port.
type shift struct{ rise, ahead, aport float64 }

// reach is the most that a shift moves the surface within the hull, m.
func (s shift) reach(size Point) float64 {
	return math.Abs(s.rise) + math.Abs(s.ahead)*size.X/2 + math.Abs(s.aport)*max(size.Y, size.Z)/2
}

// moved is the plane after a shift.
func (b *balance) moved(s shift) Plane {
	n := b.cut.Plane.Normal
	foot := b.centre.Minus(n.Times(b.cut.Plane.Height(b.centre)))
	m := n.Minus(b.forward.Times(s.ahead)).Minus(b.port.Times(s.aport)).unit()
	return Plane{m, m.Dot(foot.Plus(n.Times(s.rise)))}
}

// rise is the lift of the surface that puts the volume right when it is tilted by ahead and aport.
func (b *balance) rise(ahead, aport float64) float64 {
	return (b.wanted - b.cut.Volume - b.su*ahead - b.sv*aport) / b.cut.Waterplane
}

// step is Newton's step, taken downhill in energy: a direction in which she has no stiffness of her own is followed away from the crest, not to it.
func (b *balance) step() (s shift, least float64) {
	lack := b.rise(0, 0)
	gu, gv := b.pitch+b.su*lack, b.roll+b.sv*lack
	mean, diff := (b.uu+b.vv)/2, (b.uu-b.vv)/2
	r := math.Hypot(diff, b.uv)
	most, least := mean+r, mean-r
	c, sn := axis(diff, b.uv)
	floor := 1e-9 * max(math.Abs(most), math.Abs(least))
	pm := -(c*gu + sn*gv) / max(math.Abs(most), floor)
	pl := -(-sn*gu + c*gv) / max(math.Abs(least), floor)
	s.ahead, s.aport = c*pm-sn*pl, sn*pm+c*pl
	s.rise = b.rise(s.ahead, s.aport)
	return s, least
}

// still tells whether nothing is left to move her: the volume right to a layer of exact, the levers within a hundred-billionth of her breadth. A body
// with no stiffness in some direction (a log) comes to rest by this alone.
func (b *balance) still(size Point) bool {
	lever := 1e-11 * size.Y * b.cut.Volume
	return math.Abs(b.rise(0, 0)) < exact && math.Abs(b.pitch) < lever && math.Abs(b.roll) < lever
}

// axis is the direction of the greater stiffness as cosine and sine.
func axis(diff, uv float64) (c, s float64) {
	angle := 0.5 * math.Atan2(uv, diff)
	s, c = math.Sincos(angle)
	return c, s
}

// weakest is a tilt of one unit in the direction of least stiffness, to port where that is open.
func (b *balance) weakest() shift {
	c, s := axis((b.uu-b.vv)/2, b.uv)
	w := shift{ahead: -s, aport: c}
	if w.aport < 0 {
		w.ahead, w.aport = -w.ahead, -w.aport
	}
	return w
}
