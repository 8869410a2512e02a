package estimate

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/mathext"

	"oakum/field"
)

// Joint draws several uncertain amounts together. Their dependence is that of correlated normal variables (a Gaussian copula), with the normal
// correlation chosen so that the amounts themselves have the correlation asked for.
type Joint struct {
	at     []func(float64) float64
	common float64       // normal correlation shared by all, where there is no matrix
	lower  *mat.TriDense // lower factor of the normal correlations, where there is
	wide   int           // the widest amount: it comes last, and its law is known once the others are drawn
	below  func(float64) float64
}

// terms is how many terms of the Hermite series of each amount are kept; the triangular and PERT laws need few.
const terms = 14

// NewJoint makes amounts that all have the correlation with each other.
func NewJoint(spreads []Spread, correlation float64) *Joint {
	j := newJoint(spreads)
	if correlation <= 0 || len(spreads) < 2 {
		return j
	}
	series := j.hermites(spreads)
	// the cross terms of the variance of the sum under normal correlation r; those under the correlation of the amounts are exact
	total := make([]float64, terms+1)
	sum, squares := 0.0, 0.0
	for _, s := range spreads {
		sd := math.Sqrt(s.Variance())
		sum += sd
		squares += sd * sd
	}
	wanted := correlation * (sum*sum - squares)
	for k := 1; k <= terms; k++ {
		sum, squares := 0.0, 0.0
		for _, a := range series {
			sum += a[k]
			squares += a[k] * a[k]
		}
		total[k] = sum*sum - squares
	}
	j.common = solveSeries(total, wanted)
	return j
}

// NewJointOf makes amounts with a correlation for each pair. It refuses a matrix that no amounts can have.
func NewJointOf(spreads []Spread, correlations [][]float64, key string) (*Joint, error) {
	n := len(spreads)
	if err := checkMatrix(correlations, n, key); err != nil {
		return nil, err
	}
	j := newJoint(spreads)
	series := j.hermites(spreads)
	r := mat.NewSymDense(n, nil)
	for i := range n {
		r.SetSym(i, i, 1)
		for k := range i {
			pair := make([]float64, terms+1)
			for t := 1; t <= terms; t++ {
				pair[t] = series[i][t] * series[k][t]
			}
			wanted := correlations[i][k] * math.Sqrt(spreads[i].Variance()*spreads[k].Variance())
			r.SetSym(j.place(i), j.place(k), solveSeries(pair, wanted))
		}
	}
	var c mat.Cholesky
	if !c.Factorize(r) {
		return nil, field.Refuse(key, "%s can't be: no amounts have all these correlations at once", key)
	}
	j.lower = mat.NewTriDense(n, mat.Lower, nil)
	c.LTo(j.lower)
	return j, nil
}

func checkMatrix(m [][]float64, n int, key string) error {
	if len(m) != n {
		return field.Refuse(key, "%s must have a row for each line (%d), not %d", key, n, len(m))
	}
	for i, row := range m {
		if len(row) != n {
			return field.Refuse(key, "%s: row %d must have %d entries, not %d", key, i, n, len(row))
		}
		for k, x := range row {
			switch {
			case i == k && x != 1:
				return field.Refuse(key, "%s: the correlation of line %d with itself must be 1, not %g", key, i, x)
			case !(x >= -1 && x <= 1):
				return field.Refuse(key, "%s: correlation %g of lines %d and %d must lie between -1 and 1", key, x, i, k)
			case k < i && x != m[k][i]:
				return field.Refuse(key, "%s: lines %d and %d have two correlations, %g and %g", key, i, k, x, m[k][i])
			}
		}
	}
	return nil
}

func quicks(spreads []Spread) []func(float64) float64 {
	at := make([]func(float64) float64, len(spreads))
	for i, s := range spreads {
		at[i] = s.quick()
	}
	return at
}

// hermites gives each amount as a series in the orthonormal Hermite polynomials of a standard normal variable, by the midpoint rule over shares.
// The covariance of two amounts under normal correlation r is then sum(a_k b_k r^k).
func (j *Joint) hermites(spreads []Spread) [][]float64 {
	const n = 1024
	out := make([][]float64, len(spreads))
	for i := range out {
		out[i] = make([]float64, terms+1)
	}
	for p := range n {
		u := (float64(p) + 0.5) / n
		h := hermite(mathext.NormalQuantile(u))
		for i := range spreads {
			x := j.at[i](u) - spreads[i].Mean()
			for k := 1; k <= terms; k++ {
				out[i][k] += x * h[k] / n
			}
		}
	}
	return out
}

func hermite(z float64) (h [terms + 1]float64) {
	h[0], h[1] = 1, z
	for k := 1; k < terms; k++ {
		h[k+1] = (z*h[k] - math.Sqrt(float64(k))*h[k-1]) / math.Sqrt(float64(k+1))
	}
	return h
}

// solveSeries finds r in [-1, 1] with sum(c_k r^k) = wanted, by bisection; the nearest end where none has it.
func solveSeries(c []float64, wanted float64) float64 {
	value := func(r float64) float64 {
		sum := 0.0
		for k := len(c) - 1; k >= 1; k-- {
			sum = (sum + c[k]) * r
		}
		return sum
	}
	low, high := -1.0, 1.0
	if wanted == 0 || value(high)-value(low) <= 0 {
		return 0
	}
	for range 60 {
		mid := (low + high) / 2
		if value(mid) < wanted {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// place is where amount i stands in the order of drawing: the widest last.
func (j *Joint) place(i int) int {
	switch last := len(j.at) - 1; i {
	case j.wide:
		return last
	case last:
		return j.wide
	}
	return i
}

func newJoint(spreads []Spread) *Joint {
	j := &Joint{at: quicks(spreads)}
	for i, s := range spreads {
		if s.Variance() > spreads[j.wide].Variance() {
			j.wide = i
		}
	}
	j.below = spreads[j.wide].quickBelow()
	return j
}

// Dimensions is how many coordinates a draw takes.
func (j *Joint) Dimensions() int {
	if j.common > 0 {
		return len(j.at) + 1
	}
	return len(j.at)
}

// Draw turns the point u of the unit cube into amounts; u is used up. It returns the mean and deviation of the normal variable of the widest
// amount as the others leave it.
func (j *Joint) Draw(u, amounts []float64) (centre, own float64) {
	switch {
	case j.lower != nil:
		for i := range u {
			u[i] = mathext.NormalQuantile(u[i])
		}
		last := len(amounts) - 1
		for i := range amounts {
			p := j.place(i)
			z := 0.0
			for k := range p + 1 {
				z += j.lower.At(p, k) * u[k]
			}
			amounts[i] = j.at[i](normalShare(z))
			if p == last {
				own = j.lower.At(p, p)
				centre = z - own*u[p]
			}
		}
	case j.common > 0:
		centre, own = math.Sqrt(j.common)*mathext.NormalQuantile(u[0]), math.Sqrt(1-j.common)
		for i := range amounts {
			amounts[i] = j.at[i](normalShare(centre + own*mathext.NormalQuantile(u[i+1])))
		}
	default:
		own = 1
		for i := range amounts {
			amounts[i] = j.at[i](u[i])
		}
	}
	return centre, own
}
