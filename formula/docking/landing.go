package docking

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// LandingIn describes a ship about to take the blocks.
type LandingIn struct {
	Particulars
	Shape
	BlockSlope float64 `key:"block_slope" unit:"m" symbol:"s" default:"0" min:"-5" max:"5" label:"how much deeper the blocks lie aft than forward, over lbp"`
}

// LandingOut is how she comes from the first touch to lying flat.
type LandingOut struct {
	Verdict         Verdict  `key:"verdict" enum:"safe|marginal|unsafe" label:"verdict"`
	Reason          string   `key:"reason" label:"why"`
	Change          string   `key:"change" label:"what would change it"`
	Trim            float64  `key:"trim" unit:"m" symbol:"t" label:"trim to be taken out, against the blocks"`
	ContactUsed     float64  `key:"contact_used" unit:"m" symbol:"xb" label:"point that touches first, from the after perpendicular"`
	Lever           float64  `key:"lever" unit:"m" symbol:"l" label:"from there to the centre of flotation"`
	Upthrust        float64  `key:"upthrust" unit:"t" symbol:"P" label:"upthrust when she lies flat"`
	GMAfloat        float64  `key:"gm_afloat" unit:"m" symbol:"GM0" label:"GM afloat, less free surfaces"`
	GMLoss          float64  `key:"gm_loss" unit:"m" symbol:"dGM" label:"loss of GM by the upthrust"`
	GM              float64  `key:"gm" unit:"m" symbol:"GM" label:"GM left when she lies flat, on the basis of her weight"`
	GMAlt           float64  `key:"gm_alt" unit:"m" symbol:"GMb" label:"the same on the basis of the water she still displaces"`
	RightingMoment  float64  `key:"righting_moment" unit:"t.m/rad" symbol:"RM" label:"righting moment left"`
	Critical        float64  `key:"upthrust_critical" unit:"t" symbol:"Pc" label:"upthrust that leaves no stability"`
	DraftLCF        float64  `key:"draft_lcf" unit:"m" symbol:"T0" label:"draft at the centre of flotation, afloat"`
	LandingDraft    float64  `key:"landing_draft" unit:"m" symbol:"T1" label:"draft at the centre of flotation when she lies flat"`
	LandingFwd      float64  `key:"landing_draft_fwd" unit:"m" symbol:"T1f" label:"draft forward when she lies flat"`
	LandingAft      float64  `key:"landing_draft_aft" unit:"m" symbol:"T1a" label:"draft aft when she lies flat"`
	CriticalHand    *float64 `key:"upthrust_critical_constant_km" unit:"t" symbol:"Pck" label:"the same at the KM of lying flat, as by hand"`
	InstabilityHand *float64 `key:"instability_draft_constant_km" unit:"m" symbol:"Tck" label:"draft at which she would turn unstable at that KM"`
	Instability     float64  `key:"instability_draft" unit:"m" symbol:"Tc" label:"draft at which she turns unstable"`
	Margin          float64  `key:"margin" unit:"m" symbol:"m" label:"fall of water from lying flat to turning unstable"`
	TrimMax         *float64 `key:"trim_max" unit:"m" symbol:"tm" label:"largest trim for the GM wanted"`
	TrimMaxAlt      *float64 `key:"trim_max_alt" unit:"m" symbol:"tmb" label:"largest trim where the GM wanted is counted on the water displaced"`
	WaterFall       float64  `key:"water_fall" unit:"m" symbol:"f" label:"fall of water from first touch to lying flat"`

	Warnings calc.Warnings `key:"-"`
}

// Landing is the critical period of a docking.
//
// By hand: P = MCT t / l, the upthrust on the first block that takes out the trim t, l from that block to the centre of flotation. The buoyancy
// left, W - P, acts through M at KM, so the righting moment is (W - P) KM - W KG less the free surfaces. As a loss of GM that is P KM / W on the
// basis of the weight, or P KG / (W - P) on the basis of the water displaced: two ways to write one moment. Free surfaces are counted over W - P, as
// the published examples do; that is on the safe side by W / (W - P). At constant KM she turns unstable at Pc = W (KM - KG) / KM, less for free
// surfaces. It holds for small trim and for hydrostatics that do not change while she lands. Source: Derrett, ch. 28; Dubey.
//
// With the hull: the same balance solved with the hull cut at each water level, so that KM is her own at every draft and trim may be large. Both ends
// of stability are then shown, the exact one and that of constant KM.
var Landing = calc.Formula[LandingIn, LandingOut]{
	ID:    "docking.landing",
	Title: "From first touch to lying flat",
	About: "What the first block carries, what stability is left when she lies flat, and how far the water may fall before she has none.",
	Holds: "By hand: small trim (about a hundredth of the length), KM, TPC and MCT constant while she lands, rigid ship and blocks. " +
		"Below the landing draft KM changes fast: the instability draft by hand is only a first figure.",
	Accuracy: "The upthrust to about 5 % where the hydrostatics are good to 2 %; GM no better than the KG, which is only as good as the last inclining.",
	Sources: []source.Ref{{Key: "derrett", At: "ch. 28"}, {Key: "dubey-docking", At: "dry docking and grounding"}, {Key: "divergence", At: "with the hull"},
		{Key: "memory", At: "GM and fall of water that must be left"}},
	Cautions: []calc.Caution{calc.Docking, calc.Stability},
	Fn:       landing,
	Steps:    landingSteps,
	Samples:  1000,
}

