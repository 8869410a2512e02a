package bench

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"oakum/formula/choice"
)

const secondsOfDay = 86400.0

// yard is a contract over so many works and states of the hull, with so much money for each work: of each work a third of the states finds another quantity
// and another risk.
func yard(works, states int, money float64) choice.ContractIn {
	r := rand.New(rand.NewPCG(uint64(works), uint64(states)))
	in := choice.Contract.New()
	for i := range works {
		in.Works = append(in.Works, choice.Job{ID: fmt.Sprint("w", i), Cost: float64(10+r.IntN(200)) * 1e3, Risk: float64(r.IntN(300)) * 1e3,
			Days: float64(r.IntN(6)) * secondsOfDay, UnitRate: r.IntN(2) == 0})
	}
	for s := range states {
		o := choice.Outcome{Name: fmt.Sprint("s", s), Probability: 1 / float64(states)}
		for _, j := range in.Works {
			if r.IntN(3) == 0 {
				o.Findings = append(o.Findings, choice.Finding{Work: j.ID, Factor: new(0.5 + float64(r.IntN(8))/4), Risk: new(float64(r.IntN(600)) * 1e3)})
			}
		}
		in.States = append(in.States, o)
	}
	in.Money, in.Days, in.DayRate = new(float64(works)*money), new(float64(works)*2*secondsOfDay), 5e3
	return in
}

// terms of one work in one state, worked out here anew: what it costs signed, added later and dropped, the days it takes, the risk left if it is not done.
type terms struct{ signed, later, drop, days, risk float64 }

func termsOf(in choice.ContractIn, j choice.Job, s choice.Outcome) terms {
	t := terms{j.Cost, j.Cost * (1 + in.Premium), j.Cost * in.DropShare, j.Days / secondsOfDay, j.Risk}
	for _, f := range s.Findings {
		if f.Work == j.ID {
			t.later *= *f.Factor
			t.days *= *f.Factor
			if j.UnitRate {
				t.signed *= *f.Factor
			}
			t.risk = *f.Risk
		}
	}
	return t
}

// program writes a contract out in full in the LP format that CBC and glpsol read, and returns what it costs whatever is done.
func program(path string, in choice.ContractIn) (constant float64, err error) {
	file, err := os.Create(path)
	if err != nil {
		return 0, err
	}
	w := bufio.NewWriter(file)
	var cost, rows strings.Builder
	now := make([]float64, len(in.Works))
	for k, s := range in.States {
		var money, days strings.Builder
		for i, j := range in.Works {
			t := termsOf(in, j, s)
			yard := in.DayRate * t.days
			worth := yard - t.risk // of its being done
			constant += s.Probability * t.risk
			now[i] += s.Probability * (t.signed + worth)
			fmt.Fprintf(&cost, " %+.17g a%d_%d %+.17g d%d_%d\n", s.Probability*(t.later+worth), k, i, s.Probability*(t.drop-t.signed-worth), k, i)
			fmt.Fprintf(&rows, " a%d_%d + y%d <= 1\n d%d_%d - y%d <= 0\n", k, i, i, k, i, i)
			fmt.Fprintf(&money, " %+.17g y%d %+.17g a%d_%d %+.17g d%d_%d\n", t.signed+yard, i, t.later+yard, k, i, t.drop-t.signed-yard, k, i)
			if t.days != 0 {
				fmt.Fprintf(&days, " %+.17g y%d %+.17g a%d_%d %+.17g d%d_%d\n", t.days, i, t.days, k, i, -t.days, k, i)
			}
		}
		fmt.Fprintf(&rows, "%s <= %.17g\n%s <= %.17g\n", money.String(), *in.Money, days.String(), *in.Days/secondsOfDay)
	}
	fmt.Fprint(w, "Minimize\n cost:")
	for i, c := range now {
		fmt.Fprintf(w, " %+.17g y%d\n", c, i)
	}
	fmt.Fprint(w, cost.String(), "Subject To\n", rows.String(), "Binary\n")
	for i := range in.Works {
		fmt.Fprintf(w, " y%d\n", i)
		for k := range in.States {
			fmt.Fprintf(w, " a%d_%d\n d%d_%d\n", k, i, k, i)
		}
	}
	fmt.Fprint(w, "End\n")
	if err := w.Flush(); err != nil {
		return 0, err
	}
	return constant, file.Close()
}

// most is how long CBC may look for the optimum, s.
const most = 300

// BenchmarkContract finds what to sign now of sixty works against two hundred states of the hull, and what to add or drop in each. CBC solves the same
// program written out in full. The scarcer the money, the harder: with the last CBC proves nothing in five minutes (not with -short).
func BenchmarkContract(b *testing.B) {
	sizes := []struct {
		works, states int
		money         float64
	}{{20, 50, 70e3}, {60, 200, 90e3}, {60, 200, 85e3}, {60, 200, 70e3}}
	if testing.Short() {
		sizes = sizes[:3]
	}
	for _, size := range sizes {
		in := yard(size.works, size.states, size.money)
		var out choice.ContractOut
		var err error
		ours := best(2, func() { out, err = choice.Contract.Fn(in) })
		if err != nil {
			b.Fatal(err)
		}
		what := fmt.Sprintf("contract of %d works over %d states, %.0f 000 of money for each work", size.works, size.states, size.money/1e3)
		tool, err := exec.LookPath("cbc")
		if err != nil {
			missing(b, what, "coinor-cbc")
			alone(b, what, ours, "")
			continue
		}
		path := filepath.Join(b.TempDir(), "contract.lp")
		constant, err := program(path, in)
		if err != nil {
			b.Fatal(err)
		}
		value, proved, version, spent := cbc(b, tool, path)
		value += constant
		slack := max(out.Gap, 0) + 1e-6*value
		if proved {
			agree(b, what, out.Expected, value, slack)
		} else if out.Expected > value+slack {
			b.Errorf("%s: CBC found %.9g, ours is %.9g and may miss %.3g", what, value, out.Expected, out.Gap)
		}
		note := fmt.Sprintf("the program written out in full; ours %.9g (%s, at most %.3g from the optimum), CBC %.9g (%s)", out.Expected, word(out.Proved), max(out.Gap, 0), value, word(proved))
		compare(b, what, ours, version, spent, note)
	}
}

func word(proved bool) string {
	if proved {
		return "proved"
	}
	return "cut off"
}

// cbc solves a program with all cores, to no gap, and reads what it prints.
func cbc(b *testing.B, tool, path string) (value float64, proved bool, version string, took spent) {
	b.Helper()
	var said string
	took = best(1, func() {
		cmd := exec.Command(tool, path, "ratioGap", "0", "allowableGap", "0", "seconds", strconv.Itoa(most), "threads", strconv.Itoa(runtime.NumCPU()), "timeMode", "elapsed", "solve")
		out, err := cmd.CombinedOutput()
		if err != nil {
			b.Fatalf("cbc: %v\n%s", err, out)
		}
		said = string(out)
	})
	find := func(pattern string) string {
		if m := regexp.MustCompile(pattern).FindStringSubmatch(said); m != nil {
			return m[1]
		}
		return ""
	}
	value, err := strconv.ParseFloat(find(`Objective value:\s+(\S+)`), 64)
	if err != nil {
		b.Fatalf("cbc found nothing:\n%s", said)
	}
	if cpu, err := strconv.ParseFloat(find(`Total time \(CPU seconds\):\s+(\S+)`), 64); err == nil {
		took.cpu = seconds(cpu)
	}
	return value, strings.Contains(said, "Result - Optimal solution found"), "CBC " + find(`Version:\s+(\S+)`), took
}
