package tow

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// Propeller is a propeller dragged through the water.
type Propeller struct {
	Diameter *float64 `key:"diameter" unit:"m" symbol:"D" over:"0" max:"12" label:"diameter"`
	Ratio    *float64 `key:"blade_area_ratio" symbol:"r" over:"0" max:"1.5" label:"projected blade area over the disc" help:"where only the expanded ratio is known it is a little too much, on the safe side"`
	Area     *float64 `key:"area" unit:"m2" symbol:"Ap" over:"0" max:"100" label:"projected blade area" help:"instead of diameter and ratio"`
	Locked   bool     `key:"locked" default:"true" label:"shaft locked"`
}

// ResistanceIn is a dead ship under tow.
type ResistanceIn struct {
	Speed      float64     `key:"speed" unit:"kn" symbol:"v" min:"0" max:"20" label:"speed over the ground"`
	Current    float64     `key:"current" unit:"kn" symbol:"vc" default:"0" min:"-10" max:"10" label:"current against her" help:"a fair current is negative"`
	Wind       float64     `key:"wind" unit:"kn" symbol:"vw" default:"0" min:"0" max:"150" label:"wind speed at 10 m"`
	Heading    float64     `key:"heading" unit:"deg" symbol:"theta" default:"0" min:"-360" max:"360" label:"where the wind comes from, off her bow" help:"0 ahead, 90 abeam"`
	Length     float64     `key:"length" unit:"m" symbol:"L" over:"0" max:"500" label:"length on the waterline"`
	Beam       float64     `key:"beam" unit:"m" symbol:"B" over:"0" max:"80" label:"beam on the waterline"`
	Draft      float64     `key:"draft" unit:"m" symbol:"T" over:"0" max:"40" label:"mean draft"`
	Wetted     *float64    `key:"wetted_area" unit:"m2" symbol:"S0" over:"0" max:"100000" label:"wetted area"`
	Mass       *float64    `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement" help:"gives the wetted area where that is not known"`
	Form       float64     `key:"form_factor" symbol:"k" default:"0" min:"0" max:"2" label:"form allowance on the friction"`
	Fouling    float64     `key:"fouling_factor" symbol:"ff" default:"1" min:"1" max:"5" label:"growth and roughness: friction times this" help:"1 is a clean hull; naval practice takes 1.25 for a rough one; heavy growth doubles and more"`
	Frontal    float64     `key:"frontal_area" unit:"m2" symbol:"Af" default:"0" min:"0" max:"10000" label:"frontal area above water"`
	FrontalZ   float64     `key:"frontal_height" unit:"m" symbol:"hf" default:"10" over:"0" max:"80" label:"height of its middle above water"`
	Side       float64     `key:"side_area" unit:"m2" symbol:"As" default:"0" min:"0" max:"20000" label:"side area above water"`
	SideZ      float64     `key:"side_height" unit:"m" symbol:"hs" default:"10" over:"0" max:"80" label:"height of its middle above water"`
	WindC      float64     `key:"wind_coefficient" symbol:"Cw" default:"0.7" over:"0" max:"2" label:"wind coefficient" help:"0.7 is from memory"`
	WindK      float64     `key:"heading_coefficient" symbol:"K" default:"1.2" over:"0" max:"3" label:"heading coefficient of the wind" help:"1.2 for wind a little off the bow is from memory"`
	Propellers []Propeller `key:"propellers" symbol:"props" optional:"yes" most:"20" label:"propellers"`
	FreeFactor float64     `key:"free_factor" symbol:"fr" default:"0.4" min:"0" max:"1" label:"drag of a propeller that turns freely, of a locked one" help:"from memory"`
	Sea        float64     `key:"sea" unit:"kN" symbol:"Rs" default:"0" min:"0" max:"20000" label:"added resistance in waves, as judged"`
	Depth      *float64    `key:"depth" unit:"m" symbol:"d" over:"0" max:"12000" label:"least depth of water"`
	Efficiency float64     `key:"efficiency" symbol:"e" default:"0.75" over:"0" max:"1" label:"part of the bollard pull left at towing speed" help:"0.75 is from memory: the tug's own curve governs"`
	Hawser     float64     `key:"hawser" symbol:"fh" default:"0.1" min:"0" max:"1" label:"towline's own resistance, of the total" help:"a tenth where the tug is not yet chosen"`
	Density    float64     `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"990" max:"1035" label:"density of the water"`
	Viscosity  float64     `key:"viscosity" unit:"mPa.s" symbol:"mu" default:"1.22" min:"0.5" max:"2.5" label:"viscosity of the water" help:"1.22 for sea water at 15 degC"`
}

