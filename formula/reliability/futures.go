package reliability

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sort"

	"gonum.org/v1/gonum/mat"

	"oakum/field"
)

const (
	copies  = 4  // noises drawn for each future
	knots   = 14 // of the broken line that worths are regressed by
	batches = 20 // of the jackknife
	enough  = 200
)

// sampled works with futures: what a look would show is drawn for each, and the worths are regressed on it.
func (out *MeasureOut) sampled(in MeasureIn) error {
	n := len(in.Samples)
	if n < enough {
		return field.Refuse("samples", "%d futures are too few to regress on; give at least %d", n, enough)
	}
	if in.Mean != nil || in.SD != nil || in.Courses != nil {
		return field.Refuse("samples", "give futures, or a mean, an sd and courses, not both")
	}
	k := len(in.Samples[0].Worths)
	for i, s := range in.Samples {
		if len(s.Worths) != k || k == 0 {
			return field.Refuse(fmt.Sprintf("samples[%d].worths", i), "future %d has %d worths, the first has %d", i, len(s.Worths), k)
		}
	}
	if in.Names != nil && len(in.Names) != k {
		return field.Refuse("names", "%d names for %d courses", len(in.Names), k)
	}
	mean := make([]float64, k)
	for _, s := range in.Samples {
		for c, w := range s.Worths {
			mean[c] += w / float64(n)
		}
	}
	best := argmax(mean)
	name := func(c int) string {
		if in.Names != nil {
			return in.Names[c]
		}
		return fmt.Sprintf("course %d", c+1)
	}
	out.Best, out.Value = name(best), mean[best]
	known := make([]float64, n)
	for i, s := range in.Samples {
		known[i] = s.Unknown
	}
	evpi, se, share := in.regressed([][]float64{known}, best)
	out.EVPI, out.EVPIError = evpi, new(se)
	out.Perfect = out.Value + evpi
	for c := range k {
		out.Courses = append(out.Courses, Chances{name(c), mean[c], share[c]})
	}
	for i, l := range in.Looks {
		r := Looked{Name: l.Name}
		var share []float64
		r.EVSI, se, share = in.regressed(in.shown(l, i), best)
		r.SE, r.Net, r.Changes = new(se), r.EVSI-l.Price, max(1-share[best], 0)
		out.Looks = append(out.Looks, r)
	}
	return nil
}

// shown draws what a look would show in each future, several times over.
func (in MeasureIn) shown(l Look, number int) [][]float64 {
	r := rand.New(rand.NewPCG(uint64(number), 7))
	list := make([][]float64, copies)
	for c := range list {
		list[c] = make([]float64, len(in.Samples))
		for i, s := range in.Samples {
			switch {
			case l.Error != nil:
				list[c][i] = s.Unknown + math.Sqrt(*l.Error**l.Error/float64(l.Readings)+l.Bias*l.Bias)*r.NormFloat64()
			case s.Unknown < *l.Below:
				list[c][i] = truth(r.Float64() < l.Detect)
			default:
				list[c][i] = truth(r.Float64() < l.False)
			}
		}
	}
	return list
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// regressed is the mean of the best worth as each signal tells it, less the best mean; its error by leaving out one batch of futures after the other;
// and how often each course is the best.
func (in MeasureIn) regressed(signals [][]float64, best int) (gain, se float64, share []float64) {
	all := func(int) bool { return true }
	gain, share = in.gain(signals, best, all)
	sum, squares := 0.0, 0.0
	for b := range batches {
		g, _ := in.gain(signals, best, func(i int) bool { return i%batches != b })
		sum += g
		squares += g * g
	}
	variance := squares/batches - (sum/batches)*(sum/batches)
	return max(gain, 0), math.Sqrt(max(variance, 0) * (batches - 1)), share
}

func (in MeasureIn) gain(signals [][]float64, best int, use func(int) bool) (gain float64, share []float64) {
	k := len(in.Samples[0].Worths)
	share = make([]float64, k)
	count := 0
	for _, signal := range signals {
		rows := []int{}
		for i := range signal {
			if use(i) {
				rows = append(rows, i)
			}
		}
		fitted := in.fit(signal, rows, best)
		for r := range rows {
			top, at := 0.0, best // the best now is worth nothing more than itself
			for c := range k {
				if c != best && fitted[c][r] > top {
					top, at = fitted[c][r], c
				}
			}
			gain += top
			share[at]++
		}
		count += len(rows)
	}
	for c := range share {
		share[c] /= float64(count)
	}
	return gain / float64(count), share
}

// fit regresses how much more each course is worth than the best now on the signal, by a broken line with knots at even shares of it, or by means
// where the signal takes two values only.
func (in MeasureIn) fit(signal []float64, rows []int, best int) [][]float64 {
	sorted := make([]float64, len(rows))
	for r, i := range rows {
		sorted[r] = signal[i]
	}
	slices.Sort(sorted)
	at := []float64{}
	for k := 1; k < knots; k++ {
		x := sorted[k*len(sorted)/knots]
		if len(at) == 0 || x > at[len(at)-1] {
			at = append(at, x)
		}
	}
	span := sorted[len(sorted)-1] - sorted[0]
	if span == 0 {
		span = 1
	}
	design := mat.NewDense(len(rows), len(at)+2, nil)
	for r, i := range rows {
		x := signal[i]
		design.Set(r, 0, 1)
		design.Set(r, 1, (x-sorted[0])/span)
		last := sort.SearchFloat64s(at, x)
		for k := range last {
			design.Set(r, k+2, (x-at[k])/span)
		}
	}
	var svd mat.SVD
	fitted := make([][]float64, len(in.Samples[0].Worths))
	ok := svd.Factorize(design, mat.SVDThin)
	rank := svd.Rank(1e-10)
	for c := range fitted {
		fitted[c] = make([]float64, len(rows))
		if c == best || !ok || rank == 0 {
			continue
		}
		y := mat.NewVecDense(len(rows), nil)
		for r, i := range rows {
			y.SetVec(r, in.Samples[i].Worths[c]-in.Samples[i].Worths[best])
		}
		var beta, line mat.VecDense
		svd.SolveVecTo(&beta, y, rank)
		line.MulVec(design, &beta)
		for r := range rows {
			fitted[c][r] = line.AtVec(r)
		}
	}
	return fitted
}
