// Package gland computes the packed gland (stuffing box) of a shaft that no longer turns: the packing to order, the stress its follower puts
// into it, the water that gets past, and what a resting shaft does to it.
package gland

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Rings, Pressure, Leak, Crush} }
