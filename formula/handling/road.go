package handling

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Axle is one axle or group of axles of the vehicle.
type Axle struct {
	Name  string   `key:"name" label:"name"`
	Mass  float64  `key:"mass" unit:"kg" symbol:"mass" min:"0" max:"1e6" label:"mass on it"`
	Limit *float64 `key:"limit" unit:"kg" symbol:"limit" over:"0" max:"1e6" label:"limit of the road"`
}

// RoadIn describes a heavy load on the road and on pads. The limits are what local law and the owner of the ground allow.
type RoadIn struct {
	Gross      float64  `key:"gross" unit:"kg" symbol:"mg" over:"0" max:"1e6" label:"mass of vehicle and load"`
	GrossLimit *float64 `key:"gross_limit" unit:"kg" symbol:"mlim" over:"0" max:"1e6" label:"limit of the whole"`
	Axles      []Axle   `key:"axles" symbol:"axles" most:"60" optional:"yes" label:"axles"`
	PadLoad    *float64 `key:"pad_load" unit:"kg" symbol:"mp" over:"0" max:"1e6" label:"mass on the heaviest pad"`
	PadArea    *float64 `key:"pad_area" unit:"m2" symbol:"Ap" min:"0.0001" max:"100" label:"area of that pad"`
	Ground     *float64 `key:"ground_limit" unit:"kPa" symbol:"ql" min:"0.1" max:"5000" label:"what the ground bears"`
}

// AxleOver is by how much an axle is over its limit.
type AxleOver struct {
	Name string   `key:"name" label:"name"`
	Over *float64 `key:"over" unit:"kg" symbol:"over" label:"over its limit; absent without one"`
}

// RoadOut says what is over.
type RoadOut struct {
	Over        bool       `key:"over" label:"something is over its limit"`
	GrossOver   *float64   `key:"gross_over" unit:"kg" symbol:"mo" label:"gross mass over its limit" expr:"max(mg-mlim, 0)"`
	AxlesOver   []AxleOver `key:"axles_over" symbol:"axles_over" label:"axles over their limit"`
	WorstAxle   *float64   `key:"worst_axle_over" unit:"kg" symbol:"ao" label:"most that an axle is over"`
	PadPressure *float64   `key:"pad_pressure" unit:"kPa" symbol:"q" label:"pressure under the pad" expr:"mp*g/Ap"`
	PadUsed     *float64   `key:"pad_used" symbol:"us" label:"pressure over what the ground bears" expr:"q/ql"`
	Checked     float64    `key:"limits_checked" unit:"1" symbol:"nc" label:"limits that were given"`

	Warnings calc.Warnings `key:"-"`
}

// Road compares a load on the road, and under pads, with the limits that the user enters.
//
// Over = mass less limit; pad pressure q = W/A. The limits differ by country, road, bridge and day: none is built in. A missing limit is not
// "within": it is named. Bridges and buried pipes want their own check.
var Road = calc.Formula[RoadIn, RoadOut]{
	ID:       "handling.road",
	Title:    "A heavy load on the road",
	About:    "By how much a transport is over the limits of the road, and what its pads put on the ground.",
	Holds:    "Limits as entered: local law differs. Bridges, culverts and buried pipes want their own check, and pads spread a load only as far as they are stiff.",
	Accuracy: "As good as the weighing.",
	Sources:  []source.Ref{{Key: "practice", At: "mass against limit, pressure by area"}},
	Cautions: []calc.Caution{calc.Lifting},
	Fn:       road,
	Steps: func(_ RoadIn, out RoadOut) []calc.Step {
		steps := []calc.Step{{Symbol: "nc", Value: out.Checked, Unit: "-", Text: "limits counted"}}
		if out.WorstAxle != nil {
			steps = append(steps, calc.Step{Symbol: "ao", Value: *out.WorstAxle, Unit: "kg", Text: "largest of the axles' mass less limit, not below zero"})
		}
		return steps
	},
}

func road(in RoadIn) (out RoadOut, err error) {
	if (in.PadLoad == nil) != (in.PadArea == nil) {
		key := map[bool]string{true: "pad_load", false: "pad_area"}[in.PadLoad == nil]
		return out, field.Refuse(key, "%s is missing: a pad needs its load and its area", key)
	}
	if in.GrossLimit != nil {
		out.Checked++
		out.GrossOver = new(max(in.Gross-*in.GrossLimit, 0))
		if *out.GrossOver > 0 {
			out.Over = true
			out.Warnings = append(out.Warnings, fmt.Sprintf("the whole is %.0f kg over its limit", *out.GrossOver))
		}
	}
	out.AxlesOver = []AxleOver{}
	sum := 0.0
	for _, a := range in.Axles {
		sum += a.Mass
		row := AxleOver{Name: a.Name}
		if a.Limit != nil {
			out.Checked++
			row.Over = new(max(a.Mass-*a.Limit, 0))
			if out.WorstAxle == nil || *row.Over > *out.WorstAxle {
				out.WorstAxle = new(*row.Over)
			}
			if *row.Over > 0 {
				out.Over = true
				out.Warnings = append(out.Warnings, fmt.Sprintf("axle %s is %.0f kg over its limit", a.Name, *row.Over))
			}
		}
		out.AxlesOver = append(out.AxlesOver, row)
	}
	if len(in.Axles) > 0 && math.Abs(sum-in.Gross) > 0.02*in.Gross {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the axles add up to %.0f kg, the whole is %.0f kg", sum, in.Gross))
	}
	out.pads(in)
	if out.Checked == 0 {
		out.Warnings = append(out.Warnings, "no limit is given: nothing was compared")
	}
	return out, nil
}

func (out *RoadOut) pads(in RoadIn) {
	if in.PadLoad == nil {
		return
	}
	out.PadPressure = new(*in.PadLoad * calc.Gravity / *in.PadArea)
	if in.Ground == nil {
		out.Warnings = append(out.Warnings, "what the ground bears is not given: the pad's pressure was not compared")
		return
	}
	out.Checked++
	out.PadUsed = new(*out.PadPressure / *in.Ground)
	if *out.PadUsed > 1 {
		out.Over = true
		out.Warnings = append(out.Warnings, fmt.Sprintf("the pad presses %.2f times what the ground bears", *out.PadUsed))
	}
}
