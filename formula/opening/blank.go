package opening

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/formula/seawater"
	"oakum/source"
)

// BlankIn describes a round flat plate over a hole.
type BlankIn struct {
	Diameter   float64  `key:"diameter" unit:"mm" symbol:"d" min:"1" max:"6000" label:"gasket or bolt-circle diameter" help:"the inside of the gasket where the plate is clamped, the bolt circle where it is loose"`
	Head       *float64 `key:"head" unit:"m" symbol:"h" min:"0.001" max:"100" label:"depth of the hole below the water"`
	Difference *float64 `key:"pressure_difference" unit:"MPa" symbol:"p0" min:"0.000001" max:"100" label:"pressure difference" help:"instead of a head"`
	Density    float64  `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"950" max:"1100" label:"density of the water"`
	Allowable  float64  `key:"allowable" unit:"MPa" symbol:"S" default:"110" min:"0.1" max:"1000" label:"allowable stress"`
	Joint      float64  `key:"joint" symbol:"Ej" default:"1" min:"0.01" max:"1" label:"joint factor" help:"1 where no weld runs across the plate"`
	Allowance  float64  `key:"corrosion_allowance" unit:"mm" symbol:"ca" default:"3" min:"0" max:"50" label:"corrosion allowance"`
	Edge       string   `key:"edge" enum:"clamped|supported" default:"clamped" label:"how the edge is held" help:"clamped under a stiff bolted flange or a full weld; supported where it can turn"`
	Plate      *float64 `key:"plate" unit:"mm" symbol:"tp" min:"0.01" max:"200" label:"thickness of an existing plate" help:"as measured"`
	Modulus    float64  `key:"modulus" unit:"GPa" symbol:"E" default:"200" min:"0.01" max:"500" label:"modulus of elasticity"`
	Poisson    float64  `key:"poisson" symbol:"nu" default:"0.3" min:"0" under:"0.5" label:"Poisson's ratio"`
}

// BlankOut is what the plate must be and how it bears the water.
type BlankOut struct {
	Pressure   float64  `key:"pressure" unit:"MPa" symbol:"p" label:"pressure"`
	Net        float64  `key:"net_thickness" unit:"mm" symbol:"tn" label:"thickness wanted without allowance"`
	Thickness  float64  `key:"thickness" unit:"mm" symbol:"t" label:"thickness wanted with allowance" expr:"tn+ca"`
	Taken      float64  `key:"thickness_taken" unit:"mm" symbol:"tt" label:"thickness that stress and deflection are worked with"`
	Stress     float64  `key:"stress" unit:"MPa" symbol:"sg" label:"bending stress"`
	Deflection float64  `key:"deflection" unit:"mm" symbol:"y" label:"deflection in the middle"`
	Used       float64  `key:"used" symbol:"us" label:"stress over what is allowed" expr:"sg/(S*Ej)"`
	Spare      *float64 `key:"spare" unit:"mm" symbol:"sp" label:"existing plate less the thickness wanted" expr:"tp-t"`

	Warnings calc.Warnings `key:"-"`
}

// Blank gives the thickness of a plate over a hole, or the stress in one that is there.
//
// Clamped: stress 0.75 p (r/t)^2 at the edge, y = p r^4/(64 D), D = E t^3/(12 (1 - nu^2)); supported: 3 (3 + nu)/8 p (r/t)^2 in the middle, y
// times (5 + nu)/(1 + nu). The blank of ASME B31.3, t = d sqrt(3 p/(16 S E)), is the clamped plate. It holds for a round flat plate with a
// deflection below half its thickness and water on one side. Source: ASME B31.3, 304.5.3; Roark. A real edge lies between the two: take both.
var Blank = calc.Formula[BlankIn, BlankOut]{
	ID:       "opening.blank",
	Title:    "Plate over a hole",
	About:    "How thick a flat round plate over a hull opening must be, or what stress an existing one carries.",
	Holds:    "A round flat plate, deflection below half its thickness. Bolts, gasket and the hull round the hole are for the yard to check.",
	Accuracy: "Within a few per cent for the edge assumed; a real edge lies between clamped and supported.",
	Sources:  []source.Ref{{Key: "b31.3", At: "304.5.3, permanent blanks"}, {Key: "roark", At: "flat circular plates, uniform pressure"}, {Key: "data-handbook", At: "p. 53"}},
	Cautions: []calc.Caution{calc.Openings, calc.HotWork, calc.Diving},
	Fn:       blank,
	Steps:    blankSteps,
}

