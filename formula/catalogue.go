// Package formula is the catalogue of every method.
package formula

//go:generate go run oakum/cmd/methods ../docs/methods.md

import (
	"slices"

	"oakum/calc"
	"oakum/formula/afloat"
	"oakum/formula/berth"
	"oakum/formula/choice"
	"oakum/formula/coating"
	"oakum/formula/docking"
	"oakum/formula/estimate"
	"oakum/formula/flooding"
	"oakum/formula/gland"
	"oakum/formula/handling"
	"oakum/formula/money"
	"oakum/formula/network"
	"oakum/formula/opening"
	"oakum/formula/plating"
	"oakum/formula/potential"
	"oakum/formula/protection"
	"oakum/formula/reliability"
	"oakum/formula/seawater"
	"oakum/formula/shaft"
	"oakum/formula/tide"
	"oakum/formula/tow"
)

// Methods lists every method of the catalogue, subject by subject.
func Methods() []calc.Method {
	return slices.Concat(
		afloat.Methods(),
		berth.Methods(),
		choice.Methods(),
		coating.Methods(),
		docking.Methods(),
		estimate.Methods(),
		flooding.Methods(),
		gland.Methods(),
		handling.Methods(),
		money.Methods(),
		network.Methods(),
		opening.Methods(),
		plating.Methods(),
		potential.Methods(),
		protection.Methods(),
		reliability.Methods(),
		seawater.Methods(),
		shaft.Methods(),
		tide.Methods(),
		tow.Methods(),
	)
}

// Find returns the method with that ID.
func Find(id string) (calc.Method, bool) {
	for _, m := range Methods() {
		if m.Info().ID == id {
			return m, true
		}
	}
	return nil, false
}
