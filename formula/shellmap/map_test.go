package shellmap

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"pgregory.net/rapid"
)

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.12g, want %.12g +- %g", what, got, want, tolerance)
	}
}

// Computed by hand: two readings as far apart as their range and one place between; with a, b, c the covariances the posterior has a closed form.
func TestTwoPointsByHand(t *testing.T) {
	k := Kernel{SD: 2, RangeX: 3, RangeY: 5}
	m, err := New([]Reading{{X: 0, Value: 11, SD: 0.5}, {X: 3, Value: 8, SD: 0.5}}, k, new(10.0))
	if err != nil {
		t.Fatal(err)
	}
	s3 := math.Sqrt(3)
	c := 4 * (1 + s3) * math.Exp(-s3)     // between the readings
	q := 4 * (1 + s3/2) * math.Exp(-s3/2) // from each to the middle
	mean := 10 + q*(1+-2)/(4.25+c)        // q 1' K^-1 (y - 10), K = [[4.25, c], [c, 4.25]]
	variance := 4 - 2*q*q/(4.25+c)
	got := m.At(1.5, 0)
	near(t, "mean", got.Mean, mean, 1e-9)
	near(t, "sd", got.SD, math.Sqrt(variance), 1e-9)
	near(t, "distance", got.Nearest, 0.5, 1e-15)
}

// Computed: three readings, the 3 by 3 covariance inverted by its cofactors, with a mean given and with one estimated.
func TestThreePointsByCofactors(t *testing.T) {
	k := Kernel{SD: 0.8, RangeX: 6, RangeY: 2.5, Nugget: 0.1}
	rs := []Reading{{0, 0, 11.2, 0.1}, {4, 1, 10.1, 0.2}, {1, -2, 12.0, 0.1}}
	var a [3][3]float64
	var b, y [3]float64
	px, py := 2.0, 0.5
	for i, r := range rs {
		for j, s := range rs {
			a[i][j] = k.Cov(r.X-s.X, r.Y-s.Y)
		}
		a[i][i] += r.SD*r.SD + 0.01 + 1e-10*0.64
		b[i], y[i] = k.Cov(r.X-px, r.Y-py), r.Value
	}
	inv := inverse3(a)
	product := func(u, v [3]float64) (s float64) {
		for i := range 3 {
			for j := range 3 {
				s += u[i] * inv[i][j] * v[j]
			}
		}
		return s
	}
	ones := [3]float64{1, 1, 1}
	for _, given := range []*float64{new(11.0), nil} {
		mu, mv := 11.0, 0.0
		if given == nil {
			mu, mv = product(ones, y)/product(ones, ones), 1/product(ones, ones)
		}
		d := [3]float64{y[0] - mu, y[1] - mu, y[2] - mu}
		u := 1 - product(b, ones)
		m, err := New(rs, k, given)
		if err != nil {
			t.Fatal(err)
		}
		got := m.At(px, py)
		near(t, "mean", got.Mean, mu+product(b, d), 1e-9)
		near(t, "sd", got.SD, math.Sqrt(0.64-product(b, b)+u*u*mv+0.01), 1e-9)
	}
}

func inverse3(a [3][3]float64) (inv [3][3]float64) {
	co := func(i, j int) float64 {
		r, s, p, q := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return a[r][p]*a[s][q] - a[r][q]*a[s][p]
	}
	det := a[0][0]*co(0, 0) + a[0][1]*co(0, 1) + a[0][2]*co(0, 2)
	for i := range 3 {
		for j := range 3 {
			inv[j][i] = co(i, j) / det
		}
	}
	return inv
}

// Reference: scikit-learn's Gaussian process (Matern 3/2, unequal ranges) on sixty readings; tool, version and input stand in the file.
func TestAgainstReference(t *testing.T) {
	raw, err := os.ReadFile("testdata/sklearn.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Kernel        Kernel
		Mean          float64
		Readings      []Reading
		Places        []struct{ X, Y, Mean, SD float64 }
		LogLikelihood float64
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Places) < 20 {
		t.Fatal(err, len(ref.Places))
	}
	m, err := New(ref.Readings, ref.Kernel, &ref.Mean)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range ref.Places {
		got := m.At(p.X, p.Y)
		near(t, "mean", got.Mean, p.Mean, 1e-7)
		near(t, "sd", got.SD, p.SD, 1e-7)
	}
	near(t, "log likelihood", exactLikelihood(ref.Readings, ref.Kernel, &ref.Mean), ref.LogLikelihood, 1e-5)
}

