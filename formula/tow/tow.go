// Package tow computes what it takes to tow a dead ship and what current does to one that is moored.
package tow

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Resistance, Pull, Weather, Moored} }
