package extremes

import (
	"math"
	"slices"
)

// AndersonDarling is the distance A² of a sample from a law, weighted towards the tails: -n - mean of (2i-1)(ln F(x_i) + ln(1 - F(x_n+1-i))).
func AndersonDarling(maxima []float64, l Law) float64 {
	x := slices.Sorted(slices.Values(maxima))
	n := len(x)
	sum := 0.0
	for i := range n {
		below := -l.reduced(x[i])
		above := math.Log(-math.Expm1(-l.reduced(x[n-1-i])))
		sum += float64(2*i+1) * (below + above)
	}
	return -float64(n) - sum/float64(n)
}

// GumbelCritical is the value that A² of a Gumbel law fitted to n maxima exceeds by chance once in twenty: 0.757/(1 + 0.2/sqrt n) (Stephens
// 1977, as SciPy's anderson carries it).
func GumbelCritical(n int) float64 { return 0.757 / (1 + 0.2/math.Sqrt(float64(n))) }
