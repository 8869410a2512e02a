package choice

import (
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

func chosenOf(t *testing.T, in ScopeIn) ScopeOut {
	t.Helper()
	out, err := Scope.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if !out.Proved {
		t.Error("not proved")
	}
	return out
}

func plain(values, costs []float64, budget float64) ScopeIn {
	in := Scope.New()
	in.Budget = &budget
	for i, v := range values {
		in.Works = append(in.Works, Work{ID: fmt.Sprint(i), Value: v, Cost: new(costs[i])})
	}
	return in
}

// Published: Petersen, Management Science 13, 1967, the seven test problems of OR-Library's mknap1 with their optima, 6 to 50 projects under 5 or
// 10 limits.
func TestScopePublishedPetersen(t *testing.T) {
	raw, err := os.ReadFile("testdata/mknap1.txt")
	if err != nil {
		t.Fatal(err)
	}
	words := strings.Fields(string(raw))
	next := func() float64 {
		x, err := strconv.ParseFloat(words[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		words = words[1:]
		return x
	}
	problems := int(next())
	if problems != 7 {
		t.Fatalf("%d problems", problems)
	}
	for k := range problems {
		n, m, best := int(next()), int(next()), next()
		in := Scope.New()
		for i := range n {
			in.Works = append(in.Works, Work{ID: fmt.Sprint(i), Value: next(), Costs: make([]float64, m)})
		}
		for r := range m {
			for i := range n {
				in.Works[i].Costs[r] = next()
			}
		}
		for range m {
			in.Budgets = append(in.Budgets, Pot{Amount: next()})
		}
		near(t, fmt.Sprintf("problem %d", k+1), chosenOf(t, in).Value, best, 1e-6)
	}
}

// Published: the worked knapsack example of a well-known open solver's documentation, 50 items, capacity 850, total value 7534.
func TestScopePublishedFiftyItems(t *testing.T) {
	values := []float64{360, 83, 59, 130, 431, 67, 230, 52, 93, 125, 670, 892, 600, 38, 48, 147, 78, 256, 63, 17, 120, 164, 432, 35, 92, 110, 22, 42, 50, 323,
		514, 28, 87, 73, 78, 15, 26, 78, 210, 36, 85, 189, 274, 43, 33, 10, 19, 389, 276, 312}
	weights := []float64{7, 0, 30, 22, 80, 94, 11, 81, 70, 64, 59, 18, 0, 36, 3, 8, 15, 42, 9, 0, 42, 47, 52, 32, 26, 48, 55, 6, 29, 84, 2, 4, 18, 56, 7, 29, 93, 44,
		71, 3, 86, 66, 31, 65, 0, 79, 20, 65, 52, 13}
	near(t, "value", chosenOf(t, plain(values, weights, 850)).Value, 7534, 0)
}

// Published: Martello and Toth's example of the 0-1 knapsack, capacity 104, optimum 900, items 1, 3, 4, 5, 7, 8.
func TestScopePublishedMartelloToth(t *testing.T) {
	out := chosenOf(t, plain([]float64{350, 400, 450, 20, 70, 8, 5, 5}, []float64{25, 35, 45, 5, 25, 3, 2, 2}, 104))
	near(t, "value", out.Value, 900, 0)
	if !slices.Equal(out.Chosen, []string{"0", "2", "3", "4", "6", "7"}) {
		t.Errorf("chosen %v", out.Chosen)
	}
}

// Computed by hand: the greedy choice by worth for money takes 60 and 100 and says 160.
func TestScopeBeatsGreed(t *testing.T) {
	out := chosenOf(t, plain([]float64{60, 100, 120}, []float64{10, 20, 30}, 50))
	near(t, "value", out.Value, 220, 0)
	near(t, "cost", out.Cost, 50, 0)
}

// Computed by hand: +10 and +8 need -4 and -3, worth 11 in all.
func TestScopePrerequisites(t *testing.T) {
	in := plain([]float64{10, -4, -3, 8}, []float64{0, 0, 0, 0}, 0)
	in.Works[0].Needs = []string{"1", "2"}
	in.Works[3].Needs = []string{"2"}
	near(t, "value", chosenOf(t, in).Value, 11, 0)
}

// Computed by hand: one course of a matter, exclusions, musts, and works for the dock.
func TestScopeRules(t *testing.T) {
	in := plain([]float64{30, 40, 50, 20, 25}, []float64{10, 10, 30, 10, 10}, 50)
	for i, id := range []string{"seal", "repack", "remove", "paint", "anodes"} {
		in.Works[i].ID = id
	}
	in.Works[0].Group, in.Works[0].Course = "shaft", "leave"
	in.Works[1].Group, in.Works[1].Course = "shaft", "leave"
	in.Works[2].Group, in.Works[2].Course = "shaft", "take off"
	in.Works[2].OnlyInDock = true
	out := chosenOf(t, in)
	near(t, "leave, with paint and anodes", out.Value, 30+40+20+25, 0)
	if !slices.Equal(out.Waits, []string{"remove"}) || !slices.Equal(out.Courses, []string{"leave"}) {
		t.Errorf("waits %v, courses %v", out.Waits, out.Courses)
	}
	in.Works[2].Must = true
	near(t, "take off, with paint and anodes", chosenOf(t, in).Value, 50+20+25, 0)
	in.Works[3].Excludes = []string{"take off"}
	near(t, "no paint with it", chosenOf(t, in).Value, 75, 0)
	in.Works[2].Must, in.Works[4].Needs = false, []string{"remove"}
	near(t, "anodes need it", chosenOf(t, in).Value, 90, 0)
	in.InDock = false
	near(t, "not in dock", chosenOf(t, in).Value, 90, 0)
}

// Computed by hand: a pot that may pay for shafts only buys nothing else; two pots may pay for one work together.
func TestScopePots(t *testing.T) {
	in := plain([]float64{10, 9, 8}, []float64{60, 50, 40}, 0)
	in.Budget = nil
	in.Works[0].Group = "shafts"
	in.Budgets = []Pot{{Name: "free", Amount: 50}, {Name: "shafts", Amount: 40, Only: []string{"shafts"}}}
	out := chosenOf(t, in)
	near(t, "value", out.Value, 10, 0)
	near(t, "paid by shafts and free", out.Spent[0].Spent+out.Spent[1].Spent, 60, 1e-9)
	near(t, "what 10 000 more buys", out.Shadow, 17, 0)
	in.Budgets[0].Amount = 60
	near(t, "value with 60 free", chosenOf(t, in).Value, 18, 0)
}

// Identity: the search finds what trying every choice finds.
func TestScopeAgainstEveryChoice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "works")
		in := Scope.New()
		in.Rungs = 0
		in.Budget = new(float64(rapid.IntRange(0, 200).Draw(t, "budget")))
		for i := range n {
			w := Work{ID: fmt.Sprint(i), Value: float64(rapid.IntRange(-10, 40).Draw(t, "value")), Cost: new(float64(rapid.IntRange(0, 60).Draw(t, "cost")))}
			if rapid.Bool().Draw(t, "course") {
				w.Group, w.Course = "g", rapid.SampledFrom([]string{"c1", "c2"}).Draw(t, "of")
			}
			if i > 0 && rapid.IntRange(0, 2).Draw(t, "rule") == 0 {
				other := fmt.Sprint(rapid.IntRange(0, i-1).Draw(t, "other"))
				if rapid.Bool().Draw(t, "needs") {
					w.Needs = []string{other}
				} else {
					w.Excludes = []string{other}
				}
			}
			in.Works = append(in.Works, w)
		}
		best := everyChoice(in)
		out, err := Scope.Fn(in)
		if err != nil || !out.Proved || math.Abs(out.Value-best) > 1e-9 {
			t.Fatalf("found %g, every choice %g (%v)", out.Value, best, err)
		}
	})
}

