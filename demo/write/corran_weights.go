package main

import (
	"oakum/demo/invent"
	"oakum/formula/hullform"
	"oakum/ship"
)

// What she weighed at the last inclining, and has gained since, t. The register explains the first and part of the second.
const (
	corran1996 = 3332.0
	corranLCG  = 44.66
)

// corranWeights makes the weight register: what the papers name, with the bare hull as the rest of what the inclining of 1996 found.
func corranWeights(v *vessel) error {
	v.Table("weight", `
		id | name | group | mass | lcg | vcg | tcg | x0 | x1 | added | removed | paper | notes
		weight-engines | Main engines, condensers and auxiliaries | light ship | 356 | 38.8 | 3.1 | 0 | 30 | 47 | | | doc-weights |
		weight-boilers | Boilers, uptakes and funnel, boilers dry | light ship | 248 | 55.1 | 4.7 | 0 | 48 | 62 | | | doc-weights |
		weight-shafting | Shafts, propellers and stern gear | light ship | 62 | 12.4 | 1.95 | 0 | 1 | 30 | | | doc-weights |
		weight-deckhouse | Deckhouses, boat deck and bridge | light ship | 315 | 47.6 | 10.9 | 0 | 14 | 78 | | | doc-weights |
		weight-joinery | Joinery and furniture | light ship | 188 | 45.2 | 7.7 | 0 | 8 | 80 | | | doc-weights |
		weight-anchors | Anchors, cables and windlass | light ship | 46 | 83.6 | 8.3 | 0 | 78 | 91 | | | doc-weights |
		weight-masts | Masts, derricks and rigging | light ship | 28 | 49.8 | 16.2 | 0 | 20 | 80 | | | doc-weights |
		weight-ballast-fwd | Pig iron in the fore hold | fixed ballast | 120 | 66.5 | 1.5 | 0 | 63 | 70 | 1975-03 | | doc-ballast |
		weight-ballast-aft | Pig iron over the alley | fixed ballast | 65 | 21 | 3.5 | 0 | 14 | 28 | 1975-03 | | doc-ballast |
		weight-water | Fixed water ballast, No 2 tanks | water | 92 | 38.5 | 0.55 | 0 | 29.3 | 47.5 | 1996-11 | | doc-stability | sounded each quarter
		weight-lead | Lead paint taken off the topsides | other | -9 | 46 | 7.2 | 0 | 0 | 92 | 2014-06 | | |
		weight-lift | Visitor lift and its trunk | equipment | 6.4 | 58.6 | 7.9 | 1.2 | 57 | 60 | 2019-04 | | doc-lift |
		weight-show | Exhibition cases, fore hold | exhibit | 11.2 | 70.8 | 3.2 | -0.3 | 63 | 79 | 2021-06 | | | from the maker's packing list
		weight-coal | Coal, last bunkers put ashore | stores | -74 | 50.4 | 4.1 | 0 | 44 | 60 | 1998-05 | | | weighbridge tickets
		weight-growth | Weed and mussels | growth | 18 | 45 | 2.4 | 0 | 0 | 92 | 2019-08 | | | diver's guess in 2019
	`, invent.Values{"basis": "documented", "basis_note": "weight book", "mark": "board"})
	rest := hullform.Loading{Mass: corran1996, LCG: corranLCG, VCG: 4.82}
	m, mx, mz, my := rest.Mass, rest.Mass*rest.LCG, rest.Mass*rest.VCG, 0.0
	for _, w := range made[ship.Weight](v) {
		if w.Added.IsZero() || w.Added.Year() <= 1996 {
			t := *w.Mass / 1000
			m, mx, mz, my = m-t, mx-t**w.LCG, mz-t**w.VCG, my-t**w.TCG
		}
	}
	v.Add("weight", "weight-hull", invent.Values{
		"name": "Hull steel and outfit, the rest by difference", "group": "light ship", "mass": invent.Round(m, 1), "lcg": invent.Round(mx/m, 2),
		"vcg": invent.Round(mz/m, 2), "tcg": invent.Round(my/m, 2), "x0": -4.6, "x1": 93.0, "paper": "doc-stability", "basis": "computed",
		"basis_note": "inclining of October 1996 less the rest of the register", "mark": "board",
	})
	return nil
}
