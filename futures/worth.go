package futures

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// Look is one thing that could be measured before deciding.
type Look struct {
	Name  string
	Group string  // the group of unknowns that it tells about
	Parts []int   // the parts of the group that it tells about; nil all of them
	Price float64 // what looking costs
	Noise float64 // error of the look, as a share of the spread of what it looks at; 0 tells all
}

// Worth is what a look is worth: the fall in the expected burden when the plan may be chosen after it.
type Worth struct {
	Look  Look
	Value float64
	SE    float64
	Net   float64
	Best  int    // the plan that is best without looking
	Turns []Turn // what is done instead after looking
}

// Turn is a plan taken after a look in place of the one that is best without it.
type Turn struct {
	Plan  int
	Share float64 // of the futures
	Worse bool    // where the look shows worse; otherwise where it shows better
}

// Value works out what each look is worth for the choice between plans.
//
// All plans run on the same futures. A look tells about a group through one number of each future, the mean of the draws of the parts looked at, each by
// the water it would let in, blurred by the look's error. Futures are sorted by what was seen, and one limit is set: one plan where it shows worse,
// one where it shows better. The value is the mean burden of the plan best without looking, less the mean under that rule, which is all that a look is
// worth where the plans' burdens part once, and less than that where they part more often. The limit and its plans are judged on futures other than
// those that chose them (two halves swapped), so that noise is not taken for worth. Source: the preposterior analysis of Raiffa and Schlaifer, Applied
// Statistical Decision Theory (1961), estimated on one sample of futures sorted by what is seen as Strong and Oakley, Medical Decision Making 33 (2013) 755.
func Value(ctx context.Context, m *Model, plans []Plan, looks []Look, o Options) ([]Worth, error) {
	cases := make([]Case, len(plans))
	for i := range plans {
		cases[i] = Case{m, plans[i]}
	}
	return ValueOf(ctx, cases, looks, o)
}

// Case is a plan on the ship it is run on. Cases that are compared share parts, zones and works, so that their futures draw the same; the terms of the
// dock and the money may differ.
type Case struct {
	Model *Model
	Plan  Plan
}

// ValueOf is Value for plans on terms of their own.
func ValueOf(ctx context.Context, cases []Case, looks []Look, o Options) ([]Worth, error) {
	burden := make([][]float64, len(cases))
	for i := range cases {
		out, err := Run(ctx, cases[i].Model, &cases[i].Plan, o)
		if err != nil {
			return nil, err
		}
		burden[i] = make([]float64, len(out))
		for k := range out {
			burden[i][k] = Burden(&out[k])
		}
	}
	return Worths(cases[0].Model, burden, looks, o), nil
}

// Worths is what each look is worth where the burden of each plan in each future is known already.
func Worths(m *Model, burden [][]float64, looks []Look, o Options) []Worth {
	v := variablesOf(m)
	list := make([]Worth, 0, len(looks))
	for i, l := range looks {
		g, ok := v.group(l.Group)
		if !ok {
			continue
		}
		w := gain(burden, seen(m, v, g, l, i, o))
		w.Look, w.Net = l, w.Value-l.Price
		list = append(list, w)
	}
	slices.SortStableFunc(list, func(a, b Worth) int { return cmp.Compare(b.Net, a.Net) })
	return list
}

// seen is what a look would show in each future: a standard normal score of what it looks at, higher where that is worse, blurred.
func seen(m *Model, v variables, g group, l Look, n int, o Options) []float64 {
	t := newTerms(m, &Plan{}, &v, true)
	weights := make([]float64, len(m.Parts))
	for p := range m.Parts {
		if l.Parts == nil || slices.Contains(l.Parts, p) {
			weights[p] = max(m.Parts[p].Flow, 1e-9) // told all the same where none lets water in
		}
	}
	x := make([]float64, o.Futures)
	s := newStream(o.Seed, 0)
	for i := range x {
		s.future = uint64(i)
		x[i] = t.score(m, &v, g, weights, &s)
		if l.Noise > 0 {
			w, _, _, _ := s.draw(noGroup, useLook, n, 0)
			x[i] += l.Noise * normal(w)
		}
	}
	return x
}

