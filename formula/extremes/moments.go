package extremes

import (
	"math"
	"slices"
)

// weighted gives the first three probability weighted moments, unbiased: b_r = mean of x_(j) C(j-1, r)/C(n-1, r) over the sorted sample.
func weighted(maxima []float64) (b0, b1, b2 float64) {
	x := slices.Sorted(slices.Values(maxima))
	n := float64(len(x))
	for j, v := range x {
		k := float64(j)
		b0 += v / n
		b1 += v * k / (n - 1) / n
		b2 += v * k * (k - 1) / (n - 1) / (n - 2) / n
	}
	return b0, b1, b2
}

// euler is the Euler-Mascheroni constant.
const euler = 0.57721566490153286

// GumbelMoments fits Gumbel's law by probability weighted moments: scale = (2 b1 - b0)/ln 2, location = b0 - 0.5772 scale.
func GumbelMoments(maxima []float64) Law {
	b0, b1, _ := weighted(maxima)
	scale := (2*b1 - b0) / math.Ln2
	return Law{Location: b0 - euler*scale, Scale: scale}
}

// Moments fits the three-parameter law by probability weighted moments (Hosking, Wallis and Wood 1985, eq. 12 to 15), with their equation for
// the shape solved, not approximated.
func Moments(maxima []float64) Law {
	b0, b1, b2 := weighted(maxima)
	want := (3*b2 - b0) / (2*b1 - b0)
	// With k = -shape: (1 - 3^-k)/(1 - 2^-k) falls from 2.37 at k = -0.95 to near 1; halve.
	lo, hi := -0.95, 8.0
	for range 200 {
		mid := (lo + hi) / 2
		if ratio(mid) > want {
			lo = mid
		} else {
			hi = mid
		}
	}
	k := (lo + hi) / 2
	if math.Abs(k) < 1e-7 {
		return GumbelMoments(maxima)
	}
	g := math.Gamma(1 + k)
	scale := (2*b1 - b0) * k / (g * -math.Expm1(-k*math.Ln2))
	return Law{Location: b0 + scale*(g-1)/k, Scale: scale, Shape: -k}
}

func ratio(k float64) float64 {
	if math.Abs(k) < 1e-12 {
		return math.Log(3) / math.Ln2
	}
	return math.Expm1(-k*math.Log(3)) / math.Expm1(-k*math.Ln2)
}
