package estimate

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Case is what happened to another ship.
type Case struct {
	Name     string   `key:"name" label:"case" help:"a label; no name is needed"`
	Estimate *float64 `key:"estimate" unit:"money" over:"0" max:"1e15" label:"estimate when it was decided"`
	Outcome  *float64 `key:"outcome" unit:"money" over:"0" max:"1e15" label:"what it cost"`
	Planned  *float64 `key:"days_planned" unit:"d" over:"0" max:"5000" label:"days planned"`
	Taken    *float64 `key:"days_taken" unit:"d" over:"0" max:"5000" label:"days taken"`
	Surveyed *bool    `key:"surveyed" label:"gauged in full before signing"`
	Weight   float64  `key:"weight" default:"1" min:"0" max:"100" label:"likeness to her"`
}

// ReferenceIn is the cases, and one's own estimate.
type ReferenceIn struct {
	Cases       []Case   `key:"cases" symbol:"cases" most:"1000" label:"cases"`
	Estimate    *float64 `key:"own_estimate" unit:"money" symbol:"E" over:"0" max:"1e15" label:"own estimate"`
	Contingency *float64 `key:"own_contingency" unit:"money" symbol:"Kc" min:"0" max:"1e15" label:"own contingency on it"`
	Surveyed    *bool    `key:"own_surveyed" label:"take only cases that were gauged in full before signing (yes), or were not (no)" help:"left out: all cases"`
}

// ReferenceOut is the outside view.
type ReferenceOut struct {
	N        int     `key:"n" symbol:"n" label:"cases with estimate and outcome"`
	Mean     float64 `key:"growth_mean" symbol:"gm" label:"mean growth, outcome over estimate"`
	P10      float64 `key:"growth_p10" symbol:"g10" label:"growth that one case in ten stayed under"`
	P50      float64 `key:"growth_p50" symbol:"g50" label:"growth that half of the cases stayed under"`
	P80      float64 `key:"growth_p80" symbol:"g80" label:"growth that eight cases in ten stayed under"`
	P90      float64 `key:"growth_p90" symbol:"g90" label:"growth that nine cases in ten stayed under"`
	P50Low   float64 `key:"growth_p50_low" symbol:"g50l" label:"low end of the four-in-five band of the middle"`
	P50High  float64 `key:"growth_p50_high" symbol:"g50u" label:"high end of it"`
	P80Low   float64 `key:"growth_p80_low" symbol:"g80l" label:"low end of the four-in-five band of the eight in ten"`
	P80High  float64 `key:"growth_p80_high" symbol:"g80u" label:"high end of it"`
	Uplift50 float64 `key:"uplift_p50" symbol:"u50" label:"uplift on an estimate to be enough in half of the cases" expr:"g50-1"`
	Uplift80 float64 `key:"uplift_p80" symbol:"u80" label:"uplift to be enough in eight of ten" expr:"g80-1"`

	Sum50 *float64 `key:"own_p50" unit:"money" symbol:"E50" label:"own estimate with the uplift for half"`
	Sum80 *float64 `key:"own_p80" unit:"money" symbol:"E80" label:"own estimate with the uplift for eight in ten"`
	Place *float64 `key:"own_place" symbol:"pl" label:"share of the cases that one's own estimate and contingency would have covered"`

	DaysN   int      `key:"days_n" symbol:"nd" label:"cases with days planned and taken"`
	Days    *float64 `key:"days_growth" symbol:"d50" label:"growth of the days that half of the cases stayed under"`
	DaysP80 *float64 `key:"days_growth_p80" symbol:"d80" label:"growth of the days that eight in ten stayed under"`

	ByCase []Growth `key:"by_case" symbol:"bc" label:"case by case, the least growth first"`

	Warnings calc.Warnings `key:"-"`
}

// Growth is the growth of one case.
type Growth struct {
	Name   string  `key:"name" label:"case"`
	Growth float64 `key:"growth" label:"outcome over estimate"`
	Weight float64 `key:"weight" label:"weight"`
	Share  float64 `key:"share_up_to" label:"share of the weight up to this case"`
}

