package choice

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// ScopeIn is the works, the money and the rules.
type ScopeIn struct {
	Works   []Work   `key:"works" symbol:"works" most:"2000" label:"works to choose from"`
	Budget  *float64 `key:"budget" unit:"money" symbol:"B" min:"0" label:"money for them"`
	Budgets []Pot    `key:"budgets" optional:"yes" most:"200" label:"pots, or limits of their own, instead of one sum"`
	InDock  bool     `key:"in_dock" default:"yes" label:"she is or will be in dock"`
	Next    float64  `key:"next" unit:"money" symbol:"nx" default:"10000" over:"0" label:"next sum to ask about"`
	Rungs   int      `key:"rungs" symbol:"nr" default:"12" min:"0" max:"60" label:"rungs of the ladder"`
	Steps   int      `key:"steps" symbol:"ns" default:"20000" min:"1" max:"2000000" label:"steps of the search before it is cut off" help:"counted, not timed: the same answer on every machine"`
}

// ScopeOut is the best choice of works.
type ScopeOut struct {
	Chosen []string `key:"chosen" label:"works to do"`
	Value  float64  `key:"value" symbol:"V" label:"worth of them" expr:"sum(pl, #.value)"`
	Cost   float64  `key:"cost" unit:"money" symbol:"C" label:"cost of them" expr:"sum(pl, #.cost)"`
	Proved bool     `key:"proved" label:"no other choice is worth more" help:"proved, not guessed"`
	Bound  float64  `key:"bound" symbol:"Vb" label:"no choice is worth more than this"`
	Gap    float64  `key:"gap" symbol:"gp" label:"worth that may still be missing" expr:"Vb-V"`
	Shadow float64  `key:"shadow" symbol:"sh" label:"worth that the next sum would buy"`

	Plan    []Chosen `key:"plan" symbol:"pl" label:"work by work"`
	Waits   []string `key:"waits_for_next_dock" label:"works left out that can be done in dock only"`
	Left    []string `key:"left_out" label:"works left out"`
	Courses []string `key:"courses" label:"courses taken"`
	Spent   []Spent  `key:"spent" label:"pot by pot"`
	Ladder  []Rung   `key:"ladder" label:"choice as the money grows"`

	Warnings calc.Warnings `key:"-"`
}

// Chosen is a work to do.
type Chosen struct {
	ID    string  `key:"id" label:"work"`
	Value float64 `key:"value" label:"worth"`
	Cost  float64 `key:"cost" unit:"money" label:"cost"`
}

// Spent is what a pot pays.
type Spent struct {
	Name   string  `key:"name" label:"pot"`
	Amount float64 `key:"amount" unit:"money" label:"in it"`
	Spent  float64 `key:"spent" unit:"money" label:"spent"`
}

// Rung is the best choice for a sum.
type Rung struct {
	Budget  float64  `key:"budget" unit:"money" label:"money"`
	Value   float64  `key:"value" label:"worth"`
	Cost    float64  `key:"cost" unit:"money" label:"cost"`
	Chosen  []string `key:"chosen" label:"works"`
	Added   []string `key:"added" label:"new on this rung"`
	Dropped []string `key:"dropped" label:"no longer on this rung" help:"more money may buy a better pair than the one it replaces"`
	Proved  bool     `key:"proved" label:"proved"`
}

// Scope finds the works of most worth for the money.
//
// Most of sum(value x), x each 0 or 1, with the cost of what is chosen within the money; a work only with those it needs, never with those it shuts
// out; one course of a matter. Several pots may pay for one work together, each only for what it may; or each budget is a limit of its own with its
// own costs. Solved by branch and bound over linear relaxations, so that the answer is proved. It holds for works whose worth adds up. Source: Land
// and Doig, Econometrica 28, 1960; the bounded simplex method as in any text on linear programming. It is as good as the worths.
var Scope = calc.Formula[ScopeIn, ScopeOut]{
	ID:       "choice.scope",
	Title:    "Which works, for the money",
	About:    "The works of most worth that the money pays for, with their needs and exclusions; what the next sum buys, and the choice as the money grows.",
	Holds:    "Works whose worth adds up and whose cost is one sum each. Put works that only make sense together under one another's needs.",
	Accuracy: "Exact, and proved where it says so; else within the gap given. The worths are the keeper's: try others.",
	Sources:  []source.Ref{{Key: "land-doig"}, {Key: "petersen-1967", At: "problem 1"}},
	Fn:       scope,
	Steps:    scopeSteps,
	Samples:  60,
}

func scope(in ScopeIn) (out ScopeOut, err error) {
	pots, err := in.pots()
	if err != nil {
		return out, err
	}
	m, err := newScope(in.Works, pots, in.InDock)
	if err != nil {
		return out, err
	}
	effort := Effort{Nodes: in.Steps, Pivots: 100 * in.Steps}
	best, err := m.best(0, effort)
	if errors.Is(err, ErrInfeasible) {
		return out, m.impossible(effort)
	}
	if err != nil {
		return out, field.Refuse("works", "%v", err)
	}
	out.fill(m, best)
	more, err := m.best(in.Next, effort)
	if err != nil {
		return out, field.Refuse("next", "%v", err)
	}
	out.Shadow = max(more.value-best.value, 0)
	if out.Ladder, err = m.ladder(in.Rungs, effort); err != nil {
		return out, err
	}
	out.warn()
	return out, nil
}

