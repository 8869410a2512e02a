package choice

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// State is how things may turn out to be.
type State struct {
	Name        string  `key:"name" label:"state"`
	Probability float64 `key:"probability" min:"0" max:"1" label:"probability"`
}

// Action is what may be done, with its worth in each state.
type Action struct {
	Name  string    `key:"name" label:"action"`
	Value []float64 `key:"value" label:"worth in each state" help:"a cost is negative"`
}

// Test is a look that may be taken first.
type Test struct {
	Name    string   `key:"name" label:"look"`
	Cost    float64  `key:"cost" default:"0" min:"0" label:"its price"`
	Signals []Signal `key:"signals" most:"200" label:"what it may show"`
}

// Signal is one thing a look may show, with its likelihood in each state.
type Signal struct {
	Name       string    `key:"name" label:"it shows"`
	Likelihood []float64 `key:"likelihood" min:"0" max:"1" label:"likelihood in each state"`
}

// TreeIn is states, actions and tests; or a tree of nodes.
type TreeIn struct {
	States  []State  `key:"states" symbol:"st" optional:"yes" most:"200" label:"states"`
	Actions []Action `key:"actions" symbol:"ac" optional:"yes" most:"200" label:"actions"`
	Tests   []Test   `key:"tests" symbol:"te" optional:"yes" most:"100" label:"looks that may be taken first"`
	Nodes   []Node   `key:"nodes" optional:"yes" most:"10000" label:"a tree of its own shape, instead"`
}

// TreeOut is what to do.
type TreeOut struct {
	Best      string        `key:"best" label:"best action without a look"`
	Value     float64       `key:"value" symbol:"V" label:"its worth"`
	ValueBest float64       `key:"value_best" symbol:"Vb" label:"worth with the best look, its price paid, or without one"`
	BestTest  string        `key:"best_test" optional:"yes" label:"best look; none where acting now is best"`
	Policy    []Policy      `key:"policy" label:"what to do on what is seen"`
	Perfect   *float64      `key:"value_perfect" symbol:"Vp" label:"worth if the state were known"`
	EVPI      *float64      `key:"evpi" symbol:"ep" label:"value of knowing the state: no look is worth more" expr:"Vp-V"`
	Values    []ActionWorth `key:"actions" symbol:"aw" label:"worth of each action now"`
	Tests     []TestResult  `key:"tests" label:"look by look"`
	Nodes     []NodeResult  `key:"nodes" label:"node by node"`

	Warnings calc.Warnings `key:"-"`
}

// ActionWorth is the expected worth of an action.
type ActionWorth struct {
	Name  string  `key:"name" label:"action"`
	Value float64 `key:"value" label:"expected worth"`
}

// Policy is a rule: on this signal, that action.
type Policy struct {
	Test        string  `key:"test" optional:"yes" label:"look"`
	Signal      string  `key:"signal" optional:"yes" label:"it shows"`
	Probability float64 `key:"probability" label:"chance of seeing that"`
	Action      string  `key:"action" label:"then"`
	Value       float64 `key:"value" label:"worth of it then, before the price of the look"`
}

// TestResult is what a look is worth.
type TestResult struct {
	Name      string      `key:"name" label:"look"`
	Signal    []float64   `key:"signal_probability" label:"chance of each thing shown"`
	Posterior [][]float64 `key:"posterior" label:"probability of each state, for each thing shown"`
	EVSI      float64     `key:"evsi" label:"value of the look before its price"`
	Gain      float64     `key:"gain" label:"value less price" help:"below nothing: don't look"`
	Net       float64     `key:"net" label:"worth of looking and then acting, price paid"`
}

// Tree weighs acting now against looking first.
//
// An action is worth sum(p v) over the states; the best now has V. A look that shows s with likelihood L(s, state) turns the probabilities into
// p L / P(s), with P(s) = sum(p L), and is worth sum over s of P(s) times the best of the actions then, less V: its expected value of sample
// information. Knowing the state is worth sum(p max v) - V. It holds for worths that are money or add up like it. Source: Raiffa, Decision
// Analysis, 1968. It is as good as the likelihoods: how often would the look show that if it were not so?
var Tree = calc.Formula[TreeIn, TreeOut]{
	ID:       "choice.tree",
	Title:    "Act now, look first, or wait",
	About:    "The best action now, what a look would be worth before its price, and what to do on what it shows; for any tree of decisions and chances too.",
	Holds:    "Worths that are money or add up like it, for one who can bear the loss. A look that can't change the decision is worth nothing.",
	Accuracy: "Exact for the probabilities given. Work it again with those that nobody is sure of.",
	Sources:  []source.Ref{{Key: "raiffa-1968", At: "the oil wildcatter's problem"}},
	Fn:       tree,
	Steps:    treeSteps,
}

