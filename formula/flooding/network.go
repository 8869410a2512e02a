package flooding

import "math"

// exact is the error allowed of a step, in metres of water.
const exact = 1e-6

// Run lets the water run for a time (s) from the volumes v (m3) and gives those after it. Each step is of the second order and damps what closes in
// on rest at once, whatever its length (Rosenbrock method of Verwer and others); its length follows the error. What leaves one basin enters another to
// the rounding of the machine.
func (n Network) Run(v []float64, time float64) []float64 {
	v = append([]float64(nil), v...)
	h := time
	for t, tries := 0.0, 0; t < time && tries < 200000; tries++ {
		h = min(h, time-t)
		next, miss, ok := n.step(v, h)
		if !ok || miss > exact && h > 1e-9*time {
			h *= min(max(0.9*math.Sqrt(exact/max(miss, 1e-300)), 0.1), 0.5)
			continue
		}
		t += h
		v = next
		h *= min(max(0.9*math.Sqrt(exact/max(miss, 1e-300)), 0.5), 4)
	}
	return v
}

// gamma makes the step damp fully what is infinitely fast.
var gamma = 1 - 1/math.Sqrt2

func (n Network) step(v []float64, h float64) (next []float64, miss float64, ok bool) {
	j := n.slopes(v)
	m := factor(j, gamma*h)
	if m == nil {
		return nil, math.Inf(1), false
	}
	k1 := m.solve(n.Rates(v))
	mid := make([]float64, len(v))
	for i := range v {
		mid[i] = v[i] + h*k1[i]
	}
	k2 := n.Rates(mid)
	for i := range k2 {
		k2[i] -= 2 * k1[i]
	}
	k2 = m.solve(k2)
	next, gap := make([]float64, len(v)), make([]float64, len(v))
	for i := range v {
		next[i] = v[i] + h*(1.5*k1[i]+0.5*k2[i])
		gap[i] = h * 0.5 * (k1[i] + k2[i])
	}
	miss = n.worst(next, gap)
	for i, b := range n.Basins { // no basin gives more than it has
		if next[i] < -exact*b.Plan {
			return nil, max(miss, 4*exact), false
		}
	}
	return next, miss, !math.IsNaN(miss)
}

// factored is a matrix I - g J taken apart into triangles.
type factored struct {
	a    [][]float64
	turn []int
}

// factor takes I - g J apart by elimination with the largest element of a column first; nil where it has no inverse.
func factor(j [][]float64, g float64) *factored {
	n := len(j)
	f := &factored{a: make([][]float64, n), turn: make([]int, n)}
	for i := range j {
		f.a[i] = make([]float64, n)
		for k := range j[i] {
			f.a[i][k] = -g * j[i][k]
		}
		f.a[i][i]++
	}
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(f.a[r][c]) > math.Abs(f.a[best][c]) {
				best = r
			}
		}
		if !(math.Abs(f.a[best][c]) > 1e-300) {
			return nil
		}
		f.a[c], f.a[best], f.turn[c] = f.a[best], f.a[c], best
		for r := c + 1; r < n; r++ {
			f.a[r][c] /= f.a[c][c]
			for k := c + 1; k < n; k++ {
				f.a[r][k] -= f.a[r][c] * f.a[c][k]
			}
		}
	}
	return f
}

func (f *factored) solve(b []float64) []float64 {
	x := append([]float64(nil), b...)
	for c := range x {
		x[c], x[f.turn[c]] = x[f.turn[c]], x[c]
	}
	for c := range x {
		for r := c + 1; r < len(x); r++ {
			x[r] -= f.a[r][c] * x[c]
		}
	}
	for c := len(x) - 1; c >= 0; c-- {
		for k := c + 1; k < len(x); k++ {
			x[c] -= f.a[c][k] * x[k]
		}
		x[c] /= f.a[c][c]
	}
	return x
}
