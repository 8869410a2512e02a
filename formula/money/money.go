// Package money computes what is in hand, what of it is free, and what can be signed for.
//
// Amounts are in one currency. Nothing that is only hoped for counts: a conditional pledge is nothing until its condition is met, a grant only
// as far as own money stands against it, and the reserve to undock, tow home and moor again is never free.
package money

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Ledger, Sign} }
