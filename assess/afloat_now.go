package assess

import (
	"fmt"

	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/hullform"
)

// floating is how she lies today: as the Docking page has it from the newest round of the marks, or else from her particulars at the design draft.
type floating struct {
	fwd, aft float64 // m above the baseline at the perpendiculars
	lbp      float64
	kg, gm   *float64

	displacement, lcf, tpc, mct float64 // base units

	basis field.Basis
	from  string
}

// afloatNow finds how she lies, with her hydrostatics from the hull; why says what is missing where it can't.
func (c *inquiry) afloatNow() (f floating, why string) {
	_, err := c.hull()
	switch {
	case err != nil:
		return f, "no hull form is entered"
	case c.particulars.LBP == nil:
		return f, "the length between perpendiculars is not entered"
	}
	f.lbp, f.kg = *c.particulars.LBP, c.particulars.KG
	if s, _ := c.state(); s != nil {
		f.fwd, f.aft, f.gm = s.fwd, s.aft, s.hydro.GM
		f.displacement, f.lcf, f.tpc, f.mct = s.hydro.Displacement, s.hydro.LCF, s.hydro.TPC, s.hydro.MCT
		f.basis, f.from = basisOf(s.round.Head, field.Measured), "marks read "+s.round.Body.Date.String()
		return f, ""
	}
	if c.particulars.DesignDraft == nil {
		return f, "neither a round of the marks that can be worked nor a design draft is entered"
	}
	return c.asDesigned(f)
}

// asDesigned is the ship on an even keel at her design draft, in sea water.
func (c *inquiry) asDesigned(f floating) (floating, string) {
	h, err := c.hull()
	if err != nil {
		return f, "no hull form is entered"
	}
	t := *c.particulars.DesignDraft
	f.fwd, f.aft, f.basis, f.from = t, t, field.Assumed, "the design draft, as no round of the marks can be worked"
	w, err := h.Hydrostatics(hullform.Attitude{Draft: t}, seaWater)
	if err != nil {
		return f, fmt.Sprintf("the hull gives no hydrostatics at %.2f m: %v", t, err)
	}
	const perCentimetre = 1e5 // kg/m in a t/cm, and kg m/m in a t.m/cm
	f.displacement, f.lcf, f.tpc, f.mct = w.Mass, w.LCF, w.TPC*perCentimetre, w.MCT*perCentimetre
	if f.kg != nil {
		f.gm = new(w.GM(*f.kg))
	}
	return f, ""
}

// change is the call of the formula for weights on and off her as she lies.
func (f floating) change(changes []afloat.Change) afloat.WeightChangeIn {
	in := afloat.WeightChange.New()
	in.Changes = changes
	in.Displacement, in.DraftFwd, in.DraftAft, in.LBP = &f.displacement, &f.fwd, &f.aft, &f.lbp
	in.LCF, in.TPC, in.MCT, in.KG, in.GM = &f.lcf, &f.tpc, &f.mct, f.kg, f.gm
	return in
}

func (f floating) given(changes field.Basis, note string) map[string]field.Given {
	hull := how(field.Computed, "from the hull form at the draft that stands for her bent form")
	return map[string]field.Given{
		"changes": how(changes, note), "draft_fwd": how(f.basis, f.from), "draft_aft": how(f.basis, f.from), "displacement": hull, "lcf": hull, "tpc": hull, "mct": hull,
		"lbp": how(field.Documented, "particulars"), "kg": how(field.Documented, "particulars"), "gm": hull,
	}
}
