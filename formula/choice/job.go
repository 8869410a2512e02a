package choice

import (
	"fmt"
	"math"
	"slices"

	"oakum/field"
)

// Job is a work that may be signed for now, added later, or left.
type Job struct {
	ID       string   `key:"id" label:"work"`
	Cost     float64  `key:"cost" unit:"money" min:"0" max:"1e12" label:"price if signed now"`
	Later    *float64 `key:"later" unit:"money" min:"0" max:"1e12" label:"price if added when the hull is seen" help:"left out: the price now and the premium"`
	Drop     *float64 `key:"drop" unit:"money" min:"0" max:"1e12" label:"still paid if it is signed and then dropped" help:"left out: the share of the price"`
	UnitRate bool     `key:"unit_rate" default:"no" label:"paid by quantity found, not in one sum"`
	Days     float64  `key:"days" unit:"d" default:"0" min:"0" max:"5000" label:"days in dock it takes"`
	Risk     float64  `key:"risk" unit:"money" default:"0" min:"0" max:"1e12" label:"risk if it is not done" help:"chance times what it would cost, in money"`
	Heritage float64  `key:"heritage" unit:"money" default:"0" min:"-1e12" max:"1e12" label:"harm to old fabric if it is done" help:"in money; negative where it restores"`
	Must     bool     `key:"must" default:"no" label:"must be done in every state"`
	NotNow   bool     `key:"only_if_found" default:"no" label:"can't be signed now, only added"`
	Needs    []string `key:"needs" optional:"yes" label:"works it needs"`
	Excludes []string `key:"excludes" optional:"yes" label:"works it shuts out"`
	Group    string   `key:"group" optional:"yes" label:"matter"`
	Course   string   `key:"course" optional:"yes" label:"course of that matter"`
}

// Finding is what is otherwise with a work in a state.
type Finding struct {
	Work     string   `key:"work" label:"work"`
	Factor   *float64 `key:"factor" min:"0" max:"100" label:"quantity found, against that expected" help:"multiplies the price by quantity and the price of later, and the days"`
	Days     *float64 `key:"days" unit:"d" min:"0" max:"5000" label:"days it takes then"`
	Risk     *float64 `key:"risk" unit:"money" min:"0" max:"1e12" label:"risk then if it is not done"`
	Heritage *float64 `key:"heritage" unit:"money" min:"-1e12" max:"1e12" label:"harm then if it is done"`
	Must     bool     `key:"must" default:"no" label:"must be done then"`
}

// Trigger is a rule for one work: in these states add it, or drop it.
type Trigger struct {
	Work  string   `key:"work" label:"work"`
	Do    string   `key:"do" label:"add or drop"`
	In    []string `key:"in" label:"in these states"`
	Worth float64  `key:"worth" unit:"money" label:"money it calls, the most of these states; released is negative"`
	Text  string   `key:"text" label:"in words"`
}

// terms of one work in one state, in money and seconds.
type jobState struct {
	signed, later, drop, days, risk, heritage float64
	must                                      bool
}

func (in ContractIn) stateOf(j Job, s Outcome) jobState {
	f := jobState{signed: j.Cost, later: j.Cost * (1 + in.Premium), drop: j.Cost * in.DropShare, days: j.Days, risk: j.Risk, heritage: j.Heritage, must: j.Must}
	if j.Later != nil {
		f.later = *j.Later
	}
	if j.Drop != nil {
		f.drop = *j.Drop
	}
	for _, x := range s.Findings {
		if x.Work != j.ID {
			continue
		}
		if x.Factor != nil {
			f.later *= *x.Factor
			f.days *= *x.Factor
			if j.UnitRate {
				f.signed *= *x.Factor
			}
		}
		if x.Days != nil {
			f.days = *x.Days
		}
		if x.Risk != nil {
			f.risk = *x.Risk
		}
		if x.Heritage != nil {
			f.heritage = *x.Heritage
		}
		f.must = f.must || x.Must
	}
	return f
}

// jobs builds the two-stage program of works. Of each work: now it is signed (1) or not; in a state it is added (only where not signed) or dropped
// (only where signed). Then come, for the state, the money and days beyond the limits, and whether there are any.
func (in ContractIn) jobs() (*twoStage, error) {
	t := &twoStage{chance: in.Chance}
	place := map[string]int{}
	for i, j := range in.Works {
		if _, twice := place[j.ID]; twice || j.ID == "" {
			return nil, field.Refuse(fmt.Sprintf("works[%d].id", i), "work %q stands twice, or has no id", j.ID)
		}
		place[j.ID] = i
		v := Variable{Name: j.ID, High: 1, Whole: true}
		if j.NotNow {
			v.High = 0
		}
		t.first = append(t.first, v)
	}
	var err error
	if t.pairs, err = in.pairs(place); err != nil {
		return nil, err
	}
	ever := in.everMust()
	for i, s := range in.States {
		for k, f := range s.Findings {
			if _, known := place[f.Work]; !known {
				return nil, field.Refuse(fmt.Sprintf("states[%d].findings[%d].work", i, k), "%s: there is no work %q", s.Name, f.Work)
			}
		}
		t.states = append(t.states, in.scenarioOf(s, t.pairs, ever))
	}
	return t, nil
}

// pair is a rule between two works: done of a is at most done of b (needs), or both are not done together.
type pair struct {
	a, b  int
	needs bool
}

