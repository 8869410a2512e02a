// Package potential holds reference electrodes: what a reading against one of them is against the others, and what it says of steel in sea water.
package potential

import "oakum/calc"

// Methods lists the methods of this package.
func Methods() []calc.Method { return []calc.Method{Read} }
