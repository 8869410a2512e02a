package hullform

import (
	"fmt"
	"math"
)

// Point is a place or a direction in the ship's axes, m.
type Point struct{ X, Y, Z float64 }

// Plus is p + q.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Minus is p - q.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Times is p scaled by k.
func (p Point) Times(k float64) Point { return Point{k * p.X, k * p.Y, k * p.Z} }

// Dot is the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// Cross is the vector product.
func (p Point) Cross(q Point) Point {
	return Point{p.Y*q.Z - p.Z*q.Y, p.Z*q.X - p.X*q.Z, p.X*q.Y - p.Y*q.X}
}

// Length is the distance from the origin, m.
func (p Point) Length() float64 { return math.Sqrt(p.Dot(p)) }

// unit is p at length one; the zero vector stays as it is.
func (p Point) unit() Point {
	if l := p.Length(); l > 0 {
		return p.Times(1 / l)
	}
	return p
}

// along is the axis value: 0 is x, 1 is y, 2 is z.
func (p Point) along(axis int) float64 {
	switch axis {
	case 0:
		return p.X
	case 1:
		return p.Y
	}
	return p.Z
}

func (p Point) finite() bool { return finite(p.X) && finite(p.Y) && finite(p.Z) }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// mix is the point a share t of the way from p to q.
func mix(p, q Point, t float64) Point {
	return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y), p.Z + t*(q.Z-p.Z)}
}

// Box is a box along the axes, m.
type Box struct{ Low, High Point }

func emptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf, inf}, Point{-inf, -inf, -inf}}
}

func (b *Box) add(p Point) {
	b.Low = Point{min(b.Low.X, p.X), min(b.Low.Y, p.Y), min(b.Low.Z, p.Z)}
	b.High = Point{max(b.High.X, p.X), max(b.High.Y, p.Y), max(b.High.Z, p.Z)}
}

// Size is the box's extent along each axis, m.
func (b Box) Size() Point { return b.High.Minus(b.Low) }

func (b Box) centre() Point { return mix(b.Low, b.High, 0.5) }

func (b Box) meets(o Box) bool {
	return b.Low.X <= o.High.X && o.Low.X <= b.High.X && b.Low.Y <= o.High.Y && o.Low.Y <= b.High.Y &&
		b.Low.Z <= o.High.Z && o.Low.Z <= b.High.Z
}

// String is the place to three decimals, for messages.
func (p Point) String() string { return fmt.Sprintf("x %.3f m, y %.3f m, z %.3f m", p.X, p.Y, p.Z) }
