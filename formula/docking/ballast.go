package docking

import (
	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// BallastPlace is a tank or a hold: what may be put in and what may be taken out.
type BallastPlace struct {
	Name  string  `key:"name" label:"place"`
	X     float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"its centre from the after perpendicular"`
	Y     float64 `key:"y" unit:"m" symbol:"y" default:"0" min:"-60" max:"60" label:"to port"`
	Z     float64 `key:"z" unit:"m" symbol:"z" min:"-10" max:"60" label:"above the baseline"`
	On    float64 `key:"on" unit:"t" symbol:"on" default:"0" min:"0" max:"100000" label:"may be put in"`
	Off   float64 `key:"off" unit:"t" symbol:"off" default:"0" min:"0" max:"100000" label:"may be taken out"`
	Solid bool    `key:"solid" default:"false" label:"solid ballast, that may be shifted to another place for solid ballast"`
}

// BallastIn is a ship before a docking, what is wanted of her on the blocks, and where weight may be moved.
type BallastIn struct {
	Mass        float64        `key:"mass" unit:"t" symbol:"W" over:"0" max:"600000" label:"mass of the ship"`
	LCG         float64        `key:"lcg" unit:"m" symbol:"xg" min:"-50" max:"500" label:"centre of gravity from the after perpendicular"`
	VCG         float64        `key:"vcg" unit:"m" symbol:"zg" min:"-20" max:"100" label:"centre of gravity above the baseline"`
	Trim        float64        `key:"trim" unit:"m" symbol:"t" min:"-20" max:"20" label:"trim by the stern"`
	List        float64        `key:"list" unit:"deg" symbol:"phi" default:"0" min:"-30" max:"30" label:"list to port"`
	LCF         float64        `key:"lcf" unit:"m" symbol:"xf" over:"0" max:"500" label:"centre of flotation from the after perpendicular"`
	KM          float64        `key:"km" unit:"m" symbol:"KM" over:"0" max:"300" label:"transverse metacentre above the baseline"`
	MCT         float64        `key:"mct" unit:"t.m/cm" symbol:"MCT" over:"0" max:"100000" label:"moment to change trim"`
	FreeSurface float64        `key:"free_surface_moment" unit:"t.m" symbol:"FSM" default:"0" min:"0" max:"10000000" label:"free-surface moment of slack tanks"`
	KeelAft     float64        `key:"keel_aft" unit:"m" symbol:"ka" min:"-50" max:"500" label:"after end of the keel on blocks"`
	KeelFwd     float64        `key:"keel_fwd" unit:"m" symbol:"kf" min:"-50" max:"500" label:"fore end of the keel on blocks"`
	LineLimit   *float64       `key:"line_limit" unit:"t/m" symbol:"ql" over:"0" max:"2000" label:"load that the block line may carry"`
	TrimLeast   float64        `key:"trim_least" unit:"m" symbol:"t0" default:"0" min:"-20" max:"20" label:"least trim by the stern wanted"`
	TrimMost    float64        `key:"trim_most" unit:"m" symbol:"t1" default:"1" min:"-20" max:"20" label:"largest trim by the stern wanted" help:"about a hundredth of the length, common practice"`
	ListMost    float64        `key:"list_most" unit:"deg" symbol:"phim" default:"0.5" min:"0" max:"10" label:"largest list wanted" help:"common practice"`
	GMRequired  float64        `key:"gm_required" unit:"m" symbol:"GMr" default:"0.15" min:"0" max:"10" label:"GM that must be left when she lies flat" help:"the default is from memory: the naval architect sets it"`
	Places      []BallastPlace `key:"places" symbol:"pl" most:"200" label:"where ballast may go on and off"`
}

// BallastMove is one step of the suggestion.
type BallastMove struct {
	What string  `key:"what" enum:"put in|take out|shift" label:"do"`
	From string  `key:"from" label:"from"`
	To   string  `key:"to" label:"to"`
	Mass float64 `key:"mass" unit:"t" symbol:"m" label:"mass"`
}

// BallastOut is the least ballast that does it.
type BallastOut struct {
	Verdict  string        `key:"verdict" enum:"none needed|enough|not enough" label:"verdict"`
	Reason   string        `key:"reason" label:"why"`
	Moves    []BallastMove `key:"moves" label:"what to move"`
	Moved    float64       `key:"moved" unit:"t" symbol:"M" label:"mass moved in all"`
	MassNow  float64       `key:"mass_now" unit:"t" symbol:"W1" label:"mass afterwards"`
	LCGNow   float64       `key:"lcg_now" unit:"m" symbol:"xg1" label:"centre of gravity afterwards, from the after perpendicular"`
	VCGNow   float64       `key:"vcg_now" unit:"m" symbol:"zg1" label:"centre of gravity afterwards, above the baseline"`
	TrimNow  float64       `key:"trim_now" unit:"m" symbol:"tn" label:"trim by the stern afterwards"`
	ListNow  float64       `key:"list_now" unit:"deg" symbol:"phin" label:"list to port afterwards"`
	LineAft0 float64       `key:"line_aft_before" unit:"t/m" symbol:"qa0" label:"line load at the after end, as she is" expr:"W/(kf-ka)*(1-6*(xg-(ka+kf)/2)/(kf-ka))"`
	LineFwd0 float64       `key:"line_fwd_before" unit:"t/m" symbol:"qf0" label:"line load at the fore end, as she is" expr:"W/(kf-ka)*(1+6*(xg-(ka+kf)/2)/(kf-ka))"`
	LineAft  float64       `key:"line_aft" unit:"t/m" symbol:"qa" label:"line load at the after end, afterwards" expr:"W1/(kf-ka)*(1-6*(xg1-(ka+kf)/2)/(kf-ka))"`
	LineFwd  float64       `key:"line_fwd" unit:"t/m" symbol:"qf" label:"line load at the fore end, afterwards" expr:"W1/(kf-ka)*(1+6*(xg1-(ka+kf)/2)/(kf-ka))"`
	GM       float64       `key:"gm" unit:"m" symbol:"GM" label:"GM left when she lies flat, afterwards"`

	Warnings calc.Warnings `key:"-"`
}

// Ballast is the least ballast that brings a ship to the trim, list, stability and block load wanted for a docking.
//
// A linear program. Unknown is what each place takes in or gives out and what solid ballast goes from one place to another; the mass moved in all is
// made least. Line loads at both ends of the keel by the trapezoid, trim by MCT, list by the moments about the centreline, and the righting moment
// left when she lies flat, (W - P) KM - W KG - FSM with P = MCT t / l, are linear in what is moved. KM, MCT and the centre of flotation stay
// as they are.
var Ballast = calc.Formula[BallastIn, BallastOut]{
	ID:    "docking.ballast",
	Title: "Least ballast for a docking",
	About: "Which tanks to fill or empty and which ballast to shift so that trim, list, stability and block load are as wanted, with the least mass moved.",
	Holds: "Moves small beside the ship (a twentieth), hydrostatics constant, a rigid ship on an even line of blocks whose centre of gravity stays in the middle third. " +
		"The free surface of a tank left part full is not in it: press it up, or work the landing again.",
	Accuracy: "As the weights and the hydrostatics. Work landing, blocks and drafts again with the ballast as moved.",
	Sources:  []source.Ref{{Key: "derrett", At: "ch. 28; trim"}, {Key: "practice", At: "trapezoid; trim and list wanted at the dock"}, {Key: "memory", At: "GM that must be left"}},
	Cautions: []calc.Caution{calc.Docking, calc.Stability},
	Fn:       ballast,
	Steps:    ballastSteps,
	Samples:  100,
}

func ballast(in BallastIn) (out BallastOut, err error) {
	if in.KeelFwd <= in.KeelAft {
		return out, field.Refuse("keel_fwd", "the keel on blocks ends at %v, not forward of where it begins (%v)", field.Q("keel_fwd", in.KeelFwd, "m"), field.Q("keel_aft", in.KeelAft, "m"))
	}
	if in.LCG <= in.KeelAft || in.LCG >= in.KeelFwd {
		return out, field.Refuse("lcg", "the centre of gravity (%v) does not stand over the keel on blocks (%v to %v)", field.Q("lcg", in.LCG, "m"), field.Q("keel_aft", in.KeelAft, "m"), field.Q("keel_fwd", in.KeelFwd, "m"))
	}
	if in.TrimMost < in.TrimLeast {
		return out, field.Refuse("trim_most", "trim_most (%v) is less than trim_least (%v)", field.Q("trim_most", in.TrimMost, "m"), field.Q("trim_least", in.TrimLeast, "m"))
	}
	if in.LCF <= in.KeelAft || in.LCF >= in.KeelFwd {
		return out, field.Refuse("lcf", "the centre of flotation (%v) does not stand over the keel on blocks", field.Q("lcf", in.LCF, "m"))
	}
	moves := in.ways()
	take, feasible, err := in.least(moves)
	if err != nil {
		return out, err
	}
	out.after(in, moves, take)
	out.judge(in, feasible)
	return out, nil
}
