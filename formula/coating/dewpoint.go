package coating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/source"
)

// Limits are what the air and the steel must keep to.
type Limits struct {
	Margin   float64  `key:"margin_wanted" unit:"K" symbol:"mw" default:"3" min:"0" max:"20" label:"how far the steel must stand over the dew point"`
	Humidity float64  `key:"humidity_limit" unit:"%" symbol:"hl" default:"85" over:"0" max:"100" label:"highest relative humidity"`
	Coldest  *float64 `key:"steel_least" unit:"degC" symbol:"sl" min:"-30" max:"40" label:"coldest steel the paint allows" help:"from the paint's sheet; many epoxies stop at 5 to 10 degC"`
	Hottest  *float64 `key:"steel_most" unit:"degC" symbol:"sm" min:"0" max:"90" label:"hottest steel the paint allows"`
}

// Magnus is a pair of constants of the saturation pressure over water, exp(a t/(b + t)).
type Magnus struct{ A, B float64 }

// The pairs: that of the WMO's guide, -45 to 60 degC, and one that many tables of the trade were made with.
var (
	WMO   = Magnus{17.62, 243.12}
	Older = Magnus{17.27, 237.7}
)

// DewPoint in degC of air of temperature t (degC) and relative humidity h (a fraction over 0).
func (m Magnus) DewPoint(t, h float64) float64 {
	y := math.Log(h) + m.A*t/(m.B+t)
	return m.B * y / (m.A - y)
}

// blocks says why the limits forbid painting; nothing where they allow it.
func (l Limits) blocks(steel, dew, humidity float64) (why []string) {
	const bits = 1e-9
	if steel-dew < l.Margin-bits {
		why = append(why, fmt.Sprintf("steel is %.1f degrees over the dew point, %.3g wanted", steel-dew, l.Margin))
	}
	if humidity > l.Humidity+bits {
		why = append(why, fmt.Sprintf("humidity %.0f %% is over %.0f %%", 100*humidity, 100*l.Humidity))
	}
	if l.Coldest != nil && steel < *l.Coldest-bits {
		why = append(why, fmt.Sprintf("steel at %.1f degC is colder than %.3g", steel, *l.Coldest))
	}
	if l.Hottest != nil && steel > *l.Hottest+bits {
		why = append(why, fmt.Sprintf("steel at %.1f degC is hotter than %.3g", steel, *l.Hottest))
	}
	return why
}

// DewPointIn is the air and the steel.
type DewPointIn struct {
	Air      float64  `key:"air" unit:"degC" symbol:"t" min:"-30" max:"60" label:"air"`
	Humidity float64  `key:"humidity" unit:"%" symbol:"h" over:"0" max:"100" label:"relative humidity"`
	Steel    *float64 `key:"steel" unit:"degC" symbol:"ts" min:"-30" max:"90" label:"steel, the coldest spot of what is to be painted" help:"left out: the dew point alone, and no leave to paint"`
	Constant string   `key:"constants" enum:"wmo|17.27-237.7" default:"wmo" label:"constants of the formula"`
	Limits
}

// DewPointOut is the dew point and whether to paint.
type DewPointOut struct {
	DewPoint float64  `key:"dew_point" unit:"degC" symbol:"td" label:"dew point"`
	Margin   *float64 `key:"margin" unit:"K" symbol:"m" label:"steel over dew point" expr:"ts-td"`
	Go       bool     `key:"go" label:"conditions allow painting"`
	Reasons  []string `key:"reasons" optional:"yes" label:"why not"`

	Warnings calc.Warnings `key:"-"`
}

// Dew is the dew point, and whether it allows painting.
//
// y = ln h + a t/(b + t), dew point = b y/(a - y), a = 17.62 and b = 243.12 degC over water (WMO). Painting is allowed with the steel 3 degrees or more
// over the dew point (ISO 8502-4) and at most 85 % relative humidity, and within the limits of the paint where they are given. It holds for that
// moment and that spot: read again every few hours, and where the steel is coldest. Good to 0.1 degC, a hand gauge to 0.5.
var Dew = calc.Formula[DewPointIn, DewPointOut]{
	ID:       "coating.dewpoint",
	Title:    "Dew point, and whether to paint",
	About:    "The dew point of the air, how far the steel stands over it, and whether that allows painting.",
	Holds:    "That moment and that spot. Inside a hull in the water the steel is as cold as the sea: it sweats when the air is warm.",
	Accuracy: "0.1 degC by the formula; 2 % of humidity are 0.4 degC.",
	Sources: []source.Ref{
		{Key: "wmo-8", At: "annex 4.B: 17.62, 243.12 over water"},
		{Key: "iso-8502-4", At: "3 degC over the dew point"},
		{Key: "practice", At: "at most 85 % relative humidity"},
	},
	Fn: dewPoint,
	Steps: func(in DewPointIn, out DewPointOut) []calc.Step {
		m := in.magnus()
		y := math.Log(in.Humidity) + m.A*in.Air/(m.B+in.Air)
		return []calc.Step{
			{Symbol: "y", Formula: fmt.Sprintf("ln(h)+%v*t/(%v+t)", m.A, m.B), Value: y, Unit: "-", Text: "logarithm of the vapour pressure over that at 0 degC"},
			{Symbol: "td", Formula: fmt.Sprintf("%v*y/(%v-y)", m.B, m.A), Value: out.DewPoint, Unit: "degC", Text: "dew point"},
		}
	},
}

func (in DewPointIn) magnus() Magnus {
	if in.Constant == "17.27-237.7" {
		return Older
	}
	return WMO
}

func dewPoint(in DewPointIn) (out DewPointOut, err error) {
	out.DewPoint = in.magnus().DewPoint(in.Air, in.Humidity)
	if in.Steel != nil {
		out.Margin = new(*in.Steel - out.DewPoint)
		out.Reasons = in.blocks(*in.Steel, out.DewPoint, in.Humidity)
	} else {
		out.Reasons = []string{"the steel was not measured"}
	}
	out.Go = len(out.Reasons) == 0
	out.Warnings = append(out.Warnings, out.Reasons...)
	if out.DewPoint < 0 {
		out.Warnings = append(out.Warnings, "the dew point is below freezing: frost forms a little sooner than dew by this formula")
	}
	if in.Humidity < 0.02 {
		out.Warnings = append(out.Warnings, "a humidity this low: write 78 for 78 %")
	}
	return out, nil
}
