package seawater

import "math"

// StandardConductivity is C(35, 15, 0) in S/m: water of salinity 35 at 15 degC on IPTS-68 and one atmosphere, which PSS-78 leaves open and
// practice takes as 4.2914 (Culkin and Smith 1980).
const StandardConductivity = 4.2914

// The coefficients of PSS-78, temperature in degC on IPTS-68, pressure in dbar (UNESCO 44, eq. 1 to 4).
var (
	pssA  = []float64{0.0080, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081}
	pssB  = []float64{0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144}
	pssK  = 0.0162
	pssC  = []float64{0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9}
	pssE  = []float64{0, 2.070e-5, -6.370e-10, 3.989e-15}
	pssD  = []float64{1, 3.426e-2, 4.464e-4}
	pssDR = []float64{4.215e-1, -3.107e-3}
)

// pressureFactor is Rp: what pressure does to the conductivity ratio r.
func pressureFactor(r, t68, dbar float64) float64 {
	return 1 + poly(dbar, pssE...)/(poly(t68, pssD...)+poly(t68, pssDR...)*r)
}

// PracticalSalinity is salinity on PSS-78 of water whose conductivity is r times that of the standard; t68 in degC on IPTS-68, dbar of pressure
// over one atmosphere. It holds for salinity 2 to 42 and t68 -2 to 35. Source: UNESCO 44, eq. 1 to 4.
func PracticalSalinity(r, t68, dbar float64) float64 {
	x := math.Sqrt(r / (pressureFactor(r, t68, dbar) * poly(t68, pssC...)))
	d := t68 - 15
	return poly(x, pssA...) + d/(1+pssK*d)*poly(x, pssB...)
}

// ConductivityRatio is the ratio that gives salinity s: the inverse of PracticalSalinity, by halving the bracket to the last bit.
func ConductivityRatio(s, t68, dbar float64) float64 {
	lo, hi := 0.0, 4.0
	for range 70 {
		mid := (lo + hi) / 2
		if PracticalSalinity(mid, t68, dbar) < s {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
