package choice

import (
	"errors"
	"math"
	"slices"
)

// decomposed solves a two-stage program whose decisions now are all yes or no, state by state. Each state may decide for itself what is decided now,
// at prices that make the states agree; that bounds the whole from below (Carøe and Schultz, Operations Research Letters 24, 1999). Where the states
// still differ one decision is held at yes and at no, and so on. A decision that all share is then worked through every state, which bounds it from
// above. What may go beyond its limits in some states, with a chance that all together must keep, is priced and held in the same way.
type decomposed struct {
	t        *twoStage
	programs []Program // of each state: variables of now, then its own
	weight   []float64 // probability, made to add up to one
	room     float64   // chance with which limits may be broken
	soft     bool

	price  [][]float64 // by state and decision
	toll   float64     // on breaking the limits
	solves int
	limit  int
	most   int // searches before the cut, as the watch is told
	watch  Watch

	best  float64
	first []float64
	over  []bool
	known map[string]float64 // cost of the decisions tried
	wait  float64            // cost if the state were known first: nothing costs less
}

// answer is a decision now and what follows in each state.
type answer struct {
	first  []float64
	later  [][]float64
	value  float64
	bound  float64
	proved bool
}

// own is what one state would decide.
type own struct {
	value float64 // at the prices
	now   []float64
	over  bool
}

// writtenOut is the greatest number of decisions times states that is written out in full.
const writtenOut = 300

var errEnough = errors.New("enough")

func newDecomposed(t *twoStage, limit int) *decomposed {
	d := &decomposed{t: t, limit: limit, most: limit, best: math.Inf(1), known: map[string]float64{}, wait: math.Inf(-1), room: 1 - t.chance + 1e-9, soft: t.states[0].over >= 0}
	total := 0.0
	for _, s := range t.states {
		total += s.probability
	}
	for _, s := range t.states {
		alone := *t
		alone.chance = 0 // the chance is kept by all together, not by each
		p, _, _ := alone.whole([]scenario{s}, nil)
		d.programs = append(d.programs, p)
		d.weight = append(d.weight, s.probability/total)
		d.price = append(d.price, make([]float64, len(t.first)))
	}
	return d
}

// state solves one state with the decisions held as they are. Costs are not weighted by its probability.
func (d *decomposed) state(k int, now []int8, over int8, priced bool) (own, []float64, error) {
	if d.solves++; d.solves > d.limit {
		return own{}, nil, errEnough
	}
	if d.watch != nil && !d.watch(min(d.solves-1, d.most), d.most) {
		return own{}, nil, ErrStopped
	}
	p := d.programs[k]
	p.Vars = slices.Clone(p.Vars)
	n := len(d.t.first)
	for i := range n {
		if priced {
			p.Vars[i].Cost += d.price[k][i]
		}
		if now != nil && now[i] >= 0 {
			p.Vars[i].Low, p.Vars[i].High = max(p.Vars[i].Low, float64(now[i])), min(p.Vars[i].High, float64(now[i]))
		}
	}
	at := -1
	if d.soft {
		at = n + d.t.states[k].over
		if priced {
			p.Vars[at].Cost += d.toll
		}
		if over >= 0 {
			p.Vars[at].Low, p.Vars[at].High = float64(over), float64(over)
		}
	}
	s, err := Solve(p, Effort{Nodes: 20_000, Pivots: 400_000})
	if err != nil {
		return own{}, nil, err
	}
	o := own{value: s.Bound, now: s.X[:n]}
	if at >= 0 {
		o.over = s.X[at] > 0.5
	}
	return o, s.X, nil
}

// run solves the program.
func (d *decomposed) run() (answer, error) {
	root := held{now: free(len(d.t.first)), over: free(len(d.programs)), bound: math.Inf(-1)}
	err := d.agree(&root)
	if err == nil {
		err = d.polish()
	}
	bound := root.bound
	if err == nil && d.first != nil && len(d.t.first)*len(d.programs) <= writtenOut {
		// small enough to be written out: that proves faster from here
		start, err := d.answer()
		if err != nil {
			return start, err
		}
		if a, err := d.t.together(&start); err == nil && a.proved {
			return a, nil
		}
	}
	if err == nil {
		bound, err = d.branch(root)
	}
	switch {
	case errors.Is(err, errEnough) && d.first != nil:
		d.limit = math.MaxInt
		a, err := d.answer()
		a.bound = min(max(bound, d.wait), d.best)
		return a, err
	case errors.Is(err, errEnough):
		return answer{}, ErrStalled
	case err != nil:
		return answer{}, err
	case d.first == nil:
		return answer{}, ErrInfeasible
	}
	d.limit = math.MaxInt
	a, err := d.answer()
	a.bound, a.proved = a.value, true
	return a, err
}

// answer works the best decision through the states again and keeps what each does.
func (d *decomposed) answer() (answer, error) {
	a := answer{first: d.first, later: make([][]float64, len(d.programs))}
	now := make([]int8, len(d.first))
	for i, x := range d.first {
		now[i] = int8(x)
	}
	for k := range d.programs {
		var over int8
		if d.over[k] {
			over = 1
		}
		o, x, err := d.state(k, now, over, false)
		if err != nil {
			return a, err
		}
		a.later[k] = x[len(now) : len(now)+len(d.t.states[k].vars)]
		a.value += d.weight[k] * o.value
	}
	return a, nil
}
