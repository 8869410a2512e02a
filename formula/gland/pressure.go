package gland

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// PressureIn describes a packed gland and how hard its follower was set up.
type PressureIn struct {
	Bore         float64  `key:"bore" unit:"mm" symbol:"D" min:"1" max:"3000" label:"bore of the stuffing box"`
	Shaft        float64  `key:"shaft" unit:"mm" symbol:"d" min:"1" max:"3000" label:"diameter of the shaft or its sleeve"`
	RingDepth    *float64 `key:"ring_depth" unit:"mm" symbol:"h0" min:"0.1" max:"500" label:"depth of a ring along the shaft" help:"the section where not given"`
	Rings        int      `key:"rings" symbol:"n" min:"1" max:"100" label:"number of rings"`
	GlandStress  float64  `key:"gland_stress" unit:"MPa" symbol:"sg" min:"0.0001" max:"100" label:"axial stress under the follower" help:"what was last measured or re-torqued; note the day, as packing relaxes"`
	Ratio        float64  `key:"k_ratio" symbol:"K" default:"0.5" min:"0.01" max:"1" label:"radial over axial stress" help:"0.3 to 0.9 for soft packing (from memory)"`
	Poisson      *float64 `key:"poisson" symbol:"nu" min:"0.01" max:"0.5" label:"Poisson's ratio of a solid packing" help:"instead of the ratio: K = nu/(1 - nu) for a confined solid"`
	Friction     float64  `key:"friction" symbol:"mu" default:"0.10" min:"0" max:"1" label:"friction of packing on shaft and box" help:"0.05 to 0.3 (from memory)"`
	Studs        *float64 `key:"studs" symbol:"ns" min:"1" max:"64" label:"number of follower studs"`
	StudDiameter *float64 `key:"stud_diameter" unit:"mm" symbol:"db" over:"0" max:"100" label:"diameter of a stud"`
	NutFactor    float64  `key:"nut_factor" symbol:"Kn" default:"0.2" over:"0" max:"1" label:"nut factor" help:"torque over diameter and force; 0.2 for plain dry threads (from memory)"`
	Head         *float64 `key:"water_head" unit:"m" symbol:"hw" min:"0" max:"100" label:"depth of the shaft below the water"`
	Density      float64  `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"950" max:"1100" label:"density of the water"`
}

// PressureRing is the stress at the water side of one ring, counted from the follower.
type PressureRing struct {
	Ring   float64 `key:"ring" unit:"1" symbol:"ring" label:"ring from the follower"`
	Axial  float64 `key:"axial" unit:"MPa" symbol:"axial" label:"axial stress"`
	Radial float64 `key:"radial" unit:"MPa" symbol:"radial" label:"radial stress"`
}

// PressureOut is the load on the follower and the stress down the box.
type PressureOut struct {
	Section       float64        `key:"section" unit:"mm" symbol:"s" label:"section of the packing" expr:"(D-d)/2"`
	Depth         float64        `key:"ring_depth_taken" unit:"mm" symbol:"hr" label:"depth of a ring"`
	RatioTaken    float64        `key:"k_ratio_taken" symbol:"Kr" label:"radial over axial stress"`
	FollowerForce float64        `key:"follower_force" unit:"N" symbol:"F" label:"force on the follower" expr:"sg*pi*(D^2-d^2)/4"`
	StudForce     *float64       `key:"stud_force" unit:"N" symbol:"Fs" label:"force in a stud" expr:"F/ns"`
	StudTorque    *float64       `key:"stud_torque" unit:"N.m" symbol:"T" label:"torque on a nut" expr:"Kn*db*Fs"`
	StressRatio   float64        `key:"stress_ratio_bottom" symbol:"rb" label:"axial stress at the water end over that at the follower" expr:"exp(-2*mu*Kr*n*hr/s)"`
	RadialBottom  float64        `key:"radial_stress_bottom" unit:"MPa" symbol:"q" label:"radial stress at the water end" expr:"Kr*sg*rb"`
	WaterPressure *float64       `key:"water_pressure" unit:"MPa" symbol:"pw" label:"pressure of the water" expr:"rho_w*g*hw"`
	SealMargin    *float64       `key:"seal_margin" symbol:"sm" label:"radial stress at the water end over water pressure" expr:"q/pw"`
	Profile       []PressureRing `key:"profile" symbol:"profile" label:"stress at the water side of each ring"`

	Warnings calc.Warnings `key:"-"`
}

