package main

import "oakum/demo/invent"

// corranSpaces makes compartments, tanks, pumps and alarms.
func corranSpaces(v *vessel) error {
	v.Table("compartment", `
		id | name | frame_aft | frame_fwd | x0 | x1 | y0 | y1 | z0 | z1 | permeability | use | floor_area | critical_level | critical_why | alarm_height | tight | opens_to | closed | access | notes
		comp-after-peak | After peak | G | 12 | -4.27 | 7.32 | | | 0 | 7.6 | 0.95 | peak | 34 | 5.2 | water over the flat into the after hold | | watertight | comp-alley | always | manhole in the flat; test the air | steering flat above
		comp-alley | Shaft alley | 12 | 48 | 7.32 | 29.28 | -4.1 | 4.1 | 0.2 | 3.1 | 0.9 | shaft alley | 118 | 1.9 | over the sill of the alley door into the engine room | 0.75 | doubtful | comp-engine | when nobody is aboard | watertight door from the engine room, by hand | door last closed by hand wheel in 2019; gap of 6 mm at the heel
		comp-after-hold | After hold | 12 | 48 | 7.32 | 29.28 | | | 3.1 | 7.6 | 0.85 | exhibition | 220 | 5.4 | over the coaming of the port doors | | open | comp-alley | never | stairs from the main deck |
		comp-engine | Engine room | 48 | 78 | 29.28 | 47.58 | | | 1.05 | 7.6 | 0.82 | machinery | 172 | 2.4 | the switchboard of the bilge pumps | 1.35 | watertight | comp-boiler | when nobody is aboard | ladder from the main deck |
		comp-boiler | Boiler room | 78 | 102 | 47.58 | 62.22 | | | 1.05 | 7.6 | 0.85 | machinery | 140 | 2.9 | the fan motors and the door to the fore hold | 1.35 | doubtful | comp-fore-hold | when nobody is aboard | ladder from the main deck | cable holes in bulkhead 102 not stopped
		comp-fore-hold | Fore hold | 102 | 132 | 62.22 | 80.52 | | | 1.05 | 7.6 | 0.8 | exhibition | 128 | 3.6 | exhibition cases | 1.4 | watertight | | never | stairs from the main deck |
		comp-fore-peak | Fore peak | 132 | 152 | 80.52 | 92.72 | | | 0 | 7.6 | 0.95 | peak | 30 | 5.6 | the chain locker door | | watertight | comp-fore-hold | always | manhole; test the air |
		comp-main-deck | Main deck | 0 | 140 | 0 | 85.4 | | | 7.6 | 10 | 0.95 | accommodation | 860 | 7.9 | door sills | | open | comp-engine;comp-boiler | never | gangway |
	`, invent.Values{"basis": "documented", "basis_note": "capacity plan", "mark": "board"})
	v.Table("passage", `
		id | name | what | space | into | y | sill | width | height | area | state | leak_area | last_proven | notes
		pass-alley | Alley door | watertight door | comp-alley | comp-engine | 0 | 1.9 | 0.75 | 1.1 | | unknown | 4500 | 2019 | last closed by its hand wheel in 2019; a gap of 6 mm at the heel when shut
		pass-alley-hatch | Alley escape hatch | hatch | comp-alley | comp-after-hold | 1.2 | 3.1 | | | 360000 | shut and tight | | 2024-09 |
		pass-78 | Door in bulkhead 78 | door | comp-engine | comp-boiler | -2.4 | 1.65 | 0.8 | 1.75 | | open | | |
		pass-102 | Door in bulkhead 102 | watertight door | comp-boiler | comp-fore-hold | 0 | 2.9 | 0.7 | 1.5 | | shut but leaks | 1500 | 2021-05 | rubber perished
		pass-102-cables | Cable holes in bulkhead 102 | cable or pipe hole | comp-boiler | comp-fore-hold | 3.5 | 2.6 | | | 2500 | open | | | not stopped since the cables of 1987 were drawn
		pass-flat | Door over the peak flat | door | comp-after-peak | comp-after-hold | 0 | 5.2 | 0.7 | 1.7 | | open | | |
		pass-sluice | Sluice valve in bulkhead 12 | valve | comp-after-peak | comp-alley | 0 | 0.6 | | | 7850 | shut and tight | | 2024-09 |
		pass-chain | Chain locker door | door | comp-fore-peak | comp-fore-hold | 0 | 5.6 | 0.6 | 1.4 | | shut but leaks | | | gap not measured
	`, invent.Values{"basis": "measured", "basis_note": "tape, on board", "basis_date": "2025-11", "mark": "board"})
	v.Table("tank", `
		id | name | former_names | in | x0 | x1 | y0 | y1 | z0 | z1 | permeability | capacity | contents | reference_height | tube_x | tube_y | table_sounding | table_volume | cleaned | notes
		tank-ap | After peak tank | | comp-after-peak | 0.5 | 7.3 | -2 | 2 | 0.1 | 3.9 | 0.96 | 41 | ballast | 5.6 | 6.9 | 0.4 | 0;0.5;1;1.5;2;2.5;3;3.5;3.8 | 0;1.2;3.6;7.4;12.6;19.2;27.4;36.2;41 | not opened |
		tank-2p | No 2 double bottom port | No 5 P | comp-engine | 29.3 | 47.5 | 0 | 5.6 | 0 | 1.05 | 0.96 | 74 | ballast | 4.2 | 30 | 1 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;3.1;8.4;22.6;37.9;53.6;69.9;74 | in use |
		tank-2s | No 2 double bottom starboard | No 5 S | comp-engine | 29.3 | 47.5 | -5.6 | 0 | 0 | 1.05 | 0.96 | 74 | ballast | 4.2 | 30 | -1 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;3.1;8.4;22.6;37.9;53.6;69.9;74 | in use |
		tank-3p | No 3 double bottom port | | comp-boiler | 47.6 | 62.2 | 0 | 5.6 | 0 | 1.05 | 0.96 | 57 | void | 4.2 | 48.4 | 1 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;2.4;6.6;17.6;29.3;41.4;53.8;57 | not opened | gains water slowly since about 2017
		tank-3s | No 3 double bottom starboard | | comp-boiler | 47.6 | 62.2 | -5.6 | 0 | 0 | 1.05 | 0.96 | 57 | void | 4.2 | 48.4 | -1 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;2.4;6.6;17.6;29.3;41.4;53.8;57 | not opened | gains water slowly since about 2017
		tank-4p | No 4 double bottom port | | comp-fore-hold | 62.3 | 72 | 0 | 4.8 | 0 | 1.05 | 0.96 | 31 | fresh water | 4.6 | 63 | 0.8 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;1.1;3.2;9;15.3;22;29;31 | clean and dry |
		tank-4s | No 4 double bottom starboard | | comp-fore-hold | 62.3 | 72 | -4.8 | 0 | 0 | 1.05 | 0.96 | 31 | fresh water | 4.6 | 63 | -0.8 | 0;0.1;0.2;0.4;0.6;0.8;1;1.05 | 0;1.1;3.2;9;15.3;22;29;31 | clean and dry |
		tank-5 | No 5 double bottom, centre | | comp-fore-hold | 72 | 78.5 | -3.2 | 3.2 | 0 | 1.05 | 0.96 | 24 | ballast | 4.9 | 72.6 | 0.5 | 0;0.2;0.4;0.6;0.8;1;1.05 | 0;2;5.9;10.6;15.9;22.4;24 | not opened | gains water slowly since about 2017
		tank-fp | Fore peak tank | | comp-fore-peak | 81 | 90 | -2 | 2 | 0.2 | 4.4 | 0.96 | 52 | ballast | 6.4 | 81.4 | 0.3 | 0;0.5;1;1.5;2;2.5;3;3.5;4;4.2 | 0;1.9;5.4;10.1;16;22.9;30.8;39.5;48.6;52 | clean and dry | empty since 1974
	`, invent.Values{"basis": "documented", "basis_note": "capacity plan; tables even keel only", "mark": "board"})
	v.Table("pump", `
		id | name | spaces | rated | rated_head | lift | power | condition | automatic | starts_at | last_run | installed | design_life | notes
		pump-1 | No 1 electric bilge pump | comp-engine;comp-boiler;comp-alley | 60 | 10 | 7.2 | shore | 0.8 | yes | 0.9 | 2026-10 | 2011 | 15 |
		pump-2 | No 2 electric bilge pump | comp-engine;comp-boiler;comp-fore-hold | 60 | 10 | 7.2 | shore | 0.65 | no | | 2026-10 | 1998 | 15 | worn; past the age it was reckoned for
		pump-3 | Diesel salvage pump | | 90 | 12 | 7.5 | own | 0.9 | no | | 2025-11 | 2015 | 15 | on deck; two people, about 40 minutes to start
	`, invent.Values{"basis": "measured", "basis_note": "bucket and level trial", "basis_date": "2024-04"})
	v.Table("alarm", `
		id | name | watches | space | height | reaches | response | last_tested | state | power | notes
		alarm-alley | Alley float | bilge water | Shaft alley | 0.75 | duty keeper by telephone | 1.5 | 2026-09 | works | both |
		alarm-engine | Engine room float | bilge water | Engine room | 1.35 | duty keeper by telephone | 1.5 | 2026-09 | works | both |
		alarm-boiler | Boiler room float | bilge water | Boiler room | 1.35 | a bell on deck | 14 | 2023-02 | unknown | shore | rings on an empty ship at night
		alarm-fore | Fore hold float | bilge water | Fore hold | 1.4 | a bell on deck | 14 | 2025-03 | faulty | shore | float stuck at the last trial
		alarm-power | Shore power | power | | | duty keeper by telephone | 1.5 | 2026-06 | works | battery |
		alarm-cathodic | Impressed set | impressed current | | | nobody | | 2021-05 | switched off | shore | a lamp in the alley that nobody passes
		alarm-fire | Smoke detection | smoke | | | fire brigade and duty keeper | 0.4 | 2026-06 | works | both |
	`, invent.Values{})
	return nil
}
