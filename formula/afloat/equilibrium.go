package afloat

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/formula/hullform"
	"oakum/source"
)

// EquilibriumIn is a hull and what she weighs.
type EquilibriumIn struct {
	Hull   Hull     `key:"hull" label:"hull"`
	Length *float64 `key:"length" unit:"m" symbol:"L0" over:"0" max:"500" label:"length between perpendiculars"`
	Loading
	Openings []Opening `key:"openings" symbol:"op" optional:"yes" most:"500" label:"openings where water would get in"`
}

// EquilibriumOut is how she comes to rest.
type EquilibriumOut struct {
	Verdict     string   `key:"verdict" enum:"stable|lolls" label:"verdict"`
	Reason      string   `key:"reason" label:"why"`
	DraftFwd    float64  `key:"draft_fwd" unit:"m" symbol:"Tf" label:"draft forward" expr:"T-t/2"`
	DraftAft    float64  `key:"draft_aft" unit:"m" symbol:"Ta" label:"draft aft" expr:"T+t/2"`
	DraftMid    float64  `key:"draft_mid" unit:"m" symbol:"T" label:"draft amidships, on the centreline"`
	Trim        float64  `key:"trim" unit:"m" symbol:"t" label:"trim by the stern"`
	Heel        float64  `key:"heel" unit:"deg" symbol:"phi" label:"heel to port"`
	GM          float64  `key:"gm" unit:"m" symbol:"GM" label:"metacentric height there, free surfaces taken off"`
	GMl         float64  `key:"gm_l" unit:"m" symbol:"GML" label:"the same lengthwise"`
	Volume      float64  `key:"volume" unit:"m3" symbol:"V" label:"volume displaced"`
	Freeboard   *float64 `key:"margin" unit:"m" symbol:"fb" label:"lowest point of deck edge or openings above water"`
	LowestPoint string   `key:"margin_place" label:"where"`

	Warnings calc.Warnings `key:"-"`
}

// Equilibrium is how a ship floats under a loading: buoyancy equal to weight and in one plumb line with it, free in draft, trim and heel, by Newton's
// method to a nanometre. A ship that sinks, finds no rest, lies on her back or has her deck edge under water is refused with the point named.
var Equilibrium = calc.Formula[EquilibriumIn, EquilibriumOut]{
	ID:       "afloat.equilibrium",
	Title:    "How she floats",
	About:    "Drafts, trim, heel and stability of a hull under a given weight and centre of gravity.",
	Holds:    "Any closed hull, any heel; liquids in tanks enter by their free-surface moment at the angle of rest.",
	Accuracy: "Exact for the shape given; a centimetre of centre of gravity lengthwise is worth more than the arithmetic.",
	Sources:  []source.Ref{{Key: "divergence"}, {Key: "derrett"}},
	Cautions: []calc.Caution{calc.Stability},
	Fn:       equilibrium,
	Steps: func(in EquilibriumIn, out EquilibriumOut) []calc.Step {
		return []calc.Step{{Symbol: "T", Value: out.DraftMid, Unit: "m", Text: "solved with trim and heel: buoyancy equal to weight, centres in one plumb line"},
			{Symbol: "V", Formula: "W/rho", Value: out.Volume, Unit: "m3", Text: "volume displaced"}}
	},
	Samples: 40,
}

func equilibrium(in EquilibriumIn) (out EquilibriumOut, err error) {
	if err = in.given(); err != nil {
		return out, err
	}
	form, warnings, err := in.Hull.Form(in.Length)
	if err != nil {
		return out, err
	}
	f, err := form.Equilibrium(in.form())
	if err != nil {
		return out, noRest(err)
	}
	out.DraftFwd, out.DraftAft, out.DraftMid, out.Trim, out.Heel = f.DraftFwd, f.DraftAft, f.Draft, f.Trim, f.Heel
	out.GM, out.GMl, out.Volume = f.GM, f.GML, f.Cut.Volume
	out.Verdict, out.Reason = "stable", fmt.Sprintf("GM is %.3f m", f.GM)
	if f.Loll {
		out.Verdict = "lolls"
		out.Reason = fmt.Sprintf("UNSAFE: upright she has no stability and lies over to %.1f degrees. Weight low, less topweight or pressed-up tanks would change it; do not try to right her with weights on the high side", math.Abs(f.Heel)*180/math.Pi)
		out.Warnings = append(out.Warnings, out.Reason)
	}
	s := lowest(f, in.Openings)
	if !math.IsInf(s.Height, 1) {
		out.Freeboard, out.LowestPoint = &s.Height, s.Name+" at "+s.At.String()
		if s.Height < 0 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("UNSAFE: %s is %.3f m under water: she floods on", out.LowestPoint, -s.Height))
		}
	}
	out.Warnings = append(out.Warnings, warnings...)
	return out, nil
}

// lowest is the lowest of the deck edge and the openings over the water.
func lowest(f hullform.Floating, openings []Opening) hullform.Spot {
	low := f.Lowest
	for i, o := range openings {
		if h := f.Cut.Plane.Height(o.at()); h < low.Height {
			name := o.Name
			if name == "" {
				name = fmt.Sprintf("opening %d", i+1)
			}
			low = hullform.Spot{Name: name, At: o.at(), Height: h}
		}
	}
	return low
}
