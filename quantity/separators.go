package quantity

import (
	"regexp"
	"strconv"
	"strings"
)

var (
	byPoint = regexp.MustCompile(`^\d{1,3}(?:\.\d{3})+$`)
	byComma = regexp.MustCompile(`^\d{1,3}(?:,\d{3})+$`)
)

// marks gives the meanings of digits with points and commas. spaced says that
// spaces already part the thousands, so any mark is the decimal one.
//
// With both marks the later is the decimal one. A single comma before exactly
// three digits ("1,234") may be either, unless a leading zero or no digit
// stands before it ("0,465", ",465"): no one writes thousands so.
func (h Habit) marks(s string, spaced bool) ([]float64, error) {
	points, commas := strings.Count(s, "."), strings.Count(s, ",")
	switch {
	case points == 0 && commas == 0:
		return one(s)
	case points > 0 && commas > 0:
		return h.both(s)
	case spaced && points+commas == 1:
		return one(strings.Replace(s, ",", ".", 1))
	case points > 0:
		return h.onlyPoints(s, points)
	}
	return h.onlyCommas(s, commas)
}

func (h Habit) both(s string) ([]float64, error) {
	point := strings.LastIndex(s, ".") > strings.LastIndex(s, ",")
	if point && h.Decimal == DecimalComma || !point && h.Decimal == DecimalPoint {
		return nil, errGrouping
	}
	if point {
		whole, decimals, _ := strings.Cut(s, ".")
		return grouping(whole, decimals, ",", byComma.MatchString(whole))
	}
	whole, decimals, _ := strings.Cut(s, ",")
	return grouping(whole, decimals, ".", byPoint.MatchString(whole))
}

func grouping(whole, decimals, sign string, ok bool) ([]float64, error) {
	if !ok || strings.ContainsAny(decimals, ".,") {
		return nil, errGrouping
	}
	return one(strings.ReplaceAll(whole, sign, "") + "." + decimals)
}

func (h Habit) onlyPoints(s string, n int) ([]float64, error) {
	groups := byPoint.MatchString(s) && s[0] != '0'
	if n == 1 && (h.Decimal != DecimalComma || !groups) {
		return one(s)
	}
	if !groups || h.Decimal == DecimalPoint {
		return nil, errGrouping
	}
	return one(strings.ReplaceAll(s, ".", ""))
}

func (h Habit) onlyCommas(s string, n int) ([]float64, error) {
	groups := byComma.MatchString(s) && s[0] != '0'
	switch {
	case n > 1 && (!groups || h.Decimal == DecimalComma):
		return nil, errGrouping
	case n > 1 || groups && h.Decimal == DecimalPoint:
		return one(strings.ReplaceAll(s, ",", ""))
	case h.Decimal == DecimalPoint:
		return nil, errGrouping
	case groups && h.Decimal == DecimalOpen:
		thousands, _ := one(strings.ReplaceAll(s, ",", ""))
		decimal, err := one(strings.Replace(s, ",", ".", 1))
		return append(thousands, decimal...), err
	}
	return one(strings.Replace(s, ",", ".", 1))
}

func one(s string) ([]float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return nil, errTooLarge
	}
	return []float64{v}, nil
}
