package shaft

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/beam"
)

// Segment is a length of shaft of one section. Its stiffness and weight come from diameters, or are given.
type Segment struct {
	X0          float64  `key:"x0" unit:"m" symbol:"x0" min:"-500" max:"500" label:"from" help:"along the shaft, 0 at its after end"`
	X1          float64  `key:"x1" unit:"m" symbol:"x1" min:"-500" max:"500" label:"to"`
	Outer       *float64 `key:"outer_diameter" unit:"m" symbol:"D" min:"0.001" max:"3" label:"outer diameter"`
	Inner       float64  `key:"inner_diameter" unit:"m" symbol:"d" default:"0" min:"0" max:"3" label:"bore"`
	Modulus     float64  `key:"modulus" unit:"GPa" symbol:"E" default:"206" min:"0.001" max:"500" label:"modulus of elasticity"`
	Density     float64  `key:"density" unit:"kg/m3" symbol:"rho" default:"7850" min:"1" max:"25000" label:"density of the shaft"`
	Wet         bool     `key:"wet" default:"false" label:"in the water" help:"buoyancy of its outside is taken off: the bore counts as plugged and dry"`
	BoreFlooded bool     `key:"bore_flooded" default:"false" label:"bore full of water"`
	Load        float64  `key:"load" unit:"N/m" symbol:"load" default:"0" min:"-1e9" max:"1e9" label:"further load, downward" help:"sleeve, coating, growth"`
	EI          *float64 `key:"ei" unit:"N.m2" symbol:"EI" min:"0.001" max:"1e20" label:"bending stiffness" help:"instead of a diameter"`
	Weight      *float64 `key:"weight" unit:"N/m" symbol:"w" min:"-1e9" max:"1e9" label:"weight as it hangs, buoyancy taken off" help:"instead of a diameter"`
}

// Bearing holds the shaft at a point.
type Bearing struct {
	Name   string  `key:"name" label:"name"`
	X      float64 `key:"x" unit:"m" symbol:"x" min:"-500" max:"500" label:"place along the shaft"`
	Settle float64 `key:"settle" unit:"mm" symbol:"settle" default:"0" min:"-500" max:"500" label:"how far it stands below the line, down positive"`
	Fixed  bool    `key:"fixed" default:"false" label:"holds the slope too"`
}

// Load is a force or a moment at a point.
type Load struct {
	Name   string  `key:"name" label:"name" optional:"yes"`
	X      float64 `key:"x" unit:"m" symbol:"x" min:"-500" max:"500" label:"place along the shaft"`
	Force  float64 `key:"force" unit:"N" symbol:"force" default:"0" min:"-1e9" max:"1e9" label:"force, downward"`
	Moment float64 `key:"moment" unit:"N.m" symbol:"moment" default:"0" min:"-1e10" max:"1e10" label:"moment, clockwise with x to the right"`
}

// Body is a propeller, a coupling or a flange.
type Body struct {
	Name    string  `key:"name" label:"name" optional:"yes"`
	X       float64 `key:"x" unit:"m" symbol:"x" min:"-500" max:"500" label:"place of its centre of gravity along the shaft"`
	Mass    float64 `key:"mass" unit:"kg" symbol:"mass" min:"0" max:"1e6" label:"mass in air"`
	Density float64 `key:"density" unit:"kg/m3" symbol:"rho" default:"8330" min:"1" max:"25000" label:"density" help:"8330 manganese bronze C86500 (0.301 lb/in3), 7640 nickel-aluminium bronze C95800 (0.276 lb/in3)"`
	Wet     bool    `key:"wet" default:"false" label:"in the water"`
}

// stiffness is the bending stiffness of a segment, N.m2.
func (s Segment) stiffness() float64 {
	if s.EI != nil {
		return *s.EI
	}
	return s.Modulus * math.Pi / 64 * (math.Pow(*s.Outer, 4) - math.Pow(s.Inner, 4))
}

// weight is the weight of a segment as it hangs, N/m.
func (s Segment) weight(water float64) float64 {
	if s.Weight != nil {
		return *s.Weight + s.Load
	}
	solid := math.Pi / 4 * (*s.Outer**s.Outer - s.Inner*s.Inner)
	mass := s.Density * solid
	if s.Wet {
		displaced := math.Pi / 4 * *s.Outer * *s.Outer
		if s.BoreFlooded {
			displaced = solid
		}
		mass -= water * displaced
	}
	return mass*calc.Gravity + s.Load
}

