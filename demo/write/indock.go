package main

import (
	"fmt"

	"oakum/demo/invent"
	"oakum/dossier"
)

// inDock makes the twelve days in dock that follow the steamer's story: the found hull is better than feared forward and worse behind the
// doublers, and one propeller boss is cracked. The records refer to hers and are entered on their days.
func inDock() ([]dossier.Record, error) {
	v := &vessel{Deck: invent.NewDeck()}
	v.Table("draft", `
		id | date | time | fwd_port | fwd_starboard | mid_port | mid_starboard | aft_port | aft_starboard | salinity | temperature | afloat | occasion
		dock-draft-1 | 2027-04-08 | 09:10 | 4.55 | 4.54 | 4.77 | 4.76 | 5.04 | 5.02 | 17.5 | 8.2 | yes | entry to dock
		dock-draft-2 | 2027-04-08 | 13:20 | 4.41 | 4.40 | 4.60 | 4.58 | 4.78 | 4.77 | 17.5 | 8.2 | on blocks | landed
	`, invent.Values{"basis": "measured", "sd": 0.01, "water": "calm", "mark": "board"})
	v.Table("day", `
		id | date | number | weather | lost | people | hours | done | problems | decided | visitors | level | spent
		day-01 | 2027-04-08 | 1 | dry, light wind | 0 | 22 | 190 | docked on the morning tide, landed 13:20, pumped dry by 21:00 | two side shores shifted | | | 0.1 | 98000
		day-02 | 2027-04-09 | 2 | dry | 0 | 34 | 300 | washed to frame 90 | mussels thicker than guessed, a second skip | | 40 | | 121000
		day-03 | 2027-04-10 | 3 | showers | 3 | 34 | 270 | washing done; gauging begun; stern gear seen | crack in the boss of the port propeller | F1 shown to the board's three | | | 149000
		day-04 | 2027-04-11 | 4 | dry | 0 | 41 | 360 | gauging forward done | | propellers off, both | | | 186000
		day-05 | 2027-04-12 | 5 | dry | 0 | 44 | 390 | doublers 1 and 4 opened | plate behind them 5.8 to 7.2 mm, holes at frame 44 | all six off | 120 | | 231000
		day-06 | 2027-04-13 | 6 | rain | 6 | 38 | 250 | doublers 2 and 5 off; port propeller off | | forward bottom stays; money to the waterline | | | 268000
		day-07 | 2027-04-14 | 7 | dry | 0 | 47 | 420 | inserts begun; starboard propeller off; jetting to frame 70 | | | 60 | | 327000
		day-08 | 2027-04-15 | 8 | dry, cold | 0 | 48 | 430 | bushes measured; blanks cut | after bush port worn to 6.9 mm | relining left, tube blanked | | | 381000
		day-09 | 2027-04-16 | 9 | fog until noon | 4 | 46 | 350 | openings 01 to 14 blanked; glands repacked | steel too cold for paint until eleven | | | | 438000
		day-10 | 2027-04-17 | 10 | dry | 0 | 49 | 440 | inserts port done; first coat forward | | spot repair forward of frame 90 put to the inspector once more: the jetting crew is there already | 180 | | 505000
		day-11 | 2027-04-18 | 11 | dry | 0 | 49 | 440 | inserts starboard half done; first coat aft | four days more asked of the dock | extra days taken, 21 April flooding put to 25 April | | | 571000
		day-12 | 2027-04-19 | 12 | showers | 2 | 45 | 380 | second coat forward; anodes begun | | | | | 634000
	`, invent.Values{"mark": "board"})
	v.Table("found", `
		id | number | date | who | frame | frame_to | strake | side | finding | against | condition | thickness | area | length | depth | clearance | share | count | part | work | cause | proposed | quantity | per | cost | days | disposition | decided_by | decided_on | as_left | trigger
		found-01 | F1 | 2027-04-10 | superintendent | 2 | | | port | propeller | worse | crack 140 mm long in the boss between blades 2 and 3 | | | 0.14 | | | | | propeller-port | work-propellers | fatigue, old; no shine in it | take off, record, no repair now | | | 66000 | 3 | renew | board's three | 2027-04-11 | off, on a stand at the head of the dock | trigger-5
		found-02 | F2 | 2027-04-11 | survey firm T | 102 | 148 | B | both | plate | better | least 10.6, mean 11.3 of 96 readings | 10.6 | | | | | | 96 | | work-steel | | leave | | | 0 | 0 | leave | superintendent | 2027-04-13 | as found, coated | trigger-4
		found-03 | F3 | 2027-04-12 | superintendent | 28 | 52 | G | port | doubler | worse | plate behind wasted in a band 0.3 m high along the lower edge | 5.8 | 9.6 | | | | | | doubler-1p | work-doublers | wet behind since the weld cracked | inserts full length | 13.9 | m2 | 31000 | 2 | insert | board's three | 2027-04-12 | inserts of 12 mm | trigger-1
		found-04 | F4 | 2027-04-12 | superintendent | 28 | 52 | G | starboard | through | worse | three holes at frame 44, the largest 40 mm | 0 | 10.4 | | | | | 3 | doubler-1s | work-doublers | wet behind | inserts full length | 13.9 | m2 | 33000 | 2 | insert | board's three | 2027-04-12 | inserts of 12 mm | trigger-1
		found-05 | F5 | 2027-04-13 | superintendent | 60 | 84 | G | port | doubler | worse | plate behind 6.6 to 8.1 mm | 6.6 | 7.7 | | | | | | doubler-2p | work-doublers | | inserts full length | 13.9 | m2 | 29000 | 2 | insert | board's three | 2027-04-13 | inserts of 12 mm | trigger-1
		found-06 | F6 | 2027-04-15 | fitter of yard S | 5 | | | port | bearing | worse | wood of the after bush worn | | | | | 6.9 | | | bearing-port-1 | work-tubes | | leave: shaft locked, tube blanked | | | 0 | 0 | monitor | superintendent | 2027-04-15 | tube blanked outside | trigger-6
		found-07 | F7 | 2027-04-15 | fitter of yard S | 5 | | | starboard | bearing | as expected | wood of the after bush | | | | | 5.4 | | | bearing-starboard-1 | work-tubes | | leave | | | 0 | 0 | leave | superintendent | 2027-04-15 | tube blanked outside |
		found-08 | F8 | 2027-04-14 | paint inspector P | 90 | 150 | B | both | coating | better | firmly holding, bare share by square metre count | | | | | | 0.08 | | zone-bottom | work-coating | | spot repair forward | | | | | open | | | | trigger-8
		found-09 | F9 | 2027-04-16 | superintendent | 61 | | A | port | opening | as expected | outer blank of 1996, 10.9 mm left | 10.9 | | | | | | | opening-01 | work-openings | | leave | | | 0 | 0 | leave | superintendent | 2027-04-16 | coated |
		found-10 | F10 | 2027-04-14 | survey firm T | 60 | 76 | B | port | plate | worse | 7.9 to 8.8 mm over two plates, pits to 3 mm | 7.9 | 8.2 | | 3 | | | | plate-b09p | work-steel | bilge water inside | renew two plates | 760 | kg | 25000 | 2 | renew | superintendent | 2027-04-15 | renewed |
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("change", `
		id | number | date | found | work | trigger | description | quantity | per | unit_rate | amount | days | pot | state | approved_by | approved_on
		change-1 | C1 | 2027-04-11 | found-01 | work-propellers | trigger-5 | crack recorded, boss shored for the lift | 60 | hour | 68 | 4080 | 0.5 | pot-shafts | approved | board's three | 2027-04-11
		change-2 | C2 | 2027-04-12 | found-03 | work-doublers | trigger-1 | all six doublers off, inserts full length | 37 | m2 | 1950 | 72150 | 4 | pot-dock | approved | board's three | 2027-04-12
		change-3 | C3 | 2027-04-13 | found-02 | work-steel | trigger-4 | forward bottom plates left | -1400 | kg | 33 | -46200 | -2 | pot-dock | approved | superintendent | 2027-04-13
		change-4 | C4 | 2027-04-15 | found-10 | work-steel | | two plates B9 and B10 port | 760 | kg | 33 | 25080 | 2 | pot-dock | approved | superintendent | 2027-04-15
		change-5 | C5 | 2027-04-18 | | work-days | | four days more in the dock | 4 | day | 5200 | 20800 | 4 | pot-dock | approved | board's three | 2027-04-18
	`, invent.Values{"mark": "board"})
	c := invent.NewChance(seed, "in dock")
	for i := range 96 {
		frame, side := 102+i/2, []string{"port", "starboard"}[i%2]
		v.Add("thickness", fmt.Sprintf("t2027-%03d", i+1), invent.Values{
			"date": "2027-04-11", "survey": "2027, in dock", "number": fmt.Sprint(i + 1), "frame": fmt.Sprint(frame), "strake": "B", "side": side, "thickness": invent.Round(max(10.6, c.Normal(11.3, 0.28)), 1),
			"sd": 0.1, "result": "read", "firm": "survey firm T", "taken_from": "outside", "in_dock": true, "paint": "no", "basis": "measured", "mark": "board",
		})
	}
	v.yard()
	v.pairs()
	v.phones()
	v.promised()
	records, err := v.Records()
	if err != nil {
		return nil, err
	}
	changed, err := moved()
	records = append(records, changed...)
	opening(records)
	return records, err
}
