package estimate

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
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

// bidTable is the bids as numbers: what each costs at no quantity, and its rate for each item.
type bidTable struct {
	in     BidsIn
	items  []string
	spread []Spread
	fixed  []float64   // by bid
	rate   [][]float64 // by bid and item
	blanks []Blank
}

func newTable(in BidsIn) (*bidTable, error) {
	if len(in.Bids) == 0 {
		return nil, field.Refuse("bids", "bids is empty: give at least one bid")
	}
	t := &bidTable{in: in, blanks: []Blank{}}
	for i, q := range in.Quantities {
		s := Spread{q.Likely, q.Likely, q.Likely, Triangular}
		if (q.Low == nil) != (q.High == nil) {
			return nil, field.Refuse(fmt.Sprintf("quantities[%d].low", i), "quantity of %s: give low and high together, or neither", q.Item)
		}
		if q.Low != nil {
			s.Low, s.High = *q.Low, *q.High
		}
		if !(s.Low <= s.Likely && s.Likely <= s.High) {
			return nil, field.Refuse(fmt.Sprintf("quantities[%d].likely", i), "quantity of %s needs low <= likely <= high, not %g, %g, %g", q.Item, s.Low, s.Likely, s.High)
		}
		if slices.Contains(t.items, q.Item) {
			return nil, field.Refuse(fmt.Sprintf("quantities[%d].item", i), "the quantity of %s stands twice", q.Item)
		}
		t.items, t.spread = append(t.items, q.Item), append(t.spread, s)
	}
	for i, b := range in.Bids {
		if err := t.known(i, b); err != nil {
			return nil, err
		}
		t.fixed = append(t.fixed, t.fixedOf(b))
		t.rate = append(t.rate, t.ratesOf(b))
	}
	return t, nil
}

// known refuses a rate for an item without a quantity, and a yard that stands twice.
func (t *bidTable) known(i int, b Bid) error {
	for k, other := range t.in.Bids[:i] {
		if other.Yard == b.Yard {
			return field.Refuse(fmt.Sprintf("bids[%d].yard", i), "bids %d and %d are both of %q: name them apart", k, i, b.Yard)
		}
	}
	for k, r := range b.Rates {
		if !slices.Contains(t.items, r.Item) {
			return field.Refuse(fmt.Sprintf("bids[%d].unit_rates[%d].item", i, k), "%s prices %s, of which no quantity is given: put it into quantities, for all bids alike", b.Yard, r.Item)
		}
	}
	if b.DayRate != nil && b.Days == nil {
		return field.Refuse(fmt.Sprintf("bids[%d].days", i), "%s has a day rate and no days", b.Yard)
	}
	return nil
}

// fixedOf adds up what does not hang on a quantity, noting blanks.
func (t *bidTable) fixedOf(b Bid) float64 {
	sum := 0.0
	for _, lumps := range [][]BidLump{b.Lumps, b.Exclusions} {
		for _, l := range lumps {
			if l.Amount != nil {
				sum += *l.Amount
			} else {
				sum += t.blank(b.Yard, l.Name, t.dearestLump(l.Name))
			}
		}
	}
	for _, name := range t.lumpNames() {
		if !slices.ContainsFunc(append(slices.Clone(b.Lumps), b.Exclusions...), func(l BidLump) bool { return l.Name == name }) {
			sum += t.blank(b.Yard, name, t.dearestLump(name))
		}
	}
	if b.DayRate != nil {
		sum += *b.DayRate * days(b)
	} else if i := slices.IndexFunc(t.in.Bids, func(o Bid) bool { return o.DayRate != nil }); i >= 0 && b.Days != nil {
		sum += t.blank(b.Yard, "day rate", t.dearest(func(o Bid) *float64 { return o.DayRate })) * days(b)
	}
	if b.Tow != nil {
		return sum + *b.Tow
	}
	if tow := t.dearest(func(o Bid) *float64 { return o.Tow }); tow != nil {
		sum += t.blank(b.Yard, "tow", tow)
	}
	return sum
}

// days of a bid; they are kept in seconds.
func days(b Bid) float64 {
	if b.Days == nil {
		return 0
	}
	return *b.Days / 86400
}

// lumpNames are the lump sums that two bids or more have in common by name, so that a bid without one can be seen to lack it.
func (t *bidTable) lumpNames() (names []string) {
	count := map[string]int{}
	for _, b := range t.in.Bids {
		for _, l := range b.Lumps {
			count[l.Name]++
			if count[l.Name] == 2 {
				names = append(names, l.Name)
			}
		}
	}
	return names
}

func (t *bidTable) ratesOf(b Bid) []float64 {
	rates := make([]float64, len(t.items))
	for k, item := range t.items {
		i := slices.IndexFunc(b.Rates, func(r BidRate) bool { return r.Item == item })
		if i >= 0 && b.Rates[i].Rate != nil {
			rates[k] = *b.Rates[i].Rate
			continue
		}
		dearest := t.dearest(func(o Bid) *float64 {
			for _, r := range o.Rates {
				if r.Item == item {
					return r.Rate
				}
			}
			return nil
		})
		rates[k] = t.blank(b.Yard, item, dearest)
	}
	return rates
}