func landing(in LandingIn) (LandingOut, error) {
	if in.Hull != nil {
		return landingWithHull(in)
	}
	return landingByHand(in)
}

func landingByHand(in LandingIn) (out LandingOut, err error) {
	p := in.Particulars
	err = need(", or give the hull with its mass, lcg and vcg", given{"displacement", "t", p.Displacement}, given{"lbp", "m", p.LBP}, given{"lcf", "m from the after perpendicular", p.LCF},
		given{"draft_fwd", "m", p.DraftFwd}, given{"draft_aft", "m", p.DraftAft}, given{"kg", "m", p.KG}, given{"km", "m", p.KM},
		given{"tpc", "t/cm", p.TPC}, given{"mct", "t.m/cm", p.MCT})
	if err != nil {
		return out, err
	}
	if err = p.sound(); err != nil {
		return out, err
	}
	w, l, lcf, km := *p.Displacement, *p.LBP, *p.LCF, *p.KM
	out.Trim = *p.DraftAft - *p.DraftFwd - in.BlockSlope
	if out.ContactUsed, err = firstTouch(p, out.Trim); err != nil {
		return out, err
	}
	out.Lever = math.Abs(lcf - out.ContactUsed)
	out.Upthrust = *p.MCT * math.Abs(out.Trim) / out.Lever
	if out.Upthrust >= w {
		return out, field.Refuse("draft_aft", "to take out a trim of %v the first block would carry %v, more than the ship weighs (%v): check drafts, mct, lcf and contact",
			field.Q("", out.Trim, "m"), field.Q("", out.Upthrust, "t"), field.Q("displacement", w, "t"))
	}
	s := standing{w: w, kg: *p.KG, km: km, fsm: p.FreeSurface, tpc: *p.TPC, p: out.Upthrust, gmRequired: p.GMRequired, margin: p.MarginNeeded}
	out.GMAfloat = km - s.kg - s.fsm/w
	out.GMLoss = s.p * km / w
	out.GM, out.RightingMoment = s.gm(), s.moment()
	out.GMAlt = out.RightingMoment / (w - s.p)
	out.Critical = s.critical()
	out.DraftLCF = draftAt(lcf, l, *p.DraftFwd, *p.DraftAft)
	out.LandingDraft = out.DraftLCF - s.p/s.tpc
	out.LandingAft = out.LandingDraft + in.BlockSlope*lcf/l
	out.LandingFwd = out.LandingDraft - in.BlockSlope*(l-lcf)/l
	out.Instability = out.DraftLCF - out.Critical/s.tpc
	out.Margin = out.LandingDraft - out.Instability
	out.TrimMax = new(max(s.upthrust(p.GMRequired), 0) * out.Lever / *p.MCT)
	if p.GMRequired < km {
		out.TrimMaxAlt = new(max(s.upthrustAlt(p.GMRequired), 0) * out.Lever / *p.MCT)
	}
	out.WaterFall = s.p/s.tpc + math.Abs(out.Trim)*out.Lever/l
	out.Verdict, out.Reason, out.Change = s.verdict(), s.reason("when she lies flat"), s.change(out.Trim, *out.TrimMax)
	out.Warnings = landingWarnings(in, out)
	return out, nil
}

// firstTouch is the block that touches first: the aftermost when she trims by the stern against the blocks, the foremost otherwise.
func firstTouch(p Particulars, trim float64) (float64, error) {
	if p.Contact == nil {
		if trim < 0 {
			return *p.LBP, nil
		}
		return 0, nil
	}
	contact, lcf := *p.Contact, *p.LCF
	end, side := "stern", "abaft"
	if trim < 0 {
		end, side = "head", "forward of"
	}
	if trim*(lcf-contact) < 0 || math.Abs(lcf-contact) < 0.05**p.LBP {
		return 0, field.Refuse("contact", "against the blocks she trims by the %s, so she touches first well %s the centre of flotation (%v), not at %v",
			end, side, field.Q("lcf", lcf, "m"), field.Q("contact", contact, "m"))
	}
	return contact, nil
}

