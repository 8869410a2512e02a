package reliability

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// FittedIn describes a life law, or the lives to fit one to, and the part that is asked about.
type FittedIn struct {
	Shape     *float64  `key:"shape" symbol:"k0" over:"0" max:"50" label:"shape of the life law" help:"1 by chance, 2 to 4 by wearing out, below 1 early faults; with failures it is taken as known"`
	Scale     *float64  `key:"scale" unit:"y" symbol:"L0" over:"0" max:"100000" label:"scale of the life law" help:"63.2 % have failed by then"`
	Age       *float64  `key:"age" unit:"y" symbol:"A" min:"0" max:"1000" label:"age of the part" help:"years since it was new, not the year it was made"`
	Ahead     *float64  `key:"ahead" unit:"y" symbol:"B" over:"0" max:"1000" label:"years to look ahead"`
	Failures  []float64 `key:"failures" unit:"y" symbol:"ft" optional:"yes" over:"0" max:"100000" most:"100000" label:"ages at which such parts failed"`
	Survivors []float64 `key:"survivors" unit:"y" symbol:"st" optional:"yes" over:"0" max:"100000" most:"100000" label:"ages of such parts that have not failed"`
}

// FittedOut is the law and what it says of the part.
type FittedOut struct {
	Shape         float64  `key:"shape" symbol:"k" label:"shape"`
	Scale         float64  `key:"scale" unit:"y" symbol:"L" label:"scale"`
	LogLikelihood *float64 `key:"log_likelihood" symbol:"ll" label:"log-likelihood of the fit, densities per year"`
	SE            *FitSE   `key:"se" label:"standard errors of the fit"`
	Survival      *float64 `key:"survival" symbol:"S" label:"share of such parts that reach the age" expr:"exp(-(A/L)^k)"`
	Hazard        *float64 `key:"hazard" unit:"1/y" symbol:"hz" label:"chance a year of failing at the age"`
	Probability   *float64 `key:"probability_ahead" symbol:"F" label:"chance of failing within the years ahead, having reached the age" expr:"1-exp((A/L)^k-((A+B)/L)^k)"`
	Low           *float64 `key:"probability_low" symbol:"Fl" label:"the same, low end of the four-in-five band of the fit"`
	High          *float64 `key:"probability_high" symbol:"Fu" label:"the same, high end of the four-in-five band of the fit"`
	MedianLeft    *float64 `key:"median_left" unit:"y" symbol:"m" label:"years left within which half of such parts fail" expr:"L*((A/L)^k+ln(2))^(1/k)-A"`

	Warnings calc.Warnings `key:"-"`
}

// FitSE holds the standard errors of a fit.
type FitSE struct {
	Shape float64 `key:"shape" label:"of the shape"`
	Scale float64 `key:"scale" unit:"y" label:"of the scale"`
}

// Fitted is the Weibull life of a part, given or fitted.
//
// Of new parts the share exp(-(t/L)^k) lives past t years, k the shape, L the scale; of those alive at the age A the share
// 1 - exp((A/L)^k - ((A+B)/L)^k) fails within B years more. The fit is by greatest likelihood, survivors counted as right censored. It holds
// for parts of one sort in one service. Source: NIST/SEMATECH handbook, 8.1.6.2 and 8.4.1.3. With fewer than ten failures the shape is soft:
// look at the band.
var Fitted = calc.Formula[FittedIn, FittedOut]{
	ID:       "outlook.weibull",
	Title:    "Life of a part that wears out",
	About:    "How likely a part of a given age fails within the years ahead, from a life law or from the lives of others like it.",
	Holds:    "Parts of one sort in one service, failing one at a time. Survivors must be counted: leaving them out makes every part look short-lived.",
	Accuracy: "The law is exact; the lives behind it seldom are. The band covers the error of the fit only, not a wrong choice of parts to compare with. Under ten failures the shape is soft.",
	Sources:  []source.Ref{{Key: "nist-handbook", At: "8.1.6.2 and 8.4.1.3"}},
	Fn:       fitted,
	Steps:    fittedSteps,
}

