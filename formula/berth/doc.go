// Package berth computes the water under a ship at her berth.
package berth

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Underkeel} }
