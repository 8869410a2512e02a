package futures

import (
	"encoding/binary"
	"math"
	"slices"
)

// terms are what a model and a plan settle before anything is drawn. Every core reads them; none writes.
type terms struct {
	drift       float64   // logarithm of the growth of a price a year, escalated and discounted
	prices      []float64 // by quarter of a year from now: prices against today's
	present     []cubic   // by quarter of a year from now: today's value of a unit of money at today's prices
	parts       []fitting // by part
	guard       []*life   // by zone: its protection
	rows        []row     // parts whose lives are drawn together
	outlast     [][]eight // by whole years, by row: the last words whose renewed lives outlast them
	plates      []row     // plates that are only read, by the places their scores take
	scores      int       // places of scores: a part's own, then those of plates that are only read
	gauges      [][]int   // by trigger: where its gauges find their scores
	found       []set     // by trigger: the parts it counts
	works       []price   // by work
	grow        bool      // some work grows
	fixed       triangle  // what every docking costs
	away        triangle  // days away in an emergency
	lump        triangle  // a large gift
	common, own float64   // weights of what prices share and of what each has of its own

	years  int   // whole ones that a life may have to outlast
	scope  []int // works of the plan, in the order they are kept
	kept   []job // by how many of them are done: a planned docking
	urgent []job // by part: the emergency docking that it sends her to
}

// fitting is a part made ready.
type fitting struct {
	first, renewed, patched *life
	group                   group
	stays                   bool      // no planned docking renews it
	floods                  bool      // lets water in when it fails
	heard                   bool      // some outcome depends on when it fails
	shoreFail, ownFail      uint64    // of so many in 2^32, how often pumps on shore power and on own don't run
	trickle, held           [4]uint64 // by pumps that run: draws of the first flow that they hardly notice, that they hold
	patch                   triangle
}

// row is eight parts of a group whose draws come from one call; -1 where none is wanted.
type row struct {
	group group
	v, n  int
	part  [8]int
}

// job is the works that a docking does.
type job struct {
	works []int
	days  float64
	parts set   // renewed
	rows  []int // in which some of them stand
	whole bool  // nothing is left for the planned docking
}

// newTerms settles a model and a plan. A story hears of every part.
func newTerms(m *Model, p *Plan, v *variables, story bool) *terms {
	t := &terms{
		drift: math.Log1p(m.Dock.Escalation) - math.Log1p(m.Dock.Discount),
		parts: make([]fitting, len(m.Parts)),
		fixed: m.Dock.Fixed.ready(), away: m.Dock.Away.ready(), lump: m.Money.Lump.ready(),
		common: math.Sqrt(m.Dock.Correlate), own: math.Sqrt(1 - m.Dock.Correlate),
		scope: keepOrder(m, p), years: int(math.Ceil(m.Years)) + 2, // triggers look a year ahead
	}
	for q := 0; float64(q)/4 <= m.Years; q++ {
		t.prices = append(t.prices, math.Pow(1+m.Dock.Escalation, float64(q)/4))
		now, soon := math.Exp(t.drift*float64(q)/4), math.Exp(t.drift*float64(q+1)/4)
		t.present = append(t.present, between(1, now, soon, now*t.drift/4, soon*t.drift/4))
	}
	for i := range m.Works {
		t.works = append(t.works, priceOf(&m.Works[i]))
		t.grow = t.grow || m.Works[i].Growth.High > 0
	}
	t.fit(m, p, v, story)
	t.readings(m, p, v)
	t.line(m, v)
	t.jobs(m)
	return t
}

// fit makes the parts ready, and finds which of them an outcome hangs on.
func (t *terms) fit(m *Model, p *Plan, v *variables, story bool) {
	made := map[Weibull]*life{} // most parts share a few laws
	law := func(w Weibull) *life {
		if made[w] == nil {
			made[w] = ready(w, t.years)
		}
		return made[w]
	}
	for i := range m.Parts {
		part := &m.Parts[i]
		f := &t.parts[i]
		*f = fitting{first: law(part.Life), renewed: law(part.Renewed), patched: law(part.PatchLife), group: v.part[i], floods: part.floods(), patch: part.Patch.ready()}
		f.heard = f.floods || story
		if f.floods {
			f.meets(part, &m.Spaces[part.Space])
			f.renewed.table()
			f.patched.table()
		}
	}
	for _, z := range m.Zones {
		guard := law(z.Protection)
		guard.table()
		t.guard = append(t.guard, guard)
	}
	for i := range p.Triggers {
		found := p.Triggers[i].counts(m)
		for _, q := range found {
			t.parts[q].heard = true
		}
		t.found = append(t.found, setOf(len(m.Parts), found))
	}
}

