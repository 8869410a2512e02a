package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/plating"
	"oakum/ship"
)

// originalOf finds the original thickness of a reading's plate: the plate as first gauged, the plate on plan, the strake, what the report gives.
func (c *inquiry) originalOf(r reading) (*float64, field.Basis, string) {
	for _, p := range c.platesAt(r) {
		if b := p.Body; b.AsBuilt != nil {
			return b.AsBuilt, basisOf(p.Head, field.Measured), "first gauged, plate " + b.Name
		}
	}
	for _, p := range c.platesAt(r) {
		if b := p.Body; b.Thickness != nil {
			return b.Thickness, basisOf(p.Head, field.Documented), "plate " + b.Name
		}
	}
	if r.body.Original != nil {
		return r.body.Original, field.Documented, "as the report gives it"
	}
	for _, s := range dossier.All[ship.Strake](c.d) {
		if s.Body.Name == r.body.Strake && s.Body.Thickness != nil {
			return s.Body.Thickness, basisOf(s.Head, field.Documented), "strake " + s.Body.Name
		}
	}
	return nil, field.Unknown, ""
}

// platesAt are the plate records that a reading lies on.
func (c *inquiry) platesAt(r reading) []dossier.Entry[ship.Plate] {
	c.indexPlates()
	var on []dossier.Entry[ship.Plate]
	for i := range c.plateIndex[r.body.Strake] {
		if p := &c.plateIndex[r.body.Strake][i]; p.holds(&r) {
			on = append(on, p.entry)
		}
	}
	return on
}

type placedPlate struct {
	entry dossier.Entry[ship.Plate]
	spot  ship.Spot
}

// holds tells whether a reading of its strake was taken on the plate.
func (p *placedPlate) holds(r *reading) bool {
	return r.spot.X >= p.spot.X0-0.05 && r.spot.X <= p.spot.X1+0.05 && p.entry.Body.Side.Meets(r.body.Side)
}

func (c *inquiry) indexPlates() {
	if c.plateIndex != nil {
		return
	}
	c.plateIndex = map[string][]placedPlate{}
	l := c.locator()
	for _, e := range dossier.All[ship.Plate](c.d) {
		c.plateIndex[e.Body.Strake] = append(c.plateIndex[e.Body.Strake], placedPlate{e, l.Locate(e.Body.Place)})
	}
}

// limitOf is the least thickness allowed: the plate's own, or by the ship's rule.
func (c *inquiry) limitOf(r reading, original float64, row *PlateRow) (float64, bool) {
	for _, p := range c.platesAt(r) {
		if p.Body.Limit != nil && *p.Body.Limit < original {
			row.Limit = known("limit", "least allowed", *p.Body.Limit, "mm", basisOf(p.Head, field.Documented), "plate "+p.Body.Name)
			return *p.Body.Limit, true
		}
	}
	in := plating.Wastage.New()
	in.Original, in.Rule = original, "25-percent"
	basis, note := field.Assumed, "no rule chosen in the particulars: 25 % local loss taken"
	if c.particulars.WastageRule != "" {
		in.Rule, basis, note = c.particulars.WastageRule, field.Documented, "the ship's rule"
	}
	in.Share, in.Plus = c.particulars.WastageShare, c.particulars.WastagePlus
	if in.Rule != "own" {
		in.Share, in.Plus = nil, nil
	}
	subject := fmt.Sprintf("%s-%gmm", in.Rule, math.Round(original*1e5)/100)
	out, err := plating.Wastage.Fn(in)
	if err != nil {
		row.Limit = unknown("limit", "least allowed", err.Error())
		return 0, false
	}
	sheet := enter(c.book, plating.Wastage, subject, fmt.Sprintf("plate of %.1f mm", original*1000), in, map[string]field.Given{"rule": how(basis, note), "original": how(field.Documented, "")})
	row.Limit = known("limit", "least allowed", out.Limit, "mm", field.Computed, note)
	row.Limit.Sheet = sheet
	return out.Limit, true
}

// basisOf is a record's own basis, or what is usual for its kind.
func basisOf(h dossier.Head, usual field.Basis) field.Basis {
	if h.Basis != "" {
		return h.Basis
	}
	return usual
}
