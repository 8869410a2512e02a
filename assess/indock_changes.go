package assess

import (
	"cmp"
	"slices"

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

func (c *inquiry) changeRows(p *InDockPage) {
	for _, e := range dossier.All[plan.Change](c.d) {
		b := e.Body
		r := ChangeRow{ID: e.ID, Number: b.Number, Date: b.Date.String(), Description: b.Description, State: cmp.Or(b.State, "asked"), Approver: b.Approver,
			Amount: notYetFigure("amount", "amount").of("change", e.ID), Days: notYetFigure("days", "days").of("change", e.ID)}
		if b.Pot != "" {
			r.Pot = c.nameOf(b.Pot)
		}
		if x, note := changeAmount(b); x != nil {
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
		if x, _ := changeAmount(e.Body); x != nil && !carried[e.ID] && slices.Contains(states, cmp.Or(e.Body.State, "asked")) {
			in.Lines = append(in.Lines, estimate.Line{Name: cmp.Or(e.Body.Number, e.Body.Description, e.ID), Likely: x, Kind: "fixed", Share: 1})
		}
	}
	if len(in.Lines) == 0 {
		return Figure{}, 0, false
	}
	sheet, out, err := work(c.book, estimate.Estimate, subject, words, in, map[string]field.Given{"lines": how(field.Documented, "change orders that no commitment carries yet")})
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
	free := *frontMoney(m)
	free.Label = "free, after what is signed and the reserve"
	p.Money = append(p.Money, free)
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
