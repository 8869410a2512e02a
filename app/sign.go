package app

import (
	"context"
	"fmt"

	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// Sign puts a reviewer's name under a sheet of the brief of a day, with the hash of what stands in it. A signature that stands already stays: the new
// one comes beside it.
func (a *App) Sign(ctx context.Context, who Who, planID string, day quantity.Date, sheet string, r plan.Review) (dossier.Record, error) {
	b, err := a.Brief(planID, day)
	if err != nil {
		return dossier.Record{}, err
	}
	s, ok := b.Sheet(sheet)
	if !ok {
		return dossier.Record{}, fmt.Errorf("%w: the brief of this day has no sheet %s", ErrNotFound, sheet)
	}
	if oneLine(r.Name) == "" {
		return dossier.Record{}, field.Refuse("name", "a signature needs the reviewer's name")
	}
	r.Name, r.Licence = oneLine(r.Name), oneLine(r.Licence)
	r.Sheet, r.Date = sheet, a.Today()
	r.Hash, r.Signed = assess.Signable(s)
	out, err := a.Put(ctx, who, "signed "+sheet, dossier.Record{Head: dossier.Head{Kind: "review", Basis: field.Documented}, Body: &r})
	if err != nil {
		return dossier.Record{}, err
	}
	return out[0], nil
}
