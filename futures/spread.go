package futures

import "math"

// Spread is an uncertain amount: a triangle from Low over Likely to High; all equal is certain.
type Spread struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Certain is a spread of no width.
func Certain(x float64) Spread { return Spread{x, x, x} }

// Mean is the mean of the triangle.
func (s Spread) Mean() float64 { return (s.Low + s.Likely + s.High) / 3 }

// triangle is a spread made ready for drawing without a branch: from the end on the draw's side of the likely amount, in by a root.
type triangle struct {
	knee      float64    // share below the likely amount
	end, root [2]float64 // on the low side, on the high
}

func (s Spread) ready() triangle {
	width := s.High - s.Low
	if width <= 0 {
		return triangle{0.5, [2]float64{s.Likely, s.Likely}, [2]float64{}}
	}
	return triangle{(s.Likely - s.Low) / width, [2]float64{s.Low, s.High}, [2]float64{math.Sqrt(width * (s.Likely - s.Low)), -math.Sqrt(width * (s.High - s.Likely))}}
}

// at gives the amount below which a share u lies.
func (t *triangle) at(u float64) float64 {
	side := 0
	if u >= t.knee {
		side = 1
	}
	return t.end[side] + t.root[side]*math.Sqrt(math.Abs(u-float64(side)))
}
