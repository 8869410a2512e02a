package reliability

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// ReplacementIn describes a part, what renewing it costs planned and after it failed, and how old it is.
type ReplacementIn struct {
	Shape    float64   `key:"shape" symbol:"k" over:"0" max:"50" label:"shape of the life law"`
	Scale    float64   `key:"scale" unit:"y" symbol:"L" min:"0.001" max:"100000" label:"scale of the life law"`
	Planned  float64   `key:"cost_planned" unit:"money" symbol:"cp" over:"0" max:"1e15" label:"cost of renewing it as planned"`
	Failure  float64   `key:"cost_failure" unit:"money" symbol:"cf" over:"0" max:"1e15" label:"cost of renewing it after it failed" help:"all of it: the emergency docking, the damage, the income lost"`
	Discount float64   `key:"discount" symbol:"r" default:"0.0344014" min:"0" max:"0.5" label:"discount a year, continuous" help:"ln(1 + yearly rate): 0.0344014 for 3.5 % a year"`
	Age      *float64  `key:"age" unit:"y" symbol:"A" min:"0" max:"1000" label:"age of the part"`
	Waits    []float64 `key:"waits" unit:"y" symbol:"w" optional:"yes" min:"0" max:"500" most:"200" label:"waits to compare" help:"0, 2, 5 and 10 where left out"`
}

// ReplacementOut says when to renew.
type ReplacementOut struct {
	BestAge    *float64  `key:"best_age" unit:"y" symbol:"Tb" label:"age at which to renew it before it fails"`
	MeanCycle  float64   `key:"mean_cycle" unit:"y" symbol:"M" label:"mean time from one renewal to the next at that age"`
	CostRate   float64   `key:"cost_rate" unit:"money/y" symbol:"Cr" label:"cost a year in the long run, renewing at that age"`
	RunToFail  float64   `key:"run_to_failure_rate" unit:"money/y" symbol:"C0" label:"cost a year in the long run, waiting until it fails" expr:"cf/(L*gamma(1+1/k))"`
	Saving     float64   `key:"saving" symbol:"sv" label:"share saved by renewing in time" expr:"1-Cr/C0"`
	Threshold  *float64  `key:"threshold_age" unit:"y" symbol:"Th" label:"age past which one more year of waiting costs more than it saves"`
	PastIt     *bool     `key:"past_threshold" label:"the part is past that age"`
	PresentVal []Waiting `key:"present_value" symbol:"pv" optional:"yes" label:"cost today of waiting"`

	Warnings calc.Warnings `key:"-"`
}

// Waiting is what a wait costs, in money of today.
type Waiting struct {
	Wait   float64 `key:"wait" unit:"y" label:"wait"`
	Cost   float64 `key:"cost" unit:"money" label:"present value"`
	Chance float64 `key:"chance" label:"chance that it fails within the wait"`
}

// Replacement finds when to renew a part that wears out.
//
// Renewed at age T or at failure, whichever comes first, it costs (cp S(T) + cf F(T)) / integral of S from 0 to T a year in the long run; the
// best T solves h(T) integral S - F(T) = cp/(cf - cp). For the part as it stands a year's delay saves r cp and risks h (cf - cp): renew once the
// hazard h is above r cp/(cf - cp). S, F, h are those of the Weibull law. It holds for renewals that make it as good as new, one after another.
// Source: Barlow and Hunter, Optimum preventive maintenance policies, Operations Research 8, 1960. Near the best age the cost is flat: what
// matters is the order of the costs.
var Replacement = calc.Formula[ReplacementIn, ReplacementOut]{
	ID:       "outlook.replacement",
	Title:    "When to renew a part before it fails",
	About:    "The age at which renewing a part costs least in the long run, and what waiting costs for the part as it stands.",
	Holds:    "A part that is as good as new once renewed. Lost income, loss of the ship, no dock free and damage to old fabric belong into the cost of failure: at twice the planned cost alone, prevention saves little (3 to 23 % for shapes 2 to 5).",
	Accuracy: "Exact for its law. The cost is flat about the best age: a few years either way matter little; the ratio of the two costs matters much.",
	Sources:  []source.Ref{{Key: "barlow-hunter", At: "policy I, age replacement"}, {Key: "practice", At: "an emergency docking costs about twice a planned one"}},
	Fn:       replacement,
	Steps:    replacementSteps,
}

func replacement(in ReplacementIn) (out ReplacementOut, err error) {
	law := Weibull{in.Shape, in.Scale}
	mean := in.Scale * math.Gamma(1+1/in.Shape)
	out.RunToFail = in.Failure / mean
	out.MeanCycle, out.CostRate = mean, out.RunToFail
	if age, ok := bestAge(law, in.Planned, in.Failure); ok {
		out.BestAge = new(age)
		out.MeanCycle = lived(law, age)
		out.CostRate = (in.Planned*Survival(law, age) + in.Failure*Ahead(law, 0, age)) / out.MeanCycle
	}
	out.Saving = 1 - out.CostRate/out.RunToFail
	if in.Shape > 1 && in.Failure > in.Planned {
		out.Threshold = new(in.Scale * math.Pow(in.Discount*in.Planned/(in.Failure-in.Planned)*in.Scale/in.Shape, 1/(in.Shape-1)))
	}
	if in.Age != nil {
		if out.Threshold != nil {
			out.PastIt = new(*in.Age >= *out.Threshold)
		}
		waits := in.Waits
		if waits == nil {
			waits = []float64{0, 2, 5, 10}
		}
		for i, w := range waits {
			if !(w >= 0) {
				return out, field.Refuse(fmt.Sprintf("waits[%d]", i), "waits[%d] must be at least 0 y, not %g", i, w)
			}
			out.PresentVal = append(out.PresentVal, Waiting{w, PresentValue(law, *in.Age, w, in.Planned, in.Failure, in.Discount), Ahead(law, *in.Age, w)})
		}
	}
	out.Warnings = replacementWarnings(in, out)
	return out, nil
}

