package main

import (
	"fmt"

	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/ship"
)

// pell makes up the steam tug: the small, quick case.
func pell() ([]dossier.Record, error) {
	v, err := afresh(pellLines())
	if err != nil {
		return nil, err
	}
	for _, part := range []func(*vessel) error{pellShip, pellOutlines, pellHull, pellParts, pellLog, pellPlan} {
		if err := part(v); err != nil {
			return nil, err
		}
	}
	return v.Records()
}

func pellShip(v *vessel) error {
	v.Add("particulars", "ship", invent.Values{
		"mark": "public", "name": "Pell", "invented": true, "type": "steam tug", "built": "1924-03", "builder": "a yard on the invented Venn", "yard_number": "488",
		"museum_since": "1981", "keeper": "Pell Steam Society (invented)", "title_owner": "Pell Steam Society (invented)", "construction": "riveted", "material": "mild steel",
		"lbp": 25, "length_overall": 26.5, "beam": 6.4, "beam_extreme": 6.7, "depth": 3.4, "design_draft": 2.48, "displacement": 214, "block_coefficient": 0.54,
		"kg": 2.32, "kg_note": "inclined 2009", "lcg": pellLCG, "free_surface": 4, "below_baseline": 0.05, "air_draft": 9.5, "keel_fwd": 23.2, "keel_aft": 0.8, "keel_slope": 0,
		"frame_spacing": 533, "home": "Lock basin, Harl", "visitors": 3200, "currency": "EUR", "wastage_rule": "25-percent", "original_basis": "nominal", "gm_required": 0.1, "under_keel": 0.3,
		"notes": "Invented: the ship, the place, the people, the firms and every figure are made up for the demonstration.",
	})
	v.Add("frame_system", "frames", invent.Values{
		"origin": "after perpendicular", "origin_x": 0, "first": 0, "direction": "forward", "last": 47, "spacing_from": []float64{0}, "spacing": []float64{0.533},
		"half_frames": false, "lettered": []string{"A", "B"}, "letter_spacing": 0.533, "mark": "public", "basis": "documented",
	})
	o := v.lines.Offsets()
	v.Add("hull_form", "hull", invent.Values{
		"stations": o.Stations, "waterlines": o.Waterlines, "half_breadths": o.HalfBreadths, "keel_heights": o.Keel, "deck_heights": o.Deck, "shell_thickness": 9,
		"basis": "measured", "basis_note": "lifted on the slip", "basis_date": "2015-04", "mark": "public",
	})
	v.Table("draft_mark", `
		id | position | x | y | zero_at | deck_edge | figures | state
		mark-fwd | forward | 24.2 | 0.4 | 0 | 4.3 | metric | legible
		mark-aft | aft | 0.3 | 0.5 | 0 | 3.7 | metric | legible
	`, nil)
	return v.framed()
}

func pellHull(v *vessel) error {
	v.Table("coating_zone", `
		id | name | area | exposure | system | applied | condition | seen | bare_share | breakdown_a | breakdown_b | current_density | nominal_film | design_life | z0 | z1
		zone-bottom | Bottom and sides | 158 | immersed | epoxy | 2021-05 | good | 2021-05 | 0.03 | 0.02 | 0.015 | 60 | 300 | 12 | 0 | 2.2
		zone-waterline | Waterline | 38 | waterline | epoxy | 2021-05 | fair | 2026-05 | 0.08 | 0.02 | 0.03 | 70 | 300 | 8 | 2.2 | 2.9
		zone-topside | Topsides | 52 | atmosphere | alkyd | 2024-06 | good | 2026-05 | 0.01 | 0.02 | 0.02 | | 200 | 5 | 2.9 | 4.5
	`, invent.Values{"metal": "steel", "x0": -1.3, "x1": 25.3, "mark": "public"})
	g := girthed{
		names: []string{"K", "A", "B", "C", "D", "E", "F"}, keel: 0.25, sheer: 1.1, x: []float64{-0.7, 0, 1.5, 4.5, 8, 12, 16, 20, 22.8, 24.5},
		thick: []float64{11, 9.5, 9, 9, 9, 8.5, 10}, lies: []string{"flush", "in", "out"},
	}
	g.plates.frames, g.plates.last, g.plates.ends = 8, 46, 0.5
	if err := v.strakes(g); err != nil {
		return err
	}
	return v.plated(g, func(p sheet) (string, string) {
		switch {
		case p.row == 0:
			return "bottom", "zone-bottom"
		case p.z < 0.7:
			return "bottom", "zone-bottom"
		case p.z < 2.2:
			return "side", "zone-bottom"
		case p.z < 2.9:
			return "waterline", "zone-waterline"
		}
		return "sheer", "zone-topside"
	})
}

