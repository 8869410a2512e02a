package assess

import (
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/handling"
	"oakum/ship"
)

// HeavyRow is one heavy part, with what it takes to lift it off and stand it ashore.
type HeavyRow struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	State   string `json:"state"`
	Mass    Figure `json:"mass"`
	InWater Figure `json:"in_water"`
	Sling   Figure `json:"sling"`  // each of two legs at 60°
	Ground  Figure `json:"ground"` // largest pressure under its stand
	Stands  string `json:"stands"`
	Says    string `json:"says"`
}

func (c *inquiry) heavy(p *StandingPage) {
	p.Heavy = []HeavyRow{}
	for _, e := range dossier.All[ship.Propeller](c.d) {
		p.Heavy = append(p.Heavy, c.propellerRow(e))
	}
}

func (c *inquiry) propellerRow(e dossier.Entry[ship.Propeller]) HeavyRow {
	b := e.Body
	r := HeavyRow{ID: e.ID, Name: b.Name, State: b.State, Mass: unknown("mass", "mass", "neither its mass nor its diameter is entered").of("propeller", e.ID)}
	r.InWater, r.Sling, r.Ground = unknown("in_water", "as it hangs in the water", ""), unknown("sling", "load of each sling leg", ""), unknown("ground", "pressure under its stand", "")
	if b.Diameter == nil {
		return r
	}
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
	basis := basisOf(e.Head, field.Documented)
	sheet, out, err := work(c.book, handling.PropellerMass, e.ID, b.Name, in, map[string]field.Given{"diameter": how(basis, ""), "known_mass": how(basis, b.MassFrom), "drawing_mass": how(basis, b.MassFrom), "blades": how(basis, ""), "material": how(basis, ""), "density": how(basis, ""), "water_density": how(field.Assumed, "sea water")})
	if err != nil {
		r.Mass.Note = err.Error()
		return r
	}
	r.Mass, r.InWater = inUnit(result(sheet, "mass", "mass"), out.Mass, "t"), inUnit(result(sheet, "mass_in_water", "as it hangs in the water"), out.InWater, "t")
	if out.High > out.Low {
		r.Mass = r.Mass.band(out.Low, out.Mass, out.High)
	}
	r.Mass, r.InWater = r.Mass.of("propeller", e.ID), r.InWater.of("propeller", e.ID)
	r.Says = strings.Join(out.Warnings, "; ")
	c.lifted(&r, out.High, *b.Diameter)
	return r
}

// lifted works the sling and the stand for the heavy end of the mass.
func (c *inquiry) lifted(r *HeavyRow, mass, diameter float64) {
	in := handling.Sling.New()
	in.Mass, in.Legs, in.Angle = mass*1.05, 2, 1.0471975511965976
	if sheet, out, err := work(c.book, handling.Sling, r.ID, r.Name+" on two legs at 60°", in, map[string]field.Given{"mass": how(field.Computed, "heavy end, and a twentieth for gear"), "legs": how(field.Assumed, "two"), "angle": how(field.Assumed, "60°"), "dynamic": how(field.Assumed, "default")}); err == nil {
		r.Sling = inUnit(result(sheet, "leg_load", "load of each sling leg"), out.LegLoad, "t")
		r.Sling.Note = "a lifting plan by a licensed person decides"
	}
	st := handling.Stand.New()
	st.Mass, st.Diameter, st.Arm, st.WindSpeed, st.SlabLength, st.SlabWidth, st.SlabDepth = mass*1.1, diameter, diameter/2+0.6, new(35.0), 3, 2.4, 0.3
	sheet, out, err := work(c.book, handling.Stand, r.ID, r.Name+" on a slab of 3 by 2.4 m", st, map[string]field.Given{"mass": how(field.Computed, "heavy end, and a tenth for the stand"), "diameter": how(field.Documented, ""), "arm": how(field.Assumed, "half the diameter over a slab"), "wind_speed": how(field.Assumed, "35 m/s gust: local codes decide"),
		"slab_length": how(field.Assumed, "3 m"), "slab_width": how(field.Assumed, "2.4 m"), "slab_depth": how(field.Assumed, "0.3 m"), "soil": how(field.Assumed, "clay"), "solidity": how(field.Assumed, "default")})
	if err != nil {
		r.Ground.Note = err.Error()
		return
	}
	if _, ok := sheet.Result("q_max"); ok {
		r.Ground = result(sheet, "q_max", "pressure under its stand")
	}
	r.Stands = "does not stand: a larger slab or another ground"
	if out.OK {
		r.Stands = "stands upright ashore on that slab"
	}
}
