package handling

import (
	"fmt"

	"oakum/calc"
	"oakum/source"
)

// PropellerMassIn describes a propeller.
type PropellerMassIn struct {
	Diameter float64  `key:"diameter" unit:"m" symbol:"D" min:"0.1" max:"12" label:"diameter"`
	Known    *float64 `key:"known_mass" unit:"kg" symbol:"mk" min:"0.1" max:"200000" label:"mass weighed or cast in"`
	Drawing  *float64 `key:"drawing_mass" unit:"kg" symbol:"md" min:"0.1" max:"200000" label:"mass by a drawing"`
	Blades   *int     `key:"blades" symbol:"z" min:"2" max:"8" label:"number of blades"`
	Material string   `key:"material" enum:"manganese bronze|nickel-aluminium bronze|bronze|cast iron|cast steel|stainless steel" default:"bronze" label:"material"`
	Density  *float64 `key:"density" unit:"kg/m3" symbol:"rho0" over:"1000" max:"20000" label:"density" help:"instead of that of the material"`
	Water    float64  `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"950" max:"1100" label:"density of the water"`
}

// PropellerMassOut is its mass as a range.
type PropellerMassOut struct {
	Mass        float64 `key:"mass" unit:"kg" symbol:"m" label:"mass"`
	Low         float64 `key:"mass_low" unit:"kg" symbol:"ml" label:"mass, low"`
	High        float64 `key:"mass_high" unit:"kg" symbol:"mh" label:"mass, high"`
	Density     float64 `key:"density_taken" unit:"kg/m3" symbol:"rho" label:"density of the metal"`
	WaterFactor float64 `key:"water_factor" symbol:"kw" label:"share of the mass that hangs in the water" expr:"1-rho_w/rho"`
	InWater     float64 `key:"mass_in_water" unit:"kg" symbol:"mw" label:"mass as it hangs in the water" expr:"m*kw"`
	InWaterLow  float64 `key:"mass_in_water_low" unit:"kg" symbol:"mwl" label:"mass in the water, low" expr:"ml*kw"`
	InWaterHigh float64 `key:"mass_in_water_high" unit:"kg" symbol:"mwh" label:"mass in the water, high" expr:"mh*kw"`
	Basis       string  `key:"basis" label:"how the mass is known"`

	Warnings calc.Warnings `key:"-"`
}

// Mass over diameter cubed of large bronze fixed-pitch propellers, kg/m3. Fitted here to two published weights: 38 030 lb at 17 ft 4.5 in (116)
// and 63 628 lb at 18 ft, five blades (174.8).
const (
	leanest  = 110.0
	heaviest = 175.0
)

// densities of propeller metals, kg/m3. Bronzes: Copper Development Association, C86500 0.301 lb/in3 and C95800 0.276 lb/in3; iron and
// steels from memory.
var densities = map[string]float64{
	"manganese bronze": 8330, "nickel-aluminium bronze": 7640, "bronze": 8330, "cast iron": 7200, "cast steel": 7850, "stainless steel": 7800,
}

// PropellerMass gives a propeller's mass: a weighed or cast-in figure, else a drawing's, else a band by its diameter.
//
// The band is 110 to 175 kg/m3 times D^3, for large bronze fixed-pitch propellers; in water 1 - rho_w/rho of it hangs. Source: fitted here to two
// published weights. It is a band, never a single figure: order cranes for its high end, and weigh.
var PropellerMass = calc.Formula[PropellerMassIn, PropellerMassOut]{
	ID:       "handling.propeller-mass",
	Title:    "Mass of a propeller",
	About:    "What a propeller weighs, in air and in the water, and how that is known.",
	Holds:    "Large bronze fixed-pitch propellers with three to five blades. The middle of the band is no estimate: plan for its high end until it is weighed.",
	Accuracy: "Weighed: as good as the scale. By diameter: the band, a factor of 1.6 from end to end.",
	Sources:  []source.Ref{{Key: "propeller-weights", At: "38 030 lb at 17 ft 4.5 in; 63 628 lb at 18 ft"}, {Key: "copper-alloys", At: "C86500, C95800"}, {Key: "memory", At: "density of cast iron and steels"}},
	Cautions: []calc.Caution{calc.Lifting, calc.Diving},
	Fn:       propellerMass,
	Steps:    propellerSteps,
}

func propellerMass(in PropellerMassIn) (out PropellerMassOut, err error) {
	cube := in.Diameter * in.Diameter * in.Diameter
	switch {
	case in.Known != nil:
		out.Mass, out.Low, out.High, out.Basis = *in.Known, *in.Known, *in.Known, "weighed or cast in"
	case in.Drawing != nil:
		out.Mass, out.Low, out.High, out.Basis = *in.Drawing, *in.Drawing, *in.Drawing, "drawing"
	default:
		out.Low, out.High, out.Basis = leanest*cube, heaviest*cube, "band by diameter"
		out.Mass = (out.Low + out.High) / 2
		out.Warnings = append(out.Warnings, fmt.Sprintf("by diameter alone it weighs anything from %.3g to %.3g t: plan the lift for the high end and weigh it", out.Low/1e3, out.High/1e3))
	}
	out.Density = densities[in.Material]
	if in.Density != nil {
		out.Density = *in.Density
	}
	out.WaterFactor = 1 - in.Water/out.Density
	out.InWater, out.InWaterLow, out.InWaterHigh = out.Mass*out.WaterFactor, out.Low*out.WaterFactor, out.High*out.WaterFactor
	out.Warnings = append(out.Warnings, propellerWarnings(in, out, cube)...)
	return out, nil
}

func propellerWarnings(in PropellerMassIn, out PropellerMassOut, cube float64) (w calc.Warnings) {
	byRule := in.Known == nil && in.Drawing == nil
	bronze := in.Material == "bronze" || in.Material == "manganese bronze" || in.Material == "nickel-aluminium bronze"
	switch {
	case byRule && !bronze:
		w = append(w, "the band was fitted to bronze propellers: "+in.Material+" ones are built thicker")
	case byRule && in.Diameter < 3:
		w = append(w, "the band was fitted to propellers of more than 5 m: a small one can lie outside it")
	case !byRule && (out.Mass < 0.6*leanest*cube || out.Mass > 1.5*heaviest*cube):
		w = append(w, fmt.Sprintf("%.3g t is far from the band of %.3g to %.3g t for its diameter: check the figure and its unit", out.Mass/1e3, leanest*cube/1e3, heaviest*cube/1e3))
	}
	return w
}

func propellerSteps(in PropellerMassIn, out PropellerMassOut) []calc.Step {
	m, l, h, text := "(ml+mh)/2", "110*D^3", "175*D^3", "band for large bronze propellers"
	if in.Known != nil {
		m, l, h, text = "mk", "mk", "mk", "as weighed or cast in"
	} else if in.Drawing != nil {
		m, l, h, text = "md", "md", "md", "by the drawing"
	}
	rho := calc.Step{Symbol: "rho", Value: out.Density, Unit: "kg/m3", Text: "density of " + in.Material}
	if in.Density != nil {
		rho.Formula, rho.Text = "rho0", "as given"
	}
	return []calc.Step{
		{Symbol: "ml", Formula: l, Value: out.Low, Unit: "kg", Text: text}, {Symbol: "mh", Formula: h, Value: out.High, Unit: "kg", Text: text},
		{Symbol: "m", Formula: m, Value: out.Mass, Unit: "kg", Text: text}, rho,
	}
}
