package docking

import "math"

// Trapezoid is the load of an even line of rigid blocks under a rigid ship, kg/m at its ends.
type Trapezoid struct {
	Aft     float64 `key:"aft" unit:"t/m" symbol:"aft" label:"at the after end"`
	Fwd     float64 `key:"fwd" unit:"t/m" symbol:"fwd" label:"at the fore end"`
	Contact float64 `key:"contact" unit:"m" symbol:"c" label:"length that carries"`
}

// trapezoid spreads mass w (kg) over a line of length l (m) with its centre of gravity e (m) forward of the middle: (W/L)(1 +- 6e/L), and beyond a
// sixth of the length a triangle over 3 (L/2 - e), for blocks can't pull. Beyond half the length nothing holds her.
func trapezoid(w, l, e float64) Trapezoid {
	k := 6 * e / l
	switch {
	case math.Abs(k) <= 1:
		return Trapezoid{w / l * (1 - k), w / l * (1 + k), l}
	case math.Abs(e) >= l/2:
		return Trapezoid{}
	}
	c := 3 * (l/2 - math.Abs(e))
	if e > 0 {
		return Trapezoid{0, 2 * w / c, c}
	}
	return Trapezoid{2 * w / c, 0, c}
}
