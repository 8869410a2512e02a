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
			u, v, _, _ := s.draw(0, useLook, 0, 0)
			truth := normal(u)
			burden[1][i] = k * truth
			x[i] = truth + noise*normal(v)
		}
		w := gain(burden, x)
		got, se := w.Value, w.SE
		want := k * share / math.Sqrt(2*math.Pi)
		if math.Abs(got-want) > 4*se+0.01*want {
			t.Errorf("error %g: worth %.1f +- %.1f, the closed form says %.1f", noise, got, se, want)
		}
	}
}

// Identity: of a standard normal x the share over 1 is Phi(-1) = 0.158655. Where plan 1 costs 1 more below that limit and 3 less above it, plan 0 is best without
// looking, and the look is worth 3*0.158655 by plan 1 where it shows worse. A third plan that never leads is never taken.
func TestGainSaysWhatIsDoneInstead(t *testing.T) {
	const n = 100_000
	x, burden := make([]float64, n), [][]float64{make([]float64, n), make([]float64, n), make([]float64, n)}
	for i := range n {
		s := newStream(12, i)
		u, _, _, _ := s.draw(0, useLook, 0, 0)
		if x[i] = normal(u); x[i] > 1 {
			burden[0][i] = 3
		} else {
			burden[1][i] = 1
		}
		burden[2][i] = 2.9
	}
	w := gain(burden, x)
	const share = 0.158655
	if math.Abs(w.Value-3*share) > 4*w.SE+1e-3 || w.Best != 0 || len(w.Turns) != 1 || w.Turns[0].Plan != 1 || !w.Turns[0].Worse || math.Abs(w.Turns[0].Share-share) > 0.005 {
		t.Errorf("%+v", w)
	}
	same := gain([][]float64{burden[0], burden[0]}, x)
	if same.Value != 0 || same.SE != 0 || len(same.Turns) != 0 {
		t.Errorf("between a plan and itself: %+v", same)
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
