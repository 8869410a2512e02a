package futures

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
)

// block is how many futures a core takes at a time. Sums are added block by block in order, so that any number of cores gives the same bits.
const block = 1024

// Options say how many futures to run.
type Options struct {
	Seed    uint64
	Futures int     // at most this many
	Error   float64 // stop earlier once the standard error of the chance of an emergency is at or below this; 0 runs all
	Cores   int     // 0 takes all
	// Progress is called now and then with the share done; it may be nil.
	Progress func(done, of int)
}

// Run runs a plan. Outcomes stand in the order of their futures. It stops with the context's error when cancelled.
func Run(ctx context.Context, m *Model, p *Plan, o Options) ([]Outcome, error) {
	if err := m.Valid(); err != nil {
		return nil, err
	}
	out := make([]Outcome, o.Futures)
	n, err := fill(ctx, m, p, o, noGroup, out)
	return out[:n], err
}

// fill runs futures into out, with one group of variables redrawn, and returns how many it ran.
func fill(ctx context.Context, m *Model, p *Plan, o Options, redraw group, out []Outcome) (int, error) {
	v := variablesOf(m)
	t := newTerms(m, p, &v, false)
	cores := o.Cores
	if cores <= 0 {
		cores = runtime.GOMAXPROCS(0)
	}
	for done := 0; done < len(out); {
		upto := len(out)
		if o.Error > 0 {
			upto = min(done+16*block, len(out))
		}
		if err := part(ctx, m, p, &v, t, o, redraw, out, done, upto, cores); err != nil {
			return done, err
		}
		done = upto
		if o.Error > 0 && standardError(out[:done], m.Years) <= o.Error {
			return done, nil
		}
	}
	return len(out), nil
}

func part(ctx context.Context, m *Model, p *Plan, v *variables, t *terms, o Options, redraw group, out []Outcome, from, upto, cores int) error {
	var at, done atomic.Int64
	at.Store(int64(from))
	done.Store(int64(from))
	var wg sync.WaitGroup
	for range cores {
		wg.Go(func() {
			r := newRunner(m, p, v, t)
			r.s = newStream(o.Seed, 0)
			r.s.redraw = redraw
			for ctx.Err() == nil {
				start := int(at.Add(block)) - block
				if start >= upto {
					return
				}
				end := min(start+block, upto)
				for i := start; i < end; i++ {
					r.s.future, r.s.other = uint64(i), uint64(i)|1<<63
					out[i] = r.run()
				}
				if o.Progress != nil {
					o.Progress(int(done.Add(int64(end-start))), len(out))
				}
			}
		})
	}
	wg.Wait()
	return ctx.Err()
}

// standardError of the chance of an emergency, add-half so that a count of nought is not taken for certainty.
func standardError(out []Outcome, years float64) float64 {
	n := 0
	for i := range out {
		if out[i].Emergency <= years {
			n++
		}
	}
	p := (float64(n) + 0.5) / (float64(len(out)) + 1)
	return math.Sqrt(p * (1 - p) / float64(len(out)))
}

// sorted returns the values of one measure over the outcomes in rising order.
func sorted(out []Outcome, of func(*Outcome) float64) []float64 {
	x := make([]float64, len(out))
	for i := range out {
		x[i] = of(&out[i])
	}
	slices.Sort(x)
	return x
}
