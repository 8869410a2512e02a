package assess

import (
	"math"
	"slices"

	"oakum/formula/estimate"
	"oakum/formula/money"
	"oakum/quantity"
)

// MoneyPage answers what can be signed today.
type MoneyPage struct {
	Heading   []string      `json:"heading"` // the answer in a sentence or two
	Account   []Figure      `json:"account"` // what is in hand, signed for, kept back, free, promised
	Pots      []PotRow      `json:"pots"`
	Pledges   []PledgeRow   `json:"pledges"`
	Grants    []GrantRow    `json:"grants"`
	Flow      []FlowRow     `json:"cash_to_come"`
	Estimate  []Figure      `json:"estimate"` // the whole of the plan in force
	Lines     []EstimateRow `json:"lines"`
	Sign      []Figure      `json:"sign"` // what can be signed for today
	Enough    []EnoughRow   `json:"enough"`
	Signing   *Figure       `json:"signing,omitempty"`    // when the plan can be signed
	SigningIf *Figure       `json:"signing_if,omitempty"` // if what is applied for is granted, and the conditions of pledges are met
	SignBands []SignBand    `json:"sign_bands"`           // the two drawn on one scale
	Outside   *OutsideView  `json:"outside,omitempty"`    // what happened to others, beside the own estimate and never mixed into it
	Next      *NextDocking  `json:"next,omitempty"`       // saving for the docking after this one
	Turns     []TurnRow     `json:"turns"`                // quantities at which two bids change places
	Short     string        `json:"short"`                // why the money of today pays for no docking at all
	Scope     []ScopeRow    `json:"scope"`                // the works, those that the money of today pays for first
	Ladder    []RungRow     `json:"ladder"`               // what is paid for as the money grows
	Gifts     []GiftRow     `json:"gifts"`                // what the next gift buys
	Bids      []BidRow      `json:"bids"`
	BidNotes  []Notice      `json:"bid_notes"`
	Missing   []Notice      `json:"missing"` // what to enter so that the page can say more

	ledger money.LedgerOut
	held   bool // the ledger could be drawn up
	total  estimate.EstimateOut
	priced bool // the estimate could be drawn up

	call     money.SignIn          // what was asked of money.sign for today
	signable *float64              // what can be signed for today
	must     *estimate.EstimateOut // the works that must be done, with what they need
}

// moneyPage takes the pages made so far, as the worth of a work lies in the parts it treats.
func (c *inquiry) moneyPage(b *Brief) MoneyPage {
	p := MoneyPage{Heading: []string{}, Account: []Figure{}, Pots: []PotRow{}, Pledges: []PledgeRow{}, Grants: []GrantRow{}, Flow: []FlowRow{},
		Estimate: []Figure{}, Lines: []EstimateRow{}, Sign: []Figure{}, Enough: []EnoughRow{}, Scope: []ScopeRow{}, Ladder: []RungRow{}, Gifts: []GiftRow{}, Bids: []BidRow{}, SignBands: []SignBand{}, Turns: []TurnRow{}, BidNotes: []Notice{}, Missing: []Notice{}}
	c.account(&p)
	c.planEstimate(&p)
	c.sign(&p)
	c.scope(&p, b)
	c.bids(&p)
	c.outside(&p)
	c.nextDocking(&p)
	c.moneyHead(&p)
	c.oneTable(&p)
	c.ranking(&p)
	p.Missing = append(p.Missing, c.foreign...)
	c.inCurrency(&p)
	return p
}

// money prints an amount in the ship's currency.
func (c *inquiry) money(x float64) string {
	return quantity.Format(x, c.currency(), -1)
}

func (c *inquiry) moneyHead(p *MoneyPage) {
	switch {
	case !p.held && !p.priced:
		p.Heading = append(p.Heading, "Neither money nor price is known yet.")
	case !p.held:
		p.Heading = append(p.Heading, "No money is entered yet, so nothing can be signed.")
	case p.ledger.Free < 0:
		p.Heading = append(p.Heading, "Nothing can be signed today: "+c.money(-p.ledger.Free)+" is lacking for what is already signed and the reserve.")
	case p.signable != nil:
		p.Heading = append(p.Heading, c.money(*p.signable)+" can be signed for today, with a reserve of "+c.money(p.ledger.Reserve)+" kept to bring her home.")
	default:
		p.Heading = append(p.Heading, c.money(p.ledger.Free)+" is free today, after what is signed and the reserve; "+c.money(max(p.ledger.Anywhere, 0))+" of it for anything.")
	}
	if p.priced {
		p.Heading = append(p.Heading, "The plan costs "+quantity.Range(p.total.P10, p.total.P90, c.currency())+", eight times in ten.")
	}
	if p.Short != "" {
		p.Heading = append(p.Heading, p.Short)
	}
	if p.Signing != nil {
		p.Heading = append(p.Heading, "By the giving so far the plan can be signed: "+p.Signing.Text+".")
	}
	if p.SigningIf != nil {
		p.Heading = append(p.Heading, "If what is applied for is granted, every condition met and the bills bridged: "+p.SigningIf.Text+".")
	}
	if p.held && p.ledger.Gap > 0 {
		p.Heading = append(p.Heading, "Cash runs short by "+c.money(p.ledger.Gap)+" on "+p.ledger.GapDate.Words()+".")
	}
}

// moneyLine is the money line of the front page: what can be signed for, and when the plan can be.
func moneyLine(p MoneyPage) *Figure {
	list := append(slices.Clone(p.Sign), p.Account...)
	for _, f := range list {
		if f.Key == "free_to_sign" || f.Key == "free" {
			if p.Signing != nil && f.Note == "" {
				f.Note = p.Signing.Label + ": " + p.Signing.Text
			}
			return &f
		}
	}
	return nil
}

// boardMoney are the figures of money that the board reads.
func boardMoney(p MoneyPage) []Figure {
	list := []Figure{}
	for _, want := range []string{"in_hand", "committed", "reserve", "free", "pledges_counted", "deepest_gap"} {
		for _, f := range p.Account {
			if f.Key == want && !(want == "deepest_gap" && f.Value != nil && *f.Value == 0) { // no gap is no line
				list = append(list, f)
			}
		}
	}
	for _, f := range p.Estimate {
		if f.Key == "p80" && f.Value != nil {
			f.Text = "about " + quantity.Format(roundUp(*f.Value), f.Unit, -1)
		}
		if f.Key == "p50" || f.Key == "p80" {
			list = append(list, f)
		}
	}
	return list
}

// roundUp keeps three figures of a sum that is only an estimate, upwards: a board is not told euros of two millions.
func roundUp(x float64) float64 {
	if x <= 0 {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-2)
	return math.Ceil(x/step) * step
}
