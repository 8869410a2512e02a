package choice

import (
	"cmp"
	"container/heap"
	"errors"
	"math"
	"slices"
)

// held is a part of the decisions: works held signed, held unsigned, the rest free; states held within their limits (0) or beyond (1), or free (-1).
type held struct {
	yes, no uint64
	over    []int8
	price   [][]float64 // by state and work
	toll    float64     // on breaking the limits
	own     []own
	bound   float64
	number  int
}

type helds []held

func (h helds) Len() int { return len(h) }

func (h helds) Less(i, k int) bool {
	return cmp.Or(cmp.Compare(h[i].bound, h[k].bound), cmp.Compare(h[k].number, h[i].number)) < 0
}

func (h helds) Swap(i, k int) { h[i], h[k] = h[k], h[i] }

func (h *helds) Push(x any) { *h = append(*h, x.(held)) }

func (h *helds) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
}

// root holds nothing but what can't be signed, at no prices.
func (d *decomposed) root() held {
	h := held{no: d.never, over: make([]int8, len(d.weight)), bound: math.Inf(-1)}
	for k := range d.weight {
		h.over[k] = -1
		h.price = append(h.price, make([]float64, d.works))
	}
	return h
}

// bound lets every state decide for itself. States in keep that fit what is held are not solved again.
func (d *decomposed) bound(h *held, keep []own) error {
	h.own = make([]own, len(d.weight))
	h.bound = 0
	if d.soft {
		h.bound = -h.toll * d.room
	}
	for k := range d.weight {
		if keep != nil && keep[k].fits(h, k) {
			h.own[k] = keep[k]
		} else {
			o, err := d.state(k, holds{h.yes, h.no, h.over[k], h.price[k], h.toll})
			if err != nil {
				return err
			}
			h.own[k] = o
		}
		h.bound += d.weight[k] * h.own[k].value
	}
	return nil
}

func (o own) fits(h *held, k int) bool {
	return o.now&h.no == 0 && h.yes&^o.now == 0 && (h.over[k] < 0 || o.over == (h.over[k] == 1))
}

// beaten tells whether a part of that bound holds nothing better than the best answer.
func (d *decomposed) beaten(bound float64) bool {
	return bound >= d.best-1e-9*max(1, math.Abs(d.best))
}

// branch holds decisions on which the states differ until the bound meets the best answer. It returns the least bound left.
func (d *decomposed) branch(root held) (float64, error) {
	open := helds{root}
	for number := 1; len(open) > 0; {
		h := heap.Pop(&open).(held)
		if d.beaten(h.bound) {
			return d.best, nil
		}
		mean, over := d.mean(h.own)
		if _, err := d.try(setOf(mean)); err != nil {
			return h.bound, err
		}
		list, at := d.differ(h, mean, over)
		if at < 0 {
			continue // all is held: the decision was tried
		}
		for value := range int8(2) {
			child := h
			child.number = number
			number++
			switch {
			case list == 1:
				child.over = slices.Clone(h.over)
				child.over[at] = value
			case value == 1:
				child.yes |= 1 << at
			default:
				child.no |= 1 << at
			}
			err := d.bound(&child, h.own)
			if err == nil && !d.beaten(child.bound) {
				err = d.agree(&child, stepsOfBranch)
			}
			switch {
			case errors.Is(err, ErrInfeasible):
			case err != nil:
				return h.bound, err
			case !d.beaten(child.bound):
				heap.Push(&open, child)
			}
		}
	}
	return d.best, nil
}

// How often the prices are moved before anything is held, and again in each branch. Few steps in many branches prove sooner than many in few.
const (
	stepsOfRoot   = 80
	stepsOfBranch = 2
)

// differ picks what to hold next: the decision on which the states differ most, else a state that breaks its limits though it may not, or one that
// is still free to, else a decision that is still free. -1 where nothing is left.
func (d *decomposed) differ(h held, mean []float64, over float64) (list, at int) {
	at, most := -1, 1e-6
	for i, x := range mean {
		if (h.yes|h.no)>>i&1 == 0 && min(x, 1-x) > most {
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
	for i := range d.works {
		if (h.yes|h.no)>>i&1 == 0 {
			return 0, i
		}
	}
	return 0, -1
}
