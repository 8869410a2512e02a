package main

import (
	"slices"

	"oakum/demo/invent"
	"oakum/dossier"
	"oakum/formula/hullform"
	"oakum/ship"
)

// seed makes every chance of the demonstration the same each time.
const seed = 1931

// vessel is a ship while she is being made up: her records so far, her hull, and the places on it.
type vessel struct {
	*invent.Deck
	lines  invent.Lines
	hull   *hullform.Hull
	frames ship.Frames
	shell  ship.Shell
	plates []sheet
}

// corran makes up TSS Corran Vey, with two signatures under her sheets.
func corran() ([]dossier.Record, error) {
	records, err := corranUnsigned()
	if err != nil {
		return nil, err
	}
	return signed(records)
}

func corranUnsigned() ([]dossier.Record, error) {
	v, err := afresh(corranLines())
	if err != nil {
		return nil, err
	}
	for _, part := range []func(*vessel) error{
		corranShip, corranOutlines, corranShell, corranSpaces, corranWeights, corranShafts, corranOpenings, corranProtection, corranPaper,
		corranThickness, corranDrafts, corranLog, corranUnderWater, corranMoney, corranDocks, corranMatters, corranWorks, corranHandedOn,
	} {
		if err := part(v); err != nil {
			return nil, err
		}
	}
	return v.Records()
}

// afresh begins a ship with her hull.
func afresh(lines invent.Lines) (*vessel, error) {
	hull, err := lines.Hull()
	return &vessel{Deck: invent.NewDeck(), lines: lines, hull: hull}, err
}

// made gives back the bodies of the records of one kind made so far.
func made[T any](v *vessel) []T {
	var out []T
	records, _ := v.Records()
	for _, r := range records {
		if b, ok := r.Body.(*T); ok {
			out = append(out, *b)
		}
	}
	return slices.Clip(out)
}
