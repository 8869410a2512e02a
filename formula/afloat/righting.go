package afloat

import (
	"fmt"
	"math"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/hullform"
	"oakum/source"
)

const degree = math.Pi / 180

// RightingIn is a hull, what she weighs, and the heels asked.
type RightingIn struct {
	Hull   Hull     `key:"hull" label:"hull"`
	Length *float64 `key:"length" unit:"m" symbol:"L0" over:"0" max:"500" label:"length between perpendiculars"`
	Loading
	Heels    []float64 `key:"heels" unit:"deg" symbol:"phis" optional:"yes" most:"200" label:"heels, rising from 0" help:"without them 0 to 60 degrees by 5"`
	Side     string    `key:"side" enum:"port|starboard" default:"port" label:"side she heels to"`
	Openings []Opening `key:"openings" symbol:"op" optional:"yes" most:"500" label:"openings where water would get in"`
}

// LeverRow is one point of the curve.
type LeverRow struct {
	Heel float64 `key:"heel" unit:"deg" symbol:"phi" label:"heel"`
	GZ   float64 `key:"gz" unit:"m" symbol:"gz" label:"righting lever"`
	Area float64 `key:"area" unit:"m" symbol:"a" label:"area under it so far, m rad"`
	Trim float64 `key:"trim" unit:"m" symbol:"t" label:"trim by the stern she takes there"`
}

// FloodRow is the heel at which an opening goes under.
type FloodRow struct {
	Name string   `key:"name" label:"opening"`
	Heel *float64 `key:"heel" unit:"deg" label:"heel at which it goes under"`
}

// RightingOut is the curve of levers and what is read from it.
type RightingOut struct {
	Verdict     string     `key:"verdict" enum:"stable|unstable" label:"verdict"`
	Reason      string     `key:"reason" label:"why"`
	GM          float64    `key:"gm" unit:"m" symbol:"GM" label:"metacentric height: slope of the curve upright"`
	Peak        float64    `key:"gz_max" unit:"m" symbol:"gzx" label:"largest lever"`
	PeakHeel    float64    `key:"heel_gz_max" unit:"deg" symbol:"phix" label:"heel of the largest lever"`
	Area30      *float64   `key:"area_30" unit:"m" symbol:"a30" label:"area to 30 degrees, m rad"`
	Area40      *float64   `key:"area_40" unit:"m" symbol:"a40" label:"area to 40 degrees, or to the downflooding angle where that is less, m rad"`
	Vanishing   *float64   `key:"vanishing" unit:"deg" symbol:"phiv" label:"heel at which the lever vanishes"`
	Downflood   *float64   `key:"downflooding" unit:"deg" symbol:"phif" label:"least heel at which an opening goes under"`
	DeckEdge    *float64   `key:"deck_edge" unit:"deg" symbol:"phid" label:"heel at which the deck edge goes under"`
	DeckPlace   string     `key:"deck_edge_place" label:"where"`
	Curve       []LeverRow `key:"curve" symbol:"cv" label:"curve of righting levers"`
	Floodpoints []FloodRow `key:"openings" label:"opening by opening"`

	Warnings calc.Warnings `key:"-"`
}

// RightingCurve is the curve of righting levers, free to trim at every heel, the area under it, and the heels at which deck edge and openings go under.
var RightingCurve = calc.Formula[RightingIn, RightingOut]{
	ID:       "afloat.righting",
	Title:    "Righting levers",
	About:    "GZ at each heel, the area under it, where it vanishes, and where water would get in.",
	Holds:    "Still water, weights that stay put, a hull closed above the deck edge as the mesh is. Free surfaces at large heel are taken as their moment at small angles.",
	Accuracy: "Exact for the shape and centre of gravity given; 5 cm of KG are worth 5 cm times the sine of the heel.",
	Sources:  []source.Ref{{Key: "divergence"}, {Key: "derrett"}},
	Cautions: []calc.Caution{calc.Stability},
	Fn:       righting,
	Steps: func(in RightingIn, out RightingOut) []calc.Step {
		return []calc.Step{{Symbol: "cv", Text: "at each heel draft and trim solved for balance; area by trapezium with the slopes at its ends"},
			{Symbol: "GM", Value: out.GM, Unit: "m", Text: "slope of the curve at its start"}}
	},
	Samples: 20,
}

