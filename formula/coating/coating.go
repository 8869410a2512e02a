// Package coating holds the formulas of painting: how much paint, when the weather allows it, and whether the film is thick enough.
package coating

import "oakum/calc"

// Methods lists the methods of this package.
func Methods() []calc.Method {
	return []calc.Method{Quantity, Dew, Acceptance, Window}
}
