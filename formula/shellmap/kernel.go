package shellmap

import "math"

// Kernel says how readings belong together: the field's standard deviation, its ranges along and across (m), and the nugget, the standard
// deviation of what varies from one spot to the next and no neighbour can tell.
type Kernel struct{ SD, RangeX, RangeY, Nugget float64 }

// Distance between two places in ranges.
func (k Kernel) Distance(dx, dy float64) float64 {
	dx, dy = dx/k.RangeX, dy/k.RangeY
	return math.Sqrt(dx*dx + dy*dy)
}

// Cov is the covariance of the smooth part at two places so far apart: sd^2 (1 + sqrt3 d) exp(-sqrt3 d), Matern's with smoothness 3/2.
func (k Kernel) Cov(dx, dy float64) float64 {
	r := math.Sqrt(3) * k.Distance(dx, dy)
	return k.SD * k.SD * (1 + r) * math.Exp(-r)
}

// Reading is one reading: place (m), value, and the standard deviation of the instrument in the value's unit.
type Reading struct{ X, Y, Value, SD float64 }

// noise is the variance of a reading about the smooth part. A trace of the field's own keeps two readings of one spot apart.
func (k Kernel) noise(sd float64) float64 { return sd*sd + k.Nugget*k.Nugget + 1e-10*k.SD*k.SD }
