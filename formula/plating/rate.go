package plating

import (
	"oakum/calc"
	"oakum/field"
	"oakum/quantity"
	"oakum/source"
)

// RateIn is the readings of plates that share one original thickness and one limit.
type RateIn struct {
	Readings     []Reading      `key:"readings" label:"thickness readings" most:"200000"`
	Original     *float64       `key:"original" unit:"mm" symbol:"to" over:"0" max:"200" label:"original thickness" help:"as the plans, the first survey or the mill say; may be left out where the basis is first-gauged, and the oldest reading of each place then stands for it"`
	Basis        string         `key:"original_basis" enum:"nominal|first-gauged|rolled-over" default:"nominal" label:"how the original is known" help:"plate was rolled up to 8.5 % (narrow) or 14 % (wide) thicker than ordered, so loss against nominal is understated"`
	OriginalSD   float64        `key:"original_sd" unit:"mm" default:"0" min:"0" max:"20" label:"standard deviation of the original"`
	OriginalDate *quantity.Date `key:"original_date" label:"date of the first gauging, where the original comes from one"`
	Built        *quantity.Date `key:"built" label:"date built"`
	Limit        float64        `key:"limit" unit:"mm" symbol:"tm" over:"0" max:"200" label:"least thickness allowed" help:"plating.wastage gives it by a rule"`
	Horizon      float64        `key:"horizon" unit:"y" default:"10" min:"0" max:"100" label:"years ahead within which a plate at its limit is one to watch" help:"ten years, about two dockings: common practice"`
}

// RateOut is the worst place, and every place.
type RateOut struct {
	Place      string   `key:"place" label:"worst place: the figures here are of this one"`
	Thickness  float64  `key:"thickness" unit:"mm" symbol:"t" label:"thickness at the newest survey, bias taken off"`
	SD         float64  `key:"thickness_sd" unit:"mm" symbol:"st" label:"standard deviation of that"`
	From       float64  `key:"original_used" unit:"mm" symbol:"tu" label:"thickness that loss is counted from"`
	Loss       float64  `key:"loss" unit:"mm" symbol:"dt" label:"loss; negative where the plate reads thicker than the original" expr:"tu-t"`
	LossShare  float64  `key:"loss_share" symbol:"ds" label:"loss as a share of the original" expr:"dt/tu"`
	LossLow    *float64 `key:"loss_over_rolled_low" unit:"mm" symbol:"dl" label:"loss if the plate was rolled 8.5 % over nominal" expr:"1.085*tu-t"`
	LossHigh   *float64 `key:"loss_over_rolled_high" unit:"mm" symbol:"dh" label:"loss if it was rolled 14 % over" expr:"1.14*tu-t"`
	YearsLong  *float64 `key:"years_long" unit:"y" symbol:"Yl" label:"years since built, or since the first gauging"`
	RateLong   *float64 `key:"rate_long" unit:"mm/y" symbol:"rl" label:"rate since then" expr:"dt/Yl"`
	Before     *float64 `key:"thickness_before" unit:"mm" symbol:"tb" label:"thickness at the survey before"`
	YearsShort *float64 `key:"years_short" unit:"y" symbol:"Ys" label:"years between the two newest surveys"`
	RateShort  *float64 `key:"rate_short" unit:"mm/y" symbol:"rs" label:"rate between them" expr:"(tb-t)/Ys"`
	Rate       *float64 `key:"rate" unit:"mm/y" symbol:"r" label:"rate: the higher of the two"`
	RateSD     *float64 `key:"rate_sd" unit:"mm/y" symbol:"sr" label:"standard deviation of the rate"`
	RateP10    *float64 `key:"rate_p10" unit:"mm/y" label:"rate that nine in ten exceed" expr:"r-1.2815515655446004*sr"`
	RateP90    *float64 `key:"rate_p90" unit:"mm/y" label:"rate that one in ten exceeds" expr:"r+1.2815515655446004*sr"`
	Life       *float64 `key:"life" unit:"y" symbol:"L" label:"years to the limit at that rate" expr:"max(t-tm, 0)/r"`
	LifeP10    *float64 `key:"life_p10" unit:"y" label:"years after which the chance of being below the limit is 10 %"`
	LifeP50    *float64 `key:"life_p50" unit:"y" label:"the same, 50 %" expr:"max(t-tm, 0)/r"`
	LifeP90    *float64 `key:"life_p90" unit:"y" label:"the same, 90 %"`
	Below      float64  `key:"below_now" symbol:"Pb" label:"chance of being below the limit at the newest survey"`
	Verdict    string   `key:"verdict" enum:"sound|watch|renew|refer" label:"verdict on all places"`
	Places     []Place  `key:"places" symbol:"every_place" label:"every place, the worst first"`
	Groups     []Group  `key:"groups" symbol:"every_group" label:"the groups" optional:"yes"`

	Warnings calc.Warnings `key:"-"`
	// longer tells that the long rate is the higher.
	longer bool
}

