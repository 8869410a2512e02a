package tow

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// WaveShare is one line of a wave table: how much of the time the sea is higher.
type WaveShare struct {
	Wave float64 `key:"wave" unit:"m" symbol:"h" over:"0" max:"20" label:"significant wave height"`
	Over float64 `key:"over" unit:"%" symbol:"o" over:"0" under:"100" label:"part of the time in which it is higher"`
}

// WeatherIn is a sea, and the calm that a tow needs in it.
type WeatherIn struct {
	Waves  []WaveShare `key:"waves" symbol:"wv" optional:"yes" most:"100" label:"wave table of the site for those months" help:"from a pilot, a harbour or a wave hindcast; two lines or more"`
	Floor  float64     `key:"floor" unit:"m" symbol:"xg" default:"0" min:"0" max:"10" label:"least sea, without a table"`
	Scale  *float64    `key:"scale" unit:"m" symbol:"bg" over:"0" max:"20" label:"scale of the sea, without a table"`
	Shape  *float64    `key:"shape" symbol:"kg" over:"0.3" max:"10" label:"shape of the sea, without a table"`
	Limit  float64     `key:"limit" unit:"m" symbol:"H" over:"0" max:"20" label:"significant wave height up to which she may be towed"`
	Needed float64     `key:"needed" unit:"h" symbol:"T" over:"0" max:"1000" label:"hours of calm wanted" help:"the passage and a margin for delay: as long again is common practice in marine operations, from memory"`
	Booked *float64    `key:"booked" unit:"d" symbol:"D" over:"0" max:"1000" label:"days within which she must leave"`
}

// WeatherOut is how often the sea lets her go.
type WeatherOut struct {
	Floor  float64  `key:"floor_used" unit:"m" symbol:"x0" label:"least sea"`
	Scale  float64  `key:"scale_used" unit:"m" symbol:"b" label:"scale of the sea"`
	Shape  float64  `key:"shape_used" symbol:"k" label:"shape of the sea"`
	Fit    float64  `key:"misfit" unit:"%" symbol:"mf" label:"most that the fitted sea and the table differ, of the time"`
	Mean   float64  `key:"mean_wave" unit:"m" symbol:"Hm" label:"mean significant wave height" expr:"b*gamma(1+1/k)+x0"`
	Below  float64  `key:"below" unit:"%" symbol:"B" label:"part of the time in which the sea is low enough" expr:"1-exp(-((H-x0)/b)^k)"`
	Spread float64  `key:"spread" symbol:"gm" label:"spread of the sea" expr:"k+1.8*x0/(Hm-x0)"`
	Calm   float64  `key:"calm" unit:"h" symbol:"tau" label:"mean length of a calm" expr:"126000/sqrt(gm)*B/((1-B)*(-ln(1-B))^(0.6*gm^0.287))"`
	Rough  float64  `key:"rough" unit:"h" symbol:"rough" label:"mean time between calms" expr:"tau*(1-B)/B"`
	Alpha  float64  `key:"calm_shape" symbol:"al" label:"shape of the lengths of calms" expr:"0.267*gm*(H/Hm)^(-0.4)"`
	Lasts  float64  `key:"lasts" unit:"%" symbol:"q" label:"calms that last as long as wanted" expr:"exp(-gamma(1+1/al)^al*(T/tau)^al)"`
	AtOnce float64  `key:"at_once" unit:"%" symbol:"p0" label:"chance that she can go at once"`
	Wait   float64  `key:"wait" unit:"d" symbol:"w" label:"mean wait until she can go"`
	Chance *float64 `key:"chance" unit:"%" symbol:"pD" label:"chance that she can go within the days booked" expr:"1-(1-p0)*exp(-D*(1-p0)/w)"`

	Warnings calc.Warnings `key:"-"`
}

