package futures

import (
	"iter"
	"math/bits"
)

// set is a set of parts, a bit each, so that a docking takes them sixty-four at a time.
type set []uint64

func newSet(parts int) set { return make(set, (parts+63)/64) }

func setOf(parts int, list []int) set {
	s := newSet(parts)
	for _, p := range list {
		s.add(p)
	}
	return s
}

func (s set) has(p int) bool { return s[p>>6]>>(p&63)&1 != 0 }
func (s set) add(p int)      { s[p>>6] |= 1 << (p & 63) }
func (s set) drop(p int)     { s[p>>6] &^= 1 << (p & 63) }

func (s set) empty() bool {
	for _, w := range s {
		if w != 0 {
			return false
		}
	}
	return true
}

// join adds the parts of another set.
func (s set) join(o set) {
	for i := range s {
		s[i] |= o[i]
	}
}

// less takes the parts of another set away.
func (s set) less(o set) {
	for i := range s {
		s[i] &^= o[i]
	}
}

// all goes through the parts in their order; the one it stands on may be dropped on the way.
func (s set) all() iter.Seq[int] {
	return func(yield func(int) bool) {
		for i, w := range s {
			for ; w != 0; w &= w - 1 {
				if !yield(i<<6 + bits.TrailingZeros64(w)) {
					return
				}
			}
		}
	}
}
