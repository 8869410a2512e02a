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
	"oakum/quantity"
)

// TurnRow is a quantity at which two bids change places, all other quantities at their likeliest.
type TurnRow struct {
	Item   string `json:"item"`
	At     Figure `json:"at"`
	Now    Figure `json:"expected"` // how much is expected
	Below  string `json:"cheaper_below"`
	Above  string `json:"cheaper_above"`
	Within bool   `json:"within"` // it lies in the range that is expected
}

// bidItem is a piece of work whose quantity nobody knows yet, the same for all bids.
type bidItem struct {
	work   dossier.Entry[plan.Work]
	likely float64
	low    float64
	high   float64
	per    string
}

// oneTable puts all bids on the same quantities, and asks how often each ends as the lowest and where two change places. What does not hang on a quantity,
// blanks by the own estimate among it, stands as it does in each bid's own sum.
func (c *inquiry) oneTable(p *MoneyPage) {
	if len(p.Bids) < 2 {
		return
	}
	in := estimate.Bids.New()
	items := c.bidItems()
	for _, it := range items {
		in.Quantities = append(in.Quantities, estimate.BidQuantity{Item: it.work.Body.Name, Low: new(it.low), Likely: it.likely, High: new(it.high)})
	}
	if p.priced {
		in.Own = new(p.total.LikelySum)
	}
	for _, e := range dossier.All[plan.Bid](c.d) {
		if e.Body.State != "withdrawn" {
			in.Bids = append(in.Bids, c.onQuantities(e, items))
		}
	}
	sheet, out, err := work(c.book, estimate.Bids, "all", "the bids on the same quantities", in, map[string]field.Given{"bids": how(field.Documented, "the bids; blanks and what the owner must do by the own estimate"),
		"quantities": how(field.Assumed, "of the works that are not firm, as uncertain as their own estimates"), "own_estimate": how(field.Computed, "money.estimate"), "correlation": how(field.Assumed, "a default, from memory")})
	if err != nil {
		p.BidNotes = append(p.BidNotes, Notice{What: "The bids can't be put on the same quantities: " + refusalWords(err) + ".", Do: "Correct that entry.", Kind: "bid", Page: "money", Worry: 1})
		return
	}
	for _, l := range out.Lowest {
		for i := range p.Bids {
			if p.Bids[i].Yard == l.Yard {
				f := known("chance_lowest", "chance that it ends as the lowest", l.Share, "%", field.Computed, "money.bids")
				f.Sheet, f.Text = sheet.ID, fmt.Sprintf("%.0f %%", 100*l.Share)
				p.Bids[i].Lowest = f
			}
		}
	}
	c.turns(p, sheet.ID, items, out)
}

// bidItems are the works priced by a rate in any bid whose quantity is uncertain.
func (c *inquiry) bidItems() (items []bidItem) {
	for _, l := range dossier.All[plan.BidLine](c.d) {
		w, ok := dossier.Find[plan.Work](c.d, l.Body.Work)
		if !ok || l.Body.Quantity == nil || l.Body.UnitRate == nil || *l.Body.Quantity <= 0 || slices.ContainsFunc(items, func(it bidItem) bool { return it.work.ID == w.ID }) {
			continue
		}
		spread := c.asUncertain("", *l.Body.Quantity, l.Body)
		if spread.Kind == "fixed" {
			continue
		}
		items = append(items, bidItem{w, *spread.Likely, *spread.Low, *spread.High, l.Body.Per})
	}
	return items
}

// onQuantities is one bid as its sums and its rates.
func (c *inquiry) onQuantities(e dossier.Entry[plan.Bid], items []bidItem) estimate.Bid {
	b := estimate.Bid{Yard: e.Body.Yard, Total: e.Body.Total}
	f := footing{in: estimate.Estimate.New()}
	lump := func(l estimate.Line) {
		amount := meanOfLine(l)
		if l.Kind == "fixed" {
			amount = *l.Likely
		}
		b.Lumps = append(b.Lumps, estimate.BidLump{Name: l.Name + ", " + e.Body.Yard, Amount: &amount})
	}
	rated := map[string]bool{}
	for _, l := range dossier.All[plan.BidLine](c.d) {
		if l.Body.Bid != e.ID {
			continue
		}
		at := slices.IndexFunc(items, func(it bidItem) bool { return it.work.ID == l.Body.Work })
		if at >= 0 && !rated[l.Body.Work] {
			if r, ok := c.rateOf(e.Body, l.Body, items[at]); ok {
				rated[l.Body.Work] = true
				b.Rates = append(b.Rates, r)
				continue
			}
		}
		c.oneLine(&f, e.Body, l)
	}
	for _, it := range items {
		if !rated[it.work.ID] {
			b.Rates = append(b.Rates, estimate.BidRate{Item: it.work.Body.Name, Rate: c.ownRate(it)})
		}
	}
	c.bidSums(&f, e)
	for _, l := range f.in.Lines {
		lump(l)
	}
	return b
}

// rateOf is the rate of a line on an item: the bidder's, nothing more where it is included, the own where the bidder wrote nothing.
func (c *inquiry) rateOf(b plan.Bid, l plan.BidLine, it bidItem) (r estimate.BidRate, ok bool) {
	r.Item = it.work.Body.Name
	switch {
	case l.Entry == "included" || coveredByExclusion(b, l):
		r.Rate = new(0.0)
	case l.Entry == "by owner" || blankLine(l):
		r.Rate = c.ownRate(it)
	case l.UnitRate != nil && l.Quantity != nil:
		r.Rate, r.Quantity, r.Extension = l.UnitRate, l.Quantity, l.Extension
	default:
		return r, false
	}
	return r, true
}

// ownRate is the own estimate of an item over its likeliest quantity.
func (c *inquiry) ownRate(it bidItem) *float64 {
	l, priced := c.workLine(it.work)
	if !priced || it.likely <= 0 {
		return nil
	}
	return new(*l.Likely / it.likely)
}

// turns lists where two bids change places, those within what is expected first; what lies far outside says nothing.
func (c *inquiry) turns(p *MoneyPage, sheet string, items []bidItem, out estimate.BidsOut) {
	for _, b := range out.BreakEven {
		at := slices.IndexFunc(items, func(it bidItem) bool { return it.work.Body.Name == b.Item })
		if at < 0 || b.Quantity > 2*items[at].high || b.Quantity < items[at].low/2 {
			continue
		}
		it := items[at]
		amount := func(key, label string, x float64) Figure {
			f := known(key, label, x, "-", field.Computed, "money.bids")
			f.Text, f.Sheet = pieces(x, it.per), sheet
			return f
		}
		now := amount("expected", "expected", it.likely)
		now.Basis, now.Sheet, now.Kind, now.ID = field.Assumed, "", "work", it.work.ID
		now.Text = fmt.Sprintf("%s to %s, likely %s", pieces(it.low, ""), pieces(it.high, it.per), pieces(it.likely, it.per))
		p.Turns = append(p.Turns, TurnRow{b.Item, amount("at", "they cost the same at", b.Quantity), now, b.Below, b.Above, b.Quantity >= it.low && b.Quantity <= it.high})
	}
	slices.SortStableFunc(p.Turns, func(a, b TurnRow) int { return cmp.Compare(boolean(b.Within), boolean(a.Within)) })
}

// pieces prints a quantity in the unit that it is priced by, whole where it is large.
func pieces(x float64, per string) string {
	digits := 0
	if x < 10 {
		digits = 1
	}
	return strings.TrimSpace(quantity.Format(x, "-", digits) + " " + perWords(per, x))
}
