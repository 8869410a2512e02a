package futures

import "math"

// fail lets part p fail in year at, and returns false when that is the end of her.
func (r *runner) fail(p int, at float64, o *Outcome) bool {
	part := &r.t.parts[p]
	r.fails.dated.drop(p)
	if !part.floods {
		r.say(at, "is past its life", p)
		r.wet.add(p) // it stays so until a work renews it
		return true
	}
	if at < o.Water {
		o.Water, o.First = at, int32(p)
	}
	flow, pumps, price, next := r.s.draw(r.vars.chance, useFailure, p, r.falls[p])
	if r.s.redraw != noGroup {
		_, _, _, next = r.s.draw(part.group, useFailure, p, r.falls[p])
	}
	r.falls[p]++
	running := r.pumps(r.m.Parts[p].Space, pumps)
	switch u := unit(flow); {
	case u <= part.trickle[running]:
		r.say(at, "lets a little water in; the pumps hardly notice", p)
		r.patch(p, at, price, next, o) // she never goes to dock for it
		return true
	case u <= part.held[running]:
		r.say(at, "lets water in; the pumps hold it", p)
	case r.found(p, running, flow):
		r.say(at, "lets in more than the pumps take; found in time", p)
	default:
		return r.fill(p, at, o)
	}
	stopped, _, _, _ := r.trouble(p)
	if unit(stopped) < r.m.Parts[p].Patchable {
		r.patch(p, at, price, next, o)
		r.say(at, "is stopped afloat", p)
		return true
	}
	return r.emergency(p, at, o)
}

// pumps tells which of a space's pumps run when they are needed: 1 on shore power, 2 on own, 3 both. Each takes half of the word.
func (r *runner) pumps(space int, w uint64) (running int) {
	s := &r.m.Spaces[space]
	if float64(w>>32)/(1<<32) >= s.ShoreFail {
		running = 1
	}
	if float64(w&(1<<32-1))/(1<<32) >= s.OwnFail {
		running += 2
	}
	return running
}

// trouble draws for the last failure of a part, once it is no trickle.
func (r *runner) trouble(p int) (stopped, round, open, fatal uint64) {
	return r.s.draw(r.vars.chance, useTrouble, p, r.falls[p])
}

// patch stops a leak afloat, or lives with it.
func (r *runner) patch(p int, at float64, price, next uint64, o *Outcome) {
	part := &r.t.parts[p]
	o.Cost += part.patch.at(unit(price)) * r.present(at)
	r.wet.add(p)
	r.live(p, at, next, part.patched)
}

// found tells whether somebody who can act is there before a space fills: the alarm if it rings, or the next round.
func (r *runner) found(p, running int, flow uint64) bool {
	part, watch := &r.m.Parts[p], &r.m.Watch
	s := &r.m.Spaces[part.Space]
	in := part.Flow * exp(part.FlowSpread*normal(flow))
	out := float64(running&1)*s.Shore + float64(running>>1)*s.Own
	hours := s.Critical / max(in-out, 0) / 3600
	_, round, open, _ := r.trouble(p)
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

// fill lets a space fill unseen: she is lost, or docked at once.
func (r *runner) fill(p int, at float64, o *Outcome) bool {
	_, _, _, fatal := r.trouble(p)
	if unit(fatal) < r.m.Spaces[r.m.Parts[p].Space].Fatal {
		r.say(at, "floods its space unseen; she is lost", p)
		r.lose(at, o)
		return false
	}
	r.say(at, "floods its space unseen; she stays up", p)
	return r.emergency(p, at, o)
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
