package afloat

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// shape is a fitted course of unexplained weight: columns of the design, the day it breaks, coefficients with their standard errors.
type shape struct {
	name      string
	columns   func(x, at float64) []float64
	breaks    bool    // it has a day at which it breaks
	at        float64 // that day, years from the first reading
	coef, se  []float64
	rss, bic  float64
	df        int
	low, high float64 // the days that fit no worse
}

func shapes() []shape {
	after := func(x, at float64) float64 {
		if x < at {
			return 0
		}
		return 1
	}
	return []shape{
		{name: "level", columns: func(x, _ float64) []float64 { return []float64{1} }},
		{name: "trend", columns: func(x, _ float64) []float64 { return []float64{1, x} }},
		{name: "trend from a date", breaks: true, columns: func(x, at float64) []float64 { return []float64{1, max(x-at, 0)} }},
		{name: "step", breaks: true, columns: func(x, at float64) []float64 { return []float64{1, after(x, at)} }},
		{name: "step and trend", breaks: true, columns: func(x, at float64) []float64 { return []float64{1, after(x, at), max(x-at, 0)} }},
	}
}

// fewest readings on either side of a break, and in all for a break to be looked for at all.
const (
	fewestBeside = 3
	fewestBreak  = 8
)

// bestShape fits every shape and takes the one with the least BIC; a break counts as one more constant.
func bestShape(xs, ys []float64) shape {
	best := shape{bic: math.Inf(1)}
	for _, s := range shapes() {
		if s.breaks && len(xs) < fewestBreak || len(xs) < len(s.columns(0, 0))+1 {
			continue
		}
		if s = s.fit(xs, ys); s.bic < best.bic-1e-9 {
			best = s
		}
	}
	if best.name == "" { // one or two readings
		best = shapes()[0]
		best.coef, best.se, best.rss = []float64{ys[0]}, []float64{math.NaN()}, 0
	}
	return best
}

// fit tries a break at every place between readings, and for a trend from a date at the readings' own days and between them. In a long log it looks
// at every few places first and then at all beside the best.
func (s shape) fit(xs, ys []float64) shape {
	if !s.breaks {
		s.solve(xs, ys, 0)
		return s
	}
	days := s.days(xs)
	stride := 1 + len(days)/300
	best, at, tries := shape{rss: math.Inf(1), bic: math.Inf(1)}, 0, []shape{}
	try := func(i int) {
		if t := s; t.solve(xs, ys, days[i]) {
			tries = append(tries, t)
			if t.rss < best.rss {
				best, at = t, i
			}
		}
	}
	for i := 0; i < len(days); i += stride {
		try(i)
	}
	for i := max(at-stride+1, 0); i < min(at+stride, len(days)); i++ {
		if i%stride != 0 {
			try(i)
		}
	}
	best.low, best.high = best.at, best.at
	f := distuv.F{D1: 1, D2: float64(max(best.df, 1))}.Quantile(0.95)
	for _, t := range tries {
		if t.rss <= best.rss*(1+f/float64(max(best.df, 1)))+floor(ys) {
			best.low, best.high = min(best.low, t.at), max(best.high, t.at)
		}
	}
	return best
}

// days are the places of a break that leave enough readings on either side. A step comes at the day of the first reading after it.
func (s shape) days(xs []float64) []float64 {
	distinct := slices.Compact(slices.Clone(xs))
	var list []float64
	for i, x := range distinct {
		before, _ := slices.BinarySearch(xs, x)
		if before < fewestBeside || len(xs)-before < fewestBeside {
			continue
		}
		list = append(list, x)
		if s.name == "trend from a date" && i > 0 {
			for k := 1; k < 8; k++ {
				list = append(list, distinct[i-1]+(x-distinct[i-1])*float64(k)/8)
			}
		}
	}
	return list
}

// floor is a sum of squares that is nothing but rounding.
func floor(ys []float64) float64 {
	most := 0.0
	for _, y := range ys {
		most = max(most, math.Abs(y))
	}
	return float64(len(ys)) * (1e-9 * most) * (1e-9 * most)
}

// solve is the least-squares fit with its break at a day.
func (s *shape) solve(xs, ys []float64, at float64) bool {
	n, k := len(xs), len(s.columns(0, 0))
	a := mat.NewDense(n, k, nil)
	for i, x := range xs {
		a.SetRow(i, s.columns(x, at))
	}
	var qr mat.QR
	qr.Factorize(a)
	var c mat.VecDense
	if err := qr.SolveVecTo(&c, false, mat.NewVecDense(n, ys)); err != nil {
		s.bic, s.rss = math.Inf(1), math.Inf(1)
		return false
	}
	s.at, s.coef, s.rss = at, slices.Clone(c.RawVector().Data), 0
	for i, x := range xs {
		d := ys[i] - s.value(x)
		s.rss += d * d
	}
	s.df = n - k
	constants := float64(k)
	if s.breaks {
		s.df--
		constants++
	}
	s.bic = float64(n)*math.Log((s.rss+floor(ys))/float64(n)) + constants*math.Log(float64(n))
	return s.errors(a, k)
}

// errors are the standard errors of the coefficients, the day of the break taken as known.
func (s *shape) errors(a *mat.Dense, k int) bool {
	var ata, inv mat.Dense
	ata.Mul(a.T(), a)
	if err := inv.Inverse(&ata); err != nil {
		return false
	}
	s.se = make([]float64, k)
	for j := range s.se {
		s.se[j] = math.Sqrt(s.rss / float64(max(s.df, 1)) * math.Max(inv.At(j, j), 0))
	}
	return true
}

// value is the fitted weight at x.
func (s shape) value(x float64) (y float64) {
	for j, v := range s.columns(x, s.at) {
		y += s.coef[j] * v
	}
	return y
}

// slope and step are the places of these constants among the coefficients; -1 where the shape has none.
func (s shape) slope() int {
	switch s.name {
	case "trend", "trend from a date":
		return 1
	case "step and trend":
		return 2
	}
	return -1
}

func (s shape) step() int {
	if s.name == "step" || s.name == "step and trend" {
		return 1
	}
	return -1
}

// band is the half-width of the confidence band of coefficient j; NaN where no freedom is left.
func (s shape) band(j int, confidence float64) float64 {
	if s.df < 1 {
		return math.NaN()
	}
	return s.se[j] * distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(s.df)}.Quantile(0.5+confidence/2)
}
