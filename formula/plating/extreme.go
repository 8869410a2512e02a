package plating

import (
	"errors"
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/extremes"
	"oakum/source"
)

// ExtremeIn is the deepest pit, or the thinnest spot, of each of several patches of one size, or a law fitted to such elsewhere.
type ExtremeIn struct {
	Maxima    []float64 `key:"maxima" unit:"mm" symbol:"pits" optional:"yes" min:"0" most:"100000" label:"deepest pit of each patch"`
	Are       string    `key:"maxima_are" enum:"depth|thickness" default:"depth" label:"maxima are depths, or least thicknesses (thickness must then be given)"`
	Zones     []string  `key:"zones" optional:"yes" most:"100000" label:"zone of each maximum" help:"waterline, bilge, bottom: one analysis for each"`
	PatchArea float64   `key:"patch_area" unit:"m2" symbol:"Ap" over:"0" max:"1e5" label:"area of one patch"`
	ZoneArea  float64   `key:"zone_area" unit:"m2" symbol:"Az" over:"0" max:"1e6" label:"area of the whole zone"`
	Model     string    `key:"model" enum:"gumbel|gev|normal" default:"gumbel" label:"law" help:"gumbel for pits; gev lets the data say how heavy the tail is; normal for the thickness itself, with location its mean and scale its standard deviation over patches"`
	Thickness *float64  `key:"thickness" unit:"mm" symbol:"tw" over:"0" max:"1000" label:"thickness of the plate that the pits go into"`
	Limit     *float64  `key:"limit" unit:"mm" symbol:"tm" over:"0" max:"1000" label:"least thickness allowed under a pit"`
	Growth    float64   `key:"growth" symbol:"m" default:"1" min:"0" max:"2" label:"exponent of growth: depth goes as age to this power" help:"1 is the pessimistic end; pits in still sea water were found between 0.3 and 1"`
	Age       *float64  `key:"age" unit:"y" symbol:"a" over:"0" max:"200" label:"years the pits have grown" help:"with it, the years ahead are shown"`
	Ahead     int       `key:"ahead" default:"10" min:"1" max:"100" label:"years ahead"`
	Location  *float64  `key:"location" unit:"mm" symbol:"lam0" label:"location, of a law fitted elsewhere"`
	Scale     *float64  `key:"scale" unit:"mm" symbol:"alp0" over:"0" label:"its scale"`
	Shape     *float64  `key:"shape" symbol:"xi0" min:"-0.99" max:"5" label:"its shape, above 0 heavy in the tail; 0 for Gumbel"`
}

// Later is the worst so many years ahead.
type Later struct {
	Years   int      `key:"years" label:"years ahead"`
	Level   float64  `key:"return_level" unit:"mm" label:"return level then"`
	Through *float64 `key:"probability_through" label:"chance that one is through"`
	Below   *float64 `key:"probability_below_limit" label:"chance that one leaves less than the limit"`
}

