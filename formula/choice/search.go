package choice

import (
	"container/heap"
	"math"
)

// search is branch and bound over the whole variables: the relaxation of a branch bounds all that is in it, and a branch that can't beat the best
// answer found is dropped. It follows the more promising child down and keeps the other for later, the lowest bound first.
type search struct {
	p      Program
	d      *dictionary
	effort Effort
	grain  float64

	whole []int // whole variables
	open  branches
	best  float64
	x     []float64
	nodes int

	rootCost  []float64 // reduced costs of the whole variables at the root, on the side they stand
	rootValue float64
	gain      [2][]float64 // what a unit of rounding down, up cost so far, by whole variable
	seen      [2][]float64
}

// branch is a part of the answers: bounds of the whole variables.
type branch struct {
	low, high []float64
	bound     float64
	number    int
}

type branches []branch

func (b branches) Len() int { return len(b) }
func (b branches) Less(i, k int) bool {
	if b[i].bound != b[k].bound {
		return b[i].bound < b[k].bound
	}
	return b[i].number > b[k].number
}
func (b branches) Swap(i, k int) { b[i], b[k] = b[k], b[i] }
func (b *branches) Push(x any)   { *b = append(*b, x.(branch)) }
func (b *branches) Pop() any {
	last := (*b)[len(*b)-1]
	*b = (*b)[:len(*b)-1]
	return last
}

func (s *search) run() (Solution, error) {
	for j, v := range s.p.Vars {
		if v.Whole {
			s.whole = append(s.whole, j)
			s.d.low[j], s.d.high[j] = math.Ceil(v.Low-1e-9), math.Floor(v.High+1e-9)
			if s.d.low[j] > s.d.high[j] {
				return Solution{}, ErrInfeasible
			}
		}
	}
	for k := range s.gain {
		s.gain[k], s.seen[k] = make([]float64, len(s.whole)), make([]float64, len(s.whole))
	}
	bound := math.Inf(-1)
	root := branch{low: make([]float64, len(s.whole)), high: make([]float64, len(s.whole)), bound: bound}
	for k, j := range s.whole {
		root.low[k], root.high[k] = s.d.low[j], s.d.high[j]
	}
	heap.Push(&s.open, root)
	for s.open.Len() > 0 {
		b := heap.Pop(&s.open).(branch)
		bound = b.bound
		if s.beaten(b.bound) {
			break
		}
		for next := &b; next != nil; {
			if s.nodes >= s.effort.Nodes || s.d.pivots >= s.effort.Pivots {
				return s.cutOff(min(bound, next.bound))
			}
			var err error
			if next, err = s.explore(*next); err != nil {
				return Solution{}, err
			}
		}
	}
	if s.x == nil {
		return Solution{}, ErrInfeasible
	}
	return Solution{X: s.x, Value: s.best, Bound: s.best, Proved: true, Nodes: s.nodes}, nil
}

func (s *search) cutOff(bound float64) (Solution, error) {
	for _, b := range s.open {
		bound = min(bound, b.bound)
	}
	if s.x == nil {
		return Solution{Bound: bound, Nodes: s.nodes}, ErrStalled
	}
	return Solution{X: s.x, Value: s.best, Bound: min(bound, s.best), Nodes: s.nodes}, nil
}

// beaten tells whether nothing in a branch of that bound can be better than the best answer.
func (s *search) beaten(bound float64) bool {
	if s.grain > 0 {
		bound = s.grain * math.Ceil(bound/s.grain-1e-6)
		return bound > s.best-s.grain/2
	}
	return bound >= s.best-1e-9*max(1, math.Abs(s.best))
}

// explore solves the relaxation of a branch and returns the child to follow, if any.
func (s *search) explore(b branch) (*branch, error) {
	s.nodes++
	for k, j := range s.whole {
		s.d.low[j], s.d.high[j] = b.low[k], b.high[k]
	}
	switch s.d.optimise() {
	case infeasible:
		return nil, nil
	case unbounded:
		return nil, ErrUnbounded
	case stalled:
		return nil, ErrStalled
	}
	value := s.d.value()
	if s.nodes == 1 {
		s.rootValue = value
		s.rootCost = s.reduced()
	}
	if s.beaten(value) {
		return nil, nil
	}
	at, fraction := s.pick()
	if at < 0 {
		s.keep()
		s.tighten()
		return nil, nil
	}
	return s.split(b, at, fraction, value), nil
}

