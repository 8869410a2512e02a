package shellmap

import "math"

// factor turns the lower triangle of the n by n matrix a (rows of n) into its Cholesky factor in place; false where a is not positive definite.
func factor(a []float64, n int) bool {
	for i := range n {
		ri := a[i*n : i*n+i+1]
		for j := range i {
			rj := a[j*n : j*n+j+1]
			s := ri[j]
			for k, v := range rj[:j] {
				s -= ri[k] * v
			}
			ri[j] = s / rj[j]
		}
		d := ri[i]
		for _, v := range ri[:i] {
			d -= v * v
		}
		if !(d > 0) {
			return false
		}
		ri[i] = math.Sqrt(d)
	}
	return true
}

// forward solves L v = b in place.
func forward(l []float64, n int, b []float64) {
	for i := range n {
		row := l[i*n : i*n+i+1]
		s := b[i]
		for k, v := range row[:i] {
			s -= v * b[k]
		}
		b[i] = s / row[i]
	}
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, v := range a {
		s += v * b[i]
	}
	return s
}
