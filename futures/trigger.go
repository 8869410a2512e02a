package futures

import "math/bits"

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
		if r.tell != nil {
			r.say(at, "trigger: "+t.Name, -1)
		}
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
		thin, spare := r.thin(i, at)
		if t.Mean {
			return spare >= 0
		}
		return t.Worse && thin >= t.Least || !t.Worse && thin <= t.Least
	}
	n := r.past(r.t.found[i], at+1)
	return t.Worse && n >= t.Count || !t.Worse && n <= t.Count
}

// past counts the parts of a set that are patched, failed, or fail before year at.
func (r *runner) past(of set, at float64) (n int) {
	for i, w := range of {
		n += bits.OnesCount64(w & r.wet[i])
		for w &= r.fails.dated[i] &^ r.wet[i]; w != 0; w &= w - 1 {
			if r.fails.at[i<<6+bits.TrailingZeros64(w)] < at {
				n++
			}
		}
	}
	return n
}

// thin is the weight of the plates of a trigger that are under their limits in year at, and the sum of what all have over theirs.
func (r *runner) thin(trigger int, at float64) (sum, spare float64) {
	for z := range r.gone {
		r.gone[z] = worn(at, r.rate[z], r.m.Zones[z].Bare, r.dead[z], r.mend[z])
	}
	gauges := r.plan.Triggers[trigger].Gauges
	for i, place := range r.t.gauges[trigger] {
		g := &gauges[i]
		over := g.Thickness + g.SD*r.score[place] - r.gone[g.Zone]*g.Factor - g.Limit
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
