// Package tide predicts the height of the water: from harmonic constituents, from a reference place with offsets, or from high and low waters
// entered by hand.
package tide

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Predict} }
