package flooding

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// RateIn describes a hole in the side. Give its diameter or its area.
type RateIn struct {
	Diameter   *float64 `key:"diameter" unit:"mm" symbol:"d" over:"0" max:"5000" label:"diameter of the hole"`
	Area       *float64 `key:"area" unit:"mm2" symbol:"A0" over:"0" max:"20e6" label:"area of the hole" help:"instead of a diameter"`
	Head       float64  `key:"head" unit:"m" symbol:"h" min:"0" max:"100" label:"depth of the hole below the outside water"`
	Discharge  float64  `key:"discharge_coefficient" symbol:"C" default:"0.6" over:"0" max:"1" label:"discharge coefficient" help:"0.6 for a sharp edge; 1 is the pessimistic bound"`
	InsideHead float64  `key:"inside_level_head" unit:"m" symbol:"hi" default:"0" min:"0" max:"100" label:"water inside above the hole"`
}

// RateOut is the water coming in.
type RateOut struct {
	HoleArea    float64 `key:"hole_area" unit:"mm2" symbol:"A" label:"area of the hole"`
	NetHead     float64 `key:"net_head" unit:"m" symbol:"H" label:"head that drives the water" expr:"max(h-hi, 0)"`
	Flow        float64 `key:"flow" unit:"m3/s" symbol:"Q" label:"flow" expr:"C*A*sqrt(2*g*H)"`
	FlowGPM     float64 `key:"flow_gpm" unit:"gal/min" symbol:"Qg" label:"flow" expr:"Q"`
	FlowPerHour float64 `key:"flow_per_hour" unit:"m3/h" symbol:"Qh" label:"flow" expr:"Q"`
	FlowUpper   float64 `key:"flow_upper" unit:"m3/s" symbol:"Qu" label:"flow with a coefficient of 1, the pessimistic bound" expr:"A*sqrt(2*g*H)"`

	Warnings calc.Warnings `key:"-"`
}

// Rate is the water through a hole.
//
// Q = C A sqrt(2 g h), with A the area of the hole, h the head over it less the head inside, C the discharge coefficient. It grows with the
// square of the diameter and only with the root of the depth. It holds for a sharp-edged hole small beside its depth; a crack, a rivet hole or
// a seam passes less. Source: Torricelli's law, as the hole tables of damage-control practice use it. A good C is known to about 10 %.
var Rate = calc.Formula[RateIn, RateOut]{
	ID:       "flooding.rate",
	Title:    "Water through a hole",
	About:    "How much water comes in through a hole of a given size at a given depth.",
	Holds:    "A sharp-edged hole, small beside its depth, open to the sea. A crack or seam passes less: treat this as its upper bound.",
	Accuracy: "About 10 % with a fitting coefficient; the figure with coefficient 1 is the bound above.",
	Sources:  []source.Ref{{Key: "torricelli"}, {Key: "hole-table", At: "2 ft and 4 ft rows"}},
	Fn:       rate,
	Steps: func(in RateIn, out RateOut) []calc.Step {
		if in.Area != nil {
			return []calc.Step{{Symbol: "A", Formula: "A0", Value: out.HoleArea, Unit: "m2", Text: "area as given"}}
		}
		return []calc.Step{{Symbol: "A", Formula: "pi*d^2/4", Value: out.HoleArea, Unit: "m2", Text: "area of the round hole"}}
	},
}

func rate(in RateIn) (out RateOut, err error) {
	switch {
	case in.Diameter != nil && in.Area != nil:
		return out, field.Refuse("area", "give the diameter or the area of the hole, not both")
	case in.Area != nil:
		out.HoleArea = *in.Area
	case in.Diameter != nil:
		out.HoleArea = math.Pi * *in.Diameter * *in.Diameter / 4
	default:
		return out, field.Refuse("diameter", "diameter is missing: give the diameter or the area of the hole")
	}
	out.NetHead = max(in.Head-in.InsideHead, 0)
	out.FlowUpper = out.HoleArea * math.Sqrt(2*calc.Gravity*out.NetHead)
	out.Flow = in.Discharge * out.FlowUpper
	out.FlowGPM, out.FlowPerHour = out.Flow, out.Flow
	if in.InsideHead > in.Head {
		out.Warnings = append(out.Warnings, "the water stands higher inside than outside: it runs out, and this sheet shows no inflow")
	}
	return out, nil
}
