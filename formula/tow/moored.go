package tow

import (
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// MooredIn is a moored ship with a current on her side.
type MooredIn struct {
	Length   float64 `key:"length" unit:"m" symbol:"L" over:"0" max:"500" label:"length on the waterline"`
	Beam     float64 `key:"beam" unit:"m" symbol:"B" over:"0" max:"80" label:"beam on the waterline"`
	Draft    float64 `key:"draft" unit:"m" symbol:"T" over:"0" max:"40" label:"mean draft"`
	Midship  float64 `key:"midship_coefficient" symbol:"Cm" over:"0.3" max:"1" label:"midship section coefficient"`
	Volume   float64 `key:"volume" unit:"m3" symbol:"V" over:"0" max:"600000" label:"volume displaced"`
	Depth    float64 `key:"depth" unit:"m" symbol:"d" over:"0" max:"12000" label:"depth of water"`
	Speed    float64 `key:"speed" unit:"m/s" symbol:"v" min:"0" max:"8" label:"speed of the current"`
	Angle    float64 `key:"angle" unit:"deg" symbol:"theta" default:"90" min:"0" max:"360" label:"current from the bow" help:"90 is on the beam"`
	Exponent float64 `key:"exponent" symbol:"K" default:"2" min:"1" max:"5" label:"exponent of the depth" help:"2 fits most model tests; 3 a few deep-draft hulls"`
	Density  float64 `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1026" min:"990" max:"1035" label:"density of the water"`
}

// MooredOut is the force of the current on her side.
type MooredOut struct {
	Shape       float64 `key:"shape" symbol:"chi" label:"ship parameter" expr:"L^2*(Cm*B*T)/(B*V)"`
	Deep        float64 `key:"coefficient_deep" symbol:"C0" label:"drag coefficient in deep water" expr:"0.22*sqrt(chi)"`
	Coefficient float64 `key:"coefficient" symbol:"C" label:"drag coefficient at this depth" expr:"C0+(3.2-C0)*(T/d)^K"`
	Force       float64 `key:"force" unit:"MN" symbol:"F" label:"force across the ship" expr:"0.5*rho*v^2*L*T*C*sin(theta)"`

	Warnings calc.Warnings `key:"-"`
}

// Moored is the transverse force of a current on a moored ship.
//
// F = rho/2 v^2 L T C sin(theta), C = C0 + (3.2 - C0)(T/d)^K, C0 = 0.22 sqrt(chi), chi = L^2 Am/(B V). As the water under the keel goes the force grows
// to three times and more. Source: UFC 4-159-03, equations 10 to 13. For currents up to 1.5 m/s.
var Moored = calc.Formula[MooredIn, MooredOut]{
	ID:       "tow.moored",
	Title:    "Current on a moored ship",
	About:    "The sideways force of a current on a ship at her moorings, and how shallow water multiplies it.",
	Holds:    "Ship-shaped hulls in currents up to 1.5 m/s, open water: a quay wall or a bank close by changes it.",
	Accuracy: "About 15 to 25 % against model tests.",
	Sources:  []source.Ref{{Key: "ufc-4-159-03", At: "equations 10 to 13, table 4-6"}},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       moored,
}

func moored(in MooredIn) (out MooredOut, err error) {
	if in.Depth < in.Draft {
		return out, field.Refuse("depth", "she draws more (%v) than there is water (%v): she is aground, see docking.aground", field.Q("draft", in.Draft, "m"), field.Q("depth", in.Depth, "m"))
	}
	if in.Volume > in.Length*in.Beam*in.Draft {
		return out, field.Refuse("volume", "volume %v is more than length, beam and draft enclose (%v)", field.Q("volume", in.Volume, "m3"), field.Q("", in.Length*in.Beam*in.Draft, "m3"))
	}
	out.Shape = in.Length * in.Length * in.Midship * in.Beam * in.Draft / (in.Beam * in.Volume)
	out.Deep = 0.22 * math.Sqrt(out.Shape)
	out.Coefficient = out.Deep + (3.2-out.Deep)*math.Pow(in.Draft/in.Depth, in.Exponent)
	out.Force = 0.5 * in.Density * in.Speed * in.Speed * in.Length * in.Draft * out.Coefficient * math.Sin(in.Angle)
	if in.Speed > 1.5 {
		out.Warnings = append(out.Warnings, "the current is above 1.5 m/s, which the shallow-water coefficient was fitted to")
	}
	if in.Draft/in.Depth > 0.8 {
		out.Warnings = append(out.Warnings, "less than a quarter of her draft is left under the keel: the force is steep in the depth here; use the lowest water of the period")
	}
	return out, nil
}
