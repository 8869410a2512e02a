package reliability

import (
	"math"
	"slices"
)

// integrate averages f over a normal law of that mean and deviation, piece by piece between the points where the worths jump or the best course may
// change, so that each piece is smooth.
func (in MeasureIn) integrate(mean, sd, prior, left float64, f func(x, weight float64) float64) float64 {
	if sd <= 0 {
		return f(mean, 1)
	}
	const reach = 9.0
	cuts := []float64{mean - reach*sd, mean + reach*sd}
	for i := range 64 {
		cuts = append(cuts, mean+reach*sd*(2*float64(i)/64-1))
	}
	cuts = append(cuts, in.turns(mean-reach*sd, mean+reach*sd, left)...)
	slices.Sort(cuts)
	sum, total := 0.0, 0.0
	for i := 1; i < len(cuts); i++ {
		a, b := cuts[i-1], cuts[i]
		if b-a < 1e-14*prior {
			continue
		}
		for k, x := range gaussX {
			at := a + (b-a)*(1+x)/2
			z := (at - mean) / sd
			weight := gaussW[k] * (b - a) / 2 * math.Exp(-z*z/2) / (sd * math.Sqrt(2*math.Pi))
			total += weight
			sum += weight * f(at, weight)
		}
	}
	if total == 0 { // a spread that the digits of the mean can't show: a look that says next to nothing
		return f(mean, 1)
	}
	return sum / total
}

// turns are the points where two courses are worth the same, or a worth jumps.
func (in MeasureIn) turns(low, high, left float64) (cuts []float64) {
	for _, c := range in.Courses {
		if c.Limit != nil {
			cuts = append(cuts, *c.Limit)
		}
	}
	if left == 0 {
		cuts = append(cuts, in.crossings()...)
		return inside(cuts, low, high)
	}
	const n = 400
	for i, a := range in.Courses {
		for _, b := range in.Courses[:i] {
			d := func(x float64) float64 { return a.expected(x, left) - b.expected(x, left) }
			for k := range n {
				x, y := low+(high-low)*float64(k)/n, low+(high-low)*float64(k+1)/n
				if d(x)*d(y) >= 0 {
					continue
				}
				for range 60 {
					mid := (x + y) / 2
					if d(x)*d(mid) <= 0 {
						y = mid
					} else {
						x = mid
					}
				}
				cuts = append(cuts, (x+y)/2)
			}
		}
	}
	return inside(cuts, low, high)
}

// crossings are where the straight pieces of two courses cross, on either side of their limits.
func (in MeasureIn) crossings() (cuts []float64) {
	for i, a := range in.Courses {
		for _, b := range in.Courses[:i] {
			if a.Slope == b.Slope {
				continue
			}
			for _, la := range []float64{0, a.Loss} {
				for _, lb := range []float64{0, b.Loss} {
					cuts = append(cuts, (b.Worth-lb-a.Worth+la)/(a.Slope-b.Slope))
				}
			}
		}
	}
	return cuts
}

func inside(list []float64, low, high float64) []float64 {
	return slices.DeleteFunc(list, func(x float64) bool { return !(x > low && x < high) })
}
