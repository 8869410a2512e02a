package afloat

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Change is a weight that comes on board, or goes off where its mass is negative.
type Change struct {
	Name string   `key:"name" optional:"yes" label:"what"`
	Mass float64  `key:"mass" unit:"t" symbol:"m" min:"-600000" max:"600000" label:"mass, on board positive, off negative"`
	X    float64  `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"from the after perpendicular"`
	Y    float64  `key:"y" unit:"m" symbol:"y" default:"0" min:"-60" max:"60" label:"from the centreline, to port"`
	Z    *float64 `key:"z" unit:"m" symbol:"z" min:"-10" max:"150" label:"above the keel"`
}

// WeightChangeIn is a ship and the weights that move on or off her.
type WeightChangeIn struct {
	Changes      []Change `key:"changes" symbol:"ch" most:"10000" label:"weights on and off"`
	Displacement *float64 `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement before"`
	DraftFwd     *float64 `key:"draft_fwd" unit:"m" symbol:"Tf" min:"0" max:"40" label:"draft forward before"`
	DraftAft     *float64 `key:"draft_aft" unit:"m" symbol:"Ta" min:"0" max:"40" label:"draft aft before"`
	LBP          *float64 `key:"lbp" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars"`
	LCF          *float64 `key:"lcf" unit:"m" symbol:"xf" over:"0" max:"500" label:"centre of flotation from the after perpendicular"`
	TPC          *float64 `key:"tpc" unit:"t/cm" symbol:"TPC" over:"0" max:"1000" label:"tonnes per centimetre of immersion"`
	MCT          *float64 `key:"mct" unit:"t.m/cm" symbol:"MCT" over:"0" max:"100000" label:"moment to change trim"`
	GM           *float64 `key:"gm" unit:"m" symbol:"GM" min:"-20" max:"100" label:"GM before, less free surfaces"`
	KG           *float64 `key:"kg" unit:"m" symbol:"KG" min:"0" max:"80" label:"centre of gravity above the keel before"`
	Hull         *Hull    `key:"hull" label:"hull, to find the new state of rest"`
	Mass         *float64 `key:"mass" unit:"t" symbol:"Wm" over:"0" max:"600000" label:"mass before" help:"with a hull"`
	LCG          *float64 `key:"lcg" unit:"m" symbol:"xg" min:"-50" max:"500" label:"centre of gravity before, from the after perpendicular" help:"with a hull"`
	VCG          *float64 `key:"vcg" unit:"m" symbol:"zg" min:"-20" max:"100" label:"centre of gravity before, above the baseline" help:"with a hull"`
	TCG          float64  `key:"tcg" unit:"m" symbol:"yg" default:"0" min:"-30" max:"30" label:"centre of gravity before, to port" help:"with a hull"`
	FreeSurface  float64  `key:"free_surface_moment" unit:"t.m" symbol:"FSM" default:"0" min:"0" max:"10000000" label:"free-surface moment of slack tanks" help:"with a hull"`
	Density      float64  `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"500" max:"1500" label:"density of the water" help:"with a hull"`
}

// WeightChangeOut is how she floats afterwards. Results that need values not given are absent.
type WeightChangeOut struct {
	Verdict      string   `key:"verdict" enum:"stable|unstable|not known" label:"stability after"`
	Reason       string   `key:"reason" label:"why"`
	Form         string   `key:"form" enum:"hand|hull" label:"worked by hand or with the hull"`
	MassChange   float64  `key:"mass_change" unit:"t" symbol:"dW" label:"weight on less weight off"`
	Sinkage      float64  `key:"sinkage" unit:"m" symbol:"s" label:"how much deeper at the centre of flotation"`
	TrimChange   float64  `key:"trim_change" unit:"cm" symbol:"dt" label:"change of trim, by the stern positive"`
	DraftFwd     float64  `key:"draft_fwd" unit:"m" symbol:"Tf1" label:"draft forward after"`
	DraftAft     float64  `key:"draft_aft" unit:"m" symbol:"Ta1" label:"draft aft after"`
	Displacement *float64 `key:"displacement" unit:"t" symbol:"W1" label:"displacement after"`
	VCG          *float64 `key:"vcg" unit:"m" symbol:"KG1" label:"centre of gravity above the keel after"`
	GM           *float64 `key:"gm" unit:"m" symbol:"GM1" label:"GM after"`
	Heel         *float64 `key:"heel" unit:"deg" symbol:"phi" label:"heel after, to port positive"`

	Warnings calc.Warnings `key:"-"`
}

