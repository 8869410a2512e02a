package field

// Basis says how a value is known.
type Basis string

// The five ways of knowing. Unknown is a value of its own: it never turns into zero or into "sound".
const (
	Measured   Basis = "measured"   // somebody, some day, with some instrument
	Documented Basis = "documented" // a paper says so
	Assumed    Basis = "assumed"    // a rule, a default, a memory
	Computed   Basis = "computed"   // a sheet made it
	Unknown    Basis = "unknown"    // nobody looked
)

// Weakest returns the less certain of two bases, in the order measured, documented, computed, assumed, unknown.
func Weakest(a, b Basis) Basis {
	if strength(b) < strength(a) {
		return b
	}
	return a
}

func strength(b Basis) int {
	switch b {
	case Measured:
		return 4
	case Documented:
		return 3
	case Computed:
		return 2
	case Assumed:
		return 1
	}
	return 0
}
