package flooding

import (
	"fmt"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// PermeabilityIn names the sort of space, or describes the cargo in it.
type PermeabilityIn struct {
	Space           *string  `key:"space" enum:"stores|accommodation|machinery|voids" label:"what the space is used for"`
	RelativeDensity *float64 `key:"relative_density" symbol:"rd" min:"0.05" max:"25" label:"relative density of the cargo"`
	StowageFactor   *float64 `key:"stowage_factor" unit:"m3/t" symbol:"sf" min:"0.01" max:"50" label:"stowage factor" help:"room that a tonne of it takes as stowed"`
}

// PermeabilityOut is the share of the space that water can fill.
type PermeabilityOut struct {
	Solid        *float64 `key:"solid" unit:"m3/t" symbol:"so" label:"room of the cargo itself" expr:"1/(1000*rd)"`
	Broken       *float64 `key:"broken_stowage" unit:"m3/t" symbol:"bs" label:"broken stowage" expr:"sf-so"`
	Permeability float64  `key:"permeability" symbol:"m" label:"permeability"`

	Warnings calc.Warnings `key:"-"`
}

// spaces are the permeabilities of SOLAS chapter II-1 (the regulation number, 7-3, from memory), the same as 46 CFR table 172.240.
var spaces = map[string]float64{"stores": 0.60, "accommodation": 0.95, "machinery": 0.85, "voids": 0.95}

// Permeability gives the share of a space that water can fill.
//
// From a table by use, or of a full cargo hold m = broken stowage/stowage factor = (sf - 1/rd)/sf, with sf in m3/t and rd the relative
// density. Source: SOLAS II-1 and 46 CFR 172.240; Derrett, Ship Stability for Masters and Mates. The table is a rule for design: a store room
// half empty takes more water.
var Permeability = calc.Formula[PermeabilityIn, PermeabilityOut]{
	ID:       "flooding.permeability",
	Title:    "Permeability of a space",
	About:    "What share of a space water can fill, by its use or by the cargo in it.",
	Holds:    "By use: a rule for design. By cargo: a hold full of one cargo that lets water into its gaps and does not float.",
	Accuracy: "By use about 0.1 either way: an empty store room takes 0.95.",
	Sources:  []source.Ref{{Key: "solas-permeability"}, {Key: "memory", At: "number of the SOLAS regulation, II-1/7-3"}, {Key: "cfr-172", At: "table 172.240"}, {Key: "derrett-permeability"}},
	Cautions: []calc.Caution{calc.Screening},
	Fn:       permeability,
	Steps: func(in PermeabilityIn, out PermeabilityOut) []calc.Step {
		if in.Space != nil {
			return []calc.Step{{Symbol: "m", Value: out.Permeability, Unit: "-", Text: "table of permeabilities by use"}}
		}
		return []calc.Step{{Symbol: "m", Formula: "bs/sf", Value: out.Permeability, Unit: "-", Text: "broken stowage over stowage factor"}}
	},
}

func permeability(in PermeabilityIn) (out PermeabilityOut, err error) {
	cargo := in.RelativeDensity != nil || in.StowageFactor != nil
	switch {
	case in.Space != nil && cargo:
		return out, field.Refuse("space", "give the use of the space or its cargo, not both")
	case in.Space != nil:
		out.Permeability = spaces[*in.Space]
		return out, nil
	case !cargo:
		return out, field.Refuse("space", "space is missing: give what it is used for, or the relative density and stowage factor of its cargo")
	case in.RelativeDensity == nil:
		return out, field.Refuse("relative_density", "relative_density is missing: the stowage factor alone does not tell the gaps")
	case in.StowageFactor == nil:
		return out, field.Refuse("stowage_factor", "stowage_factor is missing: the relative density alone does not tell the gaps")
	}
	solid := 1 / (1000 * *in.RelativeDensity) // m3/kg, with fresh water at 1000 kg/m3
	broken := *in.StowageFactor - solid
	if broken < -1e-12*solid {
		return out, field.Refuse("stowage_factor", "stowage_factor must be at least the room of the cargo itself (%v < %v)", field.Q("stowage_factor", *in.StowageFactor, "m3/t"), field.Q("", solid, "m3/t"))
	}
	broken = max(broken, 0)
	out.Solid, out.Broken = &solid, &broken
	out.Permeability = broken / *in.StowageFactor
	if *in.RelativeDensity < 1 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("a cargo of relative density %.3g floats: the hold takes water in another way", *in.RelativeDensity))
	}
	return out, nil
}
