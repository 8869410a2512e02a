package estimate

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// EstimateIn is the estimate line by line.
type EstimateIn struct { //nolint:revive // the one word for it: estimate.In would not say of which of the package's methods
	Lines       []Line      `key:"lines" symbol:"lines" most:"1000" label:"lines"`
	Correlation float64     `key:"correlation" symbol:"r" default:"0.2" min:"0" max:"1" label:"correlation of the lines" help:"0.2 is a common default, from memory: one yard, one steel price and one survey make lines go wrong together"`
	Matrix      [][]float64 `key:"correlation_matrix" optional:"yes" label:"correlation of each pair, instead of one for all"`
	Escalation  float64     `key:"escalation" symbol:"e" default:"0" min:"-0.2" max:"1" label:"rise of prices a year"`
	Years       float64     `key:"years" unit:"y" symbol:"Y" default:"0" min:"0" max:"100" label:"years until the money is spent"`
	Bias        *float64    `key:"bias" symbol:"ob" min:"-0.9" max:"5" label:"optimism uplift on the likely sum, instead of a contingency"`
	BiasMix     []BiasPart  `key:"bias_mix" symbol:"mix" optional:"yes" most:"20" label:"optimism uplift by sort of project, instead of a contingency"`
}

// EstimateOut is the estimate as a whole, in prices of the year it is spent.
type EstimateOut struct { //nolint:revive // as EstimateIn
	Factor       float64  `key:"factor" symbol:"f" label:"rise of prices until then" expr:"(1+e)^Y"`
	LikelySum    float64  `key:"likely_sum" unit:"money" symbol:"Ls" label:"sum of the likeliest amounts" expr:"sum(dr, #.likely)"`
	Mean         float64  `key:"mean" unit:"money" symbol:"mu" label:"mean" expr:"sum(dr, #.mean)"`
	SD           float64  `key:"sd" unit:"money" symbol:"sd" label:"standard deviation, exact from the lines and their correlation"`
	P10          float64  `key:"p10" unit:"money" symbol:"P10" label:"one in ten that it costs less"`
	P20          float64  `key:"p20" unit:"money" symbol:"P20" label:"two in ten that it costs less"`
	P30          float64  `key:"p30" unit:"money" symbol:"P30" label:"three in ten that it costs less"`
	P40          float64  `key:"p40" unit:"money" symbol:"P40" label:"four in ten that it costs less"`
	P50          float64  `key:"p50" unit:"money" symbol:"P50" label:"as likely more as less"`
	P60          float64  `key:"p60" unit:"money" symbol:"P60" label:"six in ten that it costs less"`
	P70          float64  `key:"p70" unit:"money" symbol:"P70" label:"seven in ten that it costs less"`
	P80          float64  `key:"p80" unit:"money" symbol:"P80" label:"eight in ten that it costs less"`
	P90          float64  `key:"p90" unit:"money" symbol:"P90" label:"nine in ten that it costs less"`
	Contingency  *float64 `key:"contingency" unit:"money" symbol:"K" label:"contingency to hold so that eight times in ten it is enough" expr:"P80-Ls"`
	Chance       float64  `key:"chance_of_likely_sum" symbol:"pL" label:"chance that the sum of the likeliest amounts is enough"`
	Uplift       *float64 `key:"bias_uplift" symbol:"u" label:"optimism uplift"`
	WithBias     *float64 `key:"with_bias" unit:"money" symbol:"B" label:"likely sum with the optimism uplift" expr:"Ls*(1+u)"`
	ChanceOfBias *float64 `key:"chance_of_with_bias" symbol:"pB" label:"chance, by the lines themselves, that the uplifted sum is enough"`
	MeanSampled  float64  `key:"mean_sampled" unit:"money" symbol:"mus" label:"mean of the draws, beside the exact one"`
	SDSampled    float64  `key:"sd_sampled" unit:"money" symbol:"sds" label:"deviation of the draws, beside the exact one"`
	Points       int      `key:"points" symbol:"np" label:"draws"`
	Drivers      []Driver `key:"drivers" symbol:"dr" label:"what drives the spread, the greatest first"`

	Warnings calc.Warnings `key:"-"`
}

