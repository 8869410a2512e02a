package futures

import "math"

// Difference is what separates two plans on the same futures: the mean of the second less the first, with the standard error of that mean.
type Difference struct{ Mean, SE float64 }

// Compare takes one measure of two plans future by future, leaving out futures in which it is infinite in either.
func Compare(a, b []Outcome, of func(*Outcome) float64) Difference {
	n, mean, m2 := 0.0, 0.0, 0.0
	for i := range min(len(a), len(b)) {
		d := of(&b[i]) - of(&a[i])
		if math.IsNaN(d) || math.IsInf(d, 0) {
			continue
		}
		n++
		e := d - mean
		mean += e / n
		m2 += e * (d - mean)
	}
	if n < 2 {
		return Difference{mean, math.NaN()}
	}
	return Difference{mean, math.Sqrt(m2 / (n - 1) / n)}
}

// Burden is the whole of what a future cost: what was paid and the income lost.
func Burden(o *Outcome) float64 { return o.Cost + o.Income }

// Net is the burden less what is left of the last docking at the end: what plans with dockings in different years are compared by.
func Net(o *Outcome) float64 { return Burden(o) - o.Left }
