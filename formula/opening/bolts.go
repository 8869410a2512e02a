package opening

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/formula/seawater"
	"oakum/source"
)

// BoltsIn describes the bolts round a blank.
type BoltsIn struct {
	Gasket     float64  `key:"gasket_diameter" unit:"mm" symbol:"G" min:"10" max:"6000" label:"diameter of the gasket, middle of its bearing face"`
	Head       *float64 `key:"head" unit:"m" symbol:"h" min:"0.001" max:"100" label:"depth of the hole below the water"`
	Difference *float64 `key:"pressure_difference" unit:"MPa" symbol:"p0" min:"0.000001" max:"100" label:"pressure difference" help:"instead of a head"`
	Density    float64  `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"950" max:"1100" label:"density of the water"`
	Side       string   `key:"side" enum:"inside|outside" default:"inside" label:"where the plate sits" help:"inside the hull the water pushes it off its seat and the bolts hold it; outside the water presses it on, and the bolts seat the gasket"`
	Width      float64  `key:"gasket_width" unit:"mm" symbol:"b" default:"10" min:"1" max:"100" label:"width of gasket that seats"`
	Factor     float64  `key:"gasket_factor" symbol:"m" default:"1" min:"0" max:"10" label:"gasket factor" help:"pressure the gasket wants over the water's: 1 for firm rubber, 0.5 for soft, from memory"`
	Seating    float64  `key:"seating_stress" unit:"MPa" symbol:"ys" default:"1.4" min:"0" max:"200" label:"stress that seats the gasket" help:"1.4 MPa (200 psi) for firm rubber, nothing for soft, from memory"`
	Bolt       string   `key:"bolt" enum:"M10|M12|M16|M20|M24|M30" default:"M16" label:"bolt"`
	Allowable  float64  `key:"bolt_allowable" unit:"MPa" symbol:"Sb" default:"80" min:"10" max:"500" label:"allowable stress of the bolt" help:"80 MPa for plain carbon steel of class 4.6, a third of its yield, from memory"`
	Spread     float64  `key:"most_spacing" symbol:"k" default:"6" min:"2" max:"20" label:"most spacing, in bolt diameters" help:"six on a soft gasket, common practice: further apart it weeps between"`
	Edge       float64  `key:"gasket_to_bolts" unit:"mm" symbol:"e" default:"20" min:"2" max:"200" label:"from the middle of the gasket out to the bolts"`
}

// BoltsOut is how many bolts hold it.
type BoltsOut struct {
	Pressure float64 `key:"pressure" unit:"MPa" symbol:"p" label:"pressure"`
	Push     float64 `key:"water_force" unit:"kN" symbol:"H" label:"force of the water on the plate" expr:"pi/4*G^2*p"`
	Hold     float64 `key:"holding_load" unit:"kN" symbol:"W1" label:"load that holds the plate and keeps the gasket tight"`
	Seat     float64 `key:"seating_load" unit:"kN" symbol:"W2" label:"load that seats the gasket" expr:"pi*b*G*ys"`
	Needed   float64 `key:"area_needed" unit:"mm2" symbol:"Am" label:"bolt area wanted" expr:"max(W1, W2)/Sb"`
	Area     float64 `key:"bolt_area" unit:"mm2" symbol:"As" label:"stress area of one bolt"`
	Circle   float64 `key:"bolt_circle" unit:"mm" symbol:"Cb" label:"bolt circle" expr:"G+2*e"`
	Count    float64 `key:"count" unit:"1" symbol:"n" label:"bolts"`
	Spacing  float64 `key:"spacing" unit:"mm" symbol:"sp" label:"from bolt to bolt" expr:"pi*Cb/n"`
	Each     float64 `key:"load_each" unit:"kN" symbol:"F1" label:"load of one bolt" expr:"max(W1, W2)/n"`
	Used     float64 `key:"used" symbol:"us" label:"stress over what is allowed" expr:"F1/(As*Sb)"`

	Warnings calc.Warnings `key:"-"`
}

// threads are the coarse pitches of ISO 261, mm, by bolt.
var threads = map[string]struct{ diameter, pitch float64 }{
	"M10": {10, 1.5}, "M12": {12, 1.75}, "M16": {16, 2}, "M20": {20, 2.5}, "M24": {24, 3}, "M30": {30, 3.5},
}

