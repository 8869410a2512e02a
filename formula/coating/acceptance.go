package coating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// AcceptanceIn is film readings and the rule they are held to.
type AcceptanceIn struct {
	Readings   []float64 `key:"readings" unit:"um" min:"0" max:"50000" most:"100000" label:"dry film readings" help:"for pa2 the mean of each spot"`
	Nominal    float64   `key:"nominal" unit:"um" symbol:"nom" over:"0" max:"20000" label:"nominal film; for pa2 the least specified"`
	Rule       string    `key:"rule" enum:"iso-19840|pspc-90-10|pa2" label:"rule"`
	Correction float64   `key:"correction" unit:"um" default:"0" min:"0" max:"100" label:"taken off each reading for the roughness" help:"ISO 19840 takes 10, 25 or 40 um off for a fine, medium or coarse profile, where the gauge was set on smooth steel"`
	Most       *float64  `key:"most" unit:"um" symbol:"mx" over:"0" max:"50000" label:"thickest film allowed"`
}

// AcceptanceOut is the verdict.
type AcceptanceOut struct {
	Count    int      `key:"count" symbol:"n" label:"readings"`
	Mean     float64  `key:"mean" unit:"um" symbol:"mean" label:"mean"`
	Least    float64  `key:"least" unit:"um" symbol:"lst" label:"least"`
	Greatest float64  `key:"greatest" unit:"um" symbol:"gst" label:"greatest"`
	Below    int      `key:"below" symbol:"nb" label:"readings below nominal"`
	Share    float64  `key:"share_below" symbol:"sb" label:"share below nominal" expr:"nb/n"`
	Floor    float64  `key:"floor" unit:"um" symbol:"fl" label:"no reading may be less"`
	Pass     bool     `key:"pass" label:"accepted"`
	Failed   []string `key:"failed" optional:"yes" label:"clauses that failed"`

	Warnings calc.Warnings `key:"-"`
}

// rule is what a standard asks: no reading under floor times nominal, at most (or, strictly, fewer than) a share below nominal, and the mean.
type rule struct {
	floor    float64
	share    float64
	strictly bool
	mean     bool
}

var ruleOf = map[string]rule{
	"iso-19840":  {floor: 0.8, share: 0.2, strictly: true, mean: true},
	"pspc-90-10": {floor: 0.9, share: 0.1},
	"pa2":        {floor: 0.8, share: 1, mean: true},
}

// Acceptance says whether a film is thick enough by a rule.
//
// ISO 19840: mean at least nominal, none under 80 % of it, fewer than 20 % of the readings below it. 90/10 (IMO PSPC): none under 90 %, at most 10 % below.
// SSPC-PA 2: readings are spot means; their mean at least the least specified, none under 80 % of it, and with a thickest film given the mean at
// most that and no spot over 120 % of it. Every clause that fails is named. The standards also say how many readings an area needs; that is for the
// inspector.
var Acceptance = calc.Formula[AcceptanceIn, AcceptanceOut]{
	ID:       "coating.acceptance",
	Title:    "Is the film thick enough",
	About:    "Whether a set of dry film readings meets a rule, and which of its clauses fail.",
	Holds:    "Readings spread over the whole area by the standard's own plan. Readings taken only where it looks thin or thick prove nothing.",
	Accuracy: "Exact for the readings; a gauge is good to about 3 %.",
	Sources: []source.Ref{
		{Key: "iso-19840", At: "acceptance criteria"},
		{Key: "imo-pspc", At: "MSC.215(82), table 1: 90/10"},
		{Key: "sspc-pa2", At: "spot 80 to 120 %, mean within the range"},
	},
	Fn: acceptance,
	Steps: func(_ AcceptanceIn, out AcceptanceOut) []calc.Step {
		return []calc.Step{
			{Symbol: "mean", Value: out.Mean, Unit: "m", Text: "mean of the readings, correction taken off"},
			{Symbol: "nb", Value: float64(out.Below), Unit: "-", Text: "counted"},
		}
	},
}

func acceptance(in AcceptanceIn) (out AcceptanceOut, err error) {
	if len(in.Readings) == 0 {
		return out, field.Refuse("readings", "readings is empty: a film that was not measured is not known to be thick enough")
	}
	if in.Most != nil && *in.Most < in.Nominal {
		return out, field.Refuse("most", "most must be at least nominal (%v < %v)", field.Q("most", *in.Most, "um"), field.Q("nominal", in.Nominal, "um"))
	}
	out.Count = len(in.Readings)
	out.Least, out.Greatest = math.Inf(1), math.Inf(-1)
	for _, r := range in.Readings {
		d := r - in.Correction
		out.Mean += d / float64(out.Count)
		out.Least, out.Greatest = min(out.Least, d), max(out.Greatest, d)
		if d < in.Nominal*(1-1e-12) {
			out.Below++
		}
	}
	out.Share = float64(out.Below) / float64(out.Count)
	out.Floor = ruleOf[in.Rule].floor * in.Nominal
	out.judge(in, ruleOf[in.Rule])
	out.Pass = len(out.Failed) == 0
	if out.Count < 5 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("%d readings: each of the standards asks for five at least", out.Count))
	}
	if out.Mean < 0.1*in.Nominal || out.Mean > 10*in.Nominal {
		out.Warnings = append(out.Warnings, "readings and nominal are far apart: is one of them in mils or millimetres?")
	}
	return out, nil
}

func (out *AcceptanceOut) judge(in AcceptanceIn, r rule) {
	fail := func(format string, a ...any) { out.Failed = append(out.Failed, fmt.Sprintf(format, a...)) }
	um := func(x float64) string { return fmt.Sprintf("%.0f um", x*1e6) }
	const bits = 1e-12
	if r.mean && out.Mean < in.Nominal*(1-bits) {
		fail("mean: %s is less than %s", um(out.Mean), um(in.Nominal))
	}
	if out.Least < out.Floor*(1-bits) {
		fail("least: %s is less than %.0f %% of nominal, %s", um(out.Least), 100*r.floor, um(out.Floor))
	}
	if out.Share > r.share+bits || r.strictly && out.Share > r.share-bits {
		fail("count: %d of %d readings (%.0f %%) are below nominal, %s %.0f %% is allowed", out.Below, out.Count, 100*out.Share, map[bool]string{true: "less than", false: "at most"}[r.strictly], 100*r.share)
	}
	if in.Most == nil {
		return
	}
	top := *in.Most
	if in.Rule == "pa2" {
		if out.Mean > top*(1+bits) {
			fail("mean: %s is more than %s", um(out.Mean), um(top))
		}
		top *= 1.2
	}
	if out.Greatest > top*(1+bits) {
		fail("greatest: %s is more than %s", um(out.Greatest), um(top))
	}
}
