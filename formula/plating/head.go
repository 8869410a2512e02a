package plating

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// HeadIn is a panel of shell between its stiffeners and the water over it.
type HeadIn struct {
	Spacing   float64  `key:"spacing" unit:"m" symbol:"b" over:"0" max:"10" label:"short side: spacing of the frames"`
	Length    *float64 `key:"length" unit:"m" over:"0" max:"1000" label:"long side" help:"left out, the plate is taken as long"`
	Head      float64  `key:"head" unit:"m" symbol:"h" over:"0" max:"100" label:"head of water at the middle of the panel"`
	Allowable float64  `key:"allowable" unit:"MPa" symbol:"sig" default:"160" over:"0" max:"1000" label:"bending stress allowed" help:"160 MPa for old mild steel: common practice"`
	Edges     string   `key:"edges" enum:"clamped|supported" default:"clamped" label:"edges" help:"clamped where the plate runs on over equal panels, supported where it ends or the frames are rotten"`
	Density   float64  `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"900" max:"1100" label:"density of the water"`
	Modulus   float64  `key:"modulus" unit:"GPa" symbol:"E" default:"206" min:"1" max:"500" label:"modulus of elasticity"`
	Thickness *float64 `key:"plate_thickness" unit:"mm" symbol:"tp" over:"0" max:"200" label:"thickness of the plate, to be judged"`
}

// HeadOut is the least plate.
type HeadOut struct {
	Pressure   float64  `key:"pressure" unit:"kPa" symbol:"p" label:"pressure" expr:"rho*g*h"`
	Ratio      *float64 `key:"side_ratio" symbol:"n" label:"long side over short side"`
	Stress     float64  `key:"stress_factor" symbol:"beta" label:"stress factor"`
	Sag        float64  `key:"deflection_factor" symbol:"alpha" label:"deflection factor"`
	Thickness  float64  `key:"thickness" unit:"mm" symbol:"t" label:"least thickness" expr:"b*sqrt(beta*p/sig)"`
	Deflection float64  `key:"deflection" unit:"mm" symbol:"w" label:"deflection of a plate that thick" expr:"alpha*p*b^4/(E*t^3)"`
	StressNow  *float64 `key:"plate_stress" unit:"MPa" symbol:"sp" label:"bending stress in the plate judged" expr:"beta*p*b^2/tp^2"`
	Used       *float64 `key:"plate_used" symbol:"u" label:"share of the allowed stress" expr:"sp/sig"`

	Warnings calc.Warnings `key:"-"`
}

// Head is the least plate for a head of water.
//
// p = rho g h; the greatest bending stress of the panel is beta p b²/t², so t = b sqrt(beta p / sigma), with b the short side and beta from the ratio
// of the sides and the edges: simply supported from Roark's table 11.4, clamped from the series. Deflection alpha p b⁴/(E t³). It is linear bending
// of a flat plate: a first screen. A real panel carries more by membrane tension once it sags by half its thickness, and by yielding at its edges
// first; one with a pit, a seam or a rivet line carries less.
var Head = calc.Formula[HeadIn, HeadOut]{
	ID:       "plating.head",
	Title:    "Least plate for the head of water",
	About:    "How thick a shell panel must at least be to stand the water over it in bending.",
	Holds:    "A flat panel of even thickness under still water. No waves, no docking blocks, no hull girder stress. A first screen, no class check; the plate has membrane and plastic reserve that is not counted.",
	Accuracy: "1 % for the model; the real edges lie between clamped and supported, which differ by a quarter in thickness.",
	Sources: []source.Ref{
		{Key: "roark", At: "table 11.4 cases 1a and 8a"},
		{Key: "timoshenko-plates", At: "articles 30 and 44"},
		{Key: "practice", At: "160 MPa for old mild steel"},
	},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       head,
	Samples:  1000,
	Steps: func(in HeadIn, out HeadOut) []calc.Step {
		how := "clamped edges: series solved for the edge moments, at the middle of the long edge"
		if in.Edges == "supported" {
			how = "supported edges: Roark's table, joined by monotone cubics, at the middle"
		}
		return []calc.Step{
			{Symbol: "beta", Value: out.Stress, Unit: "-", Text: how},
			{Symbol: "alpha", Value: out.Sag, Unit: "-", Text: "deflection at the middle, the same"},
		}
	},
}

func head(in HeadIn) (out HeadOut, err error) {
	ratio := math.Inf(1)
	if in.Length != nil {
		if *in.Length < in.Spacing {
			return out, field.Refuse("spacing", "spacing is the short side: it must not be more than length (%v > %v)", field.Q("spacing", in.Spacing, "m"), field.Q("length", *in.Length, "m"))
		}
		ratio = *in.Length / in.Spacing
		out.Ratio = &ratio
	}
	edges := Clamped
	if in.Edges == "supported" {
		edges = Supported
	}
	panel := edges(ratio)
	out.Stress, out.Sag = panel.Stress, panel.Sag
	out.Pressure = in.Density * calc.Gravity * in.Head
	out.Thickness = in.Spacing * math.Sqrt(out.Stress*out.Pressure/in.Allowable)
	out.Deflection = out.Sag * out.Pressure * math.Pow(in.Spacing, 4) / (in.Modulus * math.Pow(out.Thickness, 3))
	if out.Deflection > out.Thickness/2 {
		out.Warnings = append(out.Warnings, "a plate this thin sags by more than half its thickness: membrane tension carries part of the load, and the sheet errs on the thick side")
	}
	if in.Spacing > 2 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("a spacing of %.1f m is unusual for frames: was it typed in another unit?", in.Spacing))
	}
	if in.Thickness == nil {
		return out, nil
	}
	out.StressNow = new(out.Stress * out.Pressure * in.Spacing * in.Spacing / (*in.Thickness * *in.Thickness))
	out.Used = new(*out.StressNow / in.Allowable)
	if *out.Used > 1 {
		out.Warnings = append(out.Warnings, "the plate is thinner than this screen asks for: a naval architect should look at it with its reserve counted")
	}
	return out, nil
}
