package choice

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"
)

// yard makes works and states of no ship, the same every time.
func yard(works, states int, chance float64) ContractIn { return yardFor(works, states, 70e3, chance) }

// yardFor has so much money for each work.
func yardFor(works, states int, money, chance float64) ContractIn {
	r := rand.New(rand.NewPCG(uint64(works), uint64(states)))
	in := Contract.New()
	for i := range works {
		in.Works = append(in.Works, Job{ID: fmt.Sprint(i), Cost: float64(10+r.IntN(200)) * 1e3, Risk: float64(r.IntN(300)) * 1e3, Days: float64(r.IntN(6)) * 86400, UnitRate: r.IntN(2) == 0})
	}
	for s := range states {
		o := Outcome{Name: fmt.Sprint(s), Probability: 1 / float64(states)}
		for i := range works {
			if r.IntN(3) == 0 {
				o.Findings = append(o.Findings, Finding{Work: fmt.Sprint(i), Factor: new(0.5 + float64(r.IntN(8))/4), Risk: new(float64(r.IntN(600)) * 1e3)})
			}
		}
		in.States = append(in.States, o)
	}
	in.Money, in.Days, in.DayRate, in.Chance = new(float64(works)*money), new(float64(works)*2*86400), 5e3, chance
	return in
}

// General tool: the answers are those of glpsol (GLPK 5.0) on the same programs written out in full, which the last test here asks again.
var yardAnswers = []struct {
	works, states int
	chance        float64
	value         float64
}{
	{4, 3, 1, 272816.67}, {6, 5, 1, 807935}, {6, 5, 0.8, 761385}, {8, 6, 0.8, 988441.67}, {12, 6, 1, 1440516.7},
}

// Second method: state by state with prices and branching is what the program written out in full is, and what GLPK says.
func TestContractStateByStateAgainstWrittenOut(t *testing.T) {
	for _, c := range yardAnswers {
		in := yard(c.works, c.states, c.chance)
		t.Run(fmt.Sprint(c.works, " works, ", c.states, " states, ", c.chance), func(t *testing.T) {
			program, err := in.jobs()
			if err != nil {
				t.Fatal(err)
			}
			program.effort = Effort{Nodes: 1, Pivots: 1} // nothing is written out
			a, err := newDecomposed(in, program, 1_000_000).run()
			if err != nil || !a.proved {
				t.Fatalf("%v, proved %v", err, a.proved)
			}
			near(t, "state by state", a.value, c.value, 1e-6*c.value)
			program.effort = Usual
			full, err := program.together(nil)
			if err != nil || !full.proved {
				t.Fatalf("%v, proved %v", err, full.proved)
			}
			near(t, "written out", full.value, c.value, 1e-6*c.value)
		})
	}
}

// General tool: the optima that CBC 2.10.8 (Debian 12) proved, at no gap allowed, on the same programs written out in full by lpText; the last took it 31 s.
// With money for each work as in bench, 80e3 or less, CBC proves nothing at sixty works over two hundred states in 400 s.
var largeAnswers = []struct {
	works, states int
	money, chance float64
	value         float64
}{
	{12, 12, 70e3, 0.8, 1109168.75}, {14, 10, 70e3, 0.9, 1458615}, {16, 10, 70e3, 0.8, 1809002.5}, {20, 10, 60e3, 0.9, 2298590},
	{40, 100, 95e3, 0.98, 4616908}, {40, 100, 90e3, 1, 4624731.5},
	{60, 200, 100e3, 1, 6443435.125}, {60, 200, 95e3, 1, 6443978.875}, {60, 200, 90e3, 1, 6446822.5}, {60, 200, 85e3, 1, 6456050.375},
}

// The contract as the method works it, up to sixty works over two hundred states: proved, and what CBC says.
func TestContractAgainstCBC(t *testing.T) {
	for _, c := range largeAnswers {
		t.Run(fmt.Sprint(c.works, " works, ", c.states, " states, ", c.money, ", ", c.chance), func(t *testing.T) {
			t.Parallel()
			out, err := Contract.Fn(yardFor(c.works, c.states, c.money, c.chance))
			if err != nil || !out.Proved || out.Gap > 1e-9*c.value {
				t.Fatalf("%v, proved %v, gap %g", err, out.Proved, out.Gap)
			}
			near(t, "expected", out.Expected, c.value, 1e-8*c.value)
		})
	}
}

// Second method: a menu of options, searched by prices and branching, comes to what the same state written out as a program does under the simplex
// method, whatever is held and at whatever prices.
func TestMenuIsItsProgram(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnWorks(t)
		p, err := in.jobs()
		if err != nil {
			t.Fatal(err)
		}
		d := newDecomposed(in, p, math.MaxInt)
		k, works := rapid.IntRange(0, len(in.States)-1).Draw(t, "state"), len(in.Works)
		if d.menus[k] == nil {
			if works <= mostTied {
				t.Fatalf("no menu of %d works", works)
			}
			return // tied together too much for one: the next test solves those
		}
		alone := *p
		alone.chance = 0
		d.programs[k], _, _ = alone.whole(p.states[k:k+1], nil)
		h := holds{over: -1, no: d.never, toll: rapid.Float64Range(0, 200).Draw(t, "toll")}
		h.yes = rapid.Uint64Range(0, 1<<d.works-1).Draw(t, "yes") & rapid.Uint64().Draw(t, "some") &^ h.no
		h.no |= rapid.Uint64Range(0, 1<<d.works-1).Draw(t, "no") & rapid.Uint64().Draw(t, "others") &^ h.yes
		h.price = make([]float64, d.works)
		for i := range h.price {
			h.price[i] = rapid.Float64Range(-60, 60).Draw(t, "price")
		}
		if d.soft {
			h.over = int8(rapid.IntRange(-1, 1).Draw(t, "over"))
		}
		got, failed := d.fromMenu(k, h)
		want, _, err := d.fromProgram(k, h)
		if (failed != nil) != (err != nil) {
			t.Fatalf("menu: %v; program: %v", failed, err)
		}
		if err == nil && math.Abs(got.cost-want.cost) > 1e-6*max(1, math.Abs(want.cost)) {
			t.Fatalf("menu %.9g, program %.9g", got.cost, want.cost)
		}
	})
}

