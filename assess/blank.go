package assess

import (
	"fmt"
	"math"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/opening"
	"oakum/ship"
)

// blankFor is the plate that would blank an opening against the water over it, beside the blank that is there.
func (c *inquiry) blankFor(e dossier.Entry[ship.Opening], list []dossier.Entry[ship.Barrier], head float64, below bool) Figure {
	const label = "plate to blank it"
	b := e.Body
	switch {
	case !below:
		return aboveWater("blank", label).of("opening", e.ID)
	case math.IsNaN(head):
		return unknown("blank", label, "its height or today's draft is unknown").of("opening", e.ID)
	case b.Diameter == nil && b.Area == nil:
		return unknown("blank", label, "its size is unknown").of("opening", e.ID)
	}
	in := opening.Blank.New()
	d := 2 * math.Sqrt(orElse(b.Area, 0)/math.Pi)
	if b.Diameter != nil {
		d = *b.Diameter
	}
	in.Diameter, in.Head, in.Edge = d*1.2+0.03, new(max(head, 0.5)), "supported"
	there := dossier.Entry[ship.Barrier]{}
	for _, br := range list {
		if br.Body.Thickness != nil && strings.Contains(br.Body.Type, "blank") {
			there, in.Plate = br, br.Body.Thickness
		}
	}
	basis := basisOf(e.Head, field.Documented)
	sheet, out, err := work(c.book, opening.Blank, e.ID, "blank for "+b.Name, in, map[string]field.Given{"diameter": how(basis, "the hole, a fifth more and 30 mm for the bolts, from memory"), "head": how(field.Computed, "draft less height, half a metre at least"), "plate": how(basisOf(there.Head, field.Documented), "the blank that is there"),
		"edge": how(field.Assumed, "loose on its gasket: the safe side"), "allowable": how(field.Assumed, "default"), "corrosion_allowance": how(field.Assumed, "default"), "joint": how(field.Assumed, "default"), "water_density": how(field.Assumed, "sea water"), "modulus": how(field.Assumed, "steel"), "poisson": how(field.Assumed, "steel")})
	if err != nil {
		return unknown("blank", label, err.Error()).of("opening", e.ID)
	}
	f := result(sheet, "thickness", label).of("opening", e.ID)
	f.Note = fmt.Sprintf("of %.0f mm diameter", in.Diameter*1000)
	if out.Spare != nil {
		f.Note += fmt.Sprintf("; the blank that is there is %.1f mm", *in.Plate*1000)
		if *out.Spare < 0 {
			f.Worry = 1
			f.Note += ", thinner than wanted with its allowance"
		}
	}
	return f
}
