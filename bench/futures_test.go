package bench

import (
	"context"
	"fmt"
	"math"
	"testing"

	"oakum/assess"
	"oakum/demo"
	"oakum/futures"
	"oakum/quantity"
)

// steamer is the demonstration ship with her plans as the futures see them.
func steamer(b *testing.B) (*futures.Model, []futures.Plan) {
	b.Helper()
	d, err := demo.Ship("corran-vey")
	if err != nil {
		b.Fatal(err)
	}
	return assess.Assess(d, assess.PlanInForce(d), quantity.DateOf(now())).FuturesModel()
}

// moment is a mean with its standard error, as the rival gives it.
type moment struct{ Mean, SE float64 }

// many is what a great number of futures come to, as the rival gives it.
type many struct {
	Water, Emergency, Loss, Docked []float64 // by year
	Cost, Income, Deferred         moment
	Fired                          []float64
}

// BenchmarkFutures runs the plans of the demonstration ship through 100 000 futures each, and the first through a million (not with -short). The rival is the same model written
// in NumPy, future beside future; its draws are its own, so the answers may differ by Monte Carlo error and no more.
func BenchmarkFutures(b *testing.B) {
	m, plans := steamer(b)
	for i := range plans {
		futuresBeside(b, m, &plans[i], 100_000, 3)
	}
	if !testing.Short() {
		futuresBeside(b, m, &plans[0], 1_000_000, 1)
	}
}

func futuresBeside(b *testing.B, m *futures.Model, p *futures.Plan, n, repeat int) {
	b.Helper()
	var out []futures.Outcome
	ours := best(repeat, func() {
		var err error
		if out, err = futures.Run(context.Background(), m, p, futures.Options{Seed: 1931, Futures: n}); err != nil {
			b.Fatal(err)
		}
	})
	what := fmt.Sprintf("%d futures of the steamer, “%s”", n, p.Name)
	t, ok := ask[many](b, "futures.py", map[string]any{"model": m, "plan": p, "futures": n, "seed": 1931, "block": 4096, "repeat": repeat}, "numpy", "scipy")
	if !ok {
		alone(b, what, ours, "")
		return
	}
	sameFutures(b, what, futures.Summarise(m, p, out), t.Answers, out)
	compare(b, what, ours, t.Tool, t.spent(), "the same rules in NumPy, 4096 futures side by side, one event of each at a time, on one core; chances of water, emergency, loss and docking by year, cost, income lost, works put off and triggers agree within 4.5 standard errors")
}

// within is how many standard errors two answers may lie apart: once in 150 000 comparisons by chance.
const within = 4.5

func sameFutures(b *testing.B, what string, s futures.Summary, t many, out []futures.Outcome) {
	b.Helper()
	n := float64(len(out))
	chance := func(name string, ours, rival float64) {
		b.Helper()
		p := (ours + rival) / 2
		agree(b, what+": "+name, ours, rival, within*math.Sqrt(2*p*(1-p)/n)+2/n)
	}
	for _, c := range []struct {
		name  string
		ours  []futures.Chance
		rival []float64
	}{{"water", s.Water, t.Water}, {"emergency", s.Emergency, t.Emergency}, {"loss", s.Loss, t.Loss}, {"docked", s.Docked, t.Docked}} {
		for y, ours := range c.ours {
			chance(fmt.Sprintf("%s by year %d", c.name, y+1), ours.P, c.rival[y])
		}
	}
	for i, f := range s.Fired {
		chance("trigger "+f.Name, f.Share.P, t.Fired[i])
	}
	for _, c := range []struct {
		name  string
		of    func(*futures.Outcome) float64
		rival moment
	}{
		{"cost", func(o *futures.Outcome) float64 { return o.Cost }, t.Cost},
		{"income lost", func(o *futures.Outcome) float64 { return o.Income }, t.Income},
		{"works put off", func(o *futures.Outcome) float64 { return float64(o.Deferred) }, t.Deferred},
	} {
		mean, se := meanOf(out, c.of)
		agree(b, what+": "+c.name, mean, c.rival.Mean, within*math.Hypot(se, c.rival.SE)+1e-9)
	}
}

func meanOf(out []futures.Outcome, of func(*futures.Outcome) float64) (mean, se float64) {
	var sum, squares float64
	n := float64(len(out))
	for i := range out {
		x := of(&out[i])
		sum += x
		squares += x * x
	}
	mean = sum / n
	return mean, math.Sqrt(max(squares/n-mean*mean, 0) / n)
}

// BenchmarkValueOfTenLooks works what ten measurements are worth for the choice between the plans of the demonstration ship, over 20 000 futures of each.
func BenchmarkValueOfTenLooks(b *testing.B) {
	m, plans := steamer(b)
	groups := []string{"plates", "openings", "doublers", "repairs", "glands", "coating", futures.YardPrices, futures.Giving, futures.WhoIsWatching, "how fast " + m.Zones[0].Name + " wastes"}
	var looks []futures.Look
	for _, g := range groups {
		looks = append(looks, futures.Look{Name: g, Group: g, Price: 10_000, Noise: 0.5})
	}
	var list []futures.Worth
	ours := best(3, func() {
		var err error
		if list, err = futures.Value(context.Background(), m, plans, looks, futures.Options{Seed: 1931, Futures: 20_000}); err != nil {
			b.Fatal(err)
		}
	})
	if len(list) != len(looks) {
		b.Fatalf("%d of %d looks were worked", len(list), len(looks))
	}
	alone(b, fmt.Sprintf("what ten measurements are worth for the choice between %d plans, 20 000 futures of each", len(plans)), ours, "")
}