// Reference is the outside view: what happened to others.
//
// The growth of a case is its outcome over its estimate. The p quantile is the least growth at or below which the share p of the weight of all
// cases lies. The band of a quantile is that of the Bayesian bootstrap: the cases' weights are drawn from a Dirichlet law again and again. It
// stands beside one's own estimate and is never mixed into it in silence. Source: reference class forecasting, as the Treasury guidance on
// optimism bias asks for; Rubin, The Bayesian bootstrap, Annals of Statistics 9, 1981. With a handful of cases the band is wide, and says so.
var Reference = calc.Formula[ReferenceIn, ReferenceOut]{
	ID:       "money.reference",
	Title:    "What happened to others",
	About:    "How far other dockings ran over their estimates in money and days, and where one's own estimate and contingency would stand among them.",
	Holds:    "Cases like her, each with the estimate of the day it was decided. Ships that were given up are seldom in the list.",
	Accuracy: "As good as the cases are many and alike: under ten, read the band. It stands beside money.estimate, never inside it.",
	Sources:  []source.Ref{{Key: "optimism-bias", At: "section 3"}, {Key: "bayes-bootstrap"}},
	Fn:       reference,
	Steps:    referenceSteps,
	Samples:  200,
}

func reference(in ReferenceIn) (out ReferenceOut, err error) {
	cases := in.chosen()
	var days []Growth
	for i, c := range in.Cases {
		if !(c.Weight >= 0) {
			return out, field.Refuse(fmt.Sprintf("cases[%d].weight", i), "the weight of case %q must not be negative", c.Name)
		}
	}
	for _, c := range cases {
		if c.Estimate != nil && c.Outcome != nil && c.Weight > 0 {
			out.ByCase = append(out.ByCase, Growth{Name: c.Name, Growth: *c.Outcome / *c.Estimate, Weight: c.Weight})
		}
		if c.Planned != nil && c.Taken != nil && c.Weight > 0 {
			days = append(days, Growth{Name: c.Name, Growth: *c.Taken / *c.Planned, Weight: c.Weight})
		}
	}
	if len(out.ByCase) == 0 {
		return out, field.Refuse("cases", "no case has both an estimate and an outcome: nothing can be said of growth")
	}
	order(out.ByCase)
	order(days)
	out.N, out.DaysN = len(out.ByCase), len(days)
	out.P10, out.P50, out.P80, out.P90 = quantile(out.ByCase, 0.1), quantile(out.ByCase, 0.5), quantile(out.ByCase, 0.8), quantile(out.ByCase, 0.9)
	for i, c := range out.ByCase {
		out.Mean += c.Growth * (c.Share - shareBefore(out.ByCase, i))
	}
	out.P50Low, out.P50High, out.P80Low, out.P80High = bands(out.ByCase)
	out.Uplift50, out.Uplift80 = out.P50-1, out.P80-1
	if in.Estimate != nil {
		out.Sum50, out.Sum80 = new(*in.Estimate*out.P50), new(*in.Estimate*out.P80)
		if in.Contingency != nil {
			out.Place = new(covered(out.ByCase, 1 + *in.Contingency / *in.Estimate))
		}
	}
	if out.DaysN > 0 {
		out.Days, out.DaysP80 = new(quantile(days, 0.5)), new(quantile(days, 0.8))
	}
	out.Warnings = referenceWarnings(in, out, len(cases))
	return out, nil
}

// chosen leaves out the cases that were surveyed otherwise than asked. A case of which that is not known stays in.
func (in ReferenceIn) chosen() []Case {
	if in.Surveyed == nil {
		return in.Cases
	}
	var list []Case
	for _, c := range in.Cases {
		if c.Surveyed == nil || *c.Surveyed == *in.Surveyed {
			list = append(list, c)
		}
	}
	return list
}

