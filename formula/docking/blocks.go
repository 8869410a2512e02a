package docking

import (
	"oakum/calc"
	"oakum/source"
)

// Lump is a stretch of the weight curve, spread evenly.
type Lump struct {
	Name string  `key:"name" optional:"yes" label:"what"`
	X0   float64 `key:"x0" unit:"m" symbol:"x0" min:"-100" max:"600" label:"from"`
	X1   float64 `key:"x1" unit:"m" symbol:"x1" min:"-100" max:"600" label:"to"`
	Mass float64 `key:"mass" unit:"t" symbol:"m" min:"-100000" max:"600000" label:"mass"`
}

// Stiff is a stretch of hull of one bending stiffness.
type Stiff struct {
	X0 float64 `key:"x0" unit:"m" symbol:"x0" min:"-100" max:"600" label:"from"`
	X1 float64 `key:"x1" unit:"m" symbol:"x1" min:"-100" max:"600" label:"to"`
	EI float64 `key:"ei" unit:"N.m2" symbol:"EI" min:"0" max:"1e18" label:"bending stiffness" help:"0 is a rigid hull"`
}

// BlocksIn is a ship dry on her blocks.
type BlocksIn struct {
	Mass       *float64 `key:"mass" unit:"t" symbol:"W0" over:"0" max:"600000" label:"mass of the ship"`
	LCG        *float64 `key:"lcg" unit:"m" symbol:"xg0" min:"-50" max:"500" label:"centre of gravity from the after perpendicular"`
	Blocks     []Block  `key:"blocks" symbol:"blk" most:"2000" label:"keel blocks"`
	Weights    []Lump   `key:"weights" symbol:"wt" optional:"yes" most:"2000" label:"weight curve"`
	Hull       []Stiff  `key:"ei" symbol:"ei" optional:"yes" most:"500" label:"bending stiffness of the hull" help:"without it the hull is rigid"`
	Side       []Block  `key:"side_blocks" symbol:"sd" optional:"yes" most:"2000" label:"side blocks that carry weight"`
	LeaveOut   []int    `key:"leave_out" symbol:"lv" optional:"yes" most:"2000" label:"keel blocks left out, counted from 1 as listed"`
	KeelAft    *float64 `key:"keel_aft" unit:"m" symbol:"ka" min:"-50" max:"500" label:"after end of the keel on blocks"`
	KeelFwd    *float64 `key:"keel_fwd" unit:"m" symbol:"kf" min:"-50" max:"500" label:"fore end of the keel on blocks"`
	FloorLimit *float64 `key:"floor_limit" unit:"kN/m" symbol:"fl" over:"0" max:"100000" label:"load that the dock floor may carry on the block line"`
	BlockLimit *float64 `key:"block_limit" unit:"kN" symbol:"bl" over:"0" max:"100000" label:"load that one block may carry"`
	Knuckle    *float64 `key:"knuckle" unit:"t" symbol:"P" over:"0" max:"100000" label:"upthrust of docking.landing on the first blocks"`
	KnuckleEnd string   `key:"knuckle_end" enum:"aft|fwd" default:"aft" label:"end that touches first"`
}

// BlockLoad is what one block carries.
type BlockLoad struct {
	Number   int      `key:"number" label:"block"`
	Name     string   `key:"name" label:"name"`
	X        float64  `key:"x" unit:"m" symbol:"x" label:"from the after perpendicular"`
	Force    float64  `key:"force" unit:"kN" symbol:"F" label:"load"`
	Pressure float64  `key:"pressure" unit:"MPa" symbol:"p" label:"pressure"`
	Squeeze  *float64 `key:"squeeze" unit:"mm" symbol:"sq" label:"squeeze"`
	Line     float64  `key:"line_load" unit:"kN/m" symbol:"q" label:"load on the block line there"`
	Side     bool     `key:"side" label:"side block"`
	State    string   `key:"state" enum:"carries|lifted|crushed|left out" label:"state"`
}

// Moment is the bending moment of the hull at one place.
type Moment struct {
	X      float64 `key:"x" unit:"m" label:"from the after perpendicular"`
	Moment float64 `key:"moment" unit:"kN.m" label:"bending moment, sagging positive"`
}

// Shear is a shear force along the hull, just abaft and just forward of x.
type Shear struct {
	X   float64 `key:"x" unit:"m" label:"from the after perpendicular"`
	Aft float64 `key:"aft" unit:"kN" label:"shear just abaft"`
	Fwd float64 `key:"fwd" unit:"kN" label:"shear just forward"`
}

// KnuckleLoad is the first touch shared by the first blocks.
type KnuckleLoad struct {
	Blocks   int      `key:"blocks" label:"blocks that share it"`
	Force    float64  `key:"force" unit:"kN" label:"load on each"`
	Pressure float64  `key:"pressure" unit:"MPa" label:"pressure"`
	Used     *float64 `key:"used" label:"of what they may carry"`
}

