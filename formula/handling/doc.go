// Package handling computes the handling of heavy parts: what a propeller weighs, what its slings carry, how it stands on show, what the road
// bears. A certificate on the gear beats every formula here.
package handling

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method {
	return []calc.Method{PropellerMass, Sling, Shackle, Stand, Road}
}
