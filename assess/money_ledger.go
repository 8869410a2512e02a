package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/money"
	"oakum/plan"
	"oakum/quantity"
)

// unsorted is the pot of money that nobody put into one: it is held, and what it may be spent on is not known, so it is not free for anything.
const unsorted = "in no pot"

// ledgerDraft gathers the movements for the account, and counts what could not be taken.
type ledgerDraft struct {
	c       *inquiry
	in      money.LedgerIn
	pots    map[string]string // name by ID of pot or grant
	undated map[string]int    // by kind
	papers  int               // movements that name no paper
	loose   int               // movements in no pot
}

func (c *inquiry) account(p *MoneyPage) {
	d := c.draftLedger()
	c.ledgerAsks(p, d)
	if len(d.in.Pots) == 0 {
		return
	}
	sheet, out, err := work(c.book, money.Ledger, "today", "the account of "+c.day.Words(), d.in, d.given())
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The account can't be drawn up: " + err.Error() + ".", Do: "Correct that entry.", Kind: "pot", Page: "money", Worry: 2})
		return
	}
	p.ledger, p.held = out, true
	for _, l := range [][2]string{{"in_hand", "in hand"}, {"committed", "signed for and not yet paid"}, {"retained", "of that, kept back from bills"}, {"reserve", "reserve, never spent on anything else"},
		{"free", "free, before pledges and grants"}, {"free_for_anything", "of that, free for anything"}, {"pledges_open", "pledges not yet received, at their face"}, {"pledges_counted", "pledges, as far as they count"},
		{"pledges_waiting", "pledges that wait for a condition: counted as nothing"}, {"grants_matched", "grants earned by own money"}, {"grants_to_come", "of that, not yet paid"}, {"deepest_gap", "deepest gap below the reserve"}} {
		f := result(sheet, l[0], l[1])
		switch {
		case l[0] == "free" && out.Free < 0:
			f.Worry = 3
		case l[0] == "deepest_gap" && out.Gap > 0:
			f.Worry, f.Note = 2, "on "+out.GapDate.Words()
		}
		p.Account = append(p.Account, f)
	}
	c.potRows(p, d, out, sheet.ID)
	for _, w := range out.Warnings {
		p.Missing = append(p.Missing, Notice{What: strings.ToUpper(w[:1]) + w[1:] + ".", Kind: "pot", Page: "money", Worry: 1})
	}
}

func (c *inquiry) draftLedger() *ledgerDraft {
	d := &ledgerDraft{c: c, in: money.Ledger.New(), pots: map[string]string{}, undated: map[string]int{}}
	d.in.AsOf = c.day
	d.namePots()
	d.movements()
	d.commitments()
	d.pledges()
	d.grants()
	if r, ok := c.reserveNeeded(); ok {
		d.in.Reserve = new(r)
	}
	return d
}

// namePots enters the pots, each under a name of its own.
func (d *ledgerDraft) namePots() {
	taken := map[string]bool{}
	enter := func(id, name string) string {
		for n := 2; taken[name] || name == ""; n++ {
			name = fmt.Sprintf("%s (%d)", cmp.Or(name, "pot"), n)
		}
		taken[name] = true
		d.pots[id] = name
		return name
	}
	for _, e := range dossier.All[plan.Pot](d.c.d) {
		b := e.Body
		pot := money.Pot{Name: enter(e.ID, b.Name), Reserve: yes(b.Reserve)}
		if b.Opening != nil {
			pot.Opening = *b.Opening
		}
		if yes(b.Restricted) {
			pot.Restricted = cmp.Or(b.Restriction, strings.Join(b.Groups, ", "), d.c.namesOf(b.Works), "restricted; to what is not written down")
		}
		d.in.Pots = append(d.in.Pots, pot)
	}
	for _, e := range dossier.All[plan.Grant](d.c.d) {
		if _, known := d.pots[e.Body.Pot]; known {
			d.pots[e.ID] = d.pots[e.Body.Pot]
		} else if e.Body.State == "awarded" || e.Body.State == "closed" {
			name := enter(e.ID, "grant: "+e.Body.Name)
			d.in.Pots = append(d.in.Pots, money.Pot{Name: name, Restricted: cmp.Or(e.Body.Conditions, strings.Join(e.Body.Groups, ", "), "what the grant is for")})
		}
	}
}

