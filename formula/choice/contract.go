package choice

import (
	"errors"
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// ContractIn is either works, or amounts in general; and the states.
type ContractIn struct {
	States []Outcome `key:"states" symbol:"st" most:"200" label:"how the hull may be found, or how things may turn out"`

	Works     []Job    `key:"works" optional:"yes" most:"60" label:"works"`
	Money     *float64 `key:"money" unit:"money" min:"0" label:"money there is" help:"a state may have another"`
	Days      *float64 `key:"days" unit:"d" min:"0" max:"5000" label:"days in dock there are" help:"a state may have others"`
	DayRate   float64  `key:"day_rate" unit:"money" default:"0" min:"0" label:"cost of a day in dock"`
	Chance    float64  `key:"chance" symbol:"ch" default:"1" over:"0" max:"1" label:"chance with which money and days must be enough"`
	Overrun   float64  `key:"overrun" symbol:"ov" default:"0" min:"0" max:"100" label:"extra cost of a unit of money beyond what there is"`
	Premium   float64  `key:"premium" symbol:"pr" default:"0.3" min:"0" max:"10" label:"how much dearer a work is when it is added later" help:"from memory; where the work has no price of its own for later"`
	DropShare float64  `key:"drop_share" symbol:"dr" default:"0.15" min:"0" max:"1" label:"share of its price still paid for a signed work that is dropped" help:"from memory; where the work says nothing else"`

	Maximise bool     `key:"maximise" default:"no" label:"the most, not the least, is wanted" help:"for amounts"`
	First    []Amount `key:"first" optional:"yes" most:"500" label:"amounts decided now"`
	Limits   []Limit  `key:"limits" optional:"yes" most:"500" label:"limits on what is decided now"`
	Second   []Amount `key:"second" optional:"yes" most:"500" label:"amounts decided when the state is known"`
	Later    []Limit  `key:"later_limits" optional:"yes" most:"500" label:"limits in each state"`

	Steps int `key:"steps" symbol:"ns" default:"200000" min:"1" max:"5000000" label:"steps of the search before it is cut off" help:"counted, not timed"`
}

// Outcome is one state.
type Outcome struct {
	Name        string    `key:"name" label:"state"`
	Probability float64   `key:"probability" over:"0" max:"1" label:"probability"`
	Money       *float64  `key:"money" unit:"money" min:"0" label:"money there is then"`
	Days        *float64  `key:"days" unit:"d" min:"0" max:"5000" label:"days there are then"`
	Findings    []Finding `key:"findings" optional:"yes" most:"60" label:"what is otherwise with the works"`
	Changes     []Change  `key:"changes" optional:"yes" most:"1000" label:"what is otherwise with the amounts"`
}

// ContractOut is what to decide now, and then.
type ContractOut struct {
	First    []Decided `key:"first" label:"decide now"`
	Sign     []string  `key:"sign" label:"works to sign now"`
	Rule     []Rule    `key:"rule" symbol:"ru" label:"state by state"`
	Triggers []Trigger `key:"triggers" label:"rules for the works: what to add or drop, and when"`

	Expected   float64  `key:"expected" symbol:"RP" label:"expected cost, or gain, of deciding so"`
	WaitAndSee float64  `key:"wait_and_see" symbol:"WS" label:"the same if the state were known first"`
	EVPI       float64  `key:"evpi" symbol:"ep" label:"what knowing first would be worth"`
	OfMean     *float64 `key:"expected_of_mean" symbol:"EEV" label:"expected cost, or gain, of deciding for the mean state"`
	VSS        *float64 `key:"vss" symbol:"vs" label:"what minding the states is worth over minding their mean"`
	Proved     bool     `key:"proved" label:"nothing is better" help:"proved, not guessed"`
	Gap        float64  `key:"gap" symbol:"gp" label:"what may still be missing"`

	Money    *float64 `key:"expected_money" unit:"money" symbol:"EM" label:"of the expected cost, money for works and days"`
	Risk     *float64 `key:"expected_risk" symbol:"ER" label:"of it, risk of what is left undone"`
	Heritage *float64 `key:"expected_heritage" symbol:"EH" label:"of it, harm to old fabric by what is done"`
	Enough   *float64 `key:"chance_enough" symbol:"pe" label:"chance that money and days are enough"`

	Warnings calc.Warnings `key:"-"`
}

// Decided is an amount decided now.
type Decided struct {
	Name  string  `key:"name" label:"amount or work"`
	Value float64 `key:"value" label:"how much; 1 for a work to sign"`
}

// Rule is what to do in a state.
type Rule struct {
	State   string    `key:"state" label:"state"`
	Chance  float64   `key:"probability" label:"probability"`
	Cost    float64   `key:"cost" label:"cost, or gain, in that state with what was decided now"`
	Amounts []Decided `key:"amounts" label:"amounts then"`
	Add     []string  `key:"add" label:"works to add"`
	Drop    []string  `key:"drop" label:"signed works to drop"`
	Done    []string  `key:"done" label:"works done then"`
	Money   *float64  `key:"money" unit:"money" label:"money then"`
	Days    *float64  `key:"days" unit:"d" label:"days then"`
	Enough  bool      `key:"enough" label:"money and days are enough"`
}

// Contract decides what to sign now when the hull is not yet seen.
//
// Two stages: the least of c x + sum over the states of p_s q_s y_s, with x decided now and y_s when the state is known, within the limits of each.
// For works: sign now, add later (dearer), or drop a signed one (a share is still paid); a work left undone costs its risk, one done its harm to
// old fabric; money and days are enough in states of the given chance together. Knowing first is worth RP - WS; minding the states, not their mean,
// EEV - RP. It holds for a list of states with their chances. Source: Birge and Louveaux, Introduction to Stochastic Programming, chapter 1. It is as
// good as the states: those nobody thought of have no rule.
var Contract = calc.Formula[ContractIn, ContractOut]{
	ID:       "choice.contract",
	Title:    "Sign now, decide the rest when the hull is seen",
	About:    "What to sign before the hull is seen and what to add or drop for each state found, so that money, risk and harm to old fabric together are least.",
	Holds:    "A list of states with their chances. Risk and harm are put in money by the keeper: work it with half and with twice of them.",
	Accuracy: "Exact for the states given, and proved where it says so. The states nobody thought of have no rule: keep the reserve.",
	Sources:  []source.Ref{{Key: "birge-louveaux", At: "section 1.1, the farmer's problem"}, {Key: "caroe-schultz"}, {Key: "sinha-zoltners"}, {Key: "land-doig"}, {Key: "memory", At: "premium of 0.3 and share of 0.15 for late additions and drops"}},
	Fn:       func(in ContractIn) (ContractOut, error) { return contract(in, nil) },
	Steps:    contractSteps,
	Samples:  8,
}

// Watch is told before each search how many were made and how many there are at most; an answer of false stops the whole.
type Watch func(done, of int) bool

// ErrStopped is the end of a search that its watch stopped.
var ErrStopped = errors.New("the search was stopped")

// ContractWatched is the method with a watch over its searches, for those who wait for it. It answers as the method does.
func ContractWatched(watch Watch) func(ContractIn) (ContractOut, error) {
	return func(in ContractIn) (ContractOut, error) { return contract(in, watch) }
}

func contract(in ContractIn, watch Watch) (out ContractOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	var t *twoStage
	if in.Works != nil {
		t, err = in.jobs()
	} else {
		t, err = in.amounts()
	}
	if err != nil {
		return out, err
	}
	t.effort = Effort{Nodes: in.Steps, Pivots: 100 * in.Steps}
	a, err := out.decide(in, t, watch)
	if err != nil {
		return out, in.because(err)
	}
	out.First, out.Sign, out.Triggers = []Decided{}, []string{}, []Trigger{}
	for i, v := range t.first {
		x := clean(a.first[i], v.Whole)
		out.First = append(out.First, Decided{v.Name, x})
		if in.Works != nil && x > 0.5 {
			out.Sign = append(out.Sign, v.Name)
		}
	}
	if in.Works != nil {
		in.rules(&out, t, a)
	} else {
		in.plainRules(&out, t, a)
	}
	if !out.Proved {
		out.Warnings = append(out.Warnings, fmt.Sprintf("a search was cut off: up to %.6g may be missing; give it more steps or fewer states", out.Gap))
	}
	return out, nil
}

func (in ContractIn) check() error {
	if len(in.States) == 0 {
		return field.Refuse("states", "states is empty: give at least one")
	}
	if (in.Works != nil) == (in.First != nil || in.Second != nil) {
		return field.Refuse("works", "give works, or amounts in first and second, one of the two")
	}
	sum := 0.0
	for _, s := range in.States {
		sum += s.Probability
	}
	if math.Abs(sum-1) > 1e-6 {
		return field.Refuse("states", "the probabilities of the states must add up to 1, not %.6g", sum)
	}
	return nil
}

// because puts a failure of the search in the user's words.
func (in ContractIn) because(err error) error {
	where := "limits"
	if in.Works != nil {
		where = "works"
	}
	switch {
	case errors.Is(err, ErrStopped):
		return err
	case errors.Is(err, ErrInfeasible) && in.Works != nil:
		return field.Refuse(where, "no choice of works keeps all musts, needs and exclusions within the money and days of every state, or of enough of them")
	case errors.Is(err, ErrInfeasible):
		return field.Refuse(where, "no amounts satisfy all limits in every state")
	case errors.Is(err, ErrUnbounded):
		return field.Refuse(where, "the gain can be made as great as one likes: a limit is missing")
	}
	return field.Refuse("steps", "%v; give it more steps or fewer states", err)
}

// decide finds the best decision, and what knowing first and minding the states are worth: works state by state, amounts written out in full.
func (out *ContractOut) decide(in ContractIn, t *twoStage, watch Watch) (a answer, err error) {
	fixed, ws, proved := t.fixed, 0.0, true
	if in.Works != nil {
		d := newDecomposed(in, t, in.Steps)
		d.watch = watch
		if ws, err = d.waitAndSee(); err != nil {
			return a, err
		}
		if a, err = d.run(); err != nil {
			return a, err
		}
		fixed = func(first []float64) (float64, error) { return d.try(setOf(first)) }
	} else {
		if ws, proved, err = t.waitAndSee(); err != nil {
			return a, err
		}
		if a, err = t.together(nil); err != nil {
			return a, err
		}
	}
	sign := 1.0
	if in.Maximise {
		sign = -1
	}
	out.Expected, out.WaitAndSee = sign*a.value, sign*ws
	out.EVPI = max(a.value-ws, 0)
	out.Proved, out.Gap = a.proved && proved, a.value-a.bound
	mean, ok, err := t.bestForMean()
	if err != nil {
		return a, err
	}
	of := math.Inf(1)
	if ok {
		if of, err = fixed(mean); err != nil {
			return a, err
		}
	}
	if math.IsInf(of, 1) {
		out.Warnings = append(out.Warnings, "what would be best for the mean state breaks a limit in some state: minding only the mean can't be done at all")
		return a, nil
	}
	out.OfMean, out.VSS = new(sign*of), new(max(of-a.value, 0))
	return a, nil
}

// plainRules lists the amounts of each state.
func (in ContractIn) plainRules(out *ContractOut, t *twoStage, a answer) {
	base := 0.0
	for i, v := range t.first {
		base += v.Cost * a.first[i]
	}
	sign := 1.0
	if in.Maximise {
		sign = -1
	}
	for k, state := range t.states {
		r := Rule{State: state.name, Chance: state.probability, Enough: true, Add: []string{}, Drop: []string{}, Done: []string{}}
		cost := base
		for i, v := range state.vars {
			x := a.later[k][i]
			cost += v.Cost * x
			r.Amounts = append(r.Amounts, Decided{v.Name, clean(x, v.Whole)})
		}
		r.Cost = sign * cost
		out.Rule = append(out.Rule, r)
	}
}

// clean takes off the last bits that the search leaves.
func clean(x float64, whole bool) float64 {
	if whole {
		return math.Round(x)
	}
	if r := math.Round(x*1e7) / 1e7; math.Abs(r-x) < 1e-8*max(1, math.Abs(x)) {
		return r
	}
	return x
}

func contractSteps(in ContractIn, out ContractOut) []calc.Step {
	evpi, vss := "RP-WS", "EEV-RP"
	if in.Maximise {
		evpi, vss = "WS-RP", "RP-EEV"
	}
	steps := []calc.Step{
		{Symbol: "RP", Formula: "sum(ru, #.probability*#.cost)", Value: out.Expected, Unit: "-", Text: "mean over the states of what each costs under the decision, which is the best for all of them together: branch and bound"},
		{Symbol: "WS", Value: out.WaitAndSee, Unit: "-", Text: "each state solved as if known first, averaged"},
		{Symbol: "ep", Formula: "max(" + evpi + ", 0)", Value: out.EVPI, Unit: "-", Text: "value of knowing first"},
	}
	if out.OfMean != nil {
		steps = append(steps,
			calc.Step{Symbol: "EEV", Value: *out.OfMean, Unit: "-", Text: "the best decision for the mean state, worked through all states"},
			calc.Step{Symbol: "vs", Formula: "max(" + vss + ", 0)", Value: *out.VSS, Unit: "-", Text: "value of minding the states"})
	}
	return steps
}
