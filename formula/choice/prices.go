package choice

import (
	"errors"
	"math"
	"slices"
)

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
