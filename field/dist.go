package field

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Dist is how uncertain a value is, in base units: a normal law where SD is above zero, else a triangle from Low over Likely to High.
type Dist struct {
	Mean, SD          float64
	Low, Likely, High float64
}

// At returns the value that a share u of the distribution lies below.
func (d Dist) At(u float64) float64 {
	if d.SD > 0 {
		return distuv.Normal{Mu: d.Mean, Sigma: d.SD}.Quantile(u)
	}
	width := d.High - d.Low
	if width == 0 {
		return d.Likely
	}
	if u < (d.Likely-d.Low)/width {
		return d.Low + math.Sqrt(u*width*(d.Likely-d.Low))
	}
	return d.High - math.Sqrt((1-u)*width*(d.High-d.Likely))
}

// Centre returns the value taken when no spread is asked for: the mean, or the likely one.
func (d Dist) Centre() float64 {
	if d.SD > 0 {
		return d.Mean
	}
	return d.Likely
}
