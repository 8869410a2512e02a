package futures

import "math"

// price is what a work's price is drawn from: its triangle over a normal score, so that prices can go together, read off a table with the likely amount,
// where the curve has a kink, at the foot of a cell.
type price struct {
	cost, growth triangle
	from         float64 // score at the foot of the first cell
	cells        []cubic // of the distance in cells
}

const (
	priceReach = 8.5 // scores beyond are worked out: one in 1e17
	priceCells = 8   // to each unit of score
)

func priceOf(w *Work) price {
	p := price{cost: w.Cost.ready(), growth: w.Growth.ready(), from: -priceReach}
	if knee := p.cost.knee; knee > 0 && knee < 1 {
		x := quantile(min(knee, 1-knee))
		if knee > 0.5 {
			x = -x
		}
		p.from = x - math.Ceil((x+priceReach)*priceCells)/priceCells
	}
	cost, slope := p.cost.over(p.from)
	for x := p.from; x < priceReach; {
		x += 1. / priceCells
		next, nextSlope := p.cost.over(x)
		p.cells = append(p.cells, between(1, cost, next, slope/priceCells, nextSlope/priceCells))
		cost, slope = next, nextSlope
	}
	return p
}

// over is the amount at a normal score, and how fast it rises there.
func (t *triangle) over(x float64) (amount, slope float64) {
	side, tail := 0, below(x)
	if tail >= t.knee {
		side, tail = 1, below(-x)
	}
	root := math.Sqrt(tail)
	return t.end[side] + t.root[side]*root, math.Abs(t.root[side]) * density(x) / (2 * root)
}

// at is the price at a normal score, within 2e-7 of the triangle's width.
func (p *price) at(x float64) float64 {
	d := (x - p.from) * priceCells
	if i := int(d); uint(i) < uint(len(p.cells)) {
		return p.cells[i].at(d - float64(i))
	}
	amount, _ := p.cost.over(x)
	return amount
}
