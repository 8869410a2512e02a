package handling

import (
	"oakum/calc"
	"oakum/source"
)

// ShackleIn is a shackle without a readable mark.
type ShackleIn struct {
	Body float64 `key:"body_diameter" unit:"in" symbol:"db" over:"0" max:"8" label:"diameter of the body, beside the pin"`
}

// ShackleOut is a working load to plan with until the mark is read.
type ShackleOut struct {
	WLL float64 `key:"wll" unit:"short_ton" symbol:"wl" label:"working load" expr:"3*(db/0.0254)^2*907.18474"`

	Warnings calc.Warnings `key:"-"`
}

const (
	inchM      = 0.0254    // m
	shortTonKG = 907.18474 // kg
)

// Shackle gives the working load of a shackle by its body.
//
// WLL = 3 D^2 short tons, D in inches. For sound forged carbon steel shackles with a screw or bolt pin. Source: NAVEDTRA 14251. The mark forged
// into the shackle, with its certificate, beats the rule; a shackle without a mark is not for lifting.
var Shackle = calc.Formula[ShackleIn, ShackleOut]{
	ID:       "handling.shackle",
	Title:    "Working load of a shackle",
	About:    "What a sound shackle may carry by the diameter of its body.",
	Holds:    "Sound forged carbon steel. The mark on the shackle and its certificate beat the rule; one without a mark is not for lifting.",
	Accuracy: "A rule on the low side for carbon steel.",
	Sources:  []source.Ref{{Key: "navedtra-14251", At: "chapter 6, shackles"}},
	Cautions: []calc.Caution{calc.Lifting},
	Fn: func(in ShackleIn) (out ShackleOut, err error) {
		d := in.Body / inchM
		out.WLL = 3 * d * d * shortTonKG
		out.Warnings = calc.Warnings{"a shackle without a readable mark is not for lifting: the figure is for planning"}
		return out, nil
	},
}
