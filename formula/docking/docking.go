// Package docking computes a docking: whether she fits, how she takes the blocks and leaves them, and what the blocks carry. The same
// mechanics answer for a ship that the tide leaves on the bottom of her berth.
//
// Axes as everywhere: x forward from the after perpendicular, z up from the keel, trim positive by the stern. Upthrust is written as the mass
// it carries, as the trade does.
package docking

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method {
	return []calc.Method{Fit, Landing, Sequence, Blocks, Aground, SideBlocks, Ballast}
}
