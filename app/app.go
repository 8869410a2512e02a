package app

import (
	"context"
	"fmt"
	"sync"
	"time"

	"oakum/assess"
	"oakum/dossier"
	"oakum/quantity"
)

// App is one ship, open.
type App struct {
	store Store
	now   func() time.Time

	writing sync.Mutex // one writer at a time; readers go on with the dossier they have

	mu       sync.RWMutex
	dossier  *dossier.Dossier
	revision int64
	briefs   map[briefKey]*assess.Brief
	memo     assess.Memo   // what the last briefs were worked from, for the next
	changed  chan struct{} // closed at the next change
}

type briefKey struct {
	plan string
	day  string
}

// Open reads the whole ship from a store.
func Open(ctx context.Context, s Store, now func() time.Time) (*App, error) {
	a := &App{store: s, now: now, briefs: map[briefKey]*assess.Brief{}, changed: make(chan struct{})}
	records, revision, err := s.Load(ctx)
	if err != nil {
		return nil, err
	}
	a.dossier, a.revision = dossier.New(), revision
	if err := a.dossier.Put(records...); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	return a, nil
}

// Close closes the store.
func (a *App) Close() error { return a.store.Close() }

// Dossier is the ship as she stands, with her revision. It must not be changed.
func (a *App) Dossier() (*dossier.Dossier, int64) {
	a.mu.RLock()
	defer a.mu.RUnlock()
	return a.dossier, a.revision
}

// Changed returns a channel that is closed when the ship next changes.
func (a *App) Changed() <-chan struct{} {
	a.mu.RLock()
	defer a.mu.RUnlock()
	return a.changed
}

// Today is the day now, by the clock the app was given.
func (a *App) Today() quantity.Date {
	return quantity.DateOf(a.now())
}

// Now is the moment by the clock the app was given.
func (a *App) Now() time.Time { return a.now().UTC() }

// Brief makes the brief of a day under a plan (a scheme's ID; empty takes the plan in force). The last few are kept until the ship changes.
func (a *App) Brief(planID string, day quantity.Date) (*assess.Brief, error) {
	if day.IsZero() {
		day = a.Today()
	}
	key := briefKey{planID, day.String()}
	a.mu.RLock()
	d, revision, b := a.dossier, a.revision, a.briefs[key]
	a.mu.RUnlock()
	if b != nil {
		return b, nil
	}
	p, err := planOf(d, planID)
	if err != nil {
		return nil, err
	}
	b = a.memo.Assess(d, p, day)
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.revision == revision {
		if len(a.briefs) >= 8 {
			clear(a.briefs)
		}
		a.briefs[key] = b
	}
	return b, nil
}

// Backup writes a verified copy.
func (a *App) Backup(ctx context.Context, path string) error { return a.store.Backup(ctx, path) }

// took makes the stored records the standing ones.
func (a *App) took(w Written) error {
	a.mu.Lock()
	defer a.mu.Unlock()
	d := a.dossier.Clone()
	if err := d.Put(w.Records...); err != nil {
		return err
	}
	a.dossier, a.revision = d, w.Revision
	clear(a.briefs)
	close(a.changed)
	a.changed = make(chan struct{})
	return nil
}