// WeightChange is what weights on and off do to drafts, trim, heel and the centre of gravity.
//
// By hand: sinkage = sum m / TPC, change of trim = sum m (xf - x) / MCT shared out about the centre of flotation, tan heel = sum m y / (W GM). It
// holds for changes small beside the ship (one twentieth), as TPC, MCT, KM and the centre of flotation move with the draft. Source: Derrett. With the hull:
// the state of rest before and after.
var WeightChange = calc.Formula[WeightChangeIn, WeightChangeOut]{
	ID:       "afloat.weight-change",
	Title:    "Weights on and off",
	About:    "How drafts, trim, heel and the centre of gravity change when weights come on board or go off.",
	Holds:    "By hand: changes up to a twentieth of the displacement and heel of a few degrees; hydrostatics, KM among them, taken as constant.",
	Accuracy: "A centimetre or two of draft for small changes where the hydrostatics are good.",
	Sources:  []source.Ref{{Key: "derrett", At: "trim; p. 148"}, {Key: "memory", At: "one twentieth as the limit of the hand form"}},
	Cautions: []calc.Caution{calc.Stability},
	Fn:       weightChange,
	Steps:    weightChangeSteps,
	Samples:  1000,
}

func weightChange(in WeightChangeIn) (out WeightChangeOut, err error) {
	if in.Hull != nil {
		return weightChangeWithHull(in)
	}
	if err = particulars(in); err != nil {
		return out, err
	}
	out.Form = "hand"
	l, lcf := *in.LBP, *in.LCF
	var mx, my, mz float64
	allZ := true
	for _, c := range in.Changes {
		out.MassChange += c.Mass
		mx += c.Mass * (lcf - c.X)
		my += c.Mass * c.Y
		if c.Z == nil {
			allZ = false
		} else {
			mz += c.Mass * *c.Z
		}
	}
	out.Sinkage = out.MassChange / *in.TPC
	out.TrimChange = mx / *in.MCT
	out.DraftAft = *in.DraftAft + out.Sinkage + out.TrimChange*lcf/l
	out.DraftFwd = *in.DraftFwd + out.Sinkage - out.TrimChange*(l-lcf)/l
	if out.DraftAft < 0 || out.DraftFwd < 0 {
		return out, field.Refuse("changes", "by hand a draft comes out below zero (%v forward, %v aft): check the masses and their places, or work it with the hull",
			field.Q("", out.DraftFwd, "m"), field.Q("", out.DraftAft, "m"))
	}
	if in.Displacement != nil {
		w := *in.Displacement + out.MassChange
		if w <= 0 {
			return out, field.Refuse("changes", "more goes off (%v) than the ship weighs (%v)", field.Q("", -out.MassChange, "t"), field.Q("displacement", *in.Displacement, "t"))
		}
		out.Displacement = &w
		weigh(in, &out, allZ, mz, my)
	}
	judgeChange(in, &out)
	return out, nil
}

func weigh(in WeightChangeIn, out *WeightChangeOut, allZ bool, mz, my float64) {
	w := *out.Displacement
	if in.KG != nil && allZ {
		out.VCG = new((*in.Displacement**in.KG + mz) / w)
	}
	if in.GM == nil {
		return
	}
	out.GM = new(*in.GM)
	if out.VCG != nil {
		*out.GM += *in.KG - *out.VCG
	}
	if *out.GM > 0 {
		out.Heel = new(math.Atan(my / (w * *out.GM)))
	}
}

