package futures

import (
	"math"
	"testing"
)

// Published: known-answer vectors of Salmon et al. (Random123) for philox4x64 with 10 rounds. The last is NumPy 1.24.2's Philox,
// `numpy.random.Philox(counter=c-1, key=1931).random_raw(4)` with the words 41, 1792, 3, 12 in c, least first: it counts on before it draws.
func TestPhiloxPublishedKnownAnswers(t *testing.T) {
	all := uint64(math.MaxUint64)
	for _, c := range []struct {
		counter [4]uint64
		key     [2]uint64
		want    [4]uint64
	}{
		{[4]uint64{}, [2]uint64{}, [4]uint64{0x16554d9eca36314c, 0xdb20fe9d672d0fdc, 0xd7e772cee186176b, 0x7e68b68aec7ba23b}},
		{[4]uint64{all, all, all, all}, [2]uint64{all, all}, [4]uint64{0x87b092c3013fe90b, 0x438c3c67be8d0224, 0x9cc7d7c69cd777b6, 0xa09caebf594f0ba0}},
		{
			[4]uint64{0x243f6a8885a308d3, 0x13198a2e03707344, 0xa4093822299f31d0, 0x082efa98ec4e6c89},
			[2]uint64{0x452821e638d01377, 0xbe5466cf34e90c6c},
			[4]uint64{0xa528f45403e61d95, 0x38c72dbd566e9788, 0xa5a1610e72fd18b5, 0x57bd43b5e52b7fe6},
		},
		{[4]uint64{41, 1792, 3, 12}, [2]uint64{1931, 0}, [4]uint64{0x050bf1851ef385f5, 0xfb00876107710d1b, 0xc0adba03f0d0c8da, 0xc99f4d24b918836d}},
	} {
		var got [4]uint64
		got[0], got[1], got[2], got[3] = philox(c.counter[0], c.counter[1], c.counter[2], c.counter[3], scheduleOf(c.key[0], c.key[1]))
		if got != c.want {
			t.Errorf("philox(%x, %x) = %x, published %x", c.counter, c.key, got, c.want)
		}
	}
}
