package network

import (
	"encoding/binary"
	"slices"
)

// cutset is a moment in a schedule so far: the time, and when the running tasks end, in the order of their numbers.
type cutset struct {
	at      float64
	running []int
	ends    []float64
}

// mostCutsets is how many are kept.
const mostCutsets = 500_000

func (d *delays) moments(now float64, running []int) cutset {
	c := cutset{at: now, running: slices.Clone(running)}
	slices.Sort(c.running)
	for _, i := range c.running {
		c.ends = append(c.ends, d.start[i]+d.days[i])
	}
	return c
}

// dominated tells whether a schedule of the same tasks was tried before that was there no later and whose running tasks end no later.
func (d *delays) dominated(c cutset, key string) bool {
	for _, old := range d.cutsets[key] {
		if old.at > c.at+tie {
			continue
		}
		worse := true
		for k, i := range old.running {
			end := c.at
			if n, found := slices.BinarySearch(c.running, i); found {
				end = c.ends[n]
			}
			if old.ends[k] > end+tie {
				worse = false
				break
			}
		}
		if worse {
			return true
		}
	}
	return false
}

// key is the set of tasks started.
func (d *delays) key() string {
	b := make([]byte, 8*((len(d.start)+63)/64))
	for i, s := range d.start {
		if s >= 0 {
			at := 8 * (i / 64)
			binary.LittleEndian.PutUint64(b[at:], binary.LittleEndian.Uint64(b[at:])|1<<(i%64))
		}
	}
	return string(b)
}
