package futures

import "math"

// asleep is a life that outlasts the next planned docking, and so needs no date yet: most do, most are renewed there, and a date costs a logarithm and a
// power. What the docking leaves as it was is looked at again, and so is everything when the docking moves. The date comes from the same draw, so that
// sleeping changes no future.
type asleep struct {
	part, use int // use: how often a life of the part had been drawn
	from      float64
	u         float64
	life      *life
}

// live gives a part its life: a date to fail, or sleep until after the next docking.
func (r *runner) live(a asleep) {
	if until := r.due + 1; !r.awake && r.due < r.m.Years && a.life.outlasts(a.u, until-a.from) { // triggers look a year beyond the docking
		r.fails.at[a.part] = math.Inf(1)
		r.later = append(r.later, a)
		return
	}
	r.set(a.part, a.from+a.life.left(a.u, r.m.Years-a.from))
}

// wake looks again at the lives asleep, after the docking they were measured by has been or has moved.
func (r *runner) wake() {
	list := r.later
	r.later = r.later[:0]
	for _, a := range list {
		if a.use == r.used[a.part] {
			r.live(a)
		}
	}
}

// terms are what a model and a plan settle before anything is drawn.
type terms struct {
	drift  float64   // logarithm of the growth of a price a year, escalated and discounted
	covers [][]bool  // by work, by part: renews it
	found  [][]int   // by trigger: the parts it counts
	heard  []bool    // by part: lets water in, or a trigger counts it
	prices []float64 // by quarter of a year from now: prices against today's
}

func newTerms(m *Model, p *Plan) terms {
	t := terms{drift: math.Log1p(m.Dock.Escalation) - math.Log1p(m.Dock.Discount), heard: make([]bool, len(m.Parts))}
	for w := range m.Works {
		covers := make([]bool, len(m.Parts))
		for _, q := range m.Works[w].Parts {
			covers[q] = true
		}
		t.covers = append(t.covers, covers)
	}
	for i := range m.Parts {
		t.heard[i] = m.Parts[i].floods()
	}
	for i := range p.Triggers {
		found := p.Triggers[i].counts(m)
		for _, q := range found {
			t.heard[q] = true
		}
		t.found = append(t.found, found)
	}
	for q := 0; float64(q)/4 <= m.Years; q++ {
		t.prices = append(t.prices, math.Pow(1+m.Dock.Escalation, float64(q)/4))
	}
	return t
}

// floods tells whether a part lets water in when it fails.
func (p *Part) floods() bool { return p.Flow > 0 && p.Space >= 0 }

// unheard tells that no outcome depends on when a part fails; a story tells it all the same.
func (r *runner) unheard(p int) bool { return r.tell == nil && !r.terms.heard[p] }
