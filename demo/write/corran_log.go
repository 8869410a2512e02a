package main

import (
	"fmt"
	"math"
	"time"

	"oakum/demo/invent"
	"oakum/ship"
)

// corranLog makes the logs of ordinary years: soundings, pumps, glands, valves, leaks, water, air and rounds.
func corranLog(v *vessel) error {
	v.soundings()
	v.pumpCounts()
	v.glandChecks()
	v.barrierChecks()
	v.weatherLog()
	v.rounds()
	v.Table("leak", `
		id | date | who | number | frame | strake | side | space | rate | head | source | part | cause | state | stopped | repair | work | notes
		leak-1 | 2009-10-28 | keeper H | L1 | 66 | B | port | Boiler room | 9 | 4.1 | rivet | | wasted butt | stopped | 2009-11 | repair-1 | work-steel |
		leak-2 | 2012-04-30 | keeper H | L2 | 74 | A | starboard | Engine room | 30 | 4.4 | valve | opening-08 | log tube valve seized half open | patched | | repair-3 | work-openings | weeps through the plug
		leak-3 | 2016-07-19 | keeper M | L3 | 97 | G | port | Boiler room | 2 | 0.2 | pipe | opening-31 | corroded flange | patched | | repair-2 | work-openings |
		leak-4 | 2018-11-06 | keeper M | L4 | 44 | G | starboard | Shaft alley | 0.6 | 0.3 | doubler | doubler-1s | fillet weld cracked | weeping | | | work-doublers |
		leak-5 | 2020-12-02 | keeper M | L5 | 12½ | | starboard | Shaft alley | 1.5 | 2.7 | gland | gland-starboard | packing hard; one stud wasted | weeping | | | work-glands |
		leak-6 | 2023-01-15 | keeper M | L6 | 12½ | | port | Shaft alley | 0.8 | 2.7 | gland | gland-port | packing hard | weeping | | | work-glands |
		leak-7 | 2022-06-20 | keeper M | L7 | 94 | B | port | Boiler room | | 4.3 | unknown | | water under the floor plates, source not found | unknown | | | |
	`, invent.Values{"basis": "measured", "basis_note": "bucket and watch", "mark": "board"})
	return v.Err()
}

// soundings are taken each quarter with a rod; the early ones in inches, some tubes not reached, the empty tanks said to be dry.
func (v *vessel) soundings() {
	c := invent.NewChance(seed, "soundings")
	tanks := map[string]ship.Tank{}
	records, _ := v.Records()
	var ids []string
	for _, r := range records {
		if t, ok := r.Body.(*ship.Tank); ok {
			tanks[r.ID] = *t
			ids = append(ids, r.ID)
		}
	}
	for at := time.Date(2002, 1, 1, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 3, 0) {
		if at.Year() == 2020 && at.Month() < 9 {
			continue
		}
		when := day(at.Year(), int(at.Month()), 1+int(c.Between(0, 26)))
		for _, id := range ids {
			values := invent.Values{"date": when.String(), "who": "volunteers' watch", "tank": id, "trim": 0.55, "basis": "measured", "basis_note": "rod", "mark": "board"}
			volume, u, slip := corranWater(id, when.DecimalYear()), c.Float64(), c.Normal(0, 0.006)
			typed := ""
			switch {
			case u < 0.07:
				values["result"] = "not opened"
			case volume == 0 && u < 0.8:
				values["result"] = "dry"
			case volume == 0:
				values["result"], values["notes"] = "damp", "rust on the rod"
			default:
				depth := max(0.01, sounded(tanks[id], volume)+slip)
				values["result"], values["sounding"], values["product"] = "measured", invent.Round(depth, 2), "brackish water"
				values["reference_height"] = *tanks[id].ReferenceHeight
				if at.Year() < 2006 {
					inches := math.Round(depth / 0.0254 * 2)
					values["sounding"], typed = inches/2*0.0254, halfInches(int(inches))
				}
			}
			v.Add("sounding", v.Next("sounding"), values)
			v.keepTyped("sounding", typed)
		}
	}
}

// halfInches writes a length as a man with a rod does: 5 1/2 in.
func halfInches(n int) string {
	if n%2 == 0 {
		return fmt.Sprintf("%d in", n/2)
	}
	if n == 1 {
		return "1/2 in"
	}
	return fmt.Sprintf("%d 1/2 in", n/2)
}

// keepTyped keeps the text of a field of the last record as it was typed.
func (v *vessel) keepTyped(key, text string) {
	records, err := v.Records()
	if n := len(records); err == nil && n > 0 && text != "" {
		records[n-1].Typed = map[string]string{key: text}
	}
}

// sounded is the sounding that a volume gives by the tank's own table, m.
func sounded(t ship.Tank, volume float64) float64 {
	for i := 1; i < len(t.TableVolume); i++ {
		if a, b := t.TableVolume[i-1], t.TableVolume[i]; volume <= b {
			return t.TableSounding[i-1] + (t.TableSounding[i]-t.TableSounding[i-1])*(volume-a)/(b-a)
		}
	}
	return t.TableSounding[len(t.TableSounding)-1]
}

