// Package afloat computes how a ship floats: drafts, weights, stability, and water inside her.
//
// Axes: x forward from the after perpendicular, y to port, z up from the keel; trim positive by the stern, heel positive to port.
package afloat

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method {
	return []calc.Method{HydrostaticsOf, Curves, Equilibrium, RightingCurve, WeightChange, FreeSurface, DraftSurvey, Flooding, Trend}
}
