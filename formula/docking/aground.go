package docking

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// AgroundIn describes a ship that rests on one point of the bottom: with the point and the fall of the water, or with the drafts she shows there.
type AgroundIn struct {
	Particulars
	Fall        *float64 `key:"fall" unit:"m" symbol:"f" min:"0" max:"20" label:"fall of the water since she touched"`
	AgroundFwd  *float64 `key:"draft_fwd_aground" unit:"m" symbol:"Tf1" min:"0" max:"40" label:"draft forward, aground"`
	AgroundAft  *float64 `key:"draft_aft_aground" unit:"m" symbol:"Ta1" min:"0" max:"40" label:"draft aft, aground"`
	FurtherFall *float64 `key:"further_fall" unit:"m" symbol:"ff" min:"0" max:"20" label:"fall of the water still to come"`
}

// AgroundOut is how she sits. Results that need weights or drafts not given are absent.
type AgroundOut struct {
	Verdict        Verdict  `key:"verdict" enum:"safe|marginal|unsafe" label:"verdict"`
	Reason         string   `key:"reason" label:"why"`
	Change         string   `key:"change" label:"what would change it"`
	Upthrust       float64  `key:"upthrust" unit:"t" symbol:"P" label:"upthrust of the bottom"`
	Contact        float64  `key:"contact" unit:"m" symbol:"xb" label:"point that touches, from the after perpendicular"`
	ContactFromLCF float64  `key:"contact_from_lcf" unit:"m" symbol:"l" label:"the same forward of the centre of flotation"`
	Fall           float64  `key:"fall" unit:"m" symbol:"f1" label:"fall of the water since she touched"`
	TrimChange     float64  `key:"trim_change" unit:"m" symbol:"dt" label:"change of trim by the stern"`
	Rise           float64  `key:"rise" unit:"m" symbol:"r" label:"how far she is lifted out at the centre of flotation"`
	DraftFwd       *float64 `key:"draft_fwd" unit:"m" symbol:"T1f" label:"draft forward, aground"`
	DraftAft       *float64 `key:"draft_aft" unit:"m" symbol:"T1a" label:"draft aft, aground"`
	RefloatRise    float64  `key:"refloat_rise" unit:"m" symbol:"rf" label:"rise of the water that floats her off" expr:"f1"`
	GMLoss         *float64 `key:"gm_loss" unit:"m" symbol:"dGM" label:"loss of GM by the upthrust"`
	GM             *float64 `key:"gm" unit:"m" symbol:"GM" label:"GM left, on the basis of her weight"`
	GMAlt          *float64 `key:"gm_alt" unit:"m" symbol:"GMb" label:"the same on the basis of the water she still displaces"`
	RightingMoment *float64 `key:"righting_moment" unit:"t.m/rad" symbol:"RM" label:"righting moment left"`
	Critical       *float64 `key:"upthrust_critical" unit:"t" symbol:"Pc" label:"upthrust that leaves no stability"`
	FallCritical   *float64 `key:"fall_to_instability" unit:"m" symbol:"fc" label:"fall of the water from touching to turning unstable"`
	FallLeft       *float64 `key:"fall_left" unit:"m" symbol:"fl" label:"fall of the water still to go until she turns unstable"`

	Warnings calc.Warnings `key:"-"`
}

// Aground is a ship resting on one point of the bottom while the water falls.
//
// The water falls by f = P/TPC + P l^2/(MCT L) while the upthrust grows to P, l from the point to the centre of flotation: she is lifted bodily
// and she trims. From the drafts aground the same two relations give P and l back. Stability as in Landing. It holds while she rests on one
// point and the bottom does not give. Source: Dubey; Derrett, ch. 28.
var Aground = calc.Formula[AgroundIn, AgroundOut]{
	ID:       "docking.aground",
	Title:    "Left on the bottom by the tide",
	About:    "What the bottom carries where she touches, her drafts and stability there, the rise that floats her off and the fall that would turn her over.",
	Holds:    "One point of contact on a bottom that does not give, small trim, KM, TPC and MCT constant. In soft mud she sinks in and touches over a length: the upthrust then is less than this.",
	Accuracy: "About 5 % of the upthrust on a hard bottom; an upper bound on mud.",
	Sources:  []source.Ref{{Key: "dubey-docking", At: "dry docking and grounding, example 9"}, {Key: "derrett", At: "ch. 28"}, {Key: "memory", At: "GM and fall of water that must be left"}},
	Cautions: []calc.Caution{calc.Docking, calc.Stability},
	Fn:       aground,
	Steps:    agroundSteps,
}