// pumpCounts are read each month since the counter of No 1 pump was fitted in 2012.
func (v *vessel) pumpCounts() {
	c := invent.NewChance(seed, "pumps")
	meter := 0.0
	for at := time.Date(2012, 1, 1, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 1, 0) {
		year := float64(at.Year()) + float64(at.Month())/12
		starts := int((9 + 3.1*max(0, year-2017)) * math.Exp(c.Normal(0, 0.18)))
		hours := invent.Round(float64(starts)*c.Between(0.10, 0.14), 1)
		meter += hours
		if c.Float64() < 0.06 || at.Year() == 2020 && at.Month() > 2 && at.Month() < 8 {
			continue
		}
		v.Add("pump_count", v.Next("count"), invent.Values{
			"date": at.Format("2006-01-02"), "who": "keeper M", "pump": "pump-1", "starts": starts, "hours": hours, "hour_meter": invent.Round(meter, 1), "over": 30,
			"state": "works", "basis": "measured", "basis_note": "counter on the starter", "mark": "board",
		})
	}
	for year := 2014; year <= 2026; year += 2 {
		state, note := "works", "run for ten minutes"
		if year == 2020 {
			state, note = "not run", "nobody aboard"
		}
		v.Add("pump_count", v.Next("count"), invent.Values{"date": fmt.Sprintf("%d-04-15", min(year, 2025)), "pump": "pump-3", "starts": 1, "state": state, "notes": note, "mark": "board"})
	}
}

// glandChecks show the travel of the followers used up as the packing hardens.
func (v *vessel) glandChecks() {
	c := invent.NewChance(seed, "glands")
	for _, g := range []struct {
		id   string
		rate float64
		wet  int
	}{{"gland-port", 0.95, 2014}, {"gland-starboard", 1.22, 2011}} {
		for year := 2003; year <= 2026; year++ {
			if year == 2020 || year < 2010 && year%2 == 0 {
				continue
			}
			values := invent.Values{
				"date": fmt.Sprintf("%d-%02d-11", year, []int{3, 9}[year%2]), "who": "superintendent", "gland": g.id,
				"travel_left": invent.Round(45-g.rate*(float64(year)-1996.8)+c.Normal(0, 0.6), 0), "basis": "measured", "basis_note": "rule on the studs", "mark": "board",
			}
			drips := math.Round(max(0, float64(year-g.wet)*0.45+c.Normal(0, 0.8)))
			values["drips"] = drips
			values["state"] = map[bool]string{true: "dry", false: "dripping"}[drips == 0]
			if drips > 0 {
				values["wets_at"] = "bottom"
			}
			v.Add("gland_check", v.Next("gland-check"), values)
		}
	}
}

// barrierChecks are the walk of 2022 through every valve, and the trials of 2025.
func (v *vessel) barrierChecks() {
	records, _ := v.Records()
	for _, r := range records {
		b, ok := r.Body.(*ship.Barrier)
		if !ok || b.Type != "valve" || b.Grade == nil {
			continue
		}
		done := map[bool]string{true: "moved", false: "looked at"}[*b.Grade <= 3]
		v.Add("barrier_check", v.Next("barrier-check"), invent.Values{
			"date": "2022-05-14", "who": "superintendent", "barrier": r.ID, "done": done, "grade": *b.Grade, "left_as": "shut", "basis": "measured", "mark": "board",
		})
		if *b.Grade == 2 {
			v.Add("barrier_check", v.Next("barrier-check"), invent.Values{
				"date": "2025-04-09", "who": "superintendent", "barrier": r.ID, "done": "opened", "grade": 2, "left_as": "shut", "basis": "measured", "mark": "board",
			})
		}
	}
}

// weatherLog is the water she lies in, and the air below, month by month.
func (v *vessel) weatherLog() {
	c := invent.NewChance(seed, "water")
	for at := time.Date(2010, 1, 15, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 1, 0) {
		temperature, salinity := season(at)
		if c.Float64() < 0.1 {
			continue
		}
		v.Add("water", v.Next("water"), invent.Values{
			"date": at.Format("2006-01-02"), "who": "harbour office", "depth": 2, "temperature": invent.Round(temperature+c.Normal(0, 0.7), 1),
			"salinity": invent.Round(min(22, max(14, salinity+c.Normal(0, 0.8))), 1), "tide": []string{"high", "ebb", "low", "flood"}[c.IntN(4)],
			"instrument": "conductivity probe on the pontoon", "basis": "measured", "mark": "public",
		})
	}
	for at := time.Date(2024, 1, 10, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 1, 0) {
		water, _ := season(at)
		for _, space := range []string{"Shaft alley", "Fore hold"} {
			air := water + c.Normal(1.5, 1)
			v.Add("climate", v.Next("climate"), invent.Values{
				"date": at.Format("2006-01-02"), "time": "10:30", "who": "volunteers' watch", "space": space, "air": invent.Round(air, 1),
				"humidity": invent.Round(min(97, max(45, c.Normal(map[string]float64{"Shaft alley": 86, "Fore hold": 66}[space], 6))), 0),
				"steel":    invent.Round(water+c.Normal(0.3, 0.4), 1), "dryer": map[string]string{"Shaft alley": "none", "Fore hold": "on"}[space], "basis": "measured", "mark": "board",
			})
		}
	}
}

// rounds are the weekly walks of this year.
func (v *vessel) rounds() {
	c := invent.NewChance(seed, "rounds")
	for at := time.Date(2026, 1, 5, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 0, 7) {
		alarms := "not tested"
		if at.Day() <= 7 && at.Month()%3 == 0 {
			alarms = "tested"
		}
		v.Add("round", v.Next("round"), invent.Values{
			"date": at.Format("2006-01-02"), "time": "09:15", "who": []string{"keeper M", "volunteers' watch"}[c.IntN(2)],
			"bilges": []string{"damp", "water", "damp", "dry"}[c.IntN(4)], "list": invent.Round(c.Normal(0.2, 0.1), 1),
			"moorings": []string{"good", "good", "adjusted"}[c.IntN(3)], "alarms": alarms, "closed": []string{"closed", "closed", "left open"}[c.IntN(3)],
			"power": "on", "mark": "board",
		})
	}
}
