package hullform

import (
	"errors"
	"fmt"
)

// Hull is a closed hull made ready for cutting by water. It never changes: the With methods return another.
type Hull struct {
	mesh       Mesh
	tree       *tree
	bounds     Box
	length     float64
	beam       float64
	edge       []Point
	appendages []Appendage
	fills      fills
}

// New makes a hull of a mesh, either way out, after [Repair]. The report says what was found and mended; the error what can't be. The fore
// perpendicular is taken at the foremost point until [Hull.WithLength] says otherwise.
func New(m Mesh) (*Hull, Report, error) {
	fixed, report, err := Repair(m)
	if err != nil {
		return nil, report, err
	}
	h := prepare(fixed)
	h.edge = deckEdge(fixed, report.lids)
	return h, report, nil
}

// FromOffsets makes a hull of a table of offsets. The length between perpendiculars is taken to the foremost station.
func FromOffsets(o Offsets) (*Hull, error) {
	m, edge, err := o.loft()
	if err != nil {
		return nil, err
	}
	h := prepare(m)
	for _, p := range edge {
		h.edge = append(h.edge, p)
		if p.Y > 0 {
			h.edge = append(h.edge, Point{p.X, -p.Y, p.Z})
		}
	}
	return h, nil
}

func prepare(m Mesh) *Hull {
	h := &Hull{mesh: m, tree: newTree(m), bounds: m.Bounds()}
	h.length = h.bounds.High.X
	if h.length <= 0 {
		h.length = h.bounds.Size().X
	}
	h.fills = newFills(h)
	return h
}

// WithLength sets the length between perpendiculars, m: the fore perpendicular stands at x = length. Drafts, trim and coefficients refer to it.
func (h *Hull) WithLength(length float64) (*Hull, error) {
	if !finite(length) || length <= 0 {
		return nil, fmt.Errorf("length: %g m, must be above zero", length)
	}
	c := *h
	c.length = length
	return &c, nil
}

// WithBeam sets the moulded breadth, m, that form coefficients refer to, in place of the breadth of the part under water.
func (h *Hull) WithBeam(beam float64) (*Hull, error) {
	if !finite(beam) || beam <= 0 {
		return nil, fmt.Errorf("beam: %g m, must be above zero", beam)
	}
	c := *h
	c.beam = beam
	return &c, nil
}

// WithAppendages adds to what the hull has.
func (h *Hull) WithAppendages(list ...Appendage) (*Hull, error) {
	for _, a := range list {
		if !finite(a.Volume) || !finite(a.Area) || !a.Centre.finite() {
			return nil, fmt.Errorf("appendage %q: volume, centre and area must be numbers", a.Name)
		}
	}
	c := *h
	c.appendages = append(append([]Appendage(nil), h.appendages...), list...)
	c.fills = newFills(&c)
	return &c, nil
}

// Mesh is the closed surface, the right way out. It must not be changed.
func (h *Hull) Mesh() Mesh { return h.mesh }

// Length is the length between perpendiculars, m.
func (h *Hull) Length() float64 { return h.length }

// Bounds is the box round the hull without its appendages.
func (h *Hull) Bounds() Box { return h.bounds }

// Total is all the hull could displace with its appendages, m3.
func (h *Hull) Total() float64 { return h.fills.volume[len(h.fills.volume)-1] }

var errDry = errors.New("the hull is out of the water at this draft")
