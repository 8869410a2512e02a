package network

import (
	"math/bits"
	"slices"
)

// mostSets is how many sets are tried at one moment before the search counts as cut off.
const mostSets = 4096

// sets are the smallest sets of the tasks, as bits, without which the rest fits; those that take nothing that is scarce are never in a
// set.
func (d *delays) sets(all []int) (list []uint64) {
	excess := make([]float64, len(d.p.capacity))
	for r, c := range d.p.capacity {
		excess[r] = -c
		for _, i := range all {
			excess[r] += d.p.tasks[i].takes[r]
		}
	}
	able := []int{}
	for k, i := range all {
		for r, x := range d.p.tasks[i].takes {
			if x > 0 && excess[r] > tie {
				able = append(able, k)
				break
			}
		}
	}
	var try func(from int, set uint64, left []float64)
	try = func(from int, set uint64, left []float64) {
		if len(list) >= mostSets {
			d.cutOff = true
			return
		}
		if fits(left) {
			if d.smallest(all, set, left) {
				list = append(list, set)
			}
			return
		}
		for n := from; n < len(able); n++ {
			k := able[n]
			next := slices.Clone(left)
			for r, x := range d.p.tasks[all[k]].takes {
				next[r] -= x
			}
			try(n+1, set|1<<k, next)
		}
	}
	try(0, 0, excess)
	return list
}

func fits(excess []float64) bool {
	for _, x := range excess {
		if x > tie {
			return false
		}
	}
	return true
}

// smallest tells whether the set would no longer do without any one of its tasks.
func (d *delays) smallest(all []int, set uint64, left []float64) bool {
	for s := set; s != 0; s &= s - 1 {
		k := bits.TrailingZeros64(s)
		enough := true
		for r, x := range d.p.tasks[all[k]].takes {
			enough = enough && left[r]+x <= tie
		}
		if enough {
			return false
		}
	}
	return true
}