// BlocksOut is what the blocks carry.
type BlocksOut struct {
	Verdict    Verdict       `key:"verdict" enum:"safe|marginal|unsafe" label:"verdict"`
	Reason     string        `key:"reason" label:"why"`
	Change     string        `key:"change" label:"what would change it"`
	Mass       float64       `key:"mass" unit:"t" symbol:"W" label:"mass carried"`
	LCG        float64       `key:"lcg" unit:"m" symbol:"xg" label:"its centre from the after perpendicular"`
	Line       float64       `key:"block_line" unit:"m" symbol:"L" label:"length of the block line"`
	Offset     float64       `key:"offset" unit:"m" symbol:"e" label:"centre of gravity forward of the middle of the line"`
	Trapezoid  Trapezoid     `key:"trapezoid" symbol:"tz" label:"rigid ship on an even line, for comparison"`
	Peak       *float64      `key:"peak" unit:"kN" symbol:"Fx" label:"largest load on a block"`
	PeakX      *float64      `key:"peak_x" unit:"m" symbol:"xx" label:"where"`
	PeakBefore *float64      `key:"peak_before" unit:"kN" symbol:"F0" label:"largest load with no block left out"`
	Mean       float64       `key:"mean" unit:"kN" symbol:"Fm" label:"mean load on a keel block" expr:"W*g/n"`
	Count      int           `key:"count" symbol:"n" label:"keel blocks in place"`
	Pressure   *float64      `key:"pressure" unit:"MPa" symbol:"px" label:"largest pressure"`
	LineLoad   *float64      `key:"line_load" unit:"kN/m" symbol:"qx" label:"largest load on the block line"`
	Used       *float64      `key:"used" symbol:"u" label:"largest part of a limit used"`
	Loads      []BlockLoad   `key:"loads" symbol:"ld" label:"block by block"`
	Lifted     []float64     `key:"lifted" unit:"m" symbol:"lf" label:"blocks that carry nothing"`
	HullMoment []Moment      `key:"hull_moment" optional:"yes" label:"bending moment of the hull, where a weight curve is given"`
	HullShear  []Shear       `key:"hull_shear" optional:"yes" label:"shear force of the hull, where a weight curve is given"`
	Sagging    *float64      `key:"sagging" unit:"kN.m" symbol:"Ms" label:"largest sagging moment"`
	Hogging    *float64      `key:"hogging" unit:"kN.m" symbol:"Mh" label:"largest hogging moment"`
	OverFwd    *float64      `key:"overhang_fwd" unit:"m" symbol:"of" label:"overhang forward of the last block"`
	OverAft    *float64      `key:"overhang_aft" unit:"m" symbol:"oa" label:"overhang abaft the first block"`
	Knuckles   []KnuckleLoad `key:"knuckle_loads" label:"first touch on the first blocks"`

	Warnings calc.Warnings `key:"-"`
}

// Blocks is what the keel blocks carry.
//
// The ship is a beam with her own weight curve and bending stiffness on springs that only push: each block is its layers in series, k = A / sum(h/E), and
// gives way at the pressure of its weakest layer. Which blocks carry, let go or crush is found by release and iteration. A rigid ship on blocks is
// the moment-area method; on even blocks it is the trapezoid (W/L)(1 +- 6e/L), lifting off beyond a sixth of the line. Shear deflection of the hull,
// the dock's own give and the time timber creeps are left out.
var Blocks = calc.Formula[BlocksIn, BlocksOut]{
	ID:       "docking.blocks",
	Title:    "What the keel blocks carry",
	About:    "The load, pressure and squeeze of every block under the ship, the line load on the dock floor, and the bending of the hull on them.",
	Holds:    "Dry, upright on a straight line of blocks. Their height is true to a millimetre only on paper: a block 5 mm high can carry twice its share, so try the low of single blocks.",
	Accuracy: "Rigid ship: statics. With stiffnesses of timber and hull as well as they are known, 20 to 30 % on single blocks, better on the line.",
	Sources: []source.Ref{{Key: "hetenyi", At: "beams on elastic foundation"}, {Key: "practice", At: "moment-area method, trapezoid"},
		{Key: "memory", At: "timber across the grain, green: white oak 4.6 MPa, Douglas fir 2.6 MPa, named in a warning and never used unasked"}},
	Cautions: []calc.Caution{calc.Docking},
	Fn:       blocks,
	Steps:    blockSteps,
	Samples:  200,
}

func blockSteps(in BlocksIn, out BlocksOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "W", Value: out.Mass, Unit: "kg", Text: "mass given, or the sum of the weight curve"},
		{Symbol: "xg", Value: out.LCG, Unit: "m", Text: "its centre"},
		{Symbol: "L", Value: out.Line, Unit: "m", Text: "from end to end of the keel on blocks, or of the blocks with half a spacing at each end"},
		{Symbol: "e", Value: out.Offset, Unit: "m", Text: "centre of gravity forward of the middle of the line"},
	}
	switch k := 6 * out.Offset / out.Line; {
	case k >= -1 && k <= 1:
		steps = append(steps, calc.Step{Symbol: "qa", Formula: "W/L*(1-6*e/L)", Value: out.Trapezoid.Aft, Unit: "kg/m", Text: "trapezoid, after end"},
			calc.Step{Symbol: "qf", Formula: "W/L*(1+6*e/L)", Value: out.Trapezoid.Fwd, Unit: "kg/m", Text: "trapezoid, fore end"})
	case out.Trapezoid.Contact > 0:
		steps = append(steps, calc.Step{Symbol: "c", Formula: "3*(L/2-abs(e))", Value: out.Trapezoid.Contact, Unit: "m", Text: "length that carries: the rest has lifted off"},
			calc.Step{Symbol: "qp", Formula: "2*W/c", Value: max(out.Trapezoid.Aft, out.Trapezoid.Fwd), Unit: "kg/m", Text: "triangle, its end"})
	}
	if out.Peak == nil {
		return steps
	}
	return append(steps,
		calc.Step{Symbol: "Fx", Value: *out.Peak, Unit: "N", Text: "beam on one-way springs, solved"},
		calc.Step{Symbol: "px", Value: *out.Pressure, Unit: "Pa", Text: "load over bearing area, the largest"},
		calc.Step{Symbol: "qx", Value: *out.LineLoad, Unit: "N/m", Text: "load over the stretch of line a block stands for, the largest"})
}
