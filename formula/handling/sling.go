package handling

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// SlingIn describes a lift on slings of equal legs.
type SlingIn struct {
	Mass    float64  `key:"mass" unit:"kg" symbol:"m" min:"0.1" max:"1e6" label:"mass lifted, gear included"`
	Legs    int      `key:"legs" symbol:"nl" min:"1" max:"8" label:"legs of the sling"`
	Angle   float64  `key:"angle" unit:"deg" symbol:"a" min:"30" max:"90" label:"angle of a leg to the horizontal"`
	Counted *int     `key:"counted_legs" symbol:"n0" min:"1" max:"8" label:"legs that are counted on" help:"two at most where not given: a stiff load hangs on two"`
	Dynamic float64  `key:"dynamic" symbol:"kd" default:"1.1" min:"1" max:"3" label:"factor for jerks"`
	WLL     *float64 `key:"wll" unit:"kg" symbol:"wl" min:"1" max:"1e6" label:"working load limit of a leg, by its tag"`
}

// SlingOut is what one leg carries.
type SlingOut struct {
	Counted    float64  `key:"counted_legs_taken" unit:"1" symbol:"n" label:"legs counted on"`
	LegTension float64  `key:"leg_tension" unit:"N" symbol:"T" label:"tension in a leg" expr:"m*g*kd/(n*sin(a))"`
	LegLoad    float64  `key:"leg_load" unit:"kg" symbol:"ml" label:"the same as a mass" expr:"T/g"`
	Used       *float64 `key:"used" symbol:"us" label:"load over working load limit" expr:"ml/wl"`

	Warnings calc.Warnings `key:"-"`
}

// Sling gives the tension in a leg of a sling.
//
// T = W k/(n sin a), a the angle to the horizontal, n the legs counted on, k for jerks. It holds for legs of equal length and angle round the
// centre of gravity. Below 30 degrees it is refused: the tension runs away. Source: wire-rope practice. Where the centre of gravity lies off
// the hook one leg carries more.
var Sling = calc.Formula[SlingIn, SlingOut]{
	ID:       "handling.sling",
	Title:    "Tension in a sling",
	About:    "What each leg of a sling carries at its angle.",
	Holds:    "Equal legs round the centre of gravity, angle to the horizontal of 30 degrees or more. Chokes, sharp edges and bends take off more.",
	Accuracy: "Exact for equal legs; a few degrees at a flat angle change much.",
	Sources:  []source.Ref{{Key: "wire-rope-practice", At: "load on a leg by its angle"}, {Key: "practice", At: "two legs counted on, 1.1 for jerks"}},
	Cautions: []calc.Caution{calc.Lifting},
	Fn:       sling,
	Steps: func(in SlingIn, out SlingOut) []calc.Step {
		if in.Counted != nil {
			return []calc.Step{{Symbol: "n", Formula: "n0", Value: out.Counted, Unit: "-", Text: "as given"}}
		}
		return []calc.Step{{Symbol: "n", Formula: "min(nl, 2)", Value: out.Counted, Unit: "-", Text: "two at most"}}
	},
}

func sling(in SlingIn) (out SlingOut, err error) {
	out.Counted = float64(min(in.Legs, 2))
	if in.Counted != nil {
		if *in.Counted > in.Legs {
			return out, field.Refuse("counted_legs", "counted_legs must not be more than legs (%d > %d)", *in.Counted, in.Legs)
		}
		out.Counted = float64(*in.Counted)
		if *in.Counted > 2 {
			out.Warnings = append(out.Warnings, "more than two legs share a load only where something evens them out")
		}
	}
	if in.Legs == 1 && in.Angle < 89*math.Pi/180 {
		out.Warnings = append(out.Warnings, "a single leg hangs upright: at an angle the load swings until it does")
	}
	out.LegTension = in.Mass * calc.Gravity * in.Dynamic / (out.Counted * math.Sin(in.Angle))
	out.LegLoad = out.LegTension / calc.Gravity
	if in.WLL != nil {
		out.Used = new(out.LegLoad / *in.WLL)
		if *out.Used > 1 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("unsafe: a leg would carry %.2f times its working load limit", *out.Used))
		}
	} else {
		out.Warnings = append(out.Warnings, "no working load limit is given: read it off the tag of the sling")
	}
	return out, nil
}
