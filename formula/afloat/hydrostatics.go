package afloat

import (
	"math"

	"oakum/calc"
	"oakum/formula/hullform"
	"oakum/source"
)

// HydrostaticsIn is a hull and how she lies.
type HydrostaticsIn struct {
	Hull    Hull     `key:"hull" label:"hull"`
	Draft   float64  `key:"draft" unit:"m" symbol:"T" over:"0" max:"60" label:"draft amidships"`
	Trim    float64  `key:"trim" unit:"m" symbol:"t" default:"0" min:"-50" max:"50" label:"trim by the stern over the length"`
	Heel    float64  `key:"heel" unit:"deg" symbol:"phi" default:"0" over:"-90" under:"90" label:"heel to port"`
	Length  *float64 `key:"length" unit:"m" symbol:"L0" over:"0" max:"500" label:"length between perpendiculars" help:"the fore perpendicular stands there; without it, at the foremost station or point"`
	Beam    *float64 `key:"beam" unit:"m" symbol:"B0" over:"0" max:"100" label:"breadth that the coefficients refer to" help:"without it the breadth under water"`
	Density float64  `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"500" max:"1500" label:"density of the water"`
	KG      *float64 `key:"kg" unit:"m" symbol:"KG" min:"-20" max:"100" label:"centre of gravity above the baseline"`
}

// HydrostaticsOut are the properties of the hull at that waterline.
type HydrostaticsOut struct {
	Volume       float64  `key:"volume" unit:"m3" symbol:"V" label:"volume displaced"`
	Displacement float64  `key:"displacement" unit:"t" symbol:"W" label:"displacement" expr:"V*rho"`
	LCB          float64  `key:"lcb" unit:"m" symbol:"xb" label:"centre of buoyancy from the after perpendicular"`
	KB           float64  `key:"kb" unit:"m" symbol:"KB" label:"centre of buoyancy above the baseline"`
	TCB          float64  `key:"tcb" unit:"m" symbol:"yb" label:"centre of buoyancy to port"`
	Waterplane   float64  `key:"waterplane_area" unit:"m2" symbol:"Aw" label:"waterplane"`
	LCF          float64  `key:"lcf" unit:"m" symbol:"xf" label:"centre of flotation from the after perpendicular"`
	BMt          float64  `key:"bm_t" unit:"m" symbol:"BM" label:"transverse metacentric radius"`
	BMl          float64  `key:"bm_l" unit:"m" symbol:"BML" label:"longitudinal metacentric radius"`
	KMt          float64  `key:"km_t" unit:"m" symbol:"KM" label:"transverse metacentre above the baseline"`
	KMl          float64  `key:"km_l" unit:"m" symbol:"KML" label:"longitudinal metacentre above the baseline"`
	TPC          float64  `key:"tpc" unit:"t/cm" symbol:"TPC" label:"tonnes per centimetre of immersion" expr:"Aw*rho"`
	MCT          float64  `key:"mct" unit:"t.m/cm" symbol:"MCT" label:"moment to change trim, on the metacentric radius" expr:"W*BML/L"`
	MCTOnGM      *float64 `key:"mct_gm" unit:"t.m/cm" symbol:"MCTg" label:"moment to change trim, on the metacentric height"`
	Wetted       float64  `key:"wetted_area" unit:"m2" symbol:"S" label:"wetted area"`
	Cb           float64  `key:"cb" symbol:"Cb" label:"block coefficient"`
	Cw           float64  `key:"cw" symbol:"Cw" label:"waterplane coefficient"`
	Cm           float64  `key:"cm" symbol:"Cm" label:"midship coefficient"`
	Midship      float64  `key:"midship_area" unit:"m2" symbol:"Am" label:"midship section under water"`
	GM           *float64 `key:"gm" unit:"m" symbol:"GM" label:"metacentric height"`
	Length       float64  `key:"length" unit:"m" symbol:"L" label:"length between perpendiculars used"`
	Breadth      float64  `key:"beam" unit:"m" symbol:"B" label:"breadth used"`
	DraftFwd     float64  `key:"draft_fwd" unit:"m" symbol:"Tf" label:"draft forward" expr:"T-t/2"`
	DraftAft     float64  `key:"draft_aft" unit:"m" symbol:"Ta" label:"draft aft" expr:"T+t/2"`

	Warnings calc.Warnings `key:"-"`
}

