package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/gland"
	"oakum/ship"
)

// Moduli of old bedded packing, MPa. Nothing is published; a range from memory of soft fibres, wide enough to order cases and no more.
const (
	softPacking   = 2e6
	likelyPacking = 6e6
	hardPacking   = 20e6
)

// glandHead is the depth of a gland below today's water, m.
func (c *inquiry) glandHead(b ship.Gland) (float64, bool) {
	draft, ok := c.draftNow()
	switch {
	case b.Head != nil:
		return *b.Head, true
	case b.Height != nil && ok:
		return draft - *b.Height, true
	case b.Line != "" && ok:
		if e, found := dossier.Find[ship.ShaftLine](c.d, b.Line); found && e.Body.Z != nil {
			return draft - *e.Body.Z, true
		}
	}
	return 0, false
}

// glandMargin is how much the packing still presses at the water end, over the pressure of the water there.
func (c *inquiry) glandMargin(e dossier.Entry[ship.Gland]) Figure {
	const label = "pressure on the packing over the water's"
	b := e.Body
	head, ok := c.glandHead(b)
	switch {
	case b.Bore == nil || b.Shaft == nil || b.Rings == nil:
		return unknown("margin", label, "bore, shaft and rings are not all known").of("gland", e.ID)
	case b.Stress == nil:
		return unknown("margin", label, "nobody noted how hard the follower was set up").of("gland", e.ID)
	case !ok:
		return unknown("margin", label, "the head on it is not known").of("gland", e.ID)
	case head <= 0:
		return aboveWater("margin", label).of("gland", e.ID)
	}
	in := gland.Pressure.New()
	in.Bore, in.Shaft, in.Rings, in.GlandStress, in.RingDepth, in.Head, in.StudDiameter = *b.Bore, *b.Shaft, *b.Rings, *b.Stress, b.RingDepth, &head, b.StudDiameter
	if b.Studs != nil {
		in.Studs = new(float64(*b.Studs))
	}
	basis := basisOf(e.Head, field.Documented)
	sheet, out, err := work(c.book, gland.Pressure, "gland-"+e.ID, b.Name, in, map[string]field.Given{
		"bore": how(basis, ""), "shaft": how(basis, ""), "rings": how(basis, ""), "ring_depth": how(basis, ""), "gland_stress": how(basis, "last set up "+b.StressSet.String()), "studs": how(basis, ""), "stud_diameter": how(basis, ""),
		"water_head": how(field.Computed, "draft less height"), "k_ratio": how(field.Assumed, "from memory"), "friction": how(field.Assumed, "from memory"), "nut_factor": how(field.Assumed, "from memory"), "water_density": how(field.Assumed, "sea water")})
	if err != nil {
		return unknown("margin", label, err.Error()).of("gland", e.ID)
	}
	f := result(sheet, "seal_margin", label).of("gland", e.ID).at(b.Place.String())
	f = c.marginBand(f, in)
	f.Note = "on the day it was set up; packing relaxes after"
	if years, ok := b.StressSet.YearsUntil(c.day); ok && years > 1 {
		f.Note = fmt.Sprintf("%.0f years after it was last set up: packing relaxes, and no law says by how much", years)
	}
	switch {
	case out.SealMargin == nil:
	case f.P10 != nil && *f.P10 < 1:
		f.Worry = 2
	case *out.SealMargin < 3:
		f.Worry = 1
	}
	return f
}

// marginBand spans what ratio and friction may be: 0.3 with 0.2 at the low end, 0.7 with 0.05 at the high.
func (c *inquiry) marginBand(f Figure, in gland.PressureIn) Figure {
	low, high := in, in
	low.Ratio, low.Friction, high.Ratio, high.Friction = 0.3, 0.2, 0.7, 0.05
	a, errA := gland.Pressure.Fn(low)
	b, errB := gland.Pressure.Fn(high)
	if errA != nil || errB != nil || a.SealMargin == nil || b.SealMargin == nil || f.Value == nil {
		return f
	}
	lo, hi := min(*a.SealMargin, *b.SealMargin, *f.Value), max(*a.SealMargin, *b.SealMargin, *f.Value)
	f = f.band(lo, *f.Value, hi)
	f.Text = fmt.Sprintf("%.1f to %.1f times", lo, hi)
	return f
}

// glandCrush is the gap over a shaft that lies in its packing, by what the shaft line puts on it.
func (c *inquiry) glandCrush(e dossier.Entry[ship.Gland], load *float64) Figure {
	const label = "gap over the resting shaft"
	b := e.Body
	switch {
	case b.Bore == nil || b.Shaft == nil || b.Rings == nil:
		return unknown("crush", label, "bore, shaft and rings are not all known").of("gland", e.ID)
	case load == nil:
		return unknown("crush", label, "what the packing carries is not known: enter the shaft line with its bearings").of("gland", e.ID)
	}
	in := gland.Crush.New()
	in.Section = (*b.Bore - *b.Shaft) / 2
	in.Load, in.Shaft, in.PackingLength, in.Modulus = *load, *b.Shaft, in.Section*float64(*b.Rings), likelyPacking
	if b.RingDepth != nil {
		in.PackingLength = *b.RingDepth * float64(*b.Rings)
	}
	basis := basisOf(e.Head, field.Documented)
	sheet, out, err := work(c.book, gland.Crush, "gland-"+e.ID, b.Name+": the shaft at rest in its packing", in, map[string]field.Given{
		"load": how(field.Computed, "the bearing next to it worn away: shaft line on the packing instead"), "shaft": how(basis, ""), "packing_length": how(basis, "rings by their depth"), "modulus": how(field.Assumed, "2 to 20 MPa, from memory: nothing is published for old packing"),
		"section": how(basis, "(bore less shaft)/2"), "precompression": how(field.Assumed, "none left")})
	if err != nil {
		return unknown("crush", label, err.Error()).of("gland", e.ID)
	}
	f := result(sheet, "top_opening", label).of("gland", e.ID)
	soft, hard := in, in
	soft.Modulus, hard.Modulus = softPacking, hardPacking
	a, errA := gland.Crush.Fn(hard)
	z, errZ := gland.Crush.Fn(soft)
	if errA == nil && errZ == nil {
		f = f.band(a.TopOpening, out.TopOpening, z.TopOpening)
	}
	if *load == 0 {
		f.Note = "no load comes on it: the shaft lifts there, and presses on the top of its packing if on anything"
		return f
	}
	f.Note = "if the bearing beside it no longer carries; a model of our own that only orders cases"
	return f
}

// aboveWater is the figure of what no water reaches today.
func aboveWater(key, label string) Figure {
	f := known(key, label, 0, "1", field.Computed, "")
	f.Value, f.Unit, f.Text = nil, "", "above the water"
	return f
}
