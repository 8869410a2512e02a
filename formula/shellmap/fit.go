package shellmap

import (
	"math"

	"gonum.org/v1/gonum/optimize"
)

// Given holds what of a kernel is known beforehand; nil is to be fitted.
type Given struct{ SD, RangeX, RangeY, Nugget, Mean *float64 }

// Fit finds the kernel under which the readings are likeliest, by the simplex method over logarithms, with a weak leaning that keeps few readings
// from giving absurd ranges: ranges about a fifth of the extent (counted as a quarter of the longer one at least), within a factor of e, the nugget about a third of the scatter, within e^1.5. From
// a few dozen readings on the data decide. It returns the kernel and its log likelihood without the leaning.
func Fit(readings []Reading, given Given) (Kernel, float64) {
	start := guess(readings, given)
	likelihood, relink := likelihoodOf(readings, start, given.Mean)
	var free []*float64
	k := start
	for _, p := range []struct {
		given *float64
		at    *float64
	}{{given.SD, &k.SD}, {given.RangeX, &k.RangeX}, {given.RangeY, &k.RangeY}, {given.Nugget, &k.Nugget}} {
		if p.given == nil {
			free = append(free, p.at)
		}
	}
	k = climb(k, start, free, &k, likelihood)
	if relink != nil && len(free) > 0 { // once more, with neighbours by the ranges found
		relink(k)
		k = climb(k, start, free, &k, likelihood)
	}
	return k, likelihood(k)
}

// likelihoodOf is exact for few readings, chained beyond; a chain can be linked anew.
func likelihoodOf(readings []Reading, start Kernel, mean *float64) (likelihood func(Kernel) float64, relink func(Kernel)) {
	if len(readings) <= chainLinks*12 {
		return func(k Kernel) float64 { return exactLikelihood(readings, k, mean) }, nil
	}
	c := chain(readings, start, newIndex(readings, start))
	return func(k Kernel) float64 { return c.logLikelihood(k, mean) }, c.link
}

func exactLikelihood(readings []Reading, k Kernel, mean *float64) float64 {
	m := &Map{Kernel: k, local: k, readings: readings}
	if m.condition(mean) != nil {
		return math.Inf(-1)
	}
	n := len(readings)
	sum := -dot(m.v, m.v)/2 - float64(n)/2*math.Log(2*math.Pi)
	for i := range n {
		sum -= math.Log(m.l[i*n+i])
	}
	return sum
}

// guess is the kernel to start from: scatter split between field and nugget, ranges a fifth of the extent.
func guess(readings []Reading, given Given) Kernel {
	n := float64(len(readings))
	mean, square, sd2 := 0.0, 0.0, 0.0
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, r := range readings {
		mean += r.Value / n
		sd2 += r.SD * r.SD / n
		x0, x1, y0, y1 = min(x0, r.X), max(x1, r.X), min(y0, r.Y), max(y1, r.Y)
	}
	for _, r := range readings {
		square += (r.Value - mean) * (r.Value - mean) / n
	}
	scatter := math.Sqrt(max(square, sd2/4, 1e-18*mean*mean, 1e-24))
	extent := max(x1-x0, y1-y0, 1e-3)
	k := Kernel{SD: 0.9 * scatter, RangeX: max(x1-x0, extent/4) / 5, RangeY: max(y1-y0, extent/4) / 5, Nugget: scatter / 3}
	for _, p := range []struct{ from, to *float64 }{{given.SD, &k.SD}, {given.RangeX, &k.RangeX}, {given.RangeY, &k.RangeY}, {given.Nugget, &k.Nugget}} {
		if p.from != nil {
			*p.to = *p.from
		}
	}
	return k
}

// climb walks the free parts of the kernel up the likelihood with its leaning towards the centre.
func climb(from, centre Kernel, free []*float64, k *Kernel, likelihood func(Kernel) float64) Kernel {
	if len(free) == 0 {
		return from
	}
	set := func(v []float64) {
		for i, p := range free {
			*p = math.Exp(v[i])
		}
	}
	down := func(v []float64) float64 {
		set(v)
		return -likelihood(*k) + lean(*k, centre)
	}
	at := make([]float64, len(free))
	for i, p := range free {
		at[i] = math.Log(*p)
	}
	r, _ := optimize.Minimize(optimize.Problem{Func: down}, at, &optimize.Settings{
		Converger: &optimize.FunctionConverge{Absolute: 1e-4, Iterations: 15}, FuncEvaluations: 160,
	}, &optimize.NelderMead{SimplexSize: 0.7})
	if r != nil {
		at = r.X
	}
	set(at)
	return *k
}

func lean(k, centre Kernel) float64 {
	z := func(a, b, sd float64) float64 { d := math.Log(a/b) / sd; return d * d / 2 }
	s := z(k.RangeX, centre.RangeX, 1) + z(k.RangeY, centre.RangeY, 1) + z(k.SD, centre.SD, 2)
	if centre.Nugget > 0 {
		s += z(k.Nugget, centre.Nugget, 1.5)
	}
	return s
}
