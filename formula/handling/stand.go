package handling

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// StandIn describes a propeller that stands upright on a slab, in the wind.
type StandIn struct {
	Mass       float64  `key:"mass" unit:"kg" symbol:"m" min:"1" max:"1e6" label:"mass of the propeller with its stand"`
	Diameter   float64  `key:"diameter" unit:"m" symbol:"D" min:"0.1" max:"12" label:"diameter"`
	Solidity   float64  `key:"solidity" symbol:"so" default:"0.6" min:"0.01" max:"1" label:"share of the disc that stops the wind"`
	Arm        float64  `key:"arm" unit:"m" symbol:"hw" min:"0.01" max:"30" label:"height of its centre above the underside of the slab"`
	WindSpeed  *float64 `key:"wind_speed" unit:"m/s" symbol:"V" min:"0" max:"120" label:"design wind speed, three-second gust"`
	WindGiven  *float64 `key:"wind_pressure" unit:"Pa" symbol:"qw0" min:"0" max:"10000" label:"wind pressure" help:"instead of a speed"`
	Kz         float64  `key:"kz" symbol:"Kz" default:"0.85" min:"0.01" max:"3" label:"factor for height and ground"`
	Kzt        float64  `key:"kzt" symbol:"Kzt" default:"1" min:"0.5" max:"5" label:"factor for hills"`
	Kd         float64  `key:"kd" symbol:"Kd" default:"0.85" min:"0.01" max:"1" label:"factor for wind direction"`
	Gust       float64  `key:"gust" symbol:"Gf" default:"0.85" min:"0.01" max:"2" label:"gust factor"`
	Force      float64  `key:"force_coefficient" symbol:"Cf" default:"1.5" min:"0.01" max:"3" label:"force coefficient"`
	SlabLength float64  `key:"slab_length" unit:"m" symbol:"L" min:"0.05" max:"50" label:"slab across the wind"`
	SlabWidth  float64  `key:"slab_width" unit:"m" symbol:"B" min:"0.05" max:"50" label:"slab along the wind"`
	SlabDepth  float64  `key:"slab_depth" unit:"m" symbol:"t" min:"0.01" max:"10" label:"depth of the slab"`
	SlabMetre  float64  `key:"slab_density" unit:"kg/m3" symbol:"rho" default:"2400" over:"0" max:"10000" label:"density of the slab"`
	Soil       string   `key:"soil" enum:"bedrock|rock|gravel|sand|clay" default:"clay" label:"ground" help:"IBC 2012 classes: crystalline bedrock; sedimentary rock; sandy gravel; sand, silty or clayey sand; clay, silt. Mud, peat and fill carry nothing without proof"`
	SoilGiven  *float64 `key:"soil_bearing" unit:"kPa" symbol:"qs0" min:"0.1" max:"5000" label:"bearing of the ground, by survey" help:"instead of a class"`
	Wanted     float64  `key:"overturning_wanted" symbol:"fw" default:"1.5" min:"1" max:"5" label:"safety wanted against overturning" help:"1.5, from memory: local rules decide"`
}

// StandOut is how it stands.
type StandOut struct {
	WindPressure float64  `key:"wind_pressure_taken" unit:"Pa" symbol:"qw" label:"wind pressure"`
	WindForce    float64  `key:"wind_force" unit:"N" symbol:"F" label:"force of the wind" expr:"qw*Gf*Cf*so*pi*D^2/4"`
	Moment       float64  `key:"moment" unit:"N.m" symbol:"M" label:"moment at the underside of the slab" expr:"F*hw"`
	Vertical     float64  `key:"vertical" unit:"N" symbol:"N" label:"weight of all" expr:"(m+rho*L*B*t)*g"`
	Eccentricity float64  `key:"eccentricity" unit:"m" symbol:"ec" label:"where the load meets the ground, off the middle" expr:"M/N"`
	QMax         *float64 `key:"q_max" unit:"kPa" symbol:"q1" label:"largest pressure on the ground"`
	QMin         *float64 `key:"q_min" unit:"kPa" symbol:"q2" label:"smallest pressure on the ground"`
	Overturning  *float64 `key:"overturning" symbol:"fo" label:"safety against overturning" expr:"N*B/2/M"`
	SoilLimit    float64  `key:"soil_limit" unit:"kPa" symbol:"qs" label:"what the ground bears"`
	OK           bool     `key:"ok" label:"it stands"`

	Warnings calc.Warnings `key:"-"`
}

const psf = 47.88025898 // Pa

// soils are the presumptive vertical bearing values of IBC 2012, table 1806.2, Pa.
var soils = map[string]float64{"bedrock": 12000 * psf, "rock": 4000 * psf, "gravel": 3000 * psf, "sand": 2000 * psf, "clay": 1500 * psf}