func everyChoice(in ScopeIn) float64 {
	best := math.Inf(-1)
	at := map[string]int{}
	for i, w := range in.Works {
		at[w.ID] = i
	}
choices:
	for bits := range 1 << len(in.Works) {
		value, cost, course := 0.0, 0.0, ""
		for i, w := range in.Works {
			if bits>>i&1 == 0 {
				continue
			}
			value += w.Value
			cost += *w.Cost
			if w.Course != "" && course != "" && course != w.Course {
				continue choices
			}
			course = max(course, w.Course)
			for _, need := range w.Needs {
				if bits>>at[need]&1 == 0 {
					continue choices
				}
			}
			for _, no := range w.Excludes {
				if bits>>at[no]&1 == 1 {
					continue choices
				}
			}
		}
		if cost <= *in.Budget {
			best = max(best, value)
		}
	}
	return best
}

// Identity: worth never falls as money grows, and the last rung buys all that is worth having.
func TestScopeLadderRises(t *testing.T) {
	in := plain([]float64{60, 100, 120, -5, 30}, []float64{10e3, 20e3, 30e3, 1e3, 25e3}, 50e3)
	out := chosenOf(t, in)
	near(t, "what 10 000 more buys", out.Shadow, 60, 0)
	for i, r := range out.Ladder {
		if r.Cost > r.Budget || (i > 0 && r.Value <= out.Ladder[i-1].Value) {
			t.Errorf("rung %+v", r)
		}
	}
	near(t, "top", out.Ladder[len(out.Ladder)-1].Value, 310, 0)
}

