package assess

import (
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/formula/money"
	"oakum/plan"
)

// PotRow is a sum kept apart.
type PotRow struct {
	ID         string `json:"id"`
	Name       string `json:"name"`
	Restricted string `json:"restricted"`
	InHand     Figure `json:"in_hand"`
	Committed  Figure `json:"committed"`
	Reserve    Figure `json:"reserve"`
	Free       Figure `json:"free"`
}

// PledgeRow is money promised.
type PledgeRow struct {
	Name    string `json:"name"`
	Open    Figure `json:"open"`
	Counted Figure `json:"counted"`
	State   string `json:"state"`
}

// GrantRow is money given against own money.
type GrantRow struct {
	Name    string `json:"name"`
	Earned  Figure `json:"earned"`
	Open    Figure `json:"open"`
	Lacking Figure `json:"own_money_lacking"`
	ToCome  Figure `json:"to_come"`
}

// FlowRow is one expected movement of cash.
type FlowRow struct {
	Date    string `json:"date"`
	What    string `json:"what"`
	Pot     string `json:"pot"`
	Amount  Figure `json:"amount"`
	Balance Figure `json:"balance"`
}

func (c *inquiry) potRows(p *MoneyPage, d *ledgerDraft, out money.LedgerOut, sheet string) {
	cell := func(key, label string, x float64) Figure {
		f := known(key, label, x, "money", field.Computed, "")
		f.Sheet = sheet
		return f
	}
	ids := map[string]string{}
	for id, name := range d.pots {
		if _, isPot := dossier.Find[plan.Pot](c.d, id); isPot || ids[name] == "" {
			ids[name] = id
		}
	}
	for _, s := range out.ByPot {
		r := PotRow{ID: ids[s.Name], Name: s.Name, Restricted: s.Restricted, InHand: cell("in_hand", "in hand", s.InHand), Committed: cell("committed", "signed for", s.Committed),
			Reserve: cell("reserve", "reserve", s.Reserve), Free: cell("free", "free, before pledges and grants", s.Free)}
		if s.Free < 0 {
			r.Free.Worry = 2
			r.Free.Note = "more is signed for than the pot holds"
		}
		p.Pots = append(p.Pots, r)
	}
	for _, s := range out.Pledges {
		r := PledgeRow{Name: s.Name, Open: cell("open", "not yet received", s.Open), Counted: cell("counted", "counts for", s.Counted), State: "counts, less an allowance"}
		switch {
		case s.Waiting:
			r.State = "its condition is not met: counts for nothing"
		case s.Overdue:
			r.State = "overdue"
			r.Open.Worry = 1
		}
		p.Pledges = append(p.Pledges, r)
	}
	for _, s := range out.Grants {
		p.Grants = append(p.Grants, GrantRow{Name: s.Name, Earned: cell("matched", "earned by own money", s.Matched), Open: cell("open", "of the cap not yet earned", s.Open),
			Lacking: cell("lacking", "own money still to find", s.Lacking), ToCome: cell("to_come", "earned and not yet paid", s.ToCome)})
	}
	for _, s := range out.Flow {
		r := FlowRow{Date: s.Date.String(), What: s.What, Pot: s.Pot, Amount: cell("amount", "amount", s.Amount), Balance: cell("balance", "cash after it", s.Balance)}
		if s.Balance < out.Reserve {
			r.Balance.Worry = 2
		}
		p.Flow = append(p.Flow, r)
	}
}

// ledgerAsks says what of the money could not be counted.
func (c *inquiry) ledgerAsks(p *MoneyPage, d *ledgerDraft) {
	if len(dossier.All[plan.Pot](c.d)) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No pot of money is entered.", Do: "Enter what is in hand, what it may be spent on, and what is kept for the way home.", Kind: "pot", Page: "money"})
	}
	for _, kind := range slices.Sorted(mapKeys(d.undated)) {
		p.Missing = append(p.Missing, Notice{What: fmt.Sprintf("%s left out of the account: no amount or no date.", count(d.undated[kind], kind+" is", kind+"s are")), Do: "Enter both.", Kind: kind, Page: "money", Worry: 1})
	}
	if d.loose > 0 {
		p.Missing = append(p.Missing, Notice{What: count(d.loose, "movement names", "movements name") + " no pot: the money is held apart, as nobody has said what it may be spent on.", Do: "Name the pot.", Kind: "receipt", Page: "money", Worry: 1})
	}
	if d.papers > 0 {
		p.Missing = append(p.Missing, Notice{What: count(d.papers, "movement names", "movements name") + " no paper.", Do: "Name the bank statement, letter or contract that shows it.", Kind: "receipt", Page: "money"})
	}
	if d.in.Reserve == nil && !slices.ContainsFunc(d.in.Pots, func(p money.Pot) bool { return p.Reserve }) {
		p.Missing = append(p.Missing, Notice{What: "Nothing is kept back to float her, tow her home and moor her again.", Do: "Enter the reserve before anything is signed.", Kind: "reserve", Page: "money", Worry: 2})
	}
}

// reserveNeeded is the reserve of the plan in force; failing that, what is enough eight times in ten for the reserves entered.
func (c *inquiry) reserveNeeded() (sum float64, ok bool) {
	if r := c.plan.Reserve; r != nil {
		return *r, true
	}
	var lines []estimate.Line
	for _, e := range dossier.All[plan.Reserve](c.d) {
		if c.plan.Dock != "" && e.Body.Dock != "" && e.Body.Dock != c.plan.Dock {
			continue
		}
		if l, priced := lineFrom(e.Body.Name, e.Body.Low, e.Body.Likely, e.Body.High, ""); priced {
			lines = append(lines, l)
		}
	}
	if len(lines) == 0 {
		return 0, false
	}
	in := estimate.Estimate.New()
	in.Lines = lines
	_, out, err := c.price("reserve", "the reserve to float her, tow her home and moor her again", in, map[string]field.Given{"lines": how(field.Assumed, "the reserves entered"), "correlation": how(field.Assumed, "a default, from memory")})
	if err != nil {
		return 0, false
	}
	return out.P80, true
}