// bending is the stress over p (r/t)^2: 3/4 clamped, 3 (3 + nu)/8 supported (Roark).
func bending(edge string, nu float64) float64 {
	if edge == "supported" {
		return 3 * (3 + nu) / 8
	}
	return 0.75
}

func blank(in BlankIn) (out BlankOut, err error) {
	if out.Pressure, err = seawater.Pressure(in.Head, in.Difference, in.Density, "hole"); err != nil {
		return out, err
	}
	r, c := in.Diameter/2, bending(in.Edge, in.Poisson)
	out.Net = r * math.Sqrt(c*out.Pressure/(in.Allowable*in.Joint))
	out.Thickness = out.Net + in.Allowance
	out.Taken = out.Net
	if in.Plate != nil {
		out.Taken = *in.Plate
		out.Spare = new(*in.Plate - out.Thickness)
	}
	t := out.Taken
	out.Stress = c * out.Pressure * (r / t) * (r / t)
	out.Deflection = out.Pressure * r * r * r * r / (64 * in.Modulus * t * t * t / (12 * (1 - in.Poisson*in.Poisson)))
	if in.Edge == "supported" {
		out.Deflection *= (5 + in.Poisson) / (1 + in.Poisson)
	}
	out.Used = out.Stress / (in.Allowable * in.Joint)
	out.Warnings = blankWarnings(in, out)
	return out, nil
}

func blankWarnings(in BlankIn, out BlankOut) (w calc.Warnings) {
	if in.Plate != nil && *in.Plate < out.Net {
		w = append(w, fmt.Sprintf("the plate is too thin: %.1f mm where %.1f mm is wanted even without allowance", *in.Plate*1e3, out.Net*1e3))
	} else if in.Plate != nil && *in.Plate < out.Thickness {
		w = append(w, fmt.Sprintf("the plate carries the water today but lacks %.1f mm of its corrosion allowance", (out.Thickness-*in.Plate)*1e3))
	}
	if out.Deflection > out.Taken/2 {
		w = append(w, fmt.Sprintf("the deflection (%.1f mm) is more than half the thickness: the plate stretches as a skin, and the figures are on the safe side", out.Deflection*1e3))
	}
	if out.Taken > in.Diameter/4 {
		w = append(w, "the plate is thicker than a quarter of its diameter: check that the units are the same")
	}
	return w
}

func blankSteps(in BlankIn, out BlankOut) []calc.Step {
	p := calc.Step{Symbol: "p", Formula: "rho_w*g*h", Value: out.Pressure, Unit: "Pa", Text: "pressure of the head"}
	if in.Difference != nil {
		p.Formula, p.Text = "p0", "pressure difference as given"
	}
	c, more, how := "0.75", "", "clamped edge"
	if in.Edge == "supported" {
		c, more, how = "3*(3+nu)/8", "*(5+nu)/(1+nu)", "edge that can turn"
	}
	taken := calc.Step{Symbol: "tt", Formula: "tn", Value: out.Taken, Unit: "m", Text: "the thickness wanted, its allowance gone"}
	if in.Plate != nil {
		taken.Formula, taken.Text = "tp", "the existing plate as measured"
	}
	return []calc.Step{
		p,
		{Symbol: "tn", Formula: "d/2*sqrt(" + c + "*p/(S*Ej))", Value: out.Net, Unit: "m", Text: how},
		taken,
		{Symbol: "sg", Formula: c + "*p*(d/2/tt)^2", Value: out.Stress, Unit: "Pa", Text: how},
		{Symbol: "y", Formula: "p*(d/2)^4*12*(1-nu^2)/(64*E*tt^3)" + more, Value: out.Deflection, Unit: "m", Text: how},
	}
}
