package main

import "oakum/demo/invent"

// phones are what was read and seen in the dock besides what was found: water that ran out of her, rain that ran in, coats and their films.
func (v *vessel) phones() {
	v.Table("leak", `
		id | date | time | who | frame | strake | side | space | number | rate | head | source | cause | state | stopped | work | notes
		dock-leak-1 | 2027-04-09 | 10:40 | keeper M | 68 | B | port | Boiler room | L20 | 3 | | rivet | bilge water runs out through two wasted rivets | stopped | 2027-04-14 | work-steel | seen from the dock bottom, wet streak to the keel; plate B9
		dock-leak-2 | 2027-04-13 | 15:20 | volunteers' watch | 99 | | starboard | Boiler room | L21 | 12 | | rain | cover off the boiler casing | stopped | 2027-04-13 | | tarpaulin on by four
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("coat", `
		id | date | who | zone | frame | frame_to | number | product | colour | batch | area | used | grade | profile | salts | air | steel | humidity | dew_point | method | started | stopped | wet_film | overcoat_min | overcoat_max | defects
		dock-coat-1 | 2027-04-17 | paint inspector P | zone-bottom | 90 | 150 | 1 | epoxy, aluminium filled | grey | E 2214 | 310 | 118 | Sa 2 1/2 | 78 | 3.1 | 10.2 | 10.6 | 63 | 3.5 | airless | 12:10 | 16:40 | 190 | 10 | 168 |
		dock-coat-2 | 2027-04-18 | paint inspector P | zone-bottom | 0 | 60 | 1 | epoxy, aluminium filled | grey | E 2214 | 290 | 96 | Sa 2 1/2 | 74 | 4.4 | 11.2 | 11.9 | 60 | 3.7 | airless | 11:30 | 16:10 | 170 | 10 | 168 | thin behind the bossings
		dock-coat-3 | 2027-04-19 | paint inspector P | zone-bottom | 90 | 150 | 2 | epoxy | red | E 2231 | 310 | 109 | | | | 9.8 | 10.4 | 70 | 4.6 | airless | 12:40 | 16:50 | 185 | 10 | 168 |
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("film", `
		id | date | time | who | zone | frame | frame_to | coat | readings | nominal | rule | instrument | holiday | notes
		dock-film-1 | 2027-04-18 | 08:30 | paint inspector P | zone-bottom | 90 | 150 | dock-coat-1 | 131; 128; 140; 127; 135; 126; 119; 133; 129; 138 | 125 | pspc-90-10 | magnetic, 1.5 mm plate | not done | forward, both sides
		dock-film-2 | 2027-04-19 | 08:20 | paint inspector P | zone-bottom | 0 | 60 | dock-coat-2 | 127; 118; 96; 88; 121; 130; 102; 124; 116; 91 | 125 | pspc-90-10 | magnetic, 1.5 mm plate | not done | under the counter and behind the bossings: another pass before the second coat
	`, invent.Values{"mark": "board", "basis": "measured"})
}
