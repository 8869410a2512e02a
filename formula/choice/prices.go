package choice

import (
	"errors"
	"math"
	"slices"
)

// mean is the share of the states, by chance, that would sign each work, and that would break the limits.
func (d *decomposed) mean(list []own) (now []float64, over float64) {
	now = make([]float64, d.works)
	for k, o := range list {
		for i := range now {
			now[i] += d.weight[k] * float64(o.now>>i&1)
		}
		if o.over {
			over += d.weight[k]
		}
	}
	return now, over
}

// setOf is the works signed in a decision, or by most states.
func setOf(mean []float64) (set uint64) {
	for i, x := range mean {
		if x > 0.5 {
			set |= 1 << i
		}
	}
	return set
}

// try works a decision through every state, and keeps it where it is the best so far. It returns its cost, infinite where some limit breaks.
func (d *decomposed) try(first uint64) (float64, error) {
	if c, seen := d.known[first]; seen {
		return c, nil
	}
	cost, err := d.each(holds{yes: first, no: ^first})
	if err != nil {
		return 0, err
	}
	total, over := d.share(cost)
	d.known[first] = total
	if total < d.best-1e-9*max(1, math.Abs(total)) {
		d.best, d.first, d.over, d.any = total, first, over, true
	}
	return total, nil
}

// each is what every state costs with its limits kept and broken, infinite where it can't be.
func (d *decomposed) each(h holds) ([][2]float64, error) {
	cost := make([][2]float64, len(d.weight))
	for k := range cost {
		for over := range int8(2) {
			cost[k][over] = math.Inf(1)
			if over == 1 && !d.soft {
				continue
			}
			h.over = over
			switch o, err := d.state(k, h); {
			case errors.Is(err, ErrInfeasible):
			case err != nil:
				return nil, err
			default:
				cost[k][over] = o.cost
			}
		}
	}
	return cost, nil
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
	if !d.soft {
		return base, over
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

// waitAndSee is the mean of the best answers if the state were known before anything is decided, the limits broken only as often as they may be.
func (d *decomposed) waitAndSee() (float64, error) {
	cost, err := d.each(holds{no: d.never})
	if err != nil {
		return 0, err
	}
	value, _ := d.share(cost)
	if math.IsInf(value, 1) {
		return 0, ErrInfeasible
	}
	d.wait = value
	return value, nil
}

// agree moves the prices step by step so that the states come to agree (Polyak's steps), keeping those with the best bound.
func (d *decomposed) agree(h *held, steps int) error {
	best := *h
	best.bound = math.Inf(-1)
	at := *h
	for step, slack, idle := 0, 1.0, 0; step < steps; step++ {
		if step > 0 || at.own == nil {
			if err := d.bound(&at, nil); err != nil {
				return err
			}
		}
		if at.bound > best.bound+1e-9*math.Abs(best.bound) || step == 0 {
			best, idle = at, 0
			*h = at
		} else if idle++; idle%3 == 0 {
			slack *= 0.7
		}
		mean, over := d.mean(at.own)
		if _, err := d.try(setOf(mean)); err != nil {
			return err
		}
		if d.beaten(best.bound) {
			break
		}
		norm := 0.0
		if d.soft {
			norm = (over - d.room) * (over - d.room)
		}
		for k, o := range at.own {
			for i, m := range mean {
				x := float64(o.now>>i&1) - m
				norm += d.weight[k] * x * x
			}
		}
		if norm < 1e-12 {
			break
		}
		goal := d.best
		if math.IsInf(goal, 1) {
			goal = at.bound + 0.1*math.Abs(at.bound) + 1
		}
		length := slack * max(goal-at.bound, 0) / norm
		next := make([][]float64, len(at.price))
		for k, o := range at.own {
			next[k] = slices.Clone(at.price[k])
			for i, m := range mean {
				next[k][i] += length * (float64(o.now>>i&1) - m)
			}
		}
		at.price = next
		if d.soft {
			at.toll = max(at.toll+length*(over-d.room), 0)
		}
	}
	return nil
}

// polish turns single decisions of the best answer over as long as that helps.
func (d *decomposed) polish() error {
	for better := d.any; better; {
		better = false
		for i := range d.works {
			if d.never>>i&1 == 1 {
				continue
			}
			was := d.best
			if _, err := d.try(d.first ^ 1<<i); err != nil {
				return err
			}
			better = better || d.best < was
		}
	}
	return nil
}
