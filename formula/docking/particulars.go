package docking

import (
	"math"

	"oakum/field"
)

// Particulars are the hydrostatics read from her table at the waterline she floats at; they carry the hand form of landing and grounding.
type Particulars struct {
	Displacement *float64 `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement"`
	LBP          *float64 `key:"lbp" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars"`
	LCF          *float64 `key:"lcf" unit:"m" symbol:"xf" over:"0" max:"500" label:"centre of flotation from the after perpendicular"`
	DraftFwd     *float64 `key:"draft_fwd" unit:"m" symbol:"Tf" min:"0" max:"40" label:"draft forward, afloat" help:"at the perpendicular"`
	DraftAft     *float64 `key:"draft_aft" unit:"m" symbol:"Ta" min:"0" max:"40" label:"draft aft, afloat" help:"at the perpendicular"`
	Contact      *float64 `key:"contact" unit:"m" symbol:"xc" min:"-50" max:"500" label:"point that touches, from the after perpendicular"`
	KG           *float64 `key:"kg" unit:"m" symbol:"KG" min:"0" max:"80" label:"centre of gravity above the keel" help:"solid; free surfaces stand apart"`
	KM           *float64 `key:"km" unit:"m" symbol:"KM" over:"0" max:"300" label:"transverse metacentre above the keel" help:"for the draft at which she lies flat, where it is known"`
	TPC          *float64 `key:"tpc" unit:"t/cm" symbol:"TPC" over:"0" max:"1000" label:"tonnes per centimetre of immersion"`
	MCT          *float64 `key:"mct" unit:"t.m/cm" symbol:"MCT" over:"0" max:"100000" label:"moment to change trim"`
	FreeSurface  float64  `key:"free_surface_moment" unit:"t.m" symbol:"FSM" default:"0" min:"0" max:"10000000" label:"free-surface moment of slack tanks" help:"sum of i times the density of the liquid"`
	GMRequired   float64  `key:"gm_required" unit:"m" symbol:"GMr" default:"0.15" min:"0" max:"10" label:"GM that must be left" help:"the default is from memory: the naval architect sets it"`
	MarginNeeded float64  `key:"margin_required" unit:"m" symbol:"mr" default:"0.3" min:"0" max:"10" label:"fall of water wanted between lying flat and turning unstable" help:"the default is from memory: the naval architect sets it"`
}

// given names an input that one form of a method needs, in the unit a person would give it in.
type given struct {
	key, unit string
	value     *float64
}

// need refuses the first input that is absent.
func need(why string, inputs ...given) error {
	for _, g := range inputs {
		if g.value == nil {
			return field.Refuse(g.key, "%s is missing: give it in %s%s", g.key, g.unit, why)
		}
	}
	return nil
}

// sound refuses particulars that no ship has.
func (p Particulars) sound() error {
	if p.LBP != nil && p.LCF != nil && (*p.LCF < 0.25**p.LBP || *p.LCF > 0.75**p.LBP) {
		return field.Refuse("lcf", "lcf is counted from the after perpendicular and lies near the middle of every hull; %v is not between a quarter and three quarters of lbp (%v)",
			field.Q("lcf", *p.LCF, "m"), field.Q("lbp", *p.LBP, "m"))
	}
	if p.LBP != nil && p.Contact != nil && (*p.Contact < -0.1**p.LBP || *p.Contact > 1.1**p.LBP) {
		return field.Refuse("contact", "contact lies outside the ship (%v from the after perpendicular, lbp %v)", field.Q("contact", *p.Contact, "m"), field.Q("lbp", *p.LBP, "m"))
	}
	if p.LBP != nil && p.DraftFwd != nil && p.DraftAft != nil && math.Abs(*p.DraftAft-*p.DraftFwd) > 0.2**p.LBP {
		return field.Refuse("draft_aft", "drafts of %v forward and %v aft are a trim no ship of %v floats at", field.Q("draft_fwd", *p.DraftFwd, "m"), field.Q("draft_aft", *p.DraftAft, "m"), field.Q("lbp", *p.LBP, "m"))
	}
	return nil
}

// draftAt is the draft at x between the perpendiculars of length l, for drafts fwd and aft, all in m.
func draftAt(x, l, fwd, aft float64) float64 { return aft - (aft-fwd)*x/l }
