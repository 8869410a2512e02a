package quantity

import (
	"slices"
	"strings"
)

// Habit says how the writer of a sheet writes. It settles what a text alone
// leaves open; the zero Habit settles nothing.
type Habit struct {
	Decimal  Decimal   // decimal point or comma
	Dates    DateOrder // order of day, month and year
	Units    []string  // units meant by "tons", "gal", "#": "long_ton", "gal_imp", "lb_plate"
	Currency string    // the ship's: "EUR 25" is then read in a column of money
}

// Decimal is the mark before the decimals.
type Decimal string

const (
	DecimalOpen  Decimal = ""  // not known: "1,234" is ambiguous, "1.234" has decimals
	DecimalPoint Decimal = "." // "1,234" is one thousand two hundred and thirty-four
	DecimalComma Decimal = "," // "1.234" is
)

// means tells whether the habit, or the column, settles on this unit. A unit
// of the habit also settles rates: "gal_imp" settles "gal_imp/min".
func (h Habit) means(u Unit) bool {
	top, _, _ := strings.Cut(u.Key, "/")
	top, _, _ = strings.Cut(top, ".")
	if top == "gal" {
		top = "gal_us"
	}
	return slices.Contains(h.Units, u.Key) || slices.Contains(h.Units, top)
}
