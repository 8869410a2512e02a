package gland

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

const inch = 0.0254 // m, exact

// RingsIn describes a stuffing box and how its packing is to be cut.
type RingsIn struct {
	Bore      float64  `key:"bore" unit:"mm" symbol:"D" min:"1" max:"3000" label:"bore of the stuffing box"`
	Shaft     float64  `key:"shaft" unit:"mm" symbol:"d" min:"1" max:"3000" label:"diameter of the shaft or its sleeve" help:"measured in the box, where the packing bears"`
	Rings     int      `key:"rings" symbol:"n" default:"5" min:"1" max:"100" label:"number of rings" help:"five or six on a large shaft is common practice; a deep stern box takes many more"`
	Cut       string   `key:"cut" enum:"butt|skive" default:"skive" label:"cut of the ring ends"`
	Allowance float64  `key:"skive_allowance" unit:"mm" symbol:"a0" default:"6.35" min:"0" max:"100" label:"extra length for a skived end"`
	BoxDepth  *float64 `key:"box_depth" unit:"mm" symbol:"hb" over:"0" max:"5000" label:"depth of the box for packing" help:"from the neck ring to the follower when it just enters"`
	Spare     float64  `key:"spare" symbol:"sp" default:"0.1" min:"0" max:"2" label:"spare share to order"`
}

// RingsOut is the packing to order and cut.
type RingsOut struct {
	Section        float64  `key:"section" unit:"mm" symbol:"s" label:"section of the packing, square" expr:"(D-d)/2"`
	RingLength     float64  `key:"ring_length" unit:"mm" symbol:"L" label:"length of a ring on its mean circle" expr:"pi*(d+s)"`
	CutLength      float64  `key:"cut_length" unit:"mm" symbol:"Lc" label:"length to cut"`
	TotalLength    float64  `key:"total_length" unit:"m" symbol:"Lt" label:"length to order, with spare" expr:"n*Lc*(1+sp)"`
	RingsThatFit   *float64 `key:"rings_that_fit" symbol:"nf" label:"whole rings that fit in the box"`
	NearestStock   float64  `key:"nearest_stock" unit:"mm" symbol:"sn" label:"nearest stock section in inch sizes"`
	NearestStockIn float64  `key:"nearest_stock_in" unit:"in" symbol:"si" label:"nearest stock section in inch sizes" expr:"sn"`

	Warnings calc.Warnings `key:"-"`
}

// Rings gives the packing of a gland, to order and to cut.
//
// s = (D - d)/2 and L = pi (d + s), with D the bore of the box, d the shaft or sleeve, s the square section, L the mean circle. It holds for
// square braided packing in a plain box. The joints of neighbouring rings stand 90 degrees apart. Source: the packing chapter of Root Cause
// Failure Analysis, which works a 4 in box on a 2 in shaft. It is as good as the two diameters: a worn sleeve or a pitted box wants a
// measurement at several depths.
var Rings = calc.Formula[RingsIn, RingsOut]{
	ID:       "gland.rings",
	Title:    "Packing to order and cut",
	About:    "Section, ring length and length to order for a packed gland, and how many rings its box takes.",
	Holds:    "Square braided packing in a plain box. Stagger the joints 90 degrees. Stock sections are taken in 1/16 in steps below 1 in and 1/8 in steps above.",
	Accuracy: "As good as the two diameters; measure both at several depths and clock angles. Never let a supplier round the section without saying so.",
	Sources:  []source.Ref{{Key: "root-cause", At: "packing chapter, p. 226"}, {Key: "stern-box", At: "a deep stern box of about 18 rings"}, {Key: "practice"}},
	Cautions: []calc.Caution{calc.Asbestos, calc.Openings},
	Fn:       rings,
	Steps:    ringSteps,
}

func rings(in RingsIn) (out RingsOut, err error) {
	if in.Bore <= in.Shaft {
		return out, field.Refuse("bore", "bore must be larger than shaft (%v <= %v)", field.Q("bore", in.Bore, "mm"), field.Q("shaft", in.Shaft, "mm"))
	}
	out.Section = (in.Bore - in.Shaft) / 2
	out.RingLength = math.Pi * (in.Shaft + out.Section)
	out.CutLength = out.RingLength
	if in.Cut == "skive" {
		out.CutLength += in.Allowance
	}
	out.TotalLength = float64(in.Rings) * out.CutLength * (1 + in.Spare)
	out.NearestStock = stock(out.Section)
	out.NearestStockIn = out.NearestStock
	if in.BoxDepth != nil {
		out.RingsThatFit = new(math.Floor(*in.BoxDepth/out.Section + 1e-9))
	}
	out.Warnings = ringWarnings(in, out)
	return out, nil
}

// stock is the nearest stock section, m: 1/16 in steps below 1 in, 1/8 in steps above, never less than the first step.
func stock(section float64) float64 {
	step := inch / 16
	if section > inch {
		step = inch / 8
	}
	return max(1, math.Round(section/step)) * step
}

// sameSection is how far a section may be off a stock size and still be called that size, m: a tenth of a millimetre, the reading of a
// vernier in a box. Ours.
const sameSection = 0.1e-3

func ringWarnings(in RingsIn, out RingsOut) (w calc.Warnings) {
	if off := out.Section - out.NearestStock; math.Abs(off) > sameSection {
		w = append(w, fmt.Sprintf("the section %.2f mm (%.3f in) is no stock size in inches: the nearest, %.4g in, is %.2f mm too %s; order the section itself or measure again, never round silently",
			out.Section*1e3, out.Section/inch, out.NearestStock/inch, math.Abs(off)*1e3, map[bool]string{true: "small", false: "large"}[off > 0]))
	}
	if out.RingsThatFit != nil && *out.RingsThatFit < float64(in.Rings) {
		w = append(w, fmt.Sprintf("%d rings are wanted, the box takes %g whole ones", in.Rings, *out.RingsThatFit))
	}
	if ratio := out.Section / in.Shaft; ratio < 0.02 || ratio > 0.6 {
		w = append(w, fmt.Sprintf("a section of %.3g times the shaft is unusual: check that bore and shaft are in the same unit", ratio))
	}
	return w
}

func ringSteps(in RingsIn, out RingsOut) []calc.Step {
	cut := calc.Step{Symbol: "Lc", Formula: "L", Value: out.CutLength, Unit: "m", Text: "butt cut: the mean circle itself"}
	if in.Cut == "skive" {
		cut.Formula, cut.Text = "L+a0", "skive cut: the mean circle and the allowance"
	}
	steps := []calc.Step{cut, {Symbol: "sn", Value: out.NearestStock, Unit: "m", Text: "nearest step of 1/16 in below 1 in, of 1/8 in above"}}
	if out.RingsThatFit != nil {
		steps = append(steps, calc.Step{Symbol: "nf", Value: *out.RingsThatFit, Unit: "-", Text: "box depth over section, rounded down to whole rings"})
	}
	return steps
}
