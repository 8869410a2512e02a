package network

import (
	"strings"

	"oakum/field"
)

// plan is the tasks in an order in which each comes after all it must, with what comes after each.
type plan struct {
	tasks    []task
	order    []int
	after    [][]int
	capacity []float64
}

func newPlan(tasks []task, capacity []float64) (*plan, error) {
	p := &plan{tasks: tasks, after: make([][]int, len(tasks)), capacity: capacity}
	waits := make([]int, len(tasks))
	for i, t := range tasks {
		waits[i] = len(t.before)
		for _, b := range t.before {
			p.after[b] = append(p.after[b], i)
		}
	}
	for i := range tasks {
		if waits[i] == 0 {
			p.order = append(p.order, i)
		}
	}
	for k := 0; k < len(p.order); k++ {
		for _, a := range p.after[p.order[k]] {
			if waits[a]--; waits[a] == 0 {
				p.order = append(p.order, a)
			}
		}
	}
	if len(p.order) < len(tasks) {
		return nil, field.Refuse("activities", "%s wait for each other in a circle", strings.Join(p.circle(waits), ", "))
	}
	return p, nil
}

// circle names some tasks that wait for each other.
func (p *plan) circle(waits []int) (names []string) {
	i := 0
	for waits[i] == 0 {
		i++
	}
	seen := map[int]int{}
	for step := 0; ; step++ {
		if from, again := seen[i]; again {
			for k := range names {
				if k >= from {
					return names[k:]
				}
			}
		}
		seen[i] = step
		names = append(names, p.tasks[i].id)
		for _, b := range p.tasks[i].before {
			if waits[b] > 0 {
				i = b
				break
			}
		}
	}
}

// passes gives the earliest starts for days by task, the whole length, and how long the rest takes from each start.
func (p *plan) passes(days []float64) (start []float64, length float64, rest []float64) {
	start, rest = make([]float64, len(p.tasks)), make([]float64, len(p.tasks))
	for _, i := range p.order {
		start[i] = p.tasks[i].least
		for _, b := range p.tasks[i].before {
			start[i] = max(start[i], start[b]+days[b])
		}
		length = max(length, start[i]+days[i])
	}
	for k := len(p.order) - 1; k >= 0; k-- {
		i := p.order[k]
		for _, a := range p.after[i] {
			rest[i] = max(rest[i], rest[a])
		}
		rest[i] += days[i]
	}
	return start, length, rest
}

func (p *plan) days() []float64 {
	days := make([]float64, len(p.tasks))
	for i, t := range p.tasks {
		days[i] = t.days
	}
	return days
}

// variance is the greatest variance of a critical path, by the classic sixth of the range.
func (p *plan) variance(days, start []float64, length float64, rest []float64) float64 {
	best := make([]float64, len(p.tasks))
	most := 0.0
	for _, i := range p.order {
		if start[i]+rest[i] < length-tie {
			best[i] = -1
			continue
		}
		into := 0.0
		for _, b := range p.tasks[i].before {
			if best[b] >= 0 && start[b]+days[b] >= start[i]-tie {
				into = max(into, best[b])
			}
		}
		best[i] = into + p.tasks[i].sd*p.tasks[i].sd
		most = max(most, best[i])
	}
	return most
}

// tie is how near two times count as the same, days.
const tie = 1e-9
