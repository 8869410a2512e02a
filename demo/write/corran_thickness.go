package main

import (
	"fmt"
	"math"

	"oakum/demo/invent"
	"oakum/ship"
)

// gauging is one reading of a made-up survey.
type gauging struct {
	frame  float64
	strake string
	side   ship.Side
	plate  sheet
	value  float64 // mm, as the gauge showed it
	result string
	remark string
	pit    float64 // mm
	from   string
	second float64 // mm, a second reading of the same place, 0 where there was none
}

// wasted is the truth behind the readings: how much of a place is gone at a time, mm. Slow until 1974, then by what she lies in; faster in the
// years in which the impressed set stood dead, and without a break behind the doublers of 1988.
func (v *vessel) wasted(p sheet, frame, year float64) float64 {
	place := invent.NewChance(seed, fmt.Sprintf("place %s %.0f", p.id, frame))
	plate := invent.NewChance(seed, "waste "+p.id)
	factor := math.Exp(plate.Normal(0, 0.18)) * math.Exp(place.Normal(0, 0.2))
	old, calm, dead := 0.011, 0.010, 0.055 // mm/y: to 1996, since then, and while the set stood dead
	switch p.zone {
	case "zone-waterline":
		old, calm, dead = 0.023, 0.030, 0.095
	case "zone-topside":
		old, calm, dead = 0.007, 0.006, 0.006
	case "zone-keel":
		old, calm, dead = 0.010, 0.008, 0.045
	}
	if p.belt == "bilge" {
		old += 0.004
		calm += 0.006 // bilge water inside
	}
	if frame < 20 && p.zone != "zone-topside" {
		dead *= 1.6 // near the bronze of the propellers
	}
	if v.doubled(p, frame) {
		calm, dead = 0.045, 0.05
	}
	loss := old * (min(year, 1996.8) - 1931.4)
	if year > 1996.8 {
		loss += calm * (year - 1996.8)
	}
	loss += (dead - calm) * min(max(0, year-2019.05), 2.35)
	return loss * factor
}

// doubled tells whether a place lies under a doubler.
func (v *vessel) doubled(p sheet, frame float64) bool {
	return p.strake == doublerStrake && (frame >= 28 && frame <= 52 || frame >= 60 && frame <= 84 || frame >= 96 && frame <= 112)
}

// gauge reads one place in a year with what a gauge does: scatter, now and then a rough or pitted spot, a double echo through paint.
func (v *vessel) gauge(c invent.Chance, g gauging, year, bias, sd float64) gauging {
	truth := g.plate.rolled - v.wasted(g.plate, g.frame, year)
	g.value = truth + bias + c.Normal(0, sd)
	g.result = "read"
	switch u := c.Float64(); {
	case u < 0.012:
		g.result, g.value = "no echo", 0
	case u < 0.030:
		g.remark, g.pit = "pit", invent.Round(c.Between(0.8, 3.2), 1)
		g.value = truth - g.pit
	case u < 0.040:
		g.value += c.Between(0.9, 2.0)
		g.remark = "scale"
	case u < 0.055:
		g.second = g.value + c.Normal(0, 0.15)
	}
	if v.doubled(g.plate, g.frame) && g.result == "read" {
		g.value, g.remark, g.pit, g.second = 8-0.012*(year-1988.3)+c.Normal(0, 0.1), "doubler", 0, 0
	}
	return g
}

// corranThickness makes the three surveys as records, and keeps the readings for the files as they came in.
func corranThickness(v *vessel) error {
	for _, s := range []campaign{survey1996(v), survey2011(v), survey2023(v)} {
		for i, g := range s.readings {
			v.Add("thickness", fmt.Sprintf("t%d-%03d", s.year, i+1), s.values(i, g))
			if s.typed != nil && g.result == "read" {
				v.keepTyped("thickness", s.typed(g))
			}
		}
	}
	return nil
}

// a campaign is one survey: what stood in its heading, and its readings.
type campaign struct {
	year     int
	date     string
	name     string
	common   invent.Values
	readings []gauging
	number   func(i int) string
	plate    func(g gauging) string
	show     func(mm float64) float64 // as the gauge showed it, back in mm
	typed    func(g gauging) string
}

func (s campaign) values(i int, g gauging) invent.Values {
	out := invent.Values{
		"date": s.date, "survey": s.name, "number": s.number(i), "frame": frameName(g.frame), "strake": g.strake, "side": string(g.side),
		"plate": s.plate(g), "result": g.result, "basis": "measured", "basis_note": "ultrasonic gauge", "mark": "board",
	}
	for k, x := range s.common {
		out[k] = x
	}
	if g.result == "read" {
		out["thickness"] = s.show(g.value)
	}
	if g.second > 0 {
		a, b := s.show(g.value), s.show(g.second)
		out["thickness"], out["readings"] = min(a, b), []float64{a, b}
	}
	if g.remark != "" {
		out["remark"] = g.remark
	}
	if g.remark == "doubler" {
		out["original"] = 8 // what was gauged is the doubler, not the hull
	}
	if g.pit > 0 {
		out["pit_depth"] = g.pit
	}
	return out
}

func frameName(f float64) string {
	if f != math.Trunc(f) {
		return fmt.Sprintf("%.0f½", math.Trunc(f))
	}
	return fmt.Sprintf("%.0f", f)
}

// places lists plates along belts of frames, in the order in which a man with a gauge walks.
func (v *vessel) places(frames []float64, strakes []string, sides []ship.Side) []gauging {
	var out []gauging
	for _, f := range frames {
		for _, s := range strakes {
			for _, side := range sides {
				if s == "K" {
					if side != sides[0] {
						continue
					}
					side = ship.Centre
				}
				if p, ok := v.plateAt(f, s, side); ok {
					out = append(out, gauging{frame: f, strake: s, side: side, plate: p})
				}
			}
		}
	}
	return out
}

// every gives frames from low to high.
func every(low, high, step float64) []float64 {
	var out []float64
	for f := low; f <= high; f += step {
		out = append(out, f)
	}
	return out
}

// thin drops readings evenly until n are left.
func thin(list []gauging, n int) []gauging {
	if len(list) <= n {
		return list
	}
	out := make([]gauging, 0, n)
	for i := range n {
		out = append(out, list[i*len(list)/n])
	}
	return out
}

var bothSides = []ship.Side{ship.Port, ship.Starboard}
