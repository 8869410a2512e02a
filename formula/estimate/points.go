package estimate

import "math/bits"

// Points in the unit cube that fill it far more evenly than chance does: the Sobol sequence, sixteen dimensions at a time, each group in an
// order of its own and each dimension scrambled, all by a hash of the seed. Any number of dimensions, any point by its number, the same every
// time.
//
// Source: Burley, Practical Hash-based Owen Scrambling, Journal of Computer Graphics Techniques 9(4), 2020; direction numbers of the first
// sixteen dimensions as Joe and Kuo list them (SIAM Journal on Scientific Computing 30, 2008); the hash is Vegdahl's (2021).

const group = 16 // dimensions taken together

// directions of each dimension, from its primitive polynomial (as bits, the highest power first) and first numbers.
var directions = [group][32]uint32{
	{}, // the first is the number with its bits reversed: see nibbles
	sobolDirections(0b11, 1),
	sobolDirections(0b111, 1, 3),
	sobolDirections(0b1011, 1, 3, 1),
	sobolDirections(0b1101, 1, 1, 1),
	sobolDirections(0b10011, 1, 1, 3, 3),
	sobolDirections(0b11001, 1, 3, 5, 13),
	sobolDirections(0b100101, 1, 1, 5, 5, 17),
	sobolDirections(0b101001, 1, 1, 5, 5, 5),
	sobolDirections(0b101111, 1, 1, 7, 11, 19),
	sobolDirections(0b110111, 1, 1, 5, 1, 1),
	sobolDirections(0b111011, 1, 1, 1, 3, 11),
	sobolDirections(0b111101, 1, 3, 5, 5, 31),
	sobolDirections(0b1000011, 1, 3, 3, 9, 7, 49),
	sobolDirections(0b1011011, 1, 1, 1, 15, 21, 21),
	sobolDirections(0b1100001, 1, 3, 1, 13, 27, 49),
}

func sobolDirections(polynomial uint32, first ...uint32) (v [32]uint32) {
	degree := len(first)
	for i := range v {
		if i < degree {
			v[i] = first[i] << (31 - i)
			continue
		}
		v[i] = v[i-degree] ^ v[i-degree]>>degree
		for k := 1; k < degree; k++ {
			if polynomial>>(degree-k)&1 == 1 {
				v[i] ^= v[i-k]
			}
		}
	}
	return v
}

// nibbles are the directions of each dimension taken together, for every value of each four bits of the number.
var nibbles = func() (t [group][8][16]uint32) {
	for d := range t {
		for k := range t[d] {
			for bit := range 4 {
				step := directions[d][4*k+bit]
				if d == 0 {
					step = 1 << (31 - 4*k - bit)
				}
				for v := range t[d][k] {
					if v>>bit&1 == 1 {
						t[d][k][v] ^= step
					}
				}
			}
		}
	}
	return t
}()

func sobol(index uint32, dimension int) uint32 {
	t := &nibbles[dimension]
	return t[0][index&15] ^ t[1][index>>4&15] ^ t[2][index>>8&15] ^ t[3][index>>12&15] ^
		t[4][index>>16&15] ^ t[5][index>>20&15] ^ t[6][index>>24&15] ^ t[7][index>>28]
}

// scramble is an Owen scrambling of the bits of x: each bit is turned over or not by what stands above it.
func scramble(x, seed uint32) uint32 {
	x = bits.Reverse32(x)
	x ^= x * 0x3d20adea // even factors: a bit is turned by lower bits only
	x += seed
	x *= seed>>16 | 1
	x ^= x * 0x05526c56
	x ^= x * 0x53a22864
	return bits.Reverse32(x)
}

// mix is a hash of two numbers (the finisher of MurmurHash3 over their sum).
func mix(seed, n uint32) uint32 {
	x := seed + 0x9e3779b9*(n+1)
	x ^= x >> 16
	x *= 0x85ebca6b
	x ^= x >> 13
	x *= 0xc2b2ae35
	return x ^ x>>16
}

// Point fills u with the coordinates, each in (0, 1), of point number index under the seed.
func Point(index, seed uint32, u []float64) {
	for at := 0; at < len(u); at += group {
		order := mix(seed, uint32(at))
		shuffled := scramble(index, order)
		for d := range min(group, len(u)-at) {
			x := scramble(sobol(shuffled, d), mix(order, uint32(d)))
			u[at+d] = (float64(x) + 0.5) / (1 << 32)
		}
	}
}