// Rate is the loss of a plate, how fast it goes and how long it lasts.
//
// loss = original - thickness, kept when negative; rate_long = loss / years since built; rate_short = fall between the two newest surveys of the
// same place / years between them; rate = the higher; life = (thickness - limit) / rate. The rate's standard deviation follows from those of the
// two thicknesses and of the two dates (a date known to its year is uniform over that year). The range of life is exact for normal thickness and
// rate: the years after which the chance of being below the limit is 10 and 90 %, the covariance of thickness and rate kept (Fieller).
// It holds for loss in a straight line: a patch that has lost its paint goes faster than its history says. Errors name the reading.
var Rate = calc.Formula[RateIn, RateOut]{
	ID:       "plating.rate",
	Title:    "Loss of a plate and its remaining life",
	About:    "How much of a plate is gone, how fast it goes since she was built and since the last survey, and when it reaches its limit.",
	Holds:    "Loss in a straight line at the places that were read. It says nothing of places that were not, nor of pits between the readings (plating.extreme). Readings are taken as typed; a bias is taken off only where one is entered.",
	Accuracy: "Smooth plate reads to about 0.1 mm (from memory); two surveys 0.5 mm apart give a rate to about 30 %. The ranges count the readings and the dates, not a change of conditions.",
	Sources: []source.Ref{
		{Key: "inspection-calcs", At: "the higher of the long and the short rate; life = (thickness - required) / rate"},
		{Key: "tb-55-1900-201-45", At: "E-11: 3/16 in plate up to 72 in wide runs up to 8.5 % over nominal, 108 to 120 in wide up to 14 %; hardly ever under"},
		{Key: "jsndi-rough", At: "rough pitted plate reads 0.6 to 2.2 mm thick"},
		{Key: "fieller-1954", At: "the interval of a ratio"},
		{Key: "memory", At: "0.1 mm standard deviation of a reading on smooth plate"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       rate,
	Steps:    rateSteps,
}

func rate(in RateIn) (out RateOut, err error) {
	if err := in.check(); err != nil {
		return out, err
	}
	all := places(in)
	worst := all[0]
	for _, p := range all {
		if !p.origin.IsZero() && span(p.origin, p.date) < -sameVisit {
			return out, field.Refuse("readings", "a reading of %s is older than %s, from which loss is counted", p.date, p.origin)
		}
	}
	out = RateOut{
		Place: worst.Place, Thickness: worst.Thickness, SD: worst.SD, From: worst.original, Loss: worst.Loss, LossShare: worst.Loss / worst.original,
		RateLong: worst.RateLong, RateShort: worst.RateShort, Rate: worst.Rate, RateSD: worst.RateSD,
		Life: worst.Life, LifeP10: worst.LifeP10, LifeP50: worst.Life, LifeP90: worst.LifeP90, Below: worst.Below, Verdict: worstVerdict(all),
		Places: all, Groups: groups(all), longer: worst.longBasis,
	}
	if out.Place == "" {
		out.Place = "the one place read"
	}
	if in.Basis == "nominal" {
		out.LossLow, out.LossHigh = new(1.085*out.From-out.Thickness), new(1.14*out.From-out.Thickness)
	}
	if worst.RateLong != nil {
		out.YearsLong = new(worst.yearsLong)
	}
	if worst.RateShort != nil {
		out.Before, out.YearsShort = new(worst.before), new(worst.yearsShort)
	}
	if worst.Rate != nil {
		out.RateP10, out.RateP90 = new(*worst.Rate-z90**worst.RateSD), new(*worst.Rate+z90**worst.RateSD)
	}
	out.Warnings = in.warnings(worst, all)
	return out, nil
}

func (in RateIn) check() error {
	if err := checkReadings(in.Readings); err != nil {
		return err
	}
	switch {
	case in.Original == nil && in.Basis != "first-gauged":
		return field.Refuse("original", "original is missing: give it in mm, or say original_basis first-gauged to count from the oldest reading of each place")
	case in.Original != nil && in.Limit >= *in.Original:
		return field.Refuse("limit", "limit must be less than original (%v >= %v)", field.Q("limit", in.Limit, "mm"), field.Q("original", *in.Original, "mm"))
	case in.Built != nil && in.OriginalDate != nil && in.OriginalDate.Before(*in.Built):
		return field.Refuse("original_date", "original_date (%s) is before built (%s)", in.OriginalDate, in.Built)
	}
	if in.Built == nil {
		return nil
	}
	for i, r := range in.Readings {
		if r.Date.Before(*in.Built) {
			return field.Refuse("readings", "readings[%d] is of %s, before she was built (%s)", i, r.Date, in.Built)
		}
	}
	return nil
}
