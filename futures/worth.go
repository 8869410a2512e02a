package futures

import (
	"context"
	"math"
	"slices"
)

// Look is one thing that could be measured before deciding.
type Look struct {
	Name  string
	Group string  // the group of unknowns that it tells about
	Price float64 // what looking costs
	Noise float64 // error of the look, as a share of the spread of what it looks at; 0 tells all
}

// Worth is what a look is worth: the fall in the expected burden when the plan may be chosen after it.
type Worth struct {
	Look  Look
	Value float64
	SE    float64
	Net   float64
}

// Value works out what each look is worth for the choice between plans.
//
// All plans run on the same futures. A look tells about a group through one number of each future, the mean of the group's own draws, blurred by the
// look's error. Futures are sorted by what was seen and cut into equal bins; in each the plan of least mean burden is taken. The value is the mean
// burden of the plan best without looking, less the mean of the best in each bin. Bins are judged on futures other than those that chose (two halves
// swapped), so that noise is not taken for worth. Source of the method: sorting and binning after Strong and Oakley, Medical Decision Making 33 (2013) 755.
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
		value, se := gain(burden, seen(m, v, g, l, i, o))
		list = append(list, Worth{l, value, se, value - l.Price})
	}
	slices.SortStableFunc(list, func(a, b Worth) int { return cmp(b.Net, a.Net) })
	return list
}

func cmp(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// seen is what a look would show in each future: a standard normal score of the group's draws, blurred.
func seen(m *Model, v variables, g group, l Look, n int, o Options) []float64 {
	x := make([]float64, o.Futures)
	for i := range x {
		s := newStream(o.Seed, i)
		x[i] = score(m, v, g, &s)
		if l.Noise > 0 {
			u, _ := s.uniforms(noGroup, n, 1<<22)
			x[i] += l.Noise * normal(u)
		}
	}
	return x
}

func score(m *Model, v variables, g group, s *stream) float64 {
	sum, n := 0.0, 0.0
	for p := range m.Parts {
		if v.part[p] != g {
			continue
		}
		u, w := s.uniforms(g, p, 2)
		if m.Parts[p].Wastage != nil {
			u = w
		}
		sum += normal(u)
		n++
	}
	for z := range m.Zones {
		if v.zone[z] == g {
			u, _ := s.uniforms(g, z, 0)
			sum += normal(u)
			n++
		}
	}
	if n == 0 {
		u, _ := s.uniforms(g, 0, 0)
		return normal(u)
	}
	return sum / math.Sqrt(n)
}

// gain is the value of choosing after seeing x, judged on the other half of the futures.
func gain(burden [][]float64, x []float64) (value, se float64) {
	order := make([]int, len(x))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp(x[a], x[b]) })
	bins := max(2, min(40, len(x)/500))
	n, mean, m2 := 0.0, 0.0, 0.0
	for half := range 2 {
		without := least(burden, order, half)
		for b := range bins {
			bin := order[b*len(order)/bins : (b+1)*len(order)/bins]
			with := least(burden, bin, half)
			for k, f := range bin {
				if k%2 == half {
					continue
				}
				d := burden[without][f] - burden[with][f]
				n++
				e := d - mean
				mean += e / n
				m2 += e * (d - mean)
			}
		}
	}
	return mean, math.Sqrt(m2 / max(n-1, 1) / max(n, 1))
}

// least is the plan of least mean burden over every second future of a set.
func least(burden [][]float64, set []int, half int) int {
	best, at := math.Inf(1), 0
	for p := range burden {
		sum := 0.0
		for k, f := range set {
			if k%2 == half {
				sum += burden[p][f]
			}
		}
		if sum < best {
			best, at = sum, p
		}
	}
	return at
}
