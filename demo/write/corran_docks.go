package main

import "oakum/demo/invent"

// corranDocks makes the two docks, their windows, the tows and the soundings of the berth.
func corranDocks(v *vessel) error {
	v.Add("dock", "dock-skellby", invent.Values{
		"name": "Skellby Old Graving Dock", "type": "graving dock", "town": "Skellby", "length": 118, "entrance_width": 16.2, "floor_width": 17.1,
		"sill_depth": 5.9, "floor_depth": 6.7, "datum": "old dock datum, 4.40 m above chart datum", "block_height": 1.2, "block_fall": 0.12, "block_length": 0.9, "block_width": 0.45,
		"block_spacing": 1.5, "block_timber": "oak on pine", "block_cap": 0.3, "cap_modulus": 350, "cap_yield": 4.6, "base_modulus": 20000,
		"block_line_limit": 45, "day_rate": 3900, "first_day": 46000, "services_a_day": 850, "distance": 11, "open_water": false, "air_draft": 31,
		"tide": "tide-skellby", "clear_over_blocks": 0.3, "clear_side": 1.0, "clear_head": 3, "clear_outboard": 4, "listed": true, "takes_riveted": "yes", "crane": 15,
		"rules": "own volunteers allowed after an induction; no open blasting; visitors on the side walls at weekends",
		"basis": "documented", "basis_note": "letter of the dock's keeper", "basis_date": "2026-03", "mark": "board",
		"notes": "A listed structure: the block line was proved to 45 t/m in 1987. Water enough only about springs.",
	})
	v.Add("dock", "dock-orrin", invent.Values{
		"name": "Orrin Haven lift", "type": "lift", "town": "Orrin Haven", "length": 100, "entrance_width": 21, "floor_width": 22, "floor_depth": 8.6,
		"datum": "chart datum at Orrin", "block_height": 1.5, "block_length": 1.2, "block_width": 0.6, "block_spacing": 2, "block_timber": "oak", "block_cap": 0.3,
		"cap_modulus": 350, "cap_yield": 4.6, "base_modulus": 30000, "block_line_limit": 42, "lift_capacity": 4200, "day_rate": 7400, "first_day": 118000,
		"services_a_day": 1300, "distance": 74, "open_water": true, "tide": "tide-orrin", "docks_from": 7, "docks_to": 19, "clear_over_blocks": 0.6, "clear_side": 1.5, "clear_head": 1, "clear_outboard": 1,
		"listed": false, "takes_riveted": "unknown", "crane": 60, "rules": "yard labour only; no visitors; blasting in the hall",
		"basis": "documented", "basis_note": "yard's data sheet", "basis_date": "2026-04", "mark": "board",
		"notes": "27 t/m on the keel row and 7.5 t/m on each of two bilge rows: 42 t/m in all along 100 m. Over it as she lies; within it with about 28 t of ballast moved: the after peak pumped dry and some pig iron shifted forward.",
	})
	v.Table("dock_window", `
		id | dock | opens | closes | days | extra_days | held_until | deposit | chance | state | notes
		window-spring | dock-skellby | 2027-04-07 | 2027-05-02 | 14 | 4 | 2027-01-15 | 15000 | 0.8 | offered | springs of 8 and 22 April
		window-autumn | dock-skellby | 2027-09-14 | 2027-10-10 | 14 | 7 | 2027-04-30 | 15000 | 0.85 | offered | springs of 17 September and 1 October; the season's end is lost
		window-orrin | dock-orrin | 2027-10-18 | 2027-12-17 | 45 | 30 | 2027-06-30 | 40000 | 0.7 | offered | by open water after the tow season's end
	`, invent.Values{"mark": "board"})
	v.Table("wave_table", `
		id | name | months | waves | over | years | notes
		waves-venn-spring | Mouth of the Venn, spring | 3 to 5 | 0.3;0.5;0.7;1;1.5 | 55;30;15;5;0.8 | 12 | the harbour's buoy
		waves-venn-autumn | Mouth of the Venn, autumn | 9 to 11 | 0.3;0.5;0.7;1;1.5 | 62;38;21;8;1.6 | 12 | the harbour's buoy
		waves-head-summer | Off Harl Head, summer | 5 to 8 | 0.5;1;1.5;2;3 | 80;45;21;9;1.5 | 20 | a hindcast
		waves-head-autumn | Off Harl Head, autumn | 9 to 11 | 0.5;1;1.5;2;3;4 | 95;78;55;36;13;4 | 20 | a hindcast
	`, invent.Values{"mark": "public", "basis": "documented", "basis_note": "table of the harbour office"})
	v.Table("tow", `
		id | name | dock | way | date | route | distance | speed | current | wind | wave | depth | front_area | side_area | tug | bollard_pull | weakest_link | price | insurance | refuge | riding_crew | lead_time | season | seas | notes
		tow-skellby | To Skellby | dock-skellby | to the dock | 2027-04-08 | down the Venn and up the Skell on one tide | 11 | 4 | 0.8 | 20 | 0.7 | 6.8 | 185 | 890 | two harbour tugs | 28 | 22 | 31000 | 14000 | lay-by at Harl Roads | 8 | 14 | 3 to 10 | waves-venn-spring;waves-venn-autumn |
		tow-skellby-home | Home from Skellby | dock-skellby | from the dock | 2027-04-23 | up the Venn on one tide | 11 | 4 | 0.8 | 20 | 0.7 | 6.8 | 185 | 890 | two harbour tugs | 28 | 22 | 31000 | 9000 | lay-by at Harl Roads | 8 | 14 | 3 to 10 | waves-venn-spring;waves-venn-autumn |
		tow-orrin | To Orrin Haven | dock-orrin | to the dock | 2027-10-16 | by open water round Harl Head | 74 | 5 | 1 | 18 | 1.5 | 22 | 185 | 890 | sea-going tug and a harbour tug | 45 | 30 | 96000 | 48000 | the Roads; Ness Bay in winds from the north | 0 | 30 | 5 to 9 | waves-head-summer;waves-head-autumn | asked for outside the season
		tow-orrin-home | Home from Orrin Haven | dock-orrin | from the dock | 2028-05-06 | by open water round Harl Head | 74 | 5 | 1 | 18 | 1.5 | 22 | 185 | 890 | sea-going tug and a harbour tug | 45 | 30 | 96000 | 40000 | the Roads; Ness Bay in winds from the north | 0 | 30 | 5 to 9 | waves-head-summer;waves-head-autumn | lies at Orrin until May
	`, invent.Values{"mark": "board"})
	depths := invent.NewChance(seed, "depths")
	for i, x := range []float64{0, 8, 16, 24, 32, 40, 48, 56, 64, 72, 80, 88} {
		for _, side := range []string{"port", "starboard"} {
			v.Add("depth", v.Next("depth"), invent.Values{
				"date": "2024-03-12", "who": "harbour survey boat", "berth": "berth", "x": x, "depth_side": side, "off": 2,
				"depth": invent.Round(4.76+0.085*float64(i)+depths.Normal(0, 0.05), 2), "sd": 0.1, "method": "echo sounder", "bottom": "mud", "basis": "measured", "mark": "board",
			})
		}
	}
	return v.Err()
}
