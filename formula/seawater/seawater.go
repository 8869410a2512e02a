// Package seawater holds density, salinity and resistivity of the water she lies in: the equation of state EOS-80 and the practical salinity
// scale PSS-78.
package seawater

import "oakum/calc"

// Methods lists the methods of this package.
func Methods() []calc.Method {
	return []calc.Method{Density, Salinity, Resistivity}
}

// poly is c0 + c1 x + c2 x^2 + ...
func poly(x float64, c ...float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}