// ExtremeOut is the worst of the zone.
type ExtremeOut struct {
	Period      float64   `key:"return_period" symbol:"Tr" label:"patches in the zone" expr:"Az/Ap"`
	Patches     int       `key:"patches" symbol:"n" label:"patches measured"`
	Share       *float64  `key:"share_measured" symbol:"sm" label:"share of the zone measured" expr:"n*Ap/Az"`
	Location    float64   `key:"location" unit:"mm" symbol:"lam" label:"location"`
	Scale       float64   `key:"scale" unit:"mm" symbol:"alp" label:"scale"`
	Shape       float64   `key:"shape" symbol:"xi" label:"shape"`
	LogLike     *float64  `key:"log_likelihood" symbol:"ll" label:"log likelihood, depths in mm"`
	SE          []float64 `key:"se" optional:"yes" label:"standard errors of location (mm), scale (mm) and shape"`
	PWMLocation *float64  `key:"pwm_location" unit:"mm" symbol:"lamp" label:"location by probability weighted moments"`
	PWMScale    *float64  `key:"pwm_scale" unit:"mm" symbol:"alpp" label:"scale by these"`
	PWMShape    *float64  `key:"pwm_shape" symbol:"xip" label:"shape by these"`
	Level       *float64  `key:"return_level" unit:"mm" symbol:"x" label:"return level: the depth passed once in the zone on average; for the normal law the median of the least thickness"`
	LevelP10    *float64  `key:"return_level_p10" unit:"mm" label:"lower end of its 80 % interval"`
	LevelP90    *float64  `key:"return_level_p90" unit:"mm" label:"upper end"`
	PWMLevel    *float64  `key:"pwm_return_level" unit:"mm" label:"return level by probability weighted moments"`
	Deep10      *float64  `key:"deepest_p10" unit:"mm" label:"deepest pit of the zone, one chance in ten to be less deep"`
	Deep50      *float64  `key:"deepest_p50" unit:"mm" label:"its median"`
	Deep90      *float64  `key:"deepest_p90" unit:"mm" label:"one chance in ten to be deeper"`
	Least10     *float64  `key:"least_p10" unit:"mm" label:"least thickness of the zone, one chance in ten to be thinner"`
	Least50     *float64  `key:"least_p50" unit:"mm" label:"its median"`
	Least90     *float64  `key:"least_p90" unit:"mm" label:"nine chances in ten to be thinner"`
	Through     *float64  `key:"probability_through" symbol:"Pt" label:"chance that somewhere in the zone a pit is through"`
	Below       *float64  `key:"probability_below_limit" symbol:"Pl" label:"chance that somewhere less than the limit is left"`
	Later       []Later   `key:"ahead" symbol:"years_ahead" optional:"yes" label:"year by year ahead"`
	GOF         *float64  `key:"gof" symbol:"A2" label:"Anderson and Darling distance of the data from the law"`
	GOFLimit    *float64  `key:"gof_limit" symbol:"A2c" label:"distance that chance passes once in twenty (Gumbel)"`

	Warnings calc.Warnings `key:"-"`
}

