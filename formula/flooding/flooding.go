// Package flooding computes water coming in: through holes, into spaces, against pumps, and what a plate over a hole must carry.
package flooding

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Rate, Sill, Time, Pumps, Permeability} }
