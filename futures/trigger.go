package futures

// gaugeDraw numbers the draws of plates that the model does without, out of the way of those of its parts.
const gaugeDraw = 1 << 14

// triggers looks at what the dry dock shows and lights what was agreed.
func (r *runner) triggers(at float64, o *Outcome, first bool) (money, days float64) {
	for i := range r.plan.Triggers {
		t := &r.plan.Triggers[i]
		if !r.lit(i, at, first) {
			continue
		}
		money += t.Money
		days += t.Days
		if first {
			o.Fired |= 1 << min(i, 31)
		}
		r.say(at, "trigger: "+t.Name, -1)
	}
	return money, days
}

// lit tells whether a docking in year at shows what a trigger was agreed for: parts of it failed, patched, or within a year of failing, or plates too thin.
func (r *runner) lit(i int, at float64, first bool) bool {
	t := &r.plan.Triggers[i]
	if len(t.Gauges) > 0 {
		if !first {
			return false // what the first docking renewed is not gauged against the old limit again
		}
		thin, spare := r.thin(t, at)
		if t.Mean {
			return spare >= 0
		}
		return t.Worse && thin >= t.Least || !t.Worse && thin <= t.Least
	}
	n := 0
	for _, p := range r.terms.found[i] {
		if r.wet[p] || r.fails.at[p] < at+1 {
			n++
		}
	}
	return t.Worse && n >= t.Count || !t.Worse && n <= t.Count
}

// thin is the weight of the plates of a trigger that are under their limits in year at, and the sum of what all have over theirs.
func (r *runner) thin(t *Trigger, at float64) (sum, spare float64) {
	for i := range t.Gauges {
		g := &t.Gauges[i]
		v := gaugeDraw + g.Draw
		if g.Part >= 0 {
			v = g.Part
		}
		_, u := r.s.uniforms(r.vars.plates, v, 2)
		zone := &r.m.Zones[g.Zone]
		over := g.Thickness + g.SD*normal(u) - worn(at, r.rate[g.Zone]*g.Factor, zone.Bare, r.dead[g.Zone], r.mend[g.Zone]) - g.Limit
		spare += over
		if over < 0 {
			sum += g.Weight
		}
	}
	return sum, spare
}

// worn is the steel lost by year at in a zone whose protection is dead from dead to mended: through turned round.
func worn(at, rate, bare, dead, mended float64) float64 {
	unguarded := max(min(at, mended)-min(at, dead), 0)
	return rate * (at + (bare-1)*unguarded)
}

// counts are the parts that a trigger looks at; none where it reads plates.
func (t *Trigger) counts(m *Model) (list []int) {
	if t.Parts != nil || len(t.Gauges) > 0 {
		return t.Parts
	}
	for i := range m.Parts {
		if m.Parts[i].Group == t.Group {
			list = append(list, i)
		}
	}
	return list
}