func (t *bidTable) dearest(of func(Bid) *float64) (most *float64) {
	for _, b := range t.in.Bids {
		if x := of(b); x != nil && (most == nil || *x > *most) {
			most = x
		}
	}
	return most
}

func (t *bidTable) dearestLump(name string) *float64 {
	return t.dearest(func(o Bid) (most *float64) {
		for _, l := range append(slices.Clone(o.Lumps), o.Exclusions...) {
			if l.Name == name && l.Amount != nil && (most == nil || *l.Amount > *most) {
				most = l.Amount
			}
		}
		return most
	})
}

func (t *bidTable) blank(yard, item string, standIn *float64) float64 {
	b := Blank{Yard: yard, Item: item}
	if standIn == nil {
		t.blanks = append(t.blanks, b)
		return 0
	}
	b.StandIn = new(*standIn)
	t.blanks = append(t.blanks, b)
	return *standIn
}

// conflicts checks the bidders' arithmetic: half a unit of money is forgiven as rounding.
func (t *bidTable) conflicts() []Conflict {
	list := []Conflict{}
	for i, b := range t.in.Bids {
		sum, whole := t.fixed[i], true
		for _, r := range b.Rates {
			if r.Rate == nil || r.Quantity == nil {
				whole = false
				continue
			}
			right := *r.Rate * *r.Quantity
			sum += right
			if r.Extension != nil && math.Abs(*r.Extension-right) > 0.5+1e-9*right {
				list = append(list, Conflict{b.Yard, r.Item, *r.Extension, right})
			}
		}
		complete := !slices.ContainsFunc(t.blanks, func(x Blank) bool { return x.Yard == b.Yard })
		if b.Total != nil && whole && complete && math.Abs(*b.Total-sum) > 0.5+1e-9*sum {
			list = append(list, Conflict{b.Yard, "total", *b.Total, sum})
		}
	}
	return list
}

func (t *bidTable) cost(bid int, quantity []float64) float64 {
	sum := t.fixed[bid]
	for k, q := range quantity {
		sum += t.rate[bid][k] * q
	}
	return sum
}

// evaluate draws the quantities once for all bids.
func (t *bidTable) evaluate(correlation float64) ([]Evaluated, []Lowest) {
	const n = 1 << 13
	likely := make([]float64, len(t.items))
	for k, s := range t.spread {
		likely[k] = s.Likely
	}
	list, lowest := make([]Evaluated, len(t.fixed)), make([]Lowest, len(t.fixed))
	drawn := make([][]float64, len(t.fixed))
	for i, b := range t.in.Bids {
		complete := !slices.ContainsFunc(t.blanks, func(x Blank) bool { return x.Yard == b.Yard })
		list[i] = Evaluated{Yard: b.Yard, Likely: t.cost(i, likely), Complete: complete}
		lowest[i].Yard = b.Yard
		drawn[i] = make([]float64, n)
	}
	var u, x []float64
	var joint *Joint
	if len(t.items) > 0 {
		joint = NewJoint(t.spread, correlation)
		u, x = make([]float64, joint.Dimensions()), make([]float64, len(t.items))
	}
	for p := range n {
		if joint != nil {
			Point(uint32(p), 4, u)
			joint.Draw(u, x)
		}
		best, ties := math.Inf(1), 0
		for i := range drawn {
			c := t.cost(i, x)
			drawn[i][p] = c
			list[i].Mean += c / n
			switch {
			case c < best:
				best, ties = c, 1
			case c == best:
				ties++
			}
		}
		for i := range drawn {
			if drawn[i][p] == best {
				lowest[i].Share += 1 / float64(ties) / n
			}
		}
	}
	for i := range list {
		slices.Sort(drawn[i])
		list[i].P50, list[i].P80 = calc.Quantile(drawn[i], 0.5), calc.Quantile(drawn[i], 0.8)
	}
	slices.SortStableFunc(list, func(a, b Evaluated) int { return cmp.Compare(a.P50, b.P50) })
	return list, lowest
}

// breakEven finds, for each pair and item, the quantity at which they cost the same while all others are at their likeliest.
func (t *bidTable) breakEven() []BreakEven {
	list := []BreakEven{}
	for a := range t.fixed {
		for b := a + 1; b < len(t.fixed); b++ {
			for k, item := range t.items {
				rest := t.fixed[a] - t.fixed[b]
				for m, s := range t.spread {
					if m != k {
						rest += (t.rate[a][m] - t.rate[b][m]) * s.Likely
					}
				}
				slope := t.rate[b][k] - t.rate[a][k]
				if slope == 0 || rest/slope < 0 {
					continue
				}
				e := BreakEven{t.in.Bids[a].Yard, t.in.Bids[b].Yard, item, rest / slope, t.in.Bids[a].Yard, t.in.Bids[b].Yard}
				if slope > 0 {
					e.Below, e.Above = e.B, e.A // a is dearer at none and cheaper by the unit
				}
				list = append(list, e)
			}
		}
	}
	return list
}
