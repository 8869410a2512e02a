package quantity

import (
	"math"
	"strconv"
)

// Lasting says a span in seconds as people say it: "83 s", "20 min", "8.7 h", "4 days". A span of less than a hundred of one unit is said in it; nobody
// hears twenty thousand seconds as half a night.
func Lasting(seconds float64) string {
	if math.IsNaN(seconds) || math.IsInf(seconds, 0) {
		return noNumber
	}
	return spanUnit(seconds).say(seconds)
}

// LastingRange says two spans in the unit of the longer: "20 to 85 min".
func LastingRange(lo, hi float64) string {
	if math.IsNaN(lo) || math.IsNaN(hi) || math.IsInf(lo, 0) || math.IsInf(hi, 0) {
		return noNumber
	}
	if lo > hi {
		lo, hi = hi, lo
	}
	u := spanUnit(hi)
	low, high := u.number(lo), u.number(hi)
	if low == high {
		return u.say(hi)
	}
	return low + " to " + u.say(hi)
}

// span is a unit that a duration is said in.
type span struct {
	seconds   float64
	one, more string
}

var spans = []span{{1, "s", "s"}, {60, "min", "min"}, {3600, "h", "h"}, {86400, "day", "days"}}

func spanUnit(seconds float64) span {
	s := math.Abs(seconds)
	switch {
	case s < 99.5:
		return spans[0]
	case s < 99.5*60:
		return spans[1]
	case s < 72*3600:
		return spans[2]
	}
	return spans[3]
}

// number has two figures at least, one decimal at most: three hours and a half is worth saying, a tenth of a second is not.
func (u span) number(seconds float64) string {
	v := seconds / u.seconds
	if u.seconds >= 3600 && math.Abs(v) < 9.95 {
		return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
	}
	return Style{}.number(v, 0)
}

func (u span) say(seconds float64) string {
	n := u.number(seconds)
	if n == "1" {
		return n + NoBreak + u.one
	}
	return n + NoBreak + u.more
}
