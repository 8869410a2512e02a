package seawater

import "math"

// The coefficients of EOS-80, over temperature t68 in degC on the scale IPTS-68 (UNESCO Technical Papers in Marine Science 44, 1983, eq. 13 to
// 19). Densities in kg/m3, bulk moduli in bar.
var (
	eosRhoW = []float64{999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9}
	eosRhoA = []float64{8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9}
	eosRhoB = []float64{-5.72466e-3, 1.0227e-4, -1.6546e-6}
	eosRhoC = 4.8314e-4

	eosKW = []float64{19652.21, 148.4206, -2.327105, 1.360477e-2, -5.155288e-5}
	eosKA = []float64{54.6746, -0.603459, 1.09987e-2, -6.1670e-5}
	eosKB = []float64{7.944e-2, 1.6483e-2, -5.3009e-4}
	eosAW = []float64{3.239908, 1.43713e-3, 1.16092e-4, -5.77905e-7}
	eosAA = []float64{2.2838e-3, -1.0981e-5, -1.6078e-6}
	eosAB = 1.91075e-4
	eosBW = []float64{8.50935e-5, -6.12293e-6, 5.2787e-8}
	eosBA = []float64{-9.9348e-7, 2.0816e-8, 9.1697e-10}
)

// RhoSurface is the density of sea water at one atmosphere, kg/m3: salinity s on PSS-78, temperature t68 in degC on IPTS-68. It holds for s 0 to
// 42 and t68 -2 to 40, to 0.0036 kg/m3 (standard error). Source: UNESCO 44, eq. 14.
func RhoSurface(s, t68 float64) float64 {
	return poly(t68, eosRhoW...) + poly(t68, eosRhoA...)*s + poly(t68, eosRhoB...)*s*math.Sqrt(s) + eosRhoC*s*s
}

// BulkModulus is the secant bulk modulus of sea water in bar at bar of pressure over one atmosphere. Source: UNESCO 44, eq. 15 to 19.
func BulkModulus(s, t68, bar float64) float64 {
	root := s * math.Sqrt(s)
	k := poly(t68, eosKW...) + poly(t68, eosKA...)*s + poly(t68, eosKB...)*root
	a := poly(t68, eosAW...) + poly(t68, eosAA...)*s + eosAB*root
	b := poly(t68, eosBW...) + poly(t68, eosBA...)*s
	return k + (a+b*bar)*bar
}

// Rho is the density of sea water in kg/m3 at bar of pressure over one atmosphere. Source: UNESCO 44, eq. 7.
func Rho(s, t68, bar float64) float64 {
	return RhoSurface(s, t68) / (1 - bar/BulkModulus(s, t68, bar))
}
