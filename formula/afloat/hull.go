package afloat

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"oakum/field"
	"oakum/formula/hullform"
)

// Hull is the shape of a ship as it is typed or read from a file: a table of offsets, or a closed mesh of triangles.
type Hull struct {
	Offsets   *Offsets    `key:"offsets" label:"table of offsets"`
	Vertices  [][]float64 `key:"vertices" unit:"m" optional:"yes" label:"corners, each x, y, z"`
	Triangles [][]int     `key:"triangles" optional:"yes" label:"triangles, each three corners counted from 0"`

	Appendages []Appendage `key:"appendages" optional:"yes" most:"200" label:"what stands outside that shape: rudders, bossings, bilge keels"`
}

// Appendage displaces water outside the hull's own shape, or lets it in where its volume is negative (a sea chest).
type Appendage struct {
	Name   string  `key:"name" optional:"yes" label:"appendage"`
	Volume float64 `key:"volume" unit:"m3" symbol:"V" min:"-1000" max:"1000" label:"volume" help:"negative where it lets water in"`
	X      float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"its centre from the after perpendicular"`
	Y      float64 `key:"y" unit:"m" symbol:"y" default:"0" min:"-60" max:"60" label:"to port"`
	Z      float64 `key:"z" unit:"m" symbol:"z" min:"-20" max:"60" label:"above the baseline"`
	Area   float64 `key:"area" unit:"m2" symbol:"S" default:"0" min:"0" max:"10000" label:"wetted skin it adds"`
}

// Offsets is a table of half-breadths to the outside of the plating.
type Offsets struct {
	Stations     []float64   `key:"stations" unit:"m" most:"500" label:"stations, from the after perpendicular"`
	Waterlines   []float64   `key:"waterlines" unit:"m" most:"200" label:"waterlines above the baseline"`
	HalfBreadths [][]float64 `key:"half_breadths" unit:"m" label:"half-breadths: a row for each station, a column for each waterline"`
	Keel         []float64   `key:"keel" unit:"m" optional:"yes" most:"500" label:"keel above the baseline at each station"`
	Deck         []float64   `key:"deck" unit:"m" optional:"yes" most:"500" label:"deck at side above the baseline at each station"`
	DeckBreadths []float64   `key:"deck_half_breadths" unit:"m" optional:"yes" most:"500" label:"half-breadth at the deck at each station"`
}

// Form makes the geometry, with the length between perpendiculars where that is given. Warnings are what was found of a mesh.
func (h Hull) Form(length *float64) (*hullform.Hull, []string, error) {
	m, err := h.make()
	if err == nil && len(h.Appendages) > 0 {
		m.form, err = h.dressed(m.form)
	}
	if err != nil || length == nil {
		return m.form, m.warnings, err
	}
	form, err := m.form.WithLength(*length)
	if err != nil {
		return nil, nil, refusal("length", err)
	}
	if size := form.Bounds().Size().X; *length > 1.5*size || *length < 0.5*size {
		return nil, nil, field.Refuse("length", "length %v does not fit a hull that reaches over %v: check units and where x is counted from", field.Q("length", *length, "m"), field.Q("", size, "m"))
	}
	return form, m.warnings, nil
}

// dressed is the hull with its appendages. One that lies well outside the hull is refused: a place in millimetres, or counted from the wrong end.
func (h Hull) dressed(form *hullform.Hull) (*hullform.Hull, error) {
	b := form.Bounds()
	size := b.Size()
	list := make([]hullform.Appendage, len(h.Appendages))
	for i, a := range h.Appendages {
		at := hullform.Point{X: a.X, Y: a.Y, Z: a.Z}
		if a.X < b.Low.X-0.1*size.X || a.X > b.High.X+0.1*size.X || math.Abs(a.Y) > size.Y || a.Z < b.Low.Z-size.Z || a.Z > b.High.Z+size.Z {
			return nil, field.Refuse(fmt.Sprintf("hull.appendages[%d].x", i), "%s lies outside the ship: %s", or(a.Name, "this appendage"), at)
		}
		list[i] = hullform.Appendage{Name: a.Name, Volume: a.Volume, Centre: at, Area: a.Area}
	}
	dressed, err := form.WithAppendages(list...)
	if err != nil {
		return nil, refusal("hull.appendages", err)
	}
	return dressed, nil
}

func or(name, instead string) string {
	if name == "" {
		return instead
	}
	return name
}

func (h Hull) make() (m made, err error) {
	switch {
	case h.Offsets != nil && (len(h.Vertices) > 0 || len(h.Triangles) > 0):
		return m, field.Refuse("hull", "hull has offsets and a mesh: give one of them")
	case h.Offsets == nil && len(h.Vertices) == 0:
		return m, field.Refuse("hull", "hull is empty: give offsets, or vertices and triangles")
	}
	key := h.print()
	if known, ok := remembered(key); ok {
		return known, nil
	}
	m.key = key
	if err = h.sized(); err != nil {
		return m, err
	}
	if o := h.Offsets; o != nil {
		m.form, err = hullform.FromOffsets(hullform.Offsets{Stations: o.Stations, Waterlines: o.Waterlines, HalfBreadths: o.HalfBreadths,
			Keel: o.Keel, Deck: o.Deck, DeckHalfBreadths: o.DeckBreadths})
		if err != nil {
			return m, refusal("hull.offsets", err)
		}
	} else if m.form, m.warnings, err = h.mesh(); err != nil {
		return m, err
	}
	remember(m)
	return m, nil
}

// Reach of a ship's shape, m: no ship is larger, whatever her shape is measured from. A number beyond it is in millimetres, or a slip.
const (
	farAlong  = 1000.0
	farAbove  = 150.0
	farAcross = 100.0
)

// sized refuses a shape that no ship has.
func (h Hull) sized() error {
	if o := h.Offsets; o != nil {
		for _, c := range []struct {
			name      string
			list      []float64
			low, high float64
		}{{"stations", o.Stations, -farAlong, farAlong}, {"waterlines", o.Waterlines, -farAbove, farAbove}, {"keel", o.Keel, -farAbove, farAbove},
			{"deck", o.Deck, -farAbove, farAbove}, {"deck_half_breadths", o.DeckBreadths, 0, farAcross}} {
			if err := spanned("hull.offsets."+c.name, c.list, c.low, c.high); err != nil {
				return err
			}
		}
		for i, row := range o.HalfBreadths {
			if err := spanned(fmt.Sprintf("hull.offsets.half_breadths[%d]", i), row, 0, farAcross); err != nil {
				return err
			}
		}
	}
	for i, v := range h.Vertices {
		if err := spanned(fmt.Sprintf("hull.vertices[%d]", i), v, -farAlong, farAlong); err != nil {
			return err
		}
	}
	return nil
}

// spanned refuses the first number outside its bounds; one that was not taken (NaN) stands outside none.
func spanned(at string, list []float64, low, high float64) error {
	for i, x := range list {
		if x < low || x > high {
			return field.Refuse(fmt.Sprintf("%s[%d]", at, i), "%s[%d] must be from %g to %g m, not %g m: is it in millimetres?", at, i, low, high, x)
		}
	}
	return nil
}

// form is the mesh as the geometry takes it; at names it in a refusal.
func (m Mesh) form(at string) (hullform.Mesh, error) {
	out := hullform.Mesh{Vertices: make([]hullform.Point, len(m.Vertices)), Triangles: make([][3]int, len(m.Triangles))}
	for i, v := range m.Vertices {
		if len(v) != 3 {
			return out, field.Refuse(at+".vertices", "corner %d has %d numbers; it needs x, y, z", i, len(v))
		}
		out.Vertices[i] = hullform.Point{X: v[0], Y: v[1], Z: v[2]}
	}
	for i, t := range m.Triangles {
		if len(t) != 3 {
			return out, field.Refuse(at+".triangles", "triangle %d has %d corners; it needs three", i, len(t))
		}
		for _, k := range t {
			if k < 0 || k >= len(m.Vertices) {
				return out, field.Refuse(at+".triangles", "triangle %d names corner %d; there are %d, counted from 0", i, k, len(m.Vertices))
			}
		}
		out.Triangles[i] = [3]int(t)
	}
	return out, nil
}

func (h Hull) mesh() (*hullform.Hull, []string, error) {
	m, err := Mesh{h.Vertices, h.Triangles}.form("hull")
	if err != nil {
		return nil, nil, err
	}
	form, report, err := hullform.New(m)
	if err != nil {
		return nil, nil, refusal("hull", err)
	}
	var warnings []string
	for _, f := range report.Findings {
		warnings = append(warnings, "hull: "+f.Text)
	}
	return form, warnings, nil
}

// refusal makes an error of the geometry a refusal of a field: the name that stands before its colon, or the one given.
func refusal(name string, err error) error {
	var answer *hullform.Refusal
	var already *field.Error
	switch {
	case errors.As(err, &already):
		return already
	case errors.As(err, &answer):
		return field.Refuse(name, "%s", answer.Error())
	}
	text := err.Error()
	if key, _, ok := strings.Cut(text, ":"); ok && !strings.ContainsAny(key, " ()") && !strings.HasPrefix(name, "hull.") {
		name = key
	}
	return field.Refuse(name, "%s", text)
}

// perMetre turns the trade's t/cm or t m/cm into kg/m or kg m/m.
const perMetre = 1e5