// Driver is one line's part in the whole, in prices of the year it is spent.
type Driver struct {
	Name   string  `key:"name" label:"line"`
	Likely float64 `key:"likely" unit:"money" label:"likeliest"`
	Mean   float64 `key:"mean" unit:"money" label:"mean"`
	SD     float64 `key:"sd" unit:"money" label:"standard deviation"`
	Share  float64 `key:"share" label:"share of the variance of the sum"`
}

// Estimate adds up uncertain lines.
//
// The mean is the sum of the means; the variance the sum over all pairs of r sd sd, r the correlation of the pair and 1 for a line with itself.
// The quantiles are sampled from correlated lines. A triangular line has variance (a^2+m^2+b^2-am-ab-mb)/18; a PERT line the exact variance of
// its beta law, (mean-a)(b-mean)/7, not the classic ((b-a)/6)^2. It holds where low and high are ends that are never passed. Source: GAO Cost
// Estimating and Assessment Guide, chapter on risk and uncertainty; the Treasury review of optimism bias. It is as good as the lines: what
// nobody thought of has no line, so look at money.reference beside it.
var Estimate = calc.Formula[EstimateIn, EstimateOut]{
	ID:       "money.estimate",
	Title:    "What it will cost, and how sure that is",
	About:    "Adds the lines of an estimate with their spread, and says what sum is enough eight times in ten and which lines drive it.",
	Holds:    "Low and high are ends that are never passed. Use either an optimism uplift or a sampled contingency, never both: with an uplift no contingency is given.",
	Accuracy: "Mean and deviation are exact; quantiles are sampled, good to about a thousandth of the deviation for up to a dozen lines. What nobody thought of has no line.",
	Sources: []source.Ref{
		{Key: "gao-cost-guide", At: "table 12 and step 9, risk and uncertainty"}, {Key: "optimism-bias", At: "table 2 and section 3, combined projects"},
		{Key: "sobol-hash"}, {Key: "memory", At: "default correlation 0.2"},
	},
	Fn:      estimate,
	Steps:   estimateSteps,
	Samples: 60,
}

// Bands is Estimate for a caller who reads P10, P50, P80 and P90 alone: each quantile is a search of its own, and the other five are left out, as
// no number. A sheet for people is made by Estimate.
var Bands = func() calc.Formula[EstimateIn, EstimateOut] {
	f := Estimate
	f.Fn = func(in EstimateIn) (EstimateOut, error) { return estimated(in, []int{1, 5, 8, 9}) }
	return f
}()

func estimate(in EstimateIn) (EstimateOut, error) {
	return estimated(in, []int{1, 2, 3, 4, 5, 6, 7, 8, 9})
}

// estimated adds up the lines; tenths are the quantiles to search for.
func estimated(in EstimateIn, tenths []int) (out EstimateOut, err error) {
	if len(in.Lines) == 0 {
		return out, field.Refuse("lines", "lines is empty: an estimate needs at least one line")
	}
	out.Factor = math.Pow(1+in.Escalation, in.Years)
	spreads := make([]Spread, len(in.Lines))
	for i, l := range in.Lines {
		s, bare, err := l.spread(i)
		if err != nil {
			return out, err
		}
		if bare {
			out.Warnings = append(out.Warnings, fmt.Sprintf("line %q came without a range and is taken as certain", l.Name))
		}
		spreads[i] = s.Times(out.Factor)
	}
	joint := NewJoint(spreads, in.Correlation)
	correlation := func(int, int) float64 { return in.Correlation }
	if in.Matrix != nil {
		correlation = func(i, k int) float64 { return in.Matrix[i][k] }
		if joint, err = NewJointOf(spreads, in.Matrix, "correlation_matrix"); err != nil {
			return out, err
		}
	}
	out.moments(in.Lines, spreads, correlation)
	sum := NewSum(joint)
	out.sample(sum, tenths)
	if err := out.uplift(in, sum); err != nil {
		return out, err
	}
	out.warn(in)
	return out, nil
}

