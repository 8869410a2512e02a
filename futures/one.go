package futures

import (
	"math"
)

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
	s    stream

	vars  variables
	lives []lives   // by part
	terms terms     // what the model and the plan settle beforehand
	guard []life    // by zone: its protection
	dead  []float64 // by zone: protection dies, is mended
	mend  []float64
	rate  []float64
	fails queue     // by part: next failure
	later []asleep  // lives that outlast the next planned docking
	awake bool      // no life sleeps: for the test that sleep changes nothing
	used  []int     // by part: how often a life was drawn
	wet   []bool    // by part: patched now
	done  []float64 // by part: the docking that renewed it last
	scope []int     // works of the plan, in the order they are kept
	cost  []float64
	purse purse
	due   float64 // the next planned docking
	last  float64 // bill of the last docking that did the whole scope
	tell  func(year float64, words string, part int)
}

// lives are the lives a part may be drawn from.
type lives struct{ first, renewed, patched life }

func newRunner(m *Model, p *Plan, v variables) *runner {
	r := &runner{
		m: m, plan: p, vars: v,
		dead: make([]float64, len(m.Zones)), mend: make([]float64, len(m.Zones)), rate: make([]float64, len(m.Zones)),
		terms: newTerms(m, p),
		fails: newQueue(len(m.Parts), m.Years), used: make([]int, len(m.Parts)), wet: make([]bool, len(m.Parts)), done: make([]float64, len(m.Parts)),
		scope: keepOrder(m, p), cost: make([]float64, len(m.Works)),
	}
	made := map[Weibull]life{} // most parts share a few laws
	law := func(w Weibull) life {
		if _, ok := made[w]; !ok {
			made[w] = ready(w, m.Years)
		}
		return made[w]
	}
	for i := range m.Parts {
		part := &m.Parts[i]
		r.lives = append(r.lives, lives{law(part.Life), law(part.Renewed), law(part.PatchLife)})
	}
	for _, z := range m.Zones {
		r.guard = append(r.guard, law(z.Protection))
	}
	return r
}

// run lets one future happen.
func (r *runner) run() Outcome {
	o := Outcome{Water: math.Inf(1), First: -1, Emergency: math.Inf(1), Loss: math.Inf(1), Docked: math.Inf(1), Signed: math.Inf(1)}
	r.purse.fill(&r.m.Money, &r.s, r.vars.giving)
	r.last = 0
	r.due = r.planned(&o)
	r.begin()
	for range 10_000 {
		part, at := r.fails.first()
		if at >= r.m.Years && r.due >= r.m.Years {
			o.Left = r.left()
			return o
		}
		if r.due <= at {
			r.dock(&o)
			continue
		}
		if !r.fail(part, at, &o) {
			return o
		}
	}
	return o
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
		zone := &r.m.Zones[z]
		u, w := r.s.uniforms(r.vars.zone[z], z, 0)
		r.rate[z] = zone.Rate * math.Exp(zone.RateSpread*normal(u))
		r.dead[z] = r.guard[z].left(w, r.m.Years)
		v, _ := r.s.uniforms(r.vars.watch, z, 1)
		r.mend[z] = r.dead[z] - zone.Unnoticed*math.Log(v)
	}
	r.fails.clear()
	r.later = r.later[:0]
	for p := range r.m.Parts {
		r.used[p], r.wet[p], r.done[p] = 0, false, -1
		r.firstLife(p)
	}
}

func (r *runner) firstLife(p int) {
	if r.unheard(p) {
		return
	}
	u, v := r.s.uniforms(r.vars.part[p], p, 2)
	w := r.m.Parts[p].Wastage
	if w == nil {
		r.live(asleep{p, 0, 0, u, &r.lives[p].first})
		return
	}
	left := w.Left + w.LeftSD*normal(v)
	z := w.Zone
	zone := &r.m.Zones[z]
	r.set(p, through(left, r.rate[z]*w.Factor, zone.Bare, r.dead[z], r.mend[z]))
}

// again draws another life of a part from year at.
func (r *runner) again(p int, at float64, l *life) {
	r.used[p]++
	if r.unheard(p) {
		return
	}
	u, _ := r.s.uniforms(r.vars.part[p], p, 2+r.used[p])
	r.live(asleep{p, r.used[p], at, u, l})
}

// set gives a part its next failure. One that lets no water in changes nothing when it comes, so it is queued only where a story is told.
func (r *runner) set(p int, year float64) {
	if r.tell == nil && !r.m.Parts[p].floods() {
		r.fails.at[p] = year
		return
	}
	r.fails.set(p, year)
}

// present is the value today of a unit of money paid in year t at today's prices.
func (r *runner) present(t float64) float64 {
	return math.Exp(t * r.terms.drift)
}

func (r *runner) say(year float64, words string, part int) {
	if r.tell != nil {
		r.tell(year, words, part)
	}
}
