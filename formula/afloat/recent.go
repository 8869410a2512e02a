package afloat

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"

	"oakum/formula/hullform"
)

// made is a hull and what was found of its mesh.
type made struct {
	key      [sha256.Size]byte
	form     *hullform.Hull
	warnings []string
}

// recent holds the last few hulls made, by what they were made of. Making one takes a tenth of a second, a state of rest a fraction of a
// millisecond, and a hull never changes: the answer is the same with and without.
var recent struct {
	sync.Mutex
	list []made
}

const mostRecent = 8

func remembered(key [sha256.Size]byte) (made, bool) {
	recent.Lock()
	defer recent.Unlock()
	for _, m := range recent.list {
		if m.key == key {
			return m, true
		}
	}
	return made{}, false
}

func remember(m made) {
	recent.Lock()
	defer recent.Unlock()
	if len(recent.list) >= mostRecent {
		recent.list = append([]made(nil), recent.list[1:]...)
	}
	recent.list = append(recent.list, m)
}

// print is what a hull is made of, as a hash.
func (h Hull) print() (key [sha256.Size]byte) {
	d := sha256.New()
	var word [8]byte
	number := func(u uint64) {
		binary.LittleEndian.PutUint64(word[:], u)
		d.Write(word[:])
	}
	list := func(v []float64) {
		number(uint64(len(v)))
		for _, x := range v {
			number(math.Float64bits(x))
		}
	}
	if o := h.Offsets; o != nil {
		for _, v := range [][]float64{o.Stations, o.Waterlines, o.Keel, o.Deck, o.DeckBreadths} {
			list(v)
		}
		for _, v := range o.HalfBreadths {
			list(v)
		}
	}
	number(uint64(len(h.Vertices)))
	for _, v := range h.Vertices {
		list(v)
	}
	for _, t := range h.Triangles {
		number(uint64(len(t)))
		for _, k := range t {
			number(uint64(k))
		}
	}
	d.Sum(key[:0])
	return key
}
