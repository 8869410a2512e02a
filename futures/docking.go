package futures

import (
	"math"
	"slices"
)

// keepOrder lists the works of a plan, those kept longest first: the musts, then by worth for the money.
func keepOrder(m *Model, p *Plan) []int {
	order := slices.Clone(p.Scope)
	slices.SortStableFunc(order, func(a, b int) int {
		wa, wb := m.Works[a], m.Works[b]
		switch {
		case wa.Must != wb.Must:
			if wa.Must {
				return -1
			}
			return 1
		case wa.Value > wb.Value:
			return -1
		case wa.Value < wb.Value:
			return 1
		}
		return a - b
	})
	return order
}

// bill draws what the works of the scope cost once the steel is seen, into r.cost, and returns the sum of works, the days, and the fixed part.
// A part names an emergency that does only what is urgent for it; -1 does all.
func (r *runner) bill(use, part int) (works, days, fixed float64) {
	c, f := r.s.uniforms(r.vars.price, 0, use)
	common := normal(c)
	share, own := math.Sqrt(r.m.Dock.Correlate), math.Sqrt(1-r.m.Dock.Correlate)
	for _, w := range r.scope {
		work := &r.m.Works[w]
		if part >= 0 && !r.urgent(w, part) {
			continue
		}
		u, g := r.s.uniforms(r.vars.price, 1+w, use)
		x := share*common + own*normal(u)
		r.cost[w] = work.Cost.At(0.5 * math.Erfc(-x/math.Sqrt2))
		if work.Growth.High > 0 {
			r.cost[w] *= work.Growth.At(g)
		}
		works += r.cost[w]
		days += work.Days
	}
	return works, days, r.m.Dock.Fixed.At(f)
}

// planned is the year of the first planned docking: the plan's date, or later when the money or the window says so.
func (r *runner) planned(o *Outcome) float64 {
	if r.plan.Dock < 0 {
		return math.Inf(1)
	}
	need := r.m.Dock.Fixed.Likely
	for _, w := range r.plan.Scope {
		need += r.m.Works[w].Cost.Mean()
	}
	money := r.affordable(need)
	o.Signed = money
	at := r.plan.Dock
	if r.plan.Wait {
		at = max(at, money+r.m.Dock.Lead)
	}
	return r.window(at)
}

// window is the first yard date not before year at.
func (r *runner) window(at float64) float64 { return r.m.Dock.Window(at) }

// Window is the first yard date not before year at.
func (d *DockTerms) Window(at float64) float64 {
	if len(d.Windows) == 0 || math.IsInf(at, 1) {
		return at
	}
	best := math.Inf(1)
	for _, w := range d.Windows {
		if w < at && d.Every > 0 {
			w += d.Every * math.Ceil((at-w)/d.Every)
		}
		if w >= at {
			best = min(best, w)
		}
	}
	return best
}

// affordable is the first quarter of a year in which the funds reach need; infinite when they don't within the horizon.
func (r *runner) affordable(need float64) float64 {
	if !r.m.Money.kept() {
		return 0 // nothing waits for money that nobody counts
	}
	for q, price := range r.terms.prices {
		t := float64(q) / 4
		if r.purse.at(t) >= need*price {
			return t
		}
	}
	return math.Inf(1)
}

// dock does the planned docking that is due, and sets the next.
func (r *runner) dock(o *Outcome) {
	at, first := r.due, math.IsInf(o.Docked, 1)
	use := 0
	if !first {
		use = 1 + int(at)
	}
	works, days, fixed := r.bill(use, -1)
	money, extra := r.triggers(at, o, first)
	works, days = max(works+money, 0), max(days+extra, 0)
	keep := len(r.scope)
	if first && !r.plan.Wait {
		keep, works = r.fit(at, works)
	}
	if first {
		o.Docked, o.Works, o.Days, o.Deferred = at, works+fixed+days*r.m.Dock.DayRate, days, int32(len(r.scope)-keep)
	}
	r.last = works + fixed + days*r.m.Dock.DayRate
	r.pay(at, r.last, days, o)
	r.say(at, "she goes to dock as planned", -1)
	r.due = r.next(at)
	for _, w := range r.scope[:keep] {
		r.renew(w, at)
	}
	r.wake()
}

// next is the planned docking after one in year at.
func (r *runner) next(at float64) float64 {
	if r.plan.Again <= 0 {
		return math.Inf(1)
	}
	return at + r.plan.Again
}

// fit drops the works of least worth until the rest can be paid, never a must.
func (r *runner) fit(at, works float64) (keep int, cost float64) {
	if !r.m.Money.kept() {
		return len(r.scope), works
	}
	free := r.purse.at(at)
	keep = len(r.scope)
	for keep > 0 && works > free && !r.m.Works[r.scope[keep-1]].Must {
		keep--
		works -= r.cost[r.scope[keep]]
	}
	return keep, max(works, 0)
}

func (r *runner) pay(at, money, days float64, o *Outcome) {
	now := r.present(at)
	o.Cost += money * now
	o.Income += r.m.Dock.Income / 365.25 * days * now
}

func (r *runner) renew(w int, at float64) {
	for _, p := range r.m.Works[w].Parts {
		if r.done[p] == at {
			continue // another work of this docking has renewed it
		}
		r.done[p] = at
		r.wet[p] = false
		r.again(p, at, &r.lives[p].renewed)
	}
}

// emergency docks her at once, and returns false when she is lost on the way to it.
func (r *runner) emergency(p int, at float64, o *Outcome) bool {
	o.Emergency = min(o.Emergency, at)
	u, v := r.s.uniforms(r.vars.chance, p, 1<<21+r.used[p])
	if u < r.m.Dock.NoDock && v < r.m.Dock.NoDockLoss {
		r.say(at, "no dock is free and she is lost waiting", p)
		r.lose(at, o)
		return false
	}
	works, days, fixed := r.bill(1<<16+r.used[p], p)
	a, _ := r.s.uniforms(r.vars.price, 1<<12, 1<<16+r.used[p])
	away := days + r.m.Dock.Away.At(a)
	r.pay(at, r.m.Dock.Emergency*(works+fixed+days*r.m.Dock.DayRate), away, o)
	r.say(at, "she goes to dock in an emergency", p)
	did := 0
	for _, w := range r.scope {
		if r.urgent(w, p) {
			r.renew(w, at)
			did++
		}
	}
	r.wet[p] = false
	r.again(p, at, &r.lives[p].renewed)
	if did == len(r.scope) { // nothing is left for the planned docking: the clock starts anew
		r.due = math.Inf(1)
		if r.plan.Dock >= 0 && r.plan.Again > 0 {
			r.due = r.next(at)
			r.last = works + fixed + days*r.m.Dock.DayRate
		}
		r.wake()
	}
	return true
}

// urgent tells whether an emergency docking for part p does a work: a must, or one that renews the part.
func (r *runner) urgent(w, p int) bool {
	return r.m.Works[w].Must || r.terms.covers[w][p]
}