// ResistanceOut is what holds her back.
type ResistanceOut struct {
	WaterSpeed  float64  `key:"water_speed" unit:"kn" symbol:"vr" label:"speed through the water" expr:"max(v+vc, 0)"`
	WettedArea  float64  `key:"wetted_area" unit:"m2" symbol:"S" label:"wetted area used"`
	Reynolds    float64  `key:"reynolds" symbol:"Rn" label:"Reynolds number" expr:"vr*L*rho/mu"`
	Cf          float64  `key:"friction_coefficient" symbol:"Cf" label:"friction coefficient"`
	Friction    float64  `key:"friction" unit:"kN" symbol:"Rf" label:"friction" expr:"0.5*rho*vr^2*S*Cf*(1+k)*ff"`
	FormDrag    float64  `key:"form" unit:"kN" symbol:"Rb" label:"form drag" expr:"0.1*0.5*rho*vr^2*B*T"`
	Hull        float64  `key:"hull" unit:"kN" symbol:"Rh" label:"hull" expr:"Rf+Rb"`
	BladeArea   float64  `key:"blade_area" unit:"m2" symbol:"Ab" label:"blade area dragged, free propellers counted in part"`
	Propeller   float64  `key:"propeller" unit:"kN" symbol:"Rp" label:"propellers" expr:"3.737*4.4482216152605/0.09290304*(3600/1852)^2*Ab*vr^2"`
	HeadWind    float64  `key:"head_wind" unit:"kn" symbol:"vh" label:"wind along her at the height of the frontal area" expr:"v+vw*(hf/10)^(1/7)*cos(theta)"`
	WindForce   float64  `key:"wind" unit:"kN" symbol:"Rw" label:"wind" expr:"0.00506*4.4482216152605/0.09290304*(3600/1852)^2*Cw*Af*K*vh*abs(vh)"`
	SideForce   float64  `key:"side_force" unit:"kN" symbol:"Fs" label:"wind across her" expr:"0.00506*4.4482216152605/0.09290304*(3600/1852)^2*Cw*As*(vw*(hs/10)^(1/7)*sin(theta))^2"`
	Total       float64  `key:"total" unit:"kN" symbol:"R" label:"total" expr:"max(Rh+Rp+Rw+Rs, 0)"`
	Without     float64  `key:"total_without_propellers" unit:"kN" symbol:"R0" label:"total with the propellers off" expr:"max(Rh+Rw+Rs, 0)"`
	Share       *float64 `key:"share_propellers" symbol:"sp" label:"part of the total that is the propellers"`
	LineForce   float64  `key:"line_force" unit:"kN" symbol:"F" label:"pull in the towline at the tug" expr:"R*(1+fh)"`
	BollardPull float64  `key:"bollard_pull" unit:"t" symbol:"BP" label:"bollard pull wanted" expr:"F/(e*g)"`
	BollardOff  float64  `key:"bollard_pull_without_propellers" unit:"t" symbol:"BP0" label:"the same with the propellers off" expr:"R0*(1+fh)/(e*g)"`

	Warnings calc.Warnings `key:"-"`
}

