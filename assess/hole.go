package assess

import (
	"math"

	"oakum/field"
	"oakum/formula/flooding"
	"oakum/quantity"
	"oakum/ship"
)

// holeFlow is the water through the first hole of a plate that wears through.
func (c *inquiry) holeFlow(r *PlateRow) (float64, Figure) {
	return c.areaFlow("thickness", r.ID, r.Place, math.Pi/4*firstHole*firstHole, r.spot)
}

// areaFlow is the water through a hole of an area (m2) at a spot of the shell, at today's draft.
func (c *inquiry) areaFlow(kind, id, words string, area float64, spot ship.Spot) (float64, Figure) {
	const label = "water when it goes"
	draft, ok := c.draftNow()
	switch {
	case !ok || !ship.Known(spot.Z):
		return 0, unknown("flow", label, "its height or today's draft is unknown").of(kind, id)
	case spot.Z >= draft:
		f := known("flow", label, 0, "m3/h", field.Computed, "above today's water").of(kind, id)
		f.Text = "above the water"
		return 0, f
	}
	in := flooding.Rate.New()
	in.Area, in.Head = &area, draft-spot.Z
	sheet, out, err := work(c.book, flooding.Rate, kind+"-"+id, words, in, map[string]field.Given{
		"area": how(field.Assumed, "a first hole of 8 mm, from memory"), "head": how(field.Computed, "draft less height"), "discharge_coefficient": how(field.Assumed, "default"), "inside_level_head": how(field.Assumed, "default")})
	if err != nil {
		return 0, unknown("flow", label, err.Error()).of(kind, id)
	}
	return out.Flow, result(sheet, "flow_per_hour", label).of(kind, id)
}

// inUnit shows a figure's value (base units) in another unit of the same dimension.
func inUnit(f Figure, base float64, unit string) Figure {
	x, err := quantity.FromBase(base, unit)
	if err != nil {
		return f
	}
	f.Value, f.Unit, f.Text = new(field.Trim(x)), unit, spoken(base, unit)
	f.P10, f.P50, f.P90 = nil, nil, nil
	return f
}
