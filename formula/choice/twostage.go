package choice

import (
	"errors"
	"math"
	"slices"
	"strings"
)

// twoStage is a decision now and another when the state is known: variables and rows of now, and for each state its own variables and rows, in
// which those of now stand too. Terms number the variables of now first.
type twoStage struct {
	first  []Variable
	rows   []Row
	states []scenario
	pairs  []pair  // between works
	chance float64 // with which the limits of a state must hold
	effort Effort
}

// scenario is one state: what the variables of now cost in it beside their own cost, what it costs whatever is done, its own variables and rows.
// over is the place, among its own variables, of the one that is 1 where the state breaks its limits; -1 where none may.
type scenario struct {
	name        string
	probability float64
	now         []float64
	constant    float64
	vars        []Variable
	rows        []Row
	over        int
}

// whole is a two-stage program written out in full: the variables of now, which may be fixed, then those of each state.
func (t *twoStage) whole(states []scenario, fixed []float64) (p Program, now []int, later [][]int) {
	total, constant := 0.0, 0.0
	for _, s := range states {
		total += s.probability
	}
	for i, v := range t.first {
		for _, s := range states {
			if s.now != nil {
				v.Cost += s.probability / total * s.now[i]
			}
		}
		if fixed != nil {
			v.Low, v.High = fixed[i], fixed[i]
		}
		now = append(now, p.Add(v))
	}
	for _, r := range t.rows {
		p.Limit(r.Name, r.Low, r.High, r.Terms...)
	}
	var broken []Term
	for _, s := range states {
		constant += s.probability / total * s.constant
		own := []int{}
		for _, v := range s.vars {
			v.Cost *= s.probability / total
			own = append(own, p.Add(v))
		}
		all := append(slices.Clone(now), own...)
		for _, r := range s.rows {
			p.Limit(r.Name, r.Low, r.High, moved(r.Terms, all)...)
		}
		if s.over >= 0 {
			broken = append(broken, Term{own[s.over], s.probability / total})
		}
		later = append(later, own)
	}
	if constant != 0 {
		p.Add(Variable{Name: "whatever is done", Cost: constant, Low: 1, High: 1})
	}
	if broken != nil {
		p.Limit("chance", math.Inf(-1), 1-t.chance+1e-9, broken...)
	}
	return p, now, later
}

func moved(terms []Term, at []int) []Term {
	out := make([]Term, len(terms))
	for i, x := range terms {
		out[i] = Term{at[x.Var], x.Times}
	}
	return out
}

// solve writes the program out and solves it with an effort that fits its size.
func (t *twoStage) solve(states []scenario, fixed []float64) (Solution, []int, error) {
	p, now, _ := t.whole(states, fixed)
	s, err := Solve(p, t.fitting(p))
	return s, now, err
}

func (t *twoStage) fitting(p Program) Effort {
	e := t.effort
	if size := len(p.Rows) * len(p.Vars); size > 0 {
		e.Pivots = min(e.Pivots, 1000+int(6e9/float64(size)))
	}
	return e
}

// together is the best decision now for all states, written out in full, from an answer that is known already, or none.
func (t *twoStage) together(start *answer) (answer, error) {
	p, now, later := t.whole(t.states, nil)
	var x []float64
	if start != nil {
		x = append(x, start.first...)
		for _, own := range start.later {
			x = append(x, own...)
		}
		if len(x) < len(p.Vars) {
			x = append(x, 1) // what it costs whatever is done
		}
	}
	s, err := Improve(p, t.fitting(p), x)
	if err != nil {
		return answer{}, err
	}
	a := answer{value: s.Value, bound: s.Bound, proved: s.Proved, first: make([]float64, len(t.first)), later: make([][]float64, len(t.states))}
	for i := range t.first {
		a.first[i] = s.X[now[i]]
	}
	for k := range t.states {
		for _, at := range later[k] {
			a.later[k] = append(a.later[k], s.X[at])
		}
	}
	return a, nil
}

// waitAndSee is the mean of the best answers if the state were known before anything is decided.
func (t *twoStage) waitAndSee() (value float64, proved bool, err error) {
	proved = true
	for _, s := range t.states {
		alone, _, err := t.solve([]scenario{s}, nil)
		if err != nil {
			return 0, false, err
		}
		value += s.probability * alone.Value
		proved = proved && alone.Proved
	}
	return value, proved, nil
}

// bestForMean is the decision that would be best for the mean of the states; ok is false where there is none.
func (t *twoStage) bestForMean() (first []float64, ok bool, err error) {
	m, now, err := t.solve([]scenario{t.mean()}, nil)
	if errors.Is(err, ErrInfeasible) {
		return nil, false, nil
	}
	if err != nil {
		return nil, false, err
	}
	first = make([]float64, len(t.first))
	for i, at := range now {
		first[i] = m.X[at]
		if t.first[i].Whole {
			first[i] = math.Round(first[i])
		}
	}
	return first, true, nil
}

// fixed is what a decision costs when it is worked through the states; infinite where it breaks a limit.
func (t *twoStage) fixed(first []float64) (float64, error) {
	s, _, err := t.solve(t.states, first)
	if errors.Is(err, ErrInfeasible) {
		return math.Inf(1), nil
	}
	return s.Value, err
}

// mean is the state in which every number is the mean of those of the states; it must keep its limits, and needs only what every state needs.
func (t *twoStage) mean() scenario {
	m := scenario{name: "mean", probability: 1, over: t.states[0].over}
	for _, s := range t.states {
		m.constant += s.probability * s.constant
		if s.now != nil && m.now == nil {
			m.now = make([]float64, len(s.now))
		}
		for i, c := range s.now {
			m.now[i] += s.probability * c
		}
	}
	for i, v := range t.states[0].vars {
		v.Cost, v.Low, v.High = 0, 0, 0
		for _, s := range t.states {
			v.Cost += s.probability * s.vars[i].Cost
			v.Low += s.probability * s.vars[i].Low
			v.High += s.probability * s.vars[i].High
		}
		if i == m.over {
			v.High = 0
		}
		m.vars = append(m.vars, v)
	}
	for k, r := range t.states[0].rows {
		r.Terms = slices.Clone(r.Terms)
		r.Low, r.High = 0, 0
		for i := range r.Terms {
			r.Terms[i].Times = 0
		}
		for _, s := range t.states {
			r.Low += s.probability * s.rows[k].Low
			r.High += s.probability * s.rows[k].High
			for i := range r.Terms {
				r.Terms[i].Times += s.probability * s.rows[k].Terms[i].Times
			}
		}
		if strings.HasPrefix(r.Name, must) {
			r.Low = math.Floor(r.Low + 1e-9)
		}
		m.rows = append(m.rows, r)
	}
	return m
}
