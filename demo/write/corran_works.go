package main

import (
	"fmt"
	"strconv"
	"strings"

	"oakum/demo/invent"
)

// corranItems are the items of work: number, name, ID, group, matter, cost low, likely and high in thousands, days, must, quantity with its unit,
// what it treats, what it needs. They sum to 1.60, 1.90 and 3.40 million.
const corranItems = `
	1.01|Docking, undocking and first day|docking|docking|matter-dock|46|50|62|2|yes|1 piece||
	1.02|Dock days after the first|days|services|matter-dock|55|62|100|13|yes|13 day||work-docking
	1.03|Staging and access|staging|services||38|46|80|2|yes|980 m2||work-docking
	1.04|Power, water, fire watch|services|services||26|31|62||yes|14 day||work-docking
	1.05|Tugs there and back|tugs|tow|matter-dock|62|66|105|2|yes|2 piece||
	1.06|Tow survey and insurance|tow-survey|tow|matter-dock|21|23|36||yes|1 piece||
	1.07|Riding crew and readiness for the tow|riding|tow||9|11|18||yes|2 piece||
	2.01|Washing, scraping, waste of growth|washing|underwater||34|40|70|2|yes|1540 m2||work-docking
	2.02|Water jetting of bottom and sides|jetting|coating|matter-coating|230|270|395|5|yes|1270 m2|zone-keel;zone-bottom;zone-side|work-washing
	2.03|Coating of bottom and sides|coating|coating|matter-coating|160|185|250|4|yes|1270 m2|zone-keel;zone-bottom;zone-side|work-jetting
	2.04|Coating of waterline and topsides|topside|coating|matter-coating|84|99|160|3|no|790 m2|zone-waterline;zone-topside|work-washing
	2.05|Containment and waste of lead and old bottom paint|lead|coating|matter-coating|44|58|110||yes|1 piece||
	3.01|Thickness survey in dock|gauging|survey||18|21|30|2|yes|600 piece||work-washing
	3.02|Shell plates renewed, nominal 4.5 t|steel|steel||146|183|400|5|no|4500 kg||work-gauging
	3.03|Doublers of 1988 off, inserts, nominal 74 m2|doublers|steel|matter-doublers|116|150|370|6|no|74 m2|doubler-1p;doubler-2p;doubler-3p;doubler-1s;doubler-2s;doubler-3s|work-gauging
	3.04|Rivets and seams|rivets|steel||40|52|118|3|no|900 piece|repair-1|work-gauging
	4.01|Openings: outer blanks on 17, valves of 12 overhauled|openings|openings|matter-openings|78|92|140|4|yes|29 piece|opening-01;opening-02;opening-03;opening-06;opening-08;opening-11;opening-12;opening-13;opening-14;opening-17;opening-18;opening-19;opening-20;opening-21;repair-2;repair-3|work-washing
	4.02|Sea chests cleaned and coated|chests|openings|matter-openings|20|24|58|2|no|6 piece|opening-01;opening-02|work-openings
	5.01|Stern glands repacked, studs renewed|glands|glands|matter-glands|16|19|34|2|yes|2 piece|gland-port;gland-starboard|work-docking
	5.02|Stern tubes and tail shafts looked at|tubes|shafts|matter-propellers|22|27|60|2|no|2 piece|line-port;line-starboard|work-docking
	5.03|Propellers taken off|propellers|shafts|matter-propellers|52|62|104|3|no|2 piece|propeller-port;propeller-starboard|work-docking
	5.04|Blanks over the stern tubes|blanks|shafts|matter-propellers|14|17|30|2|no|2 piece|gland-port;gland-starboard|work-propellers
	5.05|Rudder pintles, heel bearing and stock gland|rudder|rudder||12|15|48|2|no|1 piece|rudder;gland-rudder|work-docking
	6.01|New anodes|anodes|protection|matter-anodes|36|42|60|2|no|96 piece||work-jetting
	6.02|Impressed set made good, alarm to the telephone|impressed|protection|matter-anodes|14|17|40|1|no|1 piece|impressed|
	7.01|Double-bottom tanks opened, cleaned, coated|tanks|steel||28|34|75|3|no|4 piece|tank-3p;tank-3s|work-docking
	7.02|Asbestos of glands and lagging in the way|asbestos|other||8|11|45|1|no|1 piece||
	8.01|Naval architect and calculations|architect|survey||60|66|105||yes|1 piece||
	8.02|Owner's superintendent and record|superintendent|survey||43|48|85||yes|1 piece||
	8.03|Builder's risk insurance|insurance|other||15|17|28||yes|1 piece||
	8.04|Recording, drawings, parts off|recording|heritage||9|11|18||no|1 piece||
	8.05|Berth: silt taken out, moorings made good|berth|other||36|42|90||no|1 piece||
	8.06|Inclining after the docking|inclining|survey||8|9|14|1|no|1 piece||
`

