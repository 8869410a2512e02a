package plating

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mathext"
)

// BinomialUpper is the one-sided upper bound of Clopper and Pearson (1934) on a share of which k among n were seen, at confidence c.
func BinomialUpper(k, n int, c float64) float64 {
	switch k {
	case n:
		return 1
	case 0:
		return 1 - math.Pow(1-c, 1/float64(n))
	}
	return mathext.InvRegIncBeta(float64(k+1), float64(n-k), c)
}

// HypergeometricUpper is the largest number of marked pieces among size that k marked ones in a draw of n don't contradict at confidence c:
// the largest d with P(X <= k) > 1 - c.
func HypergeometricUpper(k, n, size int, c float64) int {
	least, most := k, size-(n-k)
	// The chance falls as d grows: find the first d that is contradicted.
	i := sort.Search(most-least+1, func(i int) bool { return hypergeometricCDF(k, n, size, least+i) <= 1-c })
	return max(least+i-1, least)
}

// hypergeometricCDF is the chance of k or fewer marked ones in a draw of n from size pieces of which d are marked.
func hypergeometricCDF(k, n, size, d int) float64 {
	sum := 0.0
	all := choose(size, n)
	for x := max(0, n-(size-d)); x <= min(k, n, d); x++ {
		sum += math.Exp(choose(d, x) + choose(size-d, n-x) - all)
	}
	return min(sum, 1)
}

// choose is the logarithm of the binomial coefficient.
func choose(n, k int) float64 {
	a, _ := math.Lgamma(float64(n + 1))
	b, _ := math.Lgamma(float64(k + 1))
	c, _ := math.Lgamma(float64(n - k + 1))
	return a - b - c
}

// needed is the least number to draw so that the bound is at most wanted, with k marked ones among them; size 0 means without number.
func needed(k, size int, c, wanted float64) (int, bool) {
	if size == 0 {
		most := 1
		for BinomialUpper(k, k+most, c) > wanted {
			most *= 2
			if most > 1<<40 {
				return 0, false
			}
		}
		i := sort.Search(most, func(i int) bool { return BinomialUpper(k, k+1+i, c) <= wanted })
		return k + 1 + i, true
	}
	if float64(k) > wanted*float64(size) {
		return 0, false
	}
	start := max(k, 1)
	i := sort.Search(size-start, func(i int) bool { return float64(HypergeometricUpper(k, start+i, size, c)) <= wanted*float64(size) })
	return start + i, true
}
