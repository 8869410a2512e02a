package network

import (
	"math"
	"slices"
	"sort"

	"oakum/calc"
	"oakum/formula/estimate"
)

// lengths is how many futures of the durations are drawn.
const lengths = 1 << 12

// simulate draws the durations and takes the length each time: the longest path, or the schedule that the order of the best one makes with resources.
func (out *TimetableOut) simulate(in TimetableIn, p *plan, list []int) {
	spreads := make([]estimate.Spread, len(p.tasks))
	for i, t := range p.tasks {
		spreads[i] = t.spread
	}
	joint := estimate.NewJoint(spreads, in.Correlation)
	u, days, start := make([]float64, joint.Dimensions()), make([]float64, len(p.tasks)), make([]float64, len(p.tasks))
	use := newUsage(len(p.capacity))
	drawn := make([]float64, lengths)
	for n := range drawn {
		estimate.Point(uint32(n), 6, u)
		joint.Draw(u, days)
		early, length, rest := p.passes(days)
		for i := range p.tasks {
			if early[i]+rest[i] >= length-tie {
				out.Schedule[i].Critical += 1.0 / lengths
			}
		}
		if len(p.capacity) > 0 {
			length = p.serial(list, days, start, use)
		}
		drawn[n] = length
		out.Simulated += length * day / lengths
	}
	slices.Sort(drawn)
	out.P10, out.P50 = calc.Quantile(drawn, 0.1)*day, calc.Quantile(drawn, 0.5)*day
	out.P80, out.P90 = calc.Quantile(drawn, 0.8)*day, calc.Quantile(drawn, 0.9)*day
	out.ask(in, drawn)
}

// ask fills the chances for the days asked for, or for whole days over the range of the draws.
func (out *TimetableOut) ask(in TimetableIn, drawn []float64) {
	by := in.By
	if by == nil {
		low, high := math.Floor(drawn[0]), math.Ceil(drawn[len(drawn)-1])
		step := max(1, math.Ceil((high-low)/100))
		for d := low; d <= high; d += step {
			by = append(by, d*day)
		}
	}
	for _, d := range by {
		n := sort.Search(len(drawn), func(i int) bool { return drawn[i] > d/day+tie })
		out.ChanceBy = append(out.ChanceBy, ChanceBy{Day: d, Simulated: float64(n) / float64(len(drawn))})
	}
}

// chances fills the chance by the critical path alone, where there are no resources to spoil it.
func (out *TimetableOut) chances(in TimetableIn, length float64) {
	for i := range out.ChanceBy {
		c := &out.ChanceBy[i]
		switch {
		case len(in.Capacities) > 0:
		case out.SD > 0:
			c.Probability = new(0.5 * math.Erfc((length*day-c.Day)/out.SD/math.Sqrt2))
		case c.Day >= length*day-tie:
			c.Probability = new(1.0)
		default:
			c.Probability = new(0.0)
		}
	}
}
