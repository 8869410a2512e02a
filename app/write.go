package app

import (
	"context"
	"fmt"

	"oakum/dossier"
	"oakum/field"
)

// Put writes records in one step. Version is the one each was made on, 0 for a new record; a new record without an ID gets one.
func (a *App) Put(ctx context.Context, who Who, what string, records ...dossier.Record) ([]dossier.Record, error) {
	records = append([]dossier.Record{}, records...)
	for i := range records {
		k, ok := dossier.KindNamed(records[i].Kind)
		if !ok {
			return nil, fmt.Errorf("%w: %q is not a kind of record", ErrNotFound, records[i].Kind)
		}
		if err := who.MayWrite(k); err != nil {
			return nil, err
		}
		if err := a.ownMoney(records[i]); err != nil {
			return nil, err
		}
		if records[i].ID == "" {
			records[i].ID = dossier.NewID()
		}
	}
	if what == "" && len(records) > 0 {
		what = wordsFor(records[0])
	}
	w, err := a.write(ctx, Batch{By: who.Name, What: what, Records: records})
	return w.Records, err
}

// ownMoney refuses an amount in another currency than the ship's. What comes by a folder or from a phone is taken as it is: the pages leave such an amount
// out, and say so.
func (a *App) ownMoney(r dossier.Record) error {
	d, _ := a.Dossier()
	own := dossier.Currency(d)
	for _, f := range dossier.ForeignMoney(r, own) {
		if !r.Withdrawn {
			return field.Refuse(f.Key, "%s is wanted in %s, the ship's money, not as %q: enter it in %s, with the rate of exchange and its day in the notes", f.Label, own, f.Text, own)
		}
	}
	return nil
}

// Bring writes the records of a folder in one step, each with the time and the name it brings.
func (a *App) Bring(ctx context.Context, who Who, what string, records ...dossier.Record) ([]dossier.Record, error) {
	w, err := a.write(ctx, Batch{By: who.Name, What: what, Records: records, AsGiven: true})
	return w.Records, err
}

func wordsFor(r dossier.Record) string {
	k, _ := dossier.KindNamed(r.Kind)
	switch {
	case r.Withdrawn:
		return "withdrew a " + k.Title
	case r.Version == 0:
		return "entered a " + k.Title
	}
	return "corrected a " + k.Title
}

// Withdraw takes a record back; it stays in the journal.
func (a *App) Withdraw(ctx context.Context, who Who, id string, version int) (dossier.Record, error) {
	r, err := a.Record(id)
	if err != nil {
		return r, err
	}
	r.Version, r.Withdrawn = version, true
	out, err := a.Put(ctx, who, "", r)
	if err != nil {
		return r, err
	}
	return out[0], nil
}

func (a *App) write(ctx context.Context, b Batch) (Written, error) {
	a.writing.Lock()
	defer a.writing.Unlock()
	return a.writeHeld(ctx, b)
}

// writeHeld is write for whoever holds the pen already.
func (a *App) writeHeld(ctx context.Context, b Batch) (Written, error) {
	b.At = a.now().UTC()
	w, err := a.store.Write(ctx, b)
	if err != nil {
		return Written{}, err
	}
	return w, a.took(w)
}

// Record returns the standing version of a record, withdrawn or not.
func (a *App) Record(id string) (dossier.Record, error) {
	d, _ := a.Dossier()
	r, ok := d.Get(id)
	if !ok {
		return r, fmt.Errorf("%w: %s", ErrNotFound, id)
	}
	return r, nil
}

// Versions returns every version of a record, oldest first.
func (a *App) Versions(ctx context.Context, id string) ([]dossier.Record, error) {
	return a.store.Versions(ctx, id)
}

// Journal returns the steps before a revision, newest first; 0 starts at the newest.
func (a *App) Journal(ctx context.Context, before int64, limit int) ([]Step, error) {
	return a.store.Journal(ctx, before, limit)
}