// keep takes the values of the relaxation, whole to within rounding, as the best answer. Where rounding moved something, the other variables are
// worked out again with the whole ones held.
func (s *search) keep() {
	moved := false
	for _, j := range s.whole {
		whole := math.Round(s.d.x[j])
		moved = moved || math.Abs(whole-s.d.x[j]) > 1e-12
		s.d.low[j], s.d.high[j] = whole, whole
	}
	if moved && s.d.optimise() != optimal {
		return
	}
	x := make([]float64, s.d.n)
	copy(x, s.d.x[:s.d.n])
	for _, j := range s.whole {
		x[j] = math.Round(x[j])
	}
	if c := s.p.Cost(x); c < s.best {
		s.x, s.best = x, c
	}
}

// pick chooses the variable to branch on: the one whose rounding, either way, is expected to cost most.
func (s *search) pick() (at int, fraction float64) {
	at, best := -1, -1.0
	for k, j := range s.whole {
		x := s.d.x[j]
		f := x - math.Floor(x)
		if f < 1e-7 || f > 1-1e-7 {
			continue
		}
		down, up := f*s.expect(0, k), (1-f)*s.expect(1, k)
		if score := max(down, 1e-9)*max(up, 1e-9) + 1e-12*min(f, 1-f); score > best {
			at, fraction, best = k, f, score
		}
	}
	return at, fraction
}

// expect is what a unit of rounding has cost so far for that variable, or the mean of all, or its own cost.
func (s *search) expect(way, k int) float64 {
	if s.seen[way][k] > 0 {
		return s.gain[way][k] / s.seen[way][k]
	}
	return math.Abs(s.p.Vars[s.whole[k]].Cost) + 1e-6
}

// split makes two children, keeps one for later and returns the other. What rounding cost is learnt when a child is solved; here the relaxation's
// own reduced costs stand for it.
func (s *search) split(b branch, at int, fraction, value float64) *branch {
	j := s.whole[at]
	floor := math.Floor(s.d.x[j])
	s.learn(at)
	down := branch{low: b.low, high: append([]float64{}, b.high...), bound: value, number: 2 * s.nodes}
	down.high[at] = floor
	up := branch{low: append([]float64{}, b.low...), high: b.high, bound: value, number: 2*s.nodes + 1}
	up.low[at] = floor + 1
	if fraction > 0.5 {
		heap.Push(&s.open, down)
		return &up
	}
	heap.Push(&s.open, up)
	return &down
}

// learn estimates what rounding the variable down and up costs, by the first step of the dual simplex method.
func (s *search) learn(at int) {
	for i, v := range s.d.basic {
		if v != s.whole[at] {
			continue
		}
		for way, up := range []float64{-1, 1} {
			ratio := math.Inf(1)
			for c := range s.d.others {
				if h := s.d.helps(i, c, up); h > tiny {
					ratio = min(ratio, math.Abs(s.d.d[c])/h)
				}
			}
			if !math.IsInf(ratio, 1) {
				s.gain[way][at] += ratio * s.d.unit
				s.seen[way][at]++
			}
		}
	}
}

// reduced gives the reduced cost of each whole variable that is not basic, 0 for the rest.
func (s *search) reduced() []float64 {
	cost := make([]float64, s.d.n)
	for j, v := range s.d.others {
		if v < s.d.n {
			cost[v] = s.d.d[j] * s.d.unit
		}
	}
	out := make([]float64, len(s.whole))
	for k, j := range s.whole {
		out[k] = cost[j]
	}
	return out
}

// tighten shuts, in all open branches, what the reduced costs of the root and the best answer leave no room for.
func (s *search) tighten() {
	room := s.best - s.rootValue
	kept := s.open[:0]
	for _, b := range s.open {
		if s.beaten(b.bound) {
			continue
		}
		b.low, b.high = append([]float64{}, b.low...), append([]float64{}, b.high...)
		for k, c := range s.rootCost {
			j := s.whole[k]
			if c > 1e-7 {
				b.high[k] = min(b.high[k], math.Ceil(s.p.Vars[j].Low-1e-9)+math.Floor(room/c+1e-6))
			} else if c < -1e-7 {
				b.low[k] = max(b.low[k], math.Floor(s.p.Vars[j].High+1e-9)-math.Floor(room/-c+1e-6))
			}
		}
		shut := false
		for k := range b.low {
			shut = shut || b.low[k] > b.high[k]
		}
		if !shut {
			kept = append(kept, b)
		}
	}
	s.open = kept
	heap.Init(&s.open)
}