// Weather is how often, and for how long, the sea is low enough for a tow.
//
// The wave heights H of the site and the months follow 1 - exp(-((H-x0)/b)^k), fitted to the wave table as a straight line in ln(H-x0) with the floor x0 that
// fits best. Calms under the limit last tau = A B/((1-B) (-ln(1-B))^beta) on average, A = 35 h/sqrt(gm), beta = 0.6 gm^0.287, gm = k + 1.8 x0/(Hm-x0); a share
// exp(-C (T/tau)^al) of them lasts T or more, al = 0.267 gm (H/Hm)^-0.4, C = gamma(1+1/al)^al: Kuwashima and Hogben, Coastal Engineering 9 (1986) 563, as
// EquiMar D7.4.1 prints them. Waiting follows from that as in an alternating renewal process: calms and rough times by turns, the rough ones without memory,
// and she goes at the first moment from which calm enough lies ahead, which a forecast is taken to tell. The chance within the days booked takes the wait, where there is any, as exponential.
var Weather = calc.Formula[WeatherIn, WeatherOut]{
	ID:       "tow.weather",
	Title:    "How often the sea lets her go",
	About:    "The part of the time in which the waves are within the limit of a tow, how long such calms last, the wait for one that is long enough, and the chance of it within the days booked.",
	Holds:    "Open and coastal water whose wave table is known for the months asked; the fit was made on North Sea records. Waves only: wind, fog and swell across a bar are not in it.",
	Accuracy: "The share of time is as good as the table. Lengths of calms about 20 to 30 %. The chance within the days booked within 0.05 of a simulation of the same calms. One year may differ much from the mean of years.",
	Sources: []source.Ref{{Key: "kuwashima-hogben", At: "pages 563 to 590"}, {Key: "equimar-access", At: "section on persistence"}, {Key: "resourcecode", At: "acceptance test of weather windows, January"},
		{Key: "memory", At: "margin as long as the passage"}},
	Cautions: []calc.Caution{calc.Towing},
	Fn:       weather,
	Steps:    weatherSteps,
}

func weatherSteps(in WeatherIn, out WeatherOut) []calc.Step {
	how := "as given"
	if len(in.Waves) > 0 {
		how = "straight line through ln(-ln(over)) against ln(h-x0), by least squares"
	}
	return []calc.Step{
		{Symbol: "x0", Value: out.Floor, Unit: "m", Text: how + ", the floor that fits best"}, {Symbol: "b", Value: out.Scale, Unit: "m", Text: how}, {Symbol: "k", Value: out.Shape, Unit: "-", Text: how},
		{Symbol: "mf", Value: out.Fit, Unit: "-", Text: "largest difference between the table and the fitted share of time"},
		{Symbol: "p0", Value: out.AtOnce, Unit: "-", Text: "share of time below the limit, times the chance that so much of the calm is still to come: integral of the lasting calms from T on, over tau"},
		{Symbol: "w", Value: out.Wait, Unit: "s", Text: "mean over calm and rough moments of the time to the first calm that lasts T"},
	}
}

// sea is a three-parameter Weibull distribution of significant wave heights.
type sea struct{ floor, scale, shape float64 }

// over is the share of the time in which waves are higher than h; never so little that a calm would have no end.
func (s sea) over(h float64) float64 {
	return math.Max(math.Exp(-math.Pow(math.Max(h-s.floor, 0)/s.scale, s.shape)), 1e-9)
}

func (s sea) mean() float64 { return s.scale*math.Gamma(1+1/s.shape) + s.floor }

func (s sea) spread() float64 { return s.shape + 1.8*s.floor/(s.mean()-s.floor) }

// calm is the mean length of a calm under h, seconds.
func (s sea) calm(h float64) float64 {
	p, gm := s.over(h), s.spread()
	return 35 * 3600 / math.Sqrt(gm) * (1 - p) / (p * math.Pow(-math.Log(p), 0.6*math.Pow(gm, 0.287)))
}

// calms are the lengths of calms: a Weibull distribution of mean tau.
type calms struct{ tau, shape, c float64 }

func (s sea) calms(h, tau float64) calms {
	al := 0.267 * s.spread() * math.Pow(h/s.mean(), -0.4)
	return calms{tau, al, math.Pow(math.Gamma(1+1/al), al)}
}

// last is the share of calms that last t or more.
func (c calms) last(t float64) float64 { return math.Exp(-c.c * math.Pow(t/c.tau, c.shape)) }

// within integrates the share that lasts, and the same times the time, from 0 to t, by Simpson's rule in the square of the variable: the share falls steeply at first.
func (c calms) within(t float64) (area, moment float64) {
	const n = 400
	h := math.Sqrt(t) / n
	for i := range n + 1 {
		u := float64(i) * h
		weight := 2 * u * h / 3 // dt = 2u du
		switch {
		case i == 0 || i == n:
		case i%2 == 1:
			weight *= 4
		default:
			weight *= 2
		}
		s := c.last(u*u) * weight
		area += s
		moment += u * u * s
	}
	return area, moment
}