// meets works out which first flows of a part each pumping of its space takes. The flow is a median times a power, so that a flow is a share of draws.
func (f *fitting) meets(p *Part, s *Space) {
	f.shoreFail, f.ownFail = uint64(math.Ceil(s.ShoreFail*(1<<32))), uint64(math.Ceil(s.OwnFail*(1<<32)))
	for running := range f.held {
		pumps := float64(running&1)*s.Shore + float64(running>>1)*s.Own
		f.trickle[running], f.held[running] = wordOf(p.under(pumps/4)), wordOf(p.under(pumps))
	}
}

// under is the share of a part's first flows that are at most so much.
func (p *Part) under(flow float64) float64 {
	switch {
	case flow <= 0:
		return 0
	case p.FlowSpread > 0:
		return below(math.Log(flow/p.Flow) / p.FlowSpread)
	case p.Flow <= flow:
		return 1
	}
	return 0
}

// readings finds where each gauge has its score: with the part whose draw it shares, or in a place of its own.
func (t *terms) readings(m *Model, p *Plan, v *variables) {
	t.scores = len(m.Parts)
	place := map[int]int{}
	for i := range p.Triggers {
		var at []int
		for _, g := range p.Triggers[i].Gauges {
			if g.Part >= 0 && m.Parts[g.Part].Wastage != nil {
				at = append(at, g.Part)
				continue
			}
			if _, ok := place[g.Draw]; !ok {
				t.plates = seat(t.plates, v.plates, 0, len(place), t.scores)
				place[g.Draw] = t.scores
				t.scores++
			}
			at = append(at, place[g.Draw])
		}
		t.gauges = append(t.gauges, at)
	}
}

// seat gives a part its place in a row.
func seat(rows []row, g group, v, place, part int) []row {
	i := slices.IndexFunc(rows, func(r row) bool { return r.group == g && r.n == place/8 })
	if i < 0 {
		i = len(rows)
		rows = append(rows, row{g, v, place / 8, [8]int{-1, -1, -1, -1, -1, -1, -1, -1}})
	}
	rows[i].part[place%8] = part
	return rows
}

// line lines the parts up by group in rows of eight. Those that let water in stand first, so that adding others moves none of them.
func (t *terms) line(m *Model, v *variables) {
	size := make([]int, len(v.names))
	for _, floods := range []bool{true, false} {
		for i := range m.Parts {
			f := &t.parts[i]
			if f.floods != floods {
				continue
			}
			if f.heard {
				t.rows = seat(t.rows, f.group, int(f.group), size[f.group], i)
			}
			size[f.group]++
		}
	}
	for y := range t.years {
		limits := make([]eight, len(t.rows))
		for i, w := range t.rows {
			for k, p := range w.part {
				limits[i][k] = math.MaxUint64
				if p >= 0 {
					limits[i][k] = t.parts[p].renewed.spare[y]
				}
			}
		}
		t.outlast = append(t.outlast, limits)
	}
}

// jobs works out what each docking does: the planned one by how much of the scope is kept, the emergency by the part.
func (t *terms) jobs(m *Model) {
	covers := make([]set, len(m.Works))
	for w := range m.Works {
		covers[w] = setOf(len(m.Parts), m.Works[w].Parts)
	}
	for keep := range len(t.scope) + 1 {
		t.kept = append(t.kept, t.job(m, covers, t.scope[:keep], -1))
	}
	same := map[string]job{} // parts that the same works renew share a job
	for q := range m.Parts {
		t.parts[q].stays = !t.kept[len(t.scope)].parts.has(q)
		var works []int
		var key []byte
		covered := false
		for _, w := range t.scope {
			if m.Works[w].Must || covers[w].has(q) {
				works, key = append(works, w), binary.AppendUvarint(key, uint64(w))
				covered = covered || covers[w].has(q)
			}
		}
		if !covered {
			t.urgent = append(t.urgent, t.job(m, covers, works, q))
			continue
		}
		if _, ok := same[string(key)]; !ok {
			same[string(key)] = t.job(m, covers, works, -1)
		}
		t.urgent = append(t.urgent, same[string(key)])
	}
}

// job is a docking that does these works, and renews one part whatever they cover.
func (t *terms) job(m *Model, covers []set, works []int, part int) job {
	j := job{works: works, parts: newSet(len(m.Parts)), whole: len(works) == len(t.scope)}
	if part >= 0 {
		j.parts.add(part)
	}
	for _, w := range works {
		j.days += m.Works[w].Days
		j.parts.join(covers[w])
	}
	for i := range t.rows {
		if t.rows[i].any(j.parts) {
			j.rows = append(j.rows, i)
		}
	}
	for q := range j.parts.all() {
		if !t.parts[q].heard {
			j.parts.drop(q)
		}
	}
	return j
}
