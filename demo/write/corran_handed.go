package main

import (
	"fmt"
	"time"

	"oakum/demo/invent"
	"oakum/formula/tide"
	"oakum/ship"
)

// corranHandedOn makes what is told, asked, watched, put off, and what left the ship.
func corranHandedOn(v *vessel) error {
	v.levels()
	v.Table("readiness", `
		id | for | item | tow | done | evidence | about | who | due | done_on
		ready-1 | tow | Tow approval applied for | tow-skellby | yes | letter of 2 November 2026 | | naval architect N | 2026-11-15 | 2026-11-02
		ready-2 | tow | Every opening below the main deck seen shut | tow-skellby | no | | | superintendent | 2027-04-05 |
		ready-3 | tow | Alley door closed hard, gap taken up | tow-skellby | no | | comp-alley | superintendent | 2027-03-01 |
		ready-4 | tow | Shafts locked at both ends | tow-skellby | yes | photograph of 1974 clamp, looked at 2026-03 | line-port | superintendent | 2027-03-01 | 2026-03-14
		ready-5 | tow | Pumps on deck, one on own power, tried | tow-skellby | no | | pump-3 | superintendent | 2027-04-05 |
		ready-6 | tow | Towing gear and emergency wire rigged | tow-skellby | no | | | tow master | 2027-04-06 |
		ready-7 | tow | Drafts read within a day of leaving | tow-skellby | no | | | naval architect N | 2027-04-07 |
		ready-8 | docking | Docking plan with block lines agreed | | no | | doc-docking | naval architect N | 2027-03-01 |
		ready-9 | docking | Water depth over the sill confirmed by the dock's gauge | | no | | dock-skellby | dockmaster | 2027-04-07 |
		ready-10 | undocking | Every blank and valve signed for | | no | | | superintendent | |
		ready-11 | undocking | Glands tight at first water, half an hour stop | | no | | gland-port | superintendent | |
	`, invent.Values{"mark": "board"})
	v.Table("other_docking", `
		id | name | year | estimate | outcome | days_planned | days_taken | surveyed | weight | source | notes
		other-1 | riveted passenger steamer, 70 m | 2009 | 900000 | 1480000 | 21 | 43 | no | 2 | talk by her keeper | invented case
		other-2 | sail training ship, iron, 80 m | 2014 | 1600000 | 2310000 | 60 | 96 | yes | 1 | annual report | invented case
		other-3 | lightship, riveted, 38 m | 2012 | 240000 | 305000 | 20 | 26 | no | 0.6 | letter | invented case
		other-4 | ferry steamer, 60 m | 2016 | 700000 | 760000 | 28 | 30 | yes | 1.5 | talk by her keeper | invented case
		other-5 | ice breaker, 55 m | 2018 | 1100000 | 1980000 | 35 | 70 | no | 1 | annual report | invented case
		other-6 | coastal cargo steamer, 64 m | 2019 | 820000 | 1105000 | 30 | 41 | yes | 1.4 | letter | invented case
		other-7 | warship, riveted, 110 m | 2021 | 4200000 | 7900000 | 90 | 190 | no | 0.5 | newspaper | invented case
		other-8 | paddle steamer, 58 m | 2022 | 1250000 | 1320000 | 42 | 45 | yes | 1.3 | talk by her keeper | invented case
		other-9 | tug, steam, 30 m | 2023 | 90000 | 128000 | 14 | 19 | no | 0.4 | letter | invented case
		other-10 | passenger steamer, 84 m | 2024 | 2100000 | 2890000 | 45 | 64 | no | 2 | annual report | invented case
	`, invent.Values{"mark": "board"})
	v.Table("inspection", `
		id | what | about | due | every | share_of_docking | before_flooding | hold_point | activity | who | done | result
		inspect-1 | Yearly trial of every pump | pump-1 | 2027-04-15 | 1 | | | | | superintendent | | 
		inspect-2 | Alarms proved to the telephone | alarm-alley | 2026-12-15 | 0.25 | | | | | keeper M | |
		inspect-3 | Bottom gauged before steel is ordered | | | | 0.25 | | yes | act-gauge | survey firm | |
		inspect-4 | Tail shafts and bushes seen | line-port | | | 0.35 | | yes | act-tubes | superintendent | |
		inspect-5 | Every opening signed for | | | | | 24 | yes | act-inspect | superintendent | |
		inspect-6 | Bell at the school looked at | part-bell | 2025-09-14 | 2 | | | | | curator | | not done
		inspect-7 | Hull insurance: condition statement | doc-insurance | 2026-12-01 | 1 | | | | | superintendent | |
	`, invent.Values{"mark": "board"})
	v.Table("watch", `
		id | space | who | begins | ends | hours | reach | occasion | looks_for
		watch-berth | whole ship | keeper M and keeper H by turns | 2026-01-01 | 2026-12-31 | 8 to 18 aboard, else on call | telephone | berth | bilges, moorings, list
		watch-winter | whole ship | volunteers' watch | 2026-11-01 | 2027-03-31 | Tuesday and Saturday | telephone | closed season | bilges, heating, rain
		watch-alley | Shaft alley | superintendent | 2026-11-01 | 2027-04-08 | each Monday | telephone | berth | glands, travel of followers
		watch-dock | docked ship by night | | 2027-04-08 | 2027-04-22 | 18 to 8 | | in dock | fire, thieves, rain in open holes
	`, invent.Values{"mark": "board"})
	v.Table("part", `
		id | name | title | mark_on_it | was | frame | side | space | photos | measurements | materials | inscriptions | made | maker | features | description | original | mass | condition | taken_off | reason | decision | method | hazards | consent | refit | fixings | fate
		part-bell | ship's bell | The forecastle bell | CV-001 twice, inside the lip and on the crown | | 138 | centre | Main deck | photo-7 | 410 mm across the lip | cast bronze | CORRAN VEY 1931 | 1931 | bell founder at Vennhead (invented) | nick in the lip at four o'clock | Bell of the forecastle with its clapper | original | 46 | good, polished | 2018-09-14 | lent to the school at Vennhead | decision-3 | four bolts | | not needed | on its own bracket | four bolts, in the bell's crate | on loan
		part-blade | spare propeller blade | Spare blade of 1931 | CV-014, painted and punched | propeller-port | 30 | centre | After hold | photo-8 | 1.36 m long | manganese bronze | 614 SP 2 | 1931 | bronze founders at Vennhead (invented) | bent at the tip | One of two spare blades carried for the built-up screws first ordered | original | 412 | scratched, sound | 2004-05-20 | heavy in the after hold | | lifted out by crane | | not needed | hung on the after hold bulkhead | two straps, store 4 | on loan
		part-telegraph | engine telegraph | Starboard bridge telegraph | CV-022 | | 96 | starboard | Main deck | photo-9 | 1.1 m high | brass | | 1931 | | | | original | 38 | lacquered | 2015-02-10 | shown in the exhibition | | unbolted | radium paint on the dial | not needed | bridge deck, four bolts | with the telegraph | on show
	`, invent.Values{"mark": "board", "title_owner": "Corran Vey Trust (invented)", "closed_by": "nothing to close", "basis": "documented", "basis_note": "register of parts"})
	v.Table("custody", `
		id | part | date | place | holder | terms | recall | ends | next_check | checked | condition | answered | signed | paper | notes
		custody-1 | part-bell | 2018-09-14 | school hall, Vennhead | school at Vennhead | on show, insured by the school | unknown | | 2025-09-14 | 2023-09-20 | polished through at the letters | 2023-09-20 | headmaster R | | no end date in the letter
		custody-2 | part-blade | 2004-05-20 | yard of the engineers' school | engineers' school | loan of ten years | with notice | 2014-05-20 | 2016-05-20 | 2012-06-02 | not seen since | 2012-06-02 | workshop head | | loan ran out in 2014; letters of 2019 and 2022 not answered
		custody-3 | part-telegraph | 2015-02-10 | exhibition, fore hold | curator | | yes | | 2027-02-10 | 2025-02-11 | good | | curator | |
	`, invent.Values{"mark": "board"})
	v.Table("update", `
		id | title | date | audience | text | photos | about | state | author
		update-1 | Why she must be docked | 2026-09-05 | public | She has been afloat for thirty years since her last docking. Water creeps in a little faster each year, and the zinc that guards her steel is nearly gone. We are raising the money to lift her out of the water, mend her and put her back. | photo-1 | matter-when | published | curator
		update-2 | The docking fund in October | 2026-10-31 | donors | The fund stands at 640 000 euro, of which 180 000 are given for the shafts and propellers. Three yards have sent their offers. | | | published | treasurer
	`, invent.Values{"mark": "public"})
	v.Table("update", `
		id | title | date | audience | text | photos | about | state | author
		update-3 | Bids and the two windows | 2026-11-10 | board | Three bids are in. The window in spring is held until 15 January 2027. | | bid-s;bid-v;bid-o | draft | superintendent
	`, invent.Values{"mark": "board"})
	v.Table("question", `
		id | question | answer | audience | asked_by | asked | answered | who | bid
		question-1 | Why not patch her where she lies? | Divers can patch a hole, but nobody can look at the plates behind the patches or at the shafts while she floats. | public | visitor | 2026-07-02 | 2026-07-05 | curator |
		question-2 | Where do the propellers go if they come off? | That is not settled. Whatever comes off stays hers and is written into the register of parts. | public | visitor | 2026-08-11 | 2026-08-20 | curator |
		question-3 | What does my gift buy? | 33 euro buy a kilogram of new shell plate, welded in; 400 euro one block of zinc. | donors | giver | 2026-09-01 | 2026-09-02 | treasurer |
		question-6 | Will she steam again? | | public | child | 2026-10-18 | | |
		question-8 | Could she steam again one day? | | public | visitor | 2026-11-14 | | |
	`, invent.Values{"mark": "public"})
	v.Table("question", `
		id | question | answer | audience | asked_by | asked | answered | who | bid
		question-4 | Are dock days beyond fourteen in your lump sum? | | yard | superintendent | 2026-10-05 | | | bid-v
		question-5 | What does "included" against services cover? | Shore power to 63 A, one fire watch by day. | yard | superintendent | 2026-10-05 | 2026-10-12 | yard S | bid-s
	`, invent.Values{"mark": "board"})
	v.Table("question", `
		id | question | answer | audience | asked_by | asked | same_as
		question-7 | Is she ever going to be in steam? | | public | visitor | 2026-11-02 | question-6
		question-9 | Can't divers just mend her at the quay? | | public | letter | 2026-09-20 | question-1
	`, invent.Values{"mark": "public"})
	v.Table("deferred", `
		id | what | frame | frame_to | strake | side | work | why | who | since | review | due | cost | only_in_dock | monitor | state
		deferred-1 | Boiler room bottom plates B9 and B10 port, 2.1 mm lost in 1996 | 60 | 76 | B | port | work-steel | no money left in 1996 | superintendent of 1996 | 1996-10 | 2006-10 | 2011-10 | 24000 | yes | gauged in 2011, not reached in 2023 | waiting
		deferred-2 | Rudder heel bearing worn 3 mm | 0 | | | centre | work-rudder | rudder is locked | superintendent of 1996 | 1996-10 | 2006-10 | 2016-10 | 15000 | yes | not | waiting
		deferred-3 | Topsides above the belting | | | J | both | work-topside | not needed for the tow | board | 2026-06-18 | 2028-06 | 2030 | 99000 | no | yearly by eye | waiting
	`, invent.Values{"mark": "board"})
	return v.Err()
}

