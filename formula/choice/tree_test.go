package choice

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

func wildcatter() TreeIn {
	return TreeIn{
		States:  []State{{"dry", 0.5}, {"wet", 0.3}, {"soaking", 0.2}},
		Actions: []Action{{"drill", []float64{-70, 50, 200}}, {"don't", []float64{0, 0, 0}}},
		Tests: []Test{{"seismic", 10, []Signal{
			{"none", []float64{0.6, 0.3, 0.1}}, {"open", []float64{0.3, 0.4, 0.4}}, {"closed", []float64{0.1, 0.3, 0.5}},
		}}},
	}
}

// Published: Raiffa, Decision Analysis, 1968, and Shenoy, Operations Research 40, 1992: the oil wildcatter. Drilling now is worth 20, knowing 35 more,
// the seismic test 12.5 more before its price of 10, and 22.5 in all.
func TestTreePublishedWildcatter(t *testing.T) {
	out, err := Tree.Fn(wildcatter())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "value", out.Value, 20, 1e-9)
	near(t, "perfect", *out.EVPI, 35, 1e-9)
	near(t, "sample", out.Tests[0].EVSI, 12.5, 0.05)
	near(t, "net", out.Tests[0].Net, 22.5, 0.05)
	near(t, "with the best test", out.ValueBest, 22.5, 0.05)
	for i, want := range []float64{0.7317, 0.2195, 0.0488} {
		near(t, "after no structure", out.Tests[0].Posterior[0][i], want, 5e-5)
	}
	if out.Best != "drill" || out.BestTest != "seismic" || out.Policy[0].Action != "don't" || out.Policy[1].Action != "drill" {
		t.Errorf("%+v", out)
	}
}

// Published: Samuelson and Marks, Managerial Economics, chapter 13: a good test (chance 0.5) lifts the chance of a strike to 0.6, a bad one leaves 0.2;
// drilling is then worth 280 000 and -40 000, so the test lifts 120 000 to 140 000. A strike is worth 600 000, a dry hole -200 000.
func TestTreePublishedImperfectTest(t *testing.T) {
	in := TreeIn{
		States:  []State{{"wet", 0.4}, {"dry", 0.6}},
		Actions: []Action{{"drill", []float64{600, -200}}, {"don't", []float64{0, 0}}},
		Tests:   []Test{{"seismic", 0, []Signal{{"good", []float64{0.75, 1.0 / 3}}, {"bad", []float64{0.25, 2.0 / 3}}}}},
	}
	out, err := Tree.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "chance of good", out.Tests[0].Signal[0], 0.5, 1e-9)
	near(t, "strike after good", out.Tests[0].Posterior[0][0], 0.6, 1e-9)
	near(t, "strike after bad", out.Tests[0].Posterior[1][0], 0.2, 1e-9)
	near(t, "after good", out.Policy[0].Value, 280, 1e-9)
	near(t, "now", out.Value, 120, 1e-9)
	near(t, "with the test", out.ValueBest, 140, 1e-9)
	near(t, "perfect", *out.EVPI, 120, 1e-9)
}

// Published: the wildcatter again, written as a tree of nodes with Raiffa's preposterior chances .41, .35, .24.
func TestTreeOfNodesIsTheSame(t *testing.T) {
	out, err := Tree.Fn(TreeIn{Nodes: wildcatterNodes()})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "value", out.Value, 22.5, 0.05)
	if out.Best != "test" {
		t.Errorf("best %q", out.Best)
	}
	reached := 0.0
	for i, n := range wildcatterNodes() {
		if n.Kind == "end" {
			reached += out.Nodes[i].Chance
		}
	}
	near(t, "chances of the ends", reached, 1, 1e-9)
}

func wildcatterNodes() []Node {
	p := func(x float64) *float64 { return &x }
	nodes := []Node{{ID: "start", Kind: "decide"}, {ID: "now", Parent: "start", Kind: "decide", Label: "no test"}, {ID: "seismic", Parent: "start", Kind: "chance", Label: "test", Value: -10}}
	prior := []float64{0.5, 0.3, 0.2}
	value := []float64{-70, 50, 200}
	drill := func(parent string, chances []float64) {
		nodes = append(nodes, Node{ID: parent + " leave", Parent: parent, Kind: "end", Label: "don't"}, Node{ID: parent + " drill", Parent: parent, Kind: "chance", Label: "drill"})
		for i, c := range chances {
			nodes = append(nodes, Node{ID: fmt.Sprint(parent, " ", i), Parent: parent + " drill", Kind: "end", Probability: p(c), Value: value[i]})
		}
	}
	drill("now", prior)
	for k, likelihood := range [][]float64{{0.6, 0.3, 0.1}, {0.3, 0.4, 0.4}, {0.1, 0.3, 0.5}} {
		chance := expect(likelihood, prior)
		id := fmt.Sprint("signal ", k)
		nodes = append(nodes, Node{ID: id, Parent: "seismic", Kind: "decide", Label: id, Probability: p(chance)})
		after := make([]float64, 3)
		for i := range after {
			after[i] = prior[i] * likelihood[i] / chance
		}
		drill(id, after)
	}
	return nodes
}