func particulars(in WeightChangeIn) error {
	for _, g := range []struct {
		key, unit string
		value     *float64
	}{{"lbp", "m", in.LBP}, {"lcf", "m from the after perpendicular", in.LCF}, {"draft_fwd", "m", in.DraftFwd}, {"draft_aft", "m", in.DraftAft},
		{"tpc", "t/cm", in.TPC}, {"mct", "t.m/cm", in.MCT}} {
		if g.value == nil {
			return field.Refuse(g.key, "%s is missing: give it in %s, or give the hull with its mass, lcg and vcg", g.key, g.unit)
		}
	}
	if len(in.Changes) == 0 {
		return field.Refuse("changes", "changes is empty: give at least one weight")
	}
	l, lcf := *in.LBP, *in.LCF
	if lcf < 0.25*l || lcf > 0.75*l {
		return field.Refuse("lcf", "lcf is counted from the after perpendicular and lies near the middle of every hull; %v is not between a quarter and three quarters of lbp (%v)",
			field.Q("lcf", lcf, "m"), field.Q("lbp", l, "m"))
	}
	for i, c := range in.Changes {
		if c.X < -0.1*l || c.X > 1.1*l {
			return field.Refuse(fmt.Sprintf("changes[%d].x", i), "%s lies outside the ship: x is %v from the after perpendicular, lbp %v", orUnnamed(c.Name, i), field.Q("", c.X, "m"), field.Q("lbp", l, "m"))
		}
	}
	return nil
}

func orUnnamed(name string, i int) string {
	if name == "" {
		return fmt.Sprintf("weight %d", i+1)
	}
	return name
}

func judgeChange(in WeightChangeIn, out *WeightChangeOut) {
	warn := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	switch {
	case out.GM == nil:
		out.Verdict, out.Reason = "not known", "her stability afterwards needs displacement and gm"
	case *out.GM <= 0:
		out.Verdict = "unstable"
		out.Reason = fmt.Sprintf("UNSAFE: GM afterwards is %.3f m: she will not float upright. Less weight high up, more low down, or slack tanks pressed up would change it", *out.GM)
		warn("%s", out.Reason)
	default:
		out.Verdict, out.Reason = "stable", fmt.Sprintf("GM afterwards is %.3f m", *out.GM)
	}
	if out.GM != nil && out.VCG == nil {
		warn("GM is taken as before the change: give kg, and z of every weight, to have it move with the centre of gravity")
	}
	var moved float64
	for _, c := range in.Changes {
		moved += math.Abs(c.Mass)
	}
	switch {
	case in.Displacement == nil:
		warn("displacement is not given: that the weights are small beside the ship (a twentieth) is not checked")
	case moved > 0.05**in.Displacement:
		warn("the weights come to %.1f %% of the displacement; by hand the limit is 5 %%: work it with the hull", 100*moved / *in.Displacement)
	}
	if out.Heel != nil && math.Abs(*out.Heel) > 10*math.Pi/180 {
		warn("a heel of more than 10 degrees is beyond this formula: work it with the hull")
	}
}

func weightChangeSteps(in WeightChangeIn, out WeightChangeOut) []calc.Step {
	if in.Hull != nil {
		return weightChangeHullSteps(in, out)
	}
	steps := []calc.Step{
		{Symbol: "dW", Formula: "sum(ch, #.m)", Value: out.MassChange, Unit: "kg", Text: "weight on less weight off"},
		{Symbol: "s", Formula: "dW/TPC", Value: out.Sinkage, Unit: "m", Text: "sinkage"},
		{Symbol: "dt", Formula: "sum(ch, #.m*(xf-#.x))/MCT", Value: out.TrimChange, Unit: "m", Text: "change of trim by the stern"},
		{Symbol: "Ta1", Formula: "Ta+s+dt*xf/L", Value: out.DraftAft, Unit: "m", Text: "draft aft"},
		{Symbol: "Tf1", Formula: "Tf+s-dt*(L-xf)/L", Value: out.DraftFwd, Unit: "m", Text: "draft forward"},
	}
	add := func(symbol, formula string, value *float64, unit, text string) {
		if value != nil {
			steps = append(steps, calc.Step{Symbol: symbol, Formula: formula, Value: *value, Unit: unit, Text: text})
		}
	}
	add("W1", "W+dW", out.Displacement, "kg", "displacement after")
	add("KG1", "(W*KG+sum(ch, #.m*#.z))/W1", out.VCG, "m", "centre of gravity after")
	gm := "GM"
	if out.VCG != nil {
		gm = "GM+KG-KG1"
	}
	add("GM1", gm, out.GM, "m", "GM after, KM unchanged")
	add("phi", "atan(sum(ch, #.m*#.y)/(W1*GM1))", out.Heel, "rad", "heel to port")
	return steps
}
