package quantity

import (
	"math"
	"strconv"
	"strings"
)

// NoBreak stands between a number and its unit and between thousands: the
// narrow no-break space.
const NoBreak = "\u202f"

// Style says how numbers look to people. The zero Style is that of [Format].
type Style struct {
	Minus  string // sign of negative numbers; "" is the plain hyphen
	Point  string // decimal mark; "" is the point
	Group  string // between thousands; "" is NoBreak, "none" is nothing
	NoUnit bool   // leave the unit out
}

// TrueMinus is the typographic minus sign, for [Style].
const TrueMinus = "\u2212"

// Format prints a base value in a unit: "11.8 mm", "3 350 t". With digits < 0
// the decimals are the unit's sensible ones, fewer for large values (four
// figures are enough of any measurement on a ship) and more for small ones
// that would otherwise vanish. Negative numbers have a plain hyphen.
func Format(base float64, unit string, digits int) string { return Style{}.Format(base, unit, digits) }

// FormatShort prints as [Format] does, without the unit: for a table whose
// head names it.
func FormatShort(base float64, unit string, digits int) string {
	return Style{NoUnit: true}.Format(base, unit, digits)
}

// Exact prints a base value in a unit to thirteen figures, with a plain hyphen
// and the unit's key, for data that [Parse] reads back: "11.8128 mm".
func Exact(base float64, unit string) string {
	u, ok := Lookup(unit)
	if !ok || math.IsNaN(base) || math.IsInf(base, 0) {
		return noNumber
	}
	text := strconv.FormatFloat(tidy(u.fromBase(base), 13), 'g', -1, 64)
	if u.Symbol == "" {
		return text
	}
	return text + " " + u.Key
}

// inFull prints a base value for a question, without an exponent where it can.
func inFull(base float64, unit string) string {
	u, _ := Lookup(unit)
	v := tidy(u.fromBase(base), 13)
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if size := math.Abs(v); size >= 1e15 || size < 1e-9 {
		text = strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strings.TrimRight(text+" "+u.after(v), " ")
}

// tidy rounds to so many figures, so that 3/8 in is 0.009525 m and not
// 0.009524999999999999.
func tidy(v float64, figures int) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', figures, 64), 64)
	if err != nil {
		return v
	}
	return rounded
}

// noNumber is printed for what is no finite number or has no known unit.
const noNumber = "no value"

// Format prints a base value in a unit in this style.
func (s Style) Format(base float64, unit string, digits int) string {
	u, ok := Lookup(unit)
	if !ok || math.IsNaN(base) || math.IsInf(base, 0) {
		return noNumber
	}
	v := u.fromBase(base)
	if digits < 0 {
		digits = u.digits(v)
	}
	number := s.number(v, digits)
	if s.NoUnit || u.Symbol == "" {
		return number
	}
	if hugs(u.Symbol) {
		return number + u.Symbol
	}
	return number + NoBreak + u.after(shown(number))
}

// shown tells whether a printed number reads as one.
func shown(number string) float64 {
	if v, err := strconv.ParseFloat(number, 64); err == nil {
		return v
	}
	return 0
}

// hugs tells whether a unit stands close to its number: 12°, not 12 °.
func hugs(symbol string) bool { return symbol == "°" || strings.HasPrefix(symbol, "/") }

// rounded brings a range to steps of a hundredth to a tenth of its own width:
// nobody who can't tell 1.9 from 2.3 million knows the last euro.
func rounded(lo, hi float64) (low, high float64) {
	if !(hi > lo) {
		return lo, hi
	}
	step := math.Pow(10, math.Floor(math.Log10(hi-lo))-1)
	if step < 1 {
		return lo, hi
	}
	return math.Round(lo/step) * step, math.Round(hi/step) * step
}

// Range prints two base values with one unit: "9.1 to 11.8 mm". Values that
// look the same are printed once. An amount of money has no more figures than
// its range deserves.
func Range(lo, hi float64, unit string) string {
	u, ok := Lookup(unit)
	if !ok || math.IsNaN(lo) || math.IsNaN(hi) || math.IsInf(lo, 0) || math.IsInf(hi, 0) {
		return noNumber
	}
	if lo > hi {
		lo, hi = hi, lo
	}
	if isMoney(u) || u.Dim == DimMoney {
		lo, hi = rounded(lo, hi)
	}
	digits := min(u.digits(u.fromBase(lo)), u.digits(u.fromBase(hi)))
	low, high := FormatShort(lo, unit, digits), Format(hi, unit, digits)
	if low == FormatShort(hi, unit, digits) {
		return high
	}
	return low + " to " + high
}