func aground(in AgroundIn) (out AgroundOut, err error) {
	p := in.Particulars
	if err = need("", given{"lbp", "m", p.LBP}, given{"lcf", "m from the after perpendicular", p.LCF}, given{"tpc", "t/cm", p.TPC}, given{"mct", "t.m/cm", p.MCT}); err != nil {
		return out, err
	}
	if err = p.sound(); err != nil {
		return out, err
	}
	switch {
	case in.AgroundFwd != nil || in.AgroundAft != nil:
		err = fromDrafts(in, &out)
	default:
		err = fromFall(in, &out)
	}
	if err != nil {
		return out, err
	}
	out.RefloatRise = out.Fall
	if p.Displacement != nil && out.Upthrust >= *p.Displacement {
		return out, field.Refuse("fall", "the bottom would carry %v, more than the ship weighs (%v): check the fall or the drafts, tpc and mct",
			field.Q("", out.Upthrust, "t"), field.Q("displacement", *p.Displacement, "t"))
	}
	agroundStability(in, &out)
	return out, nil
}

func fromFall(in AgroundIn, out *AgroundOut) error {
	p := in.Particulars
	err := need(", or give draft_fwd_aground and draft_aft_aground", given{"contact", "m from the after perpendicular", p.Contact}, given{"fall", "m", in.Fall})
	if err != nil {
		return err
	}
	l, lcf := *p.LBP, *p.LCF
	out.Contact, out.ContactFromLCF, out.Fall = *p.Contact, *p.Contact-lcf, *in.Fall
	out.Upthrust = out.Fall / perTonne(*p.TPC, *p.MCT, l, out.ContactFromLCF)
	out.Rise = out.Upthrust / *p.TPC
	out.TrimChange = out.Upthrust * out.ContactFromLCF / *p.MCT
	if p.DraftFwd != nil && p.DraftAft != nil {
		out.DraftAft = new(*p.DraftAft - out.Rise + out.TrimChange*lcf/l)
		out.DraftFwd = new(*p.DraftFwd - out.Rise - out.TrimChange*(l-lcf)/l)
		if *out.DraftAft < 0 || *out.DraftFwd < 0 {
			return field.Refuse("fall", "with a fall of %v a draft comes out below zero: she would have come to rest along her length before", field.Q("fall", out.Fall, "m"))
		}
	}
	return nil
}

// perTonne is the fall of water for each kilogram of upthrust, m/kg.
func perTonne(tpc, mct, lbp, l float64) float64 { return 1/tpc + l*l/(mct*lbp) }

func fromDrafts(in AgroundIn, out *AgroundOut) error {
	p := in.Particulars
	err := need(", to compare with the drafts aground", given{"draft_fwd_aground", "m", in.AgroundFwd}, given{"draft_aft_aground", "m", in.AgroundAft},
		given{"draft_fwd", "m", p.DraftFwd}, given{"draft_aft", "m", p.DraftAft})
	if err != nil {
		return err
	}
	if in.Fall != nil {
		return field.Refuse("fall", "give the fall of the water or the drafts aground, not both")
	}
	l, lcf := *p.LBP, *p.LCF
	out.Rise = draftAt(lcf, l, *p.DraftFwd, *p.DraftAft) - draftAt(lcf, l, *in.AgroundFwd, *in.AgroundAft)
	if out.Rise <= 0 {
		return field.Refuse("draft_fwd_aground", "by these drafts she floats as deep as before (%v less at the centre of flotation): she is not aground", field.Q("", out.Rise, "m"))
	}
	out.Upthrust = out.Rise * *p.TPC
	out.TrimChange = (*in.AgroundAft - *in.AgroundFwd) - (*p.DraftAft - *p.DraftFwd)
	out.ContactFromLCF = *p.MCT * out.TrimChange / out.Upthrust
	out.Contact = lcf + out.ContactFromLCF
	if p.Contact != nil {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the drafts put the point of contact at %.1f m; the one given is not used", out.Contact))
	}
	if out.Contact < -0.05*l || out.Contact > 1.05*l {
		out.Warnings = append(out.Warnings, "the drafts put the point of contact outside the ship: one of them is misread, or weights have moved")
	}
	out.Fall = out.Rise + out.TrimChange*out.ContactFromLCF/l
	out.DraftFwd, out.DraftAft = in.AgroundFwd, in.AgroundAft
	return nil
}