func tree(in TreeIn) (out TreeOut, err error) {
	out.Policy, out.Values, out.Tests, out.Nodes = []Policy{}, []ActionWorth{}, []TestResult{}, []NodeResult{}
	if len(in.Nodes) > 0 {
		if in.States != nil || in.Actions != nil || in.Tests != nil {
			return out, field.Refuse("nodes", "give a tree of nodes, or states, actions and tests, not both")
		}
		return out, out.rollBack(in.Nodes)
	}
	if err := in.check(); err != nil {
		return out, err
	}
	p := make([]float64, len(in.States))
	for i, s := range in.States {
		p[i] = s.Probability
	}
	best, value := bestAction(in.Actions, p)
	out.Best, out.Value, out.ValueBest = in.Actions[best].Name, value, value
	for _, a := range in.Actions {
		out.Values = append(out.Values, ActionWorth{a.Name, expect(a.Value, p)})
	}
	perfect := 0.0
	for i := range p {
		most := math.Inf(-1)
		for _, a := range in.Actions {
			most = max(most, a.Value[i])
		}
		perfect += p[i] * most
	}
	out.Perfect, out.EVPI = new(perfect), new(perfect-value)
	out.Policy = []Policy{{Probability: 1, Action: out.Best, Value: value}}
	for _, t := range in.Tests {
		r, policy := look(t, in.Actions, p, value)
		out.Tests = append(out.Tests, r)
		if r.Net > out.ValueBest {
			out.ValueBest, out.BestTest, out.Policy = r.Net, t.Name, policy
		}
		if r.EVSI < 1e-12*max(1, math.Abs(value)) {
			out.Warnings = append(out.Warnings, fmt.Sprintf("nothing that %q can show would change the decision: it is worth nothing here", t.Name))
		}
	}
	return out, nil
}

func expect(value, p []float64) float64 {
	sum := 0.0
	for i, v := range value {
		sum += v * p[i]
	}
	return sum
}

func bestAction(actions []Action, p []float64) (best int, value float64) {
	value = math.Inf(-1)
	for i, a := range actions {
		if v := expect(a.Value, p); v > value {
			best, value = i, v
		}
	}
	return best, value
}

// look works out what a test is worth when the best action now is worth so much.
func look(t Test, actions []Action, p []float64, now float64) (r TestResult, policy []Policy) {
	r = TestResult{Name: t.Name}
	total := 0.0
	for _, s := range t.Signals {
		chance := expect(s.Likelihood, p)
		posterior := make([]float64, len(p))
		for i := range p {
			if chance > 0 {
				posterior[i] = p[i] * s.Likelihood[i] / chance
			}
		}
		r.Signal, r.Posterior = append(r.Signal, chance), append(r.Posterior, posterior)
		if chance == 0 {
			continue
		}
		best, value := bestAction(actions, posterior)
		total += chance * value
		policy = append(policy, Policy{t.Name, s.Name, chance, actions[best].Name, value})
	}
	r.EVSI = max(total-now, 0)
	r.Gain = r.EVSI - t.Cost
	r.Net = now + r.Gain
	return r, policy
}

func (in TreeIn) check() error {
	if len(in.States) == 0 {
		return field.Refuse("states", "states is empty: give states and actions, or nodes")
	}
	if len(in.Actions) == 0 {
		return field.Refuse("actions", "actions is empty: give at least one action")
	}
	sum := 0.0
	for _, s := range in.States {
		sum += s.Probability
	}
	if math.Abs(sum-1) > 1e-6 {
		return field.Refuse("states", "the probabilities of the states must add up to 1, not %.6g", sum)
	}
	n := len(in.States)
	for i, a := range in.Actions {
		if len(a.Value) != n {
			return field.Refuse(fmt.Sprintf("actions[%d].value", i), "action %q has %d worths for %d states", a.Name, len(a.Value), n)
		}
		if slices.ContainsFunc(in.Actions[:i], func(b Action) bool { return b.Name == a.Name }) {
			return field.Refuse(fmt.Sprintf("actions[%d].name", i), "action %q stands twice", a.Name)
		}
	}
	for i, t := range in.Tests {
		for k, s := range t.Signals {
			if len(s.Likelihood) != n {
				return field.Refuse(fmt.Sprintf("tests[%d].signals[%d].likelihood", i, k), "%s, %s: %d likelihoods for %d states", t.Name, s.Name, len(s.Likelihood), n)
			}
		}
		for state := range n {
			sum := 0.0
			for _, s := range t.Signals {
				sum += s.Likelihood[state]
			}
			if math.Abs(sum-1) > 1e-6 {
				return field.Refuse(fmt.Sprintf("tests[%d].signals", i), "%s: in state %q the likelihoods of all it may show must add up to 1, not %.6g", t.Name, in.States[state].Name, sum)
			}
		}
	}
	return nil
}

func treeSteps(in TreeIn, out TreeOut) []calc.Step {
	if len(in.Nodes) > 0 {
		return []calc.Step{{Symbol: "V", Value: out.Value, Unit: "-", Text: "rolled back from the ends: a chance takes the mean of its branches, a decision the best of them"}}
	}
	value := "max(map(aw, #.value))"
	if len(out.Values) == 1 {
		value = "aw[0].value"
	}
	steps := []calc.Step{
		{Symbol: "V", Formula: value, Value: out.Value, Unit: "-", Text: "best of the actions' expected worths, sum of probability times worth over the states"},
		{Symbol: "Vp", Value: *out.Perfect, Unit: "-", Text: "sum over the states of probability times the best worth there"},
	}
	for i, t := range out.Tests {
		steps = append(steps, calc.Step{Symbol: fmt.Sprintf("evsi%d", i+1), Value: t.EVSI, Unit: "-",
			Text: fmt.Sprintf("%s: probabilities turned over by what it shows (Bayes), the best action then, averaged over what it may show, less the best now", t.Name)})
	}
	return append(steps, calc.Step{Symbol: "Vb", Value: out.ValueBest, Unit: "-", Text: "greatest of acting now and looking first with the price paid"})
}
