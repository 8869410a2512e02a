package print

import (
	"oakum/assess"
	"oakum/print/page"
)

var funding = Paper{
	Name: "funding", Title: "Funding statement", For: "treasurer, giver of a grant: what is there, what is tied, what may still come",
	Needs: func(b *assess.Brief) string {
		if len(b.Money.Account) == 0 {
			return "no money is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		m := b.Money
		d.List(m.Heading)
		signing(d, m, &r)
		d.Heading("The account")
		r.figures(d, m.Account)
		if len(m.Pots) > 0 {
			d.Heading("By pot")
			t := page.Table{Columns: []page.Column{{Head: "Pot", Face: page.Bold, Share: 1}, {Head: "Only for", Share: 1}, {Head: "In hand", Right: true}, {Head: "Signed for", Right: true}, {Head: "Reserve", Right: true}, {Head: "Free", Right: true, Face: page.Bold}}}
			for _, p := range m.Pots {
				t.Rows = append(t.Rows, []string{p.Name, p.Restricted, p.InHand.Text, p.Committed.Text, p.Reserve.Text, p.Free.Text})
			}
			d.Table(keep(t))
		}
		if len(m.Pledges) > 0 {
			d.Heading("Promised")
			t := page.Table{Columns: []page.Column{{Head: "By", Share: 1, Face: page.Bold}, {Head: "Not yet received", Right: true}, {Head: "Counts for", Right: true}, {Head: "State", Share: 1}}}
			for _, p := range m.Pledges {
				t.Rows = append(t.Rows, []string{p.Name, p.Open.Text, p.Counted.Text, p.State})
			}
			d.Table(t)
		}
		if len(m.Grants) > 0 {
			d.Heading("Grants")
			t := page.Table{Columns: []page.Column{{Head: "Grant", Share: 1, Face: page.Bold}, {Head: "Earned", Right: true}, {Head: "Open", Right: true}, {Head: "Own money lacking", Right: true}, {Head: "To come", Right: true}}}
			for _, g := range m.Grants {
				t.Rows = append(t.Rows, []string{g.Name, g.Earned.Text, g.Open.Text, g.Lacking.Text, g.ToCome.Text})
			}
			d.Table(t)
		}
		if len(m.Flow) > 0 {
			d.Heading("Cash to come and to go")
			t := page.Table{Columns: []page.Column{{Head: "Day"}, {Head: "What", Share: 1}, {Head: "Pot"}, {Head: "Amount", Right: true}, {Head: "Cash after it", Right: true, Face: page.Bold}}}
			for _, f := range m.Flow {
				t.Rows = append(t.Rows, []string{f.Date, f.What, f.Pot, f.Amount.Text, f.Balance.Text})
			}
			d.Table(t)
		}
		r.list(d, b)
		d.Sign(page.Signer{Who: "Treasurer", For: "agrees with the books"})
	},
}

// signing says what can be signed for today, how likely that is enough, and when the rest can be.
func signing(d *page.Document, m assess.MoneyPage, r *references) {
	list := append([]assess.Figure{}, m.Sign...)
	for _, f := range []*assess.Figure{m.Signing, m.SigningIf} {
		if f != nil {
			list = append(list, *f)
		}
	}
	if len(list) == 0 {
		return
	}
	d.Heading("What can be signed for")
	r.figures(d, list)
	t := page.Table{Columns: []page.Column{{Head: "For", Share: 1}, {Head: "Enough with a chance of", Right: true, Face: page.Bold}, {Head: "Needed", Right: true}, {Head: "Lacking", Right: true}, {Head: "How known"}}}
	for _, e := range m.Enough {
		t.Rows = append(t.Rows, []string{e.Scope, e.Chance.Text, e.Needed.Text, e.Lacking.Text, r.from(e.Chance)})
	}
	if len(t.Rows) > 0 {
		d.Table(t)
	}
}
