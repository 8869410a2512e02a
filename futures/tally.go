package futures

import (
	"math"
	"sort"
)

// Chance is a probability with its standard error.
type Chance struct {
	P  float64 `json:"p"`
	SE float64 `json:"se"`
}

// Bands are quantiles of an amount or a date over the futures; a date that comes in fewer futures than the share asked is infinite.
type Bands struct {
	P10, P50, P80, P90 float64
	Mean, SE           float64 // of the futures in which it is finite
}

// Summary is what many futures of one plan come to.
type Summary struct {
	Plan                   string
	N                      int
	Water, Emergency, Loss []Chance // by the end of year 1, 2, ... of the horizon
	Docked                 []Chance
	FirstWater, SignedAt   Bands
	DockedAt               Bands
	Cost, Income, Works    Bands
	Days                   Bands
	Deferred               float64 // mean works put off
	First                  []FirstPart
	Fired                  []FiredTrigger
}

// FirstPart is how often a part lets in the first water, and when.
type FirstPart struct {
	Part  int
	Share Chance
	When  Bands
}

// FiredTrigger is how often a trigger lights, and the money it moves on average.
type FiredTrigger struct {
	Name  string
	Share Chance
	Money float64
}

// Summarise adds up the outcomes of a plan.
func Summarise(m *Model, p *Plan, out []Outcome) Summary {
	s := Summary{Plan: p.Name, N: len(out)}
	years := int(math.Ceil(m.Years))
	s.Water = byYear(out, years, func(o *Outcome) float64 { return o.Water })
	s.Emergency = byYear(out, years, func(o *Outcome) float64 { return o.Emergency })
	s.Loss = byYear(out, years, func(o *Outcome) float64 { return o.Loss })
	s.Docked = byYear(out, years, func(o *Outcome) float64 { return o.Docked })
	s.FirstWater = bands(sorted(out, func(o *Outcome) float64 { return o.Water }))
	s.SignedAt = bands(sorted(out, func(o *Outcome) float64 { return o.Signed }))
	s.DockedAt = bands(sorted(out, func(o *Outcome) float64 { return o.Docked }))
	s.Cost = bands(sorted(out, func(o *Outcome) float64 { return o.Cost }))
	s.Income = bands(sorted(out, func(o *Outcome) float64 { return o.Income }))
	s.Works = bands(sorted(docked(out), func(o *Outcome) float64 { return o.Works }))
	s.Days = bands(sorted(docked(out), func(o *Outcome) float64 { return o.Days }))
	for i := range out {
		s.Deferred += float64(out[i].Deferred) / float64(len(out))
	}
	s.First = firsts(m, out)
	s.Fired = fired(p, out)
	return s
}

func docked(out []Outcome) []Outcome {
	var d []Outcome
	for i := range out {
		if !math.IsInf(out[i].Docked, 1) {
			d = append(d, out[i])
		}
	}
	return d
}

func byYear(out []Outcome, years int, of func(*Outcome) float64) []Chance {
	n := make([]int, years+1)
	for i := range out {
		if t := of(&out[i]); t <= float64(years) {
			n[max(int(math.Ceil(t)), 1)]++
		}
	}
	chances := make([]Chance, years)
	sum := 0
	for y := 1; y <= years; y++ {
		sum += n[y]
		chances[y-1] = chanceOf(sum, len(out))
	}
	return chances
}

func chanceOf(n, of int) Chance {
	if of == 0 {
		return Chance{}
	}
	p := float64(n) / float64(of)
	return Chance{p, math.Sqrt(p * (1 - p) / float64(of))}
}

func bands(x []float64) Bands {
	b := Bands{P10: at(x, 0.1), P50: at(x, 0.5), P80: at(x, 0.8), P90: at(x, 0.9)}
	n, mean, m2 := 0.0, 0.0, 0.0
	for _, v := range x {
		if math.IsInf(v, 0) {
			break
		}
		n++
		d := v - mean
		mean += d / n
		m2 += d * (v - mean)
	}
	b.Mean = mean
	if n > 1 {
		b.SE = math.Sqrt(m2 / (n - 1) / n)
	}
	return b
}

// at is the quantile of sorted values, the value itself so that an infinite neighbour does not spoil it.
func at(x []float64, p float64) float64 {
	if len(x) == 0 {
		return math.Inf(1)
	}
	return x[min(int(p*float64(len(x))), len(x)-1)]
}

func firsts(m *Model, out []Outcome) []FirstPart {
	when := make([][]float64, len(m.Parts))
	for i := range out {
		if p := out[i].First; p >= 0 {
			when[p] = append(when[p], out[i].Water)
		}
	}
	var list []FirstPart
	for p, x := range when {
		if len(x) == 0 {
			continue
		}
		sort.Float64s(x)
		list = append(list, FirstPart{p, chanceOf(len(x), len(out)), bands(x)})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Share.P > list[j].Share.P })
	return list
}

func fired(p *Plan, out []Outcome) []FiredTrigger {
	n := make([]int, len(p.Triggers))
	for i := range out {
		for t := range n {
			if out[i].Fired>>min(t, 31)&1 == 1 {
				n[t]++
			}
		}
	}
	list := make([]FiredTrigger, len(n))
	for t := range n {
		c := chanceOf(n[t], len(out))
		list[t] = FiredTrigger{p.Triggers[t].Name, c, c.P * p.Triggers[t].Money}
	}
	return list
}
