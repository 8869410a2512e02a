package money

import (
	"fmt"
	"math"
	"slices"

	"oakum/field"
	"oakum/quantity"
)

// futures is how many futures of giving are drawn.
const futures = 2000

// SigningAt is when the wanted scope can be signed for.
type SigningAt struct {
	P10    quantity.Date `key:"p10" optional:"yes" label:"one in ten that it is sooner"`
	P50    quantity.Date `key:"p50" optional:"yes" label:"as likely sooner as later"`
	P80    quantity.Date `key:"p80" optional:"yes" label:"eight in ten that it is sooner"`
	Years  *float64      `key:"years_p50" unit:"y" label:"years until the middle one"`
	Within float64       `key:"within" label:"chance that it comes within the years looked at"`
}

// forecast draws when the wanted scope can be signed for.
func (out *SignOut) forecast(in SignIn) error {
	if len(in.Receipts) == 0 {
		return nil
	}
	if in.AsOf.IsZero() {
		return field.Refuse("as_of", "as_of is missing: give the day up to which the receipts are whole")
	}
	for i, g := range in.Receipts {
		switch at := fmt.Sprintf("receipts[%d]", i); {
		case g.Date.Month() == 0:
			return field.Refuse(at+".date", "%s: give the day or the month of the gift, not %q", at, g.Date)
		case !(g.Amount >= 0):
			return field.Refuse(at+".amount", "%s: amount must not be negative", at)
		}
	}
	out.Giving = fitGiving(in.Receipts, in.AsOf, in.LumpOver)
	if out.Giving == nil {
		out.Warnings = append(out.Warnings, fmt.Sprintf("fewer than %d whole months of receipts: no forecast is made", fewest))
		return nil
	}
	if out.Giving.Months < 24 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%d months of receipts show no season and hardly a trend", out.Giving.Months))
	}
	if out.Needed == nil {
		return nil
	}
	need := in.needs(out.Own, *out.Needed)
	months := make([]int, 0, futures)
	for k := range uint64(futures) {
		if m := out.Giving.until(need, k); m >= 0 {
			months = append(months, m)
		}
	}
	slices.Sort(months)
	s := &SigningAt{Within: float64(len(months)) / futures}
	at := func(p float64) (int, bool) {
		i := int(math.Ceil(p*futures)) - 1
		return i, i < len(months)
	}
	for _, q := range []struct {
		p  float64
		to *quantity.Date
	}{{0.1, &s.P10}, {0.5, &s.P50}, {0.8, &s.P80}} {
		if i, ok := at(q.p); ok {
			*q.to = monthDate(out.Giving.next + months[i])
			if months[i] == 0 {
				*q.to = in.AsOf
			}
		}
	}
	if i, ok := at(0.5); ok {
		s.Years = new(float64(months[i]) / 12)
	}
	out.Signing = s
	return nil
}

// needs is, month by month, how much must have been given on top of so much own money for a sum to be free, which rises with prices.
func (in SignIn) needs(own, sum float64) []float64 {
	list := make([]float64, int(math.Ceil(12*in.Horizon))+1)
	for m := range list {
		want := sum * math.Pow(1+in.Escalation, float64(m)/12)
		low, high := 0.0, 1.0
		for in.free(own+high) < want && high < 1e15 {
			high *= 2
		}
		if in.free(own) >= want {
			continue
		}
		for range 60 {
			mid := (low + high) / 2
			if in.free(own+mid) < want {
				low = mid
			} else {
				high = mid
			}
		}
		list[m] = high * (1 - 1e-12)
	}
	return list
}
