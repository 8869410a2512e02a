package main

import (
	"fmt"

	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// yard adds what the yard and the trust wrote down around the twelve days: the landing, the weather, decisions, watches, and the money that came.
func (v *vessel) yard() {
	board := invent.Values{"mark": "board"}
	v.Table("landing", `
		id | date | time | dock | forward_of_plan | to_port | slack | crushed | measured_by | notes
		landing-1 | 2027-04-08 | 21:40 | dock-skellby | 0.42 | -0.03 | 1; 2 | 23 | dockmaster and superintendent | Blocks 1 and 2 drawn down for the rudder. Cap 23 crushed 18 mm; packed with oak on the second day.
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("climate", `
		id | date | time | who | air | humidity | steel | wind | rain | forecast
		dock-climate-01 | 2027-04-16 | 07:00 | paint inspector P | 4.1 | 96 | 3.2 | 3 | no |
		dock-climate-02 | 2027-04-16 | 11:00 | paint inspector P | 7.8 | 81 | 6.9 | 4 | no |
		dock-climate-03 | 2027-04-16 | 15:00 | paint inspector P | 9.6 | 68 | 9.8 | 6 | no |
		dock-climate-04 | 2027-04-16 | 19:00 | paint inspector P | 7.0 | 79 | 7.4 | 5 | no |
		dock-climate-05 | 2027-04-17 | 07:00 | paint inspector P | 5.5 | 84 | 5.1 | 6 | no |
		dock-climate-06 | 2027-04-17 | 11:00 | paint inspector P | 9.9 | 64 | 10.2 | 8 | no |
		dock-climate-07 | 2027-04-17 | 15:00 | paint inspector P | 11.2 | 58 | 12.1 | 9 | no |
		dock-climate-08 | 2027-04-17 | 19:00 | paint inspector P | 8.4 | 71 | 9.0 | 7 | no |
		dock-climate-09 | 2027-04-18 | 07:00 | paint inspector P | 6.0 | 80 | 5.9 | 8 | no |
		dock-climate-10 | 2027-04-18 | 11:00 | paint inspector P | 10.4 | 62 | 10.6 | 10 | no |
		dock-climate-11 | 2027-04-18 | 15:00 | paint inspector P | 11.9 | 57 | 12.6 | 11 | no |
		dock-climate-12 | 2027-04-18 | 19:00 | paint inspector P | 9.1 | 70 | 9.5 | 9 | no |
		dock-climate-13 | 2027-04-19 | 07:00 | paint inspector P | 7.2 | 88 | 6.8 | 12 | yes |
		dock-climate-14 | 2027-04-19 | 11:00 | paint inspector P | 9.0 | 76 | 9.3 | 13 | no |
		dock-climate-15 | 2027-04-19 | 15:00 | paint inspector P | 10.1 | 69 | 10.9 | 10 | no |
		dock-climate-16 | 2027-04-20 | 09:00 | weather office | 8.5 | 72 | | 9 | no | yes
		dock-climate-17 | 2027-04-20 | 15:00 | weather office | 11.0 | 61 | | 8 | no | yes
		dock-climate-18 | 2027-04-21 | 09:00 | weather office | 8.0 | 90 | | 16 | yes | yes
		dock-climate-19 | 2027-04-21 | 15:00 | weather office | 9.0 | 86 | | 14 | yes | yes
	`, invent.Values{"mark": "board", "basis": "measured"})
	v.Table("decision", `
		id | matter | course | what | date | who | why | against
		dock-decision-1 | matter-propellers | course-propellers-off | both propellers off, crack recorded, no repair in this docking | 2027-04-11 | board's three | the crack is old and dry; a repair ashore can wait for money | chief engineer, retired: wanted the port one on again
		dock-decision-2 | matter-doublers | course-doublers-off | all six doublers off, inserts full length | 2027-04-12 | board's three | 5.8 mm and three holes behind the first two opened | treasurer: asked for four of six
		dock-decision-3 | | | forward bottom stays; the money goes to the waterline | 2027-04-13 | superintendent | least 10.6 mm of 96 readings |
		dock-decision-4 | | | four days more in the dock; flooding put to 25 April | 2027-04-18 | board's three | the inserts to starboard are half done | keeper H: the tide of the 22nd is lost, that of the 25th is 0.1 m lower
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("watch", `
		id | space | who | begins | ends | hours | reach | occasion | looks_for
		watch-night-holes | waterline between frames 28 and 84, cut open | keeper M | 2027-04-12 | 2027-04-25 | 18 to 8 | telephone | in dock | rain, thieves, fire after cutting
		watch-night-boiler | Boiler room | volunteers' watch | 2027-04-12 | 2027-04-25 | 18 to 23 | telephone | in dock | smoulder after hot work, one hour at the least
		watch-night-alley | Shaft alley | | 2027-04-15 | 2027-04-25 | 23 to 8 | | in dock | shores under the shafts, gas after painting
	`, board)
	v.Table("commitment", `
		id | date | to | what | pot | amount | due | state
		dock-commit-1 | 2027-02-22 | yard S | docking, steel, coating and openings as signed | pot-dock | 985000 | 2027-06-30 | part paid
		dock-commit-2 | 2027-02-22 | yard S | propellers off and tubes blanked | pot-shafts | 120000 | 2027-06-30 | part paid
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("receipt", `
		id | pot | date | amount | type | giver | paper
		dock-receipt-1 | pot-dock | 2026-12-18 | 420000 | gift | a friend of the ship | bank statement
		dock-receipt-2 | pot-dock | 2027-03-10 | 180000 | gift | the winter appeal | bank statement
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("payment", `
		id | date | pot | amount | to | what | commitment | paper
		dock-payment-1 | 2027-03-01 | pot-dock | 98500 | yard S | a tenth on signing | dock-commit-1 | bill and bank statement
		dock-payment-2 | 2027-04-09 | pot-dock | 196000 | yard S | docked and dry | dock-commit-1 | bill and bank statement
		dock-payment-3 | 2027-04-16 | pot-dock | 242000 | yard S | bill of the first week | dock-commit-1 | bill and bank statement
		dock-payment-4 | 2027-04-16 | pot-shafts | 58000 | yard S | propellers off | dock-commit-2 | bill and bank statement
	`, invent.Values{"mark": "board", "basis": "documented"})
}

// pairs are the photographs of the days, those as left beside those as found.
func (v *vessel) pairs() {
	v.Table("photo", `
		id | date | who | frame | strake | side | title | direction | scale | about | moment | pair | mark
		dock-photo-01 | 2027-04-08 | curator | 150 | | centre | Dry at last: her bow from the dock bottom | aft | the man beside it | | as found | | public
		dock-photo-02 | 2027-04-10 | superintendent | 2 | | port | Crack in the boss of the port propeller | forward | 300 mm rule | found-01 | as found | | board
		dock-photo-03 | 2027-04-12 | superintendent | 40 | G | port | Wasted band behind doubler 1 | at the plate | 300 mm rule | found-03 | as found | | public
		dock-photo-04 | 2027-04-17 | superintendent | 40 | G | port | Insert of 12 mm where doubler 1 was | at the plate | 300 mm rule | found-03 | as left | dock-photo-03 | public
		dock-photo-05 | 2027-04-12 | superintendent | 44 | G | starboard | Holes at frame 44 behind doubler 4 | at the plate | 300 mm rule | found-04 | as found | | board
		dock-photo-06 | 2027-04-18 | superintendent | 44 | G | starboard | Insert at frame 44, welded and tested | at the plate | 300 mm rule | found-04 | as left | dock-photo-05 | board
		dock-photo-07 | 2027-04-14 | survey firm T | 68 | B | port | Plates B9 and B10, pits to 3 mm | at the plate | 300 mm rule | found-10 | as found | | board
	`, invent.Values{"mark": "board", "basis": "documented", "rights": "the trust", "consent": "nobody in it"})
}

// promised is what yard and paint maker answer for afterwards.
func (v *vessel) promised() {
	v.Table("guarantee", `
		id | what | frame | frame_to | about | giver | begins | ends | look | terms
		guarantee-1 | Coating under water, three coats | 0 | 150 | work-coating | yard S and paint maker M | 2027-04-25 | 2029-04-25 | 2029-02-01 | more than 2 % bare at a dive, by the maker's inspector; ends where anodes run out
		guarantee-2 | Inserts and welds of the waterline | 28 | 84 | work-doublers | yard S | 2027-04-25 | | | workmanship
	`, invent.Values{"mark": "board", "basis": "documented"})
}

// signedFor are the matters that the contract settles.
var signedFor = map[string]bool{"matter-when": true, "matter-dock": true, "matter-openings": true, "matter-glands": true, "matter-coating": true, "matter-anodes": true}

// opened are the records of the days that everyone may read: what was found and mended, and the works in plain words, now that the bids are in.
var opened = map[string]bool{"found-02": true, "found-03": true, "dock-decision-3": true}

// opening marks them.
func opening(records []dossier.Record) {
	for i, r := range records {
		w, isWork := r.Body.(*plan.Work)
		if opened[r.ID] || isWork && w.Plain != "" {
			records[i].Mark = dossier.Public
		}
	}
}

// span is when an activity began and ended; an empty end is still under way.
type span struct{ from, to string }

var kept = map[string]span{
	"act-contract": {"2027-02-01", "2027-02-22"}, "act-approval": {"2027-03-01", "2027-03-26"}, "act-tow": {"2027-04-07", "2027-04-08"},
	"act-dock": {"2027-04-08", "2027-04-08"}, "act-wash": {"2027-04-09", "2027-04-10"}, "act-gauge": {"2027-04-10", "2027-04-11"},
	"act-doublers": {"2027-04-12", ""}, "act-props": {"2027-04-12", "2027-04-14"}, "act-steel": {"2027-04-14", "2027-04-18"},
	"act-jet": {"2027-04-13", "2027-04-17"}, "act-openings": {"2027-04-13", "2027-04-17"}, "act-tubes": {"2027-04-14", "2027-04-16"},
	"act-glands": {"2027-04-15", "2027-04-16"}, "act-paint": {"2027-04-17", ""}, "act-anodes": {"2027-04-19", ""},
}

// moved are those of her records that the twelve days change: activities begun and ended, the window signed and lengthened, hold points passed.
func moved() ([]dossier.Record, error) {
	all, err := corranUnsigned()
	if err != nil {
		return nil, err
	}
	var out []dossier.Record
	for _, r := range all {
		switch b := r.Body.(type) {
		case *plan.Activity:
			s, ok := kept[r.ID]
			if !ok {
				continue
			}
			if b.Started, b.Finished, err = s.dates(); err != nil {
				return nil, fmt.Errorf("%s: %w", r.ID, err)
			}
		case *plan.DockWindow:
			if r.ID != "window-spring" {
				continue
			}
			b.State, b.Days, b.Opens = "signed", new(18.0*86400), mustDate("2027-04-08")
			b.Notes = "signed for 14 days; four more taken on 18 April"
		case *plan.Inspection:
			seen, ok := map[string]string{"inspect-3": "2027-04-11", "inspect-4": "2027-04-15"}[r.ID]
			if !ok {
				continue
			}
			b.Done, b.Result = mustDate(seen), "pass"
		case *plan.Work:
			if b.Plain == "" {
				continue
			}
		case *plan.Matter:
			if !signedFor[r.ID] {
				continue
			}
			b.State = "settled"
		case *plan.Deferred:
			if r.ID != "deferred-1" {
				continue
			}
			b.State, b.Found = "done", "found-10"
		default:
			continue
		}
		out = append(out, r)
	}
	return out, nil
}

func (s span) dates() (from, to quantity.Date, err error) {
	if from, err = quantity.ParseDate(s.from); err != nil || s.to == "" {
		return from, to, err
	}
	to, err = quantity.ParseDate(s.to)
	return from, to, err
}

func mustDate(text string) quantity.Date {
	d, err := quantity.ParseDate(text)
	if err != nil {
		panic(err) //nolint:forbidigo // a slip in this file, found by its own test
	}
	return d
}
