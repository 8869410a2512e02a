// Package plating holds the formulas of shell plating: how thin it is, how fast it goes, and what the readings do not show.
package plating

import "oakum/calc"

// Methods lists the methods of this package.
func Methods() []calc.Method {
	return []calc.Method{Rate, Wastage, Sample, Extreme, Aimed, Head, Corrosion}
}
