package extremes

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// Fit is a law fitted to block maxima by maximum likelihood.
type Fit struct {
	Law
	LogLikelihood float64
	// SE are the standard errors of location, scale and (three-parameter law) shape, from the observed information. Nil where it is not positive.
	SE []float64

	maxima []float64
	gumbel bool
}

// What a fit may be refused for.
var (
	ErrFew   = errors.New("too few maxima")
	ErrEqual = errors.New("all maxima are equal")
	ErrNoFit = errors.New("the likelihood has no maximum inside the law's bounds")
)

// FitGumbel fits Gumbel's law: the scale is the root of scale = mean - sum x e^(-x/scale) / sum e^(-x/scale), by halving; the location follows.
func FitGumbel(maxima []float64) (Fit, error) {
	if len(maxima) < 3 {
		return Fit{}, ErrFew
	}
	mean, spread := centre(maxima)
	if spread == 0 {
		return Fit{}, ErrEqual
	}
	lo, hi := spread*1e-6, spread*1e3
	for range 200 {
		mid := math.Sqrt(lo * hi)
		if s, _ := gumbelScale(maxima, mean, mid); s > mid {
			lo = mid
		} else {
			hi = mid
		}
	}
	scale := math.Sqrt(lo * hi)
	_, weight := gumbelScale(maxima, mean, scale)
	f := Fit{Law: Law{Location: mean - scale*math.Log(weight), Scale: scale}, maxima: maxima, gumbel: true}
	f.LogLikelihood = f.Law.LogLikelihood(maxima)
	f.SE = f.errors()
	return f, nil
}

// gumbelScale is the right side of the scale's equation, and the mean of e^(-(x - mean)/scale).
func gumbelScale(maxima []float64, mean, scale float64) (right, weight float64) {
	top := 0.0
	for _, x := range maxima {
		e := math.Exp(-(x - mean) / scale)
		weight += e
		top += (x - mean) * e
	}
	return -top / weight, weight / float64(len(maxima))
}

func centre(maxima []float64) (mean, spread float64) {
	n := float64(len(maxima))
	for _, x := range maxima {
		mean += x / n
	}
	for _, x := range maxima {
		spread += (x - mean) * (x - mean) / n
	}
	return mean, math.Sqrt(spread)
}

// Shapes allowed: at -1 and below the likelihood has no maximum (Coles 2001, section 3.3.2).
const leastShape, mostShape = -0.995, 5.0

// FitGEV fits the three-parameter law, starting from its weighted moments and from Gumbel's law.
func FitGEV(maxima []float64) (Fit, error) {
	if len(maxima) < 5 {
		return Fit{}, ErrFew
	}
	_, spread := centre(maxima)
	if spread == 0 {
		return Fit{}, ErrEqual
	}
	starts := []Law{Moments(maxima), GumbelMoments(maxima)}
	starts[1].Shape = 0.05
	best := Fit{LogLikelihood: math.Inf(-1)}
	for _, start := range starts {
		if l, ok := climb(maxima, start); ok && l.LogLikelihood(maxima) > best.LogLikelihood {
			best = Fit{Law: l, LogLikelihood: l.LogLikelihood(maxima)}
		}
	}
	if math.IsInf(best.LogLikelihood, -1) || best.Shape < leastShape+0.01 || best.Shape > mostShape-0.01 {
		return Fit{}, ErrNoFit
	}
	best.maxima = maxima
	best.SE = best.errors()
	return best, nil
}

// climb walks up the likelihood by the simplex method in location/scale units, restarted until it stands still.
func climb(maxima []float64, start Law) (Law, bool) {
	law := func(v []float64) Law {
		return Law{Location: start.Location + start.Scale*v[0], Scale: start.Scale * math.Exp(v[1]), Shape: v[2]}
	}
	down := func(v []float64) float64 {
		l := law(v)
		if l.Shape <= leastShape || l.Shape >= mostShape {
			return math.Inf(1)
		}
		return -l.LogLikelihood(maxima)
	}
	at := []float64{0, 0, min(max(start.Shape, -0.9), 2)}
	for math.IsInf(down(at), 1) { // weighted moments may leave a maximum outside the law: draw the shape to 0
		if math.Abs(at[2]) < 1e-3 {
			return Law{}, false
		}
		at[2] /= 2
	}
	before := down(at)
	for range 20 {
		r, err := optimize.Minimize(optimize.Problem{Func: down}, at, settings(), &optimize.NelderMead{SimplexSize: 0.1})
		if r == nil || (err != nil && r.X == nil) {
			return Law{}, false
		}
		at = r.X
		if before-r.F < 1e-11 {
			break
		}
		before = r.F
	}
	return law(at), true
}

func settings() *optimize.Settings {
	return &optimize.Settings{Converger: &optimize.FunctionConverge{Absolute: 1e-13, Iterations: 60}, MajorIterations: 3000}
}

// errors inverts the observed information, the second differences of the log likelihood at its top.
func (f Fit) errors() []float64 {
	at := []float64{f.Location, f.Scale, f.Shape}
	step := []float64{1e-4 * f.Scale, 1e-4 * f.Scale, 1e-4}
	n := 3
	if f.gumbel {
		n = 2
	}
	down := func(v []float64) float64 { return -Law{v[0], v[1], v[2]}.LogLikelihood(f.maxima) }
	info := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			info.SetSym(i, j, second(down, at, step, i, j))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(info) {
		return nil
	}
	var inverse mat.SymDense
	if chol.InverseTo(&inverse) != nil {
		return nil
	}
	se := make([]float64, n)
	for i := range se {
		se[i] = math.Sqrt(inverse.At(i, i))
	}
	return se
}

// second is the mixed second difference of fn by components i and j.
func second(fn func([]float64) float64, at, step []float64, i, j int) float64 {
	shifted := func(a, b float64) float64 {
		v := append([]float64{}, at...)
		v[i] += a * step[i]
		v[j] += b * step[j]
		return fn(v)
	}
	if i == j {
		return (shifted(1, 0) - 2*fn(at) + shifted(-1, 0)) / (step[i] * step[i])
	}
	return (shifted(1, 1) - shifted(1, -1) - shifted(-1, 1) + shifted(-1, -1)) / (4 * step[i] * step[j])
}