// Pressure gives the load on a gland's follower and how its stress dies away towards the water.
//
// F = sigma_g pi (D^2 - d^2)/4; sigma(x) = sigma_g exp(-2 mu K x/s), x from the follower, s the section; q = K sigma. It holds for dry or
// lightly lubricated rings, without a lantern ring, before the packing relaxes. Source: balance of a slice of packing (Denny 1957; Ochonski
// 1988); K = nu/(1 - nu) of a confined elastic solid (Valve Selection Handbook). K and mu of old packing are not known better than by a
// factor of two: give them as ranges.
var Pressure = calc.Formula[PressureIn, PressureOut]{
	ID:       "gland.pressure",
	Title:    "Follower load and the stress down the box",
	About:    "What force and torque a stress under the follower takes, and how much of it still presses the packing on the shaft at the water end.",
	Holds:    "Dry or lightly lubricated rings, no lantern ring, before relaxation. The stress is what was last measured or re-torqued, on that day: no law of ageing is published, and none is used here.",
	Accuracy: "Ratio and friction are known to a factor of two at best: give ranges. It orders glands and shows whether tightening reaches the water end.",
	Sources:  []source.Ref{{Key: "denny-1957"}, {Key: "ochonski-1988"}, {Key: "valve-selection", At: "p. 21, lateral stress of a confined solid"}, {Key: "memory", At: "ranges of the stress ratio and of friction; nut factor 0.2"}},
	Cautions: []calc.Caution{calc.Asbestos, calc.Openings},
	Fn:       pressure,
	Steps:    pressureSteps,
}

// ConfinedRatio is radial over axial stress of an elastic solid held on all sides: nu/(1 - nu) (Valve Selection Handbook, p. 21).
func ConfinedRatio(poisson float64) float64 { return poisson / (1 - poisson) }

func pressure(in PressureIn) (out PressureOut, err error) {
	if in.Bore <= in.Shaft {
		return out, field.Refuse("bore", "bore must be larger than shaft (%v <= %v)", field.Q("bore", in.Bore, "mm"), field.Q("shaft", in.Shaft, "mm"))
	}
	if in.StudDiameter != nil && in.Studs == nil {
		return out, field.Refuse("studs", "studs is missing: a stud diameter is given, but not how many there are")
	}
	out.Section = (in.Bore - in.Shaft) / 2
	out.Depth, out.RatioTaken = out.Section, in.Ratio
	if in.RingDepth != nil {
		out.Depth = *in.RingDepth
	}
	if in.Poisson != nil {
		out.RatioTaken = ConfinedRatio(*in.Poisson)
	}
	out.FollowerForce = in.GlandStress * math.Pi / 4 * (in.Bore*in.Bore - in.Shaft*in.Shaft)
	if in.Studs != nil {
		out.StudForce = new(out.FollowerForce / *in.Studs)
		if in.StudDiameter != nil {
			out.StudTorque = new(in.NutFactor * *in.StudDiameter * *out.StudForce)
		}
	}
	fade := 2 * in.Friction * out.RatioTaken * out.Depth / out.Section
	for i := range in.Rings {
		axial := in.GlandStress * math.Exp(-fade*float64(i+1))
		out.Profile = append(out.Profile, PressureRing{float64(i + 1), axial, out.RatioTaken * axial})
	}
	out.StressRatio = math.Exp(-fade * float64(in.Rings))
	out.RadialBottom = out.RatioTaken * in.GlandStress * out.StressRatio
	if in.Head != nil {
		out.WaterPressure = new(in.Density * calc.Gravity * *in.Head)
		if *out.WaterPressure > 1 { // Pa, a tenth of a millimetre of water
			out.SealMargin = new(out.RadialBottom / *out.WaterPressure)
		}
	}
	out.Warnings = pressureWarnings(in, out)
	return out, nil
}

// yieldsAbout is a stud stress that plain carbon steel reaches about its yield, Pa; from memory, for a warning only.
const yieldsAbout = 200e6

func pressureWarnings(in PressureIn, out PressureOut) (w calc.Warnings) {
	if out.RatioTaken < 0.3 || out.RatioTaken > 0.9 {
		w = append(w, fmt.Sprintf("a stress ratio of %.3g lies outside 0.3 to 0.9, where soft packing is", out.RatioTaken))
	}
	if in.Friction < 0.05 || in.Friction > 0.3 {
		w = append(w, fmt.Sprintf("a friction of %.3g lies outside 0.05 to 0.3", in.Friction))
	}
	if out.SealMargin != nil && *out.SealMargin < 1 {
		w = append(w, fmt.Sprintf("the packing presses less than the water at the water end (%.3g of it): the gland weeps unless rings nearer the follower hold", *out.SealMargin))
	}
	if out.StudForce != nil && in.StudDiameter != nil {
		if stress := *out.StudForce / (math.Pi / 4 * *in.StudDiameter * *in.StudDiameter); stress > yieldsAbout {
			w = append(w, fmt.Sprintf("a stud would carry %.0f MPa over its full section, about the yield of plain steel or beyond it: old studs may part", stress/1e6))
		}
	}
	if in.GlandStress > 20e6 {
		w = append(w, fmt.Sprintf("a follower stress of %.3g MPa is beyond what soft packing is set up with: check the unit", in.GlandStress/1e6))
	}
	return w
}

func pressureSteps(in PressureIn, out PressureOut) []calc.Step {
	depth := calc.Step{Symbol: "hr", Formula: "s", Value: out.Depth, Unit: "m", Text: "square rings: as deep as their section"}
	if in.RingDepth != nil {
		depth.Formula, depth.Text = "h0", "as given"
	}
	ratio := calc.Step{Symbol: "Kr", Formula: "K", Value: out.RatioTaken, Unit: "-", Text: "as given"}
	if in.Poisson != nil {
		ratio.Formula, ratio.Text = "nu/(1-nu)", "confined elastic solid"
	}
	return []calc.Step{depth, ratio}
}
