package choice

import (
	"cmp"
	"container/heap"
	"errors"
	"math"
	"slices"
)

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

func (h *helds) Push(x any) { *h = append(*h, x.(held)) }

func (h *helds) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
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

func free(n int) []int8 {
	list := make([]int8, n)
	for i := range list {
		list[i] = -1
	}
	return list
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