func (in ContractIn) pairs(place map[string]int) (list []pair, err error) {
	for i, j := range in.Works {
		for _, rule := range []struct {
			key   string
			names []string
		}{{"needs", j.Needs}, {"excludes", j.Excludes}} {
			for k, name := range rule.names {
				other, known := place[name]
				if !known || other == i {
					return nil, field.Refuse(fmt.Sprintf("works[%d].%s[%d]", i, rule.key, k), "work %q %s %q, which is no other work here", j.ID, rule.key, name)
				}
				list = append(list, pair{i, other, rule.key == "needs"})
			}
		}
		for k, other := range in.Works[:i] {
			if j.Course != "" && other.Course != "" && j.Group == other.Group && j.Course != other.Course {
				list = append(list, pair{i, k, false})
			}
		}
	}
	return list, nil
}

// must begins the name of a row that says that a work must be done.
const must = "must "

func (in ContractIn) scenarioOf(s Outcome, pairs []pair, ever map[string]bool) scenario {
	n, inf, rate := len(in.Works), math.Inf(1), in.DayRate/86400
	out := scenario{name: s.Name, probability: s.Probability, now: make([]float64, n), over: -1}
	add, drop := func(i int) int { return n + 2*i }, func(i int) int { return n + 2*i + 1 }
	done := func(i int, f float64) []Term { return []Term{{i, f}, {add(i), f}, {drop(i), -f}} }
	var money, days []Term
	for i, j := range in.Works {
		f := in.stateOf(j, s)
		worth := f.heritage - f.risk + rate*f.days // what being done costs beside its price
		out.constant += f.risk
		out.now[i] = f.signed + worth
		out.vars = append(out.vars,
			Variable{Name: "add " + j.ID, Cost: f.later + worth, High: 1, Whole: true},
			Variable{Name: "drop " + j.ID, Cost: f.drop - f.signed - worth, High: 1, Whole: true})
		out.rows = append(out.rows,
			Row{Name: "add", Terms: []Term{{i, 1}, {add(i), 1}}, Low: -inf, High: 1},
			Row{Name: "drop", Terms: []Term{{i, -1}, {drop(i), 1}}, Low: -inf, High: 0})
		if ever[j.ID] {
			low := 0.0
			if f.must {
				low = 1
			}
			out.rows = append(out.rows, Row{Name: must + j.ID, Terms: done(i, 1), Low: low, High: 1})
		}
		money = append(money, Term{i, f.signed + rate*f.days}, Term{add(i), f.later + rate*f.days}, Term{drop(i), f.drop - f.signed - rate*f.days})
		days = append(days, done(i, f.days/86400)...)
	}
	for _, p := range pairs {
		if p.needs {
			out.rows = append(out.rows, Row{Name: "needs", Terms: append(done(p.a, 1), done(p.b, -1)...), Low: -inf, High: 0})
		} else {
			out.rows = append(out.rows, Row{Name: "excludes", Terms: append(done(p.a, 1), done(p.b, 1)...), Low: -inf, High: 1})
		}
	}
	in.limit(s, &out, money, days)
	return out
}

// everMust is the works that must be done in some state.
func (in ContractIn) everMust() map[string]bool {
	must := map[string]bool{}
	for _, j := range in.Works {
		must[j.ID] = j.Must
	}
	for _, s := range in.States {
		for _, f := range s.Findings {
			must[f.Work] = must[f.Work] || f.Must
		}
	}
	return must
}

// limit holds money and days to what there is. Where the chance of it need not be one, a state may go beyond, and is then counted as one that does.
func (in ContractIn) limit(s Outcome, out *scenario, money, days []Term) {
	purse, dock := in.Money, in.Days
	if s.Money != nil {
		purse = s.Money
	}
	if s.Days != nil {
		dock = s.Days
	}
	someMoney := in.Money != nil || slices.ContainsFunc(in.States, func(s Outcome) bool { return s.Money != nil })
	someDays := in.Days != nil || slices.ContainsFunc(in.States, func(s Outcome) bool { return s.Days != nil })
	over := len(in.Works) + len(out.vars)
	soft := in.Chance < 1 && (someMoney || someDays)
	if soft {
		out.vars = append(out.vars, Variable{Name: moneyOver, Cost: in.Overrun, High: math.Inf(1)}, Variable{Name: "days over", High: math.Inf(1)}, Variable{Name: "over", High: 1, Whole: true})
		out.over = len(out.vars) - 1
	}
	for k, l := range []struct {
		some  bool
		terms []Term
		limit *float64
		scale float64
	}{{someMoney, money, purse, 1}, {someDays, days, dock, 86400}} {
		if !l.some {
			continue
		}
		most := math.Inf(1)
		if l.limit != nil {
			most = *l.limit / l.scale
		}
		terms := slices.Clone(l.terms)
		if soft {
			sum := 1.0
			for _, t := range l.terms {
				sum += max(t.Times, 0)
			}
			terms = append(terms, Term{over + k, -1})
			out.rows = append(out.rows, Row{Name: "beyond", Terms: []Term{{over + k, 1}, {over + 2, -sum}}, Low: math.Inf(-1), High: 0})
		}
		out.rows = append(out.rows, Row{Name: "limit", Terms: terms, Low: math.Inf(-1), High: most})
	}
}

const moneyOver = "money over"
