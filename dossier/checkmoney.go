package dossier

import (
	"fmt"
	"slices"
	"strings"

	"oakum/plan"
	"oakum/quantity"
)

// money looks for movements without a pot, pots spent below nothing, and promises that can't be counted.
func (c *checker) money() {
	balance := map[string]float64{}
	known := map[string]plan.Pot{}
	for _, p := range All[plan.Pot](c.d) {
		known[p.ID] = p.Body
		balance[p.ID] = orZero(p.Body.Opening)
		if p.Body.Restricted != nil && *p.Body.Restricted && len(p.Body.Groups)+len(p.Body.Works)+len(p.Body.Matters) == 0 {
			c.tell(Missing, RecordOf(p), fmt.Sprintf("The %s is restricted, and to what is not said.", RecordOf(p).Label()), "Name the groups of work, works or matters it may pay for.")
		}
	}
	for _, e := range All[plan.Receipt](c.d) {
		c.movement(RecordOf(e), e.Body.Pot, e.Body.Amount, e.Body.Date)
		balance[e.Body.Pot] += orZero(e.Body.Amount)
	}
	for _, e := range All[plan.Payment](c.d) {
		c.movement(RecordOf(e), e.Body.Pot, e.Body.Amount, e.Body.Date)
		balance[e.Body.Pot] -= orZero(e.Body.Amount)
		c.restricted(RecordOf(e), known, e.Body.Pot, e.Body.Work, e.Body.Date)
	}
	for _, e := range All[plan.Commitment](c.d) {
		c.movement(RecordOf(e), e.Body.Pot, e.Body.Amount, e.Body.Date)
		c.restricted(RecordOf(e), known, e.Body.Pot, e.Body.Work, e.Body.Date)
	}
	for _, p := range All[plan.Pot](c.d) {
		if b := balance[p.ID]; b < -0.005 {
			c.tell(Wrong, RecordOf(p), fmt.Sprintf("More has gone out of the %s than came in: it stands at %.2f.", RecordOf(p).Label(), b), "A receipt is missing, a payment is in the wrong pot, or a sign is wrong.")
		}
	}
	c.paidTwice()
	c.promises()
}

func (c *checker) movement(r Record, pot string, amount *float64, day quantity.Date) {
	if pot == "" {
		c.tell(Missing, r, fmt.Sprintf("The %s names no pot.", r.Label()), "Name the pot the money is in: what can be signed is reckoned pot by pot.")
	}
	if amount == nil {
		c.tell(Missing, r, fmt.Sprintf("The %s has no amount.", r.Label()), "Enter the amount.")
	}
	if day.IsZero() {
		c.tell(Missing, r, fmt.Sprintf("The %s has no date.", r.Label()), "Enter the date.")
	}
}

// restricted looks for money taken from a pot for a work that the pot may not pay for.
func (c *checker) restricted(r Record, pots map[string]plan.Pot, id, work string, day quantity.Date) {
	p, ok := pots[id]
	w, isWork := Find[plan.Work](c.d, work)
	if !ok || day.Before(p.NotBefore) || p.NotAfter.Before(day) {
		if ok {
			c.tell(Wrong, r, fmt.Sprintf("The %s falls outside the days on which the pot %s may be spent.", r.Label(), p.Name), "Take it from another pot, or ask whoever set the rule.")
		}
		return
	}
	if p.Restricted == nil || !*p.Restricted || !isWork || len(p.Groups)+len(p.Works)+len(p.Matters) == 0 {
		return
	}
	inGroup := slices.ContainsFunc(p.Groups, func(g string) bool { return strings.EqualFold(g, w.Body.Group) })
	if !inGroup && !slices.Contains(p.Works, work) && !slices.Contains(p.Matters, w.Body.Matter) {
		c.tell(Wrong, r, fmt.Sprintf("The %s takes money of the pot %s for %s, which that pot may not pay for.", r.Label(), p.Name, RecordOf(w).Label()), "Take it from another pot.")
	}
}

// paidTwice looks for commitments paid beyond their amount.
func (c *checker) paidTwice() {
	paid := map[string]float64{}
	for _, p := range All[plan.Payment](c.d) {
		paid[p.Body.Commitment] += orZero(p.Body.Amount)
	}
	for _, e := range All[plan.Commitment](c.d) {
		if e.Body.Amount != nil && paid[e.ID] > *e.Body.Amount*1.001+0.005 {
			r := RecordOf(e)
			c.tell(Wrong, r, fmt.Sprintf("%.2f was paid on the %s of %.2f.", paid[e.ID], r.Label(), *e.Body.Amount), "A change order is missing, or a bill was paid twice.")
		}
	}
}

func (c *checker) promises() {
	for _, e := range All[plan.Pledge](c.d) {
		r, p := RecordOf(e), e.Body
		open := p.State == "open" || p.State == ""
		switch {
		case p.Amount == nil:
			c.tell(Missing, r, fmt.Sprintf("The %s has no amount.", r.Label()), "Enter the amount.")
		case p.Received != nil && *p.Received > *p.Amount:
			c.tell(Doubt, r, fmt.Sprintf("More came of the %s than was promised.", r.Label()), "Enter the rest as a gift.")
		case open && c.past(p.Due) && orZero(p.Received) < *p.Amount:
			c.tell(Overdue, r, fmt.Sprintf("The %s was due on %s.", r.Label(), p.Due.Words()), "Ask after it, and give it a new day or a smaller chance.")
		}
		if open && p.Due.IsZero() {
			c.tell(Missing, r, fmt.Sprintf("When the %s comes is not known.", r.Label()), "Ask for a day: what can be signed, and when, depends on it.")
		}
		if p.Conditional != nil && *p.Conditional && p.Condition == "" {
			c.tell(Missing, r, fmt.Sprintf("The %s is conditional, and on what is not said.", r.Label()), "Enter the condition. Until it is met the pledge counts as nothing.")
		}
	}
	for _, e := range All[plan.Grant](c.d) {
		r, g := RecordOf(e), e.Body
		if g.Cap == nil {
			c.tell(Missing, r, fmt.Sprintf("The most the %s gives is not known.", r.Label()), "Enter it.")
		}
		if g.Cap != nil && orZero(g.Claimed) > *g.Cap {
			c.tell(Wrong, r, fmt.Sprintf("More was claimed of the %s than it gives.", r.Label()), "Correct the figures.")
		}
		if g.State == "idea" && c.past(g.Deadline) {
			c.tell(Overdue, r, fmt.Sprintf("The day to apply for the %s was %s.", r.Label(), g.Deadline.Words()), "Look for the next round, or drop it from the plan.")
		}
		if g.State == "awarded" && (c.past(g.SpendBy) || c.past(g.MatchBy)) {
			c.tell(Overdue, r, fmt.Sprintf("A day of the %s has passed.", r.Label()), "Ask the giver whether the award still stands.")
		}
	}
}
