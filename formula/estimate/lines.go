package estimate

import (
	"fmt"

	"oakum/field"
)

// Line is one line of an estimate.
type Line struct {
	Name     string   `key:"name" label:"line"`
	Low      *float64 `key:"low" unit:"money" min:"-1e15" max:"1e15" label:"lowest it can be"`
	Likely   *float64 `key:"likely" unit:"money" min:"-1e15" max:"1e15" label:"likeliest"`
	High     *float64 `key:"high" unit:"money" min:"-1e15" max:"1e15" label:"highest it can be"`
	Kind     string   `key:"kind" enum:"triangular|pert|fixed" default:"triangular" label:"shape of the spread"`
	Quantity *float64 `key:"quantity" min:"0" max:"1e12" label:"quantity" help:"multiplies the amounts; with a rate and no amounts, quantity times rate is the line"`
	Rate     *float64 `key:"rate" min:"0" max:"1e12" label:"price of one" help:"multiplies the amounts"`
	Share    float64  `key:"share" default:"1" min:"0" max:"1" label:"share of the line that falls on this budget"`
}

// spread gives the uncertain amount of line i; bare tells that it came without a range.
func (l Line) spread(i int) (s Spread, bare bool, err error) {
	at := func(key string) string { return fmt.Sprintf("lines[%d].%s", i, key) }
	factor := l.Share
	for _, f := range []*float64{l.Quantity, l.Rate} {
		if f != nil {
			factor *= *f
		}
	}
	kind := Kind(l.Kind)
	switch {
	case l.Low == nil && l.Likely == nil && l.High == nil:
		if l.Quantity == nil || l.Rate == nil {
			return s, false, field.Refuse(at("likely"), "line %q has no amount: give low, likely and high, or quantity and rate", l.Name)
		}
		return Spread{1, 1, 1, Fixed}.Times(factor), kind != Fixed, nil
	case kind == Fixed && l.Likely != nil:
		return Spread{*l.Likely, *l.Likely, *l.Likely, Fixed}.Times(factor), false, nil
	case l.Low == nil:
		return s, false, field.Refuse(at("low"), "line %q lacks its lowest amount: give low, likely and high, or say that it is fixed", l.Name)
	case l.High == nil:
		return s, false, field.Refuse(at("high"), "line %q lacks its highest amount: give low, likely and high, or say that it is fixed", l.Name)
	case l.Likely == nil:
		return s, false, field.Refuse(at("likely"), "line %q lacks its likeliest amount", l.Name)
	case !(*l.Low <= *l.Likely && *l.Likely <= *l.High):
		return s, false, field.Refuse(at("likely"), "line %q needs low <= likely <= high, not %v, %v, %v",
			l.Name, field.Q(at("low"), *l.Low, "money"), field.Q(at("likely"), *l.Likely, "money"), field.Q(at("high"), *l.High, "money"))
	}
	return Spread{*l.Low, *l.Likely, *l.High, kind}.Times(factor), false, nil
}
