package futures

// philox is the Philox 4x32-10 bijection of a 128-bit counter under a 64-bit key.
//
// Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11, 2011, section 4 and its known-answer vectors.
//
// The counter's and the key's words stand apart, not in arrays, so that they stay in registers: half the time of a future goes into these ten rounds.
func philox(c0, c1, c2, c3, k0, k1 uint32) (r0, r1, r2, r3 uint32) {
	const (
		m0, m1 = 0xD2511F53, 0xCD9E8D57 // multipliers
		w0, w1 = 0x9E3779B9, 0xBB67AE85 // Weyl increments of the key
	)
	for range 10 {
		p0, p1 := uint64(m0)*uint64(c0), uint64(m1)*uint64(c2)
		c0, c1, c2, c3 = uint32(p1>>32)^c1^k0, uint32(p1), uint32(p0>>32)^c3^k1, uint32(p0)
		k0 += w0
		k1 += w1
	}
	return c0, c1, c2, c3
}

// stream addresses the draws of one future. Redraw names one group of variables that is taken from another, independent future instead.
type stream struct {
	key    [2]uint32
	future uint32
	redraw group
	other  uint32
}

// group is a set of variables that are uncertain together: what the sensitivity figures speak of.
type group uint16

// noGroup is never redrawn; others, added to a group, redraws all but that group.
const (
	noGroup group = 0x7FFF
	others  group = 0x8000
)

func newStream(seed uint64, future int) stream {
	return stream{key: [2]uint32{uint32(seed), uint32(seed >> 32)}, future: uint32(future), redraw: noGroup}
}

// uniforms gives two numbers in (0, 1), 53 bits each, for use n of variable v in group g.
func (s *stream) uniforms(g group, v, n int) (float64, float64) {
	future := s.future
	if s.redraw != noGroup && (g == s.redraw&^others) != (s.redraw&others != 0) {
		future = s.other
	}
	r0, r1, r2, r3 := philox(future, uint32(g), uint32(v), uint32(n), s.key[0], s.key[1])
	return unit(r0, r1), unit(r2, r3)
}

func unit(hi, lo uint32) float64 {
	return (float64((uint64(hi)<<32|uint64(lo))>>11) + 0.5) / (1 << 53)
}
