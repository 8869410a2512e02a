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
	in.Diameter, in.Head, in.Edge = gasketOver(d), new(max(head, 0.5)), "supported"
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

// gasketOver is the gasket of a plate over a hole of diameter d, m: a fifth more and 30 mm, from memory.
func gasketOver(d float64) float64 { return d*1.2 + 0.03 }

// boltsOver are the bolts of a plate over a hole, inside the hull, where the water pushes it off its seat: the harder case.
func (c *inquiry) boltsOver(subject, name string, hole, head float64) Figure {
	const label = "bolts of the blank"
	in := opening.Bolts.New()
	in.Gasket, in.Head = gasketOver(hole), new(max(head, 0.5))
	switch {
	case in.Gasket < 0.2:
		in.Bolt = "M12"
	case in.Gasket > 0.8:
		in.Bolt = "M20"
	}
	assumed := how(field.Assumed, "default")
	sheet, out, err := work(c.book, opening.Bolts, subject, "bolts of the blank for "+name, in, map[string]field.Given{"gasket_diameter": how(field.Computed, "the hole, a fifth more and 30 mm, from memory"), "head": how(field.Computed, "draft less height, half a metre at least"),
		"side": how(field.Assumed, "inside: the harder case"), "bolt": how(field.Assumed, "by the size of the plate"), "water_density": how(field.Assumed, "sea water"), "gasket_width": assumed, "gasket_factor": assumed, "seating_stress": assumed, "bolt_allowable": assumed, "most_spacing": assumed, "gasket_to_bolts": assumed})
	if err != nil {
		return unknown("bolts", label, err.Error())
	}
	f := wholeOf(result(sheet, "count", label))
	f.Key, f.Text = "bolts", fmt.Sprintf("%.0f of %s", out.Count, in.Bolt)
	f.Note = fmt.Sprintf("on a circle of %.0f mm, %.0f mm apart", out.Circle*1000, out.Spacing*1000)
	return f
}

// tubeBlank is the plate over the bore of a stern tube, and its bolts: inside over the gland's place, or outside over the tube.
func (c *inquiry) tubeBlank(e dossier.Entry[ship.ShaftLine]) (plate, bolts Figure) {
	plate, bolts = unknown("plate", "plate over the stern tube", ""), unknown("bolts", "bolts of the blank", "")
	draft, ok := c.draftNow()
	b := e.Body
	if b.TubeBore == nil || b.Z == nil || !ok {
		plate.Note = "the bore of the tube, its height or today's draft is not entered"
		bolts.Note = plate.Note
		return plate, bolts
	}
	head := max(draft-*b.Z, 0.5)
	in := opening.Blank.New()
	in.Diameter, in.Head, in.Edge = gasketOver(*b.TubeBore), &head, "supported"
	basis, assumed := basisOf(e.Head, field.Documented), how(field.Assumed, "default")
	sheet, _, err := work(c.book, opening.Blank, e.ID, "blank over the stern tube of "+b.Name, in, map[string]field.Given{"diameter": how(basis, "bore of the tube, a fifth more and 30 mm, from memory"), "head": how(field.Computed, "draft less height of the shaft"),
		"edge": how(field.Assumed, "loose on its gasket: the safe side"), "allowable": assumed, "corrosion_allowance": assumed, "joint": assumed, "water_density": how(field.Assumed, "sea water"), "modulus": how(field.Assumed, "steel"), "poisson": how(field.Assumed, "steel")})
	if err != nil {
		plate.Note = err.Error()
		return plate, bolts
	}
	plate = result(sheet, "thickness", plate.Label).of("shaft_line", e.ID)
	plate.Key, plate.Note = "plate", fmt.Sprintf("of %.0f mm diameter, %.1f m of water on it", (in.Diameter+0.06)*1000, head)
	return plate, c.boltsOver("tube-"+e.ID, "the stern tube of "+b.Name, *b.TubeBore, head).of("shaft_line", e.ID)
}