// stressArea of a coarse metric thread, m2: pi/4 (d - 0.9382 P)^2 (ISO 898-1).
func stressArea(bolt string) float64 {
	t := threads[bolt]
	d := (t.diameter - 0.9382*t.pitch) / 1000
	return math.Pi / 4 * d * d
}

// Bolts gives how many bolts a blank wants.
//
// Holding load W1 = pi/4 G^2 p + 2 b pi G m p, seating load W2 = pi b G y, bolt area the larger over the allowable stress (form of ASME VIII-1, appendix 2);
// at least four bolts, no further apart than k diameters, in fours. A plate outside is pressed on by the water: W1 then is nothing, and W2 alone counts.
// It holds for a flat ring gasket inside the bolts. Source: ASME VIII-1; stress area ISO 898-1. Gasket figures and allowable stress are from memory.
var Bolts = calc.Formula[BoltsIn, BoltsOut]{
	ID:       "opening.bolts",
	Title:    "Bolts round a blank",
	About:    "How many bolts hold a blank against the water and keep its gasket tight.",
	Holds:    "A flat ring gasket inside the bolts, a plate stiff enough to carry the load from bolt to bolt. The flange or frame under it is for the yard to check; wasted studs count as the size that is left.",
	Accuracy: "As good as the gasket figures, which are from memory: the maker's beat them. Count and spacing matter more than stress at these heads.",
	Sources:  []source.Ref{{Key: "asme-viii", At: "appendix 2, bolt loads"}, {Key: "iso-898-1", At: "stress area"}, {Key: "practice", At: "spacing on a soft gasket"}, {Key: "memory", At: "gasket factor, seating stress, 80 MPa on class 4.6"}},
	Cautions: []calc.Caution{calc.Openings, calc.Diving},
	Fn:       bolts,
	Steps:    boltSteps,
}

func bolts(in BoltsIn) (out BoltsOut, err error) {
	if out.Pressure, err = seawater.Pressure(in.Head, in.Difference, in.Density, "hole"); err != nil {
		return out, err
	}
	G, p := in.Gasket, out.Pressure
	out.Push = math.Pi / 4 * G * G * p
	if in.Side == "inside" {
		out.Hold = out.Push + 2*in.Width*math.Pi*G*in.Factor*p
	}
	out.Seat = math.Pi * in.Width * G * in.Seating
	load := max(out.Hold, out.Seat)
	out.Needed = load / in.Allowable
	out.Area = stressArea(in.Bolt)
	out.Circle = G + 2*in.Edge
	out.Count = in.count(out)
	out.Spacing = math.Pi * out.Circle / out.Count
	out.Each = load / out.Count
	out.Used = out.Each / (out.Area * in.Allowable)
	d := threads[in.Bolt].diameter / 1000
	if out.Spacing < 2.5*d {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the bolts stand %.0f mm apart, too close for a spanner: take a larger bolt", out.Spacing*1e3))
	}
	if in.Width > G/4 {
		out.Warnings = append(out.Warnings, "the gasket is wide for its diameter: check that both are in the same unit")
	}
	return out, nil
}

// count is the bolts in fours: enough area, and none further from the next than the gasket bears.
func (in BoltsIn) count(out BoltsOut) float64 {
	d := threads[in.Bolt].diameter / 1000
	byLoad := out.Needed / out.Area
	bySpace := math.Pi * out.Circle / (in.Spread * d)
	return 4 * math.Max(math.Ceil(math.Max(byLoad, bySpace)/4-1e-9), 1)
}

func boltSteps(in BoltsIn, out BoltsOut) []calc.Step {
	p := calc.Step{Symbol: "p", Formula: "rho_w*g*h", Value: out.Pressure, Unit: "Pa", Text: "pressure of the head"}
	if in.Difference != nil {
		p.Formula, p.Text = "p0", "pressure difference as given"
	}
	hold := calc.Step{Symbol: "W1", Formula: "H+2*b*pi*G*m*p", Value: out.Hold, Unit: "N", Text: "the water pushes it off its seat"}
	if in.Side == "outside" {
		hold.Formula, hold.Text = "0*H", "outside: the water presses it on"
	}
	t := threads[in.Bolt]
	return []calc.Step{
		p, hold,
		{Symbol: "As", Formula: fmt.Sprintf("pi/4*((%g-0.9382*%g)/1000)^2", t.diameter, t.pitch), Value: out.Area, Unit: "m2", Text: in.Bolt + ", coarse thread"},
		{Symbol: "n", Value: out.Count, Unit: "-", Text: "by load and by spacing, the larger, in fours"},
	}
}
