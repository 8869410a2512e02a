package main

import (
	"fmt"

	"oakum/demo/invent"
)

// corranMoney makes pots, what came in since 2019, what was promised, and what went out. In hand at the end of October 2026: 640 000, of which
// 180 000 may only go into shafts and propellers.
func corranMoney(v *vessel) error {
	v.Table("pot", `
		id | name | restricted | restriction | groups | works | matters | not_before | not_after | opening | opened_on | reserve | giver | notes
		pot-dock | Docking fund | no | | | | | | | 21400 | 2019-01-01 | no | the trust |
		pot-shafts | Shafts and propellers gift | yes | shafts, propellers and their glands only | shafts;glands | | matter-propellers;matter-glands | | 2029-12-31 | 0 | 2019-01-01 | no | the family of a former chief engineer |
	`, invent.Values{"mark": "public", "basis": "documented", "basis_note": "ledger"})
	total := v.giving()
	v.Table("receipt", `
		id | pot | date | amount | type | giver | notes | given_for | thanked_as | mark
		receipt-gift-1 | pot-shafts | 2022-03-14 | 180000 | gift | the family of a former chief engineer | by letter: shafts, propellers and their glands only | work-glands | the family of a former chief engineer | public
		receipt-legacy-1 | pot-dock | 2021-11-02 | 64000 | legacy | a former passenger |
		receipt-legacy-2 | pot-dock | 2024-06-19 | 38500 | legacy | a volunteer |
		receipt-gift-2 | pot-dock | 2023-09-08 | 25000 | gift | a shipping company (invented) | | work-anodes | a shipping company (invented) | public
		receipt-gift-3 | pot-dock | 2025-12-20 | 20000 | gift | an unnamed giver | | work-anodes | | public
		receipt-sale-1 | pot-dock | 2023-04-02 | 6200 | sale | sale of duplicate fittings | two lamps and a telegraph not of this ship
	`, invent.Values{"mark": "board", "basis": "documented", "basis_note": "ledger", "paper": "letter and bank statement"})
	v.Table("payment", `
		id | date | pot | amount | to | what | commitment | work | notes
		payment-0001 | 2019-08-30 | pot-dock | 9400 | dive firm D | dive of August 2019 | | |
		payment-0002 | 2021-06-30 | pot-dock | 7100 | dive firm D | dive after the impressed set was found dead | | |
		payment-0007 | 2022-09-30 | pot-dock | 148000 | joiners at Vennhead | boat deck planking, the worst third | | | lent to the decks by the board; not paid back
		payment-0003 | 2023-06-15 | pot-dock | 31800 | survey firm T | thickness survey | | |
		payment-0004 | 2024-10-01 | pot-dock | 18600 | naval architect N | docking study, first part | commit-1 | |
		payment-0005 | 2025-10-10 | pot-dock | 12900 | dive firm D | dive of September 2025 | | |
		payment-0006 | 2026-05-20 | pot-dock | 9300 | naval architect N | docking study, second part | commit-1 | |
	`, invent.Values{"mark": "board", "basis": "documented", "basis_note": "ledger", "paper": "bill and bank statement"})
	v.settle(total)
	v.Table("pledge", `
		id | giver | pot | amount | promised | due | conditional | condition | met | chance | received | state | written | notes
		pledge-1 | the county | pot-dock | 120000 | 2026-02-10 | 2027-06-30 | yes | the dock contract is signed by 30 June 2027 | | 0.8 | 0 | open | yes |
		pledge-2 | the harbour company | pot-dock | 60000 | 2025-11-05 | 2027-03-31 | no | | | 0.95 | 0 | open | yes |
		pledge-3 | friends of the ship | pot-dock | 45000 | 2026-04-18 | 2027-04-30 | no | | | 0.9 | 0 | open | yes | from the summer's tours
		pledge-4 | a foundation (invented) | pot-dock | 50000 | 2026-06-01 | 2027-12-31 | yes | the grant of the heritage fund is awarded | | 0.6 | 0 | open | yes |
		pledge-5 | a private giver | pot-dock | 25000 | 2026-09-12 | 2027-01-31 | no | | | 0.7 | 0 | open | no | said at dinner
		pledge-6 | a ferry line (invented) | pot-dock | 10000 | 2025-05-01 | 2026-12-31 | yes | her name on the board in the hall | | 0.5 | 0 | open | no |
	`, invent.Values{"mark": "private"})
	v.Add("grant", "grant-fund", invent.Values{
		"name": "Afloat heritage fund", "giver": "the heritage fund (invented)", "pot": "pot-dock", "cap": 500000, "match": 1, "arrears": true, "paid_after": 75,
		"state": "applied", "chance": 0.65, "deadline": "2026-10-15", "award": "2027-02-28", "match_by": "2027-03-31", "spend_from": "2027-03-01", "spend_by": "2028-09-30",
		"groups": []string{"underwater", "coating", "steel", "openings", "glands", "protection", "docking"}, "claimed": 0, "paid": 0, "covenant": 15,
		"conditions": "one to one against own money shown by the date; no propellers or shafts; consent in hand", "mark": "board",
	})
	v.Table("commitment", `
		id | date | to | what | pot | work | amount | retention | due | paper | state | notes
		commit-1 | 2024-05-02 | naval architect N | docking study | pot-dock | | 36000 | | 2027-03-31 | doc-stability | part paid | third part after the tender
		commit-2 | 2026-09-28 | dive firm D | dive before the tow | pot-dock | | 11500 | | 2027-03-31 | | signed |
	`, invent.Values{"mark": "board", "basis": "documented"})
	v.Table("reserve", `
		id | name | low | likely | high | dock | why
		reserve-skellby | Float her, tow her home, moor her | 58000 | 72000 | 110000 | dock-skellby | undocking, two tugs, riding crew, insurance, moorings made good
		reserve-orrin | Float her, tow her home, moor her | 150000 | 190000 | 290000 | dock-orrin | launching, sea tow, winter berth at Orrin, insurance
	`, invent.Values{"mark": "board"})
	v.Add("season", "season", invent.Values{
		"name": "visitors", "begins": 5, "ends": 10, "income": 420000, "net": 0.62, "visitors": 61000, "keeps": 0.1, "mark": "board", "basis": "documented",
		"basis_note": "accounts of 2025",
	})
	return v.Err()
}

