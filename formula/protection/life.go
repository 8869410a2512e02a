package protection

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// AnodeLifeIn is what the diver saw of an anode.
type AnodeLifeIn struct {
	MassNew     float64  `key:"mass_new" unit:"kg" symbol:"m" over:"0" max:"5000" label:"net mass of one anode when new" help:"without its core"`
	ShareLeft   float64  `key:"share_left" symbol:"q" min:"0" max:"1" label:"share of it left" help:"0.55 for 55 %"`
	Years       float64  `key:"years" unit:"y" symbol:"T" over:"0" max:"100" label:"years since it was fitted"`
	Capacity    float64  `key:"capacity" unit:"A.h/kg" symbol:"c" default:"780" over:"0" max:"3000" label:"charge in a kilogram" help:"zinc 780, aluminium alloy 2000, magnesium 1200 A.h/kg in sea water, from memory"`
	Utilisation float64  `key:"utilisation" symbol:"u" default:"0.85" over:"0" max:"1" label:"share of the mass that works before the rest falls off"`
	DesignLife  *float64 `key:"design_life" unit:"y" symbol:"Td" over:"0" max:"100" label:"life it was fitted for" help:"with it, the reading is against what was planned"`
}

// AnodeLifeOut is what that means.
type AnodeLifeOut struct {
	Used     float64  `key:"mass_used" unit:"kg" symbol:"mu" label:"mass used" expr:"m*(1-q)"`
	Current  float64  `key:"mean_current" unit:"A" symbol:"I" label:"mean current of one anode" expr:"m*(1-q)*c/(T*8760)"`
	Rate     float64  `key:"rate" unit:"kg/y" symbol:"r" label:"mass used a year" expr:"mu/T"`
	Left     *float64 `key:"life_left" unit:"y" symbol:"L" label:"years left at that rate" expr:"max(u-(1-q), 0)*m/r"`
	LifeAll  *float64 `key:"life_whole" unit:"y" symbol:"La" label:"whole life at that rate" expr:"u*m/r"`
	Reading  string   `key:"reading" enum:"barely used|normal|early gone" label:"reading"`
	Meanings []string `key:"causes" optional:"yes" label:"causes to look into"`

	Warnings calc.Warnings `key:"-"`
}

// Without a design life, an anode that would last over 25 years is barely used, one that would last under two is early gone (common practice:
// anodes are fitted for two to ten years). One that has given half of what it can has worked, however slowly.
const (
	longLife  = 25.0
	shortLife = 2.0
)

// AnodeLife reads an anode's wear backwards.
//
// Mean current = mass used * capacity / hours; years left = (utilisation - share used) * mass / rate. Capacity c in A.h/kg, a year of 8760 h. The
// share left is a diver's estimate, good to a tenth at best; give it with a range.
var AnodeLife = calc.Formula[AnodeLifeIn, AnodeLifeOut]{
	ID:       "protection.anode-life",
	Title:    "What an anode's wear says",
	About:    "From how much of an anode is left after how many years: the current it gave, how long it lasts, and whether it worked at all.",
	Holds:    "Even wear from the outside in. Mass judged by eye under fouling is rough: brush it, and measure where you can.",
	Accuracy: "A diver's share left is good to about 0.1; give it as low, likely, high.",
	Sources: []source.Ref{
		{Key: "faraday", At: "charge and mass"},
		{Key: "dnv-rp-b401", At: "utilisation, capacity"},
		{Key: "practice", At: "what barely used and early gone anodes mean"},
	},
	Cautions: []calc.Caution{calc.Diving},
	Fn:       anodeLife,
}

func anodeLife(in AnodeLifeIn) (out AnodeLifeOut, err error) {
	if in.Years < 0.05 {
		return out, field.Refuse("years", "years must be at least a few weeks for wear to show (%v)", field.Q("years", in.Years, "y"))
	}
	share := 1 - in.ShareLeft
	out.Used = in.MassNew * share
	out.Current = in.MassNew * share * in.Capacity / (in.Years * HoursPerYear)
	out.Rate = out.Used / in.Years
	if out.Rate > 0 {
		out.Left = new(max(in.Utilisation-share, 0) * in.MassNew / out.Rate)
		out.LifeAll = new(in.Utilisation * in.MassNew / out.Rate)
	}
	out.read(in, share)
	return out, nil
}

func (out *AnodeLifeOut) read(in AnodeLifeIn, share float64) {
	long, short := longLife, shortLife
	if in.DesignLife != nil {
		long, short = 2**in.DesignLife, 0.6**in.DesignLife
	}
	switch {
	case out.LifeAll == nil || *out.LifeAll > long && share < in.Utilisation/2:
		out.Reading = "barely used"
		out.Meanings = []string{"not bonded to the hull", "painted over", "wrong alloy for this water", "impressed current is fitted and does the work"}
	case *out.LifeAll < short:
		out.Reading = "early gone"
		out.Meanings = []string{"the coating has gone", "bare bronze is joined to the hull", "too few anodes", "stray current"}
	default:
		out.Reading = "normal"
	}
	if share >= in.Utilisation {
		out.Warnings = append(out.Warnings, fmt.Sprintf("past its use: %.0f %% is gone and only %.0f %% works; what was protected since is not known, and the current is a lower bound", 100*share, 100*in.Utilisation))
	}
	if out.LifeAll == nil {
		out.Warnings = append(out.Warnings, "nothing is gone: the anode gave no current, so the steel had none from it")
	}
	if in.Years < 1 && out.LifeAll != nil {
		out.Warnings = append(out.Warnings, "less than a year: a season's water, not a year's")
	}
}
