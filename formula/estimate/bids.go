package estimate

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/source"
)

// Bid is one yard's offer.
type Bid struct {
	Yard       string    `key:"yard" label:"yard"`
	Lumps      []BidLump `key:"lump_items" optional:"yes" most:"500" label:"lump sums"`
	Rates      []BidRate `key:"unit_rates" optional:"yes" most:"500" label:"unit rates"`
	DayRate    *float64  `key:"day_rate" unit:"money" min:"0" max:"1e15" label:"price of a day"`
	Days       *float64  `key:"days" unit:"d" min:"0" max:"5000" label:"days"`
	Tow        *float64  `key:"tow" unit:"money" min:"0" max:"1e15" label:"tow, both ways" help:"to and from this yard; the owner's own figure where the yard gives none"`
	Exclusions []BidLump `key:"exclusions" optional:"yes" most:"500" label:"left out by the bidder, with what they would cost"`
	Total      *float64  `key:"total" unit:"money" min:"0" max:"1e15" label:"total as the bidder writes it"`
}

// BidLump is a lump sum; without an amount it is a blank.
type BidLump struct {
	Name   string   `key:"name" label:"item"`
	Amount *float64 `key:"amount" unit:"money" min:"0" max:"1e15" label:"amount" help:"a blank is a blank, never nothing to pay"`
}

// BidRate is a unit rate; without a rate it is a blank. Quantity and extension are those the bidder wrote.
type BidRate struct {
	Item      string   `key:"item" label:"item"`
	Rate      *float64 `key:"rate" min:"0" max:"1e12" label:"rate" help:"a blank is a blank, never nothing to pay"`
	Quantity  *float64 `key:"quantity" min:"0" max:"1e12" label:"quantity as the bidder writes it"`
	Extension *float64 `key:"extension" unit:"money" min:"0" max:"1e15" label:"amount as the bidder writes it"`
}

// BidQuantity is how much of an item there will be.
type BidQuantity struct {
	Item   string   `key:"item" label:"item"`
	Low    *float64 `key:"low" min:"0" max:"1e12" label:"least"`
	Likely float64  `key:"likely" min:"0" max:"1e12" label:"likeliest"`
	High   *float64 `key:"high" min:"0" max:"1e12" label:"most"`
}

// BidsIn is the bids and the quantities they are put on.
type BidsIn struct {
	Bids        []Bid         `key:"bids" most:"50" label:"bids"`
	Quantities  []BidQuantity `key:"quantities" optional:"yes" most:"200" label:"quantities, the same for all"`
	Correlation float64       `key:"correlation" symbol:"r" default:"0.2" min:"0" max:"1" label:"correlation of the quantities"`
	Own         *float64      `key:"own_estimate" unit:"money" symbol:"E" over:"0" label:"owner's own estimate"`
}

// BidsOut is the bids on one footing.
type BidsOut struct {
	Evaluated []Evaluated `key:"evaluated" symbol:"ev" label:"bids on one footing, the lowest middle first"`
	BreakEven []BreakEven `key:"break_even" symbol:"be" label:"quantity at which two bids change places"`
	Lowest    []Lowest    `key:"chance_lowest" symbol:"cl" label:"chance that a bid ends as the lowest"`
	Conflicts []Conflict  `key:"conflicts" label:"arithmetic that does not add up; the unit price governs"`
	Blanks    []Blank     `key:"blanks" label:"what a bidder did not price"`
	Under     *float64    `key:"under_estimate" symbol:"ue" label:"how far the lowest bid lies under the own estimate"`

	Warnings calc.Warnings `key:"-"`
}

// Evaluated is a bid with the same quantities for all.
type Evaluated struct {
	Yard     string  `key:"yard" label:"yard"`
	Likely   float64 `key:"likely" unit:"money" label:"at the likeliest quantities"`
	Mean     float64 `key:"mean" unit:"money" label:"mean"`
	P50      float64 `key:"p50" unit:"money" label:"as likely more as less"`
	P80      float64 `key:"p80" unit:"money" label:"eight in ten that it is less"`
	Complete bool    `key:"complete" label:"everything priced" help:"no: the dearest of the others stands in for the blanks"`
}

// BreakEven is where two bids cost the same.
type BreakEven struct {
	A        string  `key:"a" label:"yard"`
	B        string  `key:"b" label:"other yard"`
	Item     string  `key:"item" label:"item"`
	Quantity float64 `key:"quantity" label:"quantity at which they cost the same, all others at their likeliest"`
	Below    string  `key:"below" label:"cheaper below it"`
	Above    string  `key:"above" label:"cheaper above it"`
}

// Lowest is how often a bid is the lowest.
type Lowest struct {
	Yard  string  `key:"yard" label:"yard"`
	Share float64 `key:"share" label:"share of the draws"`
}

