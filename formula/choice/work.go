package choice

import (
	"fmt"
	"math"
	"slices"

	"oakum/field"
)

// Work is one thing that may be done.
type Work struct {
	ID         string    `key:"id" label:"work"`
	Cost       *float64  `key:"cost" unit:"money" min:"0" max:"1e12" label:"cost"`
	Costs      []float64 `key:"costs" unit:"money" optional:"yes" min:"0" max:"1e12" most:"200" label:"cost against each budget" help:"instead of one cost, where each budget is a limit of its own: a year, dock days"`
	Value      float64   `key:"value" min:"-1e12" max:"1e12" label:"worth" help:"points, or money of risk taken away; negative for harm"`
	Group      string    `key:"group" optional:"yes" label:"matter, or sort of work"`
	Course     string    `key:"course" optional:"yes" label:"course of that matter it belongs to" help:"works of two courses of one group shut each other out"`
	Needs      []string  `key:"needs" optional:"yes" label:"works or courses it needs"`
	Excludes   []string  `key:"excludes" optional:"yes" label:"works or courses it shuts out"`
	Must       bool      `key:"must" default:"no" label:"must be done"`
	OnlyInDock bool      `key:"only_in_dock" default:"no" label:"can be done in dock only"`
}

// Pot is a sum of money with the rules it may be spent under.
type Pot struct {
	Name   string   `key:"name" optional:"yes" label:"pot or period"`
	Amount float64  `key:"amount" unit:"money" min:"0" max:"1e14" label:"amount"`
	Only   []string `key:"only" optional:"yes" label:"works, groups or courses it may pay for" help:"left out: any"`
}

// scopeModel is the works, their rules and the money as a program: one whole variable for each work, then for each course, then what each pot pays.
type scopeModel struct {
	works  []Work
	pots   []Pot
	inDock bool

	place   map[string]int // variable of a work or course
	courses []string
	base    Program // rules without money
}

// unlimited is a pot that never runs out.
const unlimited = 1e15

func newScope(works []Work, pots []Pot, inDock bool) (*scopeModel, error) {
	m := &scopeModel{works: works, pots: pots, inDock: inDock, place: map[string]int{}}
	if len(works) == 0 {
		return nil, field.Refuse("works", "works is empty: nothing to choose from")
	}
	for i, w := range works {
		if err := m.addWork(i, w); err != nil {
			return nil, err
		}
	}
	if err := m.addCourses(); err != nil {
		return nil, err
	}
	for i, w := range works {
		if err := m.addRules(i, w); err != nil {
			return nil, err
		}
	}
	return m, m.checkPots()
}

func (m *scopeModel) addWork(i int, w Work) error {
	at := func(key string) string { return fmt.Sprintf("works[%d].%s", i, key) }
	if w.ID == "" {
		return field.Refuse(at("id"), "works[%d] has no id", i)
	}
	if _, twice := m.place[w.ID]; twice {
		return field.Refuse(at("id"), "work %q stands twice", w.ID)
	}
	if w.Cost == nil && w.Costs == nil {
		return field.Refuse(at("cost"), "work %q has no cost: give one, 0 if it costs nothing", w.ID)
	}
	if w.Cost != nil && w.Costs != nil {
		return field.Refuse(at("costs"), "work %q has a cost and a list of costs: give one of them", w.ID)
	}
	v := Variable{Name: w.ID, Cost: -w.Value, Low: 0, High: 1, Whole: true}
	if w.Must {
		v.Low = 1
	}
	if w.OnlyInDock && !m.inDock {
		if w.Must {
			return field.Refuse(at("must"), "work %q must be done and can be done in dock only, but she is not in dock", w.ID)
		}
		v.High = 0
	}
	m.place[w.ID] = m.base.Add(v)
	return nil
}

// addCourses gives each course a variable: it is taken if any of its works is, and one course at most is taken in each group.
func (m *scopeModel) addCourses() error {
	groups, group := []string{}, map[string][]int{}
	members, home := map[string][]int{}, map[string]string{}
	for i, w := range m.works {
		if w.Course == "" {
			continue
		}
		if was, known := home[w.Course]; known && was != w.Group {
			return field.Refuse(fmt.Sprintf("works[%d].course", i), "course %q stands under two groups, %q and %q", w.Course, was, w.Group)
		}
		home[w.Course] = w.Group
		if _, isWork := m.place[w.Course]; isWork && members[w.Course] == nil {
			return field.Refuse(fmt.Sprintf("works[%d].course", i), "%q is a work and a course: name them apart", w.Course)
		}
		if members[w.Course] == nil {
			m.courses = append(m.courses, w.Course)
			m.place[w.Course] = m.base.Add(Variable{Name: w.Course, High: 1, Whole: true})
			if group[w.Group] == nil {
				groups = append(groups, w.Group)
			}
			group[w.Group] = append(group[w.Group], m.place[w.Course])
		}
		members[w.Course] = append(members[w.Course], i)
	}
	for _, c := range m.courses {
		y := m.place[c]
		some := []Term{{y, 1}}
		for _, i := range members[c] {
			m.base.Limit(c, math.Inf(-1), 0, Term{i, 1}, Term{y, -1})
			some = append(some, Term{i, -1})
		}
		m.base.Limit(c, math.Inf(-1), 0, some...)
	}
	for _, g := range groups {
		if len(group[g]) > 1 && g != "" {
			var terms []Term
			for _, y := range group[g] {
				terms = append(terms, Term{y, 1})
			}
			m.base.Limit(g, math.Inf(-1), 1, terms...)
		}
	}
	return nil
}

