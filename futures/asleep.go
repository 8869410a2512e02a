package futures

import "math"

// sleep is the lives that outlast the next planned docking by a year (triggers look that far), and so need no date yet: most do, most are renewed there,
// and a date costs two tables. What the docking leaves as it was is looked at again, and so is everything when the docking moves. The date
// comes from the same draw, so that sleeping changes no future.
type sleep struct {
	parts set
	life  []*life   // by part: its life; nil for a plate that wears through
	from  []float64 // since when
	word  []uint64  // the draw

	renewed []batch
	none    bool // no life sleeps: for the test that sleep changes nothing
}

// batch is what sleeps of the parts renewed together in one docking. Nothing is kept of their draws, which are there to be drawn again.
type batch struct {
	job   *job
	parts set
	from  float64
	use   int
}

func newSleep(parts int) sleep {
	return sleep{parts: newSet(parts), life: make([]*life, parts), from: make([]float64, parts), word: make([]uint64, parts)}
}

func (s *sleep) clear() {
	clear(s.parts)
	s.renewed = s.renewed[:0]
}

// batch adds one, in the place of an earlier future's where there is one.
func (s *sleep) batch(parts set) *batch {
	if n := len(s.renewed); n < cap(s.renewed) {
		s.renewed = s.renewed[:n+1]
	} else {
		s.renewed = append(s.renewed, batch{})
	}
	b := &s.renewed[len(s.renewed)-1]
	b.parts = append(b.parts[:0], parts...)
	return b
}

// whole is a time in whole years, up; a rounding error over them counts for nothing.
func whole(years float64) int { return int(math.Ceil(max(years-1e-9, 0))) }

// live gives a part its life: a date to fail, or sleep until after the next docking.
func (r *runner) live(p int, from float64, w uint64, l *life) {
	s := &r.sleep
	until := r.wakes
	if r.t.parts[p].stays {
		until = r.m.Years + 1
	}
	if w <= l.spare[whole(until-from)] && !s.none {
		s.parts.add(p)
		s.life[p], s.from[p], s.word[p] = l, from, w
		return
	}
	r.date(p, from+l.left(w))
}

// wear is live for a plate that wears through.
func (r *runner) wear(p int) {
	w := r.m.Parts[p].Wastage
	z, left := w.Zone, w.Left+w.LeftSD*r.score[p]
	if left > r.gone[z]*w.Factor && !r.sleep.none {
		r.sleep.parts.add(p)
		r.sleep.life[p] = nil
		return
	}
	r.date(p, through(left, r.rate[z]*w.Factor, r.m.Zones[z].Bare, r.dead[z], r.mend[z]))
}

// date gives a part its next failure. One that lets no water in changes nothing when it comes, so it is an event only where a story is told.
func (r *runner) date(p int, at float64) {
	r.fails.set(p, at, r.t.parts[p].floods || r.tell != nil)
}

// measure works out what wears away by the year that plates must outlast.
func (r *runner) measure() {
	for z := range r.gone {
		r.gone[z] = worn(r.wakes, r.rate[z], r.m.Zones[z].Bare, r.dead[z], r.mend[z])
	}
}

// wake looks again at the lives asleep, after the docking they were measured by has been or has moved.
func (r *runner) wake() {
	r.measure()
	s := &r.sleep
	for p := range s.parts.all() {
		s.parts.drop(p)
		if s.life[p] == nil {
			r.wear(p)
		} else {
			r.live(p, s.from[p], s.word[p], s.life[p])
		}
	}
	for i := range s.renewed {
		if b := &s.renewed[i]; !b.parts.empty() {
			r.rouse(b)
		}
	}
	s.renewed = s.renewed[:0]
}

// rouse looks again at what sleeps of a batch.
func (r *runner) rouse(b *batch) {
	var w eight
	for _, i := range b.job.rows {
		row := &r.t.rows[i]
		if !row.any(b.parts) {
			continue
		}
		r.s.row(&w, row.group, useRenewed, row.v, b.use<<16|row.n)
		for k, p := range row.part {
			if p >= 0 && b.parts.has(p) {
				r.live(p, b.from, w[k], r.t.parts[p].renewed)
			}
		}
	}
}

// any tells whether some part of a row is in a set.
func (w *row) any(of set) bool {
	for _, p := range w.part {
		if p >= 0 && of.has(p) {
			return true
		}
	}
	return false
}

// renew gives the parts of a job new lives in year at. Where the next planned docking has moved with it, whatever sleeps is looked at again first.
//
// Most of what is renewed outlasts the docking after. So a word is held against the least that doesn't, before anything else is made of it.
func (r *runner) renew(j *job, at float64, use int, moved bool) {
	r.wet.less(j.parts)
	r.fails.dated.less(j.parts)
	r.sleep.parts.less(j.parts)
	for i := range r.sleep.renewed {
		r.sleep.renewed[i].parts.less(j.parts)
	}
	if moved {
		r.wake()
	}
	b := r.sleep.batch(j.parts)
	b.job, b.from, b.use = j, at, use
	if r.sleep.none {
		r.rouse(b)
		clear(b.parts)
		return
	}
	var w eight
	limits := r.t.outlast[whole(r.wakes-at)]
	for _, i := range j.rows {
		row, limit := &r.t.rows[i], &limits[i]
		r.s.row(&w, row.group, useRenewed, row.v, use<<16|row.n)
		for k := range w {
			if w[k] <= limit[k] {
				continue
			}
			if p := row.part[k]; j.parts.has(p) {
				b.parts.drop(p)
				r.date(p, at+r.t.parts[p].renewed.left(w[k]))
			}
		}
	}
}
