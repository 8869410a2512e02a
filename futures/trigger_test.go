package futures

import (
	"math"
	"testing"
)

// Identity: what is worn by the year a plate is through is the steel it had, whatever its protection did.
func TestWornTurnsThroughRound(t *testing.T) {
	for _, dead := range []float64{0, 3, 12, math.Inf(1)} {
		for _, left := range []float64{1e-4, 2e-3, 9e-3} {
			mended := dead + 2.5
			at := through(left, 2e-4, 2.2, dead, mended)
			if got := worn(at, 2e-4, 2.2, dead, mended); math.Abs(got-left) > 1e-15 {
				t.Errorf("dead from %g: %g m worn by year %g, %g m were there", dead, got, at, left)
			}
		}
	}
}

// Identity: a plate of 8 mm read with an error of 1 mm loses 0.1 mm a year and is gauged after two years: it is under 7.5 mm with the chance
// Phi(-0.3) = 0.38209, and over it in the rest. The bill moves by that share of what was agreed.
func TestTriggerReadsThickness(t *testing.T) {
	m := &Model{Years: 10, Zones: []Zone{{Name: "bottom", Rate: 1e-4}}, Works: []Work{{Name: "steel", Cost: Certain(10_000)}}}
	gauges := []Gauge{{Part: -1, Thickness: 8e-3, SD: 1e-3, Factor: 1, Limit: 7.5e-3, Weight: 1}}
	worse := Trigger{Name: "thin", Worse: true, Gauges: gauges, Least: 1, Money: 5000, Days: 3}
	better := Trigger{Name: "thick", Gauges: gauges, Money: -2000}
	p := &Plan{Dock: 2, Scope: []int{0}, Triggers: []Trigger{worse, better}}
	out := outcomes(t, m, p, 100_000)
	s := Summarise(m, p, out)
	const want = 0.38209
	if f := s.Fired[0]; math.Abs(f.Share.P-want) > 4*f.Share.SE || math.Abs(f.Money-5000*f.Share.P) > 1e-6 {
		t.Errorf("lit in %.4f +- %.4f, the closed form says %.4f; worth %.1f", f.Share.P, f.Share.SE, want, f.Money)
	}
	if a, b := s.Fired[0].Share.P, s.Fired[1].Share.P; math.Abs(a+b-1) > 1e-12 {
		t.Errorf("one plate is either thin or not: %v and %v", a, b)
	}
	if got, want := s.Works.Mean, 10_000+5000*s.Fired[0].Share.P-2000*s.Fired[1].Share.P; math.Abs(got-want) > 1e-6 {
		t.Errorf("mean bill %.2f, want %.2f", got, want)
	}
}

// A trigger that names its parts is not lit by others of their sort.
func TestTriggerKeepsToItsParts(t *testing.T) {
	m := &Model{Years: 5, Parts: []Part{{Name: "a", Group: "glands", Life: Weibull{1, 1e-6, 0}, Space: -1}, {Name: "b", Group: "glands", Space: -1}}}
	p := &Plan{Dock: 1, Triggers: []Trigger{{Name: "any", Group: "glands", Worse: true, Count: 1}, {Name: "b only", Group: "glands", Parts: []int{1}, Worse: true, Count: 1}, {Name: "none there", Group: "glands", Parts: []int{}, Worse: true, Count: 1}}}
	for _, o := range outcomes(t, m, p, 200) {
		if o.Fired != 1 {
			t.Fatalf("lit %b: the first gland has failed and the second never does", o.Fired)
		}
	}
}
