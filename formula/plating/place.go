package plating

import (
	"cmp"
	"math"
	"slices"

	"oakum/quantity"
)

// Place is what the readings of one place say.
type Place struct {
	Place     string   `key:"place" label:"place"`
	Group     string   `key:"group" label:"group"`
	Thickness float64  `key:"thickness" unit:"mm" label:"thickness at the newest survey, bias taken off"`
	SD        float64  `key:"sd" unit:"mm" label:"standard deviation of that"`
	Least     float64  `key:"least" unit:"mm" label:"least reading of the newest survey"`
	Loss      float64  `key:"loss" unit:"mm" label:"loss; negative where the plate reads thicker than the original"`
	RateLong  *float64 `key:"rate_long" unit:"mm/y" label:"rate since built"`
	RateShort *float64 `key:"rate_short" unit:"mm/y" label:"rate between the two newest surveys"`
	Rate      *float64 `key:"rate" unit:"mm/y" label:"the higher of the two"`
	RateSD    *float64 `key:"rate_sd" unit:"mm/y" label:"standard deviation of the rate"`
	Life      *float64 `key:"life" unit:"y" label:"years to the limit"`
	LifeP10   *float64 `key:"life_p10" unit:"y" label:"years by which one in ten such places is below the limit"`
	LifeP90   *float64 `key:"life_p90" unit:"y" label:"years by which nine in ten are"`
	Below     float64  `key:"below_now" label:"chance of being below the limit at the newest survey"`
	Verdict   string   `key:"verdict" enum:"sound|watch|renew|refer" label:"verdict"`

	original, before         float64 // m
	yearsLong, yearsShort    float64
	longBasis                bool // the long rate is the higher
	date, dateBefore, origin quantity.Date
	doubts                   []string
}

// rated is a rate with its standard deviation and the covariance with the newest thickness, m/y and m2/y.
type rated struct{ r, sd, cov float64 }

// between is the rate from a thickness t0 (standard deviation s0) years before to t1 (s1), the span known to sy years.
func between(t0, s0, t1, s1, years, sy float64) rated {
	r := (t0 - t1) / years
	return rated{r, math.Hypot(math.Hypot(s0, s1), r*sy) / years, -s1 * s1 / years}
}

// judge works out one place from its readings, sorted by date.
func judge(in RateIn, readings []Reading) Place {
	visits := surveys(readings)
	last := visits[len(visits)-1]
	p := Place{Place: readings[0].Place, Group: readings[0].Group, Thickness: last.thickness, SD: last.sd, Least: last.least, date: last.date, doubts: last.doubts}
	origin, sd0 := in.origin(visits[0])
	p.original, p.origin = origin.thickness, origin.date
	p.Loss = p.original - p.Thickness
	g := margin{m: p.Thickness - in.Limit, s: p.SD}
	var best *rated
	if years := span(origin.date, last.date); !origin.date.IsZero() && years > sameVisit {
		p.yearsLong, p.longBasis = years, true
		best = new(between(p.original, sd0, p.Thickness, p.SD, years, dateSD(origin.date, last.date)))
		p.RateLong = new(best.r)
	}
	if len(visits) > 1 {
		b := visits[len(visits)-2]
		p.before, p.dateBefore, p.yearsShort = b.thickness, b.date, span(b.date, last.date)
		short := between(b.thickness, b.sd, p.Thickness, p.SD, p.yearsShort, dateSD(b.date, last.date))
		p.RateShort = new(short.r)
		if best == nil || short.r > best.r {
			best, p.longBasis = &short, false
		}
		p.doubts = append(p.doubts, b.doubts...)
	}
	if best != nil {
		g.r, g.sr, g.c = best.r, best.sd, best.cov
		p.Rate, p.RateSD = new(best.r), new(best.sd)
		p.LifeP10, p.LifeP90 = g.life()
		if best.r > 0 {
			p.Life = new(max(g.m, 0) / best.r)
		}
	}
	p.Below = g.belowNow()
	p.Verdict = in.verdict(p)
	return p
}

// origin is the thickness that loss is counted from, with its date, and its standard deviation.
func (in RateIn) origin(first survey) (survey, float64) {
	if in.Original == nil {
		return first, first.sd
	}
	o := survey{thickness: *in.Original}
	switch {
	case in.OriginalDate != nil:
		o.date = *in.OriginalDate
	case in.Built != nil:
		o.date = *in.Built
	}
	return o, in.OriginalSD
}

// certain is the chance of being below the limit from which a plate is called thin, not doubtful.
const certain = 0.95

func (in RateIn) verdict(p Place) string {
	suspect := p.original - 0.75*(p.original-in.Limit)
	switch {
	case p.Thickness < in.Limit && p.Below >= certain:
		return "renew"
	case p.Thickness < in.Limit, p.Least < in.Limit:
		return "refer"
	case p.Thickness < suspect, p.Below > 0.1, len(p.doubts) > 0:
		return "watch"
	case p.Rate == nil:
		return "watch"
	case p.LifeP10 != nil && *p.LifeP10 < in.Horizon:
		return "watch"
	}
	return "sound"
}

var severity = map[string]int{"sound": 0, "watch": 1, "refer": 2, "renew": 3}

// worse orders places, the one to look at first in front: those below the limit, then by years left, then by thickness.
func worse(a, b Place) int {
	return cmp.Or(
		cmp.Compare(max(severity[b.Verdict], 1), max(severity[a.Verdict], 1)),
		cmp.Compare(yearsOr(a.Life), yearsOr(b.Life)),
		cmp.Compare(a.Thickness, b.Thickness),
		cmp.Compare(a.Place, b.Place),
	)
}

// worstVerdict is the verdict on all places together.
func worstVerdict(all []Place) string {
	v := all[0].Verdict
	for _, p := range all {
		if severity[p.Verdict] > severity[v] {
			v = p.Verdict
		}
	}
	return v
}

func yearsOr(life *float64) float64 {
	if life == nil {
		return math.Inf(1)
	}
	return *life
}

// places judges each place, the worst first.
func places(in RateIn) []Place {
	by := map[string][]Reading{}
	for _, r := range in.Readings {
		by[r.Place] = append(by[r.Place], r)
	}
	out := make([]Place, 0, len(by))
	for _, rs := range by {
		slices.SortStableFunc(rs, func(a, b Reading) int { return cmp.Compare(a.Date.DecimalYear(), b.Date.DecimalYear()) })
		out = append(out, judge(in, rs))
	}
	slices.SortFunc(out, worse)
	return out
}
