package plating

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
)

func (in ExtremeIn) check() error {
	given := in.Location != nil || in.Scale != nil || in.Shape != nil
	switch {
	case in.ZoneArea < in.PatchArea:
		return field.Refuse("zone_area", "zone_area must be at least patch_area (%v < %v)", field.Q("zone_area", in.ZoneArea, "m2"), field.Q("patch_area", in.PatchArea, "m2"))
	case given && len(in.Maxima) > 0:
		return field.Refuse("maxima", "give maxima to be fitted, or location and scale of a law fitted elsewhere, not both")
	case !given && len(in.Maxima) == 0:
		return field.Refuse("maxima", "maxima is missing: give the deepest pit of each patch, or location and scale")
	case given && (in.Location == nil || in.Scale == nil):
		return field.Refuse("location", "location and scale belong together")
	case in.Model == "normal" && !given:
		return field.Refuse("model", "the normal law is not one of extremes: give location (mean) and scale (standard deviation) of the thickness")
	case in.Model == "normal" && in.Shape != nil:
		return field.Refuse("shape", "the normal law has no shape: leave it out")
	case in.Are == "thickness" && in.Thickness == nil && in.Model != "normal":
		return field.Refuse("thickness", "thickness is missing: with maxima_are thickness the pits are counted from it")
	case in.Limit != nil && in.Thickness != nil && *in.Limit >= *in.Thickness:
		return field.Refuse("limit", "limit must be less than thickness (%v >= %v)", field.Q("limit", *in.Limit, "mm"), field.Q("thickness", *in.Thickness, "mm"))
	case len(in.Zones) > 0 && len(in.Zones) != len(in.Maxima):
		return field.Refuse("zones", "zones has %d entries for %d maxima", len(in.Zones), len(in.Maxima))
	}
	if in.Thickness == nil {
		return nil
	}
	for i, x := range in.Maxima {
		if x > *in.Thickness {
			return field.Refuse(fmt.Sprintf("maxima[%d]", i), "maxima[%d] (%v) is more than the thickness of the plate (%v)", i, field.Q("", x, "mm"), field.Q("thickness", *in.Thickness, "mm"))
		}
	}
	return nil
}

func (out *ExtremeOut) warn(in ExtremeIn) {
	say := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	if n := out.Patches; n > 0 && n < 10 {
		say("only %d patches: below ten the law is a guess", n)
	}
	if out.Share != nil && *out.Share < 0.03 {
		say("the patches cover %.2g %% of the zone; below 3 %% the worst is a long way outside what was seen", 100**out.Share)
	}
	if out.Period > 500 {
		say("the zone holds %.0f patches; beyond 500 the extrapolation is not to be trusted", out.Period)
	}
	if out.Period == 1 {
		say("the zone is one patch: there is no return level, only the law itself")
	}
	for _, z := range in.Zones {
		if z != in.Zones[0] {
			say("maxima come from more than one zone (%s, %s): fit each by itself, a mixture has another tail", in.Zones[0], z)
			break
		}
	}
	if out.GOF != nil && out.GOFLimit != nil && *out.GOF > *out.GOFLimit {
		say("the readings do not follow the law taken (distance %.2f, chance passes %.2f once in twenty): see whether two zones are mixed, or take the law that lets the data say how heavy the tail is (gev)", *out.GOF, *out.GOFLimit)
	}
	if in.Model == "gumbel" && out.Shape != 0 {
		say("a shape is given, so the law is the three-parameter one, not Gumbel's")
	}
	if out.Shape < -0.5 {
		say("the fitted law ends abruptly (shape %.2f): standard errors do not hold there", out.Shape)
	}
	if out.LogLike != nil && out.Level != nil && out.LevelP90 == nil {
		say("the data leave the upper end of the return level open")
	}
	if out.Through != nil && out.Least50 != nil && *out.Least50 <= 0 {
		say("more likely than not one pit is through already")
	}
}

func extremeSteps(in ExtremeIn, out ExtremeOut) []calc.Step {
	how := "as given"
	if out.LogLike != nil {
		how = "by maximum likelihood over the maxima"
	}
	steps := []calc.Step{
		{Symbol: "lam", Value: out.Location, Unit: "m", Text: "location " + how},
		{Symbol: "alp", Value: out.Scale, Unit: "m", Text: "scale " + how},
	}
	level, through := "lam-alp*ln(-ln(1-1/Tr))", "1-exp(-Tr*exp(-(tw-lam)/alp))"
	switch {
	case in.Model == "normal":
		return append(steps, calc.Step{Symbol: "x", Value: *out.Level, Unit: "m", Text: "median of the least of Tr normal thicknesses: quantile 1 - 0.5^(1/Tr)"})
	case out.Shape != 0:
		steps = append(steps, calc.Step{Symbol: "xi", Value: out.Shape, Unit: "-", Text: "shape " + how})
		level, through = "lam+alp/xi*((-ln(1-1/Tr))^(-xi)-1)", "1-exp(-Tr*(1+xi*(tw-lam)/alp)^(-1/xi))"
	}
	if out.Level != nil {
		steps = append(steps, calc.Step{Symbol: "x", Formula: level, Value: *out.Level, Unit: "m", Text: "return level of the zone"})
	}
	if out.Through != nil {
		if *out.Through < 1e-4 { // one less a number next to one: nothing a hand could check
			through = ""
		}
		steps = append(steps, calc.Step{Symbol: "Pt", Formula: through, Value: *out.Through, Unit: "-", Text: "1 - F(thickness)^Tr"})
	}
	if out.LevelP10 != nil {
		steps = append(steps, calc.Step{Symbol: "return_level_p10", Value: *out.LevelP10, Unit: "m", Text: "80 % interval of the return level by profile likelihood, lower end"})
	}
	if out.LevelP90 != nil {
		steps = append(steps, calc.Step{Symbol: "return_level_p90", Value: *out.LevelP90, Unit: "m", Text: "the same, upper end"})
	}
	return steps
}
