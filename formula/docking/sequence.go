package docking

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/source"
)

// SequenceIn is a ship with her hull, the blocks, and the weights as left when she goes out again.
type SequenceIn struct {
	Particulars
	Shape
	BlockSlope float64         `key:"block_slope" unit:"m" symbol:"s" default:"0" min:"-5" max:"5" label:"how much deeper the blocks lie aft than forward, over lbp"`
	KeelAft    *float64        `key:"keel_aft" unit:"m" symbol:"ka" min:"-50" max:"500" label:"after end of the keel on blocks" help:"for the line load; left out: the aftermost block"`
	KeelFwd    *float64        `key:"keel_fwd" unit:"m" symbol:"kf" min:"-50" max:"500" label:"fore end of the keel on blocks"`
	Changes    []afloat.Change `key:"changes" symbol:"ch" optional:"yes" most:"10000" label:"weights on and off in dock"`
	Step       float64         `key:"step" unit:"m" symbol:"dz" default:"0.1" over:"0" max:"5" label:"step of the water level"`
}

// Stage is the ship at one water level.
type Stage struct {
	Direction string   `key:"direction" enum:"docking|undocking" label:"way"`
	Mark      string   `key:"mark" label:"what happens there"`
	Level     float64  `key:"water_level" unit:"m" symbol:"z" label:"water over the blocks amidships"`
	DraftFwd  float64  `key:"draft_fwd" unit:"m" symbol:"Tf" label:"draft forward"`
	DraftAft  float64  `key:"draft_aft" unit:"m" symbol:"Ta" label:"draft aft"`
	Upthrust  float64  `key:"upthrust" unit:"t" symbol:"P" label:"carried by the blocks"`
	Centre    *float64 `key:"centre" unit:"m" symbol:"xp" label:"where, from the after perpendicular"`
	GM        float64  `key:"gm" unit:"m" symbol:"GM" label:"GM left, on the basis of her weight"`
	Moment    float64  `key:"righting_moment" unit:"t.m/rad" symbol:"RM" label:"righting moment left"`
	LineAft   float64  `key:"line_aft" unit:"t/m" symbol:"qa" label:"load at the after end of the blocks"`
	LineFwd   float64  `key:"line_fwd" unit:"t/m" symbol:"qf" label:"load at the fore end of the blocks"`
	Block     *float64 `key:"block" unit:"kN" symbol:"F" label:"largest load on one block"`
}

// SequenceOut is the whole docking and the undocking.
type SequenceOut struct {
	Verdict          Verdict `key:"verdict" enum:"safe|marginal|unsafe" label:"docking"`
	Reason           string  `key:"reason" label:"why"`
	Change           string  `key:"change" label:"what would change it"`
	VerdictUndocking Verdict `key:"verdict_undocking" enum:"safe|marginal|unsafe" label:"undocking, weights as left"`
	ReasonUndocking  string  `key:"reason_undocking" label:"why"`
	ChangeUndocking  string  `key:"change_undocking" label:"what would change it"`
	GMAfloat         float64 `key:"gm_afloat" unit:"m" symbol:"GM0" label:"GM afloat, coming in"`
	GMLeft           float64 `key:"gm_afloat_left" unit:"m" symbol:"GM1" label:"GM afloat, going out"`
	MassLeft         float64 `key:"mass_left" unit:"t" symbol:"W1" label:"mass going out"`
	LCGLeft          float64 `key:"lcg_left" unit:"m" symbol:"xg1" label:"centre of gravity going out, from the after perpendicular"`
	VCGLeft          float64 `key:"vcg_left" unit:"m" symbol:"KG1" label:"centre of gravity going out, above the baseline"`
	TouchLevel       float64 `key:"touch_level" unit:"m" symbol:"zt" label:"water level at first touch"`
	LandingLevel     float64 `key:"landing_level" unit:"m" symbol:"zl" label:"water level when she lies flat"`
	InstabilityLevel float64 `key:"instability_level" unit:"m" symbol:"zi" label:"water level at which she has no stability left, docking"`
	LiftLevel        float64 `key:"lift_level" unit:"m" symbol:"zo" label:"water level at which one end lifts, undocking"`
	FloatLevel       float64 `key:"float_level" unit:"m" symbol:"zf" label:"water level at which she floats free, undocking"`
	StableLevel      float64 `key:"stable_level" unit:"m" symbol:"zs" label:"water level above which she has stability of her own, undocking"`
	Stages           []Stage `key:"stages" symbol:"st" label:"stage by stage"`

	Warnings calc.Warnings `key:"-"`
}