// wait is the chance that a calm of t lies ahead at a moment taken at random, and the mean time until one does, rough times lasting rough on average.
//
// From the beginning of a rough time it is W = (rough + mean of the calms too short, times their share)/q, q the share of calms that last. A moment lies in
// a rough time, or in a calm of which a remainder r is left with the density last(r)/tau.
func (c calms) wait(t, rough float64) (atOnce, mean float64) {
	q := c.last(t)
	area, moment := c.within(t)
	fromRough := (rough + area - t*q) / q
	calm := c.tau / (c.tau + rough)
	short := math.Min(area/c.tau, 1) // the calm ends too soon
	return calm * (1 - short), (1-calm)*fromRough + calm*(moment/c.tau+short*fromRough)
}

func weather(in WeatherIn) (out WeatherOut, err error) {
	s, err := in.sea()
	if err != nil {
		return out, err
	}
	if in.Limit <= s.floor {
		return out, field.Refuse("limit", "the limit (%v) is not above the least sea of the table (%v): she could never go", field.Q("limit", in.Limit, "m"), field.Q("floor", s.floor, "m"))
	}
	out.Floor, out.Scale, out.Shape = s.floor, s.scale, s.shape
	for _, w := range in.Waves {
		out.Fit = math.Max(out.Fit, math.Abs(s.over(w.Wave)-w.Over))
	}
	out.Mean, out.Below, out.Spread, out.Calm = s.mean(), 1-s.over(in.Limit), s.spread(), s.calm(in.Limit)
	out.Rough = out.Calm * (1 - out.Below) / out.Below
	c := s.calms(in.Limit, out.Calm)
	out.Alpha, out.Lasts = c.shape, c.last(in.Needed)
	if out.Lasts < 1e-6 {
		return out, field.Refuse("needed", "fewer than one calm in a million below %v lasts %v: choose another season, a higher limit or a shorter passage", field.Q("limit", in.Limit, "m"), field.Q("needed", in.Needed, "h"))
	}
	out.AtOnce, out.Wait = c.wait(in.Needed, out.Rough)
	if in.Booked != nil {
		p := 1.0
		if out.AtOnce < 1 && out.Wait > 0 {
			p = 1 - (1-out.AtOnce)*math.Exp(-*in.Booked*(1-out.AtOnce)/out.Wait)
		}
		out.Chance = &p
	}
	if out.Fit > 0.05 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the fitted sea and the table differ by up to %.0f %% of the time: look at the table", 100*out.Fit))
	}
	if highest := in.highest(); highest > 0 && in.Limit > highest {
		out.Warnings = append(out.Warnings, "the limit lies above the highest wave of the table: the share of time is drawn on beyond it")
	}
	return out, nil
}

func (in WeatherIn) highest() (h float64) {
	for _, w := range in.Waves {
		h = math.Max(h, w.Wave)
	}
	return h
}

// sea is the distribution given, or that fitted to the table.
func (in WeatherIn) sea() (s sea, err error) {
	if len(in.Waves) == 0 {
		if in.Scale == nil || in.Shape == nil {
			return s, field.Refuse("waves", "enter the wave table of the site, or the scale and shape of its sea")
		}
		return sea{in.Floor, *in.Scale, *in.Shape}, nil
	}
	least := math.Inf(1)
	for i, w := range in.Waves {
		least = math.Min(least, w.Wave)
		for _, v := range in.Waves[:i] {
			if v.Wave == w.Wave || (v.Wave < w.Wave) != (v.Over > w.Over) {
				return s, field.Refuse("waves", "a higher wave must be exceeded less of the time: %v is exceeded %.3g %%, %v %.3g %%", field.Q("waves", v.Wave, "m"), 100*v.Over, field.Q("waves", w.Wave, "m"), 100*w.Over)
			}
		}
	}
	if len(in.Waves) < 2 {
		return s, field.Refuse("waves", "one wave height is no table: enter two lines or more")
	}
	best := -1.0
	for floor := 0.0; floor < 0.95*least; floor += 0.005 {
		if t, r2 := fitSea(in.Waves, floor); r2 > best+1e-9 {
			best, s = r2, t
		}
		if len(in.Waves) == 2 {
			break // two lines fit any floor
		}
	}
	return s, nil
}

// fitSea is the sea of that floor through a table, with the share of the variation that it explains.
func fitSea(waves []WaveShare, floor float64) (s sea, r2 float64) {
	var x, y, xx, xy, yy, n float64
	for _, w := range waves {
		a, b := math.Log(w.Wave-floor), math.Log(-math.Log(w.Over))
		x, y, xx, xy, yy, n = x+a, y+b, xx+a*a, xy+a*b, yy+b*b, n+1
	}
	sxx, sxy, syy := xx-x*x/n, xy-x*y/n, yy-y*y/n
	k := sxy / sxx
	return sea{floor, math.Exp((x - y/k) / n), k}, sxy * sxy / (sxx * syy)
}