func agroundStability(in AgroundIn, out *AgroundOut) {
	p := in.Particulars
	if p.Displacement == nil || p.KG == nil || p.KM == nil {
		out.Reason = "no verdict: stability needs displacement, kg and km"
		out.Change = "Give displacement, kg and km."
		out.Warnings = append(out.Warnings, out.Reason)
		return
	}
	s := standing{w: *p.Displacement, kg: *p.KG, km: *p.KM, fsm: p.FreeSurface, tpc: 1 / perTonne(*p.TPC, *p.MCT, *p.LBP, out.ContactFromLCF),
		p: out.Upthrust, gmRequired: p.GMRequired, margin: p.MarginNeeded}
	if in.FurtherFall != nil {
		s.margin = max(s.margin, *in.FurtherFall)
	}
	rm := s.moment()
	out.GMLoss, out.RightingMoment = new(s.p*s.km/s.w), &rm
	out.GM, out.GMAlt = new(s.gm()), new(rm/(s.w-s.p))
	out.Critical = new(s.critical())
	out.FallCritical = new(max(s.critical(), 0) / s.tpc)
	out.FallLeft = new(*out.FallCritical - out.Fall)
	out.Verdict, out.Reason = s.verdict(), s.reason("as she sits")
	out.Change = s.change(math.NaN(), math.NaN())
	if out.Verdict != Safe {
		out.Warnings = append(out.Warnings, out.Reason)
	}
	if in.FurtherFall != nil && *in.FurtherFall >= *out.FallLeft {
		out.Verdict = Unsafe
		out.Reason = fmt.Sprintf("UNSAFE: the water is to fall another %s m, and she turns unstable after %s m", metres(*in.FurtherFall), metres(max(*out.FallLeft, 0)))
		out.Warnings = append(out.Warnings, out.Reason)
	}
}

func agroundSteps(in AgroundIn, out AgroundOut) []calc.Step {
	var steps []calc.Step
	if in.Fall != nil {
		steps = append(steps,
			calc.Step{Symbol: "xb", Formula: "xc", Value: out.Contact, Unit: "m", Text: "point that touches, as given"},
			calc.Step{Symbol: "l", Formula: "xb-xf", Value: out.ContactFromLCF, Unit: "m", Text: "lever forward of the centre of flotation"},
			calc.Step{Symbol: "f1", Formula: "f", Value: out.Fall, Unit: "m", Text: "fall as given"},
			calc.Step{Symbol: "P", Formula: "f1/(1/TPC+l^2/(MCT*L))", Value: out.Upthrust, Unit: "kg", Text: "upthrust"},
			calc.Step{Symbol: "r", Formula: "P/TPC", Value: out.Rise, Unit: "m", Text: "lifted bodily"},
			calc.Step{Symbol: "dt", Formula: "P*l/MCT", Value: out.TrimChange, Unit: "m", Text: "change of trim by the stern"})
		if out.DraftFwd != nil {
			steps = append(steps,
				calc.Step{Symbol: "T1a", Formula: "Ta-r+dt*xf/L", Value: *out.DraftAft, Unit: "m", Text: "draft aft"},
				calc.Step{Symbol: "T1f", Formula: "Tf-r-dt*(L-xf)/L", Value: *out.DraftFwd, Unit: "m", Text: "draft forward"})
		}
	} else {
		steps = append(steps,
			calc.Step{Symbol: "r", Formula: "(Ta-(Ta-Tf)*xf/L)-(Ta1-(Ta1-Tf1)*xf/L)", Value: out.Rise, Unit: "m", Text: "lifted out at the centre of flotation"},
			calc.Step{Symbol: "P", Formula: "r*TPC", Value: out.Upthrust, Unit: "kg", Text: "upthrust"},
			calc.Step{Symbol: "dt", Formula: "(Ta1-Tf1)-(Ta-Tf)", Value: out.TrimChange, Unit: "m", Text: "change of trim by the stern"},
			calc.Step{Symbol: "l", Formula: "MCT*dt/P", Value: out.ContactFromLCF, Unit: "m", Text: "point of contact forward of the centre of flotation"},
			calc.Step{Symbol: "xb", Formula: "xf+l", Value: out.Contact, Unit: "m", Text: "from the after perpendicular"},
			calc.Step{Symbol: "f1", Formula: "r+dt*l/L", Value: out.Fall, Unit: "m", Text: "fall of the water since she touched"})
	}
	if out.GM == nil {
		return steps
	}
	return append(steps,
		calc.Step{Symbol: "dGM", Formula: "P*KM/W", Value: *out.GMLoss, Unit: "m", Text: "loss of GM"},
		calc.Step{Symbol: "GM", Formula: "KM-KG-dGM-FSM/(W-P)", Value: *out.GM, Unit: "m", Text: "GM left, on the basis of the weight"},
		calc.Step{Symbol: "RM", Formula: "W*GM", Value: *out.RightingMoment, Unit: "kg.m/rad", Text: "righting moment left"},
		calc.Step{Symbol: "GMb", Formula: "RM/(W-P)", Value: *out.GMAlt, Unit: "m", Text: "GM left, on the basis of the water displaced"},
		calc.Step{Symbol: "Pc", Formula: "W-(W*KG+sqrt((W*KG)^2+4*KM*FSM*W))/(2*KM)", Value: *out.Critical, Unit: "kg", Text: "upthrust that leaves no stability"},
		calc.Step{Symbol: "fc", Formula: "max(Pc, 0)*(1/TPC+l^2/(MCT*L))", Value: *out.FallCritical, Unit: "m", Text: "fall from touching to turning unstable"},
		calc.Step{Symbol: "fl", Formula: "fc-f1", Value: *out.FallLeft, Unit: "m", Text: "fall still to go"})
}
