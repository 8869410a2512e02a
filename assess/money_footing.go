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

// footing is one bid made comparable: every line priced, by the bidder or, where the bidder wrote nothing, by the own estimate.
type footing struct {
	in     estimate.EstimateIn
	filled int // lines that the own estimate fills
	lost   int // lines that nobody has priced
}

// evaluate puts a bid on the same footing as the others: unit rates govern over sums, blanks and what the owner must do take the own estimate, tow,
// bond, days and what is left out are added, and everyone's growth is counted by the same hours.
func (c *inquiry) evaluate(p *MoneyPage, r *BidRow, e dossier.Entry[plan.Bid]) {
	f := footing{in: estimate.Estimate.New()}
	c.bidLines(&f, e)
	c.bidSums(&f, e)
	r.Evaluated, r.Sure = notYetFigure("evaluated", "on one footing").of("bid", e.ID), notYetFigure("p80", "enough eight times in ten").of("bid", e.ID)
	if len(f.in.Lines) == 0 {
		return
	}
	sheet, out, err := c.price("bid-"+e.ID, "the bid of "+e.Body.Yard+" on one footing", f.in, map[string]field.Given{
		"lines": how(field.Documented, "the bid; blanks and what the owner must do by the own estimate; quantities as uncertain as the own estimate of each work that is not firm"), "correlation": how(field.Assumed, "a default, from memory")})
	if err != nil {
		r.Evaluated.Note = refusalWords(err)
		return
	}
	r.Evaluated = result(sheet, "p50", "on one footing").band(out.P10, out.P50, out.P90).of("bid", e.ID)
	r.Evaluated.Key = "evaluated"
	r.Sure = result(sheet, "p80", "enough eight times in ten").of("bid", e.ID)
	r.Filled = f.filled
	if f.lost > 0 {
		p.BidNotes = append(p.BidNotes, Notice{What: e.Body.Yard + ": " + count(f.lost, "line has", "lines have") + " no price, neither the bidder's nor the own: the sum on one footing is too low.", Do: "Put an own estimate to the line.", Kind: "bid", ID: e.ID, Page: "money", Worry: 2})
	}
}

func (c *inquiry) bidLines(f *footing, e dossier.Entry[plan.Bid]) {
	for _, l := range dossier.All[plan.BidLine](c.d) {
		if l.Body.Bid == e.ID {
			c.oneLine(f, e.Body, l)
		}
	}
}

// oneLine adds a line of a bid as it counts.
func (c *inquiry) oneLine(f *footing, b plan.Bid, l dossier.Entry[plan.BidLine]) {
	name := cmp.Or(l.Body.Item+" "+l.Body.Description, l.ID)
	switch {
	case l.Body.Entry == "included", coveredByExclusion(b, l.Body):
	case l.Body.Entry == "by owner" || blankLine(l.Body):
		c.fill(f, name, l.Body)
	case l.Body.UnitRate != nil && l.Body.Quantity != nil:
		f.in.Lines = append(f.in.Lines, c.asUncertain(name, *l.Body.UnitRate**l.Body.Quantity, l.Body))
	case l.Body.Extension != nil:
		f.in.Lines = append(f.in.Lines, estimate.Line{Name: name, Likely: l.Body.Extension, Kind: "fixed", Share: 1})
	default:
		c.fill(f, name, l.Body)
	}
}

// coveredByExclusion tells whether a line without a price is among the things left out that the bid row prices already.
func coveredByExclusion(b plan.Bid, l plan.BidLine) bool {
	return b.ExcludedSum != nil && blankLine(l) && slices.ContainsFunc(b.Excludes, func(words string) bool {
		return words != "" && strings.Contains(strings.ToLower(l.Description), strings.ToLower(words))
	})
}

// fill takes the own estimate of a line that the bidder left empty.
func (c *inquiry) fill(f *footing, name string, b plan.BidLine) {
	f.filled++
	if w, ok := dossier.Find[plan.Work](c.d, b.Work); ok {
		if l, priced := c.workLine(w); priced {
			l.Name = name + " (own estimate)"
			f.in.Lines = append(f.in.Lines, l)
			return
		}
	}
	if b.Estimate != nil {
		f.in.Lines = append(f.in.Lines, estimate.Line{Name: name + " (own estimate)", Likely: b.Estimate, Kind: "fixed", Share: 1})
		return
	}
	f.filled--
	f.lost++
}

