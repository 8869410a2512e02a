package docking

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/beam"
)

// weight is the ship as a load: mass, centre, and the stretch she reaches over.
type weight struct{ mass, lcg, x0, x1 float64 }

func (in BlocksIn) weight() (w weight, warnings []string, err error) {
	w.x0, w.x1 = math.Inf(1), math.Inf(-1)
	moment := 0.0
	for i, l := range in.Weights {
		if l.X1 <= l.X0 {
			return w, nil, field.Refuse(fmt.Sprintf("weights[%d].x1", i), "weight %d ends at %v, not forward of where it begins (%v)", i+1, field.Q("", l.X1, "m"), field.Q("", l.X0, "m"))
		}
		w.mass += l.Mass
		moment += l.Mass * (l.X0 + l.X1) / 2
		w.x0, w.x1 = min(w.x0, l.X0), max(w.x1, l.X1)
	}
	if len(in.Weights) == 0 {
		if err = need(", or give weights", given{"mass", "t", in.Mass}, given{"lcg", "m from the after perpendicular", in.LCG}); err != nil {
			return w, nil, err
		}
		for _, s := range in.Hull {
			if s.EI > 0 {
				return w, nil, field.Refuse("weights", "weights is missing: a hull that bends needs its weight curve")
			}
		}
		w.mass, w.lcg = *in.Mass, *in.LCG
		return w, nil, nil
	}
	if w.mass <= 0 {
		return w, nil, field.Refuse("weights", "the weight curve sums to %v", field.Q("", w.mass, "t"))
	}
	w.lcg = moment / w.mass
	if in.Mass != nil {
		if math.Abs(*in.Mass/w.mass-1) > 0.05 {
			return w, nil, field.Refuse("mass", "mass is %v, the weight curve sums to %v", field.Q("mass", *in.Mass, "t"), field.Q("", w.mass, "t"))
		}
		if math.Abs(*in.Mass/w.mass-1) > 1e-6 {
			warnings = append(warnings, fmt.Sprintf("the weight curve sums to %.6g t and is scaled to the mass given", w.mass/1000))
		}
		w.mass = *in.Mass
	}
	if in.LCG != nil && math.Abs(*in.LCG-w.lcg) > 0.005*(w.x1-w.x0) {
		warnings = append(warnings, fmt.Sprintf("the weight curve has its centre at %.2f m, the lcg given (%.2f m) is not used", w.lcg, *in.LCG))
	}
	return w, warnings, nil
}

// line is the keel on blocks: its ends, and how much of it each block stands for.
type line struct {
	aft, fwd float64
	share    []float64 // m, as the blocks are listed
}

func (in BlocksIn) line() (l line, err error) {
	n := len(in.Blocks)
	if n < 2 {
		return l, field.Refuse("blocks", "blocks has %d entries; she needs at least two to stand on", n)
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if in.Blocks[a].X < in.Blocks[b].X {
			return -1
		}
		return 1
	})
	at := func(k int) float64 { return in.Blocks[order[k]].X }
	l.share = make([]float64, n)
	for k := range n - 1 {
		gap := at(k+1) - at(k)
		if gap < 1e-6 {
			return l, field.Refuse(fmt.Sprintf("blocks[%d].x", order[k+1]), "two keel blocks stand at %v", field.Q("", at(k), "m"))
		}
		l.share[order[k]] += gap / 2
		l.share[order[k+1]] += gap / 2
	}
	l.aft, l.fwd = at(0)-(at(1)-at(0))/2, at(n-1)+(at(n-1)-at(n-2))/2
	if in.KeelAft != nil {
		l.aft = *in.KeelAft
	}
	if in.KeelFwd != nil {
		l.fwd = *in.KeelFwd
	}
	if l.aft > at(0) || l.fwd < at(n-1) {
		return l, field.Refuse("keel_aft", "the keel on blocks (%v to %v) must reach over all blocks (%v to %v)", field.Q("keel_aft", l.aft, "m"), field.Q("keel_fwd", l.fwd, "m"), field.Q("", at(0), "m"), field.Q("", at(n-1), "m"))
	}
	l.share[order[0]] += at(0) - l.aft
	l.share[order[n-1]] += l.fwd - at(n-1)
	return l, nil
}

// model is the ship on the blocks in place; places maps its supports back to keel blocks and, from len(Blocks) on, side blocks.
func (in BlocksIn) model(w weight, out []bool) (m beam.Model, places []int, err error) {
	x0, x1 := w.x0, w.x1
	reach := func(x float64) { x0, x1 = min(x0, x), max(x1, x) }
	all := append(slices.Clone(in.Blocks), in.Side...)
	for i, b := range all {
		if i < len(out) && out[i] {
			continue
		}
		m.Supports = append(m.Supports, b.support())
		places = append(places, i)
		reach(b.X)
	}
	if len(in.Weights) == 0 {
		reach(w.lcg)
		m.Points = []beam.Point{{X: w.lcg, Force: w.mass * calc.Gravity}}
	}
	sum := 0.0
	for _, l := range in.Weights {
		sum += l.Mass
	}
	for _, l := range in.Weights {
		q := l.Mass * w.mass / sum * calc.Gravity / (l.X1 - l.X0)
		m.Spreads = append(m.Spreads, beam.Spread{X0: l.X0, X1: l.X1, W0: q, W1: q})
	}
	m.Spans, err = in.spans(x0, x1)
	return m, places, err
}

// spans cuts the hull into stretches of one stiffness; none given is rigid.
func (in BlocksIn) spans(x0, x1 float64) ([]beam.Span, error) {
	if len(in.Hull) == 0 {
		return []beam.Span{{X0: x0, X1: x1, EI: math.Inf(1)}}, nil
	}
	rows := slices.Clone(in.Hull)
	slices.SortFunc(rows, func(a, b Stiff) int {
		if a.X0 < b.X0 {
			return -1
		}
		return 1
	})
	var spans []beam.Span
	for i, r := range rows {
		if r.X1 <= r.X0 {
			return nil, field.Refuse(fmt.Sprintf("ei[%d].x1", i), "a stretch of stiffness ends at %v, not forward of where it begins (%v)", field.Q("", r.X1, "m"), field.Q("", r.X0, "m"))
		}
		if i > 0 && math.Abs(r.X0-rows[i-1].X1) > 1e-6 {
			return nil, field.Refuse(fmt.Sprintf("ei[%d].x0", i), "the stiffness leaves a gap or laps between %v and %v", field.Q("", rows[i-1].X1, "m"), field.Q("", r.X0, "m"))
		}
		ei := r.EI
		if ei == 0 {
			ei = math.Inf(1)
		}
		spans = append(spans, beam.Span{X0: r.X0, X1: r.X1, EI: ei})
	}
	spans[0].X0, spans[len(spans)-1].X1 = min(spans[0].X0, x0), max(spans[len(spans)-1].X1, x1)
	return spans, nil
}

// solve gives the loads; held is false where the blocks don't hold her.
func (in BlocksIn) solve(w weight, out []bool) (s beam.Solution, places []int, held bool, err error) {
	m, places, err := in.model(w, out)
	if err != nil {
		return s, nil, false, err
	}
	s, err = beam.Solve(m)
	if errors.Is(err, beam.ErrNotHeld) {
		return s, places, false, nil
	}
	if err != nil {
		return s, nil, false, field.Refuse("blocks", "%v", err)
	}
	return s, places, true, nil
}
