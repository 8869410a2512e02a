package afloat

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/source"
)

// Mark is one reading of a draft mark.
type Mark struct {
	Place   string  `key:"place" enum:"fwd|mid|aft" label:"which mark"`
	Side    string  `key:"side" enum:"port|starboard" optional:"yes" label:"side"`
	Reading float64 `key:"reading" unit:"m" symbol:"d" min:"0" max:"40" label:"draft read"`
	X       float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"where the mark stands, from the after perpendicular"`
}

// Hydrostatic is a row of her hydrostatic table. The centre of flotation is counted from amidships, aft positive, as such tables print it.
type Hydrostatic struct {
	Draft        float64  `key:"draft" unit:"m" symbol:"T" min:"0" max:"40" label:"draft"`
	Displacement float64  `key:"displacement" unit:"t" symbol:"W" min:"0" max:"600000" label:"displacement at the table's density"`
	TPC          float64  `key:"tpc" unit:"t/cm" symbol:"TPC" over:"0" max:"1000" label:"tonnes per centimetre"`
	LCF          float64  `key:"lcf" unit:"m" symbol:"xf" min:"-100" max:"100" label:"centre of flotation from amidships, aft positive"`
	MCT          *float64 `key:"mct" unit:"t.m/cm" symbol:"MCT" over:"0" max:"100000" label:"moment to change trim"`
}

// DraftSurveyIn is a set of draft readings and the table that turns them into a displacement.
type DraftSurveyIn struct {
	Marks        []Mark        `key:"marks" symbol:"marks" most:"24" label:"readings"`
	LBP          float64       `key:"lbp" unit:"m" symbol:"L" over:"0" max:"500" label:"length between perpendiculars"`
	WaterDensity float64       `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"990" max:"1035" label:"density of the water she floats in"`
	TableDensity float64       `key:"table_density" unit:"kg/m3" symbol:"rho_t" default:"1025" min:"990" max:"1035" label:"density the table is for"`
	Hull         *Hull         `key:"hull" label:"hull, instead of a table or beside it"`
	Table        []Hydrostatic `key:"table" symbol:"table" optional:"yes" most:"1000" label:"hydrostatic table"`
	MCTPlus      *float64      `key:"mct_plus" unit:"t.m/cm" symbol:"MCT1" over:"0" max:"100000" label:"moment to change trim half a metre deeper"`
	MCTMinus     *float64      `key:"mct_minus" unit:"t.m/cm" symbol:"MCT2" over:"0" max:"100000" label:"moment to change trim half a metre shallower"`
	Beam         *float64      `key:"beam" unit:"m" symbol:"B" over:"0" max:"100" label:"breadth at the midship marks" help:"for the list in degrees"`
	Thickness    float64       `key:"keel_thickness" unit:"m" symbol:"k" default:"0" min:"0" max:"2" label:"keel below the table's baseline" help:"taken off the drafts where the marks count from under the keel and the table from above it"`
}

// DraftSurveyOut is what the ship displaces, step by step.
type DraftSurveyOut struct {
	MeanFwd          float64  `key:"mean_fwd" unit:"m" symbol:"Fm" label:"forward, mean of the sides"`
	MeanMid          float64  `key:"mean_mid" unit:"m" symbol:"Mm" label:"midships, mean of the sides"`
	MeanAft          float64  `key:"mean_aft" unit:"m" symbol:"Am" label:"aft, mean of the sides"`
	LengthMarks      float64  `key:"length_between_marks" unit:"m" symbol:"Lm" label:"from the after mark to the forward mark"`
	CorrectionFwd    float64  `key:"correction_fwd" unit:"m" symbol:"cf" label:"from the forward mark to the perpendicular"`
	CorrectionMid    float64  `key:"correction_mid" unit:"m" symbol:"cm" label:"from the middle mark to amidships"`
	CorrectionAft    float64  `key:"correction_aft" unit:"m" symbol:"ca" label:"from the after mark to the perpendicular"`
	DraftFwd         float64  `key:"draft_fwd" unit:"m" symbol:"F" label:"draft at the forward perpendicular"`
	DraftMid         float64  `key:"draft_mid" unit:"m" symbol:"M" label:"draft amidships"`
	DraftAft         float64  `key:"draft_aft" unit:"m" symbol:"A" label:"draft at the after perpendicular"`
	Trim             float64  `key:"trim" unit:"m" symbol:"t" label:"trim by the stern"`
	List             *float64 `key:"list" unit:"deg" symbol:"phi" label:"list to port"`
	Hog              float64  `key:"hog" unit:"m" symbol:"hog" label:"hog (sag where negative)"`
	QuarterMean      float64  `key:"quarter_mean" unit:"m" symbol:"Q" label:"draft that stands for her bent form"`
	TPC              *float64 `key:"tpc" unit:"t/cm" symbol:"TPC" label:"tonnes per centimetre there"`
	LCF              *float64 `key:"lcf" unit:"m" symbol:"xf" label:"centre of flotation there, aft of amidships"`
	TableDisplaced   *float64 `key:"displacement_at_mean" unit:"t" symbol:"W0" label:"table displacement at the quarter mean"`
	First            *float64 `key:"first_correction" unit:"t" symbol:"c1" label:"first trim correction"`
	Second           *float64 `key:"second_correction" unit:"t" symbol:"c2" label:"second trim correction"`
	ListCorrection   *float64 `key:"list_correction" unit:"t" symbol:"c3" label:"list correction"`
	DisplacementHere *float64 `key:"displacement_table" unit:"t" symbol:"Wt" label:"displacement at the table's density"`
	DisplacementHull *float64 `key:"displacement_hull" unit:"t" symbol:"Wh" label:"displacement of the trimmed, bent form itself"`
	Displacement     float64  `key:"displacement" unit:"t" symbol:"W" label:"displacement"`
	Uncertainty      float64  `key:"uncertainty" unit:"t" symbol:"dW" label:"at best known to plus or minus" expr:"0.005*W"`

	Warnings calc.Warnings `key:"-"`
}

// DraftSurvey is the displacement from her draft marks.
//
// Means of the sides; each mark brought to its perpendicular along the trim; (F + A + 6 M)/8 for hog or sag; the table there; the first trim
// correction for the layer between the table's and her own centre of flotation, the second for its shift with trim, one for list; and the
// density of the water. With the hull, the form itself bent by the hog and cut at the drafts. Source: UK P&I Club; UN ECE/ENERGY/19. At best half a
// per cent of the displacement.
var DraftSurvey = calc.Formula[DraftSurveyIn, DraftSurveyOut]{
	ID:       "afloat.draft-survey",
	Title:    "Displacement from the draft marks",
	About:    "What she weighs as she floats: from readings at six marks to the displacement in the water she is in, with trim, list and hog.",
	Holds:    "Marks read in still water, density measured at the ship at the same time, a table that is hers. Trim up to about a hundredth of the length; more needs the hull form.",
	Accuracy: "At best 0.5 % of the displacement, in calm water with six marks read; 1 % is common. A difference of two surveys carries both errors.",
	Sources:  []source.Ref{{Key: "ukpandi-draught"}, {Key: "unece-19"}},
	Fn:       draftSurvey,
	Steps:    draftSurveySteps,
	Samples:  1000,
}

func draftSurvey(in DraftSurveyIn) (out DraftSurveyOut, err error) {
	if err = out.readings(in); err != nil {
		return out, err
	}
	if in.Hull != nil {
		if err = out.fromHull(&in); err != nil {
			return out, err
		}
	}
	if len(in.Table) == 0 {
		return out, field.Refuse("table", "table is missing: give at least two rows of the hydrostatic table, or the hull")
	}
	if err = out.fromTable(in); err != nil {
		return out, err
	}
	if out.DisplacementHull != nil {
		out.compare()
	}
	out.Uncertainty = 0.005 * out.Displacement
	out.doubt(in)
	return out, nil
}

// readings brings the marks to the perpendiculars.
func (out *DraftSurveyOut) readings(in DraftSurveyIn) error {
	fwd, aft, mid, err := places(in)
	if err != nil {
		return err
	}
	out.MeanFwd, out.MeanAft = fwd.mean-in.Thickness, aft.mean-in.Thickness
	out.LengthMarks = fwd.x - aft.x
	if out.LengthMarks < 0.5*in.LBP {
		return field.Refuse("marks", "forward and after marks stand only %v apart (forward x %v, aft x %v): x is counted from the after perpendicular, lbp is %v",
			field.Q("", out.LengthMarks, "m"), field.Q("", fwd.x, "m"), field.Q("", aft.x, "m"), field.Q("lbp", in.LBP, "m"))
	}
	slope := (out.MeanAft - out.MeanFwd) / out.LengthMarks
	if math.Abs(slope) > 0.1 {
		return field.Refuse("marks", "drafts of %v forward and %v aft are a trim no ship floats at: one of them is misread or in another unit", field.Q("", fwd.mean, "m"), field.Q("", aft.mean, "m"))
	}
	out.CorrectionFwd = -slope * (in.LBP - fwd.x)
	out.CorrectionAft = slope * aft.x
	out.DraftFwd, out.DraftAft = out.MeanFwd+out.CorrectionFwd, out.MeanAft+out.CorrectionAft
	if mid.n == 0 {
		out.MeanMid = (out.DraftFwd + out.DraftAft) / 2
		out.Warnings = append(out.Warnings, "no midship mark was read: hog or sag is not seen, and the displacement may be wrong by several per cent")
	} else {
		out.MeanMid = mid.mean - in.Thickness
		out.CorrectionMid = -slope * (in.LBP/2 - mid.x)
	}
	out.DraftMid = out.MeanMid + out.CorrectionMid
	out.Trim = out.DraftAft - out.DraftFwd
	out.Hog = (out.DraftFwd+out.DraftAft)/2 - out.DraftMid
	out.QuarterMean = (out.DraftFwd + out.DraftAft + 6*out.DraftMid) / 8
	if in.Beam != nil && mid.port > 0 && mid.starboard > 0 {
		out.List = new(math.Atan((mid.port - mid.starboard) / *in.Beam))
	}
	return nil
}

// place is what was read at one of the three places.
type place struct {
	n               int
	mean, x         float64
	port, starboard float64 // mean of each side; zero where it was not read
}

func places(in DraftSurveyIn) (fwd, aft, mid place, err error) {
	if fwd, err = at("fwd", in.Marks); err != nil {
		return
	}
	if aft, err = at("aft", in.Marks); err != nil {
		return
	}
	mid, err = at("mid", in.Marks)
	if err == nil && fwd.n == 0 || aft.n == 0 {
		err = field.Refuse("marks", "marks need at least one reading forward and one aft")
	}
	return
}

func at(name string, marks []Mark) (p place, err error) {
	var sum, n [3]float64 // port, starboard, side not said
	for i, m := range marks {
		if m.Place != name {
			continue
		}
		side := 2
		switch m.Side {
		case "port":
			side = 0
		case "starboard":
			side = 1
		}
		if p.n > 0 && math.Abs(m.X-p.x) > 5 {
			return p, field.Refuse(fmt.Sprintf("marks[%d].x", i), "marks %s stand %v and %v from the after perpendicular: two marks of one place lie at one frame", name, field.Q("", p.x, "m"), field.Q("", m.X, "m"))
		}
		sum[side] += m.Reading
		n[side]++
		p.x = (p.x*float64(p.n) + m.X) / float64(p.n+1)
		p.n++
	}
	if p.n == 0 {
		return p, nil
	}
	var parts, total float64
	for side := range sum {
		if n[side] > 0 {
			total += sum[side] / n[side]
			parts++
		}
	}
	p.mean = total / parts
	if n[0] > 0 && n[1] > 0 {
		p.port, p.starboard = sum[0]/n[0], sum[1]/n[1]
	}
	return p, nil
}

// fromTable enters the table at the quarter mean and corrects.
func (out *DraftSurveyOut) fromTable(in DraftSurveyIn) error {
	row, err := lookUp(in.Table, out.QuarterMean, "at the quarter mean")
	if err != nil {
		return err
	}
	out.TPC, out.LCF, out.TableDisplaced = &row.TPC, &row.LCF, &row.Displacement
	out.First = new(out.Trim * row.LCF * row.TPC / in.LBP)
	total := row.Displacement + *out.First
	plus, minus := in.MCTPlus, in.MCTMinus
	if plus == nil || minus == nil {
		deeper, err1 := lookUp(in.Table, out.QuarterMean+0.5, "")
		shallower, err2 := lookUp(in.Table, out.QuarterMean-0.5, "")
		if err1 == nil && err2 == nil {
			plus, minus = deeper.MCT, shallower.MCT
		}
	}
	if plus != nil && minus != nil {
		out.Second = new(0.5 * out.Trim * out.Trim * (*plus - *minus) / in.LBP)
		total += *out.Second
	} else {
		out.Warnings = append(out.Warnings, "the second trim correction is left out: give mct_plus and mct_minus, or a table with mct that reaches half a metre either way")
	}
	if out.ListCorrection, err = listCorrection(in); err != nil {
		out.Warnings = append(out.Warnings, "the list correction is left out: "+err.Error())
	} else if out.ListCorrection != nil {
		total += *out.ListCorrection
	}
	out.DisplacementHere = &total
	out.Displacement = total * in.WaterDensity / in.TableDensity
	return nil
}

// listCorrection is 6 (TPC1 - TPC2)(d1 - d2), TPC in t/cm and d in m, at the midship drafts of the two sides; in base units 0.06 of their product.
func listCorrection(in DraftSurveyIn) (*float64, error) {
	mid, err := at("mid", in.Marks)
	if err != nil || mid.port == 0 || mid.starboard == 0 {
		return nil, err
	}
	p, err := lookUp(in.Table, mid.port-in.Thickness, "at the port midship draft")
	if err != nil {
		return nil, err
	}
	s, err := lookUp(in.Table, mid.starboard-in.Thickness, "at the starboard midship draft")
	if err != nil {
		return nil, err
	}
	return new(0.06 * (p.TPC - s.TPC) * (mid.port - mid.starboard)), nil
}

// lookUp interpolates a row between the two that enclose the draft.
func lookUp(table []Hydrostatic, draft float64, where string) (row Hydrostatic, err error) {
	for i := 1; i < len(table); i++ {
		if table[i].Draft <= table[i-1].Draft || table[i].Displacement <= table[i-1].Displacement {
			return row, field.Refuse(fmt.Sprintf("table[%d].draft", i), "the table must grow from row to row; row %d has draft %v and displacement %v after %v and %v", i+1,
				field.Q("", table[i].Draft, "m"), field.Q("", table[i].Displacement, "t"), field.Q("", table[i-1].Draft, "m"), field.Q("", table[i-1].Displacement, "t"))
		}
	}
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if draft < a.Draft-1e-9 || draft > b.Draft+1e-9 {
			continue
		}
		f := (draft - a.Draft) / (b.Draft - a.Draft)
		mix := func(x, y float64) float64 { return x + f*(y-x) }
		row = Hydrostatic{Draft: draft, Displacement: mix(a.Displacement, b.Displacement), TPC: mix(a.TPC, b.TPC), LCF: mix(a.LCF, b.LCF)}
		if a.MCT != nil && b.MCT != nil {
			row.MCT = new(mix(*a.MCT, *b.MCT))
		}
		return row, nil
	}
	if len(table) < 2 {
		return row, field.Refuse("table", "the table needs at least two rows")
	}
	return row, field.Refuse("table", "the table reaches from %v to %v; the draft %s is %v", field.Q("", table[0].Draft, "m"), field.Q("", table[len(table)-1].Draft, "m"), where, field.Q("", draft, "m"))
}

// fromHull cuts the hull, bent as she is, at the drafts read; where no table is given it makes one of the hull on even keel.
func (out *DraftSurveyOut) fromHull(in *DraftSurveyIn) error {
	form, warnings, err := in.Hull.Form(&in.LBP)
	if err != nil {
		return err
	}
	out.Warnings = append(out.Warnings, warnings...)
	if len(in.Table) == 0 {
		if in.Table, err = hydrostaticTable(form, out.QuarterMean, in.TableDensity); err != nil {
			return err
		}
	}
	bent, err := form.Hogged(out.Hog)
	if err != nil {
		return field.Refuse("marks", "%v", err)
	}
	heel := 0.0
	if out.List != nil {
		heel = *out.List
	}
	q, err := bent.Hydrostatics(hullform.Attitude{Draft: (out.DraftFwd + out.DraftAft) / 2, Trim: out.Trim, Heel: heel}, in.WaterDensity)
	if err != nil {
		return refusal("marks", err)
	}
	out.DisplacementHull = &q.Mass
	return nil
}

// compare takes the hull's own displacement and says where table and corrections stray from it.
func (out *DraftSurveyOut) compare() {
	by := out.Displacement
	out.Displacement = *out.DisplacementHull
	if d := by/out.Displacement - 1; math.Abs(d) > 0.005 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("table and corrections give %.5g t, %.1f %% from the hull itself: check that hull, table, keel thickness and marks belong together", by/1000, 100*d))
	}
}

// doubt says what makes the survey weaker than it looks.
func (out *DraftSurveyOut) doubt(in DraftSurveyIn) {
	warn := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	sides := map[string]map[string]bool{}
	for _, m := range in.Marks {
		if sides[m.Place] == nil {
			sides[m.Place] = map[string]bool{}
		}
		sides[m.Place][m.Side] = true
	}
	for _, p := range []string{"fwd", "mid", "aft"} {
		if len(sides[p]) == 1 && !sides[p][""] {
			warn("%s was read on one side only: a list is not averaged out there", p)
		}
	}
	if math.Abs(out.Trim) > 0.01*in.LBP {
		warn("trim is more than a hundredth of the length: the two trim corrections are stretched; work it with the hull")
	}
	if math.Abs(out.Hog) > in.LBP/500 {
		warn("she bends by %.0f mm over her length, more than is usual: check the midship readings and where the marks stand", 1000*math.Abs(out.Hog))
	}
	if math.Abs(in.WaterDensity-in.TableDensity) > 30 {
		warn("water and table differ by more than sea from fresh water: check the densities")
	}
	warn("at best the displacement is known to plus or minus 0.5 %% (%.3g t)", out.Uncertainty/1000)
}

func draftSurveySteps(in DraftSurveyIn, out DraftSurveyOut) []calc.Step {
	steps := []calc.Step{
		{Symbol: "Fm", Value: out.MeanFwd, Unit: "m", Text: "forward: mean of the sides, less the keel"},
		{Symbol: "Am", Value: out.MeanAft, Unit: "m", Text: "aft: mean of the sides, less the keel"},
		{Symbol: "Mm", Value: out.MeanMid, Unit: "m", Text: "midships: mean of the sides, less the keel"},
		{Symbol: "Lm", Value: out.LengthMarks, Unit: "m", Text: "from the after mark to the forward mark"},
		{Symbol: "cf", Value: out.CorrectionFwd, Unit: "m", Text: "distance from mark to perpendicular times (Am - Fm)/Lm; minus for a mark inside and trim by the stern"},
		{Symbol: "ca", Value: out.CorrectionAft, Unit: "m", Text: "the same aft; plus for a mark inside and trim by the stern"},
		{Symbol: "cm", Value: out.CorrectionMid, Unit: "m", Text: "the same amidships"},
		{Symbol: "F", Formula: "Fm+cf", Value: out.DraftFwd, Unit: "m", Text: "forward perpendicular"},
		{Symbol: "A", Formula: "Am+ca", Value: out.DraftAft, Unit: "m", Text: "after perpendicular"},
		{Symbol: "M", Formula: "Mm+cm", Value: out.DraftMid, Unit: "m", Text: "amidships"},
		{Symbol: "t", Formula: "A-F", Value: out.Trim, Unit: "m", Text: "trim by the stern"},
		{Symbol: "hog", Formula: "(F+A)/2-M", Value: out.Hog, Unit: "m", Text: "hog"},
		{Symbol: "Q", Formula: "(F+A+6*M)/8", Value: out.QuarterMean, Unit: "m", Text: "quarter mean"},
	}
	if out.First == nil {
		return steps
	}
	steps = append(steps,
		calc.Step{Symbol: "W0", Value: *out.TableDisplaced, Unit: "kg", Text: "table at the quarter mean, between its rows"},
		calc.Step{Symbol: "c1", Formula: "t*xf*TPC/L", Value: *out.First, Unit: "kg", Text: "first trim correction (t x 100 x LCF x TPC / LBP in table units)"})
	total := "W0+c1"
	if out.Second != nil {
		formula := ""
		if in.MCTPlus != nil && in.MCTMinus != nil {
			formula = "0.5*t^2*(MCT1-MCT2)/L"
		}
		steps = append(steps, calc.Step{Symbol: "c2", Formula: formula, Value: *out.Second, Unit: "kg", Text: "second trim correction (50 x t^2 x (MCT+ - MCT-) / LBP in table units)"})
		total += "+c2"
	}
	if out.ListCorrection != nil {
		steps = append(steps, calc.Step{Symbol: "c3", Value: *out.ListCorrection, Unit: "kg", Text: "list correction 6 (TPC1 - TPC2)(d1 - d2) in table units, at the midship drafts of the sides"})
		total += "+c3"
	}
	steps = append(steps, calc.Step{Symbol: "Wt", Formula: total, Value: *out.DisplacementHere, Unit: "kg", Text: "displacement at the table's density"})
	if out.DisplacementHull != nil {
		return append(steps, calc.Step{Symbol: "Wh", Value: *out.DisplacementHull, Unit: "kg", Text: "hull bent by the hog and cut at the drafts"},
			calc.Step{Symbol: "W", Formula: "Wh", Value: out.Displacement, Unit: "kg", Text: "displacement: the hull's own"})
	}
	return append(steps, calc.Step{Symbol: "W", Formula: "Wt*rho/rho_t", Value: out.Displacement, Unit: "kg", Text: "displacement in this water"})
}
