// Package reliability computes when parts fail: life laws, what they say of a part that has already lived, when to renew it before it
// fails, and what it is worth to look first.
//
// Times are years from new. A life law is drawn by turning one uniform number in (0, 1) over (inverse transform), so that a simulation may
// take its numbers from counters and get the same futures on any number of cores.
package reliability

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Fitted, OutlivedPart, Replacement, Measure} }