// bestAge solves h(T) lived(T) - F(T) = cp/(cf-cp), whose left side rises from 0 for a shape above 1. ok is false where waiting until it fails
// is best, or as good to twelve digits.
func bestAge(w Weibull, planned, failure float64) (age float64, ok bool) {
	if w.Shape <= 1 || failure <= planned {
		return 0, false
	}
	want := planned / (failure - planned)
	low, high := 0.0, w.Left(0, 1-1e-12)
	gap := func(t float64) float64 { return w.Hazard(t)*lived(w, t) - Ahead(w, 0, t) - want }
	if gap(high) < 0 {
		return 0, false
	}
	for range 200 {
		mid := (low + high) / 2
		if mid == low || mid == high {
			break
		}
		if gap(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2, true
}

// lived is the mean time a new part is in service when it is renewed at age t at the latest: the integral of the survival, an incomplete gamma
// function.
func lived(w Weibull, t float64) float64 {
	return w.Scale * math.Gamma(1+1/w.Shape) * mathext.GammaIncReg(1/w.Shape, w.Cumulative(t))
}

// PresentValue is what it costs today, discounted at rate r (continuous, 1/y), to renew a part of that age after the wait, or when it fails
// before: cf integral of exp(-rt) f(t) to the wait, and cp exp(-r wait) S(wait), both for the part alive now. Gauss-Legendre over the cube root of
// the hazard to come, in which the time of failure is smooth even for a new part.
func PresentValue(l Life, age, wait, planned, failure, r float64) float64 {
	span := l.Gained(age, wait)
	sum := 0.0
	const panels = 16
	top := min(span, 40) // exp(-40) of the parts are left beyond
	for p := range panels {
		for i, x := range gaussX {
			s := (float64(p) + (1+x)/2) / panels
			h := top * s * s * s
			t := l.Left(age, -math.Expm1(-h))
			sum += gaussW[i] * 3 * top * s * s / (2 * panels) * math.Exp(-h-r*t)
		}
	}
	return failure*sum + planned*math.Exp(-r*wait-span)
}

// Gauss-Legendre nodes and weights of eight points on [-1, 1]; Abramowitz and Stegun, table 25.4.
var (
	gaussX = [8]float64{-0.960289856497536, -0.796666477413627, -0.525532409916329, -0.183434642495650, 0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536}
	gaussW = [8]float64{0.101228536290376, 0.222381034453374, 0.313706645877887, 0.362683783378362, 0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376}
)

func replacementWarnings(in ReplacementIn, out ReplacementOut) (w calc.Warnings) {
	switch {
	case in.Failure <= in.Planned:
		w = append(w, "a failure that costs no more than the planned work needs no prevention: is all of its cost in it (emergency docking, lost income, damage, loss of the ship)?")
	case in.Shape <= 1:
		w = append(w, "a part that fails by chance alone is made no safer by renewing it: watch it instead")
	case out.BestAge == nil:
		w = append(w, "renewing it in time saves next to nothing")
	}
	if out.PastIt != nil && *out.PastIt {
		w = append(w, fmt.Sprintf("at %.3g years it is past the age (%.3g) at which waiting costs more than it saves: the sooner the better", *in.Age, *out.Threshold))
	}
	if r := in.Failure / in.Planned; r > 1 && r <= 2.5 {
		w = append(w, fmt.Sprintf("failure is taken to cost %.2g times the planned work: an emergency docking alone costs about twice; income lost, no dock free and damage come on top", r))
	}
	return w
}

func replacementSteps(in ReplacementIn, out ReplacementOut) (steps []calc.Step) {
	if out.BestAge == nil {
		steps = append(steps,
			calc.Step{Symbol: "M", Formula: "L*gamma(1+1/k)", Value: out.MeanCycle, Unit: "y", Text: "mean life: it is never renewed before it fails"},
			calc.Step{Symbol: "Cr", Formula: "cf/M", Value: out.CostRate, Unit: "money/y", Text: "cost of a failure each mean life"})
	} else {
		steps = append(steps,
			calc.Step{Symbol: "Tb", Value: *out.BestAge, Unit: "y", Text: "solved: h(T) M(T) - F(T) = cp/(cf-cp), by bisection"},
			calc.Step{Symbol: "M", Value: out.MeanCycle, Unit: "y", Text: "integral of exp(-(t/L)^k) from 0 to Tb: an incomplete gamma function"},
			calc.Step{Symbol: "Cr", Formula: "(cp*exp(-(Tb/L)^k)+cf*(1-exp(-(Tb/L)^k)))/M", Value: out.CostRate, Unit: "money/y", Text: "mean cost of a cycle over its mean length"})
	}
	if out.Threshold != nil {
		steps = append(steps, calc.Step{Symbol: "Th", Formula: "L*(r*cp/(cf-cp)*L/k)^(1/(k-1))", Value: *out.Threshold, Unit: "y", Text: "age at which the hazard reaches r cp/(cf-cp)"})
	}
	if n := len(out.PresentVal); n > 0 {
		last := out.PresentVal[n-1]
		steps = append(steps, calc.Step{Symbol: "PVlast", Value: last.Cost, Unit: "money", Text: fmt.Sprintf("present value of waiting %g years: failures on the way, and the planned work if it lasts; integral", last.Wait)})
	}
	return steps
}
