package tow

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Tug is a tug offered for the tow.
type Tug struct {
	Name    string  `key:"name" optional:"yes" label:"tug"`
	Bollard float64 `key:"bollard_pull" unit:"t" symbol:"bp" over:"0" max:"500" label:"bollard pull, certified"`
}

// PullIn is a tow and the tugs offered.
type PullIn struct {
	ResistanceIn
	Tugs     []Tug   `key:"tugs" symbol:"tugs" optional:"yes" most:"20" label:"tugs pulling ahead"`
	Hold     float64 `key:"hold_wind" unit:"kn" symbol:"vhw" default:"40" min:"0" max:"150" label:"wind in which they must hold her at no speed" help:"40 kn is a usual figure of tow approvals, from memory: the warranty surveyor sets it"`
	HoldFlow float64 `key:"hold_current" unit:"kn" symbol:"vhc" default:"1" min:"0" max:"10" label:"current in which they must hold her" help:"from memory"`
}

// PullOut is the pull wanted and whether the tugs have it.
type PullOut struct {
	Verdict  string   `key:"verdict" enum:"enough|not enough|not known" label:"verdict"`
	Reason   string   `key:"reason" label:"why"`
	HoldPull float64  `key:"bollard_pull_hold" unit:"t" symbol:"BPh" label:"bollard pull to hold her in the wind and current asked"`
	Offered  float64  `key:"bollard_pull_offered" unit:"t" symbol:"BPo" label:"bollard pull offered" expr:"sum(tugs, #.bp)"`
	SpeedMax *float64 `key:"speed_max" unit:"kn" symbol:"vm" label:"speed the tugs can tow her at in this wind and current"`
	ResistanceOut
}

// Pull is the pull it takes to tow her and to hold her, against what the tugs offered have.
//
// The total of Resistance with the towline's own, over the efficiency at speed; the total alone at no speed in a wind and current to be held, where the
// towline drags next to nothing and the whole bollard pull counts.
// The speed the tugs can make is where total and pull meet.
var Pull = calc.Formula[PullIn, PullOut]{
	ID:       "tow.pull",
	Title:    "Pull for the tow",
	About:    "The bollard pull that a tow takes under way and to hold her against wind and current, and whether the tugs offered have it.",
	Holds:    "As tow.resistance. Tugs pulling together ahead; a tug astern for steering does not count.",
	Accuracy: "About 25 %. A margin is the tow master's and the warranty surveyor's to set.",
	Sources: []source.Ref{{Key: "towing-manual", At: "appendix G"}, {Key: "ufc-4-159-03", At: "equations 15 to 21"}, {Key: "ittc-57"},
		{Key: "memory", At: "wind and current to be held, wind coefficients, free propeller, pull at speed 0.75"}},
	Cautions: []calc.Caution{calc.Towing},
	Fn:       pull,
	Steps: func(in PullIn, out PullOut) []calc.Step {
		steps := append(resistanceSteps(in.ResistanceIn, out.ResistanceOut),
			calc.Step{Symbol: "BPh", Value: out.HoldPull, Unit: "kg", Text: "the total worked at no speed in the wind and current to be held, head on, over g"})
		if out.SpeedMax != nil {
			steps = append(steps, calc.Step{Symbol: "vm", Value: *out.SpeedMax, Unit: "m/s", Text: "solved: the speed at which bollard pull wanted and offered meet"})
		}
		return steps
	},
}

func pull(in PullIn) (out PullOut, err error) {
	if out.ResistanceOut, err = resistance(in.ResistanceIn); err != nil {
		return out, err
	}
	hold := in.ResistanceIn
	hold.Speed, hold.Wind, hold.Heading, hold.Current = 0, in.Hold, 0, in.HoldFlow
	still, err := resistance(hold)
	if err != nil {
		return out, err
	}
	out.HoldPull = still.Total / calc.Gravity
	for _, t := range in.Tugs {
		out.Offered += t.Bollard
	}
	wanted := max(out.BollardPull, out.HoldPull)
	switch {
	case len(in.Tugs) == 0:
		out.Verdict, out.Reason = "not known", fmt.Sprintf("no tug is named; %.3g t of bollard pull are wanted (%.3g t under way, %.3g t to hold her)", wanted/1000, out.BollardPull/1000, out.HoldPull/1000)
	case out.Offered < wanted:
		out.Verdict = "not enough"
		out.Reason = fmt.Sprintf("NOT ENOUGH: %.3g t offered, %.3g t wanted (%.3g t under way, %.3g t to hold her). A larger tug, a lower speed, a better day, propellers off (%.3g t under way) or a cleaner bottom would change it",
			out.Offered/1000, wanted/1000, out.BollardPull/1000, out.HoldPull/1000, out.BollardOff/1000)
		out.Warnings = append(calc.Warnings{out.Reason}, out.Warnings...)
	default:
		out.Verdict, out.Reason = "enough", fmt.Sprintf("%.3g t offered, %.3g t wanted by these figures", out.Offered/1000, wanted/1000)
	}
	if out.Offered > 0 {
		out.SpeedMax, err = fastest(in, out.Offered)
	}
	return out, err
}

// fastest is the speed at which the pull wanted meets the pull offered, up to 15 kn; nil where they can't hold her at all.
func fastest(in PullIn, offered float64) (*float64, error) {
	wanted := func(v float64) (float64, error) {
		r := in.ResistanceIn
		r.Speed = v
		out, err := resistance(r)
		return out.BollardPull, err
	}
	low, high := 0.0, 15*knot
	if w, err := wanted(low); err != nil || w > offered {
		return nil, err
	}
	if w, err := wanted(high); err != nil || w <= offered {
		return &high, err
	}
	for range 60 {
		mid := (low + high) / 2
		w, err := wanted(mid)
		if err != nil {
			return nil, field.Refuse("speed", "%v", err)
		}
		if w > offered {
			high = mid
		} else {
			low = mid
		}
	}
	return &low, nil
}