// asUncertain spreads the amount of a line as its quantity may turn out: by the range of the quantity of its work; for work that is not firm and
// gives none, as the own estimate is spread; firm work stands as it is.
func (c *inquiry) asUncertain(name string, amount float64, b plan.BidLine) estimate.Line {
	fixed := estimate.Line{Name: name, Likely: &amount, Kind: "fixed", Share: 1}
	w, ok := dossier.Find[plan.Work](c.d, b.Work)
	if !ok {
		return fixed
	}
	var low, likely, high float64
	switch q := w.Body; {
	case q.Quantity != nil && *q.Quantity > 0 && (q.QuantityLow != nil || q.QuantityTop != nil):
		low, high = quantityEnds(q)
		likely = *q.Quantity
	case !yes(q.Firm) && q.Low != nil && q.Likely != nil && q.High != nil && *q.Likely > 0:
		low, likely, high = *q.Low, *q.Likely, *q.High
	default:
		return fixed
	}
	if low > likely || likely > high {
		return fixed
	}
	return estimate.Line{Name: name, Low: new(amount * low / likely), Likely: &amount, High: new(amount * high / likely), Kind: "triangular", Share: 1}
}

// bidSums adds what stands outside the lines: lump sum, tow, bond, days, growth and what is left out.
func (c *inquiry) bidSums(f *footing, e dossier.Entry[plan.Bid]) {
	b := e.Body
	add := func(name string, x *float64) {
		if x != nil && *x > 0 {
			f.in.Lines = append(f.in.Lines, estimate.Line{Name: name, Likely: x, Kind: "fixed", Share: 1})
		}
	}
	add("lump sum", b.Lump)
	add("tow", b.Tow)
	add("bond and insurance", b.Bond)
	add("what is left out", b.ExcludedSum)
	if b.DayRate != nil && b.Days != nil && !yes(b.DaysIn) && !c.daysInLines(e.ID) {
		add("days in dock", new(*b.DayRate**b.Days/secondsADay))
	}
	if hours := c.growthHours(); b.HourRate != nil && hours > 0 {
		add("growth, by the same hours for all", new(hours/3600**b.HourRate))
	}
	if len(f.in.Lines) == 0 {
		add("total as written", b.Total)
	}
}

// daysInLines tells whether the dock days are a line of the bid.
func (c *inquiry) daysInLines(bid string) bool {
	return slices.ContainsFunc(dossier.All[plan.BidLine](c.d), func(l dossier.Entry[plan.BidLine]) bool {
		return l.Body.Bid == bid && (l.Body.Kind == "day" || l.Body.Per == "day" && strings.Contains(strings.ToLower(l.Body.Description), "dock"))
	})
}

// growthHours is the most hours that any bid counts for growth.
func (c *inquiry) growthHours() (most float64) {
	for _, e := range dossier.All[plan.Bid](c.d) {
		if e.Body.GrowthHours != nil && e.Body.State != "withdrawn" {
			most = max(most, *e.Body.GrowthHours)
		}
	}
	return most
}

// ranking says which bid is lowest on one footing, and warns against budgeting from it.
func (c *inquiry) ranking(p *MoneyPage) {
	slices.SortStableFunc(p.Bids, func(a, b BidRow) int {
		return cmp.Or(cmp.Compare(unpriced(a), unpriced(b)), cmp.Compare(or0(a.Evaluated.P50), or0(b.Evaluated.P50)))
	})
	if len(p.Bids) == 0 || p.Bids[0].Evaluated.P50 == nil {
		return
	}
	low := p.Bids[0]
	if len(p.Bids) > 1 {
		p.Heading = append(p.Heading, "On one footing the lowest bid is that of "+low.Yard+stays(low.Lowest.Value)+".")
	}
	if p.priced && *low.Evaluated.P50 < 0.8*p.total.P50 {
		p.BidNotes = append(p.BidNotes, Notice{What: low.Yard + " stands more than a fifth under our own estimate.", Do: "Budget from the estimate: awards that far under it have grown by a third to nearly two thirds before completion (GAO/NSIAD-86-27).", Kind: "bid", ID: low.ID, Page: "money", Worry: 1})
	}
}

// stays says whether the lowest bid is still the lowest when the quantities turn out otherwise.
func stays(chance *float64) string {
	switch {
	case chance == nil:
		return ""
	case *chance > 99.5:
		return ", over all the quantities that are expected"
	}
	return fmt.Sprintf("; when the quantities are known it ends as the lowest with a chance of %.0f %%", *chance)
}

func unpriced(r BidRow) int {
	if r.Evaluated.P50 == nil {
		return 1
	}
	return 0
}
