package main

import "oakum/demo/invent"

// corranMatters makes the questions, their answers, what they are judged by and who is heard.
func corranMatters(v *vessel) error {
	v.Table("matter", `
		id | name | question | due | decided_by | state | why
		matter-dock | Which dock | Skellby on a spring tide, or the lift at Orrin Haven by open water? | 2027-01-15 | board | open | the window at Skellby is held until then
		matter-when | Dock now or wait | Dock in spring 2027, in autumn 2027, or wait for the grant to be sure? | 2027-01-15 | board | open | each year adds 6 to 9 t and wastes the waterline
		matter-propellers | Propellers and tail shafts | Do they stay on, and if not, where do they go? | 2027-02-28 | board, with the heritage office | open | they draw the current that should guard the hull
		matter-glands | Stern glands | Repack, cover, or leave? | 2027-02-28 | superintendent | open | packed in 1996, reckoned good for twenty years
		matter-doublers | Doublers of 1988 | Off and inserted, edges mended, or left? | 2027-03-15 | board | open | nobody has seen the plating behind since 1988
		matter-openings | Openings | How many of the 41 are closed for good? | 2027-02-28 | superintendent | open | 17 have one barrier only
		matter-coating | Coating scheme | Full scheme, underwater only, or spot repair? | 2027-03-15 | board | open | the largest sum of all
		matter-anodes | Anodes or impressed current | What guards the hull for the next fifteen years? | 2027-03-15 | superintendent | open | the zinc is nearly gone; the set stood dead for two years
	`, invent.Values{"mark": "public"})
	v.Table("criterion", `
		id | name | matter | measured_in | worst | best | swing | notes
		criterion-cost | Cost | | thousand euro | 950 | 0 | 90 | money of the docking
		criterion-risk | Risk left | | share | 2 | 0 | 100 | of the parts it treats
		criterion-heritage | Original fabric kept | | points | 0 | 10 | 70 | 10: all stays in place and can be seen
		criterion-upkeep | Upkeep after | | thousand euro a year | 12 | 0 | 40 |
		criterion-undo | Can be undone | | points | 0 | 10 | 35 |
		criterion-days | Days in dock | | days | 14 | 0 | 30 |
	`, invent.Values{"mark": "board"})
	scored := invent.Values{"criteria": []string{"criterion-cost", "criterion-risk", "criterion-heritage", "criterion-upkeep", "criterion-undo", "criterion-days"}, "mark": "board"}
	v.Table("course", corranCourses, scored)
	v.Table("voice", `
		id | name | matter | criteria | swings | prefers | accepts | refuses | words | heard
		voice-curator | curator | matter-propellers | criterion-heritage;criterion-undo;criterion-risk;criterion-cost | 100;70;60;30 | course-propellers-isolate | course-propellers-on;course-propellers-off | course-propellers-give | A steamer without screws is a hall. If they must come off, they stay with her. | 2026-09-22
		voice-superintendent | superintendent | matter-propellers | criterion-risk;criterion-cost;criterion-upkeep;criterion-heritage | 100;60;60;30 | course-propellers-tails | course-propellers-off | course-propellers-on | Two glands of thirty years and ten tonnes of bronze hanging on them. Take it out. | 2026-09-22
		voice-treasurer | treasurer | matter-propellers | criterion-cost;criterion-risk;criterion-upkeep | 100;70;50 | course-propellers-isolate | course-propellers-off;course-propellers-on | | The gift may only be spent on shafts and propellers; that frees nothing for paint. | 2026-09-22
		voice-volunteers | volunteers | matter-propellers | criterion-heritage;criterion-undo;criterion-days;criterion-risk | 100;80;20;50 | course-propellers-on | course-propellers-isolate | course-propellers-give;course-propellers-tails | We polished them. | 2026-10-03
		voice-heritage | heritage adviser | matter-propellers | criterion-heritage;criterion-undo;criterion-risk | 100;90;60 | course-propellers-isolate | course-propellers-off | course-propellers-give | Least change that makes her safe; whatever comes off is recorded and stays in her keeping. | 2026-10-08
		voice-superintendent-doublers | superintendent | matter-doublers | criterion-risk;criterion-cost | 100;60 | course-doublers-off | course-doublers-half | course-doublers-leave | Nobody knows what is behind them. | 2026-09-22
		voice-treasurer-doublers | treasurer | matter-doublers | criterion-cost;criterion-risk | 100;80 | course-doublers-half | course-doublers-off | | Open two and see. | 2026-09-22
		voice-treasurer-when | treasurer | matter-when | criterion-cost;criterion-risk | 100;60 | course-when-autumn | course-when-wait | course-when-spring | No signature before the grant is a letter. | 2026-09-22
		voice-superintendent-when | superintendent | matter-when | criterion-risk;criterion-cost | 100;40 | course-when-spring | course-when-autumn | course-when-wait | The glands do not wait for a committee. | 2026-09-22
	`, invent.Values{"mark": "board"})
	v.Table("decision", `
		id | matter | course | what | date | who | why | rejected | against | review | paper | notes
		decision-1 | | | No docking abroad | 2025-06-12 | board | three weeks of tow and no insurer | | treasurer: cheapest price | | |
		decision-2 | matter-coating | | No open blasting, water jetting only | 2026-02-19 | board | lead and the riveted seams | | | | doc-hazard |
		decision-3 | | | A ship's bell lent to the school at Vennhead | 2018-09-14 | board | asked for by the town for five years | | curator: no end date in the letter | 2023-09-14 | | the letter has no end
	`, invent.Values{"mark": "board"})
	v.Table("trigger", `
		id | name | frame | frame_to | strake | strake_to | side | finding | measure | limit | limit_unit | direction | when | course | then | money | days | decided_by | hours | agreed | chance | state
		trigger-1 | Behind the doublers worse | 28 | 112 | G | | | doubler | thickness | 7.5 | mm | worse | below | work-doublers | all six off, inserts full length | 150000 | 6 | board's three of the day | 24 | 2026-10-15 | 0.45 | ready
		trigger-2 | Behind the doublers better | 28 | 112 | G | | | doubler | thickness | 9 | mm | better | above | course-doublers-half | four stay on, edges welded | 80000 | 3 | superintendent | 12 | 2026-10-15 | 0.25 | ready
		trigger-3 | Bottom plates worse | 48 | 102 | A | C | | plate | area | 18 | m2 | worse | above | work-steel | second gang of platers; extra days asked | 120000 | 4 | board's three of the day | 24 | 2026-10-15 | 0.35 | ready
		trigger-4 | Bottom plates better | 102 | 152 | A | D | | plate | thickness | 10.2 | mm | better | above | | forward plates stay; money goes to the waterline | 60000 | 2 | superintendent | 12 | 2026-10-15 | 0.4 | ready
		trigger-5 | Propeller boss cracked | 0 | 6 | | | | propeller | seen | | | worse | at all | course-propellers-off | both off, crack recorded, no repair in this docking | 25000 | 2 | board's three of the day | 24 | 2026-10-15 | 0.1 | ready
		trigger-6 | Bush worn down | 4 | 13 | | | | bearing | clearance | 6.4 | mm | worse | above | work-tubes | shaft shored; new wood lining priced | 30000 | 3 | superintendent | 24 | 2026-10-15 | 0.3 | ready
		trigger-7 | Rivets wasted | | | | | | other | count | 900 | | worse | above | work-rivets | second riveting crew | 60000 | 3 | board's three of the day | 24 | 2026-10-15 | 0.25 | ready
		trigger-8 | Coating better forward | 90 | 152 | | | | coating | share | 0.1 | - | better | below | | spot repair forward of frame 90 | 70000 | 2 | superintendent and paint inspector | 12 | 2026-10-15 | 0.2 | ready
		trigger-9 | Blanks wasted | | | | | | opening | thickness | 8 | mm | worse | below | work-openings | every blank of that year renewed | 28000 | 2 | superintendent | 24 | 2026-10-15 | 0.3 | ready
	`, invent.Values{"mark": "board"})
	v.Table("look", `
		id | name | type | matter | about | price | days | readings | error | right | risk
		look-doublers | Two-layer gauging of the doublers | gauging | matter-doublers | doubler-1p;doubler-2p;doubler-3p;doubler-1s;doubler-2s;doubler-3s | 14000 | 21 | 60 | 0.4 | 0.75 |
		look-dive | Dive on blanks and stern gear | dive | matter-openings | propeller-port;propeller-starboard;opening-01;opening-02;opening-04;opening-05 | 11500 | 20 | | | 0.8 | divers near the openings
		look-gland | Both stern glands opened afloat, one at a time, a seal outside | gland | matter-glands | gland-port;gland-starboard | 14500 | 15 | | | 0.85 | one barrier while it is open: two people, a pump, low water
		look-tank | No 3 tanks opened | tank entry | | tank-3p;tank-3s | 7200 | 10 | | | 0.9 | a closed space
		look-boiler | Gauging under the boilers | gauging | matter-coating | zone-bottom | 9500 | 25 | 40 | 0.15 | 0.9 |
		look-incline | Inclining at the berth | inclining | matter-dock | | 6500 | 10 | | | 0.95 |
	`, invent.Values{"mark": "board"})
	v.schemes()
	return v.Err()
}