// Extreme is the worst spot that was not measured.
//
// The deepest pits of equal patches follow an extreme value law F. With T = zone area / patch area, the return level is
// x = lam - alp ln(-ln(1 - 1/T)) (Gumbel), or lam + alp ((-ln(1 - 1/T))^-xi - 1)/xi, and the chance that one is deeper than d is 1 - F(d)^T. The law
// is fitted by maximum likelihood, weighted moments stand beside it, and the 80 % interval of the return level is that of the profile likelihood.
// It holds for one zone of one history: patches drawn at random in it, each large enough to hold many pits, at least ten of them.
var Extreme = calc.Formula[ExtremeIn, ExtremeOut]{
	ID:       "plating.extreme",
	Title:    "The worst spot that was not measured",
	About:    "From the deepest pit of each of several patches: the deepest pit of the whole zone, and the chance that one is through, now and in the years ahead.",
	Holds:    "One zone of one kind and history, patches of equal size drawn at random, ten or more, over 3 % of its area and under 500 patches' worth of it.",
	Accuracy: "The interval says it: with ten patches the return level is known to about a third. It knows nothing of a kind of attack that no patch held.",
	Sources: []source.Ref{
		{Key: "shibata-1994", At: "return period, standard procedure"},
		{Key: "laycock-1990", At: "growth with time by a power law"},
		{Key: "coles-2001", At: "sections 3.3 and 3.4; data of example 1.1"},
		{Key: "hosking-1985", At: "weighted moments"},
		{Key: "tubes-1994", At: "3 % of the area and a return period under 500"},
		{Key: "stephens-1977", At: "critical value of the distance"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       extreme,
	Steps:    extremeSteps,
	Samples:  200,
}

// chi80 is the quantile 0.8 of chi-square with one degree of freedom.
const chi80 = 1.642374415149818

func extreme(in ExtremeIn) (out ExtremeOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	out.Period = in.ZoneArea / in.PatchArea
	switch {
	case in.Model == "normal":
		err = out.normal(in)
	case in.Location != nil:
		law := extremes.Law{Location: *in.Location, Scale: *in.Scale}
		if in.Shape != nil {
			law.Shape = *in.Shape
		}
		out.worst(in, law)
	default:
		err = out.fit(in)
	}
	out.warn(in)
	return out, err
}

// depths are the maxima as pit depths, m.
func (in ExtremeIn) depths() []float64 {
	if in.Are != "thickness" {
		return in.Maxima
	}
	d := make([]float64, len(in.Maxima))
	for i, t := range in.Maxima {
		d[i] = *in.Thickness - t
	}
	return d
}

func (out *ExtremeOut) fit(in ExtremeIn) error {
	x := in.depths()
	fit, fitter, pwm := extremes.Fit{}, extremes.FitGumbel, extremes.GumbelMoments
	if in.Model == "gev" {
		fitter, pwm = extremes.FitGEV, extremes.Moments
	}
	fit, err := fitter(x)
	switch {
	case errors.Is(err, extremes.ErrFew):
		return field.Refuse("maxima", "maxima has %d entries: too few to fit a law (at least 3 for gumbel, 5 for gev; trust begins at ten)", len(x))
	case errors.Is(err, extremes.ErrEqual):
		return field.Refuse("maxima", "maxima are all equal: nothing can be said of the worst from them")
	case err != nil:
		return field.Refuse("maxima", "maxima can't be fitted with three parameters (%v): take model gumbel", err)
	}
	out.Patches, out.Share = len(x), new(float64(len(x))*in.PatchArea/in.ZoneArea)
	out.LogLike = new(fit.LogLikelihood - float64(len(x))*math.Log(1000)) // densities per mm
	for i, se := range fit.SE {
		if i < 2 {
			se *= 1000
		}
		out.SE = append(out.SE, se)
	}
	m := pwm(x)
	out.PWMLocation, out.PWMScale, out.PWMShape = &m.Location, &m.Scale, &m.Shape
	out.GOF = finite(extremes.AndersonDarling(x, fit.Law))
	if in.Model == "gumbel" {
		out.GOFLimit = new(extremes.GumbelCritical(len(x)))
	}
	out.worst(in, fit.Law)
	if out.Level != nil {
		out.PWMLevel = new(m.ReturnLevel(out.Period))
		low, high := fit.Interval(out.Period, chi80)
		out.LevelP10, out.LevelP90 = finite(low), finite(high)
	}
	return nil
}

func finite(x float64) *float64 {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return nil
	}
	return &x
}

// worst fills what the law says of the zone.
func (out *ExtremeOut) worst(in ExtremeIn, law extremes.Law) {
	out.Location, out.Scale, out.Shape = law.Location, law.Scale, law.Shape
	if out.Period > 1 {
		out.Level = new(law.ReturnLevel(out.Period))
	}
	deepest := func(p float64) *float64 { return new(law.Largest(p, out.Period)) }
	out.Deep10, out.Deep50, out.Deep90 = deepest(0.1), deepest(0.5), deepest(0.9)
	if in.Thickness != nil {
		t := *in.Thickness
		out.Least10, out.Least50, out.Least90 = new(t-*out.Deep90), new(t-*out.Deep50), new(t-*out.Deep10)
	}
	out.Through, out.Below = in.chances(law, out.Period)
	if in.Age == nil {
		return
	}
	for k := 1; k <= in.Ahead; k++ {
		grown := math.Pow((*in.Age+float64(k))/(*in.Age), in.Growth)
		later := extremes.Law{Location: law.Location * grown, Scale: law.Scale * grown, Shape: law.Shape}
		row := Later{Years: k, Level: later.Largest(0.5, out.Period)}
		if out.Period > 1 {
			row.Level = later.ReturnLevel(out.Period)
		}
		row.Through, row.Below = in.chances(later, out.Period)
		out.Later = append(out.Later, row)
	}
}

// chances that the deepest of so many patches goes through the plate, and that it leaves less than the limit.
func (in ExtremeIn) chances(law extremes.Law, period float64) (through, below *float64) {
	if in.Thickness == nil {
		return nil, nil
	}
	through = new(law.Exceeds(*in.Thickness, period))
	if in.Limit != nil {
		below = new(law.Exceeds(*in.Thickness-*in.Limit, period))
	}
	return through, below
}

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
		say("the data do not look like this law (distance %.2f, chance passes %.2f once in twenty): mixed zones, or try gev", *out.GOF, *out.GOFLimit)
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
