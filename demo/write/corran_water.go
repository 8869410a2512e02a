package main

import (
	"fmt"
	"math"
	"time"

	"oakum/demo/invent"
)

// corranUnderWater makes what was measured against corrosion, and what divers saw.
func corranUnderWater(v *vessel) error {
	v.rectifier()
	v.potentials()
	v.anodesSeen()
	v.Table("dive", `
		id | date | who | purpose | firm | means | fixing | visibility | area | fouling | bare | found | report | price
		dive-2003 | 2003-07-16 | diver K | anodes and propellers | dive firm D | diver | frame numbers called down | 1.5 | 300 | 0.5 | 0.05 | anodes even; weed on the waterline | | 5200
		dive-2011 | 2011-07-05 | diver K | anodes, propellers polished, stern gear | dive firm D | diver | frame numbers called down | 1.0 | 420 | 0.6 | 0.10 | earthing strap whole; rope guard of the port shaft loose | | 8600
		dive-2019 | 2019-08-21 | diver R | anodes, openings, coating | dive firm D | diver | tape from the stern post | 0.8 | 520 | 0.7 | 0.18 | bare patches aft; four blanks not found under weed | doc-dive-2019 | 9400
		dive-2021 | 2021-05-11 | diver R | anodes and potentials | dive firm D | diver | tape from the stern post | 0.6 | 150 | 0.7 | 0.22 | red rust aft of frame 30; impressed anodes whole | | 7100
		dive-2025 | 2025-09-17 | diver R | anodes, doublers' edges, stern gear | dive firm D | diver | frame numbers called down | 1.2 | 380 | 0.65 | 0.25 | doubler 4 lower edge cracked for 0.3 m at frame 44; starboard strap worn through | doc-dive-2025 | 12900
	`, invent.Values{"basis": "documented", "mark": "board"})
	v.Table("film", `
		id | date | who | zone | readings | nominal | rule | instrument | holiday | notes
		film-1 | 2014-06-20 | paint inspector P | zone-waterline | 262;241;288;305;230;254;271;246;298;219;265;283 | 250 | iso-19840 | magnetic | not done | port side, frames 20 to 60
		film-2 | 2014-06-24 | paint inspector P | zone-waterline | 198;176;224;243;187;210;231;205;192;215 | 250 | iso-19840 | magnetic | not done | starboard side: below the rule; another coat asked for, not given
		film-3 | 2014-06-27 | paint inspector P | zone-topside | 204;221;198;215;240;228;193;219;232;208 | 200 | iso-19840 | magnetic | not done |
	`, invent.Values{"basis": "measured", "mark": "board"})
	v.Table("coat", `
		id | date | who | zone | number | product | colour | area | used | grade | air | steel | humidity | method | wet_film | overcoat_min | overcoat_max | defects
		coat-1 | 2014-06-10 | contractor V | zone-waterline | 1 | surface-tolerant epoxy | grey | 235 | 88 | St 2 | 16 | 15 | 68 | roller | 150 | 8 | 240 | 
		coat-2 | 2014-06-12 | contractor V | zone-waterline | 2 | surface-tolerant epoxy | red | 235 | 84 | | 18 | 17 | 62 | roller | 150 | 8 | 240 | thin to starboard, tide came early
		coat-3 | 2014-06-18 | contractor V | zone-topside | 1 | alkyd primer | red | 640 | 96 | St 2 | 17 | 17 | 60 | roller | 90 | 16 | 720 |
		coat-4 | 2014-06-23 | contractor V | zone-topside | 2 | alkyd gloss | black | 640 | 92 | | 19 | 20 | 58 | roller | 80 | 16 | 720 |
	`, invent.Values{"basis": "documented", "basis_note": "paint log of 2014", "mark": "board"})
	v.Table("event", `
		id | what | sort | date | until | frame | side | damage | repaired
		event-1953 | Storm of the last of January, broke from her buoy | storm | 1953-01-31 | | 6 | port | rudder stock bent | straightened in dock, March 1953
		event-1958 | Touched the Skerry bank at low water | grounding | 1958-09-14 | | 40 | both | bottom set up between frames 36 and 48 | left, faired inside
		event-1972 | Laid up after her last season | laid up | 1972-10 | 1974-05 | | | |
		event-1974 | Given to the trust, towed to Harl Quay | changed hands | 1974-05 | | | | |
		event-1987 | Storm of October, lay against the quay for a night | storm | 1987-10-16 | | 60 | starboard | strakes G and H set in | doublers of 1988 over the worst
		event-2013 | Tidal surge, a metre over the quay | storm | 2013-12-05 | | | | fenders lost, paint off at the waterline |
	`, invent.Values{"mark": "public"})
	v.Table("not_looked", `
		id | date | frame | frame_to | strake | strake_to | side | space | what | why | behind | area | last_looked | needs | price
		not-1 | 2023-05-10 | 28 | 112 | G | | port | | hull plating behind the port doublers | covered | doubler-1p | 37 | 1988-04 | doublers off in dock, or gauging through by a two-layer method | 14000
		not-2 | 2023-05-10 | 28 | 112 | G | | starboard | | hull plating behind the starboard doublers | covered | doubler-1s | 37 | 1988-04 | doublers off in dock, or gauging through by a two-layer method | 14000
		not-3 | 2024-04-22 | 78 | 102 | A | B | both | Boiler room | bottom plating under the boilers | no access | | 96 | 1996-10 | floor plates and ash out; a week for four | 9500
		not-4 | 2024-04-22 | 78 | 102 | | | both | | No 3 double-bottom tanks inside | not opened | tank-3p | 210 | 1961 | gas-free certificate, manholes, staging | 7200
		not-5 | 2023-05-10 | 12 | 48 | A | B | both | Shaft alley | bottom plating under the alley | covered | | 70 | 1996-10 | cement to be broken out |
		not-6 | 2025-09-17 | 0 | 6 | | | centre | | rudder pintles and heel bearing | water | | | 1996-10 | dock, rudder lifted 200 mm |
		not-7 | 2025-09-17 | 4 | 143 | K | | centre | | keel plate where it stood on blocks in 1996 | water | | 78 | 1996-10 | blocks shifted in dock |
		not-8 | 2022-05-14 | 132 | 152 | | | both | Fore peak | fore peak below the flat | not opened | | 60 | 2009 | test the air; staging | 1500
		not-9 | 2023-05-10 | 0 | 12 | C | G | both | After peak | after peak plating | unsafe | | 88 | 1996-10 | certificate for a closed space | 2600
	`, invent.Values{"mark": "board"})
	v.Table("photo", `
		id | date | who | frame | strake | side | space | title | direction | scale | about | moment | rights | consent | mark
		photo-1 | 1996-10-12 | survey firm B | 2 | | port | | Port propeller in dock | forward | man beside it | propeller-port | as found | the trust | yes | public
		photo-2 | 1996-10-12 | survey firm B | 40 | G | port | | Port doublers from the dock bottom | at the plate | | doubler-1p | as found | the trust | nobody in it | board
		photo-3 | 2016-03-02 | superintendent | 12½ | | starboard | Shaft alley | Starboard stern gland | aft | 300 mm rule | gland-starboard | as found | the trust | nobody in it | board
		photo-4 | 2021-11-09 | superintendent | 12½ | | starboard | Shaft alley | Wasted stud of the starboard gland | aft | coin | gland-starboard | as found | the trust | nobody in it | board
		photo-5 | 2025-09-17 | dive firm D | 44 | G | starboard | | Crack at the lower edge of doubler 4 | at the plate | diver's rule | doubler-1s | as found | dive firm D | nobody in it | board
		photo-6 | 2026-09-11 | volunteers' watch | 74 | A | starboard | Engine room | Wooden plug in the log tube | down | | opening-08 | as found | the trust | nobody in it | board
		photo-8 | 2004-05-18 | a volunteer | 30 | | centre | After hold | Spare blade on its bulkhead | forward | 1 m rule | part-blade | before | the trust | nobody in it | public
		photo-9 | 2015-02-10 | curator | 96 | | starboard | Main deck | Starboard telegraph before it was unbolted | aft | 300 mm rule | part-telegraph | before | the trust | nobody in it | public
		photo-7 | 2026-06-14 | a volunteer | | | | | The ship dressed overall, from the quay | aft | | | | the trust | yes | public
	`, invent.Values{"mark": "board"})
	return v.Err()
}