// outOfDock are the items that need no dock.
var outOfDock = map[string]bool{"tugs": true, "tow-survey": true, "riding": true, "impressed": true, "architect": true, "superintendent": true, "insurance": true, "recording": true, "berth": true, "inclining": true, "tanks": true, "asbestos": true}

// corranCourseOf says to which course an item belongs, where it does to one only.
var corranCourseOf = map[string]string{
	"docking": "course-dock-skellby", "days": "course-dock-skellby", "doublers": "course-doublers-off", "propellers": "course-propellers-off", "blanks": "course-propellers-off", "tubes": "course-propellers-on", "anodes": "course-anodes-zinc",
	"impressed": "course-anodes-both", "topside": "course-coating-full", "openings": "course-openings-blank", "glands": "course-glands-repack",
}

// An item is one line of the list above.
type item struct {
	number, name, id, group, matter string
	low, likely, high, quantity     float64
	per                             string
}

// corranItemList reads the list.
func corranItemList() []item {
	var out []item
	for _, cell := range rows(corranItems) {
		low, _ := strconv.ParseFloat(cell[5], 64)
		likely, _ := strconv.ParseFloat(cell[6], 64)
		high, _ := strconv.ParseFloat(cell[7], 64)
		amount, per, _ := strings.Cut(cell[10], " ")
		quantity, _ := strconv.ParseFloat(amount, 64)
		out = append(out, item{cell[0], cell[1], "work-" + cell[2], cell[3], cell[4], low * 1000, likely * 1000, high * 1000, quantity, per})
	}
	return out
}

// rows splits a text table at lines and "|".
func rows(table string) [][]string {
	var out [][]string
	for line := range strings.Lines(table) {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, strings.Split(line, "|"))
		}
	}
	return out
}

// corranWorks makes works, rates, bids, activities and what goes with them.
func corranWorks(v *vessel) error {
	list := corranItemList()
	for i, cell := range rows(corranItems) {
		w := list[i]
		values := invent.Values{
			"number": w.number, "name": w.name, "group": w.group, "low": w.low, "likely": w.likely, "high": w.high, "shape": "pert", "must": cell[9] == "yes",
			"quantity": w.quantity, "per": w.per, "only_in_dock": !outOfDock[cell[2]], "firm": cell[9] == "yes", "basis": "assumed", "basis_note": "superintendent's estimate of June 2026",
			"mark": "board",
		}
		if w.matter != "" {
			values["matter"] = w.matter
		}
		if course := corranCourseOf[cell[2]]; course != "" {
			values["course"] = course
		}
		if cell[8] != "" {
			values["days"] = cell[8]
		}
		if cell[11] != "" {
			values["treats"] = strings.Split(cell[11], ";")
		}
		if cell[12] != "" {
			values["needs"] = strings.Split(cell[12], ";")
		}
		if rate := corranRateOf[cell[2]]; rate != "" {
			values["rate"] = rate
		}
		if plain := corranPlain[cell[2]]; plain != "" {
			values["plain"] = plain
		}
		if how, ok := corranHow[cell[2]]; ok {
			values["method"], values["acceptance"] = how.method, how.accepted
		}
		if corranOpen[cell[2]] {
			values["mark"] = "public"
		}
		if w.id == "work-propellers" {
			values["mass_off"], values["x"], values["y"], values["z"] = 10.36, 1.35, 0, 1.95
		}
		v.Add("work", w.id, values)
	}
	v.Table("rate", `
		id | name | per | low | likely | high | dated | source | mark
		rate-steel | Shell plate, welded insert | kg | 26 | 33 | 52 | 2026-04 | letters of yards S and V | public
		rate-insert | Waterline insert, old doubler off | m2 | 1500 | 1950 | 3400 | 2026-04 | letters of yards S and V
		rate-rivet | Rivet drilled and renewed | piece | 44 | 58 | 95 | 2026-04 | letter of yard S
		rate-jetting | Water jetting to WJ-2 | m2 | 175 | 205 | 290 | 2026-04 | letters of yards S and V
		rate-coat | Three coats underwater | m2 | 118 | 140 | 185 | 2026-05 | paint maker M
		rate-anode | Anode, 22 kg, welded on | piece | 340 | 400 | 520 | 2026-05 | yard S | public
		rate-day | Dock day | day | 3900 | 4750 | 7400 | 2026-03 | dock's keeper
		rate-hour | Yard hour | hour | 62 | 74 | 96 | 2026-04 | three bids
	`, invent.Values{"mark": "board"})
	v.corranBids()
	v.corranCalendar()
	return v.Err()
}