// order sorts by growth and fills the shares.
func order(list []Growth) {
	slices.SortStableFunc(list, func(a, b Growth) int { return cmp.Compare(a.Growth, b.Growth) })
	total, sum := 0.0, 0.0
	for _, c := range list {
		total += c.Weight
	}
	for i := range list {
		sum += list[i].Weight
		list[i].Share = sum / total
	}
}

func shareBefore(list []Growth, i int) float64 {
	if i == 0 {
		return 0
	}
	return list[i-1].Share
}

// quantile is the least growth up to which at least the share p of the weight lies.
func quantile(list []Growth, p float64) float64 {
	for _, c := range list {
		if c.Share >= p-1e-12 {
			return c.Growth
		}
	}
	return list[len(list)-1].Growth
}

// covered is the share of the weight with at most that growth.
func covered(list []Growth, growth float64) float64 {
	share := 0.0
	for _, c := range list {
		if c.Growth <= growth*(1+1e-12) {
			share = c.Share
		}
	}
	return share
}

// bands gives the four-in-five bands of the P50 and the P80 by the Bayesian bootstrap: each draw gives every case an exponential weight times its
// own.
func bands(list []Growth) (low50, high50, low80, high80 float64) {
	const draws = 4096
	p50, p80 := make([]float64, draws), make([]float64, draws)
	u := make([]float64, len(list))
	drawn := slices.Clone(list)
	for d := range draws {
		Point(uint32(d), 2, u)
		total, sum := 0.0, 0.0
		for i := range drawn {
			drawn[i].Weight = -math.Log(u[i]) * list[i].Weight
			total += drawn[i].Weight
		}
		for i := range drawn {
			sum += drawn[i].Weight
			drawn[i].Share = sum / total
		}
		p50[d], p80[d] = quantile(drawn, 0.5), quantile(drawn, 0.8)
	}
	slices.Sort(p50)
	slices.Sort(p80)
	return calc.Quantile(p50, 0.1), calc.Quantile(p50, 0.9), calc.Quantile(p80, 0.1), calc.Quantile(p80, 0.9)
}

func referenceWarnings(in ReferenceIn, out ReferenceOut, chosen int) (w calc.Warnings) {
	if out.N < 10 {
		w = append(w, fmt.Sprintf("%d cases only: the growth that eight in ten stay under lies anywhere from %.2f to %.2f", out.N, out.P80Low, out.P80High))
	}
	if left := chosen - out.N; left > 0 {
		w = append(w, fmt.Sprintf("%d cases lack an estimate or an outcome, or have no weight, and are left out", left))
	}
	for _, c := range out.ByCase {
		if c.Growth > 10 || c.Growth < 0.1 {
			w = append(w, fmt.Sprintf("case %q grew %.3g times: are estimate and outcome in the same money?", c.Name, c.Growth))
		}
	}
	if out.Place != nil && *out.Place < 0.8 {
		w = append(w, fmt.Sprintf("one's own estimate with its contingency would have been enough in %.0f of 100 such cases", 100**out.Place))
	}
	if in.Contingency != nil && in.Estimate == nil {
		w = append(w, "the own contingency is given without the own estimate: its place can't be told")
	}
	return w
}

func referenceSteps(in ReferenceIn, out ReferenceOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "g80", Value: out.P80, Unit: "-", Text: "weighted quantiles: the least growth up to which the share of the weight lies; the ordered list stands in the results"},
		{Symbol: "g80u", Value: out.P80High, Unit: "-", Text: "bands: Bayesian bootstrap, 4096 draws of the weights"},
	}
	if out.Sum80 != nil {
		steps = append(steps, calc.Step{Symbol: "E50", Formula: "E*g50", Value: *out.Sum50, Unit: "money", Text: "own estimate at the middle growth"},
			calc.Step{Symbol: "E80", Formula: "E*g80", Value: *out.Sum80, Unit: "money", Text: "own estimate at the growth of eight in ten"})
	}
	if out.Place != nil {
		steps = append(steps, calc.Step{Symbol: "pl", Value: *out.Place, Unit: "-", Text: "share of the weight of cases that grew no more than 1 + own contingency / own estimate"})
	}
	return steps
}