// pot names the pot of a movement; without one the money is held apart.
func (d *ledgerDraft) pot(id string) string {
	if name, ok := d.pots[id]; ok {
		return name
	}
	d.loose++
	if _, ok := d.pots[""]; !ok {
		d.pots[""] = unsorted
		d.in.Pots = append(d.in.Pots, money.Pot{Name: unsorted, Restricted: "nobody has said what it may be spent on"})
	}
	return d.pots[""]
}

func (d *ledgerDraft) paper(text, kind, id string) string {
	if text == "" {
		d.papers++
		return "none named; entry " + kind + " " + id
	}
	return text
}

func (d *ledgerDraft) movements() {
	for _, e := range dossier.All[plan.Receipt](d.c.d) {
		b := e.Body
		if b.Amount == nil || b.Date.IsZero() {
			d.undated["receipt"]++
			continue
		}
		pot := b.Pot
		if pot == "" {
			pot = b.Grant
		}
		m := money.Movement{Pot: d.pot(pot), Date: b.Date, Amount: math.Abs(*b.Amount), Paper: d.paper(b.Paper, "receipt", e.ID)}
		if *b.Amount < 0 { // given back
			d.in.Payments = append(d.in.Payments, m)
		} else {
			d.in.Receipts = append(d.in.Receipts, m)
		}
	}
	for _, e := range dossier.All[plan.Payment](d.c.d) {
		b := e.Body
		if b.Amount == nil || b.Date.IsZero() {
			d.undated["payment"]++
			continue
		}
		m := money.Movement{Pot: d.pot(b.Pot), Date: b.Date, Amount: math.Abs(*b.Amount), Paper: d.paper(b.Paper, "payment", e.ID)}
		if *b.Amount < 0 { // paid back
			d.in.Receipts = append(d.in.Receipts, m)
			continue
		}
		if cm, ok := dossier.Find[plan.Commitment](d.c.d, b.Commitment); ok && cm.Body.State != "cancelled" && cm.Body.Amount != nil && !cm.Body.Date.IsZero() {
			m.Commitment = commitmentName(cm)
		}
		d.in.Payments = append(d.in.Payments, m)
	}
}

func commitmentName(e dossier.Entry[plan.Commitment]) string {
	return cmp.Or(e.Body.What, e.Body.To, "commitment") + " (" + e.ID + ")"
}

// commitments are what is signed for: settled ones are paid or written off, and owe nothing more.
func (d *ledgerDraft) commitments() {
	for _, e := range dossier.All[plan.Commitment](d.c.d) {
		b := e.Body
		if b.State == "cancelled" {
			continue
		}
		if b.Amount == nil || b.Date.IsZero() {
			d.undated["commitment"]++
			continue
		}
		m := money.Commitment{Name: commitmentName(e), Pot: d.pot(b.Pot), Date: b.Date, Amount: *b.Amount, Paper: d.paper(b.Paper, "commitment", e.ID), Due: b.Due}
		if b.Retention != nil {
			m.Retention = *b.Retention
		}
		if b.State == "settled" {
			m.Amount, m.Retention = d.paidOn(m.Name), 0
		}
		d.in.Commitments = append(d.in.Commitments, m)
	}
}

func (d *ledgerDraft) paidOn(name string) (paid float64) {
	for _, m := range d.in.Payments {
		if m.Commitment == name {
			paid += m.Amount
		}
	}
	return paid
}

func (d *ledgerDraft) pledges() {
	for _, e := range dossier.All[plan.Pledge](d.c.d) {
		b := e.Body
		if b.State == "paid" || b.State == "withdrawn" {
			continue
		}
		if b.Amount == nil || b.Due.IsZero() {
			d.undated["pledge"]++
			continue
		}
		m := money.Pledge{Name: pledgeName(e), Pot: d.pot(b.Pot), Amount: *b.Amount, Due: b.Due, Conditional: yes(b.Conditional), Met: !b.Met.IsZero() && b.Met.Compare(d.c.day) <= 0}
		if m.Received = d.receivedOn(e.ID); b.Received != nil {
			m.Received = *b.Received
		}
		m.Received = min(m.Received, m.Amount)
		if b.Chance != nil {
			m.Allowance = new(1 - *b.Chance)
		}
		d.in.Pledges = append(d.in.Pledges, m)
	}
}

