package futures

import "math"

// queue holds the next failure of every part: the parts that fail in each year stand in a set. A date that is overtaken or taken back leaves its part where
// it stood; nothing is due there when its year comes up.
type queue struct {
	at    []float64 // by part
	dated set       // parts that have a date
	years []set     // within the horizon
	all   set       // the years end to end
	year  int       // nothing is due before it
}

func newQueue(parts int, horizon float64) queue {
	q := queue{at: make([]float64, parts), dated: newSet(parts), years: make([]set, int(math.Ceil(horizon)))}
	n := len(q.dated)
	q.all = make(set, n*len(q.years))
	for y := range q.years {
		q.years[y] = q.all[y*n : (y+1)*n]
	}
	return q
}

func (q *queue) clear() {
	clear(q.dated)
	clear(q.all)
	q.year = 0
}

// set dates the next failure of a part. One that is not wanted as an event is dated all the same, for who asks.
func (q *queue) set(part int, at float64, wanted bool) {
	q.at[part] = at
	q.dated.add(part)
	if wanted && at < float64(len(q.years)) {
		q.years[int(at)].add(part)
	}
}
