package quantity

import "strconv"

// Format prints a base value in a unit: "11.8 mm".
func Format(base float64, unit string, digits int) string {
	u, ok := Lookup(unit)
	if !ok {
		return ""
	}
	if digits < 0 {
		digits = u.Digits
	}
	return strconv.FormatFloat(u.fromBase(base), 'f', digits, 64) + "\u202f" + u.Symbol
}
