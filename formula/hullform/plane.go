package hullform

import "math"

// Plane is a flat surface of water: points with Normal·p below Offset are under it. Normal has length one and points up, out of the water.
type Plane struct {
	Normal Point
	Offset float64 // m
}

// Level is the plane at height z, upright and on an even keel.
func Level(z float64) Plane { return Plane{Point{0, 0, 1}, z} }

// Height is how far p stands above the plane, m; negative under it.
func (p Plane) Height(q Point) float64 { return p.Normal.Dot(q) - p.Offset }

// Attitude says how a ship lies in the water.
type Attitude struct {
	Draft float64 // m, amidships on the centreline, along the ship's own z
	Trim  float64 // m over the length between perpendiculars, + by the stern
	Heel  float64 // rad, + to port
}

// normal is the upward direction at a trim angle (rad, + by the stern) and heel (rad, + to port).
func normal(trim, heel float64) Point {
	st, ct := math.Sincos(trim)
	sh, ch := math.Sincos(heel)
	return Point{st, -ct * sh, ct * ch}
}

// Plane is the water surface at an attitude of a ship of the given length (m).
func (a Attitude) Plane(length float64) Plane {
	n := normal(math.Atan(a.Trim*math.Cos(a.Heel)/length), a.Heel)
	return Plane{n, n.Dot(Point{length / 2, 0, a.Draft})}
}

// Attitude is the inverse of [Attitude.Plane]. On her beam ends (heel 90 degrees) a draft has no meaning: it is then infinite.
func (p Plane) Attitude(length float64) Attitude {
	n := p.Normal
	return Attitude{
		Draft: (p.Offset - n.X*length/2) / n.Z,
		Trim:  length * n.X / n.Z,
		Heel:  math.Atan2(-n.Y, n.Z),
	}
}

// TrimAngle is the slope of the ship's x axis, rad, + by the stern.
func (p Plane) TrimAngle() float64 { return math.Asin(max(-1, min(1, p.Normal.X))) }

// axes are two directions in the plane: forward (the ship's x laid on the plane) and, square to it, to port.
func (p Plane) axes() (forward, port Point) {
	n := p.Normal
	forward = Point{1, 0, 0}.Minus(n.Times(n.X))
	if forward.Length() < 1e-9 { // standing on end
		forward = Point{0, 0, -math.Copysign(1, n.X)}
	}
	forward = forward.unit()
	return forward, n.Cross(forward)
}
