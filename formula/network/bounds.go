package network

import (
	"math"
	"slices"
)

// lower is the best of simple bounds on the whole length: the longest path, the work of each resource over its capacity, and a path stretched by
// tasks that can't run beside any of it.
func (d *delays) lower(early []float64) float64 {
	bound := 0.0
	for i := range early {
		bound = max(bound, early[i]+d.rest[i])
	}
	length := bound
	for r, c := range d.p.capacity {
		work := 0.0
		for i, t := range d.p.tasks {
			work += t.takes[r] * d.days[i]
		}
		if c > 0 {
			bound = max(bound, work/c)
		}
	}
	return max(bound, d.alongside(early, length))
}

// alongside bounds the length by one critical path and, for one other task at a time, how much of it can run beside that path within its own float
// (Stinson, Davis and Khumawala 1978). It holds only where the path fills the whole time.
func (d *delays) alongside(early []float64, length float64) float64 {
	path := d.critical(early, length)
	bound := length
	for i := range d.p.tasks {
		if len(path) == 0 || slices.Contains(path, i) || d.days[i] == 0 {
			continue
		}
		from, to := early[i], length-d.rest[i]+d.days[i]
		longest, run := 0.0, 0.0
		for _, c := range path {
			a, b := max(early[c], from), min(early[c]+d.days[c], to)
			if b <= a {
				continue
			}
			if d.over([]int{i, c}) {
				run = 0
				continue
			}
			run += b - a
			longest = max(longest, run)
		}
		bound = max(bound, length+max(d.days[i]-longest, 0))
	}
	return bound
}

// critical walks one critical path from the start to the end; nil where none fills the whole time.
func (d *delays) critical(early []float64, length float64) (path []int) {
	next := func(at float64, among []int) int {
		for _, i := range among {
			if math.Abs(early[i]-at) <= tie && early[i]+d.rest[i] >= length-tie {
				return i
			}
		}
		return -1
	}
	at := 0.0
	for i := next(0, d.p.order); i >= 0; i = next(at, d.p.after[i]) {
		path = append(path, i)
		at = early[i] + d.days[i]
	}
	if at < length-tie {
		return nil
	}
	return path
}

// energy bounds the end by the work that is left of each resource.
func (d *delays) energy(now float64, running []int) float64 {
	bound := 0.0
	for r, c := range d.p.capacity {
		work := 0.0
		for i, t := range d.p.tasks {
			if d.start[i] < 0 {
				work += t.takes[r] * d.days[i]
			}
		}
		for _, i := range running {
			work += d.p.tasks[i].takes[r] * (d.start[i] + d.days[i] - now)
		}
		if c > 0 {
			bound = max(bound, now+work/c)
		}
	}
	return bound
}
