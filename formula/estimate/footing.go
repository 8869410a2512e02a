package estimate

import (
	"cmp"
	"math"
	"slices"

	"oakum/calc"
)

// conflicts checks the bidders' arithmetic: half a unit of money is forgiven as rounding.
func (t *bidTable) conflicts() []Conflict {
	list := []Conflict{}
	for i, b := range t.in.Bids {
		sum, whole := t.fixed[i], true
		for _, r := range b.Rates {
			if r.Rate == nil || r.Quantity == nil {
				whole = false
				continue
			}
			right := *r.Rate * *r.Quantity
			sum += right
			if r.Extension != nil && math.Abs(*r.Extension-right) > 0.5+1e-9*right {
				list = append(list, Conflict{b.Yard, r.Item, *r.Extension, right})
			}
		}
		complete := !slices.ContainsFunc(t.blanks, func(x Blank) bool { return x.Yard == b.Yard })
		if b.Total != nil && whole && complete && math.Abs(*b.Total-sum) > 0.5+1e-9*sum {
			list = append(list, Conflict{b.Yard, "total", *b.Total, sum})
		}
	}
	return list
}

func (t *bidTable) cost(bid int, quantity []float64) float64 {
	sum := t.fixed[bid]
	for k, q := range quantity {
		sum += t.rate[bid][k] * q
	}
	return sum
}

// evaluate draws the quantities once for all bids.
func (t *bidTable) evaluate(correlation float64) ([]Evaluated, []Lowest) {
	const n = 1 << 13
	likely := make([]float64, len(t.items))
	for k, s := range t.spread {
		likely[k] = s.Likely
	}
	list, lowest := make([]Evaluated, len(t.fixed)), make([]Lowest, len(t.fixed))
	drawn := make([][]float64, len(t.fixed))
	for i, b := range t.in.Bids {
		complete := !slices.ContainsFunc(t.blanks, func(x Blank) bool { return x.Yard == b.Yard })
		list[i] = Evaluated{Yard: b.Yard, Likely: t.cost(i, likely), Complete: complete}
		lowest[i].Yard = b.Yard
		drawn[i] = make([]float64, n)
	}
	var u, x []float64
	var joint *Joint
	if len(t.items) > 0 {
		joint = NewJoint(t.spread, correlation)
		u, x = make([]float64, joint.Dimensions()), make([]float64, len(t.items))
	}
	for p := range n {
		if joint != nil {
			Point(uint32(p), 4, u)
			joint.Draw(u, x)
		}
		best, ties := math.Inf(1), 0
		for i := range drawn {
			c := t.cost(i, x)
			drawn[i][p] = c
			list[i].Mean += c / n
			switch {
			case c < best:
				best, ties = c, 1
			case c == best:
				ties++
			}
		}
		for i := range drawn {
			if drawn[i][p] == best {
				lowest[i].Share += 1 / float64(ties) / n
			}
		}
	}
	for i := range list {
		slices.Sort(drawn[i])
		list[i].P50, list[i].P80 = calc.Quantile(drawn[i], 0.5), calc.Quantile(drawn[i], 0.8)
	}
	slices.SortStableFunc(list, func(a, b Evaluated) int { return cmp.Compare(a.P50, b.P50) })
	return list, lowest
}

// breakEven finds, for each pair and item, the quantity at which they cost the same while all others are at their likeliest.
func (t *bidTable) breakEven() []BreakEven {
	list := []BreakEven{}
	for a := range t.fixed {
		for b := a + 1; b < len(t.fixed); b++ {
			for k, item := range t.items {
				rest := t.fixed[a] - t.fixed[b]
				for m, s := range t.spread {
					if m != k {
						rest += (t.rate[a][m] - t.rate[b][m]) * s.Likely
					}
				}
				slope := t.rate[b][k] - t.rate[a][k]
				if slope == 0 || rest/slope < 0 {
					continue
				}
				e := BreakEven{t.in.Bids[a].Yard, t.in.Bids[b].Yard, item, rest / slope, t.in.Bids[a].Yard, t.in.Bids[b].Yard}
				if slope > 0 {
					e.Below, e.Above = e.B, e.A // a is dearer at none and cheaper by the unit
				}
				list = append(list, e)
			}
		}
	}
	return list
}
