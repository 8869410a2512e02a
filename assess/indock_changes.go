package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
)

// ChangeRow is one change order.
type ChangeRow struct {
	ID          string `json:"id"`
	Number      string `json:"number"`
	Date        string `json:"date"`
	Description string `json:"description"`
	Why         string `json:"why"` // what was found, or the trigger
	Quantity    string `json:"quantity"`
	Rate        Figure `json:"rate"`   // asked
	Agreed      Figure `json:"agreed"` // the rate agreed before the water went
	Amount      Figure `json:"amount"`
	Days        Figure `json:"days"`
	Pot         string `json:"pot"`
	State       string `json:"state"`
	Approver    string `json:"approved_by"`
}

// changeAmount is what a change costs: its amount, or quantity times unit rate.
func changeAmount(b plan.Change) (*float64, string) {
	switch {
	case b.Amount != nil:
		return b.Amount, ""
	case b.Quantity != nil && b.UnitRate != nil:
		return new(*b.Quantity * *b.UnitRate), "quantity times unit rate"
	}
	return nil, ""
}

// changePrice is changeAmount, or the quantity at the agreed rate where the order names no rate of its own.
func (c *inquiry) changePrice(b plan.Change) (*float64, string) {
	if x, note := changeAmount(b); x != nil {
		return x, note
	}
	if rate, ok := c.agreedRate(b); ok && b.Quantity != nil {
		return new(*b.Quantity * *rate.Body.Likely), "quantity at the agreed rate of " + rate.Body.Name
	}
	return nil, ""
}

// changeRate holds the unit rate of a change order against the one agreed beforehand for its item of work.
func (c *inquiry) changeRate(r *ChangeRow, e dossier.Entry[plan.Change]) {
	b := e.Body
	r.Rate, r.Agreed = notYetFigure("rate", "unit rate asked").of("change", e.ID), notYetFigure("agreed", "unit rate agreed").of("change", e.ID)
	if b.Quantity != nil {
		r.Quantity = strings.TrimSpace(fmt.Sprintf("%g %s", *b.Quantity, b.Per))
	}
	if b.UnitRate != nil {
		r.Rate = known("rate", "unit rate asked", *b.UnitRate, "money", basisOf(e.Head, field.Documented), b.Per).of("change", e.ID)
	}
	rate, ok := c.agreedRate(b)
	if !ok {
		return
	}
	r.Agreed = known("agreed", "unit rate agreed", *rate.Body.Likely, "money", basisOf(rate.Head, field.Documented), rate.Body.Source).of("rate", rate.ID)
	if rate.Body.Low != nil && rate.Body.High != nil {
		r.Agreed = r.Agreed.band(*rate.Body.Low, *rate.Body.Likely, *rate.Body.High)
	}
	switch {
	case b.UnitRate == nil:
	case rate.Body.High != nil && *b.UnitRate > *rate.Body.High:
		r.Rate.Worry, r.Rate.Note = 2, "above the highest rate agreed"
	case *b.UnitRate > *rate.Body.Likely:
		r.Rate.Worry, r.Rate.Note = 1, "above the likely rate agreed"
	}
}

// agreedRate finds the rate of a change order: that of its item of work if the units agree, else the only rate in that unit.
func (c *inquiry) agreedRate(b plan.Change) (best dossier.Entry[plan.Rate], ok bool) {
	if w, found := dossier.Find[plan.Work](c.d, b.Work); found {
		if rate, has := dossier.Find[plan.Rate](c.d, w.Body.Rate); has && rate.Body.Likely != nil && (b.Per == "" || rate.Body.Per == b.Per) {
			return rate, true
		}
	}
	for _, e := range dossier.All[plan.Rate](c.d) {
		if b.Per == "" || e.Body.Per != b.Per || e.Body.Likely == nil {
			continue
		}
		if ok {
			return dossier.Entry[plan.Rate]{}, false // two rates in that unit: which one was meant is not known
		}
		best, ok = e, true
	}
	return best, ok
}