// Sequence is a docking at each water level, from afloat to dry and back with the weights as left.
//
// At each level the ship is brought to rest by herself: afloat; turning about the first block; flat on all blocks, where the upthrust acts where the
// moments put it and the line load is the trapezoid about that point. Upright, rigid ship, rigid even blocks that meet the keel along the baseline.
var Sequence = calc.Formula[SequenceIn, SequenceOut]{
	ID:    "docking.sequence",
	Title: "The docking step by step",
	About: "Drafts, upthrust, stability and block loads at each water level from afloat to dry, and back out with the weights as left.",
	Holds: "Upright, rigid ship and blocks, a straight block line under a straight keel. Weights on and off in dock are on board for the whole of the undocking. " +
		"Block loads by the trapezoid: docking.blocks has them one by one.",
	Accuracy: "As the hull form and the weights: the exact balance leaves no error of its own. GM no better than the KG.",
	Sources:  []source.Ref{{Key: "derrett", At: "ch. 28"}, {Key: "divergence"}, {Key: "practice", At: "trapezoid"}, {Key: "memory", At: "GM and fall of water that must be left"}},
	Cautions: []calc.Caution{calc.Docking, calc.Stability},
	Fn:       sequence,
	Steps: func(in SequenceIn, out SequenceOut) []calc.Step {
		return []calc.Step{
			{Symbol: "zt", Value: out.TouchLevel, Unit: "m", Text: "draft over the first block, afloat"},
			{Symbol: "zl", Value: out.LandingLevel, Unit: "m", Text: "keel along the blocks with all the upthrust still at the first; solved"},
			{Symbol: "zi", Value: out.InstabilityLevel, Unit: "m", Text: "righting moment nil; solved with the hull at each level"},
			{Symbol: "zo", Value: out.LiftLevel, Unit: "m", Text: "as for landing, weights as left"},
			{Symbol: "zf", Value: out.FloatLevel, Unit: "m", Text: "as for first touch, weights as left"},
		}
	},
	Samples: 40,
}

func sequence(in SequenceIn) (out SequenceOut, err error) {
	if in.Hull == nil {
		return out, field.Refuse("hull", "hull is missing: the docking is worked with the hull at each water level; docking.landing takes hydrostatics by hand")
	}
	d, warnings, err := in.Shape.lowering(in.Particulars, in.BlockSlope)
	if err != nil {
		return out, err
	}
	down, err := in.run(d, "docking", &out)
	if err != nil {
		return out, err
	}
	left, err := in.left(d)
	if err != nil {
		return out, err
	}
	up, err := in.run(left, "undocking", &out)
	if err != nil {
		return out, err
	}
	slices.Reverse(up)
	out.Stages = slices.Concat(down, up)
	out.MassLeft, out.LCGLeft, out.VCGLeft = left.w, left.xg, left.kg
	out.Warnings = append(out.Warnings, warnings...)
	return out, nil
}

// left is the ship with the weights as left.
func (in SequenceIn) left(d lowering) (lowering, error) {
	w, x, z := d.w, d.w*d.xg, d.w*d.kg
	for i, c := range in.Changes {
		if c.Z == nil {
			return d, field.Refuse(fmt.Sprintf("changes[%d].z", i), "the height of %s above the keel is missing: give z in m", nameOf(c, i))
		}
		w, x, z = w+c.Mass, x+c.Mass*c.X, z+c.Mass**c.Z
	}
	if w <= 0 {
		return d, field.Refuse("changes", "more goes off than the ship weighs (%v)", field.Q("mass", d.w, "t"))
	}
	d.w, d.xg, d.kg = w, x/w, z/w
	if !(d.aft < d.xg && d.xg < d.fwd) {
		return d, field.Refuse("changes", "with the weights as left her centre of gravity (%v) no longer stands over the blocks (%v to %v)", field.Q("", d.xg, "m"), field.Q("", d.aft, "m"), field.Q("", d.fwd, "m"))
	}
	return d, nil
}

func nameOf(c afloat.Change, i int) string {
	if c.Name != "" {
		return c.Name
	}
	return fmt.Sprintf("weight %d", i+1)
}

