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

// At gives the amount below which a share u lies.
func (s Spread) At(u float64) float64 {
	width := s.High - s.Low
	if width <= 0 {
		return s.Likely
	}
	if u*width < s.Likely-s.Low {
		return s.Low + math.Sqrt(u*width*(s.Likely-s.Low))
	}
	return s.High - math.Sqrt((1-u)*width*(s.High-s.Likely))
}

// Mean is the mean of the triangle.
func (s Spread) Mean() float64 { return (s.Low + s.Likely + s.High) / 3 }

// normal is the standard normal quantile by the rational approximation of Acklam (2003), relative error below 1.2e-9, ample for a draw.
func normal(u float64) float64 {
	switch {
	case u < 0.02425:
		q := math.Sqrt(-2 * math.Log(u))
		return tail(q)
	case u > 1-0.02425:
		q := math.Sqrt(-2 * math.Log(1-u))
		return -tail(q)
	}
	q := u - 0.5
	r := q * q
	return (((((-3.969683028665376e+01*r+2.209460984245205e+02)*r-2.759285104469687e+02)*r+1.383577518672690e+02)*r-3.066479806614716e+01)*r + 2.506628277459239e+00) * q /
		(((((-5.447609879822406e+01*r+1.615858368580409e+02)*r-1.556989798598866e+02)*r+6.680131188771972e+01)*r-1.328068155288572e+01)*r + 1)
}

func tail(q float64) float64 {
	return (((((-7.784894002430293e-03*q-3.223964580411365e-01)*q-2.400758277161838e+00)*q-2.549732539343734e+00)*q+4.374664141464968e+00)*q + 2.938163982698783e+00) /
		((((7.784695709041462e-03*q+3.224671290700398e-01)*q+2.445134137142996e+00)*q+3.754408661907416e+00)*q + 1)
}