// Identity: no look is worth less than nothing or more than knowing, and the probabilities after it average to those before.
func TestTreeLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "states")
		shares := func(label string, n int) []float64 {
			out, sum := make([]float64, n), 0.0
			for i := range out {
				out[i] = rapid.Float64Range(0.01, 1).Draw(t, label)
				sum += out[i]
			}
			for i := range out {
				out[i] /= sum
			}
			return out
		}
		var in TreeIn
		for i, p := range shares("probability", n) {
			in.States = append(in.States, State{fmt.Sprint(i), p})
		}
		for i := range rapid.IntRange(1, 4).Draw(t, "actions") {
			v := make([]float64, n)
			for k := range v {
				v[k] = rapid.Float64Range(-100, 100).Draw(t, "value")
			}
			in.Actions = append(in.Actions, Action{fmt.Sprint(i), v})
		}
		k := rapid.IntRange(1, 4).Draw(t, "signals")
		test := Test{Name: "look", Cost: rapid.Float64Range(0, 10).Draw(t, "cost")}
		for i := range k {
			test.Signals = append(test.Signals, Signal{fmt.Sprint(i), make([]float64, n)})
		}
		for s := range n {
			for i, l := range shares("likelihood", k) {
				test.Signals[i].Likelihood[s] = l
			}
		}
		in.Tests = []Test{test}
		out, err := Tree.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		r := out.Tests[0]
		if r.EVSI < 0 || r.EVSI > *out.EVPI+1e-9 {
			t.Fatalf("sample %g, perfect %g", r.EVSI, *out.EVPI)
		}
		for s := range n {
			mean := 0.0
			for i := range k {
				mean += r.Signal[i] * r.Posterior[i][s]
			}
			if math.Abs(mean-in.States[s].Probability) > 1e-9 {
				t.Fatalf("state %d: %g on average after, %g before", s, mean, in.States[s].Probability)
			}
		}
		if out.ValueBest < out.Value {
			t.Fatalf("worth %g with the best look, %g without", out.ValueBest, out.Value)
		}
	})
}

func TestTreeRefuses(t *testing.T) {
	p := func(x float64) *float64 { return &x }
	for want, change := range map[string]func(*TreeIn){
		"must add up to 1, not 1.1": func(in *TreeIn) { in.States[0].Probability = 0.6 },
		"2 worths for 3 states":     func(in *TreeIn) { in.Actions[0].Value = []float64{1, 2} },
		"likelihoods of all it may": func(in *TreeIn) { in.Tests[0].Signals = in.Tests[0].Signals[:2] },
		"stands twice":              func(in *TreeIn) { in.Actions[1].Name = "drill" },
		"not both":                  func(in *TreeIn) { in.Nodes = wildcatterNodes() },
		"states is empty":           func(in *TreeIn) { in.States = nil },
		"which is not there": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "a", Kind: "end"}, {ID: "b", Kind: "end", Parent: "c"}}}
		},
		"a tree has one root": func(in *TreeIn) { *in = TreeIn{Nodes: []Node{{ID: "a", Kind: "end"}, {ID: "b", Kind: "end"}}} },
		"without branches":    func(in *TreeIn) { *in = TreeIn{Nodes: []Node{{ID: "a", Kind: "decide"}}} },
		"add up to 0.7": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "a", Kind: "chance"}, {ID: "b", Kind: "end", Parent: "a", Probability: p(0.7)}}}
		},
		"circle": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "r", Kind: "end"}, {ID: "a", Kind: "decide", Parent: "b"}, {ID: "b", Kind: "decide", Parent: "a"}}}
		},
		"the root is missing": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "a", Kind: "decide", Parent: "b"}, {ID: "b", Kind: "decide", Parent: "a"}}}
		},
		"hangs on a chance and has": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "a", Kind: "chance"}, {ID: "b", Kind: "end", Parent: "a"}}}
		},
		"is an end but has branches": func(in *TreeIn) {
			*in = TreeIn{Nodes: []Node{{ID: "a", Kind: "end"}, {ID: "b", Kind: "end", Parent: "a"}}}
		},
	} {
		in := wildcatter()
		change(&in)
		_, err := Tree.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleTree() {
	// A diver can look at a sea chest before it is decided whether to dock this year.
	out, err := Tree.Fn(TreeIn{
		States:  []State{{"sound", 0.8}, {"wasted", 0.2}},
		Actions: []Action{{"dock now", []float64{-600, -600}}, {"wait", []float64{-100, -2200}}},
		Tests:   []Test{{"dive", 8, []Signal{{"looks sound", []float64{0.95, 0.15}}, {"looks wasted", []float64{0.05, 0.85}}}}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("now: %s, %.0f; first a %s, then %.0f\n", out.Best, out.Value, out.BestTest, out.ValueBest)
	// Output: now: wait, -520; first a dive, then -276
}
