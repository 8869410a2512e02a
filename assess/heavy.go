package assess

import (
	"fmt"
	"math"
	"strconv"
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
	Sling   Figure `json:"sling"`   // each of two legs at 60°
	Shackle Figure `json:"shackle"` // body of the shackle on each leg
	Ground  Figure `json:"ground"`  // largest pressure under its stand
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
	r.Shackle = unknown("shackle", "shackle on each leg", "")
	r.InWater, r.Sling, r.Ground = unknown("in_water", "as it hangs in the water", ""), unknown("sling", "load of each sling leg", ""), unknown("ground", "pressure under its stand", "")
	if b.Diameter == nil {
		return r
	}
	in, given := propellerMass(e)
	sheet, out, err := work(c.book, handling.PropellerMass, e.ID, b.Name, in, given)
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
	r.Sling, r.Shackle = c.slung(r.ID, r.Name, mass)
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

// slung is a piece on two legs at 60°, with a twentieth for gear: the load of a leg, and the body of the shackle that carries it.
func (c *inquiry) slung(id, name string, mass float64) (leg, shackle Figure) {
	leg, shackle = unknown("sling", "load of each sling leg", ""), unknown("shackle", "shackle on each leg", "")
	in := handling.Sling.New()
	in.Mass, in.Legs, in.Angle = mass*1.05, 2, math.Pi/3
	sheet, out, err := work(c.book, handling.Sling, id, name+" on two legs at 60°", in, map[string]field.Given{"mass": how(field.Computed, "heavy end, and a twentieth for gear"), "legs": how(field.Assumed, "two"), "angle": how(field.Assumed, "60°"), "dynamic": how(field.Assumed, "default")})
	if err != nil {
		leg.Note = err.Error()
		return leg, shackle
	}
	leg = inUnit(result(sheet, "leg_load", leg.Label), out.LegLoad, "t")
	leg.Note = "a lifting plan by a competent rigger decides"
	return leg, c.shackleFor(id, name, out.LegLoad)
}

// eighth is the step of shackle bodies, m: an eighth of an inch, common practice.
const eighth = 0.0254 / 8

// shackleFor is the least body, in eighths of an inch, whose working load is not under what a leg carries.
func (c *inquiry) shackleFor(id, name string, load float64) Figure {
	in := handling.Shackle.New()
	for in.Body = 4 * eighth; in.Body <= 8*8*eighth; in.Body += eighth {
		out, err := handling.Shackle.Fn(in)
		if err != nil || out.WLL < load {
			continue
		}
		sheet, _, err := work(c.book, handling.Shackle, id, "shackle for a leg of "+name, in, map[string]field.Given{"body_diameter": how(field.Computed, "least body, in eighths of an inch, that carries the leg")})
		if err != nil {
			break
		}
		f := known("shackle", "shackle on each leg", in.Body, "in", field.Computed, "")
		f.Sheet = sheet.ID
		f.Text = eighths(in.Body) + " in body"
		f.Note = "by its body; the mark forged into it and its certificate decide"
		return f
	}
	return unknown("shackle", "shackle on each leg", "no shackle of a usual size carries it: a lifting plan decides")
}

// eighths writes a length in inches as people say it: 1 1/8.
func eighths(m float64) string {
	n := int(math.Round(m / eighth))
	whole, part := n/8, n%8
	if part == 0 {
		return strconv.Itoa(whole)
	}
	d := 8
	for part%2 == 0 {
		part, d = part/2, d/2
	}
	words := fmt.Sprintf("%d/%d", part, d)
	if whole > 0 {
		words = strconv.Itoa(whole) + " " + words
	}
	return words
}
