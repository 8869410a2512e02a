package plating

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/quantity"
)

func (in RateIn) warnings(worst Place, all []Place) (w calc.Warnings) {
	say := func(format string, a ...any) { w = append(w, fmt.Sprintf(format, a...)) }
	mm := func(x float64) string { return quantity.Format(x, "mm", -1) }
	negative := 0
	for _, p := range all {
		if p.Loss < 0 {
			negative++
		}
	}
	switch in.Basis {
	case "nominal":
		say("loss is counted from the nominal thickness; plate ran up to 8.5 %% (narrow) or 14 %% (wide) thicker, so the true loss may be more: up to %s or %s", mm(1.085*worst.original-worst.Thickness), mm(1.14*worst.original-worst.Thickness))
	case "first-gauged":
		if in.Original != nil && in.OriginalDate == nil && in.Built != nil {
			say("the original comes from a first gauging without a date: the rate since built spreads the loss since that gauging over all her years, and is too low")
		}
	}
	if negative > 0 {
		say("%d of %d places read thicker than the original: over-rolled plate, paint, rough surface or a wrong original. The negative loss is kept", negative, len(all))
	}
	for _, p := range all {
		for _, d := range slices.Compact(slices.Sorted(slices.Values(p.doubts))) {
			say("%s: %s", cmp.Or(p.Place, "readings without a place"), d)
		}
	}
	for i, r := range in.Readings {
		if r.Bias != 0 {
			say("an entered bias is taken off some readings, first off readings[%d]: %s", i, mm(r.Bias))
			break
		}
	}
	if worst.Thickness > 1.5*worst.original || worst.Thickness < 0.1*worst.original {
		say("%s against an original of %s: was the reading typed in another unit, or does it belong to another plate?", mm(worst.Thickness), mm(worst.original))
	}
	if worst.Least < in.Limit && worst.Thickness >= in.Limit {
		say("the mean is over the limit but the least reading, %s, is below it", mm(worst.Least))
	}
	return append(w, worst.rateWarnings()...)
}

func (p Place) rateWarnings() (w calc.Warnings) {
	switch {
	case p.Rate == nil:
		w = append(w, "no rate: there is one survey only, and no date built; how long the plate lasts is not known")
	case *p.Rate <= 0:
		w = append(w, "no loss is seen between the surveys, so no life can be given; that is no proof that nothing is lost")
	case p.LifeP90 == nil && p.Verdict != "renew":
		w = append(w, "the readings leave open whether the plate loses at all: no upper end of its life can be given")
	}
	if p.RateShort != nil && p.yearsShort < 2 {
		w = append(w, fmt.Sprintf("the two newest surveys lie %.1f years apart: the short rate is mostly the scatter of the gauge", p.yearsShort))
	}
	if p.RateShort != nil && *p.RateShort < 0 {
		w = append(w, "the plate reads thicker than at the survey before: not the same spot, another gauge, or scatter")
	}
	return w
}

func rateSteps(in RateIn, out RateOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "t", Value: out.Thickness, Unit: "m", Text: "mean of the newest survey at the place, entered bias taken off"},
		{Symbol: "st", Value: out.SD, Unit: "m", Text: "root of the sum of squares of the readings' standard deviations, over their number"},
	}
	if in.Original != nil {
		steps = append(steps, calc.Step{Symbol: "tu", Formula: "to", Value: out.From, Unit: "m", Text: "original as given"})
	} else {
		steps = append(steps, calc.Step{Symbol: "tu", Value: out.From, Unit: "m", Text: "mean of the oldest survey at the place"})
	}
	if out.Rate == nil {
		return steps
	}
	formula := "rs"
	switch {
	case out.RateLong != nil && out.RateShort != nil:
		formula = "max(rl, rs)"
	case out.RateLong != nil:
		formula = "rl"
	}
	steps = append(steps,
		calc.Step{Symbol: "r", Formula: formula, Value: *out.Rate, Unit: "m/y", Text: "the higher of the long and the short rate"},
		calc.Step{Symbol: "sr", Value: *out.RateSD, Unit: "m/y", Text: "from the standard deviations of the two thicknesses and, by half width over root 3, of the two dates"})
	for _, l := range []struct {
		name string
		x    *float64
	}{{"life_p10", out.LifeP10}, {"life_p90", out.LifeP90}} {
		if l.x != nil && !math.IsNaN(*l.x) {
			steps = append(steps, calc.Step{Symbol: l.name, Value: *l.x, Unit: "y", Text: "root in x of (t - tm - r x)^2 = 1.2816^2 (st^2 + 2 x st^2/Y + x^2 sr^2), Y the years of the rate used"})
		}
	}
	return steps
}