// score is the mean of the draws of the parts looked at, each weighed by the water that it would let in, or of what else the group is of.
func (t *terms) score(m *Model, v *variables, g group, weights []float64, s *stream) float64 {
	sum, n := 0.0, 0.0
	add := func(x, weight float64) {
		sum += weight * x
		n += weight * weight
	}
	var w eight
	for i := range t.rows {
		row := &t.rows[i]
		if row.group != g {
			continue
		}
		s.row(&w, g, useFirst, row.v, row.n)
		for k, p := range row.part {
			switch {
			case p < 0:
			case m.Parts[p].Wastage != nil:
				add(-normal(w[k]), weights[p]) // thicker is better
			default:
				add(normal(w[k]), weights[p])
			}
		}
	}
	for z := range v.zone {
		rate, _, notice, _ := s.draw(g, useZone, z, 0)
		switch g {
		case v.zone[z]:
			add(normal(rate), 1)
		case v.watch:
			add(-normal(notice), 1)
		}
	}
	switch g {
	case v.price:
		shared, _, _, _ := s.draw(g, useBill, 0, 0)
		add(normal(shared), 1)
	case v.giving:
		pace, _, _, _ := s.draw(g, useGiving, 0, 0)
		add(-normal(pace), 1)
	}
	if n == 0 {
		return 0 // nothing of it can be looked at
	}
	return sum / math.Sqrt(n)
}

// rule is a limit to what a look shows: the plan below where it shows better, the plan above where it shows worse.
type rule struct {
	limit        float64
	below, above int
}

func (r rule) plan(x float64) int {
	if x < r.limit {
		return r.below
	}
	return r.above
}

// gain is the value of choosing after seeing x, judged on the other half of the futures.
func gain(burden [][]float64, x []float64) (w Worth) {
	order := make([]int, len(x))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(x[a], x[b]) })
	n, mean, m2 := 0.0, 0.0, 0.0
	for half := range 2 {
		best, with := cut(burden, x, every(order, half))
		for _, f := range every(order, 1-half) {
			d := burden[best][f] - burden[with.plan(x[f])][f]
			n++
			e := d - mean
			mean += e / n
			m2 += e * (d - mean)
		}
	}
	w.Value, w.SE = mean, math.Sqrt(m2/max(n-1, 1)/max(n, 1))
	w.turn(burden, x, order)
	return w
}

// every is every second of a list, from the first or from the second.
func every(list []int, half int) []int {
	out := make([]int, 0, len(list)/2+1)
	for k := half; k < len(list); k += 2 {
		out = append(out, list[k])
	}
	return out
}

// turn says what is done instead, by the rule of all futures together.
func (w *Worth) turn(burden [][]float64, x []float64, order []int) {
	best, with := cut(burden, x, order)
	w.Best = best
	worse := 0.0
	for _, f := range order {
		if x[f] >= with.limit {
			worse++
		}
	}
	worse /= float64(max(len(order), 1))
	for _, t := range []Turn{{with.above, worse, true}, {with.below, 1 - worse, false}} {
		if t.Plan != best && t.Share > 0 {
			w.Turns = append(w.Turns, t)
		}
	}
}

// cut finds, over futures sorted by what was seen, the plan of least mean burden and the rule of least mean burden.
func cut(burden [][]float64, x []float64, order []int) (best int, r rule) {
	plans := len(burden)
	total, under, over := make([]float64, plans), make([]float64, plans), make([]float64, plans)
	for _, f := range order {
		for p := range plans {
			total[p] += burden[p][f]
		}
	}
	best = least(total)
	r = rule{math.Inf(-1), best, best}
	lowest := total[best]
	for k, f := range order {
		for p := range plans {
			over[p] = total[p] - under[p]
		}
		if a, b := least(under), least(over); k > 0 && under[a]+over[b] < lowest {
			lowest, r = under[a]+over[b], rule{x[f], a, b}
		}
		for p := range plans {
			under[p] += burden[p][f]
		}
	}
	return best, r
}

func least(x []float64) int {
	at := 0
	for p := range x {
		if x[p] < x[at] {
			at = p
		}
	}
	return at
}
