package network

import (
	"math"
	"slices"
	"sort"
)

// delays finds the shortest schedule under resources by branch and bound: at each moment all tasks whose time has come are started; where that takes
// more than there is, every smallest set of tasks whose delay would mend it is tried, the most promising first. A schedule so far is dropped when
// what is left can't end sooner than the best one, or when another with the same tasks in it was there no later and leaves its running tasks no later.
//
// Source: Demeulemeester and Herroelen, A branch-and-bound procedure for the multiple resource-constrained project scheduling problem, Management
// Science 38, 1992.
type delays struct {
	p     *plan
	days  []float64
	rest  []float64 // longest way from the start of a task to the end of all
	start []float64 // -1 where not yet started

	best    float64
	bestAt  []float64
	bound   float64 // no schedule is shorter
	nodes   int
	limit   int
	cutOff  bool
	cutsets map[string][]cutset
}

func newDelays(p *plan, days []float64, limit int) *delays {
	start, _, rest := p.passes(days)
	d := &delays{p: p, days: days, rest: rest, limit: limit, start: make([]float64, len(p.tasks)), cutsets: map[string][]cutset{}}
	for i := range start {
		d.start[i] = -1
	}
	d.bound = d.lower(start)
	return d
}

// solve searches from a schedule that is there already. proved tells that the best one is the shortest.
func (d *delays) solve(start []float64, length float64) (proved bool) {
	d.best, d.bestAt = length, slices.Clone(start)
	if d.best <= d.bound+tie {
		return true
	}
	d.step(0, nil, d.bound)
	return !d.cutOff || d.best <= d.bound+tie
}

// step goes on from a moment: running holds the tasks that run then, with those that end at that very moment.
func (d *delays) step(now float64, running []int, bound float64) {
	if d.cutOff {
		return
	}
	if d.nodes++; d.nodes > d.limit {
		d.cutOff = true
		return
	}
	still := make([]int, 0, len(running)+4)
	for _, i := range running {
		if d.start[i]+d.days[i] > now+tie {
			still = append(still, i)
		}
	}
	ready, next, done := d.ready(now)
	if done && len(still) == 0 && len(ready) == 0 {
		d.finish()
		return
	}
	if len(ready) == 0 {
		for _, i := range still {
			next = min(next, d.start[i]+d.days[i])
		}
		d.step(next, still, bound)
		return
	}
	here, key := d.moments(now, still), d.key()
	if d.dominated(here, key) || d.energy(now, still) >= d.best-tie {
		return
	}
	for _, i := range ready {
		d.start[i] = now
	}
	all := append(slices.Clone(still), ready...)
	if over := d.over(all); over {
		d.branch(now, all, bound)
	} else {
		d.step(d.moment(now, all), all, bound)
	}
	for _, i := range ready {
		d.start[i] = -1
	}
	if !d.cutOff && len(d.cutsets) < mostCutsets {
		d.cutsets[key] = append(d.cutsets[key], here) // all that lies beyond it has now been tried
	}
}

// ready lists the tasks that can start at the moment, and when the next one that only waits for its day could.
func (d *delays) ready(now float64) (list []int, next float64, done bool) {
	next, done = math.Inf(1), true
	for i, t := range d.p.tasks {
		if d.start[i] >= 0 {
			continue
		}
		done = false
		free := t.least
		for _, b := range t.before {
			if d.start[b] < 0 {
				free = math.Inf(1)
				break
			}
			free = max(free, d.start[b]+d.days[b])
		}
		if free <= now+tie {
			list = append(list, i)
		} else {
			next = min(next, free)
		}
	}
	return list, next, done
}

// moment is the next time at which something ends, or a task that waits for its day may start.
func (d *delays) moment(now float64, all []int) float64 {
	next := math.Inf(1)
	for _, i := range all {
		if e := d.start[i] + d.days[i]; e > now+tie || d.days[i] == 0 {
			next = min(next, max(e, now))
		}
	}
	_, waiting, _ := d.ready(now)
	return min(next, waiting)
}

func (d *delays) finish() {
	length := 0.0
	for i, s := range d.start {
		length = max(length, s+d.days[i])
	}
	if length < d.best-tie {
		d.best = length
		copy(d.bestAt, d.start)
	}
}

func (d *delays) over(all []int) bool {
	for r, c := range d.p.capacity {
		sum := 0.0
		for _, i := range all {
			sum += d.p.tasks[i].takes[r]
		}
		if sum > c+tie {
			return true
		}
	}
	return false
}

// branch tries every smallest set of running tasks whose delay mends the conflict.
func (d *delays) branch(now float64, all []int, bound float64) {
	type choice struct {
		set   uint64
		bound float64
		end   float64
	}
	var choices []choice
	if len(all) > 60 {
		d.cutOff = true
		return
	}
	for _, set := range d.sets(all) {
		end := math.Inf(1)
		for k, i := range all {
			if set>>k&1 == 0 {
				end = min(end, d.start[i]+d.days[i])
			}
		}
		if _, waiting, _ := d.ready(now); math.IsInf(end, 1) {
			end = waiting
		}
		b := bound
		for k, i := range all {
			if set>>k&1 == 1 {
				b = max(b, end+d.rest[i])
			}
		}
		choices = append(choices, choice{set, b, end})
	}
	sort.SliceStable(choices, func(i, k int) bool { return choices[i].bound < choices[k].bound })
	was := make([]float64, len(all))
	for k, i := range all {
		was[k] = d.start[i]
	}
	for _, c := range choices {
		if c.bound >= d.best-tie {
			break
		}
		kept := make([]int, 0, len(all))
		for k, i := range all {
			if c.set>>k&1 == 1 {
				d.start[i] = -1
			} else {
				kept = append(kept, i)
			}
		}
		// a task put off may not start again before something has ended
		d.step(c.end, kept, c.bound)
		for k, i := range all {
			d.start[i] = was[k]
		}
	}
}
