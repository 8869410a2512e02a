package futures

import "math"

// queue holds the next failure of every part and finds the earliest. Entries that a later draw has overtaken stay in the heap until they come up.
type queue struct {
	at      []float64 // by part
	horizon float64   // what fails later is not queued
	heap    []due
}

type due struct {
	year float64
	part int32
}

func newQueue(parts int, horizon float64) queue {
	return queue{at: make([]float64, parts), horizon: horizon}
}

func (q *queue) clear() { q.heap = q.heap[:0] }

// set gives a part another time to fail.
func (q *queue) set(part int, year float64) {
	q.at[part] = year
	if !(year < q.horizon) {
		return
	}
	q.heap = append(q.heap, due{year, int32(part)})
	for i := len(q.heap) - 1; i > 0; {
		up := (i - 1) / 2
		if !before(q.heap[i], q.heap[up]) {
			return
		}
		q.heap[i], q.heap[up] = q.heap[up], q.heap[i]
		i = up
	}
}

// first is the part that fails first, and when; infinite where none does within the horizon.
func (q *queue) first() (int, float64) {
	for len(q.heap) > 0 {
		top := q.heap[0]
		if q.at[top.part] == top.year {
			return int(top.part), top.year
		}
		q.drop()
	}
	return -1, math.Inf(1)
}

// drop takes the first entry off the heap.
func (q *queue) drop() {
	last := len(q.heap) - 1
	q.heap[0] = q.heap[last]
	q.heap = q.heap[:last]
	for i := 0; ; {
		least := i
		for c := 2*i + 1; c <= 2*i+2 && c < last; c++ {
			if before(q.heap[c], q.heap[least]) {
				least = c
			}
		}
		if least == i {
			return
		}
		q.heap[i], q.heap[least] = q.heap[least], q.heap[i]
		i = least
	}
}

// before orders by year, and parts that fail together by their place in the model.
func before(a, b due) bool { return a.year < b.year || a.year == b.year && a.part < b.part }