// weight is the weight of a body as it hangs, N.
func (b Body) weight(water float64) float64 {
	if b.Wet {
		return b.Mass * (1 - water/b.Density) * calc.Gravity
	}
	return b.Mass * calc.Gravity
}

// model makes the beam of a shaft line, bearings holding both ways. Stations are added for the deflection curve.
func (in ReactionsIn) model() (beam.Model, error) {
	segments := slices.Clone(in.Segments)
	if err := check(segments); err != nil {
		return beam.Model{}, err
	}
	slices.SortStableFunc(segments, func(a, b Segment) int {
		switch {
		case a.X0 < b.X0:
			return -1
		case a.X0 > b.X0:
			return 1
		}
		return 0
	})
	var m beam.Model
	for i, s := range segments {
		if i > 0 {
			if gap := s.X0 - segments[i-1].X1; math.Abs(gap) > touching {
				return m, field.Refuse("segments", "segments must meet: one ends at %v, the next starts at %v", field.Q("", segments[i-1].X1, "m"), field.Q("", s.X0, "m"))
			}
			s.X0 = segments[i-1].X1
		}
		w := s.weight(in.Density)
		m.Spans = append(m.Spans, beam.Span{X0: s.X0, X1: s.X1, EI: s.stiffness()})
		m.Spreads = append(m.Spreads, beam.Spread{X0: s.X0, X1: s.X1, W0: w, W1: w})
	}
	x0, x1 := m.Spans[0].X0, m.Spans[len(m.Spans)-1].X1
	off := func(path string, x float64) error {
		if x < x0-touching || x > x1+touching {
			return field.Refuse(path, "%s is off the shaft: %v, where the shaft runs from %v to %v", path, field.Q(path, x, "m"), field.Q("", x0, "m"), field.Q("", x1, "m"))
		}
		return nil
	}
	in0 := func(x float64) float64 { return min(max(x, x0), x1) }
	for i, b := range in.Bearings {
		if err := off(fmt.Sprintf("bearings[%d].x", i), b.X); err != nil {
			return m, err
		}
		for j, other := range in.Bearings[:i] {
			if math.Abs(b.X-other.X) <= touching {
				return m, field.Refuse(fmt.Sprintf("bearings[%d].x", i), "bearings %s and %s stand at the same place (%v)", in.Bearings[j].Name, b.Name, field.Q("", b.X, "m"))
			}
		}
		m.Supports = append(m.Supports, beam.Support{X: in0(b.X), Settle: b.Settle, Fixed: b.Fixed})
	}
	for i, l := range in.Loads {
		if err := off(fmt.Sprintf("loads[%d].x", i), l.X); err != nil {
			return m, err
		}
		m.Points = append(m.Points, beam.Point{X: in0(l.X), Force: l.Force, Moment: l.Moment})
	}
	for i, b := range in.Bodies {
		if err := off(fmt.Sprintf("bodies[%d].x", i), b.X); err != nil {
			return m, err
		}
		m.Points = append(m.Points, beam.Point{X: in0(b.X), Force: b.weight(in.Density)})
	}
	const stations = 50
	for i := range stations + 1 {
		m.Stations = append(m.Stations, x0+(x1-x0)*float64(i)/stations)
	}
	return m, nil
}

// touching is how far two ends may be apart and still meet, m: a tenth of a millimetre, below what a drawing gives.
const touching = 1e-4

func check(segments []Segment) error {
	if len(segments) == 0 {
		return field.Refuse("segments", "segments is empty: give at least one length of shaft")
	}
	for i, s := range segments {
		at := func(key string) string { return fmt.Sprintf("segments[%d].%s", i, key) }
		switch {
		case s.X1 <= s.X0:
			return field.Refuse(at("x1"), "x1 must be more than x0 (%v <= %v)", field.Q(at("x1"), s.X1, "m"), field.Q(at("x0"), s.X0, "m"))
		case s.Outer == nil && (s.EI == nil || s.Weight == nil):
			return field.Refuse(at("outer_diameter"), "outer_diameter is missing: give it, or both ei and weight")
		case s.Outer != nil && s.Inner >= *s.Outer:
			return field.Refuse(at("inner_diameter"), "inner_diameter must be less than outer_diameter (%v >= %v)", field.Q(at("inner_diameter"), s.Inner, "m"), field.Q(at("outer_diameter"), *s.Outer, "m"))
		}
	}
	return nil
}