// A search that is cut off says how far off it may be, and is not further off than that.
func TestScopeCutOff(t *testing.T) {
	list, _ := instances(t)
	for _, i := range list {
		if i.Name != "many-limits-24" {
			continue
		}
		s, err := Solve(i.program(), Effort{Nodes: 60, Pivots: 1e6})
		if err != nil || s.Proved {
			t.Fatalf("%v, proved %v", err, s.Proved)
		}
		if !(s.Bound <= i.Value+1e-9 && i.Value <= s.Value+1e-9) {
			t.Errorf("found %g, bound %g, the best is %g", s.Value, s.Bound, i.Value)
		}
		return
	}
	t.Error("the instance is gone")
}

func TestScopeRefuses(t *testing.T) {
	base := func() ScopeIn { return plain([]float64{5, 6}, []float64{10, 20}, 15) }
	for want, change := range map[string]func(*ScopeIn){
		"budget is missing": func(in *ScopeIn) { in.Budget = nil },
		"works is empty":    func(in *ScopeIn) { in.Works = nil },
		"stands twice":      func(in *ScopeIn) { in.Works[1].ID = "0" },
		"no cost":           func(in *ScopeIn) { in.Works[1].Cost = nil },
		"no work or course": func(in *ScopeIn) { in.Works[1].Needs = []string{"mast"} },
		"excludes itself":   func(in *ScopeIn) { in.Works[1].Excludes = []string{"1"} },
		"cost at least 20":  func(in *ScopeIn) { in.Works[1].Must = true },
		"contradict each other": func(in *ScopeIn) {
			in.Works[0].Must, in.Works[1].Must, in.Works[0].Excludes = true, true, []string{"1"}
		},
		"in dock only, but she is": func(in *ScopeIn) { in.Works[0].Must, in.Works[0].OnlyInDock, in.InDock = true, true, false },
		"which is no work, group":  func(in *ScopeIn) { in.Budget, in.Budgets = nil, []Pot{{Amount: 5, Only: []string{"x"}}} },
	} {
		in := base()
		change(&in)
		_, err := Scope.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleScope() {
	in := Scope.New()
	in.Budget = new(50e3)
	in.Works = []Work{
		{ID: "repack glands", Value: 60, Cost: new(10e3)},
		{ID: "blank sea chests", Value: 100, Cost: new(20e3)},
		{ID: "renew strake C", Value: 120, Cost: new(30e3)},
	}
	out, err := Scope.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Join(out.Chosen, ", "), out.Value, out.Proved)
	// Output: blank sea chests, renew strake C 220 true
}