func fitted(in FittedIn) (out FittedOut, err error) {
	law, out, err := lawOf(in)
	if err != nil {
		return out, err
	}
	out.Shape, out.Scale = law.Shape, law.Scale
	if in.Age == nil {
		if in.Ahead != nil || in.Failures == nil {
			return out, field.Refuse("age", "age is missing: give the age of the part in y")
		}
		return out, nil
	}
	age := *in.Age
	out.Survival, out.MedianLeft = new(Survival(law, age)), new(MedianLeft(law, age))
	if age > 0 || law.Shape >= 1 {
		out.Hazard = new(law.Hazard(age))
	} else {
		out.Warnings = append(out.Warnings, "with a shape below 1 the hazard of a new part has no limit, so none is given at age 0")
	}
	if in.Ahead != nil {
		out.Probability = new(Ahead(law, age, *in.Ahead))
		if out.SE != nil {
			low, high := law.AheadBand(age, *in.Ahead)
			out.Low, out.High = new(low), new(high)
		}
	}
	out.Warnings = append(out.Warnings, lawWarnings(in, law)...)
	return out, nil
}

// lawOf takes the law as given, or fits it.
func lawOf(in FittedIn) (Fit, FittedOut, error) {
	var out FittedOut
	if len(in.Failures) == 0 && len(in.Survivors) == 0 {
		switch {
		case in.Shape == nil:
			return Fit{}, out, field.Refuse("shape", "shape is missing: give shape and scale, or failures and survivors to fit them to")
		case in.Scale == nil:
			return Fit{}, out, field.Refuse("scale", "scale is missing: give it in y, or failures and survivors to fit it to")
		}
		return Fit{Weibull: Weibull{*in.Shape, *in.Scale}}, out, nil
	}
	if in.Scale != nil {
		return Fit{}, out, field.Refuse("scale", "give the scale, or failures and survivors to fit it to, not both")
	}
	fit, err := FitWeibull(in.Failures, in.Survivors, in.Shape)
	if err != nil {
		return fit, out, err
	}
	out.LogLikelihood = new(fit.LogLikelihood)
	out.SE = &FitSE{root(fit.Covariance[0][0]), root(fit.Covariance[1][1])}
	return fit, out, nil
}

func lawWarnings(in FittedIn, law Fit) (w calc.Warnings) {
	if n := len(in.Failures); n > 0 && n < 10 {
		w = append(w, fmt.Sprintf("fitted to %d failures only: the shape is soft, read the band and not the middle", n))
	}
	if len(in.Failures) > 0 && len(in.Survivors) == 0 {
		w = append(w, "no survivors were given: if parts of this sort are still in service, leaving them out makes lives look too short")
	}
	if *in.Age > 3*law.Scale {
		w = append(w, fmt.Sprintf("the part is %.3g times as old as the scale of its law: either the law is not of such parts, or the age is wrong", *in.Age/law.Scale))
	}
	return w
}

func fittedSteps(in FittedIn, out FittedOut) []calc.Step {
	if len(in.Failures) == 0 {
		steps := []calc.Step{
			{Symbol: "k", Formula: "k0", Value: out.Shape, Unit: "-", Text: "shape as given"},
			{Symbol: "L", Formula: "L0", Value: out.Scale, Unit: "y", Text: "scale as given"},
		}
		return append(steps, hazardStep(out)...)
	}
	shape := calc.Step{Symbol: "k", Value: out.Shape, Unit: "-", Text: "shape of greatest likelihood: sum(t^k ln t)/sum(t^k) - 1/k = mean ln of the failures, solved"}
	if in.Shape != nil {
		shape.Formula, shape.Text = "k0", "shape as given"
	}
	steps := []calc.Step{
		shape,
		{Symbol: "L", Formula: "((sum(ft, #^k) + sum(st, #^k))/len(ft))^(1/k)", Value: out.Scale, Unit: "y", Text: "scale: sum over all lives of t^k, over the number of failures"},
		{Symbol: "ll", Value: *out.LogLikelihood, Unit: "-", Text: "log-likelihood: ln of the hazard at each failure, less the cumulative hazard of every life"},
		{Symbol: "se", Value: out.SE.Scale, Unit: "y", Text: "standard errors: root of the diagonal of the inverse curvature of the likelihood; here that of the scale"},
	}
	if in.Survivors == nil {
		steps[1].Formula = "(sum(ft, #^k)/len(ft))^(1/k)"
	}
	if out.Low != nil {
		steps = append(steps, calc.Step{Symbol: "Fl", Value: *out.Low, Unit: "-", Text: "band: ln of the hazard to come, give or take 1.2816 standard errors"})
	}
	return append(steps, hazardStep(out)...)
}

func hazardStep(out FittedOut) []calc.Step {
	if out.Hazard == nil {
		return nil
	}
	return []calc.Step{{Symbol: "hz", Formula: "k/L*(A/L)^(k-1)", Value: *out.Hazard, Unit: "1/y", Text: "hazard at the age"}}
}