// made is a field drawn from the process by random waves (Matern 3/2: frequencies from a Student law with three degrees of freedom).
type made struct{ wx, wy, phase []float64 }

func draw(r *rand.Rand, k Kernel) made {
	const waves = 600
	var f made
	for range waves {
		chi := 0.0
		for range 3 {
			z := r.NormFloat64()
			chi += z * z
		}
		s := math.Sqrt(3 / chi)
		f.wx = append(f.wx, r.NormFloat64()*s/k.RangeX)
		f.wy = append(f.wy, r.NormFloat64()*s/k.RangeY)
		f.phase = append(f.phase, r.Float64()*2*math.Pi)
	}
	return f
}

func (f made) at(k Kernel, x, y float64) float64 {
	sum := 0.0
	for i := range f.wx {
		sum += math.Cos(f.wx[i]*x + f.wy[i]*y + f.phase[i])
	}
	return k.SD * sum * math.Sqrt(2/float64(len(f.wx)))
}

// scatter takes n readings of the made field over w by h metres.
func (f made) scatter(r *rand.Rand, k Kernel, n int, w, h, sd float64) []Reading {
	out := make([]Reading, n)
	for i := range out {
		x, y := r.Float64()*w, r.Float64()*h
		out[i] = Reading{x, y, 10 + f.at(k, x, y) + r.NormFloat64()*k.Nugget + r.NormFloat64()*sd, sd}
	}
	return out
}

// inBand is the share of held-out true values inside the 80 % band.
func inBand(r *rand.Rand, f made, truth Kernel, m *Map, n int, w, h float64) float64 {
	in := 0
	for range n {
		x, y := r.Float64()*w, r.Float64()*h
		v := 10 + f.at(truth, x, y) + r.NormFloat64()*truth.Nugget
		e := m.At(x, y)
		if math.Abs(v-e.Mean) <= 1.2815515655446004*e.SD {
			in++
		}
	}
	return float64(in) / float64(n)
}

// Held-out coverage on made data: the kernel fitted, 80 % bands hold 80 +- 4 % over several fields, exact and by nearest readings.
func TestHeldOutCoverage(t *testing.T) {
	truth := Kernel{SD: 0.9, RangeX: 9, RangeY: 4, Nugget: 0.15}
	for _, c := range []struct {
		n, fields int
		w, h      float64
	}{{160, 12, 60, 14}, {3000, 4, 90, 24}} {
		share := 0.0
		for seed := range c.fields {
			r := rand.New(rand.NewPCG(uint64(seed), uint64(c.n)))
			f := draw(r, truth)
			rs := f.scatter(r, truth, c.n, c.w, c.h, 0.1)
			k, _ := Fit(rs, Given{})
			m, err := New(rs, k, nil)
			if err != nil {
				t.Fatal(err)
			}
			if m.Exact != (c.n <= ExactMost) {
				t.Fatalf("%d readings: exact %v", c.n, m.Exact)
			}
			share += inBand(r, f, truth, m, 600, c.w, c.h) / float64(c.fields)
		}
		near(t, "share in the 80 % band", share, 0.80, 0.04)
	}
}

// The fit finds the kernel that made the data, within what their number allows.
func TestFitFindsTheKernel(t *testing.T) {
	truth := Kernel{SD: 0.9, RangeX: 9, RangeY: 4, Nugget: 0.2}
	r := rand.New(rand.NewPCG(5, 7))
	f := draw(r, truth)
	k, _ := Fit(f.scatter(r, truth, 2500, 120, 40, 0.1), Given{})
	for _, p := range [][2]float64{{k.SD, truth.SD}, {k.RangeX, truth.RangeX}, {k.RangeY, truth.RangeY}, {k.Nugget, truth.Nugget}} {
		if p[0] < p[1]/1.35 || p[0] > p[1]*1.35 {
			t.Errorf("fitted %+v, made with %+v", k, truth)
			break
		}
	}
}

