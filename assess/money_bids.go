package assess

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// BidRow is one yard's offer as it stands on paper.
type BidRow struct {
	ID        string `json:"id"`
	Yard      string `json:"yard"`
	State     string `json:"state"`
	Valid     string `json:"valid_until"`
	Written   Figure `json:"total_as_written"`
	Evaluated Figure `json:"evaluated"` // on one footing with the others
	Sure      Figure `json:"p80"`
	Lowest    Figure `json:"chance_lowest"`
	Filled    int    `json:"filled"` // lines that the own estimate fills
	Lump      Figure `json:"lump"`
	DayRate   Figure `json:"day_rate"`
	Days      Figure `json:"days"`
	Tow       Figure `json:"tow"`
	Excluded  Figure `json:"exclusions_cost"`
	LeftOut   string `json:"left_out"`
	Lines     int    `json:"lines"`
	Blanks    int    `json:"blanks"` // lines with nothing in them: never nothing to pay
}

func (c *inquiry) bids(p *MoneyPage) {
	for _, e := range dossier.All[plan.Bid](c.d) {
		if e.Body.State == "withdrawn" {
			continue
		}
		r := c.bidRow(p, e)
		c.evaluate(p, &r, e)
		p.Bids = append(p.Bids, r)
	}
}

func (c *inquiry) bidRow(p *MoneyPage, e dossier.Entry[plan.Bid]) BidRow {
	b := e.Body
	given := func(key, label string, x *float64, unit string) Figure {
		if x == nil {
			return notYetFigure(key, label).of("bid", e.ID)
		}
		return known(key, label, *x, unit, basisOf(e.Head, field.Documented), e.BasisNote).of("bid", e.ID)
	}
	r := BidRow{ID: e.ID, Yard: b.Yard, State: cmp.Or(b.State, "received"), Valid: b.ValidTo.String(), LeftOut: strings.Join(b.Excludes, "; "),
		Written: given("total", "total as the bidder writes it", b.Total, "money"), Lump: given("lump", "lump sum", b.Lump, "money"), DayRate: given("day_rate", "day rate", b.DayRate, "money"),
		Days: given("days", "days", b.Days, "d"), Tow: given("tow", "tow", b.Tow, "money"), Excluded: given("exclusions_cost", "what the left-out things would cost", b.ExcludedSum, "money")}
	say := func(what, do string, worry int) {
		p.BidNotes = append(p.BidNotes, Notice{What: b.Yard + ": " + what, Do: do, Kind: "bid", ID: e.ID, Page: "money", Worry: worry})
	}
	for _, l := range dossier.All[plan.BidLine](c.d) {
		if l.Body.Bid != e.ID {
			continue
		}
		r.Lines++
		if blankLine(l.Body) {
			r.Blanks++
		}
		if words := arithmetic(l.Body, c.currency()); words != "" {
			say(words, "The unit rate governs; have the bidder confirm it.", 2)
		}
	}
	if r.Blanks > 0 {
		say(count(r.Blanks, "line is", "lines are")+" blank. A blank is never nothing to pay.", "Ask for a figure, or put our own estimate in its place.", 1)
	}
	if len(b.Excludes) > 0 && b.ExcludedSum == nil {
		say("leaves out "+strings.Join(b.Excludes, ", ")+", at a cost nobody has named.", "Price what is left out before comparing.", 1)
	}
	if c.past(b.ValidTo) && (r.State == "received" || r.State == "clarifying" || r.State == "preferred") {
		say("its bid lapsed on "+b.ValidTo.Words()+".", "Ask for it to be renewed.", 2)
	}
	return r
}

func blankLine(l plan.BidLine) bool {
	switch l.Entry {
	case "blank", "no bid":
		return true
	case "included", "by owner":
		return false
	}
	return l.Extension == nil && l.UnitRate == nil
}

// arithmetic says where quantity times rate is not the amount written; a rounding of one unit of money is let pass.
func arithmetic(l plan.BidLine, currency string) string {
	if l.Quantity == nil || l.UnitRate == nil || l.Extension == nil {
		return ""
	}
	if product := *l.Quantity * *l.UnitRate; math.Abs(product-*l.Extension) > 1 {
		return fmt.Sprintf("line %s: %g at %s is %s, written as %s.", cmp.Or(l.Item, l.Description), *l.Quantity, quantity.Format(*l.UnitRate, currency, 2), quantity.Format(product, currency, 2), quantity.Format(*l.Extension, currency, 2))
	}
	return ""
}