// moments fills the exact mean and deviation and each line's share of the variance.
func (out *EstimateOut) moments(lines []Line, spreads []Spread, correlation func(int, int) float64) {
	variance := 0.0
	out.Drivers = make([]Driver, len(spreads))
	sd := make([]float64, len(spreads))
	for i, s := range spreads {
		sd[i] = math.Sqrt(s.Variance())
		out.Drivers[i] = Driver{Name: lines[i].Name, Likely: s.Likely, Mean: s.Mean(), SD: sd[i]}
		out.LikelySum += s.Likely
		out.Mean += s.Mean()
	}
	for i := range spreads {
		own := sd[i] * sd[i]
		for k := range spreads {
			if k != i {
				own += correlation(i, k) * sd[i] * sd[k]
			}
		}
		out.Drivers[i].Share = own
		variance += own
	}
	out.SD = math.Sqrt(max(variance, 0))
	for i := range out.Drivers {
		if variance > 0 {
			out.Drivers[i].Share /= variance
		}
	}
	slices.SortStableFunc(out.Drivers, func(a, b Driver) int { return cmp.Compare(b.Share, a.Share) })
}

// sample fills what needs draws of the sum.
func (out *EstimateOut) sample(sum *Sum, tenths []int) {
	out.Points, out.MeanSampled, out.SDSampled = sum.Points(), sum.Mean, sum.SD
	quantiles := [...]*float64{&out.P10, &out.P20, &out.P30, &out.P40, &out.P50, &out.P60, &out.P70, &out.P80, &out.P90}
	for _, q := range quantiles {
		*q = math.NaN()
	}
	var wg sync.WaitGroup // each looks at the same draws on its own: any number of cores gives the same bits
	for _, n := range tenths {
		wg.Go(func() { *quantiles[n-1] = sum.At(float64(n) / 10) })
	}
	wg.Go(func() { out.Chance = sum.Below(out.LikelySum) })
	wg.Wait()
}

func (out *EstimateOut) warn(in EstimateIn) {
	if out.SD > 0 && math.Abs(out.SDSampled-out.SD) > 0.01*out.SD {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the draws have a deviation of %.4g, the lines one of %.4g: such a correlation can't be had by lines of these shapes", out.SDSampled, out.SD))
	}
	if in.Escalation != 0 && in.Years == 0 {
		out.Warnings = append(out.Warnings, "prices rise, but the years until the money is spent are not given: nothing was added")
	}
	if in.Matrix == nil && in.Correlation == 0 && len(in.Lines) > 1 {
		out.Warnings = append(out.Warnings, "with no correlation every surprise is taken as alone: the spread comes out too small for works of one yard on one ship")
	}
}

func estimateSteps(in EstimateIn, out EstimateOut) []calc.Step {
	sd := calc.Step{Symbol: "sd", Formula: "sqrt((1-r)*sum(dr, #.sd^2)+r*sum(dr, #.sd)^2)", Value: out.SD, Unit: "money", Text: "variance: each line's own, and r sd sd for every pair"}
	if in.Matrix != nil {
		sd.Formula, sd.Text = "", "variance: each line's own, and for every pair its correlation times both deviations"
	}
	steps := []calc.Step{
		sd,
		{Symbol: "P80", Value: out.P80, Unit: "money", Text: fmt.Sprintf("quantiles of %d draws of the sum, evenly spread points, lines joined by a Gaussian copula", out.Points)},
		{Symbol: "pL", Value: out.Chance, Unit: "-", Text: "share of the draws at or below the likely sum"},
	}
	switch {
	case in.Bias != nil:
		steps = append(steps, calc.Step{Symbol: "u", Formula: "ob", Value: *out.Uplift, Unit: "-", Text: "uplift as given"})
	case in.BiasMix != nil:
		steps = append(steps, calc.Step{Symbol: "u", Value: *out.Uplift, Unit: "-", Text: "share of each sort of project times its uplift, added up"})
	}
	return steps
}