// deadYears tells whether the impressed set stood dead: from January 2019 to May 2021, but for two weeks.
func deadYears(at time.Time) bool {
	day := at.Format("2006-01-02")
	return day >= "2019-01-17" && day < "2021-05-18" && !(day >= "2020-02-03" && day < "2020-02-17")
}

// rectifier is the log of the set: a line a week, hardly any while it stood dead.
func (v *vessel) rectifier() {
	c := invent.NewChance(seed, "rectifier")
	hours := 0.0
	back := 0 // weeks since it was put on again
	for at := time.Date(2008, 5, 19, 0, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); at = at.AddDate(0, 0, 7) {
		dead := deadYears(at)
		u, noise, wander := c.Float64(), c.Normal(0, 1), c.Normal(0, 1)
		temperature, salinity := season(at)
		if dead {
			back = 0
			if u > 0.04 && at.Format("2006-01") != "2019-01" && at.Format("2006-01") != "2020-02" {
				continue
			}
			v.Add("rectifier", v.Next("rectifier"), invent.Values{
				"date": at.Format("2006-01-02"), "who": "volunteers' watch", "set": "impressed", "voltage": 0, "current": 0, "hours": invent.Round(hours, 0), "state": "tripped",
				"notes": "lamp out", "basis": "measured", "mark": "board",
			})
			continue
		}
		hours += 168
		back++
		if u < 0.15 {
			continue
		}
		age := at.Sub(time.Date(2008, 5, 1, 0, 0, 0, 0, time.UTC)).Hours() / 8766
		amps := (9 + 0.85*age) * (1 + 0.018*(salinity-18) + 0.012*(temperature-11)) * math.Exp(0.06*noise)
		cell := -820 + 9*wander
		if at.Year() >= 2021 {
			cell += 130 * math.Exp(-float64(back)/9)
			amps = min(60, amps*(1+1.1*math.Exp(-float64(back)/9)))
		}
		values := invent.Values{
			"date": at.Format("2006-01-02"), "who": "volunteers' watch", "set": "impressed", "voltage": invent.Round(1.6+amps*0.19+0.1*wander, 1), "current": invent.Round(amps, 1),
			"hours": invent.Round(hours, 0), "set_point": -820, "cell": invent.Round(cell, 0), "electrode": "agcl-sea", "state": "on", "basis": "measured", "mark": "board",
		}
		if at.Year() >= 2016 && at.Year() <= 2018 && u > 0.8 {
			values["cell"], values["notes"] = -120, "cell 3 dead; this is its reading"
		}
		if u > 0.7 {
			values["temperature"] = invent.Round(temperature, 1)
		}
		v.Add("rectifier", v.Next("rectifier"), values)
	}
}

