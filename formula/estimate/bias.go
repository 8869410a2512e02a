package estimate

import (
	"fmt"
	"math"

	"oakum/field"
)

// BiasPart is a part of the works of one sort.
type BiasPart struct {
	Kind   string   `key:"kind" enum:"standard-building|non-standard-building|standard-civil|non-standard-civil|equipment|other" label:"sort of project"`
	Share  float64  `key:"share" min:"0" max:"1" label:"share of the cost"`
	Uplift *float64 `key:"uplift" min:"0" max:"5" label:"uplift" help:"needed for other; the published upper bound is taken for the rest"`
}

// upperBias are the upper bounds of optimism bias of capital cost, from the Review of Large Public Procurement in the UK (Mott MacDonald for HM
// Treasury, 2002), table 2.
var upperBias = map[string]float64{
	"standard-building": 0.24, "non-standard-building": 0.51, "standard-civil": 0.44, "non-standard-civil": 0.66, "equipment": 2.00,
}

// uplift fills the likely sum with an optimism uplift, which takes the place of the contingency.
func (out *EstimateOut) uplift(in EstimateIn, sum *Sum) error {
	switch {
	case in.Bias != nil && in.BiasMix != nil:
		return field.Refuse("bias", "give one uplift or the mix it is made of, not both")
	case in.Bias != nil:
		out.Uplift = new(*in.Bias)
	case in.BiasMix != nil:
		u, err := mixed(in.BiasMix)
		if err != nil {
			return err
		}
		out.Uplift = new(u)
	default:
		out.Contingency = new(out.P80 - out.LikelySum)
		return nil
	}
	out.WithBias = new(out.LikelySum * (1 + *out.Uplift))
	out.ChanceOfBias = new(sum.Below(*out.WithBias))
	out.Warnings = append(out.Warnings, "an optimism uplift takes the place of the contingency: never add both")
	return nil
}

func mixed(parts []BiasPart) (float64, error) {
	u, all := 0.0, 0.0
	for i, p := range parts {
		up := upperBias[p.Kind]
		if p.Uplift != nil {
			up = *p.Uplift
		} else if p.Kind == "other" {
			return 0, field.Refuse(fmt.Sprintf("bias_mix[%d].uplift", i), "the uplift of part %d is missing: no published bound is known for other works", i)
		}
		u += p.Share * up
		all += p.Share
	}
	if math.Abs(all-1) > 1e-6 {
		return 0, field.Refuse("bias_mix", "the shares of bias_mix must add up to 1, not %.4g", all)
	}
	return u, nil
}
