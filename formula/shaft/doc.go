// Package shaft computes a shaft line on its bearings: what each carries, what changes when weight comes off, and how hard a bearing is pressed.
package shaft

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Reactions, BearingPressure} }
