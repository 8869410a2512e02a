package main

import "oakum/demo/invent"

// corranStrakes are the ten strakes of a side.
func corranStrakes() girthed {
	g := girthed{
		names: []string{"K", "A", "B", "C", "D", "E", "F", "G", "H", "J"}, keel: 0.45, sheer: 1.1,
		x:     []float64{-2.5, 0, 4, 10, 18, 28, 40, 52, 64, 74, 82, 88, 91, 92.6},
		thick: []float64{14, 12.5, 12, 12, 11.5, 11.5, 11.5, 12, 11, 13}, lies: []string{"flush", "in", "out"},
	}
	g.plates.frames, g.plates.last, g.plates.ends = 8, 151, 0.5
	return g
}

// corranShell makes her coated zones, her strakes and her plates.
func corranShell(v *vessel) error {
	v.Table("coating_zone", `
		id | name | area | exposure | metal | system | applied | condition | seen | bare_share | breakdown_a | breakdown_b | current_density | current_density_initial | current_density_final | nominal_film | design_life | bare_rate | inside_rate | x0 | x1 | z0 | z1
		zone-keel | Block strip | 83 | block strip | steel | coal-tar epoxy, three coats | 1996-10 | unknown | 2019-08 | | 0.10 | 0.03 | 80 | 150 | 100 | 300 | 12 | 0.04 | 0.005 | 0 | 92 | 0 | 0.3
		zone-bottom | Bottom | 850 | immersed | steel | coal-tar epoxy, three coats | 1996-10 | fair | 2019-08 | 0.18 | 0.05 | 0.02 | 80 | 150 | 100 | 350 | 15 | 0.035 | 0.01 | 0 | 92 | 0.3 | 2.2
		zone-side | Underwater sides | 340 | immersed | steel | coal-tar epoxy, three coats | 1996-10 | fair | 2019-08 | 0.22 | 0.05 | 0.02 | 80 | 150 | 100 | 350 | 15 | 0.035 | 0.006 | 0 | 92 | 2.2 | 4.0
		zone-waterline | Waterline | 265 | waterline | steel | epoxy on hand-prepared steel | 2014-06 | poor | 2025-09 | 0.35 | 0.10 | 0.04 | 90 | 170 | 110 | 250 | 6 | 0.075 | 0.008 | -4 | 92.5 | 4.0 | 5.4
		zone-topside | Topsides | 525 | atmosphere | steel | alkyd, twice renewed | 2014-06 | fair | 2025-09 | 0.04 | 0.02 | 0.02 | | | | 200 | 8 | 0.02 | 0.006 | -4.6 | 93 | 5.4 | 9.5
		zone-propellers | Propellers and shafts outside | 38 | immersed | bronze | none | | none | 2019-08 | 1 | 1 | 0 | 150 | 300 | 200 | | | 0.01 | | -1 | 9 | 0 | 3.6
		zone-rudder | Rudder | 26 | immersed | steel | coal-tar epoxy | 1996-10 | poor | 2019-08 | 0.4 | 0.10 | 0.03 | 90 | 170 | 110 | 300 | 10 | 0.06 | | -1.6 | 0.2 | 0.2 | 4.4
		zone-bilge | Bilges inside | 410 | inside, bilge | steel | bituminous, patched | 2003 | poor | 2024-04 | 0.4 | 0.10 | 0.03 | | | | 300 | 8 | 0.05 | | 6 | 86 | 0.1 | 1.2
		zone-tanks | Double-bottom tanks inside | 690 | inside, tank | steel | cement wash | 1961 | unknown | | | | | | | | | | 0.05 | | 12 | 78 | 0 | 1.05
	`, invent.Values{"mark": "public"})
	g := corranStrakes()
	if err := v.strakes(g); err != nil {
		return err
	}
	if err := v.plated(g, corranBelt); err != nil {
		return err
	}
	v.Table("doubler", `
		id | name | frame | frame_to | strake | height | side | area | thickness | fitted | expires | fixing | reason | behind | edges_seen | edge_state | zone | notes
		doubler-1p | Waterline doubler 1 | 28 | 52 | G | 4.7 | port | 13.9 | 8 | 1988-04 | 1998-04 | fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | 2023-05 | rusting | zone-waterline | lower edge under water
		doubler-2p | Waterline doubler 2 | 60 | 84 | G | 4.7 | port | 13.9 | 8 | 1988-04 | 1998-04 | fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | 2023-05 | rusting | zone-waterline |
		doubler-3p | Waterline doubler 3 | 96 | 112 | G | 4.8 | port | 9.2 | 8 | 1988-05 | 1998-05 | fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | 2023-05 | sound | zone-waterline |
		doubler-1s | Waterline doubler 4 | 28 | 52 | G | 4.7 | starboard | 13.9 | 8 | 1988-04 | 1998-04 | fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | 2023-05 | leaking | zone-waterline | weeps at frame 44, lower edge
		doubler-2s | Waterline doubler 5 | 60 | 84 | G | 4.7 | starboard | 13.9 | 8 | 1988-04 | 1998-04 | plug and fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | 2023-05 | rusting | zone-waterline |
		doubler-3s | Waterline doubler 6 | 96 | 112 | G | 4.8 | starboard | 9.2 | 8 | 1988-05 | 1998-05 | fillet weld | wastage at the waterline, 1987 survey | not seen since 1988; not primed | | unknown | zone-waterline | quay side: edges not looked at
	`, invent.Values{"basis": "documented", "basis_note": "repair list of 1988"})
	v.Table("repair", `
		id | name | frame | strake | side | space | type | fitted | expires | closes | area | fitted_by | state | last_seen | permanent | notes
		repair-1 | Cement box, boiler room bilge | 66 | B | port | Boiler room | cement box | 2009-11 | 2019-11 | two weeping rivets and a wasted butt | 120 | ship's volunteers | dry | 2026-03 | rivets renewed and butt welded in dock |
		repair-2 | Bolted patch on sanitary discharge | 97 | G | port | Boiler room | bolted patch | 2016-08 | 2026-08 | hole 40 mm below a corroded flange | 1257 | ship's volunteers | dry | 2026-09 | stub renewed or blanked | past its date since August
		repair-3 | Wooden plug in old log hole | 74 | A | starboard | Engine room | wooden plug | 2012-05 | 2022-05 | log tube, valve seized half open | 1963 | dive firm D | weeping | 2026-09 | blanked outside in dock | weeps a cup a day
		repair-4 | Epoxy putty on pit | 38 | E | port | Shaft alley | epoxy | 2023-06 | 2028-06 | pit found by the 2023 survey, 6.4 mm left | | survey firm T | dry | 2026-09 | insert plate |
	`, invent.Values{})
	return nil
}

// corranBelt names the belt and the coated zone of a plate by the height of its middle.
func corranBelt(p sheet) (belt, zone string) {
	switch {
	case p.row == 0:
		return "bottom", "zone-keel"
	case p.strake == "J":
		return "sheer", "zone-topside"
	case p.z < 0.9:
		return "bottom", "zone-bottom"
	case p.z < 2.2:
		return "bilge", "zone-bottom"
	case p.z < 4.0:
		return "side", "zone-side"
	case p.z < 5.4:
		return "waterline", "zone-waterline"
	}
	return "side", "zone-topside"
}