func landingWarnings(in LandingIn, out LandingOut) (w calc.Warnings) {
	p := in.Particulars
	if out.Verdict != Safe {
		w = append(w, out.Reason)
	}
	if math.Abs(out.Trim) > 0.01**p.LBP {
		w = append(w, "the trim is more than a hundredth of the length: hydrostatics for level trim are stretched; work it with the hull form")
	}
	if in.BlockSlope != 0 && math.Abs(in.BlockSlope) > 0.02**p.LBP {
		w = append(w, "the blocks slope by more than one in fifty: check that the slope was given over the whole length, in metres")
	}
	if out.LandingDraft <= 0 {
		w = append(w, "the landing draft comes out below zero: she would be dry before she lies flat; the hand form does not hold here")
	}
	if out.Instability < 0.5*out.DraftLCF && out.Instability > 0 {
		w = append(w, "KM is far from constant down to the instability draft: work that draft with the hull form")
	}
	if out.Instability <= 0 {
		w = append(w, "by hand she keeps her stability until she is dry; side blocks must be up all the same")
	}
	return w
}

func landingSteps(in LandingIn, out LandingOut) []calc.Step {
	if in.Hull != nil {
		return landingHullSteps(out)
	}
	steps := []calc.Step{
		{Symbol: "t", Formula: "Ta-Tf-s", Value: out.Trim, Unit: "m", Text: "trim to be taken out, by the stern when positive"},
		{Symbol: "xb", Formula: contactFormula(in, out), Value: out.ContactUsed, Unit: "m", Text: "point that touches first"},
		{Symbol: "l", Formula: "abs(xf-xb)", Value: out.Lever, Unit: "m", Text: "lever to the centre of flotation"},
		{Symbol: "P", Formula: "MCT*abs(t)/l", Value: out.Upthrust, Unit: "kg", Text: "upthrust when she lies flat"},
		{Symbol: "GM0", Formula: "KM-KG-FSM/W", Value: out.GMAfloat, Unit: "m", Text: "GM afloat"},
		{Symbol: "dGM", Formula: "P*KM/W", Value: out.GMLoss, Unit: "m", Text: "loss of GM by the upthrust"},
		{Symbol: "GM", Formula: "KM-KG-dGM-FSM/(W-P)", Value: out.GM, Unit: "m", Text: "GM left, on the basis of the weight"},
		{Symbol: "RM", Formula: "W*GM", Value: out.RightingMoment, Unit: "kg.m/rad", Text: "righting moment left"},
		{Symbol: "GMb", Formula: "RM/(W-P)", Value: out.GMAlt, Unit: "m", Text: "GM left, on the basis of the water displaced"},
		{Symbol: "Pc", Formula: "W-(W*KG+sqrt((W*KG)^2+4*KM*FSM*W))/(2*KM)", Value: out.Critical, Unit: "kg", Text: "upthrust that leaves no stability, at constant KM"},
		{Symbol: "T0", Formula: "Ta-(Ta-Tf)*xf/L", Value: out.DraftLCF, Unit: "m", Text: "draft at the centre of flotation, afloat"},
		{Symbol: "T1", Formula: "T0-P/TPC", Value: out.LandingDraft, Unit: "m", Text: "the same when she lies flat"},
		{Symbol: "T1a", Formula: "T1+s*xf/L", Value: out.LandingAft, Unit: "m", Text: "draft aft when she lies flat"},
		{Symbol: "T1f", Formula: "T1-s*(L-xf)/L", Value: out.LandingFwd, Unit: "m", Text: "draft forward when she lies flat"},
		{Symbol: "Tc", Formula: "T0-Pc/TPC", Value: out.Instability, Unit: "m", Text: "draft at which she turns unstable"},
		{Symbol: "m", Formula: "T1-Tc", Value: out.Margin, Unit: "m", Text: "fall of water between the two"},
		{Symbol: "tm", Formula: "max(W-(W*(KG+GMr)+sqrt((W*(KG+GMr))^2+4*KM*FSM*W))/(2*KM), 0)*l/MCT", Value: *out.TrimMax, Unit: "m", Text: "largest trim for the GM wanted"},
		{Symbol: "f", Formula: "P/TPC+abs(t)*l/L", Value: out.WaterFall, Unit: "m", Text: "fall of water from first touch to lying flat"},
	}
	if out.TrimMaxAlt != nil {
		steps = append(steps, calc.Step{Symbol: "tmb", Formula: "max(W-(W*KG+sqrt((W*KG)^2+4*(KM-GMr)*FSM*W))/(2*(KM-GMr)), 0)*l/MCT", Value: *out.TrimMaxAlt, Unit: "m", Text: "the same, GM counted on the water displaced"})
	}
	return steps
}

func contactFormula(in LandingIn, out LandingOut) string {
	switch {
	case in.Contact != nil:
		return "xc"
	case out.Trim < 0:
		return "L"
	}
	return "0"
}