func (m *scopeModel) addRules(i int, w Work) error {
	for _, rule := range []struct {
		key   string
		names []string
		times float64
		high  float64
	}{{"needs", w.Needs, -1, 0}, {"excludes", w.Excludes, 1, 1}} {
		for k, name := range rule.names {
			j, known := m.place[name]
			at := fmt.Sprintf("works[%d].%s[%d]", i, rule.key, k)
			switch {
			case !known:
				return field.Refuse(at, "work %q %s %q, which is no work or course here", w.ID, rule.key, name)
			case j == i && rule.key == "excludes":
				return field.Refuse(at, "work %q excludes itself", w.ID)
			case j != i:
				m.base.Limit(w.ID, math.Inf(-1), rule.high, Term{i, 1}, Term{j, rule.times})
			}
		}
	}
	return nil
}

func (m *scopeModel) checkPots() error {
	listed := slices.ContainsFunc(m.works, func(w Work) bool { return w.Costs != nil })
	for i, w := range m.works {
		if listed && len(w.Costs) != len(m.pots) {
			return field.Refuse(fmt.Sprintf("works[%d].costs", i), "work %q has %d costs for %d budgets", w.ID, len(w.Costs), len(m.pots))
		}
	}
	for i, p := range m.pots {
		for k, name := range p.Only {
			if !slices.ContainsFunc(m.works, func(w Work) bool { return w.ID == name || w.Group == name || w.Course == name }) {
				return field.Refuse(fmt.Sprintf("budgets[%d].only[%d]", i, k), "pot %q may pay only for %q, which is no work, group or course here", p.Name, name)
			}
		}
	}
	return nil
}

// listed tells whether each budget is a limit of its own with its own costs.
func (m *scopeModel) listed() bool { return m.works[0].Costs != nil }

func (w Work) total() float64 {
	if w.Cost != nil {
		return *w.Cost
	}
	sum := 0.0
	for _, c := range w.Costs {
		sum += c
	}
	return sum
}

func (p Pot) pays(w Work) bool {
	return len(p.Only) == 0 || slices.ContainsFunc(p.Only, func(name string) bool { return name == w.ID || name == w.Group || name == w.Course })
}

// program adds the money to the rules: the pots as they are, and extra on top that may be spent on anything.
func (m *scopeModel) program(extra float64) (p Program, pay map[[2]int]int) {
	p.Vars = slices.Clone(m.base.Vars)
	p.Rows = slices.Clone(m.base.Rows)
	pay = map[[2]int]int{}
	switch {
	case m.listed():
		for k, pot := range m.pots {
			var terms []Term
			for i, w := range m.works {
				terms = append(terms, Term{i, w.Costs[k]})
			}
			p.Limit(pot.Name, math.Inf(-1), pot.Amount+extra, terms...)
		}
	case len(m.pots) == 1 && len(m.pots[0].Only) == 0:
		var terms []Term
		for i, w := range m.works {
			terms = append(terms, Term{i, *w.Cost})
		}
		p.Limit("budget", math.Inf(-1), m.pots[0].Amount+extra, terms...)
	default:
		m.payments(&p, pay, extra)
	}
	return p, pay
}

// payments lets several pots pay for one work together.
func (m *scopeModel) payments(p *Program, pay map[[2]int]int, extra float64) {
	pots := append(slices.Clone(m.pots), Pot{Name: "extra", Amount: extra})
	for i, w := range m.works {
		terms := []Term{{i, -*w.Cost}}
		for k, pot := range pots {
			if pot.pays(w) && pot.Amount > 0 {
				pay[[2]int{i, k}] = p.Add(Variable{Name: w.ID + " from " + pot.Name, High: *w.Cost})
				terms = append(terms, Term{pay[[2]int{i, k}], 1})
			}
		}
		p.Limit(w.ID, 0, 0, terms...)
	}
	for k, pot := range pots {
		var terms []Term
		for i := range m.works {
			if v, ok := pay[[2]int{i, k}]; ok {
				terms = append(terms, Term{v, 1})
			}
		}
		if terms != nil {
			p.Limit(pot.Name, math.Inf(-1), pot.Amount, terms...)
		}
	}
}