// corranCourses are the answers. Scores stand in the order cost, risk, heritage, upkeep, undo, days.
const corranCourses = `
	id | matter | name | leaves_as_is | cost_low | cost_likely | cost_high | yearly_cost | days | mass_off | x | y | z | protection | bronze_off | risk | risk_left | life | treats | heritage | custody | needs | excludes | scores | scores_low | scores_high | consent | heavy_parts | road_limit | ground_bears
	course-propellers-on | matter-propellers | Stay on, as they are | yes | 22000 | 27000 | 60000 | 900 | 2 | 0 | | | | bare bronze goes on drawing current | 0 | glands and tubes stay under load | 1 | 10 | gland-port;gland-starboard | nothing changes | | | | 27;1;10;5;10;2 | 60;1;10;8;10;3 | 22;0.9;10;3;10;2 | not needed | stay |  | 
	course-propellers-isolate | matter-propellers | Stay on, coated and parted from the hull | no | 41000 | 52000 | 96000 | 700 | 3 | 0 | | | | coated bronze draws about a tenth | 0 | glands repacked, load stays | 0.7 | 12 | gland-port;gland-starboard | stays in place, hidden under paint | | work-glands | | 52;0.7;9;3;9;3 | 96;0.8;8;5;8;5 | 41;0.6;10;2;9;2 | asked |
	course-propellers-seal | matter-propellers | Stay on, glands sealed, shafts blanked inside | no | 34000 | 43000 | 78000 | 500 | 3 | 0 | | | | bare bronze goes on drawing current | 0 | a second barrier behind each gland | 0.4 | 15 | gland-port;gland-starboard | stays in place, can be undone with spanners | | work-glands | | 43;0.4;9;2;8;3 | 78;0.55;8;3;7;5 | 34;0.3;10;1;9;2 | not needed | stay, shaft sealed and blanked | |
	course-propellers-off | matter-propellers | Off, shafts stay, blanks over the tubes | no | 66000 | 79000 | 134000 | 400 | 5 |  |  |  |  | bronze gone; shafts covered |  | water can't reach the glands | 0.2 | 25 | gland-port;gland-starboard | seen ashore at the quay, drilled for nothing | on a stand at Harl Quay | work-propellers;work-blanks | | 79;0.2;6;1;8;5 | 134;0.35;5;2;7;7 | 66;0.1;7;1;9;4 | asked | off, shown at the ship | 18 | 60
	course-propellers-tails | matter-propellers | Off with the tail shafts, tubes blanked in and out | no | 104000 | 128000 | 210000 | 300 | 7 |  |  |  |  | bronze and sleeves gone | 24 | two barriers in each tube | 0.08 | 30 | gland-port;gland-starboard;line-port;line-starboard | shafts leave the ship | on stands at Harl Quay and in the shed | work-propellers;work-blanks | | 128;0.08;4;1;6;7 | 210;0.15;3;2;5;9 | 104;0.05;5;1;7;6 | asked | off with the tail length | 18 | 60
	course-propellers-give | matter-propellers | Off, one kept, one given to the school of engineers | no | 70000 | 84000 | 140000 | 200 | 5 |  |  |  |  | bronze gone; shafts covered |  | water can't reach the glands | 0.2 | 25 | gland-port;gland-starboard | half of the pair leaves her keeping | the school, by deed | work-propellers;work-blanks | | 84;0.2;2;0.5;1;5 | 140;0.35;1;1;0;7 | 70;0.1;3;0.5;2;4 | needed | off, placed elsewhere | 18 | 
	course-glands-repack | matter-glands | Repacked in dock, studs renewed | no | 16000 | 19000 | 34000 | 300 | 2 | 0 | | | | | | | 0.3 | 20 | gland-port;gland-starboard | | | work-glands | | 19;0.3;9;2;10;2 | 34;0.4;9;3;10;3 | 16;0.2;9;1;10;2 | not needed |
	course-glands-cover | matter-glands | Covers welded over tube and shaft outside | no | 26000 | 33000 | 58000 | 100 | 3 | 0 | | | | | | | 0.12 | 25 | gland-port;gland-starboard | shafts can't turn again without cutting | | | course-propellers-on | 33;0.12;5;0.5;5;3 | 58;0.2;4;1;4;4 | 26;0.08;6;0.3;6;2 | asked |
	course-glands-leave | matter-glands | Left, an emergency seal kept at hand | yes | 3000 | 4000 | 7000 | 1200 | 0 | 0 | | | | | | | 0.85 | 3 | gland-port;gland-starboard | | | | | 4;0.85;10;4;10;0 | 7;1;10;6;10;0 | 3;0.7;10;3;10;0 | not needed |
	course-doublers-off | matter-doublers | All off, inserts | no | 116000 | 150000 | 370000 | 0 | 6 | 0.8 | 41 | 0 | 4.7 | | | | 0.05 | 40 | doubler-1p;doubler-2p;doubler-3p;doubler-1s;doubler-2s;doubler-3s | wasted original plates replaced where they must | | work-doublers | | 150;0.05;5;0;3;6 | 370;0.1;4;0;2;12 | 116;0.03;6;0;4;5 | given |
	course-doublers-half | matter-doublers | Two opened, the rest edges welded | no | 54000 | 70000 | 150000 | 600 | 3 | 0.3 | 41 | 0 | 4.7 | | | | 0.45 | 10 | doubler-1p;doubler-2p;doubler-3p;doubler-1s;doubler-2s;doubler-3s | | | | | 70;0.45;7;2;6;3 | 150;0.6;6;3;5;6 | 54;0.3;8;1;7;2 | given |
	course-doublers-leave | matter-doublers | Left, watched | yes | 0 | 2000 | 6000 | 1500 | 0 | 0 | | | | | | | 1 | 3 | doubler-1p;doubler-2p;doubler-3p;doubler-1s;doubler-2s;doubler-3s | | | | | 2;1;8;4;10;0 | 6;1.2;8;6;10;0 | 0;0.9;8;3;10;0 | not needed |
	course-openings-blank | matter-openings | 17 blanked outside, 12 valves overhauled | no | 78000 | 92000 | 140000 | 400 | 4 | -1.1 | 45 | 0 | 1.5 | | | | 0.15 | 25 | | blanks can be cut off again | | work-openings | | 92;0.15;8;1;8;4 | 140;0.25;7;2;7;6 | 78;0.1;8;1;8;3 | given |
	course-openings-some | matter-openings | The worst nine blanked | no | 38000 | 45000 | 72000 | 900 | 2 | -0.6 | 45 | 0 | 1.5 | | | | 0.5 | 20 | | | | | | 45;0.5;9;2;9;2 | 72;0.6;9;3;9;3 | 38;0.4;9;2;9;2 | given |
	course-openings-leave | matter-openings | Valves greased, nothing closed | yes | 6000 | 8000 | 15000 | 1800 | 0 | 0 | | | | | | | 0.95 | 5 | | | | | | 8;0.95;10;5;10;0 | 15;1;10;7;10;0 | 6;0.85;10;4;10;0 | not needed |
	course-coating-full | matter-coating | Full scheme to the rail | no | 518000 | 612000 | 915000 | 1500 | 8 | 0 | | | | two thirds less current | | | 0.25 | 15 | zone-bottom;zone-side;zone-keel;zone-waterline;zone-topside | | | | | 612;0.25;8;2;7;8 | 915;0.35;8;3;7;12 | 518;0.2;8;1;7;7 | given |
	course-coating-under | matter-coating | Under water and waterline only | no | 434000 | 513000 | 755000 | 3500 | 7 | 0 | | | | two thirds less current | | | 0.35 | 15 | zone-bottom;zone-side;zone-keel;zone-waterline | | | | | 513;0.35;8;5;7;7 | 755;0.45;8;7;7;10 | 434;0.3;8;4;7;6 | given |
	course-coating-spot | matter-coating | Washed, spot repairs, one coat | yes | 120000 | 150000 | 230000 | 9000 | 3 | 0 | | | | a quarter less current | | | 0.75 | 5 | zone-bottom;zone-side;zone-keel | | | | | 150;0.75;9;9;9;3 | 230;0.85;9;12;9;5 | 120;0.65;9;7;9;2 | not needed |
	course-anodes-zinc | matter-anodes | New zinc, the set as a second guard | no | 36000 | 42000 | 60000 | 900 | 2 | -2.1 | 44 | 0 | 1.2 | the zinc alone holds ten years | | | 0.3 | 12 | zone-bottom;zone-side;zone-waterline | | | work-anodes | | 42;0.3;9;1;10;2 | 60;0.4;9;2;10;3 | 36;0.2;9;1;10;2 | not needed |
	course-anodes-aluminium | matter-anodes | Aluminium anodes, the set taken out | no | 39000 | 47000 | 70000 | 300 | 2 | -1.2 | 44 | 0 | 1.2 | less sure in fresh months | | | 0.35 | 14 | zone-bottom;zone-side;zone-waterline | | | | | 47;0.35;9;1;9;2 | 70;0.5;9;2;9;3 | 39;0.25;9;1;9;2 | not needed |
	course-anodes-impressed | matter-anodes | Impressed current alone, new cells, alarm to the telephone | no | 30000 | 38000 | 75000 | 3200 | 1 | 0 | | | | dead when nobody looks | | | 0.5 | 15 | zone-bottom;zone-side;zone-waterline | | | work-impressed | | 38;0.5;9;4;10;1 | 75;0.7;9;6;10;2 | 30;0.4;9;3;10;1 | not needed |
	course-anodes-both | matter-anodes | New zinc and the set made good | no | 50000 | 59000 | 100000 | 3400 | 3 | -2.1 | 44 | 0 | 1.2 | either can fail | | | 0.15 | 18 | zone-bottom;zone-side;zone-waterline | | | work-anodes;work-impressed | | 59;0.15;9;4;10;3 | 100;0.25;9;6;10;4 | 50;0.1;9;3;10;2 | not needed |
	course-anodes-leave | matter-anodes | Left, the set watched each week | yes | 0 | 2000 | 5000 | 3600 | 0 | 0 | | | | the zinc is gone in two years | | | 1 | 2 | zone-bottom;zone-side;zone-waterline | | | | | 2;1;9;5;10;0 | 5;1.2;9;7;10;0 | 0;0.9;9;4;10;0 | not needed |
	course-dock-none | matter-dock | No dock yet | yes | 0 | 0 | 0 | 0 | 0 | 0 | | | | | | the window is let go | 1 | | | | | | | 0;1;6;0;10;0 | 0;1.2;6;0;10;0 | 0;1;6;0;10;0 | not needed |
	course-dock-skellby | matter-dock | Skellby Old Graving Dock | no | 184000 | 201000 | 303000 | 0 | 14 | 0 | | | | | | water enough on springs only | 0.5 | | | works on a listed dock; visitors can watch | | | course-dock-orrin | 201;0.5;9;0;10;0 | 303;0.7;9;0;10;0 | 184;0.4;9;0;10;0 | given |
	course-dock-orrin | matter-dock | Orrin Haven lift | no | 420000 | 470000 | 690000 | 0 | 45 | 0 | | | | | | 74 nautical miles of open water; ballast to be moved | 0.9 | | | away for seven months | | | course-dock-skellby;course-when-spring | 470;0.9;6;0;10;0 | 690;1.2;5;0;10;0 | 420;0.7;7;0;10;0 | needed |
	course-when-spring | matter-when | Spring 2027 | no | 0 | 0 | 0 | 0 | 0 | 0 | | | | | | no season lost | 0.6 | | | | | | | 0;0.6;5;0;5;0 | 20;0.7;5;0;5;0 | 0;0.5;5;0;5;0 | not needed |
	course-when-autumn | matter-when | Autumn 2027 | no | 20000 | 28000 | 60000 | 0 | 0 | 0 | | | | | | a month of the season lost | 0.7 | | | | | | | 28;0.7;5;0;5;0 | 60;0.8;5;0;5;0 | 20;0.6;5;0;5;0 | not needed |
	course-when-wait | matter-when | Wait two years | yes | 30000 | 90000 | 400000 | 6000 | 0 | 0 | | | | | | glands, plugs and doublers age on | 1.3 | | | | | | | 90;1.3;5;6;5;0 | 400;1.8;5;8;5;0 | 30;1.1;5;4;5;0 | not needed |
`

