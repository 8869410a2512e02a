package main

import "oakum/demo/invent"

// corranShafts makes shaft lines, their segments, bearings and glands, the propellers and the rudder.
func corranShafts(v *vessel) error {
	v.Table("shaft_line", `
		id | name | line_side | x_aft | x_fwd | y | z | state | tube_aft | tube_fwd | tube_bore | tail_length | tail_mass | coupling | space | drawing | notes
		line-port | Port shaft | port | 0.9 | 29.9 | 2.75 | 1.95 | locked | 2.7 | 7.75 | 343 | 9.2 | 4.95 | flanged, eight 57 mm fitted bolts, in the shaft alley at frame 16½ | Shaft alley | doc-shaft | locked by a clamp at the thrust since 1974
		line-starboard | Starboard shaft | starboard | 0.9 | 29.9 | -2.75 | 1.95 | locked | 2.7 | 7.75 | 343 | 9.2 | 4.95 | flanged, eight 57 mm fitted bolts, in the shaft alley at frame 16½ | Shaft alley | doc-shaft | locked by a clamp at the thrust since 1974
	`, invent.Values{"basis": "documented", "basis_note": "shafting drawing", "mark": "public"})
	segments := `
		id | name | x0 | x1 | outer_diameter | inner_diameter | modulus | density | wet | tail | load
		SEG-1 | taper in the propeller | 0.9 | 1.8 | 270 | 0 | 205 | 7850 | yes | yes |
		SEG-2 | tail shaft, bronze sleeve | 1.8 | 7.3 | 280 | 0 | 205 | 7850 | yes | yes | 880
		SEG-3 | tail shaft in the box | 7.3 | 8.3 | 280 | 0 | 205 | 7850 | no | yes | 880
		SEG-4 | tail shaft to the coupling | 8.3 | 10.1 | 280 | 0 | 205 | 7850 | no | yes |
		SEG-5 | line shaft | 10.1 | 28.9 | 265 | 0 | 205 | 7850 | no | no |
		SEG-6 | thrust shaft | 28.9 | 29.9 | 290 | 0 | 205 | 7850 | no | no |
	`
	bearings := `
		id | name | x | length | diameter | type | settle | clearance | measured_on | fixed | under_water | notes
		BRG-1 | stern tube, after bush | 3.4 | 1.2 | 305 | lignum-vitae | 2.4 | 4.6 | 1996-10 | no | yes | wood-lined; worn down 4.6 mm in 1996, limit on the drawing 6.4
		BRG-2 | stern tube, fore bush | 7.0 | 0.6 | 305 | lignum-vitae | 0.8 | 2.1 | 1996-10 | no | no |
		BRG-3 | first line bearing | 12.2 | 0.4 | 265 | white-metal | 0 | 0.6 | 2018-05 | no | no |
		BRG-4 | second line bearing | 17.6 | 0.4 | 265 | white-metal | 0.3 | 0.7 | 2018-05 | no | no |
		BRG-5 | third line bearing | 23.0 | 0.4 | 265 | white-metal | 0 | 0.5 | 2018-05 | no | no |
		BRG-6 | fourth line bearing | 28.0 | 0.4 | 265 | white-metal | 0 | | | no | no | cap not lifted
		BRG-7 | thrust block | 29.6 | 0.5 | 290 | thrust | 0 | | | yes | no |
	`
	for _, side := range []string{"port", "starboard"} {
		v.Table("segment", replaced(segments, "SEG", "segment-"+side), invent.Values{"line": "line-" + side, "basis": "documented", "basis_note": "shafting drawing"})
		v.Table("bearing", replaced(bearings, "BRG", "bearing-"+side), invent.Values{"line": "line-" + side, "basis": "documented", "basis_note": "docking report of 1996; alley bearings by feeler 2018"})
	}
	v.Table("gland", `
		id | name | line | frame | side | space | bore | shaft | rings | ring_depth | box_depth | packing | packed | design_life | follower_travel | travel_left | gland_stress | stress_set | studs | stud_diameter | clearance | leak_length | cover | emergency_seal | asbestos | notes
		gland-port | Port stern gland | line-port | 12½ | port | Shaft alley | 343 | 305 | 5 | 19 | 130 | flax, tallowed | 1996-10 | 20 | 45 | 17 | 0.35 | 2016-03 | 6 | 25 | 2.5 | 180 | none | none | suspected | drips when the follower is cold; set up twice
		gland-starboard | Starboard stern gland | line-starboard | 12½ | starboard | Shaft alley | 343 | 305 | 5 | 19 | 130 | flax, tallowed | 1996-10 | 20 | 45 | 9 | 0.30 | 2021-11 | 6 | 25 | 2.5 | 180 | none | none | suspected | one stud wasted to about 19 mm
		gland-rudder | Rudder stock gland | | A | centre | After peak | 296 | 260 | 4 | 18 | 90 | flax | 1996-10 | 20 | 30 | 22 | | | 4 | 22 | 3 | 120 | none | none | unknown | above the waterline at the normal draft
	`, invent.Values{"basis": "documented", "basis_note": "docking report of 1996", "mark": "board"})
	v.Table("propeller", `
		id | name | line | x | y | z | diameter | blades | pitch | blade_area_ratio | blade_area | material | density | mass | mass_from | below_keel | state | bonded | coated | inscription | maker | made | original | notes
		propeller-port | Port propeller | line-port | 1.35 | 2.75 | 1.95 | 3.35 | 4 | 3.2 | 0.48 | 9.6 | manganese bronze | 8300 | 5180 | cast in | -0.275 | on the shaft, locked | no | no | No 614 P, 5180 K, L.H. | bronze founders at Vennhead (invented) | 1931 | original | polished by divers in 2011
		propeller-starboard | Starboard propeller | line-starboard | 1.35 | -2.75 | 1.95 | 3.35 | 4 | 3.2 | 0.48 | 9.6 | manganese bronze | 8300 | 5180 | cast in | -0.275 | on the shaft, locked | strap | no | No 614 S, 5180 K, R.H. | bronze founders at Vennhead (invented) | 1931 | original | earthing strap renewed 2008; brush worn
	`, invent.Values{"basis": "documented", "mark": "public"})
	v.Add("rudder", "rudder", invent.Values{
		"x": 0, "y": 0, "z": 2.3, "area": 9.8, "mass": 8.6, "stock": 260, "type": "semi-balanced", "material": "mild steel", "below_keel": -0.2,
		"state": "locked amidships", "bonded": "strap", "basis": "documented", "mark": "public",
	})
	return nil
}