// levels are high and low waters written down at the quay this autumn: the tide of the constants with the weather on top.
func (v *vessel) levels() {
	c := invent.NewChance(seed, "levels")
	for _, t := range made[ship.Tide](v) {
		if t.Name != "Harl Quay" {
			continue
		}
		constants := make([]tide.Constituent, len(t.Names))
		for i, name := range t.Names {
			constants[i] = tide.Constituent{Name: name, Amplitude: t.Amplitudes[i], Phase: t.Phases[i]}
		}
		h := tide.NewHarmonic(constants, *t.MeanLevel)
		surge := 0.0
		for _, e := range h.Extremes(time.Date(2026, 9, 1, 0, 0, 0, 0, time.UTC), time.Date(2026, 10, 31, 0, 0, 0, 0, time.UTC)) {
			surge = 0.8*surge + c.Normal(0, 0.07)
			if hour := e.Time.Hour(); hour < 8 || hour > 18 {
				continue
			}
			kind := "low water"
			if e.High {
				kind = "high water"
			}
			v.Add("level", v.Next("level"), invent.Values{
				"date": e.Time.Format("2006-01-02"), "time": e.Time.Format("15:04"), "who": "keeper M", "gauge": "tide-harl", "height": invent.Round(e.Height+surge, 2),
				"type": kind, "basis": "measured", "basis_note": fmt.Sprintf("staff at %s", t.Name), "mark": "public",
			})
		}
	}
}
