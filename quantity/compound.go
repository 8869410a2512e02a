package quantity

import (
	"cmp"
	"fmt"
	"math"
	"strings"
)

// link is one of a chain of units that people write one after the other, with
// the words that stand for it.
type link struct {
	key     string
	words   []string // longest first
	implied bool     // may be left out at the end: 6'-4
}

type chain []link

// chains in the order in which they are tried where no column says the dimension.
var chains = []struct {
	dim   Dimension
	links chain
}{
	{DimLength, chain{
		{"ft", []string{"feet", "foot", "ft.", "ft", "'"}, false},
		{"in", []string{"inches", "inch", "ins", "in.", "in", `"`}, true},
	}},
	{DimTime, chain{
		{"d", []string{"days", "day", "d"}, false},
		{"h", []string{"hours", "hour", "hrs", "hr", "h"}, false},
		{"min", []string{"minutes", "minute", "mins", "min", "m"}, true},
		{"s", []string{"seconds", "second", "secs", "sec", "s"}, false},
	}},
	{DimAngle, chain{
		{"deg", []string{"degrees", "degree", "deg", "°"}, false},
		{"arcmin", []string{"minutes", "min", "'"}, false},
		{"arcsec", []string{"seconds", "sec", `"`}, false},
	}},
}

// compound reads "17 ft 6 1/2 in", "6'-4", "2 h 30 min", "1°30'". ok is false
// where the text is not of two or more such parts; err says what is wrong with
// one that is. The value is in the base unit, the key that of the first part.
func (h Habit) compound(s string, c chain) (value float64, key string, ok bool, err error) {
	at, parts := 0, 0
	limit := math.Inf(1) // base value of one of the unit before
	for s != "" {
		n, numeralErr := h.number(s)
		if numeralErr != nil {
			return 0, "", false, nil //nolint:nilerr // no numeral here means that this is no compound, which is no error
		}
		i, rest := c.next(strings.TrimPrefix(n.rest, " "), at, parts)
		if i < 0 {
			return 0, "", false, nil
		}
		u, _ := Lookup(c[i].key)
		s = between(rest)
		v, why := n.part(u, limit, s == "")
		err = cmp.Or(err, why)
		if parts == 0 {
			key = u.Key
		}
		value += v * u.Scale
		limit, at, parts = u.Scale, i+1, parts+1
	}
	return value, key, parts > 1, err
}

// part picks the meaning of one part: less than one of the unit before, and a
// whole number unless it is the last.
func (n numeral) part(u Unit, limit float64, last bool) (float64, error) {
	var why error
	for _, v := range n.values {
		switch {
		case v*u.Scale > limit*(1-1e-9):
			why = fmt.Errorf("%v %s do not fit under the unit before", v, u.Plural)
		case !last && v != math.Trunc(v):
			why = errHalfParts
		default:
			return v, nil
		}
	}
	return 0, why
}

// next finds the link whose word the text starts with, from the at-th on. A
// text that has ended stands for the implied link after the one before.
func (c chain) next(s string, at, parts int) (int, string) {
	for i := at; i < len(c); i++ {
		if s == "" && parts > 0 && i == at && c[i].implied {
			return i, ""
		}
		for _, word := range c[i].words {
			if len(s) >= len(word) && strings.EqualFold(s[:len(word)], word) && !startsLetter(s[len(word):]) {
				return i, s[len(word):]
			}
		}
	}
	return -1, ""
}

func startsLetter(s string) bool {
	return s != "" && (s[0] >= 'a' && s[0] <= 'z' || s[0] >= 'A' && s[0] <= 'Z')
}

// between takes off what stands between two parts.
func between(s string) string {
	s = strings.TrimSpace(s)
	for _, sign := range []string{"-", ",", "and "} {
		if cut, ok := strings.CutPrefix(s, sign); ok && cut != "" {
			return strings.TrimSpace(cut)
		}
	}
	return s
}
