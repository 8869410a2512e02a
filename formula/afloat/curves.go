package afloat

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/hullform"
)

// CurvesIn is a hull and the drafts asked.
type CurvesIn struct {
	Hull    Hull      `key:"hull" label:"hull"`
	Drafts  []float64 `key:"drafts" unit:"m" symbol:"Ts" optional:"yes" most:"500" label:"drafts amidships"`
	From    *float64  `key:"draft_from" unit:"m" symbol:"T1" over:"0" max:"60" label:"lowest draft" help:"instead of a list"`
	To      *float64  `key:"draft_to" unit:"m" symbol:"T2" over:"0" max:"60" label:"greatest draft"`
	Step    float64   `key:"draft_step" unit:"m" symbol:"dT" default:"0.1" over:"0" max:"10" label:"step"`
	Trim    float64   `key:"trim" unit:"m" symbol:"t" default:"0" min:"-50" max:"50" label:"trim by the stern"`
	Heel    float64   `key:"heel" unit:"deg" symbol:"phi" default:"0" over:"-90" under:"90" label:"heel to port"`
	Length  *float64  `key:"length" unit:"m" symbol:"L0" over:"0" max:"500" label:"length between perpendiculars"`
	Density float64   `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"500" max:"1500" label:"density of the water"`
	KG      *float64  `key:"kg" unit:"m" symbol:"KG" min:"-20" max:"100" label:"centre of gravity above the baseline"`
}

// CurveRow is a line of the hydrostatic table.
type CurveRow struct {
	Draft float64 `key:"draft" unit:"m" symbol:"T" label:"draft amidships"`
	HydrostaticsOut
}

// CurvesOut is the hydrostatic table.
type CurvesOut struct {
	Length float64    `key:"length" unit:"m" symbol:"L" label:"length between perpendiculars used"`
	Rows   []CurveRow `key:"rows" symbol:"rows" label:"hydrostatic table"`

	Warnings calc.Warnings `key:"-"`
}

// Curves is afloat.hydrostatics over a range of drafts: the table a dockmaster asks for.
var Curves = calc.Formula[CurvesIn, CurvesOut]{
	ID:       "afloat.curves",
	Title:    "Hydrostatic table",
	About:    "The hydrostatic properties of a hull draft by draft, at one trim and heel.",
	Holds:    HydrostaticsOf.Holds,
	Accuracy: HydrostaticsOf.Accuracy,
	Sources:  HydrostaticsOf.Sources,
	Cautions: []calc.Caution{calc.Stability},
	Fn:       curves,
	Steps: func(in CurvesIn, out CurvesOut) []calc.Step {
		return []calc.Step{{Symbol: "rows", Text: "each draft as in afloat.hydrostatics: integrals over the wet skin"}}
	},
	Samples: 20,
}

func curves(in CurvesIn) (out CurvesOut, err error) {
	drafts, err := in.list()
	if err != nil {
		return out, err
	}
	form, warnings, err := in.Hull.Form(in.Length)
	if err != nil {
		return out, err
	}
	out.Length = form.Length()
	rows, err := form.Curves(drafts, in.Trim, in.Heel, in.Density)
	if err != nil {
		return out, refusal("drafts", err)
	}
	for _, q := range rows {
		out.Rows = append(out.Rows, CurveRow{q.Draft, table(q, out.Length, in.KG)})
	}
	out.Warnings = append(out.Warnings, warnings...)
	if top := form.Bounds().High.Z; len(drafts) > 0 && drafts[len(drafts)-1] > top {
		out.Warnings = append(out.Warnings, "the greatest draft is above the top of the hull")
	}
	return out, nil
}

// list is the drafts asked, in rising order.
func (in CurvesIn) list() ([]float64, error) {
	if len(in.Drafts) > 0 {
		for _, d := range in.Drafts {
			if d <= 0 || d > 60 {
				return nil, field.Refuse("drafts", "a draft of %v is none: more than 0 and at most 60 m", field.Q("", d, "m"))
			}
		}
		return in.Drafts, nil
	}
	if in.From == nil || in.To == nil {
		return nil, field.Refuse("drafts", "drafts is missing: give a list, or draft_from and draft_to")
	}
	if *in.To < *in.From {
		return nil, field.Refuse("draft_to", "draft_to (%v) is less than draft_from (%v)", field.Q("draft_to", *in.To, "m"), field.Q("draft_from", *in.From, "m"))
	}
	n := int(math.Floor((*in.To-*in.From)/in.Step+1e-9)) + 1
	if n > 500 {
		return nil, field.Refuse("draft_step", "step %v makes %d drafts; at most 500 are taken", field.Q("draft_step", in.Step, "m"), n)
	}
	drafts := make([]float64, n)
	for i := range drafts {
		drafts[i] = *in.From + float64(i)*in.Step
	}
	return drafts, nil
}

// hydrostaticTable is the level-trim table of a hull as the draft survey reads it, around a draft (m).
func hydrostaticTable(form *hullform.Hull, around, density float64) ([]Hydrostatic, error) {
	var rows []Hydrostatic
	for d := around - 1; d <= around+1.001; d += 0.1 {
		if d <= 0 {
			continue
		}
		q, err := form.Hydrostatics(hullform.Attitude{Draft: d}, density)
		if err != nil {
			continue
		}
		rows = append(rows, Hydrostatic{d, q.Mass, q.TPC * perMetre, form.Length()/2 - q.LCF, new(q.MCT * perMetre)})
	}
	if len(rows) < 2 {
		return nil, field.Refuse("hull", "the hull does not reach the drafts read (about %v)", field.Q("", around, "m"))
	}
	return rows, nil
}