func (d *ledgerDraft) receivedOn(pledge string) (sum float64) {
	for _, e := range dossier.All[plan.Receipt](d.c.d) {
		if e.Body.Pledge == pledge && e.Body.Amount != nil {
			sum += *e.Body.Amount
		}
	}
	return sum
}

// grants are those awarded. Own money stands against one at a time: what has matched one grant can't match the next.
func (d *ledgerDraft) grants() {
	own := d.ownMoney()
	all := slices.Clone(dossier.All[plan.Grant](d.c.d))
	slices.SortStableFunc(all, func(a, b dossier.Entry[plan.Grant]) int { return a.Body.Award.Compare(b.Body.Award) })
	for _, e := range all {
		b := e.Body
		if b.State != "awarded" {
			continue
		}
		if b.Cap == nil {
			d.undated["grant"]++
			continue
		}
		g := money.Grant{Name: b.Name, Pot: d.pot(e.ID), Cap: *b.Cap, Match: 1, Arrears: yes(b.Arrears)}
		if b.Match != nil {
			g.Match = *b.Match
		}
		if g.Paid = d.paidBy(e.ID); b.Paid != nil {
			g.Paid = *b.Paid
		}
		g.Paid = min(g.Paid, g.Cap)
		spent := min(d.spentSince(cmp.Or(b.SpendFrom, b.Award)), g.Cap*g.Match)
		used := min(max(own, 0), g.Cap*g.Match-spent)
		own -= used
		g.Held = new(max(spent+used, g.Paid*g.Match)) // what was paid out has been matched, or it would not have been paid
		d.in.Grants = append(d.in.Grants, g)
	}
}

func (d *ledgerDraft) paidBy(grant string) (sum float64) {
	for _, e := range dossier.All[plan.Receipt](d.c.d) {
		if e.Body.Grant == grant && e.Body.Amount != nil {
			sum += *e.Body.Amount
		}
	}
	return sum
}

// spentSince is what own pots paid on and after a day: it still stands against a grant. Without a day nothing is known to.
func (d *ledgerDraft) spentSince(day quantity.Date) (sum float64) {
	if day.IsZero() {
		return 0
	}
	for _, m := range d.in.Payments {
		if m.Date.Compare(day) >= 0 && m.Date.Compare(d.in.AsOf) <= 0 && !strings.HasPrefix(m.Pot, "grant: ") && m.Pot != unsorted {
			sum += m.Amount
		}
	}
	return sum
}

// ownMoney is what may stand against a grant: everything in hand that is neither reserve nor grant money nor in no pot.
func (d *ledgerDraft) ownMoney() float64 {
	in := d.in
	in.Pledges, in.Grants, in.Commitments = nil, nil, nil
	in.Payments = slices.Clone(in.Payments)
	for i := range in.Payments {
		in.Payments[i].Commitment = ""
	}
	if len(in.Pots) == 0 {
		return 0
	}
	out, err := money.Ledger.Fn(in)
	if err != nil {
		return 0
	}
	own, reserve := 0.0, 0.0
	for i, s := range out.ByPot {
		switch {
		case in.Pots[i].Reserve:
			reserve += s.InHand
		case !strings.HasPrefix(s.Name, "grant: ") && s.Name != unsorted:
			own += s.InHand
		}
	}
	if need, ok := d.c.reserveNeeded(); ok {
		own -= max(need-reserve, 0)
	}
	return math.Max(own, 0)
}

func (d *ledgerDraft) given() map[string]field.Given {
	entered := how(field.Documented, "the entries of the dossier")
	return map[string]field.Given{"as_of": how(field.Computed, "the day of the brief"), "pots": entered, "receipts": entered, "payments": entered, "commitments": entered, "pledges": entered,
		"grants": how(field.Computed, "awarded ones; own money in hand, less the reserve, stands against one at a time"), "reserve_needed": how(field.Computed, "from the reserves entered"),
		"discount": how(field.Assumed, "default"), "allowance": how(field.Assumed, "default, where the pledge gives no chance")}
}
