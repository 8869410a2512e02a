package quantity

import (
	"regexp"
	"strconv"
	"strings"
)

// told finds a number, or two with "to" between them, and the unit behind the narrow space that only [Format] and [Range] put there.
var told = regexp.MustCompile(`([-\x{2212}]?\d[\d\x{202f}]*(?:\.\d+)?)(?: to ([-\x{2212}]?\d[\d\x{202f}]*(?:\.\d+)?))?\x{202f}([A-Za-zµ°][A-Za-zµ°²³/·]*)`)

// Retell writes the quantities in a text of ours in the units of a system. It touches only what [Format] or [Range] wrote: a number that a person typed
// stands as it was typed.
func Retell(system System, text string) string {
	if system != Metric && system != US || !strings.Contains(text, NoBreak) {
		return text
	}
	return told.ReplaceAllStringFunc(text, func(one string) string {
		m := told.FindStringSubmatch(one)
		from, ok := Lookup(m[3])
		if !ok {
			return one
		}
		to := In(system, from.Key)
		low, okLow := retold(m[1], from)
		if to == from.Key || !okLow {
			return one
		}
		if m[2] == "" {
			return Format(low, to, -1)
		}
		high, okHigh := retold(m[2], from)
		if !okHigh {
			return one
		}
		return Range(low, high, to)
	})
}

// retold reads a number that [Format] wrote, in base units.
func retold(text string, u Unit) (float64, bool) {
	x, err := strconv.ParseFloat(strings.ReplaceAll(strings.ReplaceAll(text, NoBreak, ""), TrueMinus, "-"), 64)
	if err != nil {
		return 0, false
	}
	base, err := ToBase(x, u.Key)
	return base, err == nil
}