func (c *inquiry) changeRows(p *InDockPage) {
	for _, e := range dossier.All[plan.Change](c.d) {
		b := e.Body
		if c.later(b.Date) {
			p.later++
			continue
		}
		r := ChangeRow{ID: e.ID, Number: b.Number, Date: b.Date.String(), Description: b.Description, Why: c.whyOf(b), State: cmp.Or(b.State, "asked"), Approver: b.Approver,
			Amount: notYetFigure("amount", "amount").of("change", e.ID), Days: notYetFigure("days", "days").of("change", e.ID)}
		if b.Pot != "" {
			r.Pot = c.nameOf(b.Pot)
		}
		c.changeRate(&r, e)
		if x, note := c.changePrice(b); x != nil {
			r.Amount = known("amount", "amount", *x, "money", basisOf(e.Head, field.Documented), note).of("change", e.ID)
		} else if r.State != "refused" {
			p.Missing = append(p.Missing, Notice{What: "Change order " + cmp.Or(r.Number, r.ID) + " has no price.", Do: "Price it by quantity and agreed rate.", Kind: "change", ID: e.ID, Page: "indock", Worry: 1})
		}
		if b.Days != nil {
			r.Days = known("days", "days", *b.Days, "d", basisOf(e.Head, field.Documented), "").of("change", e.ID)
		}
		if (r.State == "approved" || r.State == "done") && b.Pot == "" {
			p.Missing = append(p.Missing, Notice{What: "Change order " + cmp.Or(r.Number, r.ID) + " is approved and nobody said who pays.", Do: "Name the pot.", Kind: "change", ID: e.ID, Page: "indock", Worry: 2})
		}
		p.Changes = append(p.Changes, r)
	}
	slices.SortStableFunc(p.Changes, func(a, b ChangeRow) int { return cmp.Or(cmp.Compare(b.Date, a.Date), cmp.Compare(b.Number, a.Number)) })
}

// changesIn adds up the change orders in some states that no commitment carries yet, as a sheet of certain lines.
func (c *inquiry) changesIn(subject, words string, states ...string) (Figure, float64, bool) {
	carried := map[string]bool{}
	for _, e := range dossier.All[plan.Commitment](c.d) {
		if e.Body.Change != "" && e.Body.State != "cancelled" {
			carried[e.Body.Change] = true
		}
	}
	in := estimate.Estimate.New()
	for _, e := range dossier.All[plan.Change](c.d) {
		if x, _ := c.changePrice(e.Body); !c.later(e.Body.Date) && x != nil && !carried[e.ID] && slices.Contains(states, cmp.Or(e.Body.State, "asked")) {
			in.Lines = append(in.Lines, estimate.Line{Name: cmp.Or(e.Body.Number, e.Body.Description, e.ID), Likely: x, Kind: "fixed", Share: 1})
		}
	}
	if len(in.Lines) == 0 {
		return Figure{}, 0, false
	}
	sheet, out, err := c.price(subject, words, in, map[string]field.Given{"lines": how(field.Documented, "change orders that no commitment carries yet")})
	if err != nil {
		return Figure{}, 0, false
	}
	f := result(sheet, "likely_sum", words)
	return f, out.LikelySum, true
}

// dockMoney says what is free, what the changes and the lit triggers call on it, and what is left.
func (c *inquiry) dockMoney(p *InDockPage, m MoneyPage) {
	if !m.held {
		p.Missing = append(p.Missing, Notice{What: "No account can be drawn up, so nobody can say what is left.", Do: "Enter the pots and what is signed for.", Kind: "pot", Page: "money", Worry: 2})
		return
	}
	for _, f := range m.Account {
		switch f.Key {
		case "free":
			f.Label = "free, after what is signed and the reserve"
			p.Money = append(p.Money, f)
		case "in_hand", "committed", "reserve":
			p.Money = append(p.Money, f)
		}
	}
	left := m.ledger.Free
	take := func(subject, words string, states ...string) {
		if f, sum, ok := c.changesIn(subject, words, states...); ok {
			p.Money = append(p.Money, f)
			left -= sum
		}
	}
	take("changes-approved", "change orders approved and not yet signed for", "approved", "done")
	take("changes-asked", "change orders asked for or priced", "asked", "priced")
	called, released := 0.0, 0.0
	for _, l := range p.Lit {
		if l.State == "answered" || l.Money.Value == nil {
			continue
		}
		if l.Direction == "better" {
			released += *l.Money.Value
		} else {
			called += *l.Money.Value
		}
	}
	add := func(key, label string, x float64, note string) {
		f := known(key, label, x, "money", field.Computed, note)
		if key == "left" && x < 0 {
			f.Worry = 3
		}
		p.Money = append(p.Money, f)
	}
	if called > 0 {
		add("called", "called by triggers not yet answered", called, "the triggers lit above")
	}
	if released > 0 {
		add("released", "released by triggers not yet answered", released, "the triggers lit above; counted when it is decided")
	}
	add("left", "left if all of that is agreed", left-called, "what is free, less changes, less what is called; nothing released is counted")
}