const pellLCG = 11.5

func pellParts(v *vessel) error {
	v.Table("compartment", `
		id | name | frame_aft | frame_fwd | x0 | x1 | z0 | z1 | permeability | use | floor_area | critical_level | critical_why | alarm_height | tight | opens_to
		comp-after | After peak and store | B | 9 | -1.07 | 4.8 | 0 | 3.5 | 0.9 | stores | 14 | 2.9 | the hatch coaming | 0.8 | watertight | comp-engine
		comp-engine | Engine and boiler room | 9 | 33 | 4.8 | 17.59 | 0 | 3.4 | 0.75 | machinery | 58 | 1.2 | the ash pan and the dynamo | 0.35 | watertight | comp-fore
		comp-fore | Fore cabin | 33 | 43 | 17.59 | 22.92 | 0 | 3.8 | 0.9 | accommodation | 19 | 2.4 | the cabin sole and berths | | watertight |
		comp-peak | Fore peak | 43 | 47 | 22.92 | 25.2 | 0 | 4.2 | 0.95 | peak | 5 | 3.2 | the chain pipe | | watertight | comp-fore
	`, invent.Values{"mark": "board"})
	v.Table("passage", `
		id | name | what | space | into | y | sill | width | height | area | state | notes
		pass-after | Store door | door | comp-after | comp-engine | 0.4 | 1.1 | 0.6 | 1.6 | | open |
		pass-fore | Cabin door | door | comp-engine | comp-fore | 0 | 1.2 | 0.6 | 1.6 | | unknown | swollen; nobody has tried to shut it
		pass-chain | Spurling plate | cable or pipe hole | comp-peak | comp-fore | 0 | 3.2 | | | 9000 | open |
	`, invent.Values{"mark": "board"})
	v.Table("weight", `
		id | name | group | mass | lcg | vcg | tcg | x0 | x1 | added
		weight-engine | Engine, shafting and propeller | light ship | 24 | 6.4 | 1.5 | 0 | 0 | 9 |
		weight-boiler | Boiler with water | light ship | 31 | 13.2 | 1.9 | 0 | 11 | 16 |
		weight-ballast | Pig iron | fixed ballast | 14 | 19.5 | 0.7 | 0 | 18 | 22 | 1983
		weight-coal | Coal, half bunkers | stores | 9 | 15.8 | 2 | 0 | 14 | 17 |
		weight-deck | Wheelhouse, funnel, towing gear | light ship | 16 | 12.5 | 4.6 | 0 | 8 | 17 |
	`, invent.Values{"basis": "documented", "mark": "board"})
	m, mx, mz := 214.0, 214*pellLCG, 214*2.32
	for _, w := range made[ship.Weight](v) {
		t := *w.Mass / 1000
		m, mx, mz = m-t, mx-t**w.LCG, mz-t**w.VCG
	}
	v.Add("weight", "weight-hull", invent.Values{
		"name": "Hull and outfit, the rest by difference", "group": "light ship", "mass": invent.Round(m, 1), "lcg": invent.Round(mx/m, 2), "vcg": invent.Round(mz/m, 2), "tcg": 0,
		"x0": -1.3, "x1": 25.3, "basis": "computed", "basis_note": "inclining of 2009 less the rest", "mark": "board",
	})
	v.Add("shaft_line", "line", invent.Values{
		"name": "Shaft", "line_side": "centre", "x_aft": 0.2, "x_fwd": 6.0, "y": 0, "z": 0.95, "state": "turned at times", "tube_aft": 0.7, "tube_fwd": 2.9, "tube_bore": 190,
		"tail_length": 3.4, "tail_mass": 0.42, "coupling": "flanged, at frame 7", "space": "After peak and store", "mark": "public", "basis": "documented",
	})
	v.Table("segment", `
		id | line | name | x0 | x1 | outer_diameter | inner_diameter | modulus | density | wet | tail
		segment-1 | line | tail shaft, sleeved | 0.2 | 3.0 | 150 | 0 | 205 | 7850 | yes | yes
		segment-2 | line | line shaft | 3.0 | 6.0 | 146 | 0 | 205 | 7850 | no | no
	`, invent.Values{"mark": "public"})
	v.Table("bearing", `
		id | line | name | x | length | diameter | type | settle | clearance | measured_on | fixed | under_water
		bearing-1 | line | after bush | 1.0 | 0.6 | 165 | lignum-vitae | 0.6 | 1.4 | 2021-05 | no | yes
		bearing-2 | line | fore bush | 2.6 | 0.35 | 165 | lignum-vitae | 0.2 | 0.8 | 2021-05 | no | no
		bearing-3 | line | thrust block | 5.6 | 0.4 | 146 | thrust | 0 | 0.3 | 2021-05 | yes | no
	`, invent.Values{"mark": "public", "basis": "measured"})
	v.Add("gland", "gland", invent.Values{
		"name": "Stern gland", "line": "line", "frame": "6", "side": "centre", "space": "After peak and store", "bore": 190, "shaft": 165, "rings": 5, "ring_depth": 12.5, "box_depth": 80, "packing": "flax, tallowed",
		"packed": "2021-05", "design_life": 8, "follower_travel": 28, "travel_left": 19, "studs": 4, "stud_diameter": 19, "clearance": 1.5, "leak_length": 90, "cover": "none", "asbestos": "no", "basis": "measured", "mark": "board",
	})
	v.Add("propeller", "propeller", invent.Values{
		"name": "Propeller", "line": "line", "x": 0.3, "y": 0, "z": 0.95, "diameter": 1.75, "blades": 4, "pitch": 2.3, "blade_area_ratio": 0.5, "blade_area": 2.7, "material": "cast iron", "density": 7200, "mass": 690,
		"mass_from": "weighed", "below_keel": -0.07, "state": "on the shaft", "bonded": "yes", "coated": "yes", "original": "replacement", "mark": "public",
	})
	v.Table("opening", `
		id | name | function | frame | height | side | space | diameter | shape | pipe_metal | state | last_seen
		opening-1 | 1 main injection | condenser | 20 | 0.6 | starboard | Engine and boiler room | 102 | round | bronze | in use | 2021-05
		opening-2 | 2 discharge | condenser | 22 | 2.3 | port | Engine and boiler room | 89 | round | bronze | in use | 2021-05
		opening-3 | 3 boiler feed | feed | 27 | 0.7 | port | Engine and boiler room | 51 | round | bronze | closed | 2021-05
		opening-4 | 4 blow-down | boiler | 26 | 0.9 | starboard | Engine and boiler room | 38 | round | bronze | closed | 2021-05
		opening-5 | 5 galley drain | drain | 36 | 2.8 | port | Fore cabin | 38 | round | steel | in use | 2026-05
		opening-6 | 6 ballast | ballast pump | 17 | 0.6 | port | Engine and boiler room | 64 | round | cast iron | blanked | 2021-05
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("barrier", `
		id | opening | type | order | material | bolted | fitted | last_moved | last_tested | grade
		barrier-1 | opening-1 | valve | 1 | bronze | bolts | 2009 | 2026-04 | 2026-04 | 1
		barrier-2 | opening-2 | valve | 1 | bronze | bolts | 2009 | 2026-04 | 2026-04 | 1
		barrier-3 | opening-2 | flap | 2 | cast iron | bolts | 1924 | 2021-05 | 2021-05 | 2
		barrier-4 | opening-3 | valve | 1 | bronze | bolts | 2015 | 2026-04 | 2026-04 | 2
		barrier-5 | opening-4 | valve | 1 | bronze | bolts | 2015 | 2026-04 | 2026-04 | 2
		barrier-6 | opening-5 | valve | 1 | bronze | thread | 2018 | 2026-04 | 2026-04 | 2
		barrier-7 | opening-6 | outer blank | 1 | steel plate | weld | 2015-04 | 2021-05 | 2021-05 | 1
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("pump", `
		id | name | rated | rated_head | lift | power | condition | automatic | starts_at | last_run | installed | design_life
		pump-1 | Electric bilge pump | 12 | 8 | 3.6 | shore | 0.95 | yes | 0.3 | 2026-11 | 2019 | 12
		pump-2 | Hand pump | 3 | 6 | 3.6 | hand | 0.9 | no | | 2026-11 | 1924 |
	`, invent.Values{"mark": "board"})
	v.Add("alarm", "alarm", invent.Values{"name": "Engine room float", "watches": "bilge water", "space": "Engine and boiler room", "height": 0.35, "reaches": "three members by telephone", "response": 0.7, "last_tested": "2026-11", "state": "works", "power": "both", "mark": "board"})
	for i, frame := range []string{"4", "14", "24", "34"} {
		for _, side := range []string{"port", "starboard"} {
			v.Add("anode", fmt.Sprintf("anode-%d%s", i+1, side[:1]), invent.Values{
				"name": fmt.Sprintf("anode %d %s", i+1, side), "frame": frame, "strake": "B", "side": side, "count": 1, "alloy": "magnesium", "mass_new": 4.5, "fitted": "2021-05", "form": "plate",
				"length": 0.3, "width": 0.15, "depth": 0.06, "bonded": "bolts", "zone": "zone-bottom", "mark": "board",
			})
		}
	}
	return v.Err()
}

func pellLog(v *vessel) error {
	c := invent.NewChance(seed, "pell")
	number := 0
	for _, s := range []struct {
		year, month int
		low, high   float64
	}{{2015, 4, 2, 44}, {2021, 5, 2, 44}} {
		list := v.places(every(s.low, s.high, 6), []string{"K", "A", "B", "C", "D", "E", "F"}, bothSides)
		for _, g := range list {
			year := float64(s.year) + 0.4
			old := 0.008 * (min(year, 1981) - 1924)
			value := g.plate.rolled - (old+0.012*max(0, year-1981))*(1+0.2*invent.NewChance(seed, g.plate.id).NormFloat64()) + c.Normal(0, 0.1)
			number++
			v.Add("thickness", fmt.Sprintf("t-%03d", number), invent.Values{
				"date": fmt.Sprintf("%d-%02d", s.year, s.month), "survey": fmt.Sprintf("%d, on the slip", s.year), "number": fmt.Sprint(number), "frame": frameName(g.frame), "strake": g.strake, "side": string(g.side),
				"plate": g.plate.name, "thickness": invent.Round(value, 1), "sd": 0.1, "result": "read", "firm": "survey firm B", "taken_from": "outside", "in_dock": true, "paint": "no", "basis": "measured", "mark": "board",
			})
		}
	}
	for year := 2015; year <= 2026; year++ {
		for _, month := range []int{4, 10} {
			load := hullform.Loading{Mass: (214 + 0.15*float64(year-2015)) * 1000, LCG: pellLCG, VCG: 2.32, Density: 999.5, FreeSurface: 4000}
			f, err := v.hull.Equilibrium(load)
			if err != nil {
				return err
			}
			at := func(x float64) float64 {
				return invent.Round(f.Draft-(x-12.5)*f.Trim/25+c.Normal(0, 0.008), 2)
			}
			v.Add("draft", v.Next("draft"), invent.Values{
				"date": fmt.Sprintf("%d-%02d-12", year, month), "who": "mate", "fwd_port": at(24.2), "fwd_starboard": at(24.2), "aft_port": at(0.3), "aft_starboard": at(0.3), "sd": 0.01,
				"density": 999.5, "afloat": "yes", "water": "calm", "occasion": "log", "basis": "measured", "mark": "board",
			})
		}
	}
	for month := 1; month <= 11; month++ {
		v.Add("pump_count", v.Next("count"), invent.Values{"date": fmt.Sprintf("2026-%02d-01", month), "pump": "pump-1", "starts": 2 + c.IntN(3), "hours": invent.Round(c.Between(0.1, 0.3), 1), "over": 30, "state": "works", "mark": "board"})
		v.Add("sounding", v.Next("sounding"), invent.Values{"date": fmt.Sprintf("2026-%02d-01", month), "space": "Engine and boiler room", "result": []string{"damp", "dry", "wet"}[c.IntN(3)], "mark": "board"})
		v.Add("gland_check", v.Next("gland-check"), invent.Values{"date": fmt.Sprintf("2026-%02d-01", month), "gland": "gland", "drips": c.IntN(4), "travel_left": 19, "state": "dripping", "mark": "board"})
	}
	v.Add("anode_seen", "seen-1", invent.Values{"date": "2025-10-04", "who": "member with a mask", "share_left": 0.45, "counted": 8, "surface": "active", "mark": "board"})
	v.Add("potential", "potential-1", invent.Values{"date": "2026-06-14", "who": "engineer", "frame": "20", "side": "port", "level": "middle", "reading": -905, "sign_given": true, "electrode": "copper-sulphate", "impressed": "none", "mark": "board"})
	return v.Err()
}

func pellPlan(v *vessel) error {
	v.Add("berth", "berth", invent.Values{"name": "Lock basin, Harl", "alongside": "port", "datum": "basin level", "charted_depth": 3.6, "surveyed": "2024-05", "siltation": 0.01, "bottom": "mud", "salinity_low": 0, "salinity_high": 0.2, "temperature_low": 2, "temperature_high": 22, "current": 0, "shore_power": 12, "yearly_cost": 2400, "notes": "fresh water, no tide", "mark": "public"})
	v.Table("dock", `
		id | name | type | town | length | entrance_width | floor_width | floor_depth | datum | block_height | block_length | block_width | block_spacing | block_timber | block_cap | block_line_limit | lift_capacity | day_rate | first_day | services_a_day | distance | open_water | clear_over_blocks | clear_side | tide | takes_riveted | notes
		dock-slip | Basin slipway | slipway | Harl | 34 | 8.4 | 9 | 3.9 | basin level | 0.6 | 0.8 | 0.3 | 1.2 | oak | 0.2 | 18 | 280 | 420 | 5200 | 60 | 0.6 | no | 0.2 | 0.4 | tide-basin | yes | she goes up every six years
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("dock_window", `
		id | dock | opens | closes | days | extra_days | held_until | chance | state
		window-0 | dock-slip | 2027-02-08 | 2027-02-26 | 14 | 0 | | 0.6 | offered
		window-1 | dock-slip | 2027-05-03 | 2027-05-28 | 21 | 7 | 2027-01-31 | 0.95 | held
		window-2 | dock-slip | 2027-10-04 | 2027-10-29 | 21 | 7 | | 0.9 | offered
		window-3 | dock-slip | 2028-10-02 | 2028-10-27 | 21 | 7 | | 0.8 | offered
	`, invent.Values{"mark": "board"})
	v.Add("tide", "tide-basin", invent.Values{"name": "Lock basin, Harl", "datum": "basin level", "mean_level": 0, "constituents": []string{"M2"}, "amplitudes": []float64{0}, "phases": []float64{0}, "spring_range": 0, "neap_range": 0, "notes": "the lock keeps its level: no tide", "mark": "public"})
	v.Table("tow", `
		id | name | dock | way | route | distance | speed | tug | lead_time | season | notes
		tow-out | Across the basin | dock-slip | to the dock | across the basin | 0.6 | 2 | the harbour launch | 7 | 3 to 11 | ice in the basin from December
		tow-back | Back across the basin | dock-slip | from the dock | across the basin | 0.6 | 2 | the harbour launch | 1 | 3 to 11 |
	`, invent.Values{"mark": "board"})
	v.Table("activity", `
		id | name | low | likely | high | after | phase | work | crews | crew_count | dry_weather | hold_point | who
		act-book | Slip confirmed, insurer told | 5 | 10 | 25 | | before | work-insurance | | | | | secretary
		act-up | Up the slip, shored | 0.5 | 0.5 | 1 | act-book | in dock | work-slip | slip gang | 1 | | yes | slipmaster
		act-wash | Washed and scraped | 0.5 | 1 | 2 | act-up | in dock | work-wash | members | 2 | | | members
		act-gauge | Gauged | 0.5 | 1 | 1.5 | act-wash | in dock | work-gauge | | | | yes | survey firm
		act-rivets | Rivets and seams | 1 | 3 | 7 | act-gauge | in dock | work-rivets | smith | 1 | | | smith
		act-gland | Gland repacked, bush measured | 0.5 | 1 | 3 | act-up | in dock | work-gland | members | 2 | | yes | engineer
		act-valves | Sea valves ground in | 1 | 2 | 4 | act-up | in dock | work-valves | members | 2 | | yes | engineer
		act-anodes | Anodes | 0.5 | 0.5 | 1 | act-wash | in dock | work-anodes | smith | 1 | | | smith
		act-coat | Touched up, two coats | 2.5 | 4 | 8 | act-wash;act-rivets | in dock | work-coat | members | 2 | yes | | members
		act-look | Last look at every hole | 0.5 | 0.5 | 1 | act-coat;act-anodes;act-gland;act-valves | in dock | | | | | yes | engineer
		act-down | Down the slip | 0.5 | 0.5 | 1 | act-look | in dock | work-slip | slip gang | 1 | | yes | slipmaster
	`, invent.Values{"mark": "board"})
	v.Table("crew", `
		id | name | dock | count | notes
		crew-slip | slip gang | dock-slip | 1 |
		crew-members | members | | 3 | on a working day; six on a Saturday
		crew-smith | smith | | 1 | with his mate
	`, invent.Values{"mark": "board"})
	v.Table("matter", `
		id | name | question | due | decided_by | state | why
		matter-bottom | Bottom this time | Repair and coat as in 2021, or strip it to metal? | 2027-03-01 | committee | open | the coat of 2021 is fair
	`, invent.Values{"mark": "public"})
	v.Table("criterion", `
		id | name | measured_in | worst | best | swing
		criterion-cost | Cost | thousand euro | 100 | 30 | 100
		criterion-life | Holds for | years | 4 | 14 | 70
	`, invent.Values{"mark": "board"})
	v.Table("course", `
		id | matter | name | leaves_as_is | cost_low | cost_likely | cost_high | yearly_cost | days | risk_left | life | treats | criteria | scores | scores_low | scores_high | consent
		course-touch | matter-bottom | Wash, touch up, two coats | yes | 33000 | 38000 | 52000 | 300 | 12 | 0.3 | 6 | zone-bottom;zone-waterline | criterion-cost;criterion-life | 38;6 | 52;5 | 33;7 | not needed
		course-strip | matter-bottom | Strip to metal, full scheme | no | 56000 | 66000 | 95000 | 100 | 19 | 0.15 | 12 | zone-bottom;zone-waterline | criterion-cost;criterion-life | 66;12 | 95;9 | 56;14 | not needed
	`, invent.Values{"mark": "board"})
	v.Table("work", `
		id | number | name | group | low | likely | high | days | must | only_in_dock | treats | course
		work-slip | 1 | Up and down, days on the slip | docking | 12500 | 13600 | 17500 | 12 | yes | yes |
		work-wash | 2 | Washed and scraped | underwater | 1800 | 2100 | 3000 | 1 | yes | yes |
		work-coat | 3 | Touched up, two coats | coating | 8200 | 9600 | 13500 | 4 | yes | yes | zone-bottom;zone-waterline | course-touch
		work-gauge | 4 | Gauged | survey | 1500 | 1700 | 2200 | 1 | yes | yes |
		work-rivets | 5 | Rivets and seams | steel | 2500 | 4200 | 11000 | 3 | no | yes |
		work-gland | 6 | Stern gland repacked, bush measured | glands | 900 | 1100 | 1800 | 1 | yes | yes | gland
		work-anodes | 7 | Anodes | protection | 700 | 800 | 1100 | 0.5 | yes | yes | anode-1p;anode-1s;anode-2p;anode-2s;anode-3p;anode-3s;anode-4p;anode-4s
		work-valves | 8 | Sea valves ground in | openings | 1600 | 2100 | 3600 | 2 | yes | yes | opening-1;opening-2
		work-insurance | 9 | Insurance and surveyor | other | 2500 | 2800 | 3300 | | yes | no |
	`, invent.Values{"mark": "board", "shape": "pert"})
	v.Table("scheme", `
		id | name | courses | works | dock | window | date | reserve | days | next_after | standing
		scheme-1 | May 2027 as always | course-touch | work-slip;work-wash;work-coat;work-gauge;work-rivets;work-gland;work-anodes;work-valves;work-insurance | dock-slip | window-1 | 2027-05-03 | 3000 | 12 | 6 | yes
	`, invent.Values{"mark": "board"})
	v.Table("pot", `
		id | name | restricted | opening | opened_on
		pot | Slip fund | no | 21500 | 2024-01-01
	`, invent.Values{"mark": "board"})
	for month := range 34 {
		year, m := 2024+month/12, month%12+1
		v.Add("receipt", fmt.Sprintf("receipt-%d-%02d", year, m), invent.Values{"pot": "pot", "date": fmt.Sprintf("%d-%02d-28", year, m), "amount": 380 + 10*(month%7), "type": "giving", "giver": "members", "paper": fmt.Sprintf("bank statement %d-%02d", year, m), "mark": "board"})
	}
	v.Add("pledge", "pledge-1", invent.Values{"giver": "the town", "pot": "pot", "amount": 4000, "promised": "2026-05-04", "due": "2027-04-30", "conditional": false, "chance": 0.95, "received": 0, "state": "open", "written": true, "mark": "private"})
	v.Add("reserve", "reserve-1", invent.Values{"name": "Slide her down and bring her home", "low": 1500, "likely": 2200, "high": 3500, "dock": "dock-slip", "mark": "board"})
	v.Add("season", "season", invent.Values{"name": "sailing days", "begins": 5, "ends": 9, "income": 14500, "net": 0.6, "visitors": 3200, "keeps": 0, "mark": "board"})
	v.Table("other_docking", `
		id | name | year | estimate | outcome | days_planned | days_taken | surveyed | weight | source
		other-1 | Pell herself | 2009 | 26000 | 31000 | 14 | 20 | yes | 3 | ledger
		other-2 | Pell herself | 2015 | 30000 | 34500 | 12 | 13 | yes | 3 | ledger
		other-3 | Pell herself | 2021 | 36000 | 37200 | 12 | 12 | yes | 3 | ledger
	`, invent.Values{"mark": "board"})
	return v.Err()
}