// run works the levels from afloat down to dry and judges them.
func (in SequenceIn) run(d lowering, way string, out *SequenceOut) ([]Stage, error) {
	up, err := d.afloat()
	if err != nil {
		return nil, err
	}
	flat := d.landing(up)
	x := d.first(up)
	touch, landed := d.levelOver(x, up.draftAt(x, d.length)), d.levelOver(x, flat.draftAt(x, d.length))
	unstable, ok := d.unstable(up, flat)
	if !ok {
		unstable = 0
	}
	levels, err := in.levels(touch, landed, unstable)
	if err != nil {
		return nil, err
	}
	var stages []Stage
	for _, z := range levels {
		s := in.show(d, d.at(z, up, flat), z)
		s.Direction, s.Mark = way, mark(z, touch, landed, unstable, way)
		stages = append(stages, s)
	}
	v, reason, change := judgeRun(in, d, up, flat, unstable, ok)
	if way == "docking" {
		out.Verdict, out.Reason, out.Change = v, reason, change
		out.GMAfloat, out.TouchLevel, out.LandingLevel, out.InstabilityLevel = up.gm, touch, landed, unstable
	} else {
		out.VerdictUndocking, out.ReasonUndocking, out.ChangeUndocking = v, "going out: "+reason, change
		out.GMLeft, out.FloatLevel, out.LiftLevel, out.StableLevel = up.gm, touch, landed, unstable
	}
	if v != Safe {
		out.Warnings = append(out.Warnings, map[bool]string{true: reason, false: "going out: " + reason}[way == "docking"])
	}
	return stages, nil
}

// levels are even steps from a little above first touch to dry, with the marks between.
func (in SequenceIn) levels(touch, landed, unstable float64) ([]float64, error) {
	n := int(math.Ceil(touch / in.Step))
	if n > 2000 {
		return nil, field.Refuse("step", "step %v makes more than 2000 stages from %v down", field.Q("step", in.Step, "m"), field.Q("", touch, "m"))
	}
	marks := []float64{touch, landed, unstable}
	list := []float64{touch + in.Step}
	for i := n; i >= 0; i-- {
		z := float64(i) * in.Step
		if z < touch {
			list = append(list, z)
		}
	}
	for _, m := range marks {
		list = insert(list, m)
	}
	return list, nil
}

// insert puts a level into a falling list, once.
func insert(list []float64, m float64) []float64 {
	for i, z := range list {
		if math.Abs(z-m) < 1e-9 {
			return list
		}
		if m > z {
			return append(list[:i:i], append([]float64{m}, list[i:]...)...)
		}
	}
	return append(list, m)
}

func mark(z, touch, landed, unstable float64, way string) string {
	near := func(m float64) bool { return math.Abs(z-m) < 1e-9 }
	words := map[bool][4]string{true: {"first touch", "lies flat", "no stability left from here down", "dry"}, false: {"floats free", "one end lifts", "no stability below this", "dry"}}[way == "docking"]
	switch {
	case near(unstable) && unstable > 0:
		return words[2]
	case near(landed):
		return words[1]
	case near(touch):
		return words[0]
	case near(0):
		return words[3]
	}
	return ""
}

// show puts a stage in the terms of the trade.
func (in SequenceIn) show(d lowering, r resting, level float64) Stage {
	s := Stage{Level: level, DraftFwd: r.draft - r.trim/2, DraftAft: r.draft + r.trim/2, Upthrust: max(r.p, 0), GM: r.gm, Moment: r.moment}
	if r.p <= 0 || math.IsNaN(r.at) {
		return s
	}
	x := min(max(r.at, d.aft), d.fwd)
	s.Centre = &x
	blocks := d.fwd - d.aft
	if math.Abs(x-d.aft) < 1e-6*blocks || math.Abs(x-d.fwd) < 1e-6*blocks {
		s.Block = new(r.p * calc.Gravity) // all on the end block
		return s
	}
	aft, fwd := in.keel(d)
	t := trapezoid(r.p, fwd-aft, x-(aft+fwd)/2)
	s.LineAft, s.LineFwd = t.Aft, t.Fwd
	if n := len(in.Blocks); n > 1 {
		s.Block = new(max(t.Aft, t.Fwd) * blocks / float64(n-1) * calc.Gravity)
	}
	return s
}

// keel is the line that carries: from end to end of the keel where that is given, as docking.blocks has it, or else from the first block to the last.
func (in SequenceIn) keel(d lowering) (aft, fwd float64) {
	if in.KeelAft != nil && in.KeelFwd != nil && *in.KeelFwd > *in.KeelAft {
		return *in.KeelAft, *in.KeelFwd
	}
	return d.aft, d.fwd
}

func judgeRun(in SequenceIn, d lowering, up, flat resting, unstable float64, ok bool) (Verdict, string, string) {
	l := LandingIn{Particulars: in.Particulars, Shape: in.Shape, BlockSlope: in.BlockSlope}
	var o LandingOut
	o.fromHull(d, up, flat)
	o.ends(l, d, up, flat, unstable, ok)
	o.Margin = d.levelOver(d.first(up), flat.draftAt(d.first(up), d.length)) - unstable
	o.judgeHull(l, d, up, flat)
	return o.Verdict, o.Reason, o.Change
}
