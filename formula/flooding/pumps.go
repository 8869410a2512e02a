package flooding

import (
	"fmt"

	"oakum/calc"
	"oakum/source"
)

// Pump is one pump as it stands.
type Pump struct {
	Name      string   `key:"name" label:"name"`
	Rated     float64  `key:"rated" unit:"m3/s" symbol:"rated" min:"0" max:"100" label:"plate figure"`
	RatedHead *float64 `key:"rated_head" unit:"m" symbol:"rated_head" over:"0" max:"500" label:"head of the plate figure"`
	Lift      *float64 `key:"lift" unit:"m" symbol:"lift" min:"0" max:"100" label:"lift from the bilge to the outlet"`
	Power     string   `key:"power" enum:"shore|own|portable|hand" label:"what drives it" help:"all but shore power count when the shore is lost"`
	Condition float64  `key:"condition" symbol:"condition" min:"0" max:"1" label:"condition" help:"1 run under load lately, 0 dead or never tried"`
}

// PumpsIn is the water coming in and the pumps against it.
type PumpsIn struct {
	Inflow float64 `key:"inflow" unit:"m3/s" symbol:"Q" min:"0" max:"1000" label:"water coming in"`
	Pumps  []Pump  `key:"pumps" symbol:"pumps" most:"200" label:"pumps"`
	Derate float64 `key:"derate" symbol:"kd" default:"0.5" over:"0" max:"1" label:"share of the plate figure to count on" help:"at some feet of lift often half, common practice"`
}

// PumpShare is what one pump is counted with.
type PumpShare struct {
	Name     string  `key:"name" label:"name"`
	Capacity float64 `key:"capacity" unit:"m3/s" symbol:"q" label:"counted"`
	Own      float64 `key:"own_power" unit:"m3/s" symbol:"qo" label:"counted without shore power"`
}

// PumpsOut says who wins.
type PumpsOut struct {
	Each         []PumpShare `key:"each" symbol:"each" label:"what each pump is counted with"`
	Capacity     float64     `key:"capacity" unit:"m3/s" symbol:"Qc" label:"capacity counted" expr:"sum(each, #.q)"`
	WithoutShore float64     `key:"without_shore_power" unit:"m3/s" symbol:"Qo" label:"capacity when shore power is lost" expr:"sum(each, #.qo)"`
	Margin       *float64    `key:"margin" symbol:"mg" label:"capacity over inflow" expr:"Qc/Q"`
	Wins         bool        `key:"wins" label:"the pumps win"`
	WinsAlone    bool        `key:"wins_without_shore" label:"the pumps win without shore power"`

	Warnings calc.Warnings `key:"-"`
}

// Pumps compares what the pumps can take out with what comes in.
//
// Each pump counts with rated times condition times derate, and with nothing where its lift is more than the head on its plate. A figure for
// steady pumping of water without rubbish in it: strainers in a real bilge clog. Source: common practice, half the plate figure at some feet of
// lift; a test with a stopwatch and a tank beats it.
var Pumps = calc.Formula[PumpsIn, PumpsOut]{
	ID:       "flooding.pumps",
	Title:    "Do the pumps win",
	About:    "What the pumps are good for against the water coming in, with shore power and without.",
	Holds:    "Steady pumping of clean water. Strainers clog, hoses suck air as the ship heels, and somebody has to start them.",
	Accuracy: "A rule of thumb, within a factor of two. A stopwatch and a tank beat it.",
	Sources:  []source.Ref{{Key: "practice", At: "half the plate figure at some feet of lift"}},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       pumps,
}

func pumps(in PumpsIn) (out PumpsOut, err error) {
	out.Each = []PumpShare{}
	for _, p := range in.Pumps {
		share := PumpShare{Name: p.Name, Capacity: p.Rated * p.Condition * in.Derate}
		if p.Lift != nil && p.RatedHead != nil && *p.Lift > *p.RatedHead {
			share.Capacity = 0
			out.Warnings = append(out.Warnings, fmt.Sprintf("%s must lift %.3g m, more than the %.3g m on its plate: it is counted with nothing", p.Name, *p.Lift, *p.RatedHead))
		}
		if p.Power != "shore" {
			share.Own = share.Capacity
		}
		out.Each = append(out.Each, share)
		out.Capacity += share.Capacity
		out.WithoutShore += share.Own
	}
	out.Wins, out.WinsAlone = out.Capacity > in.Inflow, out.WithoutShore > in.Inflow
	if in.Inflow > 1e-12 { // m3/s, a drop in a year
		out.Margin = new(out.Capacity / in.Inflow)
	} else {
		out.Wins, out.WinsAlone = true, true
	}
	switch {
	case len(in.Pumps) == 0:
		out.Warnings = append(out.Warnings, "no pump is listed")
	case !out.Wins:
		out.Warnings = append(out.Warnings, "the water wins: the pumps only buy time")
	case !out.WinsAlone:
		out.Warnings = append(out.Warnings, "without shore power the water wins")
	}
	return out, nil
}
