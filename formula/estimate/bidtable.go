package estimate

import (
	"fmt"
	"slices"

	"oakum/field"
)

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