// potentials are surveys along both sides, each with the electrode that was to hand: one of 2013 without a sign, one of 2018 against zinc.
func (v *vessel) potentials() {
	c := invent.NewChance(seed, "potentials")
	for _, s := range []struct {
		date, electrode, current, check, notes string
		level                                  float64 // mV against silver chloride in sea water
		shift, sign                            float64
	}{
		{"2009-06-10", "agcl-sea", "on", "against a second cell", "", -845, 0, 1},
		{"2013-07-02", "copper-sulphate", "on", "not checked", "written without sign", -838, -60, -1},
		{"2018-06-19", "zinc", "on", "", "zinc rod on a lead", -815, 1030, 1},
		{"2021-05-11", "agcl-sea", "off", "against a second cell", "set found tripped", -648, 0, 1},
		{"2022-06-21", "agcl-sea", "on", "against a second cell", "", -790, 0, 1},
		{"2025-09-17", "agcl-kcl", "on", "calibrated 2025", "", -812, -5, 1},
	} {
		levels := []string{"surface", "keel"}
		if s.sign < 0 {
			levels = levels[:1]
		}
		for i, frame := range []int{2, 14, 26, 40, 54, 68, 82, 96, 110, 124, 138, 148} {
			for _, side := range []string{"port", "starboard"} {
				for _, level := range levels {
					at := s.level + c.Normal(0, 9) - 6*float64(min(i, 11-i))
					if frame < 20 && s.current != "off" {
						at += 45 // the bronze draws it up
					}
					values := invent.Values{
						"date": s.date, "who": "diver R", "station": fmt.Sprintf("%d%s", i+1, side[:1]), "frame": fmt.Sprint(frame), "side": side, "level": level,
						"depth": map[string]float64{"surface": 1, "keel": 4.4}[level], "reading": invent.Round(s.sign*(at+s.shift), 0), "sign_given": s.sign > 0,
						"electrode": s.electrode, "impressed": s.current, "instrument": "hand meter", "temperature": 15, "salinity": 19, "tide": "high", "neighbours": "no",
						"basis": "measured", "mark": "board",
					}
					if s.check != "" {
						values["electrode_check"] = s.check
					}
					if s.notes != "" {
						values["notes"] = s.notes
					}
					v.Add("potential", v.Next("potential"), values)
				}
			}
		}
	}
}

// anodesSeen are the divers' notes of the zinc: even at first, then faster aft and in the years without current.
func (v *vessel) anodesSeen() {
	c := invent.NewChance(seed, "anodes")
	for _, d := range []struct {
		date string
		left float64
		step int
	}{{"2003-07-16", 0.8, 3}, {"2011-07-05", 0.55, 2}, {"2019-08-21", 0.36, 1}, {"2021-05-11", 0.24, 2}, {"2025-09-17", 0.13, 1}} {
		for i := 1; i <= 11; i += d.step {
			for _, side := range []string{"port", "starboard"} {
				left := d.left * math.Exp(c.Normal(0, 0.12))
				if i <= 3 {
					left -= 0.08
				}
				values := invent.Values{
					"date": d.date, "who": "diver R", "anode": fmt.Sprintf("anode-%02d%s", i, side[:1]), "share_left": invent.Round(min(1, max(0.03, left)), 2), "counted": 4,
					"surface": "active", "basis": "documented", "basis_note": "diver's word", "mark": "board",
				}
				if left < 0.08 {
					values["missing"], values["counted"], values["surface"] = 1, 3, "loose"
				}
				v.Add("anode_seen", v.Next("anode-seen"), values)
			}
		}
	}
}
