package plating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Faraday's law for iron: atomic mass (IUPAC), two electrons, density of mild steel.
const (
	ironMolarMass = 55.845e-3   // kg/mol, IUPAC standard atomic weight 2021, +-0.002e-3
	faraday       = 96485.33212 // C/mol, exact by the SI of 2019 to these digits
	steelDensity  = 7870.0      // kg/m3, iron; mild steel 7850
	julianYear    = 365.25 * 86400
)

// IronLoss is the steel, in metres a year, that a corrosion current density (A/m2) dissolves.
func IronLoss(density float64) float64 {
	return density * ironMolarMass / (2 * faraday) * julianYear / steelDensity
}

// Exposures are rates of bare steel, m/y a side, as priors where nothing was measured.
var Exposures = map[string]struct {
	Rate   float64
	Source string
}{
	"immersed":      {0.035e-3, "under water"},
	"low-water":     {0.075e-3, "low water zone"},
	"tidal":         {0.075e-3, "tidal zone"},
	"splash":        {0.075e-3, "splash zone"},
	"below-bed":     {0.015e-3, "below the bed"},
	"immersed-long": {0.060e-3, "long-term immersion at 20 degC, taken as linear"},
}

// ResidualLoss is what steel in natural sea water still loses, m/y, held at a potential in V against calomel: 0.001 mm/y at -770 mV, tenfold for
// each 54 mV more positive (Batt and Robinson).
func ResidualLoss(sce float64) float64 { return 1e-6 * math.Pow(10, (sce+0.770)/0.054) }

// freest is the most positive free potential of steel in sea water, V against calomel: beyond it the line of ResidualLoss does not reach.
const freest = -0.60

// CorrosionIn says where the steel is and what protects it.
type CorrosionIn struct {
	Exposure   *string  `key:"exposure" enum:"immersed|low-water|tidal|splash|below-bed|immersed-long" label:"where the steel is" help:"bare steel, one side"`
	Rate       *float64 `key:"rate" unit:"mm/y" symbol:"ro" min:"0" max:"5" label:"rate of bare steel, where known"`
	Density    *float64 `key:"current_density" unit:"mA/m2" symbol:"i" min:"0" max:"50000" label:"or its corrosion current density"`
	Potential  *float64 `key:"potential" unit:"mV" symbol:"Es" min:"-1500" max:"0" label:"or the potential it is held at, against calomel" help:"partly protected steel in natural sea water"`
	Age        *float64 `key:"age" unit:"y" symbol:"a" min:"0" max:"300" label:"years since it was coated, for the loss"`
	Life       float64  `key:"coating_life" unit:"y" symbol:"Tc" default:"0" min:"0" max:"100" label:"years the coating holds"`
	Transition float64  `key:"transition" unit:"y" symbol:"Tt" default:"0" min:"0" max:"100" label:"years over which it then gives way"`
	Sides      int      `key:"sides" symbol:"k" default:"1" min:"1" max:"2" label:"sides exposed"`
}

// CorrosionOut is rate and loss.
type CorrosionOut struct {
	Rate  float64  `key:"rate" unit:"mm/y" symbol:"r" label:"rate of bare steel, one side"`
	Since *float64 `key:"years_bare" unit:"y" symbol:"tb" label:"years since the coating began to give way" expr:"max(a-Tc, 0)"`
	Loss  *float64 `key:"loss" unit:"mm" symbol:"d" label:"loss"`
	Now   *float64 `key:"rate_now" unit:"mm/y" symbol:"rn" label:"rate at that age"`

	Warnings calc.Warnings `key:"-"`
}

