package shellmap

import (
	"cmp"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
)

// chained is Vecchia's likelihood: readings in a mixed order, each conditioned on its few nearest among those before it.
type chained struct {
	readings []Reading
	before   [][]int
}

const (
	chainLinks = 15   // neighbours each reading is conditioned on
	chainMost  = 1000 // readings a likelihood is taken over
	cluster    = 12   // of them in one clump, so that short distances are seen
)

// chain picks at most chainMost readings, half of them spread and half clumped round some of those, and links them.
func chain(readings []Reading, k Kernel, ix *index) chained {
	r := rand.New(rand.NewPCG(uint64(len(readings)), 3))
	order := r.Perm(len(readings))
	chosen := order
	if len(order) > chainMost {
		spread := order[:chainMost/2]
		in := map[int]bool{}
		for _, n := range spread {
			in[n] = true
		}
		chosen = slices.Clone(spread)
		var near []found
		for _, n := range spread {
			near = ix.nearest(readings[n].X, readings[n].Y, cluster, near)
			for _, f := range near {
				if !in[f.n] && len(chosen) < chainMost {
					in[f.n] = true
					chosen = append(chosen, f.n)
				}
			}
		}
	}
	c := chained{readings: make([]Reading, len(chosen))}
	for i, n := range chosen {
		c.readings[i] = readings[n]
	}
	c.link(k)
	return c
}

// link finds, for each reading, its nearest among those before it.
func (c *chained) link(k Kernel) {
	c.before = make([][]int, len(c.readings))
	each(len(c.readings), func(i int, _ *scratch) {
		near := make([]found, i)
		for j := range i {
			near[j] = found{j, k.Distance(c.readings[i].X-c.readings[j].X, c.readings[i].Y-c.readings[j].Y)}
		}
		slices.SortFunc(near, func(a, b found) int { return cmp.Or(cmp.Compare(a.d, b.d), cmp.Compare(a.n, b.n)) })
		for _, f := range near[:min(len(near), chainLinks)] {
			c.before[i] = append(c.before[i], f.n)
		}
	})
}

// each runs fn for 0..n-1 on all cores, each with its own scratch.
func each(n int, fn func(i int, s *scratch)) {
	workers := min(max(runtime.GOMAXPROCS(0), 1), n)
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			s := new(scratch)
			for i := w; i < n; i += workers {
				fn(i, s)
			}
		})
	}
	wg.Wait()
}

// whiten gives, for each reading, its value and a one, both less what the readings before tell, in standard deviations, and those deviations.
func (c chained) whiten(k Kernel) (e, h, sd []float64) {
	n := len(c.readings)
	e, h, sd = make([]float64, n), make([]float64, n), make([]float64, n)
	each(n, func(i int, s *scratch) {
		r, links := c.readings[i], c.before[i]
		m := len(links)
		s.set, s.k, s.y, s.h, s.a = s.set[:0], grow(s.k, m), grow(s.y, m), grow(s.h, m), grow(s.a, m*m)
		for q, j := range links {
			p := c.readings[j]
			s.set = append(s.set, p)
			s.k[q], s.y[q], s.h[q] = k.Cov(p.X-r.X, p.Y-r.Y), p.Value, 1
		}
		fill(s.a, s.set, k)
		if !factor(s.a, m) {
			e[i], h[i], sd[i] = math.NaN(), 1, math.NaN()
			return
		}
		forward(s.a, m, s.k)
		forward(s.a, m, s.y)
		forward(s.a, m, s.h)
		d := math.Sqrt(max(k.SD*k.SD+k.noise(r.SD)-dot(s.k, s.k), 1e-300))
		e[i], h[i], sd[i] = (r.Value-dot(s.k, s.y))/d, (1-dot(s.k, s.h))/d, d
	})
	return e, h, sd
}

// mean is the generalised least squares mean and its standard deviation.
func (c chained) mean(k Kernel) (mean, sd float64) {
	e, h, _ := c.whiten(k)
	hh := dot(h, h)
	return dot(h, e) / hh, math.Sqrt(1 / hh)
}

// logLikelihood of the readings, the mean at its best where it is not given.
func (c chained) logLikelihood(k Kernel, mean *float64) float64 {
	e, h, sd := c.whiten(k)
	mu := 0.0
	if mean != nil {
		mu = *mean
	} else {
		mu = dot(h, e) / dot(h, h)
	}
	sum := 0.0
	for i := range e {
		z := e[i] - mu*h[i]
		sum -= z*z/2 + math.Log(sd[i]) + math.Log(2*math.Pi)/2
	}
	if math.IsNaN(sum) {
		return math.Inf(-1)
	}
	return sum
}
