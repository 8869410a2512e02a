// Package choice computes decisions: act now or look first, several aims and several people, which works for the money, what to sign before the
// hull is seen.
//
// Choices among works are exact: linear programs solved by the simplex method, whole variables by branch and bound. What to sign
// before the hull is seen is taken apart by state, each a menu of options under two limits. Nothing is timed by a clock;
// a search that is cut off is cut off after so many steps, so that it ends at the same place on every machine, and says how far off it may be.
package choice

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Tree, Weigh, Poll, Scope, Contract} }
