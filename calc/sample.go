package calc

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"

	"oakum/field"
)

// sample runs the formula on draws of the uncertain inputs and gives every numeric result its p10, p50 and p90. The seed is the method's ID,
// so the same inputs give the same figures every time.
func (f Formula[In, Out]) sample(in *In, given *field.Input, s *Sheet) {
	n := f.Samples
	if n == 0 {
		n = 4000
	}
	h := fnv.New64a()
	h.Write([]byte(f.ID))
	r := rand.New(rand.NewPCG(h.Sum64(), 0))
	results := f.Results()
	draws := make([][]float64, len(results))
	refused := 0
	for range n {
		given.Draw(func() float64 { return (float64(r.Uint64()>>11) + 0.5) / (1 << 53) })
		out, err := f.Fn(*in)
		if err != nil {
			refused++
			continue
		}
		v := reflect.ValueOf(out)
		for i, fd := range results {
			if x, ok := number(fd.Get(v)); ok {
				draws[i] = append(draws[i], fd.Declared(x))
			}
		}
	}
	given.Settle()
	if refused > 0 {
		s.Warnings = append(s.Warnings, fmt.Sprintf("%d of %d draws of the uncertain inputs were refused and are left out of the ranges", refused, n))
	}
	for i, fd := range results {
		if len(draws[i]) == 0 {
			continue
		}
		slices.Sort(draws[i])
		for k := range s.Results {
			if s.Results[k].Key == fd.Key {
				l := &s.Results[k]
				l.P10, l.P90 = widen(l.P10, new(Quantile(draws[i], 0.1)), math.Min), widen(l.P90, new(Quantile(draws[i], 0.9)), math.Max)
				l.P50 = new(Quantile(draws[i], 0.5))
			}
		}
	}
}

func number(v reflect.Value) (float64, bool) {
	x, ok := Line{raw: v}.base()
	return x, ok && !math.IsNaN(x) && !math.IsInf(x, 0)
}

// Quantile of sorted values, linear between neighbours (Hyndman and Fan's seventh definition, the default of R and NumPy).
func Quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := p * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
