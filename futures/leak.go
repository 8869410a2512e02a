package futures

import "math"

// fail lets part p fail in year at, and returns false when that is the end of her.
func (r *runner) fail(p int, at float64, o *Outcome) bool {
	part := &r.m.Parts[p]
	if !part.floods() {
		r.say(at, "is past its life", p)
		r.fails.set(p, math.Inf(1)) // it stays so until a work renews it
		r.wet[p] = true
		return true
	}
	if at < o.Water {
		o.Water, o.First = at, int32(p)
	}
	u, v := r.s.uniforms(r.vars.chance, p, 64+4*r.used[p])
	flow := part.Flow * math.Exp(part.FlowSpread*normal(u))
	end := r.flooded(part.Space, flow, v, p)
	switch end {
	case trickle:
		r.say(at, "lets a little water in; the pumps hardly notice", p)
		r.nurse(p, at, o)
		return true
	case held:
		r.say(at, "lets water in; the pumps hold it", p)
		return r.mendOrDock(p, at, o)
	case caught:
		r.say(at, "lets in more than the pumps take; found in time", p)
		return r.mendOrDock(p, at, o)
	}
	space := &r.m.Spaces[part.Space]
	w, _ := r.s.uniforms(r.vars.chance, p, 65+4*r.used[p])
	if w < space.Fatal {
		r.say(at, "floods its space unseen; she is lost", p)
		r.lose(at, o)
		return false
	}
	r.say(at, "floods its space unseen; she stays up", p)
	return r.emergency(p, at, o)
}

type ending int

const (
	trickle ending = iota // the pumps take it at a quarter of what they give
	held                  // the pumps win
	caught                // they lose, but somebody is there in time
	filled                // the space fills before anybody is there
)

// flooded works out how water at that flow ends in a space: against the pumps that run, then against the time until somebody acts.
func (r *runner) flooded(space int, flow, v float64, p int) ending {
	sp := &r.m.Spaces[space]
	a, b := r.s.uniforms(r.vars.chance, p, 66+4*r.used[p])
	pumps := 0.0
	if a >= sp.ShoreFail {
		pumps += sp.Shore
	}
	if b >= sp.OwnFail {
		pumps += sp.Own
	}
	switch {
	case flow <= pumps/4:
		return trickle
	case flow <= pumps:
		return held
	}
	hours := sp.Critical / (flow - pumps) / 3600
	if r.foundWithin(sp, v, p)+r.m.Watch.Act <= hours {
		return caught
	}
	return filled
}

// foundWithin is how many hours pass before somebody who can act is there: the alarm if it rings, or the next round.
func (r *runner) foundWithin(sp *Space, v float64, p int) float64 {
	a, b := r.s.uniforms(r.vars.chance, p, 67+4*r.used[p])
	between := r.m.Watch.Rounds
	if r.plan.Rounds > 0 {
		between = r.plan.Rounds
	}
	if a > r.m.Watch.Season {
		between = max(between, r.m.Watch.Closed)
	}
	round := v * between
	if b < sp.Alarm {
		return min(round, sp.Alarmed)
	}
	return round
}

// mendOrDock stops a leak afloat if it can be, and otherwise docks her at once.
func (r *runner) mendOrDock(p int, at float64, o *Outcome) bool {
	part := &r.m.Parts[p]
	u, v := r.s.uniforms(r.vars.chance, p, 1<<20+r.used[p])
	if u < part.Patchable {
		o.Cost += part.Patch.At(v) * r.present(at)
		r.wet[p] = true
		r.again(p, at, &r.lives[p].patched)
		r.say(at, "is stopped afloat", p)
		return true
	}
	return r.emergency(p, at, o)
}

// nurse lives with a small leak: it is patched, or pumped until it is worse, and never sends her to dock by itself.
func (r *runner) nurse(p int, at float64, o *Outcome) {
	part := &r.m.Parts[p]
	_, v := r.s.uniforms(r.vars.chance, p, 1<<20+r.used[p])
	o.Cost += part.Patch.At(v) * r.present(at)
	r.wet[p] = true
	r.again(p, at, &r.lives[p].patched)
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
