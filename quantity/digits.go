package quantity

import (
	"math"
	"strconv"
	"strings"
)

const (
	enough = 4  // figures that a measurement on a ship can carry
	least  = 2  // figures of a value too small for the unit's decimals
	finest = 9  // decimals before an exponent is used instead
	widest = 15 // digits before the point before an exponent is used instead
)

// digits gives the decimals worth showing of v in this unit.
func (u Unit) digits(v float64) int {
	size := math.Abs(v)
	if isMoney(u) {
		if size > 0 && size < 100 {
			return u.Digits
		}
		return 0
	}
	if size == 0 {
		return u.Digits
	}
	before := int(math.Floor(math.Log10(size))) + 1 // digits before the point; 0 or less for 0.0x
	if size < 0.5*math.Pow10(-u.Digits) {
		return least - before
	}
	return max(min(u.Digits, enough-before), 0)
}

// number prints v with so many decimals.
func (s Style) number(v float64, digits int) string {
	text := plainNumber(v, digits)
	sign := ""
	if cut, negative := strings.CutPrefix(text, "-"); negative {
		text, sign = cut, "-"
		if strings.Trim(cut, "0.") == "" {
			sign = "" // -0.00 is 0.00
		}
	}
	if sign != "" && s.Minus != "" {
		sign = s.Minus
	}
	if strings.Contains(text, "e") {
		return sign + text
	}
	whole, decimals, has := strings.Cut(text, ".")
	whole = s.group(whole)
	if !has {
		return sign + whole
	}
	point := s.Point
	if point == "" {
		point = "."
	}
	return sign + whole + point + decimals
}

func plainNumber(v float64, digits int) string {
	if size := math.Abs(v); digits > finest || size >= math.Pow10(widest) {
		if size == 0 {
			digits = min(digits, finest)
			return strconv.FormatFloat(0, 'f', digits, 64)
		}
		return strconv.FormatFloat(v, 'e', least-1, 64)
	}
	return strconv.FormatFloat(v, 'f', digits, 64)
}

// group parts thousands.
func (s Style) group(whole string) string {
	sign := s.Group
	switch sign {
	case "":
		sign = NoBreak
	case "none":
		return whole
	}
	var parts []string
	for len(whole) > 3 {
		parts = append([]string{whole[len(whole)-3:]}, parts...)
		whole = whole[:len(whole)-3]
	}
	return strings.Join(append([]string{whole}, parts...), sign)
}
