package choice

import (
	"errors"
	"math"
	"math/bits"
)

// decomposed decides what to sign now, state by state. Each state may decide for itself what is signed, at prices that make the states agree; that bounds
// the whole from below (Carøe and Schultz, Operations Research Letters 24, 1999). Where the states still differ one decision is held at yes and at no,
// and so on. A decision that all share is then worked through every state, which bounds it from above. What may go beyond its limits in some states, with
// a chance that all together must keep, is priced and held in the same way. Sets of works are bits of a word: there are sixty at most.
type decomposed struct {
	t        *twoStage
	works    int
	never    uint64    // works that can't be signed now
	menus    []*menu   // of each state; nil where its works are tied together too much
	programs []Program // of those states: variables of now, then its own
	weight   []float64 // probability, made to add up to one
	room     float64   // chance with which limits may be broken
	soft     bool
	shop     shopper

	solves int
	limit  int
	most   int // searches before the cut, as the watch is told
	watch  Watch

	best  float64
	first uint64
	any   bool // there is a best
	over  []bool
	known map[uint64]float64 // cost of the decisions tried
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
	cost  float64 // at the prices; infinite where a search was cut off before it found anything
	value float64 // nothing costs less; the same as the cost unless a search was cut off
	now   uint64
	over  bool
}

var errEnough = errors.New("enough")

func newDecomposed(in ContractIn, t *twoStage, limit int) *decomposed {
	d := &decomposed{t: t, works: len(in.Works), limit: limit, most: limit, best: math.Inf(1), known: map[uint64]float64{}, wait: math.Inf(-1), room: 1 - t.chance + 1e-9, soft: t.states[0].over >= 0}
	total := 0.0
	for i, v := range t.first {
		if v.High == 0 {
			d.never |= 1 << i
		}
	}
	for _, s := range t.states {
		total += s.probability
	}
	d.menus, d.programs = make([]*menu, len(t.states)), make([]Program, len(t.states))
	for k, s := range t.states {
		d.weight = append(d.weight, s.probability/total)
		if m, ok := in.menuOf(in.States[k], t.pairs); ok {
			d.menus[k] = m
			continue
		}
		alone := *t
		alone.chance = 0 // the chance is kept by all together, not by each
		d.programs[k], _, _ = alone.whole([]scenario{s}, nil)
	}
	return d
}

// holds is what a search of one state must keep: works held signed or not, the limits held kept (0) or broken (1) or free (-1), at prices or at none.
type holds struct {
	yes, no uint64
	over    int8
	price   []float64
	toll    float64
}

// state solves one state. Costs are not weighted by its probability.
func (d *decomposed) state(k int, h holds) (own, error) {
	o, _, err := d.solve(k, h)
	return o, err
}

func (d *decomposed) solve(k int, h holds) (own, []float64, error) {
	if d.solves++; d.solves > d.limit {
		return own{}, nil, errEnough
	}
	if d.watch != nil && d.solves%64 == 1 && !d.watch(min(d.solves-1, d.most), d.most) {
		return own{}, nil, ErrStopped
	}
	if d.menus[k] != nil {
		o, err := d.fromMenu(k, h)
		return o, nil, err
	}
	return d.fromProgram(k, h)
}

// fromMenu searches the menu of a state; where its limits are free, with them and without.
func (d *decomposed) fromMenu(k int, h holds) (own, error) {
	best, found := own{value: math.Inf(1)}, false
	for over := range int8(2) {
		if over == 1 && !d.soft || h.over >= 0 && h.over != over {
			continue
		}
		o, ok := d.shop.in(d.menus[k], h, over == 1)
		if over == 1 {
			o.value += h.toll
			o.cost += h.toll
		}
		if ok && o.value < best.value {
			best, found = o, true
		}
	}
	if !found {
		return own{}, ErrInfeasible
	}
	return best, nil
}

func (d *decomposed) fromProgram(k int, h holds) (own, []float64, error) {
	p := d.programs[k]
	p.Vars = append([]Variable{}, p.Vars...)
	for i := range d.works {
		v := &p.Vars[i]
		if h.price != nil {
			v.Cost += h.price[i]
		}
		if h.yes>>i&1 == 1 {
			v.Low = 1
		}
		if h.no>>i&1 == 1 {
			v.High = 0
		}
	}
	at := -1
	if d.soft {
		at = d.works + d.t.states[k].over
		p.Vars[at].Cost += h.toll
		if h.over >= 0 {
			p.Vars[at].Low, p.Vars[at].High = float64(h.over), float64(h.over)
		}
	}
	s, err := Solve(p, Effort{Nodes: 20_000, Pivots: 400_000})
	if err != nil {
		return own{}, nil, err
	}
	o := own{cost: s.Value, value: s.Bound}
	for i := range d.works {
		if s.X[i] > 0.5 {
			o.now |= 1 << i
		}
	}
	if at >= 0 {
		o.over = s.X[at] > 0.5
	}
	return o, s.X, nil
}

// run solves the program.
func (d *decomposed) run() (answer, error) {
	root := d.root()
	err := d.agree(&root, stepsOfRoot)
	if err == nil {
		err = d.polish()
	}
	bound := root.bound
	if err == nil {
		bound, err = d.branch(root)
	}
	switch {
	case errors.Is(err, errEnough) && d.any:
		d.limit = math.MaxInt
		a, err := d.answer()
		a.bound = min(max(bound, d.wait), d.best)
		return a, err
	case errors.Is(err, errEnough):
		return answer{}, ErrStalled
	case err != nil:
		return answer{}, err
	case !d.any:
		return answer{}, ErrInfeasible
	}
	d.limit = math.MaxInt
	a, err := d.answer()
	a.bound, a.proved = a.value, true
	return a, err
}

// answer works the best decision through the states again and keeps what each does.
func (d *decomposed) answer() (answer, error) {
	a := answer{first: make([]float64, d.works), later: make([][]float64, len(d.weight))}
	for i := range a.first {
		a.first[i] = float64(d.first >> i & 1)
	}
	for k := range d.weight {
		h := holds{yes: d.first, no: ^d.first}
		if d.over[k] {
			h.over = 1
		}
		o, x, err := d.solve(k, h)
		if err != nil {
			return a, err
		}
		if x == nil {
			x = d.written(k, o.over)
		}
		a.later[k] = x[d.works : d.works+len(d.t.states[k].vars)]
		a.value += d.weight[k] * o.cost
	}
	return a, nil
}

// written puts the last answer from a menu into the variables of the state's program: works added and dropped, then what is beyond the limits.
func (d *decomposed) written(k int, over bool) []float64 {
	m := d.menus[k]
	x := make([]float64, d.works+len(d.t.states[k].vars))
	var use [2]float64
	for j, at := range d.shop.pick {
		o := &m.matters[j].options[at]
		use[0] += o.use[0]
		use[1] += o.use[1]
		for rest := o.sign; rest != 0; rest &= rest - 1 {
			x[bits.TrailingZeros64(rest)] = 1
		}
		for rest := o.done &^ o.sign; rest != 0; rest &= rest - 1 {
			x[d.works+2*bits.TrailingZeros64(rest)] = 1
		}
		for rest := o.sign &^ o.done; rest != 0; rest &= rest - 1 {
			x[d.works+2*bits.TrailingZeros64(rest)+1] = 1
		}
	}
	if over {
		at := d.works + d.t.states[k].over
		x[at], x[at-1], x[at-2] = 1, max(use[1]-m.purse[1], 0), max(use[0]-m.purse[0], 0)
	}
	return x
}
