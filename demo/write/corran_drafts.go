package main

import (
	"fmt"
	"math"
	"time"

	"oakum/demo/invent"
	"oakum/formula/hullform"
	"oakum/formula/seawater"
	"oakum/quantity"
	"oakum/ship"
)

// corranWater is the truth of the water that got in: m3 in a tank at a time. It begins about 2017.
func corranWater(tank string, year float64) float64 {
	since := max(0, year-2017.1)
	switch tank {
	case "tank-3p":
		return 2 + 1.5*since
	case "tank-3s":
		return 2 + 1.35*since
	case "tank-5":
		return 1 + 1.45*since
	case "tank-ap":
		return 1 + 0.72*since
	case "tank-2p", "tank-2s":
		return 45.6
	}
	return 0
}

var corranWetTanks = map[string]hullform.Point{"tank-3p": {X: 54.9, Y: 2.8, Z: 0.2}, "tank-3s": {X: 54.9, Y: -2.8, Z: 0.2}, "tank-5": {X: 75.2, Z: 0.35}, "tank-ap": {X: 4.1, Z: 1}}

// corranLoad is what she truly weighs at a time: the register as it stood, weed as it grew, the water in the tanks, and the damp that nobody found.
func corranLoad(v *vessel, when quantity.Date) hullform.Loading {
	year := when.DecimalYear()
	var m, mx, my, mz float64
	add := func(t, x, y, z float64) { m, mx, my, mz = m+t, mx+t*x, my+t*y, mz+t*z }
	for _, w := range made[ship.Weight](v) {
		if w.Group == "growth" || !w.Added.IsZero() && when.Before(w.Added) {
			continue
		}
		add(*w.Mass/1000, *w.LCG, *w.TCG, *w.VCG)
	}
	add(min(21, 0.79*max(0, year-1996.8)), 45, 0, 2.4)
	for _, tank := range invent.Sorted(corranWetTanks) {
		p := corranWetTanks[tank]
		add(1.012*corranWater(tank, year), p.X, p.Y, p.Z)
	}
	add(1.6*max(0, year-2017.1), 44, 0, 3)
	return hullform.Loading{Mass: m * 1000, LCG: mx / m, TCG: my / m, VCG: mz / m, FreeSurface: 180e3}
}

// season is the water at Harl Quay through the year: warm in August, fresh in February.
func season(t time.Time) (temperature, salinity float64) {
	turn := 2 * math.Pi * float64(t.YearDay()) / 365
	return 11.5 - 7*math.Cos(turn-0.62), 18 - 3.2*math.Cos(turn-0.55)
}

// corranDrafts makes the log of drafts, month by month since 2002, with the gaps and slips of a log.
func corranDrafts(v *vessel) error {
	c := invent.NewChance(seed, "drafts")
	if _, err := v.Records(); err != nil {
		return err
	}
	number := 0
	for at := time.Date(2002, 1, 6, 0, 0, 0, 0, time.UTC); at.Year() < 2026 || at.Month() <= 10; at = at.AddDate(0, 1, 0) {
		when := day(at.Year(), int(at.Month()), 1+int(c.Between(2, 27)))
		lost := c.Float64() < 0.10 || at.Year() == 2020 && at.Month() >= 3 && at.Month() <= 8
		temperature, salinity := season(when.Time())
		temperature, salinity = invent.Round(temperature+c.Normal(0, 0.8), 1), invent.Round(min(22, max(14, salinity+c.Normal(0, 0.9))), 1)
		noise := [6]float64{}
		for i := range noise {
			noise[i] = c.Normal(0, 0.013)
		}
		slip, water := c.Float64(), c.Float64()
		if lost {
			continue
		}
		load := corranLoad(v, when)
		load.Density = seawater.RhoSurface(salinity, temperature)
		f, err := v.hull.Equilibrium(load)
		if err != nil {
			return fmt.Errorf("afloat on %s: %w", when, err)
		}
		number++
		values := v.marksRead(f, noise)
		values["date"], values["sd"], values["measure"], values["afloat"] = when.String(), 0.02, "draft", "yes"
		values["water"] = map[bool]string{true: "calm", false: "ripple"}[water < 0.6]
		values["who"] = []string{"keeper H", "keeper M", "volunteers' watch"}[number%3]
		values["occasion"], values["basis"], values["basis_note"], values["mark"] = "log", "measured", "draft figures by eye from a boat", "board"
		if at.Year() > 2007 || water < 0.9 {
			values["salinity"], values["temperature"] = salinity, temperature
		}
		v.slip(values, slip)
		v.Add("draft", fmt.Sprintf("draft-%03d", number), values)
	}
	return v.Err()
}

// marksRead is what the six figures show: the water at each mark, a hog of 35 mm, and the noise of reading.
func (v *vessel) marksRead(f hullform.Floating, noise [6]float64) invent.Values {
	out := invent.Values{}
	marks := []struct {
		key  string
		x, y float64
		hog  float64
	}{{"fwd", 88.9, 1, 0.026}, {"mid", 46, 6.7, -0.009}, {"aft", 1.6, 1.2, 0.026}}
	for i, m := range marks {
		on := f.Draft - (m.x-v.lines.Length/2)*f.Trim/v.lines.Length + m.hog
		lean := m.y * math.Tan(f.Heel)
		out[m.key+"_port"] = invent.Round(on+lean+noise[2*i], 2)
		out[m.key+"_starboard"] = invent.Round(on-lean+noise[2*i+1], 2)
	}
	return out
}

// slip makes the mistakes of a log: marks hidden by a boat, a decimetre misread, a keeper who only reads ahead and astern.
func (v *vessel) slip(values invent.Values, u float64) {
	switch {
	case u < 0.02:
		values["mid_port"] = invent.Round(values["mid_port"].(float64)+0.1, 2)
		values["notes"] = "wash from the ferry"
	case u < 0.05:
		delete(values, "mid_starboard")
		values["notes"] = "pontoon alongside: starboard marks hidden"
	case u < 0.09:
		delete(values, "mid_port")
		delete(values, "mid_starboard")
	}
}
