package bench

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"oakum/formula/shellmap"
)

// plating is a field of thickness loss over the shell: waves of the kernel's spectrum added up, so that it is like a draw of the process.
type plating struct{ kx, ky, phase []float64 }

func rolled(r *rand.Rand, k shellmap.Kernel) (p plating) {
	for range 400 {
		// Matern 3/2 has a spectrum like Student's t of three degrees: a normal over the root of a chi-square.
		g := r.NormFloat64()
		s := math.Sqrt(3 / (2*r.ExpFloat64() + g*g))
		p.kx = append(p.kx, r.NormFloat64()*s/k.RangeX)
		p.ky = append(p.ky, r.NormFloat64()*s/k.RangeY)
		p.phase = append(p.phase, 2*math.Pi*r.Float64())
	}
	return p
}

func (p plating) at(x, y float64) (sum float64) {
	for i := range p.kx {
		sum += math.Cos(p.kx[i]*x + p.ky[i]*y + p.phase[i])
	}
	return sum * math.Sqrt(2/float64(len(p.kx)))
}

// gauged are n readings scattered over a shell of length and girth, m.
func gauged(r *rand.Rand, p plating, k shellmap.Kernel, n int, length, girth float64) []shellmap.Reading {
	const instrument = 0.1 // mm
	out := make([]shellmap.Reading, n)
	for i := range out {
		x, y := length*r.Float64(), girth*r.Float64()
		out[i] = shellmap.Reading{X: x, Y: y, Value: 11 + k.SD*p.at(x, y) + k.Nugget*r.NormFloat64() + instrument*r.NormFloat64(), SD: instrument}
	}
	return out
}

// BenchmarkShellMap maps 120 000 readings over the shell of a ship of 270 m: kernel fitted, then 54 000 cells.
func BenchmarkShellMap(b *testing.B) {
	r := rand.New(rand.NewPCG(270, 1))
	k := shellmap.Kernel{SD: 0.9, RangeX: 6, RangeY: 3, Nugget: 0.2}
	readings := gauged(r, rolled(r, k), k, 120_000, 270, 50)
	var xs, ys []float64
	for x := 0.25; x < 270; x += 0.5 {
		for y := 0.25; y < 50; y += 0.5 {
			xs, ys = append(xs, x), append(ys, y)
		}
	}
	ours := best(2, func() {
		found, _ := shellmap.Fit(readings, shellmap.Given{})
		m, err := shellmap.New(readings, found, nil)
		if err != nil {
			b.Fatal(err)
		}
		m.All(xs, ys)
	})
	alone(b, "map of 120 000 readings over a shell of 270 m: kernel fitted and 54 000 cells", ours, "no rival: the exact covariance of 120 000 readings would fill 115 GB")
}

// BenchmarkShellMapAgainstExact conditions on 500 to 4000 readings with the kernel given and works 2000 places, and holds the approximation against the exact
// process of scikit-learn.
func BenchmarkShellMapAgainstExact(b *testing.B) {
	const places = 2000
	r := rand.New(rand.NewPCG(270, 2))
	k := shellmap.Kernel{SD: 0.9, RangeX: 6, RangeY: 3, Nugget: 0.2}
	p := rolled(r, k)
	mean := 11.0
	for _, n := range []int{500, 1000, 2000, 4000} {
		length := 12 * math.Sqrt(float64(n)/100) // as dense as a good survey: a reading every 1.4 m2
		readings := gauged(r, p, k, n, length, length)
		xs, ys := make([]float64, places), make([]float64, places)
		for i := range xs {
			xs[i], ys[i] = length*r.Float64(), length*r.Float64()
		}
		var got []shellmap.Estimate
		ours := best(5, func() {
			m, err := shellmap.New(readings, k, &mean)
			if err != nil {
				b.Fatal(err)
			}
			got = m.All(xs, ys)
		})
		in := map[string]any{"kernel": k, "mean": mean, "readings": readings, "x": xs, "y": ys, "repeat": 3}
		t, ok := ask[struct{ Mean, SD []float64 }](b, "shellmap.py", in, "numpy", "sklearn")
		what := fmt.Sprintf("map of %d readings, kernel given, 2000 places", n)
		if !ok {
			alone(b, what, ours, "")
			continue
		}
		var square, most, wider float64
		for i, e := range got {
			sd := math.Hypot(t.Answers.SD[i], k.Nugget)
			d := (e.Mean - t.Answers.Mean[i]) / sd
			square += d * d / places
			most = max(most, math.Abs(d))
			wider += e.SD/sd/places - 1.0/places
		}
		// The package promises: what is left out only widens, and pooling moves a reading by at most an eighth of a range.
		agree(b, fmt.Sprintf("%d readings: root mean square difference of the mean, in standard deviations", n), math.Sqrt(square), 0, 0.2)
		agree(b, fmt.Sprintf("%d readings: how much wider the standard deviation is", n), wider, 0, 0.05)
		compare(b, what, ours, t.Tool, t.spent(),
			fmt.Sprintf("ours is approximate beyond %d readings, GaussianProcessRegressor exact; our mean lies %.3f standard deviations from it by root mean square, %.2f at most; our standard deviation is %.1f %% wider on average",
				shellmap.ExactMost, math.Sqrt(square), most, 100*wider))
	}
}
