package futures

import "math"

// price is what a work's price is drawn from: its triangle over a normal score, so that prices can go together.
type price struct {
	cost, growth triangle
	knee         float64 // score of the likely amount
}

func priceOf(w *Work) price {
	p := price{cost: w.Cost.ready(), growth: w.Growth.ready()}
	p.knee = quantile(min(p.cost.knee, 1-p.cost.knee))
	if p.cost.knee > 0.5 {
		p.knee = -p.knee
	}
	return p
}

const (
	rootReach = 14 // more than two scores of words weighed by what prices share
	rootCells = 8  // to each unit of score
)

// roots are square roots of the share of a standard normal below a score, from -rootReach to rootReach.
var roots = func() (t [2 * rootReach * rootCells]cubic) {
	root := func(i int) (y, slope float64) {
		x := float64(i)/rootCells - rootReach
		y = math.Sqrt(below(x))
		return y, density(x) / (2 * y) / rootCells
	}
	for i := range t {
		y, slope := root(i)
		next, nextSlope := root(i + 1)
		t[i] = between(1, y, next, slope, nextSlope)
	}
	return t
}()

// at is the price at a normal score, within 2e-7 of the triangle's width: from the end on the score's side of the likely amount, in by a root. The side is
// anybody's guess, so it is no branch.
func (p *price) at(x float64) float64 {
	side := ^math.Float64bits(x-p.knee) >> 63
	d := (math.Float64frombits(math.Float64bits(x)^side<<63) + rootReach) * rootCells
	i := int(d)
	return p.cost.end[side] + p.cost.root[side]*roots[i].at(d-float64(i))
}
