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

// bill draws what the works of a job cost once the steel is seen, into r.cost, and returns their sum, the fixed part and how long she is away beside.
func (r *runner) bill(j *job, use int) (works, fixed, away float64) {
	shared, f, a, _ := r.s.draw(r.vars.price, useBill, use, 0)
	common := r.t.common * normal(shared)
	r.deal(usePrice, use)
	for _, w := range j.works {
		r.cost[w] = r.t.works[w].at(common + r.t.own*normal(r.word[w]))
		works += r.cost[w]
	}
	if r.t.grow {
		works = r.grown(j, use)
	}
	return works, r.t.fixed.at(unit(f)), r.t.away.at(unit(a))
}

// grown makes the works of a job grow as they may, and returns their sum.
func (r *runner) grown(j *job, use int) (works float64) {
	r.deal(useGrowth, use)
	for _, w := range j.works {
		if r.m.Works[w].Growth.High > 0 {
			r.cost[w] *= r.t.works[w].growth.at(unit(r.word[w]))
		}
		works += r.cost[w]
	}
	return works
}

// deal draws a word for every work.
func (r *runner) deal(u use, v int) {
	for i := 0; i < len(r.word); i += 8 {
		r.s.row((*eight)(r.word[i:]), r.vars.price, u, v, i/8)
	}
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
	for q, price := range r.t.prices {
		t := float64(q) / 4
		if r.purse.at(t) >= need*price {
			return t
		}
	}
	return math.Inf(1)
}

// dock does the planned docking that is due, and sets the next.
func (r *runner) dock(o *Outcome) {
	at, first, use := r.due, math.IsInf(o.Docked, 1), r.docks
	r.docks++
	all := &r.t.kept[len(r.t.scope)]
	works, fixed, _ := r.bill(all, use)
	money, extra := r.triggers(at, o, first)
	works, days := max(works+money, 0), max(all.days+extra, 0)
	keep := len(r.t.scope)
	if first && !r.plan.Wait {
		keep, works = r.fit(at, works)
	}
	r.last = works + fixed + days*r.m.Dock.DayRate
	if first {
		o.Docked, o.Works, o.Days, o.Deferred = at, r.last, days, int32(len(r.t.scope)-keep)
	}
	r.pay(at, r.last, days, o)
	r.say(at, "she goes to dock as planned", -1)
	r.schedule(r.next(at))
	r.renew(&r.t.kept[keep], at, use, true)
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
		return len(r.t.scope), works
	}
	free := r.purse.at(at)
	keep = len(r.t.scope)
	for keep > 0 && works > free && !r.m.Works[r.t.scope[keep-1]].Must {
		keep--
		works -= r.cost[r.t.scope[keep]]
	}
	return keep, max(works, 0)
}

func (r *runner) pay(at, money, days float64, o *Outcome) {
	now := r.present(at)
	o.Cost += money * now
	o.Income += r.m.Dock.Income / 365.25 * days * now
}

// rush numbers the emergency dockings, out of the way of the planned ones.
const rush = 1 << 20

// emergency docks her at once, and returns false when she is lost on the way to it.
func (r *runner) emergency(p int, at float64, o *Outcome) bool {
	o.Emergency = min(o.Emergency, at)
	use := rush + r.rushes
	r.rushes++
	full, lost, _, _ := r.s.draw(r.vars.chance, useEmergency, use, 0)
	if unit(full) < r.m.Dock.NoDock && unit(lost) < r.m.Dock.NoDockLoss {
		r.say(at, "no dock is free and she is lost waiting", p)
		r.lose(at, o)
		return false
	}
	j := &r.t.urgent[p]
	works, fixed, away := r.bill(j, use)
	bill := works + fixed + j.days*r.m.Dock.DayRate
	r.pay(at, r.m.Dock.Emergency*bill, j.days+away, o)
	r.say(at, "she goes to dock in an emergency", p)
	if j.whole { // the clock starts anew
		r.schedule(math.Inf(1))
		if r.plan.Dock >= 0 && r.plan.Again > 0 {
			r.schedule(r.next(at))
			r.last = bill
		}
	}
	r.renew(j, at, use, j.whole)
	return true
}