// Conflict is an extension that is not rate times quantity, or a total that is not the sum.
type Conflict struct {
	Yard    string  `key:"yard" label:"yard"`
	Item    string  `key:"item" label:"item"`
	Written float64 `key:"written" unit:"money" label:"as written"`
	Right   float64 `key:"right" unit:"money" label:"as the unit price governs"`
}

// Blank is something not priced, and what stands in for it.
type Blank struct {
	Yard    string   `key:"yard" label:"yard"`
	Item    string   `key:"item" label:"item"`
	StandIn *float64 `key:"stand_in" label:"dearest of the others, which stands in" help:"a rate, or a lump sum"`
}

// Bids puts bids on one footing.
//
// Every bid is its lump sums, its rates times the same quantities for all, its days times its day rate, its tow, and what it leaves out. The
// quantities are drawn together for all bids. Two bids cost the same at q = (their difference at 0)/(their difference in rate). Where an extension
// is not rate times quantity the unit price governs. It holds for bids on the same works. Source: common practice of bid tabulation. A blank is
// never zero: the dearest of the others stands in for it, and the bid is marked.
var Bids = calc.Formula[BidsIn, BidsOut]{
	ID:       "money.bids",
	Title:    "Bids on one footing",
	About:    "What each bid comes to with the same quantities for all, where the order turns, and how likely each ends as the lowest.",
	Holds:    "Bids on the same works. The unit price governs where a bidder's arithmetic conflicts. A blank is never nothing to pay.",
	Accuracy: "As good as the quantities. Work of which nobody knows grows after the award: naval repairs that were awarded 21 to 31 % under the owner's estimate grew by 30 to 63 %. Budget from the estimate, never from the lowest bid.",
	Sources:  []source.Ref{{Key: "practice", At: "bid tabulation; the unit price governs"}, {Key: "gao-ship-repair"}},
	Fn:       bids,
	Steps:    bidsSteps,
	Samples:  200,
}

func bids(in BidsIn) (out BidsOut, err error) {
	t, err := newTable(in)
	if err != nil {
		return out, err
	}
	out.Blanks, out.Conflicts = t.blanks, t.conflicts()
	out.Evaluated, out.Lowest = t.evaluate(in.Correlation)
	out.BreakEven = t.breakEven()
	if in.Own != nil {
		low := math.Inf(1)
		for _, e := range out.Evaluated {
			low = min(low, e.Likely)
		}
		out.Under = new(1 - low / *in.Own)
	}
	out.Warnings = bidsWarnings(in, out)
	return out, nil
}

func bidsWarnings(in BidsIn, out BidsOut) (w calc.Warnings) {
	for _, c := range out.Conflicts {
		w = append(w, fmt.Sprintf("%s, %s: %.2f is written, the prices make %.2f; the unit price governs", c.Yard, c.Item, c.Written, c.Right))
	}
	for _, b := range out.Blanks {
		if b.StandIn == nil {
			w = append(w, fmt.Sprintf("%s does not price %s and nothing can stand in for it: ask, before the bids are compared", b.Yard, b.Item))
		} else {
			w = append(w, fmt.Sprintf("%s does not price %s: the dearest of the others (%.2f) stands in", b.Yard, b.Item, *b.StandIn))
		}
	}
	if out.Under != nil && *out.Under > 0.15 {
		w = append(w, fmt.Sprintf("the lowest bid lies %.0f %% under the own estimate: naval repairs awarded 21 to 31 %% under the owner's estimate grew by 30 to 63 %%; budget from the estimate", 100**out.Under))
	}
	if len(in.Bids) == 1 {
		w = append(w, "there is one bid only: nothing to compare it with but the own estimate")
	}
	return w
}

func bidsSteps(in BidsIn, out BidsOut) []calc.Step {
	first := out.Evaluated[0]
	steps := []calc.Step{{Symbol: "lowest", Value: first.Likely, Unit: "money",
		Text: fmt.Sprintf("%s: lump sums, rates times quantities, days times day rate, tow, what is left out; the other bids in the same way", first.Yard)}}
	if len(out.BreakEven) > 0 {
		b := out.BreakEven[0]
		steps = append(steps, calc.Step{Symbol: "turn", Value: b.Quantity, Unit: "-", Text: fmt.Sprintf("%s and %s cost the same at this much %s: difference at none over difference in rate", b.A, b.B, b.Item)})
	}
	if out.Under != nil {
		steps = append(steps, calc.Step{Symbol: "ue", Formula: "1-lowest/E", Value: *out.Under, Unit: "-", Text: "lowest bid at the likeliest quantities against the own estimate"})
	}
	return steps
}
