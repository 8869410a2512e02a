package assess

import (
	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
)

// workLine is the line of an estimate for one item of work: its own three points, or its quantity times a rate; ok is false where it has no price.
func (c *inquiry) workLine(w dossier.Entry[plan.Work]) (l estimate.Line, ok bool) {
	b := w.Body
	name := b.Name
	if b.Number != "" {
		name = b.Number + " " + name
	}
	if b.Likely != nil {
		return lineFrom(name, b.Low, b.Likely, b.High, b.Shape)
	}
	r, found := dossier.Find[plan.Rate](c.d, b.Rate)
	if !found || b.Quantity == nil || r.Body.Likely == nil {
		return l, false
	}
	low, high := quantityEnds(b)
	times := func(q float64, rate *float64) *float64 {
		if rate == nil {
			rate = r.Body.Likely
		}
		return new(q * *rate)
	}
	return lineFrom(name, times(low, r.Body.Low), times(*b.Quantity, r.Body.Likely), times(high, r.Body.High), b.Shape)
}

// quantityEnds are the ends of the quantity of a work; the quantity itself where they are not given.
func quantityEnds(b plan.Work) (low, high float64) {
	low, high = *b.Quantity, *b.Quantity
	if b.QuantityLow != nil {
		low = *b.QuantityLow
	}
	if b.QuantityTop != nil {
		high = *b.QuantityTop
	}
	return low, high
}

// price draws up an estimate with the quantiles that a brief reads. Its sheet, made when somebody opens it, has them all.
func (c *inquiry) price(subject, words string, in estimate.EstimateIn, given map[string]field.Given) (calc.Sheet, estimate.EstimateOut, error) {
	sheet, out, err := work(c.book, estimate.Bands, subject, words, in, given)
	if err == nil {
		enter(c.book, estimate.Estimate, subject, words, in, given)
	}
	return sheet, out, err
}
