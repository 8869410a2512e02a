// Package opening computes what closes a hole in the hull: the plate over it, and its bolts.
package opening

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Blank, Bolts} }
