package shaft

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/beam"
	"oakum/source"
)

// ReactionsIn describes a shaft line on its bearings.
type ReactionsIn struct {
	Segments []Segment `key:"segments" symbol:"segments" most:"500" label:"lengths of shaft"`
	Bearings []Bearing `key:"bearings" symbol:"bearings" most:"100" label:"bearings"`
	Loads    []Load    `key:"loads" symbol:"loads" most:"500" optional:"yes" label:"further loads"`
	Bodies   []Body    `key:"bodies" symbol:"bodies" most:"500" optional:"yes" label:"propeller, couplings"`
	Density  float64   `key:"water_density" unit:"kg/m3" symbol:"rho_w" default:"1025" min:"950" max:"1100" label:"density of the water"`
}

// BearingForce is what one bearing carries.
type BearingForce struct {
	Name  string  `key:"name" label:"name"`
	Force float64 `key:"force" unit:"N" symbol:"R" label:"force, upward"`
}

// BearingMoment is the bending moment of the shaft at one bearing.
type BearingMoment struct {
	Name   string  `key:"name" label:"name"`
	Moment float64 `key:"moment" unit:"N.m" symbol:"M" label:"bending moment, sagging positive"`
}

// Sag is the deflection at one place.
type Sag struct {
	X float64 `key:"x" unit:"m" symbol:"x" label:"place along the shaft"`
	Y float64 `key:"y" unit:"mm" symbol:"y" label:"deflection, downward"`
}

// ReactionsOut is what the bearings carry and how the shaft lies.
type ReactionsOut struct {
	Reactions []BearingForce  `key:"reactions" symbol:"reactions" label:"forces on the bearings, which hold both ways"`
	OneWay    []BearingForce  `key:"reactions_one_way" symbol:"reactions_one_way" label:"forces where bearings can only push up"`
	Moments   []BearingMoment `key:"moments" symbol:"moments" label:"bending moments at the bearings"`
	Curve     []Sag           `key:"deflection" symbol:"deflection" label:"deflection along the shaft"`
	Tip       float64         `key:"tip_deflection" unit:"mm" symbol:"yt" label:"deflection of the overhanging end, downward"`
	Peak      float64         `key:"peak_moment" unit:"N.m" symbol:"Mp" label:"largest bending moment, sagging positive"`
	Influence [][]float64     `key:"influence" unit:"N/mm" symbol:"influence" label:"change of each force (row) when a bearing (column) is raised"`
	Uplift    []string        `key:"uplift" label:"bearings that would lift"`
	Total     float64         `key:"total" unit:"N" symbol:"total" label:"sum of the forces: all that hangs on the line" expr:"sum(reactions, #.R)"`

	Warnings calc.Warnings `key:"-"`
}

// Reactions gives what each bearing of a shaft line carries.
//
// An Euler beam on point bearings that hold both ways, and again on bearings that only push; the influence numbers are the change of each
// force when one bearing is raised. It holds for a shaft whose spans are longer than about five diameters; a long bearing is a point in its
// middle, or better two. Source: theorem of three moments; SNAME Technical and Research Bulletin 3-51 for the practice, with the
// final alignment judged afloat. The forces are as good as the heights of the bearings: a stiff line moves tonnes by tenths of a millimetre.
var Reactions = calc.Formula[ReactionsIn, ReactionsOut]{
	ID:       "shaft.reactions",
	Title:    "A shaft line on its bearings",
	About:    "What each bearing carries, how the shaft lies between them, and how much a bearing's load changes when another moves.",
	Holds:    "Spans longer than about five diameters, bearings as points, small slopes. Judge the final alignment afloat: the hull bends otherwise in dock.",
	Accuracy: "The beam itself to many digits; the forces only as good as the heights of the bearings, see the influence numbers.",
	Sources: []source.Ref{
		{Key: "civil-calculations", At: "p. 1.63, theorem of three moments"}, {Key: "sname-3-51", At: "reaction influence numbers, final alignment afloat"},
		{Key: "hetenyi"}, {Key: "copper-alloys", At: "C86500 0.301 lb/in3, C95800 0.276 lb/in3"},
	},
	Cautions: []calc.Caution{calc.Confined, calc.Screening},
	Fn:       reactions,
	Samples:  400,
	Steps: func(_ ReactionsIn, out ReactionsOut) []calc.Step {
		return []calc.Step{
			{Symbol: "reactions", Value: float64(len(out.Reactions)), Unit: "-", Text: "continuous beam with uniform weight between its nodes, solved for deflection, slope, moment and shear"},
			{Symbol: "influence", Value: float64(len(out.Influence)), Unit: "-", Text: "the same beam without load, one bearing after another raised by a unit"},
		}
	},
}

