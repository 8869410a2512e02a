package app

import (
	"context"
	"fmt"

	"oakum/dossier"
)

// Undo takes back the newest step that was neither taken back nor is itself an undo. What it wrote is withdrawn or set back to the version before;
// the journal keeps both, and the undo is itself a step.
func (a *App) Undo(ctx context.Context, who Who) (Step, error) {
	step, err := a.lastStanding(ctx)
	if err != nil {
		return step, err
	}
	if step, err = a.store.Step(ctx, step.Revision); err != nil {
		return step, err
	}
	b := Batch{By: who.Name, What: "took back: " + step.What, Undoes: step.Revision}
	for _, t := range step.Records {
		k, _ := dossier.KindNamed(t.Kind)
		if err := who.MayWrite(k); err != nil {
			return step, err
		}
		r, err := a.before(ctx, t)
		if err != nil {
			return step, err
		}
		b.Records = append(b.Records, r)
	}
	_, err = a.write(ctx, b)
	return step, err
}

func (a *App) lastStanding(ctx context.Context) (Step, error) {
	for before := int64(0); ; {
		steps, err := a.store.Journal(ctx, before, 50)
		if err != nil {
			return Step{}, err
		}
		if len(steps) == 0 {
			return Step{}, ErrNothing
		}
		for _, s := range steps {
			if !s.Undone && s.Undoes == 0 {
				return s, nil
			}
			before = s.Revision
		}
	}
}

// before is what a record was before a version, ready to be written over the standing one; a record that did not exist is withdrawn.
func (a *App) before(ctx context.Context, t Touched) (dossier.Record, error) {
	versions, err := a.store.Versions(ctx, t.ID)
	if err != nil {
		return dossier.Record{}, err
	}
	standing := versions[len(versions)-1]
	if standing.Version != t.Version {
		return dossier.Record{}, fmt.Errorf("%s was changed again since; take that back first", standing.Label())
	}
	old := standing
	old.Withdrawn = true
	for _, v := range versions {
		if v.Version == t.Version-1 {
			old = v
		}
	}
	old.Version = standing.Version
	return old, nil
}
