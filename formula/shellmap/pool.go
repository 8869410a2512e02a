package shellmap

import (
	"cmp"
	"math"
	"slices"
)

// pool joins readings that lie in one square of an eighth of a range into one, at their weighted middle, weights the inverse of their variance
// about the smooth part. What is returned carries the joint standard deviation with the nugget in it, so it must be used with nugget 0.
func pool(readings []Reading, k Kernel) []Reading {
	const part = 8
	type key struct{ i, j int }
	square := func(r Reading) key {
		return key{int(math.Floor(r.X / k.RangeX * part)), int(math.Floor(r.Y / k.RangeY * part))}
	}
	sums := map[key]*[4]float64{} // weight, weighted x, y, value
	for _, r := range readings {
		s := square(r)
		p := sums[s]
		if p == nil {
			p = new([4]float64)
			sums[s] = p
		}
		w := 1 / k.noise(r.SD)
		p[0] += w
		p[1] += w * r.X
		p[2] += w * r.Y
		p[3] += w * r.Value
	}
	keys := make([]key, 0, len(sums))
	for s := range sums {
		keys = append(keys, s)
	}
	slices.SortFunc(keys, func(a, b key) int { return cmp.Or(cmp.Compare(a.i, b.i), cmp.Compare(a.j, b.j)) })
	out := make([]Reading, len(keys))
	for n, s := range keys {
		p := sums[s]
		out[n] = Reading{X: p[1] / p[0], Y: p[2] / p[0], Value: p[3] / p[0], SD: math.Sqrt(1 / p[0])}
	}
	return out
}
