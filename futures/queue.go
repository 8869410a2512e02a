package futures

import (
	"math"
	"math/bits"
	"slices"
)

// queue holds the next failure of every part and finds the earliest: the parts that fail in each year stand in a set, and the first year that is not empty
// is put in order when it comes up. A date that is overtaken or taken back leaves its part where it stood until somebody comes by.
type queue struct {
	at     []float64 // by part
	dated  set       // parts that have a date
	years  []set     // within the horizon
	year   int       // nothing is due before it
	opened int       // the year that is in order; -1 none
	next   []due     // of that year, the latest first
}

type due struct {
	at   float64
	part int
}

// later orders by date, and parts that fail together by their place in the model.
func later(a, b due) int {
	switch {
	case a.at < b.at:
		return 1
	case a.at > b.at:
		return -1
	}
	return b.part - a.part
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
	q.year, q.opened = 0, -1
}

// set dates the next failure of a part. One that is not wanted as an event is dated all the same, for who asks.
func (q *queue) set(part int, at float64, wanted bool) {
	q.at[part] = at
	q.dated.add(part)
	if !wanted || at >= float64(len(q.years)) {
		return
	}
	y := int(at)
	q.years[y].add(part)
	q.year = min(q.year, y)
	if y == q.opened {
		d := due{at, part}
		i, _ := slices.BinarySearchFunc(q.next, d, later)
		q.next = slices.Insert(q.next, i, d)
	}
}

// first is the part that fails first, and when; infinite where none does within the horizon.
func (q *queue) first() (part int, at float64) {
	for ; q.year < len(q.years); q.year++ {
		if q.opened != q.year {
			q.open()
		}
		for n := len(q.next); n > 0; n = len(q.next) {
			if d := q.next[n-1]; q.dated.has(d.part) && q.at[d.part] == d.at {
				return d.part, d.at
			}
			q.next = q.next[:n-1]
		}
	}
	return -1, math.Inf(1)
}

// open puts the year that has come up in order.
func (q *queue) open() {
	q.opened, q.next = q.year, q.next[:0]
	for i, w := range q.years[q.year] {
		for w &= q.dated[i]; w != 0; w &= w - 1 {
			if p := i<<6 + bits.TrailingZeros64(w); int(q.at[p]) == q.year {
				q.next = append(q.next, due{q.at[p], p})
			}
		}
	}
	slices.SortFunc(q.next, later)
}
