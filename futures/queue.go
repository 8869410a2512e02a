package futures

import (
	"math"
	"math/bits"
)

// queue holds the next failure of every part and finds the earliest: the parts that fail in each year stand in a set, of which the first that is not
// empty is looked through. A date that is overtaken or taken back leaves its part in the old year's set until somebody comes by.
type queue struct {
	at    []float64 // by part
	dated set       // parts that have a date
	years []set     // within the horizon
	year  int       // nothing is due before it
}

func newQueue(parts int, horizon float64) queue {
	q := queue{at: make([]float64, parts), dated: newSet(parts), years: make([]set, int(math.Ceil(horizon)))}
	for y := range q.years {
		q.years[y] = newSet(parts)
	}
	return q
}

func (q *queue) clear() {
	clear(q.dated)
	for _, s := range q.years {
		clear(s)
	}
	q.year = 0
}

// set dates the next failure of a part. One that is not wanted as an event is dated all the same, for who asks.
func (q *queue) set(part int, at float64, wanted bool) {
	q.at[part] = at
	q.dated.add(part)
	if wanted && at < float64(len(q.years)) {
		y := int(at)
		q.years[y].add(part)
		q.year = min(q.year, y)
	}
}

// first is the part that fails first, and when; infinite where none does within the horizon.
func (q *queue) first() (part int, at float64) {
	for ; q.year < len(q.years); q.year++ {
		part, at = -1, math.Inf(1)
		year := q.years[q.year]
		for i := range year {
			year[i] &= q.dated[i]
			for w := year[i]; w != 0; w &= w - 1 {
				p := i<<6 + bits.TrailingZeros64(w)
				if t := q.at[p]; t < at && int(t) == q.year {
					part, at = p, t
				}
			}
		}
		if part >= 0 {
			return part, at
		}
	}
	return -1, math.Inf(1)
}
