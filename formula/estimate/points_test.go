package estimate

import (
	"math"
	"testing"
)

// Identity: the first 2^k Sobol points put exactly one point into each of 2^k slices of every dimension, scrambled or not.
func TestPointsFillEverySlice(t *testing.T) {
	const n = 1 << 10
	u := make([]float64, 11)
	seen := make([][n]int, len(u))
	for i := range uint32(n) {
		Point(i, 7, u)
		for d, x := range u {
			if !(x > 0 && x < 1) {
				t.Fatalf("coordinate %g", x)
			}
			seen[d][int(x*n)]++
		}
	}
	for d := range seen {
		for slice, count := range seen[d] {
			if count != 1 {
				t.Fatalf("dimension %d, slice %d holds %d points", d, slice, count)
			}
		}
	}
}

// General library: SciPy 1.10.1, qmc.Sobol(16, scramble=False).random(16), which lists the same points in Gray code order; here the points of
// its rows 4, 7 and 13 (Gray codes 6, 4 and 11).
func TestSobolAgainstSciPy(t *testing.T) {
	for index, row := range map[uint32][group]float64{
		6:  {0.375, 0.375, 0.625, 0.875, 0.375, 0.125, 0.375, 0.875, 0.875, 0.625, 0.875, 0.375, 0.375, 0.625, 0.375, 0.875},
		4:  {0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625, 0.625, 0.875, 0.625, 0.125, 0.625, 0.375, 0.125, 0.125},
		11: {0.8125, 0.6875, 0.8125, 0.0625, 0.4375, 0.9375, 0.5625, 0.5625, 0.5625, 0.4375, 0.8125, 0.9375, 0.0625, 0.8125, 0.1875, 0.5625},
	} {
		for d, x := range row {
			if got := float64(sobol(index, d)) / (1 << 32); got != x {
				t.Errorf("point %d, dimension %d: %g, want %g", index, d, got, x)
			}
		}
	}
}

// Identity: pairs of dimensions, within a group of sixteen and across groups, don't lean on each other: five times the error of chance.
func TestPointsDontLean(t *testing.T) {
	const n = 1 << 12
	u := make([]float64, 20)
	var cross [20][20]float64
	for i := range uint32(n) {
		Point(i, 1, u)
		for a := range u {
			for b := range a {
				cross[a][b] += 12 * (u[a] - 0.5) * (u[b] - 0.5) / n
			}
		}
	}
	for a := range u {
		for b := range a {
			if math.Abs(cross[a][b]) > 5/math.Sqrt(n) {
				t.Errorf("dimensions %d and %d have correlation %g", a, b, cross[a][b])
			}
		}
	}
}
