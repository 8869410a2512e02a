package choice

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// instance is one of testdata/oracle/instances.json, made by generate.py beside it, with the answer on which two independent solvers agree.
type instance struct {
	Name string
	Vars []struct {
		Cost      float64
		Low, High *float64
		Whole     bool
	}
	Rows []struct {
		Terms     [][2]float64
		Low, High *float64
	}
	Status string
	Value  float64
}

func instances(t *testing.T) (list []instance, tools []string) {
	t.Helper()
	raw, err := os.ReadFile("testdata/oracle/instances.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct {
		Tools     []string
		Instances []instance
	}
	if err := json.Unmarshal(raw, &all); err != nil {
		t.Fatal(err)
	}
	if len(all.Instances) < 40 || len(all.Tools) != 2 {
		t.Fatalf("%d instances, %d tools", len(all.Instances), len(all.Tools))
	}
	return all.Instances, all.Tools
}

func (i instance) program() (p Program) {
	bound := func(x *float64, none float64) float64 {
		if x == nil {
			return none
		}
		return *x
	}
	for j, v := range i.Vars {
		p.Add(Variable{"x" + strconv.Itoa(j), v.Cost, bound(v.Low, math.Inf(-1)), bound(v.High, math.Inf(1)), v.Whole})
	}
	for k, r := range i.Rows {
		var terms []Term
		for _, t := range r.Terms {
			terms = append(terms, Term{int(t[0]), t[1]})
		}
		p.Limit("r"+strconv.Itoa(k), bound(r.Low, math.Inf(-1)), bound(r.High, math.Inf(1)), terms...)
	}
	return p
}

// General tools: GLPK and CBC; versions, instances and answers in testdata/oracle/instances.json.
func TestSolveAgainstTwoSolvers(t *testing.T) {
	list, _ := instances(t)
	for _, i := range list {
		t.Run(i.Name, func(t *testing.T) {
			p := i.program()
			s, err := Solve(p, Usual)
			agrees(t, p, s, err, i.Status, i.Value)
		})
	}
}

func agrees(t *testing.T, p Program, s Solution, err error, status string, value float64) {
	t.Helper()
	switch status {
	case "infeasible":
		if !errors.Is(err, ErrInfeasible) {
			t.Errorf("%v, but nothing satisfies it", err)
		}
	case "unbounded":
		if !errors.Is(err, ErrUnbounded) {
			t.Errorf("%v, but it has no limit", err)
		}
	default:
		if err != nil || !s.Proved {
			t.Fatalf("%v, proved %v after %d nodes", err, s.Proved, s.Nodes)
		}
		// both solvers work to 1e-7 of the limits
		if math.Abs(s.Value-value) > 1e-6*max(1, math.Abs(value)) {
			t.Errorf("value %.9g, the solvers say %.9g", s.Value, value)
		}
		if !p.Holds(s.X, 1e-7) {
			t.Errorf("the answer breaks a limit: %v", s.X)
		}
		if math.Abs(p.Cost(s.X)-s.Value) > 1e-9*max(1, math.Abs(s.Value)) {
			t.Errorf("the answer costs %.9g, not %.9g", p.Cost(s.X), s.Value)
		}
	}
}

// This one asks glpsol again for every instance, where it is installed; where it is not it only says so, and the answers of the file stand alone.
func TestSolveAgainstGlpsolWhereInstalled(t *testing.T) {
	tool, err := exec.LookPath("glpsol")
	if err != nil {
		t.Log("glpsol is not installed: nothing was asked")
		return
	}
	list, _ := instances(t)
	for _, i := range list {
		if i.Status != "optimal" {
			continue
		}
		dir := t.TempDir()
		model, answer := filepath.Join(dir, "i.lp"), filepath.Join(dir, "i.sol")
		if err := os.WriteFile(model, []byte(lpText(i.program())), 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(tool, "--lp", model, "-w", answer, "--tmlim", "60").CombinedOutput(); err != nil {
			t.Fatalf("%s: %v\n%s", i.Name, err, out)
		}
		if got := glpsolValue(t, answer); math.Abs(got-i.Value) > 1e-6*max(1, math.Abs(i.Value)) {
			t.Errorf("%s: glpsol says %.9g, the file %.9g", i.Name, got, i.Value)
		}
	}
}

// glpsolValue reads the objective from the line that begins "s bas" or "s mip".
func glpsolValue(t *testing.T, path string) float64 {
	t.Helper()
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(raw)) {
		if f := strings.Fields(line); len(f) > 5 && f[0] == "s" {
			x, err := strconv.ParseFloat(f[len(f)-1], 64)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
	}
	t.Fatal("glpsol wrote no answer")
	return 0
}

// lpText writes a program in the LP format.
func lpText(p Program) string {
	var b strings.Builder
	number := func(x float64) string { return strconv.FormatFloat(x, 'g', 17, 64) }
	sum := func(terms []Term) {
		for _, t := range terms {
			sign := " + "
			if t.Times < 0 {
				sign = " - "
			}
			b.WriteString(sign + number(math.Abs(t.Times)) + " x" + strconv.Itoa(t.Var))
		}
	}
	b.WriteString("Minimize\n obj:")
	var cost []Term
	for j, v := range p.Vars {
		cost = append(cost, Term{j, v.Cost})
	}
	sum(cost)
	b.WriteString("\nSubject To\n")
	for i, r := range p.Rows {
		for _, side := range []struct {
			mark, sign string
			limit      float64
		}{{"u", "<=", r.High}, {"l", ">=", r.Low}} {
			if !math.IsInf(side.limit, 0) {
				b.WriteString(" r" + strconv.Itoa(i) + side.mark + ":")
				sum(r.Terms)
				b.WriteString(" " + side.sign + " " + number(side.limit) + "\n")
			}
		}
	}
	b.WriteString("Bounds\n")
	end := func(x float64) string {
		if math.IsInf(x, 0) {
			return map[bool]string{true: "+inf", false: "-inf"}[x > 0]
		}
		return number(x)
	}
	whole := ""
	for j, v := range p.Vars {
		b.WriteString(" " + end(v.Low) + " <= x" + strconv.Itoa(j) + " <= " + end(v.High) + "\n")
		if v.Whole {
			whole += " x" + strconv.Itoa(j)
		}
	}
	if whole != "" {
		b.WriteString("General\n" + whole + "\n")
	}
	return b.String() + "End\n"
}