// Corrosion gives rates of wastage as priors, before anything was measured.
//
// A corrosion current takes i M/(2 F rho) of iron: 100 mA/m2 is 0.116 mm/y. Bare steel by zone as published for sheet piles. Steel held at a
// potential E (mV SCE) in natural sea water still loses 0.001 * 10^((E + 770)/54) mm/y. Behind a coating that holds Tc years and gives way over Tt,
// the loss is r (t - Tt + Tt exp(-t/Tt)), t the years since Tc. All of it is even loss of an open surface: pits go several times as fast.
var Corrosion = calc.Formula[CorrosionIn, CorrosionOut]{
	ID:       "plating.corrosion",
	Title:    "Rate of wastage, before it is measured",
	About:    "How fast bare or partly protected steel wastes in sea water, and how much is gone behind a coating of a given life.",
	Holds:    "Even loss of open steel in sea water. Not behind doublers, in corners, under fouling, at low water attack by bacteria, or beside bare bronze: there several times as fast.",
	Accuracy: "A factor of two either way; a measured rate beats it.",
	Sources: []source.Ref{
		{Key: "erdc-lr-03-19", At: "p. 7: 0.035, 0.075 and 0.015 mm a side and year"},
		{Key: "melchers-2021", At: "0.06 mm/y at 20 degC in the long run"},
		{Key: "roberge-conversion", At: "1 mA/cm2 = 11.6 mm/y of iron"},
		{Key: "batt-robinson-2002", At: "0.001 mm/y at -770 mV SCE, 54 mV a decade"},
		{Key: "marine-structural-design", At: "eq. 13.48 and 13.49: coating life and transition"},
	},
	Fn:    corrosion,
	Steps: corrosionSteps,
}

func corrosion(in CorrosionIn) (out CorrosionOut, err error) {
	given := 0
	if in.Exposure != nil {
		given++
	}
	for _, x := range []*float64{in.Rate, in.Density, in.Potential} {
		if x != nil {
			given++
		}
	}
	if given != 1 {
		return out, field.Refuse("exposure", "give one of exposure, rate, current_density and potential (%d are given)", given)
	}
	switch {
	case in.Exposure != nil:
		out.Rate = Exposures[*in.Exposure].Rate
	case in.Rate != nil:
		out.Rate = *in.Rate
	case in.Density != nil:
		out.Rate = IronLoss(*in.Density)
	default:
		if *in.Potential > freest {
			return out, field.Refuse("potential", "potential (%v) is more positive than steel corrodes freely at (%v SCE): nothing protects it; give exposure instead", field.Q("potential", *in.Potential, "mV"), field.Q("", freest, "mV"))
		}
		out.Rate = ResidualLoss(*in.Potential)
		if out.Rate > Exposures["immersed"].Rate {
			out.Warnings = append(out.Warnings, fmt.Sprintf("the line gives %.2g mm/y, more than bare steel is taken to lose (0.035): so close to the free potential it overstates", out.Rate*1000))
		}
	}
	if in.Age == nil {
		if in.Life > 0 || in.Transition > 0 {
			return out, field.Refuse("age", "age is missing: how many years since the steel was coated?")
		}
		return out, nil
	}
	out.Since = new(max(*in.Age-in.Life, 0))
	out.Loss = new(float64(in.Sides) * out.Rate * spent(*out.Since, in.Transition))
	now := out.Rate
	if in.Transition > 0 {
		now = out.Rate * -math.Expm1(-*out.Since/in.Transition)
	} else if *in.Age < in.Life {
		now = 0
	}
	out.Now = &now
	return out, nil
}

// spent is the years at full rate that t years of giving way over tt amount to: t - tt + tt exp(-t/tt).
func spent(t, tt float64) float64 {
	if tt == 0 {
		return t
	}
	return max(t+tt*math.Expm1(-t/tt), 0) // the last bit may fall below nought where t is next to nothing
}

func corrosionSteps(in CorrosionIn, out CorrosionOut) []calc.Step {
	rate := calc.Step{Symbol: "r", Value: out.Rate, Unit: "m/y"}
	switch {
	case in.Exposure != nil:
		rate.Text = "published rate: " + Exposures[*in.Exposure].Source
	case in.Rate != nil:
		rate.Formula, rate.Text = "ro", "as given"
	case in.Density != nil:
		rate.Formula, rate.Text = "i*0.055845/(2*96485.33212)*31557600/7870", "Faraday's law: iron, two electrons, 7870 kg/m3"
	default:
		rate.Formula, rate.Text = "0.000001*10^((Es+0.77)/0.054)", "residual rate at the potential held"
	}
	steps := []calc.Step{rate}
	if out.Loss != nil {
		loss := calc.Step{Symbol: "d", Formula: "k*r*tb", Value: *out.Loss, Unit: "m", Text: "the full rate from the end of the coating"}
		if in.Transition > 0 {
			loss.Formula, loss.Text = "k*r*(tb-Tt+Tt*exp(-tb/Tt))", "the rate growing to its full value as the coating gives way"
			if *out.Since < 1e-3*in.Transition { // a difference of near equals: nothing a hand could check
				loss.Formula = ""
			}
		}
		steps = append(steps, loss)
	}
	return steps
}