// Resistance is what a dead ship puts up against a tug.
//
// Hull: friction 0.075/(log10 Rn - 2)^2 on the wetted area with the user's allowances for form and growth, and a form drag of 0.1 on beam times
// draft (UFC 4-159-03). Propeller, locked: 3.737 A v^2 lb, A the projected area in ft2, v in kn. Wind: 0.00506 C A K v^2 lb (US Navy Towing Manual,
// appendix G). With the propellers and without, for that is one of the arguments.
var Resistance = calc.Formula[ResistanceIn, ResistanceOut]{
	ID:       "tow.resistance",
	Title:    "Resistance of a ship under tow",
	About:    "What a dead ship puts up against a tug at a given speed, wind and current, with her propellers and without, and the bollard pull that takes.",
	Holds:    "Displacement speeds well below a speed-length ratio of 0.5, a straight tow, deep water. Waves enter only as the user judges them.",
	Accuracy: "About 25 %; growth on an old bottom is the largest unknown.",
	Sources: []source.Ref{{Key: "towing-manual", At: "appendix G"}, {Key: "ufc-4-159-03", At: "equations 15 to 21"}, {Key: "ittc-57"},
		{Key: "memory", At: "wind coefficient 0.7, heading coefficient 1.2, free propeller 0.4, pull at speed 0.75"}},
	Cautions: []calc.Caution{calc.Towing},
	Fn:       resistance,
	Steps:    resistanceSteps,
}

// Conversions of the Towing Manual's lb, ft2 and kn to N, m2 and m/s.
const (
	poundForce = 4.4482216152605
	squareFoot = 0.09290304
	knot       = 1852.0 / 3600
	propDrag   = 3.737 * poundForce / squareFoot / (knot * knot)   // N per m2 and (m/s)2
	windDrag   = 0.00506 * poundForce / squareFoot / (knot * knot) // N per m2 and (m/s)2
)

// FrictionLine is the ITTC 1957 model-ship correlation line at Reynolds number rn.
func FrictionLine(rn float64) float64 {
	x := math.Log10(rn) - 2
	return 0.075 / (x * x)
}

func resistance(in ResistanceIn) (out ResistanceOut, err error) {
	if out.WettedArea, err = wetted(in); err != nil {
		return out, err
	}
	if in.Depth != nil && *in.Depth <= in.Draft {
		return out, field.Refuse("depth", "she draws more (%v) than there is water on the way (%v)", field.Q("draft", in.Draft, "m"), field.Q("depth", *in.Depth, "m"))
	}
	v := max(in.Speed+in.Current, 0)
	q := 0.5 * in.Density * v * v
	out.WaterSpeed = v
	out.Reynolds = v * in.Length * in.Density / in.Viscosity
	if out.Reynolds > 1e5 {
		out.Cf = FrictionLine(out.Reynolds)
	}
	out.Friction = q * out.WettedArea * out.Cf * (1 + in.Form) * in.Fouling
	out.FormDrag = 0.1 * q * in.Beam * in.Draft
	out.Hull = out.Friction + out.FormDrag
	if out.BladeArea, err = blades(in); err != nil {
		return out, err
	}
	out.Propeller = propDrag * out.BladeArea * v * v
	out.HeadWind = in.Speed + in.Wind*math.Pow(in.FrontalZ/10, 1.0/7)*math.Cos(in.Heading)
	out.WindForce = windDrag * in.WindC * in.Frontal * in.WindK * out.HeadWind * math.Abs(out.HeadWind)
	across := in.Wind * math.Pow(in.SideZ/10, 1.0/7) * math.Sin(in.Heading)
	out.SideForce = windDrag * in.WindC * in.Side * across * across
	out.Total = max(out.Hull+out.Propeller+out.WindForce+in.Sea, 0)
	out.Without = max(out.Hull+out.WindForce+in.Sea, 0)
	if out.Total > 0 {
		out.Share = new(out.Propeller / out.Total)
	}
	out.LineForce = out.Total * (1 + in.Hawser)
	pull := (1 + in.Hawser) / (in.Efficiency * calc.Gravity)
	out.BollardPull, out.BollardOff = out.Total*pull, out.Without*pull
	out.Warnings = resistanceWarnings(in, out)
	return out, nil
}