var corranRateOf = map[string]string{"days": "rate-day", "jetting": "rate-jetting", "coating": "rate-coat", "steel": "rate-steel", "doublers": "rate-insert", "rivets": "rate-rivet", "anodes": "rate-anode"}

// corranPlain is what a donor reads.
var corranPlain = map[string]string{
	"steel":    "New steel where the old hull has grown too thin.",
	"doublers": "Taking off the patches of 1988 and mending what is behind them.",
	"coating":  "Three coats of paint that keep the river from the steel.",
	"anodes":   "Blocks of zinc that rust so that the ship does not.",
	"openings": "Closing holes in the bottom that the ship no longer needs.",
	"glands":   "New packing where the propeller shafts go through the hull.",
}

// corranHow says how an item is done and when it is accepted, in the words of an invented specification.
var corranHow = map[string]struct{ method, accepted string }{
	"docking":    {"docked on the docking plan agreed with the naval architect; blocks and shores set before the water goes", "the landing is as the plan within 0.3 m along and 50 mm across, or the naval architect agrees"},
	"days":       {"each day or part of a day after the first, to the hour the dock is asked to flood", "the daily log, signed by both"},
	"staging":    {"towers and planks to every frame between the keel and the main deck, shifted on request", "checked and tagged by the scaffolder each day"},
	"services":   {"shore power, fresh water, fire main under pressure, a fire watch during hot work and one hour after", "running when she takes the blocks"},
	"washing":    {"fresh water, growth scraped before it dries; waste weighed and taken away", "bare enough to read a punch mark, superintendent with the yard"},
	"jetting":    {"water jetting above 170 MPa, no blasting with grit because of lead and the riveted seams; water caught and filtered", "WJ-2 by the pictures of the standard; flash rust no worse than light; salts as the paint maker asks"},
	"coating":    {"three coats as the paint maker's sheet, stripes on rivets, seams and edges first; steel at least 3 degC above the dew point", "dry film: nine readings in ten at the nominal, none under nine tenths of it; no holidays by the wet sponge"},
	"lead":       {"old paint taken as lead and tributyltin until a sample says otherwise; sheeted, filtered, barrelled and weighed", "waste notes for every barrel"},
	"gauging":    {"ultrasound through a ground spot, six readings to a plate and by every doubler's edge; frames and strakes by the ship's own plan", "the list and the map are with the superintendent within a day"},
	"steel":      {"plates cropped between frames by the superintendent's chalk, welded inserts with round corners of 100 mm", "welds seen, half of them by ultrasound; hose test; certificate of the plate"},
	"doublers":   {"doublers cut off without cutting what lies behind, readings there before anything is fitted, inserts full length", "as for shell plates, and the superintendent has seen behind every one"},
	"rivets":     {"slack rivets drilled out and renewed hot; seams caulked once", "hammer and hose test"},
	"openings":   {"outer blanks bolted on a soft joint, valves opened, ground in and tried", "tried under 0.5 bar; each opening signed for by name"},
	"glands":     {"old packing taken as asbestos until sampled; all rings renewed, followers set by hand, studs renewed", "dry at first water for half an hour with the follower's travel left written down"},
	"anodes":     {"new zinc welded on by their straps after the last coat, kept free of paint", "each one's resistance to the hull below 0.1 ohm"},
	"tubes":      {"clearances taken at four points at both ends of each bush, shafts looked at as far as they can be seen", "readings in the superintendent's hand before anything is closed"},
	"propellers": {"boss shored, nut off, drawn without heat, lifted by the yard's crane with a plan that the yard's lifting man has signed", "bosses cleaned and looked at for cracks; on stands, marked"},
}

