package gland

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/source"
)

// CrushIn describes packing that carries a resting shaft.
type CrushIn struct {
	Load           float64 `key:"load" unit:"N" symbol:"P" min:"0" max:"1e8" label:"load that the packing carries" help:"from the shaft line where a bearing is worn away, or entered"`
	Shaft          float64 `key:"shaft" unit:"mm" symbol:"d" min:"1" max:"3000" label:"diameter of the shaft or its sleeve"`
	PackingLength  float64 `key:"packing_length" unit:"mm" symbol:"L" min:"1" max:"5000" label:"length of packing along the shaft"`
	Modulus        float64 `key:"modulus" unit:"MPa" symbol:"E" min:"0.001" max:"5000" label:"modulus of the bedded packing" help:"give a range: nothing is published for old packing"`
	Section        float64 `key:"section" unit:"mm" symbol:"s" min:"0.1" max:"500" label:"section of the packing"`
	Precompression float64 `key:"precompression" unit:"mm" symbol:"u0" default:"0" min:"0" max:"200" label:"radial squeeze all round before the shaft sank"`
}

// CrushOut is where the shaft comes to rest and what opens above it.
type CrushOut struct {
	Radius       float64 `key:"radius" unit:"mm" symbol:"r" label:"radius of the shaft" expr:"d/2"`
	OpensAt      float64 `key:"load_that_opens" unit:"N" symbol:"Po" label:"load at which the top begins to open" expr:"pi*r*L*E*u0/s"`
	Sag          float64 `key:"sag" unit:"mm" symbol:"v" label:"sag of the shaft in its packing"`
	BottomStress float64 `key:"bottom_stress" unit:"MPa" symbol:"sb" label:"stress in the packing under the shaft" expr:"E*(u0+v)/s"`
	TopOpening   float64 `key:"top_opening" unit:"mm" symbol:"to" label:"opening over the shaft" expr:"max(v-u0, 0)"`
	OpenArc      float64 `key:"open_arc" unit:"deg" symbol:"oa" label:"arc that is open"`
	GapArea      float64 `key:"gap_area" unit:"mm2" symbol:"Ag" label:"area of the gap" expr:"r*(2*v*sin(oa/2)-u0*oa)"`

	Warnings calc.Warnings `key:"-"`
}

// Crush gives the sag of a resting shaft in its packing and the gap that opens on top.
//
// The packing is a Winkler bed round the shaft: the radial squeeze at angle theta from the top is u0 - v cos(theta), the pressure on the shaft
// E u/s, never a pull. Balance of the shaft fixes the sag v: before the top opens v = P s/(pi r L E); afterwards
// P = r L E/s (2 u0 sin a + v (pi - a - sin(2a)/2)), a = acos(u0/v), solved by halving. The model is ours: no stiffness of old
// packing is published, and the figure only orders cases. It leaves out the friction of the rings on each other and their wear.
var Crush = calc.Formula[CrushIn, CrushOut]{
	ID:       "gland.crush",
	Title:    "What a resting shaft does to its packing",
	About:    "How far a shaft that lies in its packing has sunk, and how wide the gap is that opens over it.",
	Holds:    "A model of our own: the packing as an elastic bed that cannot pull. No stiffness of old packing is published; the figure only orders cases. With a shaft at rest for decades the bottom of the packing is crushed and the top opens (common practice).",
	Accuracy: "As good as the modulus, which is a guess within a factor of several: give a range.",
	Sources:  []source.Ref{{Key: "model", At: "packing as a Winkler bed round the shaft"}, {Key: "practice", At: "leaks of a resting shaft favour the top"}},
	Cautions: []calc.Caution{calc.Asbestos, calc.Openings, calc.Screening},
	Fn:       crush,
	Steps: func(_ CrushIn, out CrushOut) []calc.Step {
		sag := calc.Step{Symbol: "v", Formula: "P*s/(pi*r*L*E)", Value: out.Sag, Unit: "m", Text: "all round in touch"}
		arc := calc.Step{Symbol: "oa", Value: out.OpenArc, Unit: "rad", Text: "the squeeze covers the sag: nothing is open"}
		if out.OpenArc > 0 {
			sag.Formula, sag.Text = "", "balance of the shaft on the part of the packing that touches, solved by halving"
			arc.Formula, arc.Text = "2*acos(u0/v)", "where the squeeze is gone"
		}
		return []calc.Step{sag, arc}
	},
}

func crush(in CrushIn) (out CrushOut, err error) {
	out.Radius = in.Shaft / 2
	bed := out.Radius * in.PackingLength * in.Modulus / in.Section // N per metre of squeeze and radian
	out.OpensAt = math.Pi * bed * in.Precompression
	out.Sag = in.Load / (math.Pi * bed)
	if out.Sag > in.Precompression*(1+1e-12) {
		out.Sag = sagOpen(in.Load/bed, in.Precompression)
		half := math.Acos(in.Precompression / out.Sag)
		out.OpenArc = 2 * half
		out.GapArea = out.Radius * (2*out.Sag*math.Sin(half) - in.Precompression*out.OpenArc)
	}
	out.TopOpening = max(out.Sag-in.Precompression, 0)
	out.BottomStress = in.Modulus * (in.Precompression + out.Sag) / in.Section
	if squeeze := out.Sag + in.Precompression; squeeze > in.Section/2 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the packing under the shaft would be squeezed by %.1f mm of its %.1f mm: the model no longer holds, and the shaft lies on the metal or on dead packing", squeeze*1e3, in.Section*1e3))
	}
	return out, nil
}

// sagOpen solves integral over the touching arc of (u0 - v cos)(-cos) = p for v, given p = P s/(r L E). The sag lies between that of a bed
// that pulls and twice it: with u0 = 0 half the bed works.
func sagOpen(p, u0 float64) float64 {
	low, high := max(u0, p/math.Pi), 2*p/math.Pi+u0
	for range 200 {
		mid := (low + high) / 2
		if mid == low || mid == high {
			break
		}
		if lift(mid, u0) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// lift is what the bed gives per unit of r L E/s at sag v: 2 [u0 sin a + v ((pi - a)/2 - sin(2a)/4)] over the arc from a to pi.
func lift(v, u0 float64) float64 {
	a := math.Acos(u0 / v)
	return 2 * (u0*math.Sin(a) + v*((math.Pi-a)/2-math.Sin(2*a)/4))
}
