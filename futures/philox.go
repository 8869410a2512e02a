package futures

import (
	"math"
	"math/bits"
)

// philox is the Philox 4x64-10 bijection of a 256-bit counter under a 128-bit key: four words of 64 bits at a call.
//
// Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11, 2011, section 4 and its known-answer vectors.
//
// The counter's words stand apart, not in an array, so that they stay in registers, and the key is counted on beforehand and not at every call.
func philox(c0, c1, c2, c3 uint64, k *schedule) (r0, r1, r2, r3 uint64) {
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[0][0], k[0][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[1][0], k[1][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[2][0], k[2][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[3][0], k[3][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[4][0], k[4][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[5][0], k[5][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[6][0], k[6][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[7][0], k[7][1])
	c0, c1, c2, c3 = round(c0, c1, c2, c3, k[8][0], k[8][1])
	return round(c0, c1, c2, c3, k[9][0], k[9][1])
}

func round(c0, c1, c2, c3, k0, k1 uint64) (r0, r1, r2, r3 uint64) {
	const m0, m1 = 0xD2E7470EE14C6C93, 0xCA5A826395121157 // multipliers
	h0, l0 := bits.Mul64(m0, c0)
	h1, l1 := bits.Mul64(m1, c2)
	return h1 ^ c1 ^ k0, l1, h0 ^ c3 ^ k1, l0
}

// schedule is a key as each of the ten rounds takes it.
type schedule [10][2]uint64

func scheduleOf(k0, k1 uint64) *schedule {
	const w0, w1 = 0x9E3779B97F4A7C15, 0xBB67AE8584CAA73B // Weyl increments
	s := &schedule{}
	for i := range s {
		s[i] = [2]uint64{k0 + uint64(i)*w0, k1 + uint64(i)*w1}
	}
	return s
}

// use is what a draw decides.
type use uint64

const (
	useZone      use = iota // how fast a zone wastes, when its protection dies and is mended
	useFirst                // how long the parts of a group last from now, eight at a call
	useGauge                // plates that are only read, eight at a call
	useRenewed              // the same, of parts renewed in a docking
	useFailure              // how much water a failure lets in, which pumps run, what stopping it costs, how long that lasts
	useTrouble              // whether a failure that is no trickle can be stopped, and whether it is found
	useEmergency            // whether a dock is free
	useBill                 // what all prices of a docking share, and its fixed part
	usePrice                // prices of works, eight at a call
	useGrowth               // how works grow, eight at a call
	useGiving               // how giving goes
	usePledge               // pledges kept, one after another
	useGift                 // large gifts, one after another
	useLook                 // the error of a measurement
)

// stream addresses the draws of one future. Redraw names one group of variables that is taken from another, independent future instead.
type stream struct {
	key           *schedule
	future, other uint64
	redraw        group
}

// group is a set of variables that are uncertain together: what the sensitivity figures speak of.
type group uint16

// noGroup is never redrawn; others, added to a group, redraws all but that group.
const (
	noGroup group = 0x7FFF
	others  group = 0x8000
)

func newStream(seed uint64, future int) stream {
	return stream{key: scheduleOf(seed, 0), future: uint64(future), redraw: noGroup}
}

// draw gives four words for a use, numbered by what v and time n it is for, of variables in group g. Where the words of one call belong to two groups
// it is called for the second again while something is redrawn: the same address in the other future.
func (s *stream) draw(g group, u use, v, n int) (w0, w1, w2, w3 uint64) {
	future := s.future
	if s.redraw != noGroup && (g == s.redraw&^others) != (s.redraw&others != 0) {
		future = s.other
	}
	return philox(future, uint64(u), uint64(v), uint64(n), s.key)
}

// eight are the draws of a row: half a word each, the other filled with the middle of what it could be. A chance is
// told apart to 2e-10.
type eight [8]uint64

func (s *stream) row(w *eight, g group, u use, v, n int) {
	a, b, c, d := s.draw(g, u, v, n)
	w[0], w[1] = halves(a) // one by one: a whole array would be copied in at twice the time
	w[2], w[3] = halves(b)
	w[4], w[5] = halves(c)
	w[6], w[7] = halves(d)
}

func halves(w uint64) (high, low uint64) {
	const middle = 1 << 31
	return w>>32<<32 | middle, w<<32 | middle
}

// words are draws of one use one after another, as many as somebody asks for.
type words struct {
	s    *stream
	g    group
	u    use
	v, n int
	four [4]uint64
}

func (w *words) next() uint64 {
	i := w.n & 3
	if i == 0 {
		w.four[0], w.four[1], w.four[2], w.four[3] = w.s.draw(w.g, w.u, w.v, w.n/4)
	}
	w.n++
	return w.four[i]
}

// unit makes a number in (0, 1), 53 bits, of a word.
func unit(w uint64) float64 { return (float64(int64(w>>11)) + 0.5) / (1 << 53) }

// wordOf is the last word of a share of all.
func wordOf(share float64) uint64 {
	if share >= 1 {
		return math.MaxUint64
	}
	return uint64(math.Ldexp(share, 64))
}
