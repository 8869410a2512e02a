package futures

import (
	"context"
	"math"
	"testing"
)

// Identity: normal-normal preposterior, closed form. The worth of a perfect look at a standard normal x between a burden of 0 and one of k*x is
// k E[max(x, 0)] = k/sqrt(2 pi); a look whose error is as wide as x itself is worth 1/sqrt(2) of that.
func TestGainIsThePreposteriorClosedForm(t *testing.T) {
	const n, k = 200_000, 1000.0
	for noise, share := range map[float64]float64{0: 1, 1: 1 / math.Sqrt2} {
		x, burden := make([]float64, n), [][]float64{make([]float64, n), make([]float64, n)}
		for i := range n {
			s := newStream(11, i)
			u, v := s.uniforms(0, 0, 0)
			truth := normal(u)
			burden[1][i] = k * truth
			x[i] = truth + noise*normal(v)
		}
		got, se := gain(burden, x)
		want := k * share / math.Sqrt(2*math.Pi)
		if math.Abs(got-want) > 4*se+0.01*want {
			t.Errorf("error %g: worth %.1f +- %.1f, the closed form says %.1f", noise, got, se, want)
		}
	}
}

func TestALookAtNothingIsWorthNothing(t *testing.T) {
	m, p := invented()
	wait := Plan{Name: "wait", Dock: -1, Scope: p.Scope}
	list, err := Value(context.Background(), m, []Plan{*p, wait}, []Look{{Name: "gauging", Group: "plates", Price: 2e4}, {Name: "none", Group: "no such group"}}, Options{Seed: 2, Futures: 4000})
	if err != nil || len(list) != 1 {
		t.Fatal(err, list)
	}
	if w := list[0]; w.Net != w.Value-2e4 || math.IsNaN(w.Value) {
		t.Errorf("worth %+v", w)
	}
}

func TestStoryTellsTheSameFuture(t *testing.T) {
	m, p := invented()
	out, err := Run(context.Background(), m, p, Options{Seed: 9, Futures: 50})
	if err != nil {
		t.Fatal(err)
	}
	for i := range out {
		events, o, err := Story(m, p, 9, i)
		if err != nil || o != out[i] {
			t.Fatalf("future %d is told as another: %+v, %+v", i, o, out[i])
		}
		for k := 1; k < len(events); k++ {
			if events[k].Year < events[k-1].Year {
				t.Fatalf("future %d is told out of order: %+v", i, events)
			}
		}
	}
}