// Second method: works that need and shut out one another, musts and limits that may be broken, state by state and written out in full.
func TestContractOfTiedWorks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnWorks(t)
		p, err := in.jobs()
		if err != nil {
			t.Fatal(err)
		}
		a, failed := newDecomposed(in, p, 1_000_000).run()
		p.effort = Usual
		full, err := p.together(nil)
		switch {
		case errors.Is(failed, ErrInfeasible) != errors.Is(err, ErrInfeasible):
			t.Fatalf("state by state: %v; written out: %v", failed, err)
		case err != nil:
		case !a.proved || !full.proved || math.Abs(a.value-full.value) > 1e-6*max(1, math.Abs(full.value)):
			t.Fatalf("state by state %.9g (%v), written out %.9g (%v)", a.value, a.proved, full.value, full.proved)
		}
	})
}

// drawnWorks is a small contract with rules between its works.
func drawnWorks(t *rapid.T) ContractIn {
	in := Contract.New()
	works, states := rapid.IntRange(1, 7).Draw(t, "works"), rapid.IntRange(1, 3).Draw(t, "states")
	whole := func(name string, most int) float64 { return float64(rapid.IntRange(0, most).Draw(t, name)) }
	often := func(name string, in int) bool { return rapid.IntRange(1, in).Draw(t, name) == 1 }
	for i := range works {
		j := Job{ID: fmt.Sprint(i), Cost: 1 + whole("cost", 99), Risk: whole("risk", 150), Heritage: whole("harm", 20) - 10, Days: whole("days", 5) * 86400,
			UnitRate: often("by quantity", 2), Must: often("must", 8), NotNow: often("only if found", 8)}
		if i > 0 && often("needs", 3) {
			j.Needs = []string{fmt.Sprint(rapid.IntRange(0, i-1).Draw(t, "needed"))}
		}
		if i > 0 && often("excludes", 5) {
			j.Excludes = []string{fmt.Sprint(rapid.IntRange(0, i-1).Draw(t, "excluded"))}
		}
		if often("course", 4) {
			j.Group, j.Course = "g", fmt.Sprint(rapid.IntRange(1, 2).Draw(t, "course"))
		}
		in.Works = append(in.Works, j)
	}
	for s := range states {
		o := Outcome{Name: fmt.Sprint(s), Probability: 1 / float64(states)}
		for i := range works {
			if often("found", 3) {
				o.Findings = append(o.Findings, Finding{Work: fmt.Sprint(i), Factor: new(0.5 + whole("factor", 8)/4), Risk: new(whole("found risk", 300)), Must: often("found must", 6)})
			}
		}
		in.States = append(in.States, o)
	}
	if often("money", 2) {
		in.Money = new(whole("money", 60*works))
	}
	if often("days", 2) {
		in.Days = new(whole("days there are", 3*works) * 86400)
	}
	if often("chance", 2) {
		in.Chance, in.Overrun = 0.6, whole("overrun", 8)/4
	}
	in.DayRate = whole("day rate", 5)
	return in
}

// A search that is cut off keeps its best answer, and says how far off it may be.
func TestContractCutOff(t *testing.T) {
	in := yard(20, 30, 1)
	in.Steps = 700
	out, err := Contract.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if out.Proved || !(out.Gap > 0) || math.IsInf(out.Gap, 0) || out.Expected-out.Gap > out.Expected || out.Expected-out.Gap < out.WaitAndSee-1e-6*out.WaitAndSee {
		t.Errorf("proved %v, gap %g, expected %g, knowing first %g", out.Proved, out.Gap, out.Expected, out.WaitAndSee)
	}
}

// This one asks glpsol again, where it is installed; where it is not it only says so.
func TestContractAgainstGlpsolWhereInstalled(t *testing.T) {
	tool, err := exec.LookPath("glpsol")
	if err != nil {
		t.Log("glpsol is not installed: nothing was asked")
		return
	}
	for _, c := range yardAnswers {
		program, err := yard(c.works, c.states, c.chance).jobs()
		if err != nil {
			t.Fatal(err)
		}
		p, _, _ := program.whole(program.states, nil)
		dir := t.TempDir()
		model, answer := filepath.Join(dir, "i.lp"), filepath.Join(dir, "i.sol")
		if err := os.WriteFile(model, []byte(lpText(p)), 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(tool, "--lp", model, "--cuts", "-w", answer, "--tmlim", "60").CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		near(t, fmt.Sprint(c.works, c.states, c.chance), glpsolValue(t, answer), c.value, 1e-6*c.value)
	}
}