func righting(in RightingIn) (out RightingOut, err error) {
	if err = in.given(); err != nil {
		return out, err
	}
	heels, err := in.heels()
	if err != nil {
		return out, err
	}
	form, warnings, err := in.Hull.Form(in.Length)
	if err != nil {
		return out, err
	}
	var openings []hullform.Opening
	for _, o := range in.Openings {
		openings = append(openings, hullform.Opening{Name: o.Name, At: o.at()})
	}
	r, err := form.Righting(&hullform.Condition{Loading: in.form()}, heels, openings)
	if err != nil {
		return out, noRest(err)
	}
	out.read(r, form.Length())
	out.judge()
	out.Warnings = append(out.Warnings, warnings...)
	return out, nil
}

// heels are the angles in the order they are worked, to starboard negative.
func (in RightingIn) heels() ([]float64, error) {
	list := in.Heels
	if len(list) == 0 {
		for d := 0.0; d <= 60; d += 5 {
			list = append(list, d*degree)
		}
	}
	sign := 1.0
	if in.Side == "starboard" {
		sign = -1
	}
	out := make([]float64, len(list))
	for i, a := range list {
		if a < 0 || a > math.Pi || i > 0 && a <= list[i-1] {
			return nil, field.Refuse("heels", "heels must rise from 0 to at most 180 degrees; the side is said by side")
		}
		out[i] = sign * a
	}
	if list[0] != 0 {
		out = append([]float64{0}, out...)
	}
	return out, nil
}

// read puts the curve in the terms of the side heeled to: heels and levers positive.
func (out *RightingOut) read(r hullform.Righting, length float64) {
	sign := 1.0
	if last := r.Levers[len(r.Levers)-1]; last.Heel < 0 {
		sign = -1
	}
	positive := func(p *float64) *float64 {
		if p == nil {
			return nil
		}
		return new(math.Abs(*p))
	}
	for _, l := range r.Levers {
		out.Curve = append(out.Curve, LeverRow{sign * l.Heel, sign * l.GZ, l.Area, math.Tan(l.Trim) * length})
	}
	out.GM = r.Levers[0].Slope
	peak := out.Curve[0]
	for _, c := range out.Curve {
		if c.GZ > peak.GZ {
			peak = c
		}
	}
	out.Peak, out.PeakHeel = peak.GZ, peak.Heel
	out.Vanishing, out.DeckEdge = positive(r.Vanishing), positive(r.EdgeUnder)
	if r.EdgeUnder != nil {
		out.DeckPlace = r.Edge.At.String()
	}
	for _, f := range r.Flooding {
		out.Floodpoints = append(out.Floodpoints, FloodRow{f.Name, positive(f.Heel)})
		if h := positive(f.Heel); h != nil && (out.Downflood == nil || *h < *out.Downflood) {
			out.Downflood = h
		}
	}
	out.Area30 = out.areaTo(30 * degree)
	to := 40 * degree
	if out.Downflood != nil {
		to = min(to, *out.Downflood)
	}
	out.Area40 = out.areaTo(to)
}

// areaTo is the area to a heel, between points of the curve by the parabola of their levers; nil beyond the curve.
func (out *RightingOut) areaTo(heel float64) *float64 {
	for i := 1; i < len(out.Curve); i++ {
		a, b := out.Curve[i-1], out.Curve[i]
		if heel > b.Heel+1e-12 {
			continue
		}
		f := (heel - a.Heel) / (b.Heel - a.Heel)
		gz := a.GZ + f*(b.GZ-a.GZ)
		full := (b.Heel - a.Heel) * (a.GZ + b.GZ) / 2
		part := (heel - a.Heel) * (a.GZ + gz) / 2
		return new(a.Area + part + f*(b.Area-a.Area-full))
	}
	return nil
}

func (out *RightingOut) judge() {
	if out.GM > 0 && out.Peak > 0 {
		out.Verdict, out.Reason = "stable", fmt.Sprintf("GM %.3f m, largest lever %.3f m at %.0f degrees", out.GM, out.Peak, out.PeakHeel/degree)
	} else {
		out.Verdict = "unstable"
		out.Reason = fmt.Sprintf("UNSAFE: GM is %.3f m: upright she has no stability. Weight low, less topweight or pressed-up tanks would change it", out.GM)
		out.Warnings = append(out.Warnings, out.Reason)
	}
	if out.Downflood != nil && *out.Downflood < 25*degree {
		out.Warnings = append(out.Warnings, fmt.Sprintf("water gets in at %.1f degrees of heel: the curve beyond is worth nothing until that opening is shut", *out.Downflood/degree))
	}
	if math.Abs(out.Curve[0].GZ) > 1e-6 {
		out.Warnings = append(out.Warnings, "upright there is a lever already: she has a list, and the side chosen matters")
	}
}
