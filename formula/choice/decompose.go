package choice

import (
	"cmp"
	"container/heap"
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

// held is a part of the decisions: -1 free, 0 no, 1 yes.
type held struct {
	now, over []int8
	own       []own
	bound     float64
	number    int
}

type helds []held

func (h helds) Len() int { return len(h) }
func (h helds) Less(i, k int) bool {
	return cmp.Or(cmp.Compare(h[i].bound, h[k].bound), cmp.Compare(h[k].number, h[i].number)) < 0
}
func (h helds) Swap(i, k int) { h[i], h[k] = h[k], h[i] }
func (h *helds) Push(x any)   { *h = append(*h, x.(held)) }
func (h *helds) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
}

// writtenOut is the greatest number of decisions times states that is written out in full.
const writtenOut = 300

var errEnough = errors.New("enough")

func newDecomposed(t *twoStage, limit int) *decomposed {
	d := &decomposed{t: t, limit: limit, best: math.Inf(1), known: map[string]float64{}, wait: math.Inf(-1), room: 1 - t.chance + 1e-9, soft: t.states[0].over >= 0}
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

// bound lets every state decide for itself. States in keep that fit what is held are not solved again.
func (d *decomposed) bound(h *held, keep []own) error {
	h.own = make([]own, len(d.programs))
	h.bound = -d.toll * d.room
	if !d.soft {
		h.bound = 0
	}
	for k := range d.programs {
		var over int8 = -1
		if d.soft {
			over = h.over[k]
		}
		if keep != nil && fits(keep[k], h.now, over) {
			h.own[k] = keep[k]
		} else {
			o, _, err := d.state(k, h.now, over, true)
			if err != nil {
				return err
			}
			h.own[k] = o
		}
		h.bound += d.weight[k] * h.own[k].value
	}
	return nil
}

func fits(o own, now []int8, over int8) bool {
	for i, v := range now {
		if v >= 0 && math.Abs(o.now[i]-float64(v)) > 0.5 {
			return false
		}
	}
	return over < 0 || o.over == (over == 1)
}

// mean is what the states would decide on average, and the chance with which they would break the limits.
func (d *decomposed) mean(list []own) (now []float64, over float64) {
	now = make([]float64, len(d.t.first))
	for k, o := range list {
		for i, x := range o.now {
			now[i] += d.weight[k] * x
		}
		if o.over {
			over += d.weight[k]
		}
	}
	return now, over
}

// try works a decision through every state, and keeps it where it is the best so far. It returns its cost, infinite where some limit breaks.
func (d *decomposed) try(first []float64) (float64, error) {
	key := make([]byte, len(first))
	now := make([]int8, len(first))
	for i, x := range first {
		now[i] = int8(math.Round(x))
		key[i] = byte(now[i])
	}
	if c, seen := d.known[string(key)]; seen {
		return c, nil
	}
	cost := make([][2]float64, len(d.programs))
	for k := range d.programs {
		for over := range int8(2) {
			cost[k][over] = math.Inf(1)
			if over == 1 && !d.soft {
				continue
			}
			o, _, err := d.state(k, now, over, false)
			switch {
			case errors.Is(err, ErrInfeasible):
			case err != nil:
				return 0, err
			default:
				cost[k][over] = o.value
			}
		}
	}
	total, over := d.share(cost)
	d.known[string(key)] = total
	if total < d.best-1e-9*max(1, math.Abs(total)) {
		d.best, d.over = total, over
		d.first = make([]float64, len(first))
		for i := range now {
			d.first[i] = float64(now[i])
		}
	}
	return total, nil
}

// share decides in which states the limits may be broken, within the chance for that, so that the mean cost is least.
func (d *decomposed) share(cost [][2]float64) (float64, []bool) {
	var p Program
	var chance []Term
	base := 0.0
	over := make([]bool, len(cost))
	for k, c := range cost {
		v := Variable{High: 1, Whole: true}
		switch {
		case math.IsInf(c[0], 1) && math.IsInf(c[1], 1):
			return math.Inf(1), over
		case math.IsInf(c[0], 1):
			v.Low = 1
			base += d.weight[k] * c[1]
		case math.IsInf(c[1], 1) || c[1] >= c[0]:
			v.High = 0
			base += d.weight[k] * c[0]
		default:
			base += d.weight[k] * c[0]
			v.Cost = d.weight[k] * (c[1] - c[0])
		}
		chance = append(chance, Term{p.Add(v), d.weight[k]})
	}
	p.Limit("chance", math.Inf(-1), d.room, chance...)
	s, err := Solve(p, Usual)
	if err != nil {
		return math.Inf(1), over
	}
	for k := range over {
		over[k] = s.X[k] > 0.5
	}
	return base + s.Value, over
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

func free(n int) []int8 {
	list := make([]int8, n)
	for i := range list {
		list[i] = -1
	}
	return list
}

// waitAndSee is the mean of the best answers if the state were known before anything is decided, the limits broken only as often as they may be.
func (d *decomposed) waitAndSee() (float64, error) {
	cost := make([][2]float64, len(d.programs))
	for k := range d.programs {
		for over := range int8(2) {
			cost[k][over] = math.Inf(1)
			if over == 1 && !d.soft {
				continue
			}
			o, _, err := d.state(k, nil, over, false)
			switch {
			case errors.Is(err, ErrInfeasible):
			case err != nil:
				return 0, err
			default:
				cost[k][over] = o.value
			}
		}
	}
	value, _ := d.share(cost)
	if math.IsInf(value, 1) {
		return 0, ErrInfeasible
	}
	d.wait = value
	return value, nil
}

// agree moves the prices step by step so that the states come to agree (Polyak's steps), keeping those with the best bound.
func (d *decomposed) agree(root *held) error {
	best, prices, toll := math.Inf(-1), d.price, 0.0
	for step, slack := 0, 1.0; step < 40; step++ {
		h := held{now: root.now, over: root.over}
		if err := d.bound(&h, nil); err != nil {
			return err
		}
		if step == 0 || h.bound > best+1e-9*math.Abs(best) {
			best, toll, *root = h.bound, d.toll, h
			prices = make([][]float64, len(d.price))
			for k := range d.price {
				prices[k] = slices.Clone(d.price[k])
			}
		} else {
			slack *= 0.8
		}
		mean, over := d.mean(h.own)
		if _, err := d.try(mean); err != nil {
			return err
		}
		if d.best-best <= 1e-9*max(1, math.Abs(d.best)) {
			break
		}
		norm := (over - d.room) * (over - d.room)
		for k, o := range h.own {
			for i, x := range o.now {
				norm += d.weight[k] * (x - mean[i]) * (x - mean[i])
			}
		}
		goal := d.best
		if math.IsInf(goal, 1) {
			goal = h.bound + 0.1*math.Abs(h.bound) + 1
		}
		if norm < 1e-12 {
			break
		}
		length := slack * max(goal-h.bound, 0) / norm
		next := make([][]float64, len(d.price))
		for k, o := range h.own {
			next[k] = slices.Clone(d.price[k])
			for i, x := range o.now {
				next[k][i] += length * (x - mean[i])
			}
		}
		d.price = next
		if d.soft {
			d.toll = max(d.toll+length*(over-d.room), 0)
		}
	}
	d.price, d.toll = prices, toll
	return nil
}

// polish turns single decisions of the best answer over as long as that helps.
func (d *decomposed) polish() error {
	for better := d.first != nil; better; {
		better = false
		for i, v := range d.t.first {
			if v.High == v.Low {
				continue
			}
			other := slices.Clone(d.first)
			other[i] = 1 - other[i]
			was := d.best
			if _, err := d.try(other); err != nil {
				return err
			}
			better = better || d.best < was
		}
	}
	return nil
}

// branch holds decisions on which the states differ until the bound meets the best answer. It returns the least bound left.
func (d *decomposed) branch(root held) (float64, error) {
	open := helds{root}
	for number := 1; len(open) > 0; {
		h := heap.Pop(&open).(held)
		if h.bound >= d.best-1e-9*max(1, math.Abs(d.best)) {
			return d.best, nil
		}
		mean, over := d.mean(h.own)
		if _, err := d.try(mean); err != nil {
			return h.bound, err
		}
		list, at := d.differ(h, mean, over)
		if at < 0 {
			continue // all is held: the decision was tried
		}
		for _, value := range []int8{0, 1} {
			child := held{now: slices.Clone(h.now), over: slices.Clone(h.over), number: number}
			number++
			if list == 0 {
				child.now[at] = value
			} else {
				child.over[at] = value
			}
			switch err := d.bound(&child, h.own); {
			case errors.Is(err, ErrInfeasible):
			case err != nil:
				return h.bound, err
			default:
				heap.Push(&open, child)
			}
		}
	}
	return d.best, nil
}

// differ picks what to hold next: the decision on which the states differ most, else a state that breaks its limits though it may not, or one that
// is still free to, else a decision that is still free. -1 where nothing is left.
func (d *decomposed) differ(h held, mean []float64, over float64) (list, at int) {
	at, most := -1, 1e-6
	for i, x := range mean {
		if h.now[i] < 0 && min(x, 1-x) > most {
			at, most = i, min(x, 1-x)
		}
	}
	if at >= 0 {
		return 0, at
	}
	if d.soft {
		for k, o := range h.own {
			if h.over[k] < 0 && o.over == (over > d.room) {
				return 1, k
			}
		}
		if k := slices.Index(h.over, -1); k >= 0 {
			return 1, k
		}
	}
	return 0, slices.Index(h.now, -1)
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
