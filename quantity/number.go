package quantity

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// numeral is a number at the start of a text: its meanings (two where a comma
// leaves it open) and what follows it.
type numeral struct {
	values   []float64
	rest     string
	fraction bool // written with a vulgar fraction
}

var (
	grouped  = regexp.MustCompile(`^\d{1,3}(?: \d{3})+(?:[.,]\d+)?`)
	digits   = regexp.MustCompile(`^(?:\d[\d.,]*|[.,]\d+)`)
	exponent = regexp.MustCompile(`^[eE][+-]?\d{1,3}`)
	mixed    = regexp.MustCompile(`^(?: ?- ?| )(\d{1,3})/(\d{1,3})`)
	another  = regexp.MustCompile(`^ *[-/;,&]? *[.,]?\d`)
	vulgar   = regexp.MustCompile(`^(\d{1,3})/(\d{1,3})`)
)

var (
	errNoUnit    = errors.New("it has no unit")
	errNoNumber  = errors.New("there is no number")
	errGrouping  = errors.New("points and commas do not make one number")
	errSeveral   = errors.New("there is more than one reading in it")
	errBadMixed  = errors.New("the fraction after a whole number must be less than one")
	errTooLarge  = errors.New("the number is too large")
	errHalfParts = errors.New("only the last part may have decimals or a fraction")
)

// number reads the numeral at the start of a plain text without sign.
func (h Habit) number(s string) (numeral, error) {
	if n, ok := fraction(s); ok {
		return n, nil
	}
	mark := grouped.FindString(s)
	if mark == "" || continues(s[len(mark):]) {
		mark = digits.FindString(s)
	}
	if mark == "" {
		return numeral{}, errNoNumber
	}
	rest := s[len(mark):]
	mark = strings.TrimRight(mark, ",")
	values, err := h.marks(strings.ReplaceAll(mark, " ", ""), strings.Contains(mark, " "))
	if err != nil {
		return numeral{}, err
	}
	n := numeral{values: values, rest: rest}
	if n, err = n.withFraction(mark); err != nil {
		return numeral{}, err
	}
	return n.withExponent()
}

// continues tells whether a digit follows, or a stroke and a digit, so that the
// last group of three was no group, or a fraction goes on.
func continues(rest string) bool {
	rest = strings.TrimPrefix(rest, "/")
	return rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// fraction reads "3/8". The lower number must be one that rules and tapes
// carry, and the upper one smaller; "187/201" is two readings.
func fraction(s string) (numeral, bool) {
	m := vulgar.FindStringSubmatch(s)
	if m == nil || continues(s[len(m[0]):]) {
		return numeral{}, false
	}
	v, ok := ratio(m[1], m[2])
	if !ok {
		return numeral{}, false
	}
	return numeral{values: []float64{v}, rest: s[len(m[0]):], fraction: true}, true
}

func ratio(upper, lower string) (float64, bool) {
	n, _ := strconv.Atoi(upper)
	d, _ := strconv.Atoi(lower)
	switch d {
	case 2, 3, 4, 5, 6, 8, 16, 32, 64:
		return float64(n) / float64(d), n < d
	}
	return 0, false
}

// withFraction adds the fraction of "37 1/2" or "2-1/2".
func (n numeral) withFraction(mark string) (numeral, error) {
	m := mixed.FindStringSubmatch(n.rest)
	if m == nil || strings.ContainsAny(mark, ".,") || continues(n.rest[len(m[0]):]) {
		return n, nil
	}
	v, ok := ratio(m[1], m[2])
	if !ok {
		return n, errBadMixed
	}
	return numeral{values: []float64{n.values[0] + v}, rest: n.rest[len(m[0]):], fraction: true}, nil
}

func (n numeral) withExponent() (numeral, error) {
	mark := exponent.FindString(n.rest)
	if mark == "" || n.fraction {
		return n, nil
	}
	n.rest = n.rest[len(mark):]
	for i, v := range n.values {
		scaled, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', -1, 64)+mark, 64)
		if err != nil || math.IsInf(scaled, 0) {
			return n, errTooLarge
		}
		n.values[i] = scaled
	}
	return n, nil
}
