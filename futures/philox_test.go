package futures

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// Published: known-answer vectors of Salmon et al. for philox4x32 with 10 rounds.
func TestPhiloxPublishedKnownAnswers(t *testing.T) {
	all := uint32(0xffffffff)
	for _, c := range []struct {
		counter [4]uint32
		key     [2]uint32
		want    [4]uint32
	}{
		{[4]uint32{}, [2]uint32{}, [4]uint32{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8}},
		{[4]uint32{all, all, all, all}, [2]uint32{all, all}, [4]uint32{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd}},
		{[4]uint32{0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, [2]uint32{0xa4093822, 0x299f31d0}, [4]uint32{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1}},
	} {
		var got [4]uint32
		got[0], got[1], got[2], got[3] = philox(c.counter[0], c.counter[1], c.counter[2], c.counter[3], c.key[0], c.key[1])
		if got != c.want {
			t.Errorf("philox(%x, %x) = %x, published %x", c.counter, c.key, got, c.want)
		}
	}
}

// Reference: gonum's normal quantile.
func TestNormalQuantile(t *testing.T) {
	n := distuv.UnitNormal
	for u := 0.0005; u < 1; u += 0.0005 {
		want := n.Quantile(u)
		if math.Abs(normal(u)-want) > 2e-9*max(1, math.Abs(want)) {
			t.Fatalf("normal(%g) = %g, want %g", u, normal(u), want)
		}
	}
}
