package futures

// philox is the Philox 4x32-10 bijection of a 128-bit counter under a 64-bit key.
//
// Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11, 2011, section 4 and its known-answer vectors.
func philox(c [4]uint32, k [2]uint32) [4]uint32 {
	const (
		m0, m1 = 0xD2511F53, 0xCD9E8D57 // multipliers
		w0, w1 = 0x9E3779B9, 0xBB67AE85 // Weyl increments of the key
	)
	for range 10 {
		p0, p1 := uint64(m0)*uint64(c[0]), uint64(m1)*uint64(c[2])
		c = [4]uint32{uint32(p1>>32) ^ c[1] ^ k[0], uint32(p1), uint32(p0>>32) ^ c[3] ^ k[1], uint32(p0)}
		k[0] += w0
		k[1] += w1
	}
	return c
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
	r := philox([4]uint32{future, uint32(g), uint32(v), uint32(n)}, s.key)
	return unit(r[0], r[1]), unit(r[2], r[3])
}

func unit(hi, lo uint32) float64 {
	return (float64((uint64(hi)<<32|uint64(lo))>>11) + 0.5) / (1 << 53)
}
