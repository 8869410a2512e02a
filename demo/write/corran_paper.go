package main

import "oakum/demo/invent"

// corranPaper makes the register of plans, reports and letters, the berth, the tide, and what is harmful on board.
func corranPaper(v *vessel) error {
	v.Table("document", `
		id | title | type | number | author | dated | state | kept | expires | notes
		doc-expansion | Shell expansion | shell expansion | 614-22 | the builder | 1930-11 | copy held | plan chest, drawer 3 |  | fold lines hide plates E11 and F11
		doc-lines | Lines plan | offsets | 614-1 | the builder | 1930-08 | held | plan chest, drawer 1 |  | 
		doc-docking | Docking plan | docking plan | 614-9 | the builder | 1931-02 | missing |  |  | last seen with the yard in 1996
		doc-capacity | Capacity plan | capacity plan | 614-14 | the builder | 1931-03 | copy held | plan chest, drawer 2 |  | 
		doc-shaft | Arrangement of shafting | drawing | 614-31 | the builder | 1930-12 | held | plan chest, drawer 3 |  | 
		doc-pumping | Pumping plan | plan | 614-17 | the builder | 1931-04 | held | plan chest, drawer 2 |  | marked up in 1955 and 1975
		doc-stability | Inclining report | stability | R-96-4 | naval architect N | 1996-10 | held | office, file 12 |  | 
		doc-weights | Weight book | log |  | superintendents since 1974 | 1974 | held | office, file 12 |  | three pages missing
		doc-ballast | Ballast letter | letter |  | naval architect N | 1975-03 | held | office, file 12 |  | 
		doc-lift | Visitor lift, as built | specification | VL-19 | lift firm L | 2019-04 | held | office, file 31 |  | 
		doc-survey-1996 | Docking and thickness report | survey report | S-96-118 | survey firm B | 1996-10 | held | office, file 8 |  | 
		doc-survey-2011 | Thickness survey afloat | survey report | 11/207 | survey firm F | 2011-06 | held | office, file 8 |  | inches
		doc-survey-2023 | Ultrasonic survey | survey report | T23-041 | survey firm T | 2023-05 | held | office, file 8 |  | plates named from forward, frames from the bow
		doc-dive-2019 | Dive report | survey report | D-19-3 | dive firm D | 2019-08 | held | office, file 9 |  | 
		doc-dive-2025 | Dive report | survey report | D-25-7 | dive firm D | 2025-09 | held | office, file 9 |  | 
		doc-tow-1996 | Tow approval of 1996 | certificate |  | tow surveyor | 1996-09 | held | office, file 8 | | valid to November 1996 only
		doc-insurance | Hull insurance | contract | H-7731 | insurer | 2026-01 | held | office | 2026-12-31 | asks for a docking by the end of 2028
		doc-consent | Consent for works under water | consent |  | heritage office | 2025-02 | held | office | 2030-02 | propellers not in it
		doc-hazard | Hazard survey | survey report | HZ-14 | laboratory Z | 2014-03 | held | office, file 15 |  | the double bottom was not opened
	`, invent.Values{"mark": "board"})
	v.Table("berth", `
		id | name | latitude | longitude | heading | alongside | datum | charted_depth | surveyed | siltation | bottom | exposed | salinity_low | salinity_high | temperature_low | temperature_high | current | shore_power | bridge_height | moorings | yearly_cost | notes
		berth | Harl Quay | 53.2 | -4.1 | 62 | starboard | chart datum of the Venn | 4.76 | 2024-03 | 0.03 | mud | south-west, 1.2 nautical miles of open water | 14 | 22 | 4 | 19 | 1.4 | 120 | 34 | eight ropes and two chains to the quay | 46000 | the stern takes the mud at the lowest springs
	`, invent.Values{"basis": "measured", "basis_note": "harbour survey of 2024", "mark": "public"})
	v.Table("tide", `
		id | name | latitude | longitude | datum | mean_level | constituents | amplitudes | phases | spring_range | neap_range | valid_from | notes
		tide-harl | Harl Quay | 53.2 | -4.1 | chart datum of the Venn | 2.45 | M2;S2;N2;K1;O1;M4 | 1.575;0.525;0.29;0.09;0.08;0.07 | 318;2;296;178;35;210 | 4.2 | 2.1 | 2012 | invented constants
		tide-skellby | Skellby | 53.4 | -4.2 | old dock datum, 4.40 m above chart datum | -1.95 | M2;S2;N2;K1;O1;M4 | 1.575;0.525;0.29;0.09;0.08;0.05 | 312;355;290;176;33;200 | 4.2 | 2.1 | 2012 | invented constants
		tide-orrin | Orrin Haven | 53.9 | -3.6 | chart datum at Orrin | 2.2 | M2;S2;N2;K1;O1 | 1.41;0.47;0.26;0.08;0.07 | 301;344;279;170;30 | 3.8 | 1.9 | 2012 | invented constants
	`, invent.Values{"mark": "public"})
	v.Table("hazard", `
		id | material | frame | frame_to | space | where | sampled | result | level | quantity | removed | left | paper | notes
		hazard-lagging | asbestos | 78 | 102 | Boiler room | lagging of boilers and steam pipes | 2014-03 | present | | about 4 t | | all of it, boarded in | doc-hazard |
		hazard-packing | asbestos | 12 | 13 | Shaft alley | packing of the stern glands | | not sampled | | | | | doc-hazard | no sample without opening a gland
		hazard-lead | lead | | | | red lead under the topside paint | 2014-03 | present | 62000 | about 640 m2 | | under two coats | doc-hazard |
		hazard-bottom | tributyltin | | | | remains of the bottom paint of 1986 | | suspected | | | | | |
		hazard-pcb | PCB | 48 | 78 | Engine room | old cable sheathing | 2014-03 | suspected | | 300 m | | | doc-hazard |
		hazard-oil | oil | 48 | 78 | Engine room | residue in No 2 tanks' sumps | 2014-03 | present | | about 2 m3 | | | doc-hazard |
	`, invent.Values{"mark": "board"})
	v.Table("life", `
		id | of | median | shape | strength | source
		life-gland | gland | 26 | 4 | 2 | the superintendent, from four ships in the estuary (invented)
		life-anode | anode | 24 | 5 | 2 | divers' notes of 2003, 2011 and 2019 (invented)
	`, invent.Values{})
	return nil
}
