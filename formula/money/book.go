package money

import (
	"fmt"

	"oakum/quantity"
)

// book is an account being drawn up.
type book struct {
	in   LedgerIn
	out  *LedgerOut
	pots map[string]int
	paid map[string]float64 // against each commitment
	late int                // movements dated after the day
}

type way struct {
	name string
	sign float64
	list []Movement
}

func (b *book) ways() [2]way {
	return [2]way{{"receipts", 1, b.in.Receipts}, {"payments", -1, b.in.Payments}}
}

// movements adds up the pots.
func (b *book) movements() error {
	for _, p := range b.in.Pots {
		b.out.ByPot = append(b.out.ByPot, PotState{Name: p.Name, Restricted: p.Restricted, InHand: p.Opening})
	}
	for _, way := range b.ways() {
		for i, m := range way.list {
			if err := m.check(way.name, i, b.pots); err != nil {
				return err
			}
			if m.Date.First().After(b.in.AsOf.Last()) {
				b.late++
				continue
			}
			b.out.ByPot[b.pots[m.Pot]].InHand += way.sign * m.Amount
			if way.sign < 0 && m.Commitment != "" {
				b.paid[m.Commitment] += m.Amount
			}
		}
	}
	for _, p := range b.out.ByPot {
		b.out.InHand += p.InHand
	}
	return nil
}

// commitments adds up what is signed for and not paid, and when it falls due.
func (b *book) commitments() error {
	known := map[string]bool{}
	for i, c := range b.in.Commitments {
		if err := c.check(i, b.pots); err != nil {
			return err
		}
		if known[c.Name] {
			b.say("commitment %q stands twice: payments to it can't be told apart", c.Name)
		}
		known[c.Name] = true
		open, kept := c.split(b.paid[c.Name])
		if open < 0 && c.Amount >= 0 {
			b.say("commitment %q is overpaid by %.2f", c.Name, -open)
			open, kept = 0, 0
		}
		b.out.ByPot[b.pots[c.Pot]].Committed += open
		b.out.Committed += open
		b.out.Retained += kept
		b.expect(c.Due, c.Name, c.Pot, kept-open)
		release := c.Release
		if release.IsZero() {
			release = c.Due
		}
		b.expect(release, c.Name+", kept back", c.Pot, -kept)
	}
	for i, p := range b.in.Payments {
		if p.Commitment != "" && !known[p.Commitment] {
			b.say("payments[%d] pays %q, which is no commitment here", i, p.Commitment)
		}
	}
	return nil
}

// expect puts a movement into the cash to come: a bill on the first day of its date, or at once; a receipt on the last.
func (b *book) expect(date quantity.Date, what, pot string, amount float64) {
	if amount == 0 {
		return
	}
	on := b.in.AsOf
	if !date.IsZero() {
		on = quantity.DateOf(date.First())
		if amount > 0 {
			on = quantity.DateOf(date.Last())
		}
	}
	b.out.Flow = append(b.out.Flow, Flow{Date: on, What: what, Pot: pot, Amount: amount})
}

func (b *book) pledges() error {
	b.out.Pledges = []PledgeState{}
	for i, p := range b.in.Pledges {
		s, err := p.state(i, b.pots, b.in.AsOf.Last(), b.in.Discount, b.in.Allowance)
		if err != nil {
			return err
		}
		b.out.Pledges = append(b.out.Pledges, s)
		b.out.PledgesOpen += s.Open
		b.out.PledgesPresent += s.Present
		b.out.PledgesCounted += s.Counted
		switch {
		case s.Waiting:
			b.out.PledgesWaiting += s.Open
		case s.Overdue:
			b.say("pledge %q is overdue: it is counted, but not in the cash to come", p.Name)
		case s.Present > 0:
			b.expect(p.Due, "pledge "+p.Name, p.Pot, s.Open*s.Counted/s.Present)
		}
	}
	return nil
}

func (b *book) grants() error {
	b.out.Grants = []GrantState{}
	for i, g := range b.in.Grants {
		s, err := g.state(i, b.pots)
		if err != nil {
			return err
		}
		b.out.Grants = append(b.out.Grants, s)
		b.out.GrantsMatched += s.Matched
		b.out.GrantsToCome += s.ToCome
		b.out.Project += s.Project
		if g.Held == nil {
			b.say("grant %q: it is not said how much own money stands against it, so it counts as nothing", g.Name)
		}
		switch {
		case s.ToCome > 0 && !g.PaysOn.IsZero():
			b.expect(g.PaysOn, "grant "+g.Name, g.Pot, s.ToCome)
		case s.ToCome > 0:
			b.say("grant %q has no date of payment: it is not in the cash to come", g.Name)
		}
	}
	return nil
}

// reserve sets the reserve aside, in its pots first, and works out what is free.
func (b *book) reserve() {
	kept := 0.0
	for i, p := range b.in.Pots {
		if p.Reserve {
			b.out.ByPot[i].Reserve = b.out.ByPot[i].InHand
			kept += b.out.ByPot[i].InHand
		}
	}
	b.out.Reserve = kept
	if b.in.Reserve != nil {
		b.out.Reserve = *b.in.Reserve
	}
	b.out.Free = b.out.InHand - b.out.Committed - b.out.Reserve
	b.out.Anywhere = min(kept-b.out.Reserve, 0)
	for i, p := range b.in.Pots {
		s := &b.out.ByPot[i]
		s.Free = s.InHand - s.Committed - s.Reserve
		switch {
		case s.Free < 0:
			b.out.Anywhere += s.Free // what a pot owes beyond itself, another must pay
		case p.Restricted == "" && !p.Reserve:
			b.out.Anywhere += s.Free
		}
	}
}

func (b *book) warn() {
	if b.late > 0 {
		b.say("%d movements are dated after %s and are left out", b.late, b.in.AsOf)
	}
	if b.in.Reserve == nil && b.out.Reserve == 0 {
		b.say("no reserve is named: a ship in dock must be able to pay for undocking, the tow home and mooring again")
	}
	for _, p := range b.out.ByPot {
		if p.InHand < -0.005 {
			b.say("pot %q is overdrawn by %.2f: more went out of it than came in", p.Name, -p.InHand)
		} else if p.Free < -0.005 {
			b.say("pot %q owes %.2f more than it holds", p.Name, -p.Free)
		}
	}
	for _, way := range b.ways() {
		first, name := map[Movement]int{}, way.name
		for i, m := range way.list {
			if k, twice := first[m]; twice {
				b.say("%s[%d] and %s[%d] are the same in pot, date, amount and paper: entered twice?", name, k, name, i)
				continue
			}
			first[m] = i
		}
	}
	if b.out.Gap > 0 {
		b.say("on %s the cash to come stands %.2f below the reserve", b.out.GapDate, b.out.Gap)
	}
}

func (b *book) say(format string, a ...any) {
	b.out.Warnings = append(b.out.Warnings, fmt.Sprintf(format, a...))
}
