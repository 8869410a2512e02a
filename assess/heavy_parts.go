package assess

import (
	"math"
	"slices"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/handling"
	"oakum/plan"
	"oakum/ship"
)

// What a course may do with propellers and tail lengths.
const (
	partsStay      = "stay"
	partsSealed    = "stay, shaft sealed and blanked"
	partsShown     = "off, shown at the ship"
	partsElsewhere = "off, placed elsewhere"
	partsWithTail  = "off with the tail length"
)

// heavyPart is one piece that a course takes off: a propeller, or a tail length.
type heavyPart struct {
	kind, id, name    string
	line              string
	low, likely, high float64 // kg
	x, y              float64
	z                 *float64
	bronze            float64 // m2 of bare bronze
	placed, tail      bool
	across            float64 // m, diameter of a propeller
	sheet             string  // of its mass
}

// comesOff tells whether the course takes the parts off her.
func comesOff(b plan.Course) bool {
	return b.HeavyParts == partsShown || b.HeavyParts == partsElsewhere || b.HeavyParts == partsWithTail
}

// linesOf are the shaft lines that a course speaks of: those it treats, or all.
func (c *inquiry) linesOf(b plan.Course) []dossier.Entry[ship.ShaftLine] {
	all := dossier.All[ship.ShaftLine](c.d)
	named := slices.Collect(func(yield func(dossier.Entry[ship.ShaftLine]) bool) {
		for _, e := range all {
			if c.treatsLine(b, e.ID) && !yield(e) {
				return
			}
		}
	})
	if len(named) > 0 {
		return named
	}
	return all
}

// treatsLine tells whether a course names a line, or a gland or propeller of it.
func (c *inquiry) treatsLine(b plan.Course, line string) bool {
	for _, id := range b.Treats {
		if id == line {
			return true
		}
		if g, ok := dossier.Find[ship.Gland](c.d, id); ok && g.Body.Line == line {
			return true
		}
		if p, ok := dossier.Find[ship.Propeller](c.d, id); ok && p.Body.Line == line {
			return true
		}
	}
	return false
}

// heavyOf are the pieces that a course takes off, from the records of propellers and shaft lines.
func (c *inquiry) heavyOf(b plan.Course) []heavyPart {
	if !comesOff(b) {
		return nil
	}
	lines := c.linesOf(b)
	var parts []heavyPart
	for _, e := range dossier.All[ship.Propeller](c.d) {
		on := slices.ContainsFunc(lines, func(l dossier.Entry[ship.ShaftLine]) bool { return l.ID == e.Body.Line })
		if (!on && len(lines) > 0) || strings.HasPrefix(e.Body.State, "off") || e.Body.State == "gone" {
			continue
		}
		if p, ok := propellerPart(e); ok {
			parts = append(parts, p)
		}
	}
	if b.HeavyParts == partsWithTail {
		for _, l := range lines {
			if p, ok := c.tailPart(l); ok {
				parts = append(parts, p)
			}
		}
	}
	return parts
}

// propellerMass is the call of the formula for a propeller's mass.
func propellerMass(e dossier.Entry[ship.Propeller]) (handling.PropellerMassIn, map[string]field.Given) {
	b, basis := e.Body, basisOf(e.Head, field.Documented)
	in := handling.PropellerMass.New()
	in.Diameter, in.Blades, in.Density = *b.Diameter, b.Blades, b.Density
	if b.Material != "" && b.Material != "unknown" {
		in.Material = b.Material
	}
	switch b.MassFrom {
	case "cast in", "weighed":
		in.Known = b.Mass
	default:
		in.Drawing = b.Mass
	}
	return in, map[string]field.Given{"diameter": how(basis, ""), "known_mass": how(basis, b.MassFrom), "drawing_mass": how(basis, b.MassFrom), "blades": how(basis, ""), "material": how(basis, ""), "density": how(basis, ""), "water_density": how(field.Assumed, "sea water")}
}

func propellerPart(e dossier.Entry[ship.Propeller]) (heavyPart, bool) {
	b := e.Body
	if b.Diameter == nil {
		return heavyPart{}, false
	}
	in, _ := propellerMass(e)
	out, err := handling.PropellerMass.Fn(in)
	if err != nil {
		return heavyPart{}, false
	}
	p := heavyPart{kind: "propeller", id: e.ID, name: b.Name, line: b.Line, low: out.Low, likely: out.Mass, high: out.High, y: orElse(b.Y, 0), z: b.Z, across: *b.Diameter, sheet: handling.PropellerMass.ID + "@" + e.ID}
	if b.X != nil {
		p.x, p.placed = *b.X, true
	}
	if b.BladeArea != nil && strings.Contains(b.Material, "bronze") && b.Coated != "yes" {
		p.bronze = *b.BladeArea
	}
	return p, true
}

// tailPart is the tail length of a line: its mass as entered, or of its segments, good to a twentieth.
func (c *inquiry) tailPart(e dossier.Entry[ship.ShaftLine]) (heavyPart, bool) {
	mass, moment := 0.0, 0.0
	for _, s := range dossier.All[ship.Segment](c.d) {
		b := s.Body
		if b.Line != e.ID || b.Tail == nil || !*b.Tail || b.X0 == nil || b.X1 == nil || b.OuterDiameter == nil {
			continue
		}
		inner := orElse(b.InnerDiameter, 0)
		m := (math.Pi/4*(*b.OuterDiameter**b.OuterDiameter-inner*inner)*orElse(b.Density, 7850) + orElse(b.Load, 0)/calc.Gravity) * (*b.X1 - *b.X0)
		mass, moment = mass+m, moment+m*(*b.X0+*b.X1)/2
	}
	p := heavyPart{kind: "shaft_line", id: e.ID, name: "tail length of " + e.Body.Name, line: e.ID, y: orElse(e.Body.Y, 0), z: e.Body.Z, tail: true}
	if mass > 0 {
		p.x, p.placed = moment/mass, true
	} else if e.Body.XAft != nil && e.Body.Tail != nil {
		p.x, p.placed = *e.Body.XAft+*e.Body.Tail/2, true
	}
	if e.Body.TailMass != nil {
		mass = *e.Body.TailMass
	}
	p.low, p.likely, p.high = 0.95*mass, mass, 1.05*mass
	return p, mass > 0
}

// filled is a course with its mass, its centre and its bare bronze worked from the parts it takes off, where nobody entered them.
func (c *inquiry) filled(b plan.Course) plan.Course {
	parts := c.heavyOf(b)
	if len(parts) == 0 {
		return b
	}
	var mass, mx, my, mz, bronze float64
	placed, high := true, true
	for _, p := range parts {
		mass, mx, my, bronze = mass+p.likely, mx+p.likely*p.x, my+p.likely*p.y, bronze+p.bronze
		placed = placed && p.placed
		if high = high && p.z != nil; high {
			mz += p.likely * *p.z
		}
	}
	if b.MassOff == nil {
		b.MassOff = &mass
		if placed {
			b.X, b.Y = new(mx/mass), new(my/mass)
		}
		if high {
			b.Z = new(mz / mass)
		}
	}
	if b.Bare == nil && bronze > 0 {
		b.Bare = &bronze
	}
	return b
}