func (in ScopeIn) pots() ([]Pot, error) {
	switch {
	case in.Budget != nil && in.Budgets != nil:
		return nil, field.Refuse("budgets", "give one budget or a list of budgets, not both")
	case in.Budget != nil:
		return []Pot{{Name: "budget", Amount: *in.Budget}}, nil
	case in.Budgets == nil:
		return nil, field.Refuse("budget", "budget is missing: give the money for the works, in one sum or in budgets")
	}
	return in.Budgets, nil
}

// picked is a choice of works.
type picked struct {
	take   []bool
	taken  []string // courses
	value  float64
	cost   float64
	bound  float64
	proved bool
	paid   []float64 // by pot
}

// best finds the choice of most worth with so much money on top, and of those of equal worth the cheapest.
func (m *scopeModel) best(extra float64, e Effort) (picked, error) {
	p, pay := m.program(extra)
	s, err := Solve(p, e)
	if err != nil {
		return picked{}, err
	}
	bound := s.Bound
	if s.Proved {
		cheap := p
		cheap.Vars = slices.Clone(p.Vars)
		var worth []Term
		for i, w := range m.works {
			cheap.Vars[i].Cost = w.total()
			worth = append(worth, Term{i, w.Value})
		}
		cheap.Limit("worth", -s.Value-1e-9*max(1, math.Abs(s.Value)), math.Inf(1), worth...)
		if c, err := Solve(cheap, e); err == nil {
			s.X = c.X
		}
	}
	return m.read(s, bound, pay), nil
}

func (m *scopeModel) read(s Solution, bound float64, pay map[[2]int]int) picked {
	k := picked{take: make([]bool, len(m.works)), bound: -bound, proved: s.Proved, paid: make([]float64, len(m.pots))}
	for i, w := range m.works {
		if s.X[i] > 0.5 {
			k.take[i] = true
			k.value += w.Value
			k.cost += w.total()
		}
		for p := range m.pots {
			switch v, split := pay[[2]int{i, p}]; {
			case split:
				k.paid[p] += s.X[v]
			case k.take[i] && m.listed():
				k.paid[p] += w.Costs[p]
			case k.take[i] && len(pay) == 0:
				k.paid[p] += *w.Cost
			}
		}
	}
	for _, c := range m.courses {
		if s.X[m.place[c]] > 0.5 {
			k.taken = append(k.taken, c)
		}
	}
	if k.proved {
		k.bound = k.value
	}
	return k
}

func (k picked) names(works []Work, taken bool) []string {
	list := []string{}
	for i, w := range works {
		if k.take[i] == taken {
			list = append(list, w.ID)
		}
	}
	return list
}

func (out *ScopeOut) fill(m *scopeModel, k picked) {
	out.Chosen, out.Left = k.names(m.works, true), k.names(m.works, false)
	out.Value, out.Cost, out.Bound, out.Proved = k.value, k.cost, k.bound, k.proved
	out.Gap = out.Bound - out.Value
	out.Plan, out.Waits, out.Courses = []Chosen{}, []string{}, append([]string{}, k.taken...)
	for i, w := range m.works {
		switch {
		case k.take[i]:
			out.Plan = append(out.Plan, Chosen{w.ID, w.Value, w.total()})
		case w.OnlyInDock:
			out.Waits = append(out.Waits, w.ID)
		}
	}
	for p, pot := range m.pots {
		out.Spent = append(out.Spent, Spent{pot.Name, pot.Amount, k.paid[p]})
	}
}

// impossible says why no choice keeps the rules.
func (m *scopeModel) impossible(e Effort) error {
	free := *m
	free.pots = []Pot{{Name: "all", Amount: unlimited}}
	if m.listed() {
		return field.Refuse("budgets", "the works that must be done, with what they need, don't fit into the budgets")
	}
	p, _ := free.program(0)
	for i, w := range m.works {
		p.Vars[i].Cost = w.total()
	}
	s, err := Solve(p, e)
	if errors.Is(err, ErrInfeasible) {
		return field.Refuse("works", "the works that must be done contradict each other: one shuts out another, or what it needs")
	}
	if err != nil {
		return field.Refuse("works", "%v", err)
	}
	sum := 0.0
	for _, p := range m.pots {
		sum += p.Amount
	}
	return field.Refuse("budget", "the works that must be done, with what they need, cost at least %v; there is %v, or it may not be spent on them",
		field.Q("", s.Value, "money"), field.Q("budget", sum, "money"))
}

func (out *ScopeOut) warn() {
	if !out.Proved {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the search was cut off: up to %.6g of worth may be missing; give it more steps", out.Gap))
	}
	if len(out.Waits) > 0 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%d works left out can be done in dock only: they wait for the next docking", len(out.Waits)))
	}
}

func scopeSteps(in ScopeIn, out ScopeOut) []calc.Step {
	text := "best found, and the bound beyond which nothing lies: branch and bound"
	if out.Proved {
		text = "greatest worth, proved by branch and bound over linear relaxations"
	}
	return []calc.Step{
		{Symbol: "Vb", Value: out.Bound, Unit: "-", Text: text},
		{Symbol: "sh", Value: out.Shadow, Unit: "-", Text: fmt.Sprintf("worth of the best choice with %g more, less that of this one", in.Next)},
	}
}