// HydrostaticsOf are the hydrostatic properties of a hull at one waterline.
//
// A closed mesh of triangles is cut by the plane of the water; volume, centres and wetted area are integrals over the wet skin by the divergence
// theorem, heights measured from that plane, so that the plane itself adds nothing. Offsets are faired into such a mesh, its spacing halved until
// the volume moves less than 0.01 %. No small-angle or wall-sided assumption: it holds at any trim and heel.
var HydrostaticsOf = calc.Formula[HydrostaticsIn, HydrostaticsOut]{
	ID:       "afloat.hydrostatics",
	Title:    "Hydrostatics of a hull",
	About:    "Displacement, centres, metacentres, waterplane, wetted area and the figures of a hydrostatic table at one waterline.",
	Holds:    "Any closed hull at any trim and heel. Appendages count where the mesh has them or they are given beside it; plating thickness only where the offsets are to its outside.",
	Accuracy: "The integrals to about 0.01 %; the answer is as good as the offsets, 1 % for a careful lines plan.",
	Sources:  []source.Ref{{Key: "divergence"}, {Key: "derrett", At: "ch. 10"}},
	Cautions: []calc.Caution{calc.Stability},
	Fn:       hydrostatics,
	Steps:    hydrostaticSteps,
	Samples:  40,
}

func hydrostatics(in HydrostaticsIn) (out HydrostaticsOut, err error) {
	form, warnings, err := in.Hull.Form(in.Length)
	if err != nil {
		return out, err
	}
	if in.Beam != nil {
		if form, err = form.WithBeam(*in.Beam); err != nil {
			return out, refusal("beam", err)
		}
	}
	q, err := form.Hydrostatics(hullform.Attitude{Draft: in.Draft, Trim: in.Trim, Heel: in.Heel}, in.Density)
	if err != nil {
		return out, refusal("draft", err)
	}
	out = table(q, form.Length(), in.KG)
	out.Warnings = append(out.Warnings, warnings...)
	if top := form.Bounds().High.Z; in.Draft > top {
		out.Warnings = append(out.Warnings, "the draft is above the top of the hull: she would be under water")
	}
	if out.GM != nil && *out.GM <= 0 {
		out.Warnings = append(out.Warnings, "UNSAFE: with this centre of gravity GM is not above zero; she will not float upright")
	}
	if in.Heel != 0 || math.Abs(in.Trim) > 0.02*form.Length() {
		out.Warnings = append(out.Warnings, "block and midship coefficients mean little heeled or far out of trim")
	}
	return out, nil
}

// table puts the properties of a hull into a row, in base units.
func table(q hullform.Hydrostatics, length float64, kg *float64) HydrostaticsOut {
	out := HydrostaticsOut{
		Volume: q.Volume, Displacement: q.Mass, LCB: q.LCB, KB: q.KB, TCB: q.TCB, Waterplane: q.Waterplane, LCF: q.LCF, BMt: q.BMt, BMl: q.BMl,
		KMt: q.KMt, KMl: q.KMl, TPC: q.TPC * perMetre, MCT: q.MCT * perMetre, Wetted: q.Wetted, Cb: q.Cb, Cw: q.Cw, Cm: q.Cm, Midship: q.Midship,
		Length: length, Breadth: q.Breadth, DraftFwd: q.Draft - q.Trim/2, DraftAft: q.Draft + q.Trim/2,
	}
	if kg != nil {
		out.GM, out.MCTOnGM = new(q.GM(*kg)), new(q.MCTOnGM(*kg)*perMetre)
	}
	return out
}

func hydrostaticSteps(in HydrostaticsIn, out HydrostaticsOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "V", Value: out.Volume, Unit: "m3", Text: "integral over the wet skin"},
		{Symbol: "Aw", Value: out.Waterplane, Unit: "m2", Text: "section of the hull in the water surface"},
		{Symbol: "BM", Value: out.BMt, Unit: "m", Text: "second moment of the waterplane over the volume"},
		{Symbol: "BML", Value: out.BMl, Unit: "m", Text: "the same lengthwise"},
		{Symbol: "Cb", Formula: "V/(L*B*T)", Value: out.Cb, Unit: "-", Text: "block coefficient"},
		{Symbol: "Cw", Formula: "Aw/(L*B)", Value: out.Cw, Unit: "-", Text: "waterplane coefficient"},
		{Symbol: "Cm", Formula: "Am/(B*T)", Value: out.Cm, Unit: "-", Text: "midship coefficient"},
	}
	if in.Heel == 0 && in.Trim == 0 {
		steps = append(steps, calc.Step{Symbol: "KM", Formula: "KB+BM", Value: out.KMt, Unit: "m", Text: "transverse metacentre"},
			calc.Step{Symbol: "KML", Formula: "KB+BML", Value: out.KMl, Unit: "m", Text: "longitudinal metacentre"})
	} else {
		steps = append(steps, calc.Step{Symbol: "KM", Value: out.KMt, Unit: "m", Text: "KB plus BM laid on the ship's own upright"})
	}
	if out.GM != nil {
		steps = append(steps, calc.Step{Symbol: "GM", Formula: "KM-KG", Value: *out.GM, Unit: "m", Text: "metacentric height"},
			calc.Step{Symbol: "MCTg", Formula: "MCT*(KML-KG)/BML", Value: *out.MCTOnGM, Unit: "kg.m/m", Text: "moment to change trim on the metacentric height"})
	}
	return steps
}
