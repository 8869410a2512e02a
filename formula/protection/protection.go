// Package protection holds the formulas of cathodic protection: the current a hull asks for, anodes that wear, impressed current and its log.
package protection

import "oakum/calc"

// HoursPerYear is 365 days of 24 hours, as design practice for anodes counts them.
const HoursPerYear = 8760

// Methods lists the methods of this package.
func Methods() []calc.Method {
	return []calc.Method{Demand, AnodeResistance, AnodesNeeded, AnodeLife, Impressed, Log}
}
