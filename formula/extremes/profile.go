package extremes

import (
	"math"

	"gonum.org/v1/gonum/optimize"
)

// Interval is the profile likelihood interval of the return level of that period: the levels at which twice the fall of the log likelihood,
// all else fitted anew, stays under drop (1.6424 for 80 %, 3.8415 for 95 %, the quantiles of chi-square with one degree of freedom). An end that
// the data leave open is infinite.
func (f Fit) Interval(period, drop float64) (low, high float64) {
	top := f.ReturnLevel(period)
	over := func(x float64) float64 { return 2*(f.LogLikelihood-f.profile(x, period)) - drop }
	return f.edge(top, -1, drop, over), f.edge(top, 1, drop, over)
}

// edge is where over comes to nothing: from top, where it is -drop, in steps that double until it is above, then by false position, the end that stays
// counted half (the Illinois rule). Every trial is a search of its own, so that few are worth having.
func (f Fit) edge(top, way, drop float64, over func(float64) float64) float64 {
	in, below, step := top, -drop, 0.1*f.Scale
	out := top + way*step
	above := over(out)
	for above < 0 {
		in, below = out, above
		step *= 2
		out += way * step
		if step > 1e5*f.Scale {
			return math.Inf(int(way))
		}
		above = over(out)
	}
	at, stays := in, 0
	for range 100 {
		before := at
		if at = (in + out) / 2; !math.IsInf(above, 1) { // a level that no law allows gives no slope
			at = in - below*(out-in)/(above-below)
		}
		y := over(at)
		if math.Abs(at-before) < 1e-10*f.Scale || y == 0 {
			break
		}
		switch {
		case y < 0:
			if in, below = at, y; stays < 0 {
				above /= 2
			}
			stays = -1
		default:
			if out, above = at, y; stays > 0 {
				below /= 2
			}
			stays = 1
		}
	}
	return at
}

// profile is the greatest log likelihood of laws whose return level of that period is x.
func (f Fit) profile(x, period float64) float64 {
	y := -math.Log1p(-1 / period)
	law := func(scale, shape float64) Law {
		return Law{Location: x - scale*quantileFactor(y, shape), Scale: scale, Shape: shape}
	}
	if f.gumbel {
		return golden(func(v float64) float64 { return law(math.Exp(v), 0).LogLikelihood(f.maxima) }, math.Log(f.Scale)-5, math.Log(f.Scale)+12)
	}
	down := func(v []float64) float64 {
		if v[1] <= leastShape || v[1] >= mostShape {
			return math.Inf(1)
		}
		return -law(f.Scale*math.Exp(v[0]), v[1]).LogLikelihood(f.maxima)
	}
	best := math.Inf(-1)
	for _, start := range f.starts(down) {
		r, _ := optimize.Minimize(optimize.Problem{Func: down}, start, settings(), &optimize.NelderMead{SimplexSize: 0.1})
		if r == nil {
			continue
		}
		if again, _ := optimize.Minimize(optimize.Problem{Func: down}, r.X, settings(), &optimize.NelderMead{SimplexSize: 0.03}); again != nil {
			r = again
		}
		best = max(best, -r.F)
	}
	return best
}

// starts are the best few points of a coarse net over scale and shape.
func (f Fit) starts(down func([]float64) float64) [][]float64 {
	best, value := []float64{0, f.Shape}, down([]float64{0, f.Shape})
	for _, a := range []float64{-0.4, -0.2, 0, 0.2, 0.5, 1, 2} {
		for _, b := range []float64{-0.8, -0.4, -0.2, -0.1, 0, 0.1, 0.2, 0.4, 0.8, 1.5} {
			if v := down([]float64{a, f.Shape + b}); v < value {
				best, value = []float64{a, f.Shape + b}, v
			}
		}
	}
	if math.IsInf(value, 1) {
		return nil
	}
	return [][]float64{best}
}

// golden is the greatest value of a function with one top in [lo, hi], by golden section.
func golden(fn func(float64) float64, lo, hi float64) float64 {
	const g = 0.6180339887498949
	a, b := hi-g*(hi-lo), lo+g*(hi-lo)
	fa, fb := fn(a), fn(b)
	for hi-lo > 1e-9 {
		if fa < fb {
			lo, a, fa = a, b, fb
			b = lo + g*(hi-lo)
			fb = fn(b)
		} else {
			hi, b, fb = b, a, fa
			a = hi - g*(hi-lo)
			fa = fn(a)
		}
	}
	return max(fa, fb)
}
