package choice

import (
	"fmt"
	"math"
	"slices"

	"oakum/field"
)

// Amount is a quantity to decide on.
type Amount struct {
	Name  string   `key:"name" label:"amount"`
	Cost  float64  `key:"cost" default:"0" label:"cost of one" help:"negative for what it earns"`
	Low   float64  `key:"low" default:"0" label:"least"`
	High  *float64 `key:"high" label:"most"`
	Whole bool     `key:"whole" default:"no" label:"whole numbers only"`
}

// Limit is a sum of amounts that must keep within bounds.
type Limit struct {
	Name  string   `key:"name" label:"limit"`
	Terms []Share  `key:"terms" most:"1000" label:"amounts in it"`
	Low   *float64 `key:"low" label:"at least"`
	High  *float64 `key:"high" label:"at most"`
}

// Share is an amount times a factor.
type Share struct {
	Of    string  `key:"of" label:"amount"`
	Times float64 `key:"times" default:"1" label:"times"`
}

// Change is what is otherwise in a state: the factor of an amount in a limit, a bound of the limit, or the cost of an amount.
type Change struct {
	Limit string  `key:"limit" optional:"yes" label:"limit" help:"left out: the cost of an amount changes"`
	Of    string  `key:"of" label:"amount, or low or high of the limit"`
	Value float64 `key:"value" label:"value in this state"`
}

// amounts builds the general two-stage program.
func (in ContractIn) amounts() (*twoStage, error) {
	t := &twoStage{chance: 1}
	place := map[string]int{}
	sign := 1.0
	if in.Maximise {
		sign = -1
	}
	variable := func(list string, i int, a Amount) (Variable, error) {
		v := Variable{Name: a.Name, Cost: sign * a.Cost, Low: a.Low, High: math.Inf(1), Whole: a.Whole}
		if a.High != nil {
			v.High = *a.High
		}
		at := fmt.Sprintf("%s[%d].", list, i)
		switch _, twice := place[a.Name]; {
		case a.Name == "" || twice:
			return v, field.Refuse(at+"name", "%s[%d]: amount %q stands twice, or has no name", list, i, a.Name)
		case a.Whole && a.High == nil:
			return v, field.Refuse(at+"high", "%q is a whole number: give the most it may be", a.Name)
		case v.High < v.Low:
			return v, field.Refuse(at+"high", "%q: most (%g) is less than least (%g)", a.Name, v.High, v.Low)
		}
		place[a.Name] = len(place)
		return v, nil
	}
	for i, a := range in.First {
		v, err := variable("first", i, a)
		if err != nil {
			return nil, err
		}
		t.first = append(t.first, v)
	}
	for i, l := range in.Limits {
		r, err := l.row(fmt.Sprintf("limits[%d]", i), place)
		if err != nil {
			return nil, err
		}
		t.rows = append(t.rows, r)
	}
	base := scenario{over: -1}
	for i, a := range in.Second {
		v, err := variable("second", i, a)
		if err != nil {
			return nil, err
		}
		base.vars = append(base.vars, v)
	}
	for i, l := range in.Later {
		r, err := l.row(fmt.Sprintf("later_limits[%d]", i), place)
		if err != nil {
			return nil, err
		}
		base.rows = append(base.rows, r)
	}
	for i, s := range in.States {
		state, err := s.changed(i, base, place, len(in.First), sign)
		if err != nil {
			return nil, err
		}
		t.states = append(t.states, state)
	}
	return t, nil
}

func (l Limit) row(at string, place map[string]int) (Row, error) {
	r := Row{Name: l.Name, Low: math.Inf(-1), High: math.Inf(1)}
	if l.Low != nil {
		r.Low = *l.Low
	}
	if l.High != nil {
		r.High = *l.High
	}
	if l.Low == nil && l.High == nil {
		return r, field.Refuse(at+".high", "limit %q has neither a least nor a most", l.Name)
	}
	for i, s := range l.Terms {
		v, known := place[s.Of]
		if !known || slices.ContainsFunc(r.Terms, func(t Term) bool { return t.Var == v }) {
			return r, field.Refuse(fmt.Sprintf("%s.terms[%d].of", at, i), "limit %q: %q is no amount known there, or stands twice", l.Name, s.Of)
		}
		r.Terms = append(r.Terms, Term{v, s.Times})
	}
	return r, nil
}

// changed is the base with what is otherwise in the state.
func (s Outcome) changed(i int, base scenario, place map[string]int, firsts int, sign float64) (scenario, error) {
	out := scenario{name: s.Name, probability: s.Probability, vars: slices.Clone(base.vars), over: -1}
	for _, r := range base.rows {
		r.Terms = slices.Clone(r.Terms)
		out.rows = append(out.rows, r)
	}
	for k, c := range s.Changes {
		at := fmt.Sprintf("states[%d].changes[%d]", i, k)
		if c.Limit == "" {
			v, known := place[c.Of]
			if !known || v < firsts {
				return out, field.Refuse(at+".of", "%s: %q is no amount that is decided later", s.Name, c.Of)
			}
			out.vars[v-firsts].Cost = sign * c.Value
			continue
		}
		row := slices.IndexFunc(out.rows, func(r Row) bool { return r.Name == c.Limit })
		if row < 0 {
			return out, field.Refuse(at+".limit", "%s: there is no later limit %q", s.Name, c.Limit)
		}
		r := &out.rows[row]
		term := slices.IndexFunc(r.Terms, func(t Term) bool { v, known := place[c.Of]; return known && t.Var == v })
		switch {
		case term >= 0:
			r.Terms[term].Times = c.Value
		case c.Of == "low" && !math.IsInf(r.Low, 0):
			r.Low = c.Value
		case c.Of == "high" && !math.IsInf(r.High, 0):
			r.High = c.Value
		default:
			return out, field.Refuse(at+".of", "%s: %q is no amount in limit %q, nor a bound that it has", s.Name, c.Of, c.Limit)
		}
		if r.Low > r.High {
			return out, field.Refuse(at+".value", "%s: limit %q has a least (%g) above its most (%g)", s.Name, r.Name, r.Low, r.High)
		}
	}
	return out, nil
}