// Stand gives whether a propeller on show stands in the wind.
//
// Wind pressure 0.613 Kz Kzt Kd V^2 (Pa, m/s); force = pressure, gust, coefficient, solidity and disc; on the ground N/A (1 +- 6 e/B) up to
// e = B/6, beyond that 2 N/(3 L (B/2 - e)). For a stiff slab on level ground, wind square to the disc. Source: form of ASCE 7; IBC 2012 table
// 1806.2. A screen for the engineer who signs the foundation; bolts, stand and earthquake are left out.
var Stand = calc.Formula[StandIn, StandOut]{
	ID:       "handling.stand",
	Title:    "A propeller on show",
	About:    "Whether a propeller set up on a slab stands in the wind, and what it puts on the ground.",
	Holds:    "A stiff slab on level, undisturbed ground, wind square to the disc. Earthquake, bolts, the stand itself and people climbing on it are left out.",
	Accuracy: "A screen, for the engineer who signs the foundation under the local code.",
	Sources:  []source.Ref{{Key: "asce-7", At: "velocity pressure; force on open signs"}, {Key: "ibc-2012", At: "table 1806.2"}, {Key: "memory", At: "1.5 against overturning"}},
	Cautions: []calc.Caution{calc.Lifting, calc.Screening},
	Fn:       stand,
	Steps:    standSteps,
}

func stand(in StandIn) (out StandOut, err error) {
	switch {
	case in.WindSpeed != nil && in.WindGiven != nil:
		return out, field.Refuse("wind_pressure", "give the wind speed or the wind pressure, not both")
	case in.WindSpeed != nil:
		out.WindPressure = 0.613 * in.Kz * in.Kzt * in.Kd * *in.WindSpeed * *in.WindSpeed
	case in.WindGiven != nil:
		out.WindPressure = *in.WindGiven
	default:
		return out, field.Refuse("wind_speed", "wind_speed is missing: give the design wind speed, or a wind pressure")
	}
	out.WindForce = out.WindPressure * in.Gust * in.Force * in.Solidity * math.Pi / 4 * in.Diameter * in.Diameter
	out.Moment = out.WindForce * in.Arm
	out.Vertical = (in.Mass + in.SlabMetre*in.SlabLength*in.SlabWidth*in.SlabDepth) * calc.Gravity
	out.Eccentricity = out.Moment / out.Vertical
	out.SoilLimit = soils[in.Soil]
	if in.SoilGiven != nil {
		out.SoilLimit = *in.SoilGiven
	}
	if q1, q2, ok := bearing(out.Vertical, in.SlabLength, in.SlabWidth, out.Eccentricity); ok {
		out.QMax, out.QMin = &q1, &q2
	}
	if out.Moment > 1e-6 { // N.m, none to speak of
		out.Overturning = new(out.Vertical * in.SlabWidth / 2 / out.Moment)
	}
	out.OK = out.QMax != nil && *out.QMax <= out.SoilLimit && (out.Overturning == nil || *out.Overturning >= in.Wanted)
	out.Warnings = standWarnings(in, out)
	return out, nil
}

// bearing is the largest and smallest pressure under a stiff slab, length across and width along the eccentricity; false where it tips over.
func bearing(n, length, width, e float64) (most, least float64, ok bool) {
	switch {
	case e >= width/2:
		return 0, 0, false
	case e <= width/6:
		return n / (length * width) * (1 + 6*e/width), n / (length * width) * (1 - 6*e/width), true
	}
	return 2 * n / (3 * length * (width/2 - e)), 0, true
}

func standWarnings(in StandIn, out StandOut) (w calc.Warnings) {
	switch {
	case out.QMax == nil:
		w = append(w, "unsafe: the wind tips it over, slab and all")
	case out.Overturning != nil && *out.Overturning < in.Wanted:
		w = append(w, fmt.Sprintf("unsafe: the safety against overturning is %.2f, %.2f is wanted", *out.Overturning, in.Wanted))
	}
	if out.QMax != nil && *out.QMax > out.SoilLimit {
		w = append(w, fmt.Sprintf("the ground would carry %.0f kPa, %.0f kPa is its limit", *out.QMax/1e3, out.SoilLimit/1e3))
	}
	if out.QMax != nil && *out.QMin == 0 {
		w = append(w, "the slab lifts off the ground on the windward side")
	}
	if in.Arm < in.Diameter/2 {
		w = append(w, "the centre lies lower than half the diameter above the underside of the slab: the blades would stand in it")
	}
	return w
}

func standSteps(in StandIn, out StandOut) []calc.Step {
	wind := calc.Step{Symbol: "qw", Formula: "0.613*Kz*Kzt*Kd*V^2", Value: out.WindPressure, Unit: "Pa", Text: "velocity pressure"}
	if in.WindGiven != nil {
		wind.Formula, wind.Text = "qw0", "as given"
	}
	soil := calc.Step{Symbol: "qs", Value: out.SoilLimit, Unit: "Pa", Text: "IBC 2012 table 1806.2, " + in.Soil}
	if in.SoilGiven != nil {
		soil.Formula, soil.Text = "qs0", "by survey"
	}
	steps := []calc.Step{wind, soil}
	if out.QMax != nil {
		most, least, text := "N/(L*B)*(1+6*ec/B)", "N/(L*B)*(1-6*ec/B)", "load within the middle third"
		if out.Eccentricity > in.SlabWidth/6 {
			most, least, text = "2*N/(3*L*(B/2-ec))", "0", "load outside the middle third: part of the slab lifts"
		}
		steps = append(steps, calc.Step{Symbol: "q1", Formula: most, Value: *out.QMax, Unit: "Pa", Text: text}, calc.Step{Symbol: "q2", Formula: least, Value: *out.QMin, Unit: "Pa", Text: text})
	}
	return steps
}
