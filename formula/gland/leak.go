package gland

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/seawater"
	"oakum/source"
)

// LeakIn describes the gap that a worn or relaxed gland leaves round the shaft.
type LeakIn struct {
	Shaft        float64  `key:"shaft" unit:"mm" symbol:"d" min:"1" max:"3000" label:"diameter of the shaft"`
	Clearance    float64  `key:"clearance" unit:"mm" symbol:"c" min:"0.0001" max:"200" label:"mean radial gap"`
	Eccentricity float64  `key:"eccentricity" symbol:"ec" default:"0" min:"0" max:"1" label:"eccentricity" help:"0 central, 1 where the shaft lies on the bottom of its box"`
	Length       float64  `key:"length" unit:"mm" symbol:"L" min:"0.01" max:"20000" label:"length of the gap along the shaft"`
	Head         *float64 `key:"head" unit:"m" symbol:"h" over:"0" max:"100" label:"depth of the gap below the water"`
	Difference   *float64 `key:"pressure_difference" unit:"MPa" symbol:"dp0" over:"0" max:"100" label:"pressure difference" help:"instead of a head"`
	Density      float64  `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"500" max:"1500" label:"density of the water"`
	Viscosity    float64  `key:"viscosity" unit:"Pa.s" symbol:"mu" default:"1.2e-3" min:"1e-5" max:"10" label:"viscosity of the water"`
	Discharge    float64  `key:"discharge_coefficient" symbol:"C" default:"0.6" min:"0.01" max:"1" label:"discharge coefficient"`
}

// LeakOut is the water that gets past.
type LeakOut struct {
	MeanDiameter float64 `key:"mean_diameter" unit:"mm" symbol:"dm" label:"mean diameter of the gap" expr:"d+c"`
	Pressure     float64 `key:"pressure" unit:"MPa" symbol:"dp" label:"pressure difference"`
	Laminar      float64 `key:"laminar_flow" unit:"m3/s" symbol:"Ql" label:"laminar flow" expr:"pi*dm*c^3*dp/(12*mu*L)*(1+1.5*ec^2)"`
	Orifice      float64 `key:"orifice_flow" unit:"m3/s" symbol:"Qo" label:"flow of the same gap as an orifice, the most that can pass" expr:"C*pi*dm*c*sqrt(2*dp/rho_w)"`
	Flow         float64 `key:"flow" unit:"m3/s" symbol:"Q" label:"flow, the smaller of both" expr:"min(Ql, Qo)"`
	Regime       string  `key:"regime" label:"which law holds"`
	Reynolds     float64 `key:"reynolds" symbol:"Re" label:"Reynolds number of the gap" expr:"2*rho_w*Q/(pi*dm*mu)"`
	PerDay       float64 `key:"flow_per_day" unit:"L/d" symbol:"Qd" label:"flow a day" expr:"Q"`

	Warnings calc.Warnings `key:"-"`
}

// Leak gives the water through the ring gap of a gland.
//
// Q = pi d c^3 dp/(12 mu L) (1 + 1.5 e^2), with d the mean diameter, c the mean radial gap, e the eccentricity, L the length; never more than
// C pi d c sqrt(2 dp/rho). A shaft on the bottom of its box (e = 1) lets 2.5 times the concentric flow past. It holds for an open gap of even
// width; packing in it passes less. Source: laminar flow in an annulus (fluid-mechanics texts), orifice law. The flow goes with the cube of
// the gap: a gap known to 20 % gives the flow to 60 %. Between the two laws (Reynolds number over about 2000) the laminar figure is high.
var Leak = calc.Formula[LeakIn, LeakOut]{
	ID:       "gland.leak",
	Title:    "Water past a worn or relaxed gland",
	About:    "How much water an open ring gap round the shaft lets in.",
	Holds:    "An open gap of even width along the shaft. Packing that still touches passes less: this is the figure for packing that does not.",
	Accuracy: "The laminar flow goes with the cube of the gap: a gap known to 20 % gives the flow to 60 %. Above a Reynolds number of about 2000 the laminar figure is high.",
	Sources:  []source.Ref{{Key: "fox-mcdonald", At: "example 8.1 and the flow between plates"}, {Key: "circular-gap", At: "2.5 times the flow at full eccentricity"}, {Key: "torricelli"}},
	Cautions: []calc.Caution{calc.Openings},
	Fn:       leak,
	Steps: func(in LeakIn, out LeakOut) []calc.Step {
		if in.Difference != nil {
			return []calc.Step{{Symbol: "dp", Formula: "dp0", Value: out.Pressure, Unit: "Pa", Text: "pressure difference as given"}}
		}
		return []calc.Step{{Symbol: "dp", Formula: "rho_w*g*h", Value: out.Pressure, Unit: "Pa", Text: "pressure of the head"}}
	},
}

// turns is the Reynolds number, on twice the gap, above which the flow between plates is no longer surely laminar (fluid-mechanics texts).
const turns = 2000

func leak(in LeakIn) (out LeakOut, err error) {
	if out.Pressure, err = seawater.Pressure(in.Head, in.Difference, in.Density, "gap"); err != nil {
		return out, err
	}
	if in.Clearance >= in.Shaft/2 {
		return out, field.Refuse("clearance", "clearance must be less than half the shaft (%v against a shaft of %v)", field.Q("clearance", in.Clearance, "mm"), field.Q("shaft", in.Shaft, "mm"))
	}
	out.MeanDiameter = in.Shaft + in.Clearance
	around := math.Pi * out.MeanDiameter
	c := in.Clearance
	out.Laminar = around * c * c * c * out.Pressure / (12 * in.Viscosity * in.Length) * (1 + 1.5*in.Eccentricity*in.Eccentricity)
	out.Orifice = in.Discharge * around * c * math.Sqrt(2*out.Pressure/in.Density)
	out.Flow, out.Regime = out.Laminar, "laminar"
	if out.Orifice < out.Laminar {
		out.Flow, out.Regime = out.Orifice, "orifice"
	}
	out.PerDay = out.Flow
	out.Reynolds = 2 * in.Density * out.Flow / (around * in.Viscosity)
	if out.Regime == "laminar" && out.Reynolds > turns {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the Reynolds number is %.0f: the flow is no longer laminar, and the true one lies below the figure", out.Reynolds))
	}
	if c > in.Length {
		out.Warnings = append(out.Warnings, "the gap is wider than it is long: check that clearance and length are not swapped")
	}
	return out, nil
}
