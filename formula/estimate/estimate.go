// Package estimate computes what works will cost and how sure that is: sums of uncertain lines, bids on one footing, savings for the next
// docking, and what happened to others.
//
// Money is plain numbers in one currency, of one year's prices unless said otherwise. Sums are sampled with fixed, evenly spread points, so
// the same lines always give the same figures.
package estimate

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Estimate, Bids, Next, Reference} }
