package dossier

import (
	"fmt"
	"math"

	"oakum/plan"
)

// bids looks for sums that do not foot and for blanks. Where unit price and amount disagree the unit price usually governs.
func (c *checker) bids() {
	sums, lines := map[string]float64{}, map[string]int{}
	for _, e := range All[plan.BidLine](c.d) {
		r, b := RecordOf(e), e.Body
		lines[b.Bid]++
		amount := b.Extension
		if b.Quantity != nil && b.UnitRate != nil {
			x := *b.Quantity * *b.UnitRate
			if amount != nil && math.Abs(x-*amount) > 0.01+1e-4*math.Abs(x) {
				c.tell(Wrong, r, fmt.Sprintf("The %s says %.2f, but %g at %.2f are %.2f.", r.Label(), *amount, *b.Quantity, *b.UnitRate, x), "Ask the bidder; the unit price usually governs.")
			}
			amount = &x
		}
		if amount == nil && b.Entry == "number" {
			c.tell(Missing, r, fmt.Sprintf("The %s has no price.", r.Label()), "Ask the bidder: a blank is not nothing, and not \"included\".")
		}
		if b.Kind != "option" {
			sums[b.Bid] += orZero(amount)
		}
	}
	for _, e := range All[plan.Bid](c.d) {
		r, b := RecordOf(e), e.Body
		sum := sums[e.ID] + orZero(b.Lump) + orZero(b.Tow) + orZero(b.Bond)
		if b.Total != nil && lines[e.ID] > 0 && math.Abs(sum-*b.Total) > 0.01**b.Total {
			c.tell(Doubt, r, fmt.Sprintf("The %s is written as %.0f, and its parts make %.0f.", r.Label(), *b.Total, sum), "Find what is left out or counted twice before bids are compared.")
		}
		if b.DayRate == nil && b.ExtraDay == nil {
			c.tell(Missing, r, fmt.Sprintf("The %s names no day rate.", r.Label()), "Ask for it: days are where the money goes.")
		}
		if c.past(b.ValidTo) && (b.State == "received" || b.State == "clarifying" || b.State == "preferred") {
			c.tell(Overdue, r, fmt.Sprintf("The %s was valid until %s.", r.Label(), b.ValidTo.Words()), "Ask the yard to renew it.")
		}
	}
}
