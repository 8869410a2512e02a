package extremes

import "math"

// Law is an extreme value law of largest values: F(x) = exp(-(1 + shape z)^(-1/shape)) with z = (x - location)/scale, and exp(-exp(-z)) at shape
// 0, which is Gumbel's. Shape is that of Coles: above 0 heavy in the tail, below 0 with an upper end.
type Law struct{ Location, Scale, Shape float64 }

// flat is the shape below which the law is taken as Gumbel's; the difference is then under the last bits.
const flat = 1e-9

// reduced is -ln F: exp(-z) for Gumbel. It is 0 above the upper end and +Inf below the lower one.
func (l Law) reduced(x float64) float64 {
	z := (x - l.Location) / l.Scale
	if math.Abs(l.Shape) < flat {
		return math.Exp(-z)
	}
	t := 1 + l.Shape*z
	if t <= 0 {
		if l.Shape > 0 {
			return math.Inf(1)
		}
		return 0
	}
	return math.Exp(-math.Log(t) / l.Shape)
}

// CDF is the chance that the largest of one block is at most x.
func (l Law) CDF(x float64) float64 { return math.Exp(-l.reduced(x)) }

// Exceeds is the chance that the largest of n blocks is over x: 1 - F^n, exact also where it is tiny.
func (l Law) Exceeds(x, n float64) float64 { return -math.Expm1(-n * l.reduced(x)) }

// Quantile is the value that the largest of one block stays under with chance p.
func (l Law) Quantile(p float64) float64 { return l.at(-math.Log(p)) }

// ReturnLevel is the value exceeded once in so many blocks on average: F = 1 - 1/period.
func (l Law) ReturnLevel(period float64) float64 { return l.at(-math.Log1p(-1 / period)) }

// Largest is the value that the largest of n blocks stays under with chance p.
func (l Law) Largest(p, n float64) float64 { return l.at(-math.Log(p) / n) }

// at is the value whose -ln F is y.
func (l Law) at(y float64) float64 { return l.Location + l.Scale*quantileFactor(y, l.Shape) }

// quantileFactor is (y^-shape - 1)/shape, -ln y at shape 0.
func quantileFactor(y, shape float64) float64 {
	if math.Abs(shape) < flat {
		return -math.Log(y)
	}
	return math.Expm1(-shape*math.Log(y)) / shape
}

// LogLikelihood of block maxima under the law; -Inf where one of them can't be.
func (l Law) LogLikelihood(maxima []float64) float64 {
	if !(l.Scale > 0) {
		return math.Inf(-1)
	}
	sum := -float64(len(maxima)) * math.Log(l.Scale)
	for _, x := range maxima {
		z := (x - l.Location) / l.Scale
		if math.Abs(l.Shape) < flat {
			sum -= z + math.Exp(-z)
			continue
		}
		t := 1 + l.Shape*z
		if t <= 0 {
			return math.Inf(-1)
		}
		y := math.Log(t)
		sum -= (1+1/l.Shape)*y + math.Exp(-y/l.Shape)
	}
	return sum
}