// giving is the monthly giving since 2019: about 9 500 in the end, less before, lumps at year's end, hardly any in the spring of 2020.
func (v *vessel) giving() float64 {
	c := invent.NewChance(seed, "giving")
	monthly := []float64{900, 1500, 2200, 3400, 5000, 6600, 8300, 9500}
	total := 0.0
	for year := 2019; year <= 2026; year++ {
		for month := 1; month <= 12 && (year < 2026 || month <= 10); month++ {
			amount := monthly[year-2019] * (1 + 0.12*c.NormFloat64())
			switch {
			case year == 2020 && month >= 3 && month <= 7:
				amount *= 0.35
			case month == 12:
				amount *= 1.9
			}
			amount = invent.Round(max(300, amount), 0)
			total += amount
			v.Add("receipt", fmt.Sprintf("receipt-giving-%d-%02d", year, month), invent.Values{
				"pot": "pot-dock", "date": fmt.Sprintf("%d-%02d-28", year, month), "amount": amount, "type": "giving", "giver": "monthly givers", "paper": fmt.Sprintf("bank statement %d-%02d", year, month),
				"mark": "board", "basis": "documented", "basis_note": "ledger",
			})
		}
	}
	return total
}

// settle adds what the summer appeals brought, so that 460 000 free and 180 000 restricted are in hand.
func (v *vessel) settle(giving float64) {
	const free = 460000
	in := 21400 + giving + 64000 + 38500 + 25000 + 20000 + 6200
	out := 9400.0 + 7100 + 148000 + 31800 + 18600 + 12900 + 9300
	rest := free - (in - out)
	shares := []float64{0.08, 0.12, 0.15, 0.2, 0.2, 0.25}
	left := rest
	for i, share := range shares {
		amount := invent.Round(rest*share, 0)
		if i == len(shares)-1 {
			amount = left
		}
		left -= amount
		v.Add("receipt", fmt.Sprintf("receipt-appeal-%d", 2021+i), invent.Values{
			"pot": "pot-dock", "date": fmt.Sprintf("%d-07-31", 2021+i), "amount": amount, "type": "gift", "giver": "the summer appeal", "mark": "board", "paper": fmt.Sprintf("bank statement %d-07", 2021+i),
			"basis": "documented", "basis_note": "ledger",
		})
	}
}
