package reliability

import (
	"fmt"

	"oakum/calc"
	"oakum/source"
)

// OutlivedIn describes a part that has lived long.
type OutlivedIn struct {
	DesignLife float64 `key:"design_life" unit:"y" symbol:"D" over:"0" max:"1000" label:"design life" help:"taken as the age by which half of such parts fail"`
	Shape      float64 `key:"shape" symbol:"k" default:"3" over:"0" max:"20" label:"shape of the life law" help:"1 by chance, 3 by wearing out"`
	Strength   float64 `key:"strength" symbol:"a" default:"2" over:"0" max:"1000" label:"how sure the design life is" help:"1 a guess, 2 a fair rule, 4 well founded; the weight of the prior in failures seen"`
	Age        float64 `key:"age" unit:"y" symbol:"T" min:"0" max:"1000" label:"age it has reached without failing"`
	Ahead      float64 `key:"ahead" unit:"y" symbol:"s" default:"5" over:"0" max:"1000" label:"years to look ahead"`
}

// OutlivedOut is what to believe of it.
type OutlivedOut struct {
	PriorRate     float64  `key:"prior_rate" symbol:"b" label:"rate of the gamma law, years to the power of the shape" expr:"D^k/(2^(1/a)-1)"`
	PriorSurvival float64  `key:"prior_survival" symbol:"S0" label:"chance that such a part reaches the age, as seen when new" expr:"(b/(b+T^k))^a"`
	Probability   float64  `key:"probability_ahead" symbol:"F" label:"chance of failing within the years ahead, having reached the age" expr:"1-((b+T^k)/(b+(T+s)^k))^a"`
	PlugIn        float64  `key:"plug_in" symbol:"F0" label:"the same if the design life were known for certain" expr:"1-exp(ln(2)*((T/D)^k-((T+s)/D)^k))"`
	Hazard        *float64 `key:"hazard" unit:"1/y" symbol:"hz" label:"chance a year of failing now"`
	MedianLeft    float64  `key:"median_left" unit:"y" symbol:"m" label:"years left within which half of such parts fail" expr:"((b+T^k)*2^(1/a)-b)^(1/k)-T"`
	Says          string   `key:"says" label:"in words"`

	Warnings calc.Warnings `key:"-"`
}

// OutlivedPart is the outlook of a part that has passed its design life.
//
// lambda = scale^-shape of the part is not known; as seen when new it follows a gamma law of shape a and rate b, b set so that half fail by the
// design life D. No failure by age T turns it into a gamma law of shape a and rate b + T^k, so the part fails within s years with the chance
// 1 - ((b+T^k)/(b+(T+s)^k))^a. It holds for a part that is still as good as its fellows that survived. Source: the conjugate gamma law of the
// Weibull rate, as in any text on Bayesian reliability. It is as good as the design life and its strength: work it with 1 and with 4.
var OutlivedPart = calc.Formula[OutlivedIn, OutlivedOut]{
	ID:       "outlook.outlived",
	Title:    "A part that has outlived its design life",
	About:    "What to believe of a part that is older than anybody meant it to be and has not failed.",
	Holds:    "A part that has been in service all the time and whose failure would have been seen. A part that nobody looked at has not been seen to survive.",
	Accuracy: "As good as the design life and how sure it is; work it with strength 1 and 4 and show both. The ships one can ask are those still afloat, so other ships' parts look better than they were.",
	Sources:  []source.Ref{{Key: "bayes-reliability", At: "gamma prior for the rate of a Weibull law of known shape"}, {Key: "memory", At: "strengths 1 to 4 in words; shape 3 for wear"}},
	Fn:       outlived,
	Steps:    outlivedSteps,
}

func outlived(in OutlivedIn) (out OutlivedOut, err error) {
	law := MixedWithMedian(in.Shape, in.Strength, in.DesignLife)
	sure := WithMedian(in.Shape, in.DesignLife)
	out.PriorRate = law.B
	out.PriorSurvival = Survival(law, in.Age)
	out.Probability = Ahead(law, in.Age, in.Ahead)
	out.PlugIn = Ahead(sure, in.Age, in.Ahead)
	out.MedianLeft = MedianLeft(law, in.Age)
	if in.Age > 0 || in.Shape >= 1 {
		out.Hazard = new(law.Hazard(in.Age))
	}
	out.Says = says(in, law, out)
	if in.Age > 1.5*in.DesignLife {
		out.Warnings = append(out.Warnings, "only ships still afloat are in anyone's sample: those whose part failed early are not there to be asked, so this is the hopeful side")
	}
	if in.Age < in.DesignLife {
		out.Warnings = append(out.Warnings, fmt.Sprintf("it has not yet outlived its design life (%.3g of %.3g y)", in.Age, in.DesignLife))
	}
	return out, nil
}

func says(in OutlivedIn, law Mixed, out OutlivedOut) string {
	s := fmt.Sprintf("Having lasted %.3g years on a design life of %.3g is evidence of a better part: the chance of failing within %.3g years is %.0f %%, not the %.0f %% that the design life alone would say.",
		in.Age, in.DesignLife, in.Ahead, 100*out.Probability, 100*out.PlugIn)
	if out.Probability >= out.PlugIn {
		s = fmt.Sprintf("At %.3g years of a design life of %.3g the chance of failing within %.3g years is %.0f %%; the design life taken as certain would say %.0f %%.",
			in.Age, in.DesignLife, in.Ahead, 100*out.Probability, 100*out.PlugIn)
	}
	switch {
	case in.Shape <= 1:
		return s + " A law of this shape has no wear in it: age by itself makes it no worse."
	case in.Age < law.Peak():
		return s + " The hazard still rises every year."
	}
	return s + " The hazard of this very part still rises every year; that it seems to level off is only because one keeps learning that the part is a good one."
}

func outlivedSteps(in OutlivedIn, out OutlivedOut) []calc.Step {
	if out.Hazard == nil {
		return nil
	}
	return []calc.Step{{Symbol: "hz", Formula: "a*k*T^(k-1)/(b+T^k)", Value: *out.Hazard, Unit: "1/y", Text: "hazard at the age, over all parts it may be"}}
}