// corranOpen are the works whose price the public may read while the yards bid: the small ones that people give for.
var corranOpen = map[string]bool{"anodes": true, "glands": true, "openings": true}

// corranCalendar makes the network of the docking.
func (v *vessel) corranCalendar() {
	v.Table("activity", `
		id | name | low | likely | high | after | phase | work | crews | crew_count | dry_weather | earliest | deadline | hold_point | who
		act-contract | Contract signed | 5 | 10 | 30 | | before | | | | | | 2027-02-26 | | board
		act-approval | Tow approval | 15 | 20 | 40 | act-contract | before | work-tow-survey | | | | | 2027-04-05 | yes | tow surveyor
		act-tow | Tow to Skellby | 1 | 1 | 4 | act-approval | tow | work-tugs | tugs | 2 | | 2027-04-07 | | | tugs
		act-dock | Docked, dry, side shores | 1 | 1.5 | 3 | act-tow | in dock | work-docking | dock gang | 1 | | | | yes | dockmaster
		act-wash | Washed and scraped | 1 | 1.5 | 3 | act-dock | in dock | work-washing | washers | 1 | | | | | yard
		act-gauge | Gauged | 1 | 2 | 3 | act-wash | in dock | work-gauging | gaugers | 1 | | | | yes | survey firm
		act-props | Propellers off | 1.5 | 2.5 | 6 | act-wash | in dock | work-propellers | fitters;crane | 1;1 | | | | | yard
		act-tubes | Tubes looked at, blanks on | 1 | 2 | 5 | act-props | in dock | work-blanks | fitters | 1 | | | | yes | yard
		act-glands | Glands repacked | 1 | 1.5 | 4 | act-dock | in dock | work-glands | fitters | 1 | | | | yes | superintendent
		act-steel | Plates renewed | 3 | 5 | 12 | act-gauge | in dock | work-steel | platers | 2 | | | | | yard
		act-doublers | Doublers off, inserts | 3.5 | 6 | 14 | act-gauge | in dock | work-doublers | platers | 2 | | | | | yard
		act-openings | Openings blanked | 2 | 4 | 7 | act-wash | in dock | work-openings | platers | 1 | | | | yes | yard
		act-jet | Jetted | 3 | 4.5 | 8 | act-wash | in dock | work-jetting | jetting crew | 1 | | | | | yard
		act-paint | Three coats | 2.5 | 4 | 9 | act-jet;act-steel;act-openings | in dock | work-coating | painters | 1 | yes | | | | yard
		act-anodes | Anodes on | 1 | 1.5 | 2 | act-jet | in dock | work-anodes | platers | 1 | | | | | yard
		act-inspect | Last look at every hole | 0.5 | 0.5 | 1 | act-paint;act-anodes;act-tubes;act-glands;act-doublers | in dock | | | | | | | yes | superintendent
		act-flood | Flooded and floated | 0.5 | 1 | 2 | act-inspect | in dock | | dock gang | 1 | | | 2027-05-02 | yes | dockmaster
		act-home | Tow home | 1 | 1 | 5 | act-flood | tow | work-tugs | tugs | 2 | | | | | tugs
		act-incline | Inclined | 1 | 1 | 3 | act-home | after | work-inclining | | | | | | | naval architect
	`, invent.Values{"mark": "board"})
	v.Table("crew", `
		id | name | dock | count | notes
		crew-dock | dock gang | dock-skellby | 1 | five hands of the dock
		crew-washers | washers | dock-skellby | 1 |
		crew-gaugers | gaugers | | 1 | two with one instrument
		crew-fitters | fitters | | 1 | two of the yard, two volunteers
		crew-crane | crane | dock-skellby | 1 | 15 t on the quay
		crew-platers | platers | dock-skellby | 4 | gangs of three; a fifth only by calling the agency
		crew-jetting | jetting crew | dock-skellby | 1 |
		crew-painters | painters | dock-skellby | 1 |
	`, invent.Values{"mark": "board", "basis": "documented", "basis_note": "bid of yard S"})
}

// bidCell is what a yard wrote against an item.
type bidCell struct {
	item      item
	entry     string
	quantity  float64
	unit, sum float64 // as written; the sum of one line does not foot
}

