package hullform

import (
	"fmt"
	"math"
)

// Hydrostatics are the properties of a hull at one attitude. Heights and lengths are in the ship's own axes.
type Hydrostatics struct {
	Attitude
	Density float64 // kg/m3
	Cut     Cut

	Volume     float64 // m3
	Mass       float64 // kg, displaced
	LCB        float64 // m from the after perpendicular
	KB         float64 // m above the baseline
	TCB        float64 // m, + to port
	Waterplane float64 // m2
	LCF        float64 // m from the after perpendicular
	BMt        float64 // m, transverse
	BMl        float64 // m, longitudinal
	KMt        float64 // m above the baseline
	KMl        float64 // m above the baseline
	TPC        float64 // t/cm, tonnes per centimetre of immersion
	MCT        float64 // t.m/cm, moment to change trim one centimetre, on BM longitudinal
	Wetted     float64 // m2

	Breadth float64 // m, of the part under water, or the beam set
	Midship float64 // m2, section area under water at half length
	Cb      float64 // block coefficient, on length, breadth and draft amidships
	Cw      float64 // waterplane coefficient
	Cm      float64 // midship section coefficient
}

// Hydrostatics are the properties at an attitude in water of a density (kg/m3). Block and midship coefficients mean little when she is heeled or far
// out of trim.
func (h *Hull) Hydrostatics(a Attitude, density float64) (Hydrostatics, error) {
	if err := a.valid(); err != nil {
		return Hydrostatics{}, err
	}
	if !finite(density) || density <= 0 {
		return Hydrostatics{}, fmt.Errorf("water_density: %g kg/m3, must be above zero", density)
	}
	p := a.Plane(h.length)
	c := h.Cut(p)
	if !(c.Volume > 1e-12*h.Total()) {
		return Hydrostatics{}, fmt.Errorf("draft: %g m: %w", a.Draft, errDry)
	}
	q := h.read(c, density)
	q.Attitude = a
	h.coefficients(&q)
	return q, nil
}

func (a Attitude) valid() error {
	switch {
	case !finite(a.Draft):
		return fmt.Errorf("draft: %g m is not a number", a.Draft)
	case !finite(a.Trim):
		return fmt.Errorf("trim: %g m is not a number", a.Trim)
	case !finite(a.Heel) || math.Abs(a.Heel) >= math.Pi/2:
		return fmt.Errorf("heel: %g rad, must lie within a right angle either way", a.Heel)
	}
	return nil
}

// read puts a cut in the trade's terms.
func (h *Hull) read(c Cut, density float64) Hydrostatics {
	up := c.Plane.Normal.Z
	q := Hydrostatics{
		Density: density, Cut: c, Volume: c.Volume, Mass: c.Volume * density,
		LCB: c.Centre.X, KB: c.Centre.Z, TCB: c.Centre.Y,
		Waterplane: c.Waterplane, LCF: c.Flotation.X, Wetted: c.Wetted,
		BMt: c.Transverse / c.Volume, BMl: c.Longitudinal / c.Volume,
		TPC: c.Waterplane * density / 1e5,
	}
	q.KMt, q.KMl = q.KB+q.BMt*up, q.KB+q.BMl*up
	q.MCT = q.Mass / 1000 * q.BMl / (100 * h.length)
	return q
}

// MCTOnGM is the moment to change trim on GM longitudinal for a centre of gravity kg above the baseline, t.m/cm.
func (q Hydrostatics) MCTOnGM(kg float64) float64 { return q.MCT * (q.KMl - kg) / q.BMl }

// GM is the transverse metacentric height for a centre of gravity kg above the baseline, m.
func (q Hydrostatics) GM(kg float64) float64 { return q.KMt - kg }

// coefficients fills in breadth, midship section and form coefficients; those that have no meaning stay zero.
func (h *Hull) coefficients(q *Hydrostatics) {
	p := q.Cut.Plane
	q.Breadth = h.beam
	if q.Breadth == 0 {
		q.Breadth = h.tree.reach(p, Point{0, 1, 0}) + h.tree.reach(p, Point{0, -1, 0})
	}
	q.Midship = h.SectionArea(h.length/2, p)
	if q.Draft <= 0 || q.Breadth <= 0 {
		return
	}
	q.Cb = q.Volume / (h.length * q.Breadth * q.Draft)
	q.Cw = q.Waterplane / (h.length * q.Breadth)
	q.Cm = q.Midship / (q.Breadth * q.Draft)
}

// Curves are the properties over a range of drafts, at one trim and heel: the hydrostatic table.
func (h *Hull) Curves(drafts []float64, trim, heel, density float64) ([]Hydrostatics, error) {
	out := make([]Hydrostatics, 0, len(drafts))
	for _, d := range drafts {
		q, err := h.Hydrostatics(Attitude{d, trim, heel}, density)
		if err != nil {
			return nil, err
		}
		out = append(out, q)
	}
	return out, nil
}
