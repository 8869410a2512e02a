package futures

import "math"

// Outcome is what one future came to. Times are years from now, infinite where it did not happen within the horizon.
type Outcome struct {
	Water     float64 // first water in
	First     int32   // the part that let it in; -1 none
	Emergency float64 // first emergency docking
	Loss      float64 // she is lost
	Docked    float64 // first planned docking
	Signed    float64 // the contract could be signed
	Cost      float64 // present value of all that was paid
	Income    float64 // present value of income lost
	Left      float64 // present value of what is left of the last docking when the horizon ends: its bill, by the years until the next
	Works     float64 // bill of the first planned docking, in its day's money
	Days      float64 // days in dock then
	Deferred  int32   // works put off then
	Fired     uint32  // triggers that lit, a bit each
}

// runner holds what one core needs to run futures without allocating.
type runner struct {
	m    *Model
	plan *Plan
	t    *terms
	vars *variables
	s    stream

	rate, dead, mend []float64 // by zone: how fast it wastes, when its protection dies, when that is mended
	gone             []float64 // by zone: worn, at a factor of 1, by the year that lives sleep until
	score            []float64 // of each plate's thickness
	fails            queue
	falls            []int // by part: how often it has failed
	leaks            []leak
	wet              set // failed and patched, or past its life
	sleep            sleep
	docks, rushes    int // planned and emergency dockings so far
	word             []uint64
	cost             []float64 // by work: the price drawn last
	purse            purse
	due              float64 // the next planned docking
	until            float64 // the next planned docking or the horizon
	wakes            float64 // the year that a life must outlast to sleep: one after the docking, or after the horizon
	last             float64 // bill of the last docking that did the whole scope
	tell             func(year float64, words string, part int)
}

func newRunner(m *Model, p *Plan, v *variables, t *terms) *runner {
	zones, parts := len(m.Zones), len(m.Parts)
	return &runner{
		m: m, plan: p, t: t, vars: v,
		rate: make([]float64, zones), dead: make([]float64, zones), mend: make([]float64, zones), gone: make([]float64, zones),
		score: make([]float64, t.scores), fails: newQueue(parts, m.Years), falls: make([]int, parts), wet: newSet(parts), sleep: newSleep(parts),
		word: make([]uint64, (len(m.Works)+7)/8*8), cost: make([]float64, len(m.Works)),
	}
}

// run lets one future happen.
func (r *runner) run() Outcome {
	o := Outcome{Water: math.Inf(1), First: -1, Emergency: math.Inf(1), Loss: math.Inf(1), Docked: math.Inf(1), Signed: math.Inf(1)}
	r.purse.fill(&r.m.Money, &r.t.lump, &r.s, r.vars.giving)
	r.last, r.docks, r.rushes = 0, 0, 0
	r.schedule(r.planned(&o))
	r.begin()
	for range 10_000 {
		if r.fails.year == len(r.fails.years) {
			break
		}
		until := r.until
		if year := float64(r.fails.year + 1); year < until {
			until = year
		}
		p, at, how := r.pass(until, &o)
		switch {
		case p >= 0:
			r.happen(p, at, how, &o)
			if how == lost {
				r.lose(at, &o)
				return o
			}
			if !r.emergency(p, at, &o) {
				return o
			}
		case until == r.due && until < r.m.Years:
			r.dock(&o)
		default:
			r.fails.year++
		}
	}
	o.Left = r.left()
	return o
}

// schedule sets the next planned docking.
func (r *runner) schedule(due float64) {
	r.due = due
	r.until = min(due, r.m.Years)
	r.wakes = r.until + 1
}

// left is the present value of what is left of the last docking at the end of the horizon. Without it a plan that happens to dock in the last years would
// be charged for years that nobody looks at.
func (r *runner) left() float64 {
	if r.plan.Again <= 0 || math.IsInf(r.due, 1) {
		return 0
	}
	return r.last * min((r.due-r.m.Years)/r.plan.Again, 1) * r.present(r.m.Years)
}

// begin draws the zones and the first failure of every part.
func (r *runner) begin() {
	for z := range r.m.Zones {
		r.zone(z)
	}
	r.fails.clear()
	r.sleep.clear()
	clear(r.wet)
	clear(r.falls)
	r.measure()
	var w eight
	for i := range r.t.rows {
		row := &r.t.rows[i]
		r.s.row(&w, row.group, useFirst, row.v, row.n)
		for k, p := range row.part {
			switch {
			case p < 0:
			case r.m.Parts[p].Wastage != nil:
				r.score[p] = normal(w[k])
				r.wear(p)
			default:
				r.live(p, 0, w[k], r.t.parts[p].first)
			}
		}
	}
	for i := range r.t.plates {
		row := &r.t.plates[i]
		r.s.row(&w, row.group, useGauge, row.v, row.n)
		for k, place := range row.part {
			if place >= 0 {
				r.score[place] = normal(w[k])
			}
		}
	}
}

// zone draws how a zone wastes, and when it does so bare.
func (r *runner) zone(z int) {
	zone := &r.m.Zones[z]
	pace, life, notice, _ := r.s.draw(r.vars.zone[z], useZone, z, 0)
	if r.s.redraw != noGroup {
		_, _, notice, _ = r.s.draw(r.vars.watch, useZone, z, 0)
	}
	r.rate[z] = zone.Rate * exp(zone.RateSpread*normal(pace))
	r.dead[z] = r.t.guard[z].left(life)
	r.mend[z] = r.dead[z] - zone.Unnoticed*ln(unit(notice))
}

// present is the value today of a unit of money paid in year t at today's prices.
func (r *runner) present(t float64) float64 {
	q := int(4 * t)
	return r.t.present[q].at(4*t - float64(q))
}

func (r *runner) say(year float64, words string, part int) {
	if r.tell != nil {
		r.tell(year, words, part)
	}
}