// offer is one yard's bid.
type offer struct {
	id, yard string
	values   invent.Values
	cells    []bidCell
	foots    float64 // what the total as written is off by
}

// corranOffers makes the three bids. Tows, naval architect and the owner's own items are not asked of the yards.
func corranOffers() []offer {
	offers := []offer{
		{id: "bid-s", yard: "yard S at Skellby", values: invent.Values{"dock": "dock-skellby", "date": "2026-09-04", "valid_until": "2027-02-28", "day_rate": 3900, "extra_day": 5200, "days": 14, "days_included": false, "bond": 12000, "growth_hours": 800, "hour_rate": 68, "exclusions": []string{"tugs", "disposal of lead waste beyond 20 t", "scaffold for the owner's people"}, "exclusions_cost": 38000, "start": "2027-04-08"}},
		{id: "bid-v", yard: "yard V, coming to Skellby", values: invent.Values{"dock": "dock-skellby", "date": "2026-09-10", "valid_until": "2027-01-31", "day_rate": 3900, "extra_day": 6900, "days": 14, "days_included": true, "tow": 58000, "bond": 0, "growth_hours": 400, "hour_rate": 81, "exclusions": []string{"rivets", "weather"}, "exclusions_cost": 61000, "start": "2027-09-15"}},
		{id: "bid-o", yard: "Orrin Haven yard", values: invent.Values{"dock": "dock-orrin", "date": "2026-08-28", "valid_until": "2026-12-31", "day_rate": 7400, "extra_day": 8700, "days": 45, "days_included": true, "tow": 192000, "bond": 20000, "growth_hours": 1500, "hour_rate": 74, "exclusions": []string{"berth over the winter"}, "exclusions_cost": 45000, "start": "2027-10-18"}},
	}
	c := invent.NewChance(seed, "bids")
	for i := range offers {
		level := []float64{0.97, 1.06, 1.12}[i]
		for _, w := range corranItemList() {
			if w.number >= "8" || w.group == "tow" {
				continue
			}
			cell := bidCell{item: w, entry: "number", quantity: w.quantity}
			cell.unit = invent.Round(w.likely/w.quantity*level*(1+0.11*c.NormFloat64()), 2)
			cell.sum = invent.Round(cell.unit*cell.quantity, 0)
			switch u := c.Float64(); {
			case i == 1 && w.id == "work-rivets", i == 2 && w.id == "work-asbestos":
				cell = bidCell{item: w, entry: "no bid"}
			case i == 0 && w.id == "work-services", i == 2 && w.id == "work-days":
				cell = bidCell{item: w, entry: "included"}
			case i == 1 && w.id == "work-impressed", i == 0 && w.id == "work-asbestos":
				cell = bidCell{item: w, entry: "by owner"}
			case i == 1 && w.id == "work-tanks":
				cell = bidCell{item: w, entry: "blank"}
			case u < 0.06:
				cell.sum += 1000 // does not foot
			}
			offers[i].cells = append(offers[i].cells, cell)
		}
	}
	offers[1].foots = -24000
	return offers
}

// total is what the bidder writes under his sheet: the lines with tow and bond.
func (o offer) total() float64 {
	sum := o.foots + amount(o.values["tow"]) + amount(o.values["bond"])
	for _, c := range o.cells {
		sum += c.sum
	}
	return sum
}

func (v *vessel) corranBids() {
	for _, o := range corranOffers() {
		values := invent.Values{"yard": o.yard, "total": o.total(), "state": "received", "mark": "private", "basis": "documented", "basis_note": "the bidder's own sheet"}
		for k, x := range o.values {
			values[k] = x
		}
		v.Add("bid", o.id, values)
		for _, c := range o.cells {
			line := invent.Values{"bid": o.id, "item": c.item.number, "description": c.item.name, "work": c.item.id, "type": "unit", "entry": c.entry, "estimate": c.item.likely, "mark": "private", "per": c.item.per}
			if c.entry == "number" {
				line["quantity"], line["unit_rate"], line["extension"] = c.quantity, c.unit, c.sum
			}
			v.Add("bid_line", fmt.Sprintf("%s-%s", o.id, strings.ReplaceAll(c.item.number, ".", "-")), line)
		}
	}
}

func amount(x any) float64 {
	if n, ok := x.(int); ok {
		return float64(n)
	}
	return 0
}
