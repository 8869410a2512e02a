package flooding

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// SillIn is an opening between two spaces, or between a space and the sea. Heights count from one datum.
type SillIn struct {
	From      float64  `key:"level_from" unit:"m" symbol:"z1" min:"-100" max:"100" label:"water level on one side"`
	To        float64  `key:"level_to" unit:"m" symbol:"z2" min:"-100" max:"100" label:"water level on the other"`
	Sill      float64  `key:"sill" unit:"m" symbol:"zs" min:"-100" max:"100" label:"height of the sill, or of the hole"`
	Width     *float64 `key:"width" unit:"m" symbol:"b" over:"0" max:"100" label:"width of the opening"`
	Height    *float64 `key:"height" unit:"m" symbol:"hd" over:"0" max:"50" label:"height of the opening over its sill" help:"left out: open upwards without end"`
	Area      *float64 `key:"area" unit:"mm2" symbol:"A0" over:"0" max:"20e6" label:"area of a small hole, instead of a width"`
	Discharge float64  `key:"discharge_coefficient" symbol:"C" default:"0.6" over:"0" max:"1" label:"discharge coefficient" help:"0.6 for a sharp edge; 1 is the pessimistic bound"`
}

// SillOut is the water that passes.
type SillOut struct {
	Head        float64 `key:"head" unit:"m" symbol:"h" label:"water over the sill on the higher side" expr:"max(max(z1, z2)-zs, 0)"`
	Drop        float64 `key:"drop" unit:"m" symbol:"dh" label:"difference of levels that drives the water" expr:"abs(max(z1, zs)-max(z2, zs))"`
	Flow        float64 `key:"flow" unit:"m3/s" symbol:"Q" label:"flow from the one to the other, negative the other way"`
	FlowPerHour float64 `key:"flow_per_hour" unit:"m3/h" symbol:"Qh" label:"flow" expr:"Q"`
	Drowned     bool    `key:"drowned" label:"water stands over the sill on both sides"`
}

// Sill is the water that runs over a sill, through a doorway or through a small hole between two spaces.
//
// Every strip dz of the opening passes C b dz sqrt(2 g dh), dh being the difference of level over that strip: what stands above the lower of the two
// waters runs freely, what is under both is driven by their difference. Summed over the height: freely over a sill Q = 2/3 C b sqrt(2 g) h^1.5, the
// formula of the sharp-crested weir; drowned Q = C b sqrt(2 g) (dh a + 2/3 dh^1.5), a the part under both. A small hole is one strip at its height.
var Sill = calc.Formula[SillIn, SillOut]{
	ID:       "flooding.sill",
	Title:    "Water over a sill",
	About:    "How much water runs over a sill or through a door, hatch or hole from one space to the next, free or drowned.",
	Holds:    "Both sides vented, water at rest before and behind, a sharp-edged opening narrow beside the spaces. A trickle of a few millimetres clings and runs slower.",
	Accuracy: "Over a clean sill 5 %; through a door with fittings in the way 10 to 20 %.",
	Sources:  []source.Ref{{Key: "torricelli"}, {Key: "water-measurement", At: "ch. 7, weirs: suppressed rectangular weir of Francis"}},
	Cautions: []calc.Caution{calc.Openings},
	Fn:       overSill,
	Steps: func(in SillIn, out SillOut) []calc.Step {
		q := calc.Step{Symbol: "Q", Value: out.Flow, Unit: "m3/s", Text: "over the whole height of the opening, strip by strip: free above the lower water, driven by the difference under both"}
		switch {
		case in.Area != nil:
			q.Formula, q.Text = "C*A0*sqrt(2*g*dh)*"+sign(in), "the hole as one strip at its height"
		case in.Height == nil && !out.Drowned:
			q.Formula, q.Text = "2/3*C*b*sqrt(2*g)*h^1.5*"+sign(in), "freely over the sill"
		}
		return []calc.Step{q}
	},
}

func sign(in SillIn) string {
	if in.From < in.To {
		return "(-1)"
	}
	return "1"
}

func overSill(in SillIn) (out SillOut, err error) {
	w := Way{Sill: in.Sill, Top: math.Inf(1), C: in.Discharge}
	switch {
	case in.Width != nil && in.Area != nil:
		return out, field.Refuse("area", "give the width or the area of the opening, not both")
	case in.Area != nil:
		w.Area = *in.Area
	case in.Width != nil:
		w.Width = *in.Width
	default:
		return out, field.Refuse("width", "width is missing: give the width of the opening, or the area of a small hole")
	}
	if in.Height != nil {
		w.Top = in.Sill + *in.Height
	}
	out.Head = max(max(in.From, in.To)-in.Sill, 0)
	out.Drop = math.Abs(max(in.From, in.Sill) - max(in.To, in.Sill))
	out.Flow = w.Flow(in.From, in.To)
	out.FlowPerHour = out.Flow
	out.Drowned = min(in.From, in.To) > in.Sill
	return out, nil
}

// Way is an opening between two waters, for solvers: from Sill up to Top over a Width, or a small hole of an Area at Sill.
type Way struct {
	Sill, Top float64 // m
	Width     float64 // m
	Area      float64 // m2
	C         float64
}

// Flow is what runs from level a to level b, m3/s; negative from b to a.
func (w Way) Flow(a, b float64) float64 { return w.flow(a, b, 0) }

// flow is Flow with its root rounded off within a soft difference of level (m), so that a solver can close in on levels that meet.
func (w Way) flow(a, b, soft float64) float64 {
	if a < b {
		return -w.flow(b, a, soft)
	}
	a, b = max(a, w.Sill), max(b, w.Sill)
	if a <= b || w.Width > 0 && w.Top <= w.Sill {
		return 0
	}
	root := func(dh float64) float64 { return dh / math.Sqrt(math.Hypot(dh, soft)) }
	k := w.C * math.Sqrt(2*calc.Gravity)
	if w.Width == 0 {
		return k * w.Area * root(a-b)
	}
	low := min(b, w.Top)
	free := math.Pow(a-low, 1.5) - math.Pow(max(a-w.Top, 0), 1.5)
	if b >= w.Top {
		free = 0
	}
	return k * w.Width * (2.0/3*free + (low-w.Sill)*root(a-b))
}
