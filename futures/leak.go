package futures

import (
	"math"
	"math/bits"
)

// how a failure goes.
type how int

const (
	past         how = iota // lets no water in
	trickle                 // the pumps hardly notice; she never goes to dock for it
	heldStopped             // the pumps hold it until it is stopped afloat
	foundStopped            // found in time, and stopped
	heldDocks               // can't be stopped: from here on she goes to dock
	foundDocks
	fills
	lost
)

var told = [...][]string{
	past:         {"is past its life"},
	trickle:      {"lets a little water in; the pumps hardly notice"},
	heldStopped:  {"lets water in; the pumps hold it", "is stopped afloat"},
	foundStopped: {"lets in more than the pumps take; found in time", "is stopped afloat"},
	heldDocks:    {"lets water in; the pumps hold it"},
	foundDocks:   {"lets in more than the pumps take; found in time"},
	fills:        {"floods its space unseen; she stays up"},
	lost:         {"floods its space unseen; she is lost"},
}

// leak is a failure that she stays afloat with.
type leak struct {
	part     int
	at, next float64 // this failure, and the part's next
	paid     float64 // today's value of stopping it, or living with it
	how      how
}

// pass lets a year go by up to year until, or to the first failure that she docks or sinks for. What is stopped afloat touches nothing but its own part, so
// that parts can be taken one after another with all their failures, and none put in order; what a docking forestalls is only looked at.
func (r *runner) pass(until float64, o *Outcome) (worst int, at float64, how how) {
	worst, leaks := -1, r.leaks[:0]
	for i, w := range r.fails.years[r.fails.year] {
		for w &= r.fails.dated[i]; w != 0; w &= w - 1 {
			p := i<<6 + bits.TrailingZeros64(w)
			at := r.fails.at[p]
			for n := r.falls[p]; at < until && n < mostFalls; n++ {
				h, paid, next := r.fail(p, n, at)
				if h > foundStopped {
					worst, until, how = p, at, h
					break
				}
				leaks = append(leaks, leak{p, at, next, paid, h})
				at = next
			}
		}
	}
	for i := range leaks {
		if l := &leaks[i]; l.at <= until {
			r.happen(l.part, l.at, l.how, o)
			o.Cost += l.paid
			r.wet.add(l.part) // past its life, or patched, until a work renews it
			r.date(l.part, l.next)
		}
	}
	r.leaks = leaks
	return worst, until, how
}

// mostFalls is how often a part may fail in one future.
const mostFalls = 10_000

// happen lets a failure happen.
func (r *runner) happen(p int, at float64, h how, o *Outcome) {
	r.falls[p]++
	if at < o.Water && h != past {
		o.Water, o.First = at, int32(p)
	}
	if r.tell != nil {
		for _, words := range told[h] {
			r.say(at, words, p)
		}
	}
}

// fail draws how failure n of part p goes, in year at: what stopping it costs and how long that lasts, where she stays afloat.
func (r *runner) fail(p, n int, at float64) (h how, paid, next float64) {
	part := &r.t.parts[p]
	if !part.floods {
		return past, 0, math.Inf(1)
	}
	flow, pumps, price, lasts := r.s.draw(r.vars.chance, useFailure, p, n)
	if r.s.redraw != noGroup {
		_, _, _, lasts = r.s.draw(part.group, useFailure, p, n)
	}
	running := part.pumps(pumps)
	if h = trickle; flow > part.trickle[running] {
		if h = r.trouble(p, n, running, flow); h > foundStopped {
			return h, 0, 0
		}
	}
	return h, part.patch.at(unit(price)) * r.present(at), at + part.patched.left(lasts)
}

// pumps tells which of a space's pumps run when they are needed: 1 on shore power, 2 on own, 3 both. Each takes half of the word.
func (f *fitting) pumps(w uint64) (running int) {
	if w>>32 >= f.shoreFail {
		running = 1
	}
	if w&(1<<32-1) >= f.ownFail {
		running |= 2
	}
	return running
}

// trouble draws how a failure goes that is no trickle.
func (r *runner) trouble(p, n, running int, flow uint64) how {
	part := &r.m.Parts[p]
	stopped, round, open, fatal := r.s.draw(r.vars.chance, useTrouble, p, n)
	held := flow <= r.t.parts[p].held[running]
	switch {
	case !held && !r.found(p, running, flow, round, open):
		if unit(fatal) < r.m.Spaces[part.Space].Fatal {
			return lost
		}
		return fills
	case unit(stopped) < part.Patchable && held:
		return heldStopped
	case unit(stopped) < part.Patchable:
		return foundStopped
	case held:
		return heldDocks
	}
	return foundDocks
}

// found tells whether somebody who can act is there before a space fills: the alarm if it rings, or the next round.
func (r *runner) found(p, running int, flow, round, open uint64) bool {
	part, watch := &r.m.Parts[p], &r.m.Watch
	s := &r.m.Spaces[part.Space]
	in := part.Flow * exp(part.FlowSpread*normal(flow))
	out := float64(running&1)*s.Shore + float64(running>>1)*s.Own
	hours := s.Critical / max(in-out, 0) / 3600
	between := watch.Rounds
	if r.plan.Rounds > 0 {
		between = r.plan.Rounds
	}
	if float64(open>>32)/(1<<32) > watch.Season {
		between = max(between, watch.Closed)
	}
	unseen := unit(round) * between
	if float64(open&(1<<32-1))/(1<<32) < s.Alarm {
		unseen = min(unseen, s.Alarmed)
	}
	return unseen+watch.Act <= hours
}

func (r *runner) lose(at float64, o *Outcome) {
	o.Loss = min(o.Loss, at)
	o.Cost += r.m.Dock.Loss * r.present(at)
	o.Income += r.m.Dock.Income * r.present(at) * annuity(r.m.Years-at, r.m.Dock.Discount)
}

// annuity is the present value of a unit a year for n years, paid evenly.
func annuity(n, rate float64) float64 {
	if n <= 0 {
		return 0
	}
	if rate == 0 {
		return n
	}
	d := math.Log1p(rate)
	return -math.Expm1(-d*n) / d
}
