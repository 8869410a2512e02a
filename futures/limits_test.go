package futures

import (
	"context"
	"math"
	"testing"
)

func outcomes(t *testing.T, m *Model, p *Plan, n int) []Outcome {
	t.Helper()
	out, err := Run(context.Background(), m, p, Options{Seed: 1931, Futures: n})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func leaky(life Weibull) Part {
	return Part{Name: "seam", Group: "seams", Life: life, Flow: 1e-4, Space: 0, Patchable: 1, PatchLife: Weibull{}}
}

// Identity: one part with a Weibull life must give outlook.weibull: shape 3, scale 30, age 20, ten years ahead 0.50525; age 30 gives 0.74599.
func TestOnePartIsItsWeibull(t *testing.T) {
	for age, want := range map[float64]float64{20: 0.50525, 30: 0.74599} {
		m := &Model{Years: 10, Parts: []Part{leaky(Weibull{3, 30, age})}, Spaces: []Space{{Shore: 1}}}
		out := outcomes(t, m, &Plan{Dock: -1}, 200_000)
		got := Summarise(m, &Plan{}, out).Water[9]
		if math.Abs(got.P-want) > 4*got.SE {
			t.Errorf("age %g: %.5f +- %.5f, the closed form says %.5f", age, got.P, got.SE, want)
		}
	}
}

// Identity: two competing exponentials of 0.02 and 0.03 a year over ten years: the first fails first in 0.1574, the second in 0.2361, none in 0.6065.
func TestCompetingExponentials(t *testing.T) {
	m := &Model{Years: 10, Parts: []Part{leaky(Weibull{1, 50, 0}), leaky(Weibull{1, 1 / 0.03, 0})}, Spaces: []Space{{Shore: 1}}}
	out := outcomes(t, m, &Plan{Dock: -1}, 200_000)
	counts := [3]float64{}
	for _, o := range out {
		if o.Water > 10 {
			counts[2]++
		} else {
			counts[o.First]++
		}
	}
	for i, want := range []float64{0.1574, 0.2361, 0.6065} {
		got := counts[i] / float64(len(out))
		if se := math.Sqrt(want * (1 - want) / float64(len(out))); math.Abs(got-want) > 4*se+5e-5 {
			t.Errorf("case %d: %.4f, the closed form says %.4f", i, got, want)
		}
	}
}

// Identity: a single part renewed in dock every T years, an emergency costing five times as much, comes to the long-run cost rate of age replacement
// (Barlow and Hunter): shape 2.5, scale 10, T 4.9305: 0.3462 a year with costs 1 and 5 (outlook.replacement's published case, a hundredth in time).
func TestRenewalIsAgeReplacement(t *testing.T) {
	const T = 4.9305
	m := &Model{
		Years:  200,
		Parts:  []Part{{Name: "gland", Group: "glands", Life: Weibull{2.5, 10, 0}, Renewed: Weibull{2.5, 10, 0}, Flow: 1e-3, Space: 0}},
		Spaces: []Space{{Shore: 2e-3}}, // the pumps hold the leak, but it is no trickle: she must dock
		Works:  []Work{{Name: "repack", Cost: Certain(1), Parts: []int{0}}},
		Dock:   DockTerms{Emergency: 5},
	}
	out := outcomes(t, m, &Plan{Dock: T, Again: T, Scope: []int{0}}, 4000)
	var mean float64
	for _, o := range out {
		mean += o.Cost / 200 / float64(len(out))
	}
	if math.Abs(mean-0.3462) > 0.3462*0.01 {
		t.Errorf("cost rate %.5f a year, age replacement says 0.3462", mean)
	}
}

// Identity: with costs only, the bill is the estimate: three triangles add to their means, and to the sum of their variances when uncorrelated.
func TestCostsOnlyIsTheEstimate(t *testing.T) {
	tri := []Spread{{17955, 19645, 21785}, {8500, 10553, 13000}, {32300, 35547, 52500}}
	m := &Model{Years: 2}
	var mean, variance float64
	for _, s := range tri {
		m.Works = append(m.Works, Work{Cost: s})
		mean += s.Mean()
		variance += (s.Low*s.Low + s.Likely*s.Likely + s.High*s.High - s.Low*s.Likely - s.Low*s.High - s.Likely*s.High) / 18
	}
	out := outcomes(t, m, &Plan{Dock: 1, Scope: []int{0, 1, 2}}, 100_000)
	got, v := meanVariance(out, func(o *Outcome) float64 { return o.Works })
	if math.Abs(got-mean) > 4*math.Sqrt(variance/1e5) {
		t.Errorf("mean bill %.0f, the triangles' means add to %.0f", got, mean)
	}
	if math.Abs(v/variance-1) > 0.03 {
		t.Errorf("variance %.0f, the triangles' variances add to %.0f", v, variance)
	}
}

// Identity: the same seed gives the same bits on one core and on two, and whatever the order.
func TestSameBitsOnAnyNumberOfCores(t *testing.T) {
	m, p := invented()
	one, err1 := Run(context.Background(), m, p, Options{Seed: 7, Futures: 10_000, Cores: 1})
	two, err2 := Run(context.Background(), m, p, Options{Seed: 7, Futures: 10_000, Cores: 2})
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	for i := range one {
		if one[i] != two[i] {
			t.Fatalf("future %d differs: %+v, %+v", i, one[i], two[i])
		}
	}
}

func TestCancelStops(t *testing.T) {
	m, p := invented()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Run(ctx, m, p, Options{Futures: 1_000_000}); err == nil {
		t.Error("a cancelled run went on to its end")
	}
}

func TestStopsAtTheWantedError(t *testing.T) {
	m, p := invented()
	out, err := Run(context.Background(), m, p, Options{Seed: 3, Futures: 1_000_000, Error: 0.003})
	if err != nil || len(out) == 1_000_000 || standardError(out, m.Years) > 0.003 {
		t.Errorf("ran %d futures to an error of %g (%v)", len(out), standardError(out, m.Years), err)
	}
}

// Identity: for a sum of independent terms the first-order and total shares are each term's share of the variance.
func TestDriversOfASum(t *testing.T) {
	m := &Model{Years: 50, Spaces: []Space{{Shore: 1}}, Dock: DockTerms{}}
	m.Parts = []Part{
		{Name: "a", Group: "a", Life: Weibull{1, 5, 0}, Flow: 1e-4, Space: 0, Patchable: 1},
		{Name: "b", Group: "b", Life: Weibull{1, 5, 0}, Flow: 1e-4, Space: 0, Patchable: 1},
	}
	m.Parts[0].Patch, m.Parts[1].Patch = Certain(100), Certain(300)
	// discounted at a steady rate each cost is C exp(-d T): the variances stand as 1 to 9
	m.Dock.Discount = 0.05
	list, err := Drivers(context.Background(), m, &Plan{Dock: -1}, Options{Seed: 5, Futures: 40_000}, Burden)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range list {
		want := map[string]float64{"a": 0.1, "b": 0.9}[d.Name]
		if math.Abs(d.Total-want) > 0.03 || math.Abs(d.First-want) > 0.03 {
			t.Errorf("%s: first %.3f, total %.3f, want %.1f of both", d.Name, d.First, d.Total, want)
		}
	}
}

func invented() (*Model, *Plan) {
	m := &Model{Years: 40, Watch: Watch{Rounds: 24, Closed: 72, Season: 0.5, Act: 1}}
	m.Zones = []Zone{{Name: "waterline", Rate: 8e-5, RateSpread: 0.3, Bare: 2.5, Protection: Weibull{2, 12, 10}, Unnoticed: 1}}
	m.Spaces = []Space{{Name: "shaft alley", Critical: 60, Shore: 0.016, Own: 0.02, ShoreFail: 0.05, OwnFail: 0.1, Alarm: 0.8, Alarmed: 1, Fatal: 0.2}}
	for i := range 60 {
		m.Parts = append(m.Parts, Part{
			Name: "plate", Group: "plates", Wastage: &Wastage{Left: 3e-3 + float64(i)*1e-4, LeftSD: 4e-4, Zone: 0, Factor: 1},
			Renewed: Weibull{3, 60, 0}, Flow: 5e-4, FlowSpread: 1, Space: 0, Patchable: 0.7, Patch: Spread{2e3, 4e3, 9e3}, PatchLife: Weibull{1.5, 8, 0},
		})
	}
	for range 40 {
		m.Parts = append(m.Parts, Part{
			Name: "valve", Group: "openings", Life: Weibull{2, 60, 30}, Renewed: Weibull{2, 60, 0}, Flow: 2e-3, FlowSpread: 0.7, Space: 0,
			Patchable: 0.6, Patch: Spread{1e3, 2e3, 5e3}, PatchLife: Weibull{1.5, 10, 0},
		})
	}
	for i := range 10 {
		w := Work{Name: "work", Cost: Spread{5e4, 1e5, 2.2e5}, Value: float64(i), Days: 3, Growth: Spread{1, 1.1, 1.6}}
		for p := i * 10; p < i*10+10; p++ {
			w.Parts = append(w.Parts, p)
		}
		m.Works = append(m.Works, w)
	}
	m.Dock = DockTerms{Fixed: Spread{2e5, 2.5e5, 4e5}, DayRate: 3e3, Correlate: 0.2, Windows: []float64{0.4, 0.9}, Every: 1, Lead: 0.5, Emergency: 2,
		NoDock: 0.3, NoDockLoss: 0.1, Income: 4e5, Away: Spread{20, 40, 90}, Loss: 2e6, Escalation: 0.03, Discount: 0.035}
	m.Money = Funds{Hand: 6.4e5, Reserve: 1.5e5, Giving: 1.1e5, Spread: 0.3, Lumps: 0.5, Lump: Spread{1e4, 3e4, 2e5}, Match: 1, Cap: 5e5}
	p := &Plan{Name: "dock", Dock: 2, Again: 20, Wait: true}
	for i := range m.Works {
		p.Scope = append(p.Scope, i)
	}
	return m, p
}

func BenchmarkHundredThousandFutures(b *testing.B) {
	m, p := invented()
	for b.Loop() {
		if _, err := Run(context.Background(), m, p, Options{Seed: 1, Futures: 100_000}); err != nil {
			b.Fatal(err)
		}
	}
}

// Identity: every part has a draw of its own, so that parts of a group fail independently: the chance that none of many has failed is the product.
func TestPartsOfAGroupFailIndependently(t *testing.T) {
	m := &Model{Years: 1, Spaces: []Space{{Shore: 1}}}
	for i := range 27 { // rows of eight, and some over
		m.Parts = append(m.Parts, leaky(Weibull{1, 20 + float64(i), 0}))
	}
	hazard := 0.0
	for i := range m.Parts {
		hazard += 1 / m.Parts[i].Life.Scale
	}
	v := variablesOf(m)
	seats := map[[3]int]int{}
	for _, w := range newTerms(m, &Plan{Dock: -1}, &v, false).rows {
		for k, p := range w.part {
			if at := [3]int{w.v, w.n, k}; p >= 0 {
				if q, taken := seats[at]; taken {
					t.Errorf("parts %d and %d share a draw", q, p)
				}
				seats[at] = p
			}
		}
	}
	if len(seats) != len(m.Parts) {
		t.Errorf("%d of %d parts have a draw", len(seats), len(m.Parts))
	}
	got := Summarise(m, &Plan{}, outcomes(t, m, &Plan{Dock: -1}, 200_000)).Water[0]
	if want := -math.Expm1(-hazard); math.Abs(got.P-want) > 4*got.SE {
		t.Errorf("some water in a year: %.5f +- %.5f, the closed form says %.5f", got.P, got.SE, want)
	}
}