// The approximation against the exact posterior of the same 900 readings: means within a tenth of a standard deviation on average, standard
// deviations within 3 %.
func TestNearestAgainstExact(t *testing.T) {
	k := Kernel{SD: 0.9, RangeX: 9, RangeY: 4, Nugget: 0.2}
	r := rand.New(rand.NewPCG(11, 7))
	f := draw(r, k)
	rs := f.scatter(r, k, 900, 60, 20, 0.1)
	fast, err := New(rs, k, nil)
	if err != nil || fast.Exact {
		t.Fatal(err, fast.Exact)
	}
	exact := &Map{Kernel: k, local: k, readings: rs, Exact: true}
	if err := exact.condition(nil); err != nil {
		t.Fatal(err)
	}
	off, ratio, n := 0.0, 0.0, 0.0
	for x := 0.5; x < 60; x += 2 {
		for y := 0.5; y < 20; y += 2 {
			a, b := fast.At(x, y), exact.At(x, y)
			off += math.Abs(a.Mean-b.Mean) / b.SD
			ratio += a.SD / b.SD
			n++
		}
	}
	if off/n > 0.1 || math.Abs(ratio/n-1) > 0.03 {
		t.Errorf("means off by %.3f sd, sd ratio %.3f", off/n, ratio/n)
	}
}

// Identity: far from every reading the map knows only the process; at a reading without noise it repeats it; more readings never widen it.
func TestMapLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Kernel{SD: rapid.Float64Range(0.2, 3).Draw(t, "sd"), RangeX: rapid.Float64Range(1, 20).Draw(t, "rx"), RangeY: rapid.Float64Range(1, 20).Draw(t, "ry")}
		n := rapid.IntRange(1, 12).Draw(t, "n")
		rs := make([]Reading, n)
		for i := range rs {
			rs[i] = Reading{X: float64(i) * 3, Y: rapid.Float64Range(-9, 9).Draw(t, "y"), Value: rapid.Float64Range(5, 15).Draw(t, "v"), SD: 0.05}
		}
		m, err := New(rs, k, new(10.0))
		if err != nil {
			t.Fatal(err)
		}
		far := m.At(1e6, 1e6)
		if far.Mean != 10 || math.Abs(far.SD-k.SD) > 1e-9 {
			t.Fatalf("far away %+v", far)
		}
		if n > 1 {
			fewer, err := New(rs[1:], k, new(10.0))
			if err != nil {
				t.Fatal(err)
			}
			if at, less := m.At(4, 1), fewer.At(4, 1); at.SD > less.SD+1e-9 {
				t.Fatalf("one more reading widens %g to %g", less.SD, at.SD)
			}
		}
		rs[0].SD = 0
		m, err = New(rs, k, new(10.0))
		if err != nil {
			t.Fatal(err)
		}
		if e := m.At(rs[0].X, rs[0].Y); math.Abs(e.Mean-rs[0].Value) > 1e-3*k.SD*10 || e.SD > 0.01*k.SD {
			t.Fatalf("at a reading without noise %+v, read %g", e, rs[0].Value)
		}
	})
}

// Identity: the nearest readings are those that a search through all finds.
func TestNearestIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		k := Kernel{SD: 1, RangeX: 1 + 9*r.Float64(), RangeY: 1 + 9*r.Float64()}
		n := rapid.IntRange(1, 300).Draw(t, "n")
		rs := make([]Reading, n)
		for i := range rs {
			rs[i] = Reading{X: 100 * r.Float64(), Y: 3 * r.NormFloat64()}
		}
		x, y := 140*r.Float64()-20, 10*r.NormFloat64()
		got := newIndex(rs, k).nearest(x, y, 7, nil)
		if len(got) != min(7, n) {
			t.Fatalf("%d found of %d", len(got), n)
		}
		closer := 0
		for _, q := range rs {
			if k.Distance(q.X-x, q.Y-y) < got[len(got)-1].d {
				closer++
			}
		}
		if closer != len(got)-1 {
			t.Fatalf("%d lie closer than the last of %d", closer, len(got))
		}
	})
}

func BenchmarkShellOf120000(b *testing.B) {
	truth := Kernel{SD: 0.9, RangeX: 6, RangeY: 3, Nugget: 0.2}
	r := rand.New(rand.NewPCG(1, 2))
	f := draw(r, truth)
	rs := f.scatter(r, truth, 120_000, 270, 50, 0.1)
	var xs, ys []float64
	for x := 0.25; x < 270; x += 0.5 {
		for y := 0.25; y < 50; y += 0.5 {
			xs, ys = append(xs, x), append(ys, y)
		}
	}
	b.ResetTimer()
	for b.Loop() {
		k, _ := Fit(rs, Given{})
		m, err := New(rs, k, nil)
		if err != nil {
			b.Fatal(err)
		}
		b.Logf("%+v, %d pooled, %d places", k, len(m.readings), len(m.All(xs, ys)))
	}
}
