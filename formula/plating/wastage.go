package plating

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// WastageIn is a plate and the rule it is held to.
type WastageIn struct {
	Original  float64  `key:"original" unit:"mm" symbol:"to" over:"0" max:"200" label:"original thickness"`
	Rule      string   `key:"rule" enum:"25-percent|15-percent|35-percent|20-percent-plus-1-mm|pitting-70-percent|own" label:"rule" help:"25 % local loss, 15 % light scantlings, 35 % tank bulkheads; 20 % + 1 mm of one class table; 70 % left under a pit; or the ship's own"`
	Share     *float64 `key:"share" symbol:"so" min:"0" under:"1" label:"share that may be lost, with the rule own" help:"0.25 for 25 %"`
	Plus      *float64 `key:"plus" unit:"mm" symbol:"po" min:"0" max:"50" label:"millimetres more that may be lost, with the rule own"`
	Thickness *float64 `key:"thickness" unit:"mm" symbol:"t" over:"0" max:"200" label:"thickness read, to be judged"`
}

// WastageOut is the limit and the thickness from which a plate is suspect.
type WastageOut struct {
	Share     float64  `key:"share_allowed" symbol:"s" label:"share that may be lost"`
	Plus      float64  `key:"plus_allowed" unit:"mm" symbol:"p" label:"millimetres more"`
	Allowance float64  `key:"allowance" unit:"mm" symbol:"a" label:"loss allowed" expr:"s*to+p"`
	Limit     float64  `key:"limit" unit:"mm" symbol:"tm" label:"least thickness allowed" expr:"to-a"`
	Suspect   float64  `key:"suspect" unit:"mm" symbol:"ts" label:"thickness below which the plate is suspect: three quarters of the allowance gone" expr:"to-0.75*a"`
	Used      *float64 `key:"allowance_used" symbol:"u" label:"share of the allowance used" expr:"(to-t)/a"`
	IsSuspect bool     `key:"is_suspect" label:"the thickness read is below suspect"`
	Verdict   string   `key:"verdict" enum:"pass|refer" label:"verdict on the thickness read"`

	Warnings calc.Warnings `key:"-"`
}

// A Limit is one rule: the share of the original that may go, and so many metres more.
type Limit struct {
	Share, Plus float64
	Source      string // for people
}

// Limits are the rules to measure against. Which one binds her is for her own authority to say.
var Limits = map[string]Limit{
	"25-percent":           {0.25, 0, "US NVIC 7-68, local loss"},
	"15-percent":           {0.15, 0, "US NVIC 7-68, light scantlings"},
	"35-percent":           {0.35, 0, "US NVIC 7-68, tank bulkheads"},
	"20-percent-plus-1-mm": {0.20, 1e-3, "shell rule of one class table"},
	"pitting-70-percent":   {0.30, 0, "IACS UR Z10.5: 70 % of the original left under a pit"},
}

// Wastage is the least thickness a rule allows: original less allowance, the allowance a share of the original plus so many millimetres. Suspect
// is the thickness at which three quarters of the allowance are gone. The rules differ and are for different plates; none is hers by itself.
var Wastage = calc.Formula[WastageIn, WastageOut]{
	ID:       "plating.wastage",
	Title:    "Least thickness by a rule",
	About:    "How thin a plate may become by a rule that you pick, and from where on it is suspect.",
	Holds:    "The plate the rule was written for: shell and bulkhead plating of steel ships. Strength of the hull as a whole, buckling and groups of pits need their own check.",
	Accuracy: "Exact for the rule; whether the rule fits her is a judgement.",
	Sources: []source.Ref{
		{Key: "tb-55-1900-201-45", At: "E-10 to E-15: 25 % local, 15 % light scantlings, 35 % tank bulkheads"},
		{Key: "class-diminution-table", At: "20 % + 1 mm; suspect at 75 % of the allowance"},
		{Key: "iacs-z10-5", At: "70 % of the original under a pit"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       wastage,
	Steps: func(in WastageIn, out WastageOut) []calc.Step {
		if in.Rule == "own" {
			steps := []calc.Step{{Symbol: "s", Value: out.Share, Text: "the ship's own rule", Unit: "-"}}
			return append(steps, calc.Step{Symbol: "p", Value: out.Plus, Unit: "m", Text: "the ship's own rule"})
		}
		return []calc.Step{
			{Symbol: "s", Value: out.Share, Unit: "-", Text: Limits[in.Rule].Source},
			{Symbol: "p", Value: out.Plus, Unit: "m", Text: Limits[in.Rule].Source},
		}
	},
}

func wastage(in WastageIn) (out WastageOut, err error) {
	rule, err := in.limit()
	if err != nil {
		return out, err
	}
	out.Share, out.Plus = rule.Share, rule.Plus
	out.Allowance = rule.Share*in.Original + rule.Plus
	out.Limit = in.Original - out.Allowance
	out.Suspect = in.Original - 0.75*out.Allowance
	if out.Limit <= 0 {
		return out, field.Refuse("original", "original (%v) is no more than the rule lets go (%v): the rule is not for plate this thin", field.Q("original", in.Original, "mm"), field.Q("", out.Allowance, "mm"))
	}
	if in.Thickness == nil {
		return out, nil
	}
	t := *in.Thickness
	out.Used = new((in.Original - t) / out.Allowance)
	out.Verdict, out.IsSuspect = "pass", t < out.Suspect
	switch {
	case t < out.Limit:
		out.Verdict = "refer"
		out.Warnings = append(out.Warnings, "below the limit of the rule: a surveyor or naval architect decides what is done")
	case out.IsSuspect:
		out.Warnings = append(out.Warnings, "suspect: over three quarters of the allowance are gone; measure again, closer together")
	}
	if t > 1.5*in.Original {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the reading is %.1f times the original: another unit, or another plate?", t/in.Original))
	}
	return out, nil
}

func (in WastageIn) limit() (Limit, error) {
	if in.Rule != "own" {
		if in.Share != nil || in.Plus != nil {
			return Limit{}, field.Refuse("share", "share and plus belong to the rule own; rule is %s", in.Rule)
		}
		return Limits[in.Rule], nil
	}
	own := Limit{}
	if in.Share != nil {
		own.Share = *in.Share
	}
	if in.Plus != nil {
		own.Plus = *in.Plus
	}
	if own.Share == 0 && own.Plus == 0 {
		return Limit{}, field.Refuse("share", "share is missing: the rule own needs share, plus or both")
	}
	return own, nil
}
