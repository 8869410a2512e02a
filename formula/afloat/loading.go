package afloat

import (
	"errors"

	"oakum/field"
	"oakum/formula/hullform"
)

// Loading is what the ship weighs and where.
type Loading struct {
	Mass        *float64 `key:"mass" unit:"t" symbol:"W" over:"0" max:"600000" label:"mass of the ship"`
	LCG         *float64 `key:"lcg" unit:"m" symbol:"xg" min:"-50" max:"500" label:"centre of gravity from the after perpendicular"`
	VCG         *float64 `key:"vcg" unit:"m" symbol:"KG" min:"-20" max:"100" label:"centre of gravity above the baseline"`
	TCG         float64  `key:"tcg" unit:"m" symbol:"yg" default:"0" min:"-30" max:"30" label:"centre of gravity to port"`
	FreeSurface float64  `key:"free_surface_moment" unit:"t.m" symbol:"FSM" default:"0" min:"0" max:"10000000" label:"free-surface moment of slack tanks"`
	Density     float64  `key:"water_density" unit:"kg/m3" symbol:"rho" default:"1025" min:"500" max:"1500" label:"density of the water"`
}

// given refuses a loading that lacks mass or centre.
func (l Loading) given() error {
	for _, g := range []struct {
		key, unit string
		value     *float64
	}{{"mass", "t", l.Mass}, {"lcg", "m from the after perpendicular", l.LCG}, {"vcg", "m above the baseline", l.VCG}} {
		if g.value == nil {
			return field.Refuse(g.key, "%s is missing: give it in %s", g.key, g.unit)
		}
	}
	return nil
}

func (l Loading) form() hullform.Loading {
	return hullform.Loading{Mass: *l.Mass, LCG: *l.LCG, VCG: *l.VCG, TCG: l.TCG, FreeSurface: l.FreeSurface, Density: l.Density}
}

// Opening is a place where water would get in.
type Opening struct {
	Name string  `key:"name" optional:"yes" label:"opening"`
	X    float64 `key:"x" unit:"m" symbol:"x" min:"-50" max:"500" label:"from the after perpendicular"`
	Y    float64 `key:"y" unit:"m" symbol:"y" default:"0" min:"-60" max:"60" label:"to port"`
	Z    float64 `key:"z" unit:"m" symbol:"z" min:"-10" max:"100" label:"above the baseline"`
}

func (o Opening) at() hullform.Point { return hullform.Point{X: o.X, Y: o.Y, Z: o.Z} }

// noRest turns a refused state of rest into a refusal of the input that stands behind it.
func noRest(err error) error {
	var r *hullform.Refusal
	if !errors.As(err, &r) {
		return refusal("mass", err)
	}
	name := map[hullform.Reason]string{hullform.Sinks: "mass", hullform.NoRest: "vcg", hullform.Capsized: "vcg", hullform.DeckUnder: "mass"}[r.Reason]
	return field.Refuse(name, "UNSAFE, %s", r.Error())
}