// schemes are whole plans to set side by side.
func (v *vessel) schemes() {
	musts := []string{}
	all := []string{}
	for _, w := range rows(corranItems) {
		id := "work-" + w[2]
		if w[9] == "yes" {
			musts = append(musts, id)
		}
		if w[2] != "tubes" {
			all = append(all, id)
		}
	}
	v.Add("scheme", "scheme-spring", invent.Values{
		"name": "Spring 2027 at Skellby, propellers off", "courses": []string{"course-dock-skellby", "course-when-spring", "course-propellers-off", "course-glands-repack", "course-doublers-off", "course-openings-blank", "course-coating-full", "course-anodes-both"},
		"works": all, "dock": "dock-skellby", "window": "window-spring", "bid": "bid-s", "date": "2027-04-08", "reserve": 72000, "days": 14, "next_after": 25, "standing": true, "mark": "board",
	})
	v.Add("scheme", "scheme-autumn", invent.Values{
		"name": "Autumn 2027 at Skellby, propellers stay", "courses": []string{"course-dock-skellby", "course-when-autumn", "course-propellers-isolate", "course-glands-repack", "course-doublers-half", "course-openings-blank", "course-coating-under", "course-anodes-zinc"},
		"works": append(append([]string{}, musts...), "work-steel", "work-rivets", "work-tubes", "work-anodes"), "dock": "dock-skellby", "window": "window-autumn", "bid": "bid-v", "date": "2027-09-15", "reserve": 72000, "days": 14, "next_after": 10, "mark": "board",
	})
	v.Add("scheme", "scheme-orrin", invent.Values{
		"name": "Winter 2027 at Orrin Haven, everything", "courses": []string{"course-dock-orrin", "course-when-autumn", "course-propellers-tails", "course-glands-cover", "course-doublers-off", "course-openings-blank", "course-coating-full", "course-anodes-both"},
		"works": all, "dock": "dock-orrin", "window": "window-orrin", "bid": "bid-o", "date": "2027-10-18", "reserve": 190000, "days": 45, "next_after": 25, "mark": "board",
	})
	v.Add("scheme", "scheme-wait", invent.Values{
		"name": "Wait two years", "courses": []string{"course-dock-none", "course-when-wait", "course-propellers-on", "course-glands-leave", "course-doublers-leave", "course-openings-leave", "course-coating-spot", "course-anodes-leave"},
		"wait": true, "reserve": 72000, "next_after": 2, "mark": "board",
	})
}