// wetted is the area given, or S = 1.7 T L + V/T (UFC 4-159-03, equation 18).
func wetted(in ResistanceIn) (float64, error) {
	switch {
	case in.Wetted != nil:
		if most := 2 * (in.Length*in.Beam + in.Length*in.Draft*2); *in.Wetted > most {
			return 0, field.Refuse("wetted_area", "wetted_area %v is more than a box of her length, beam and draft has twice over (%v)", field.Q("wetted_area", *in.Wetted, "m2"), field.Q("", most, "m2"))
		}
		return *in.Wetted, nil
	case in.Mass != nil:
		return 1.7*in.Draft*in.Length + *in.Mass/in.Density/in.Draft, nil
	}
	return 0, field.Refuse("wetted_area", "wetted_area is missing: give it in m2, or the displacement to estimate it from")
}

func blades(in ResistanceIn) (sum float64, err error) {
	for i, p := range in.Propellers {
		var a float64
		switch {
		case p.Area != nil:
			a = *p.Area
		case p.Diameter != nil && p.Ratio != nil:
			a = *p.Ratio * math.Pi * *p.Diameter * *p.Diameter / 4
		default:
			return 0, field.Refuse(fmt.Sprintf("propellers[%d].diameter", i), "propeller %d: give its diameter and blade_area_ratio, or its projected area", i+1)
		}
		if p.Diameter != nil && *p.Diameter > 2*in.Draft {
			return 0, field.Refuse(fmt.Sprintf("propellers[%d].diameter", i), "propeller %d is more than twice as large (%v) as she is deep (%v)", i+1, field.Q("", *p.Diameter, "m"), field.Q("draft", in.Draft, "m"))
		}
		if !p.Locked {
			a *= in.FreeFactor
		}
		sum += a
	}
	return sum, nil
}

func resistanceWarnings(in ResistanceIn, out ResistanceOut) (w calc.Warnings) {
	if in.Fouling == 1 {
		w = append(w, "the bottom is counted as clean (fouling_factor 1): growth of years can double the friction")
	}
	for _, p := range in.Propellers {
		if !p.Locked {
			w = append(w, "a propeller is free to turn: shafts are locked for a tow, or the glands and bearings run without anyone watching")
			break
		}
	}
	if fn := out.WaterSpeed / math.Sqrt(calc.Gravity*in.Length); fn > 0.2 {
		w = append(w, fmt.Sprintf("Froude number %.2f: waves of her own making are no longer small and are not counted", fn))
	}
	if in.Depth != nil && *in.Depth < 2*in.Draft {
		w = append(w, "the water is less than twice as deep as she is: resistance and squat grow there and are not counted")
	}
	if in.Frontal == 0 && in.Wind > 0 {
		w = append(w, "no frontal area given: the wind is not counted")
	}
	if math.Abs(out.HeadWind) < in.Wind/2 {
		w = append(w, "wind well off the bow makes her sheer; this sheet counts only its part along her")
	}
	return w
}

func resistanceSteps(in ResistanceIn, out ResistanceOut) []calc.Step {
	s := "S0"
	if in.Wetted == nil {
		s = "1.7*T*L+W/rho/T"
	}
	cf := calc.Step{Symbol: "Cf", Formula: "0.075/(log10(Rn)-2)^2", Value: out.Cf, Unit: "-", Text: "ITTC 1957 line"}
	if out.Cf == 0 {
		cf.Formula, cf.Text = "0", "too slow for the friction line"
	}
	steps := []calc.Step{{Symbol: "S", Formula: s, Value: out.WettedArea, Unit: "m2", Text: "wetted area"}, cf,
		{Symbol: "Ab", Value: out.BladeArea, Unit: "m2", Text: "sum of the propellers: area as given, or ratio x pi D^2/4; a free one times free_factor"}}
	if out.Share != nil {
		steps = append(steps, calc.Step{Symbol: "sp", Formula: "Rp/R", Value: *out.Share, Unit: "-", Text: "part of the propellers"})
	}
	return steps
}