func reactions(in ReactionsIn) (out ReactionsOut, err error) {
	m, err := in.model()
	if err != nil {
		return out, err
	}
	s, err := beam.Solve(m)
	switch {
	case errors.Is(err, beam.ErrNotHeld):
		return out, field.Refuse("bearings", "the bearings do not hold the shaft: two are needed, or one that holds the slope")
	case err != nil:
		return out, field.Refuse("segments", "%v", err)
	}
	if out.Influence, err = beam.Influence(m); err != nil {
		return out, field.Refuse("segments", "%v", err)
	}
	for i, b := range in.Bearings {
		out.Reactions = append(out.Reactions, BearingForce{b.Name, s.Reactions[i].Force})
		out.Moments = append(out.Moments, BearingMoment{b.Name, s.At(m.Supports[i].X).Moment()})
		out.Total += s.Reactions[i].Force
	}
	for _, p := range s.Places {
		out.Curve = append(out.Curve, Sag{p.X, p.Deflection})
	}
	out.Tip, out.Peak = tip(m, s), s.PeakMoment().Moment()
	out.Uplift = []string{}
	out.push(in, m, s)
	return out, nil
}

// push adds the run on bearings that only push.
func (out *ReactionsOut) push(in ReactionsIn, m beam.Model, both beam.Solution) {
	for i := range m.Supports {
		m.Supports[i].OneWay = true
	}
	s, err := beam.Solve(m)
	for i, b := range in.Bearings {
		if err == nil {
			out.OneWay = append(out.OneWay, BearingForce{b.Name, s.Reactions[i].Force})
		}
		if (err == nil && s.Reactions[i].Open) || (err != nil && both.Reactions[i].Force < 0) {
			out.Uplift = append(out.Uplift, b.Name)
		}
	}
	if err != nil {
		out.Warnings = append(out.Warnings, "the shaft does not stay on bearings that only push: "+err.Error())
	}
	if len(out.Uplift) > 0 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the shaft would lift off %s: the forces that count are those of bearings that only push", strings.Join(out.Uplift, ", ")))
	}
}

// tip is the deflection of the end that overhangs its outermost bearing, the larger one where both do.
func tip(m beam.Model, s beam.Solution) float64 {
	first, last := math.Inf(1), math.Inf(-1)
	for _, b := range m.Supports {
		first, last = min(first, b.X), max(last, b.X)
	}
	aft, fore := s.Places[0], s.Places[len(s.Places)-1]
	y := 0.0
	if aft.X < first {
		y = aft.Deflection
	}
	if fore.X > last && math.Abs(fore.Deflection) > math.Abs(y) {
		y = fore.Deflection
	}
	return y
}

// Change is a bearing whose load is different in two states of a line.
type Change struct {
	Name          string
	Before, After float64 // N
}

// Rising lists the bearings, by name, whose load rises from one state to another: with weight off a line some do. Bearings that push only count
// where both states have them.
func Rising(before, after ReactionsOut) []Change {
	a, b := before.Reactions, after.Reactions
	if before.OneWay != nil && after.OneWay != nil {
		a, b = before.OneWay, after.OneWay
	}
	was := map[string]float64{}
	for _, f := range a {
		was[f.Name] = f.Force
	}
	var list []Change
	for _, f := range b {
		if old, ok := was[f.Name]; ok && f.Force > old+1e-9*math.Abs(after.Total) {
			list = append(list, Change{f.Name, old, f.Force})
		}
	}
	return list
}
