package choice

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// yard makes works and states of no ship, the same every time.
func yard(works, states int, chance float64) ContractIn {
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
	in.Money, in.Days, in.DayRate, in.Chance = new(float64(works)*70e3), new(float64(works)*2*86400), 5e3, chance
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
			a, err := newDecomposed(program, 100_000).run()
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
