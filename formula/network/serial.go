package network

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// usage is what is taken of each resource over time, as steps: from time[k] on take[k] is in use.
type usage struct {
	time []float64
	take [][]float64
}

func newUsage(resources int) *usage {
	return &usage{time: []float64{0}, take: [][]float64{make([]float64, resources)}}
}

// clear empties it for another round.
func (u *usage) clear() {
	u.time, u.take = u.time[:1], u.take[:1]
	clear(u.take[0])
}

// earliest is the first time from on at which a task fits for its days.
func (u *usage) earliest(t task, days, from float64, capacity []float64) float64 {
	if !slices.ContainsFunc(t.takes, func(x float64) bool { return x > 0 }) {
		return from
	}
	at := from
	for k := u.step(at); k < len(u.time); k++ {
		if u.time[k] >= at+days-tie && days > 0 {
			break
		}
		if days == 0 && u.time[k] > at+tie {
			break
		}
		for r, x := range t.takes {
			if u.take[k][r]+x > capacity[r]+tie {
				if k+1 < len(u.time) {
					at = u.time[k+1]
				}
				break
			}
		}
	}
	return at
}

// step is the last step that begins at or before the time.
func (u *usage) step(at float64) int {
	k, found := slices.BinarySearch(u.time, at+tie)
	if found {
		return k
	}
	return max(k-1, 0)
}

// add takes what the task takes from start to finish.
func (u *usage) add(t task, start, finish float64) {
	if finish <= start {
		return
	}
	a, b := u.cut(start), u.cut(finish)
	for k := a; k < b; k++ {
		for r, x := range t.takes {
			u.take[k][r] += x
		}
	}
}

// cut makes a step begin at the time.
func (u *usage) cut(at float64) int {
	k := u.step(at)
	if math.Abs(u.time[k]-at) <= tie {
		return k
	}
	u.time = slices.Insert(u.time, k+1, at)
	u.take = slices.Insert(u.take, k+1, slices.Clone(u.take[k]))
	return k + 1
}

// serial starts the tasks one after the other in the order of a list, each as early as what comes before it and the resources allow. The list must
// name every task after those it waits for.
func (p *plan) serial(list []int, days, start []float64, u *usage) (length float64) {
	u.clear()
	for _, i := range list {
		t := p.tasks[i]
		from := t.least
		for _, b := range t.before {
			from = max(from, start[b]+days[b])
		}
		start[i] = u.earliest(t, days[i], from, p.capacity)
		u.add(t, start[i], start[i]+days[i])
		length = max(length, start[i]+days[i])
	}
	return length
}

// byPriority makes a list in which, of the tasks whose time has come, the one with the least priority number comes first.
func (p *plan) byPriority(priority []float64) []int {
	waits := make([]int, len(p.tasks))
	ready := []int{}
	for i, t := range p.tasks {
		if waits[i] = len(t.before); waits[i] == 0 {
			ready = append(ready, i)
		}
	}
	list := make([]int, 0, len(p.tasks))
	for len(ready) > 0 {
		best := 0
		for k, i := range ready {
			if priority[i] < priority[ready[best]] {
				best = k
			}
		}
		i := ready[best]
		ready = slices.Delete(ready, best, best+1)
		list = append(list, i)
		for _, a := range p.after[i] {
			if waits[a]--; waits[a] == 0 {
				ready = append(ready, a)
			}
		}
	}
	return list
}

// heuristic finds a good start by trying priorities, shaken, and by pushing the best schedules to the right and back to the left.
func (p *plan) heuristic(days []float64, tries int) (best []float64, length float64, list []int) {
	start, _, rest := p.passes(days)
	u := newUsage(len(p.capacity))
	try := make([]float64, len(p.tasks))
	length = math.Inf(1)
	r := rand.New(rand.NewPCG(1, uint64(len(p.tasks))))
	priority := make([]float64, len(p.tasks))
	for n := range tries {
		for i := range priority {
			priority[i] = -rest[i] // the longest rest first
			switch {
			case n == 1:
				priority[i] = start[i]
			case n > 1 && best != nil && n%2 == 0:
				priority[i] = best[i] + length*0.1*r.NormFloat64()
			case n > 1:
				priority[i] -= length * 0.3 * r.Float64()
			}
		}
		order := p.byPriority(priority)
		l := p.serial(order, days, try, u)
		for range 2 {
			better := p.justify(days, try, l, u)
			if better >= l-tie {
				break
			}
			l = better
		}
		if l < length-tie {
			best, length = slices.Clone(try), l
		}
	}
	list = make([]int, len(p.tasks))
	for i := range list {
		list[i] = i
	}
	place := make([]int, len(p.tasks))
	for k, i := range p.order {
		place[i] = k
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Or(cmp.Compare(best[a], best[b]), cmp.Compare(place[a], place[b])) })
	return best, length, list
}

// justify pushes every task as late as it may go within the length, the latest first, and then starts the tasks again in the order of the times so
// found; that often shortens a schedule and never lengthens it. The better one is left in start.
func (p *plan) justify(days, start []float64, length float64, u *usage) float64 {
	list := make([]int, len(p.tasks))
	for i := range list {
		list[i] = i
	}
	place := make([]int, len(p.tasks))
	for k, i := range p.order {
		place[i] = k
	}
	slices.SortStableFunc(list, func(a, b int) int {
		return cmp.Or(cmp.Compare(start[b]+days[b], start[a]+days[a]), cmp.Compare(place[b], place[a]))
	})
	u.clear()
	late := make([]float64, len(p.tasks)) // starts, counted back from the end
	for _, i := range list {
		from := 0.0
		for _, a := range p.after[i] {
			from = max(from, late[a]+days[a])
		}
		late[i] = u.earliest(p.tasks[i], days[i], from, p.capacity)
		u.add(p.tasks[i], late[i], late[i]+days[i])
	}
	priority := make([]float64, len(p.tasks))
	for i := range priority {
		priority[i] = length - late[i] - days[i]
	}
	again := make([]float64, len(p.tasks))
	l := p.serial(p.byPriority(priority), days, again, u)
	if l < length-tie {
		copy(start, again)
		return l
	}
	return length
}
