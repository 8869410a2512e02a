package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"oakum/app"
	"oakum/dossier"
)

// Write implements app.Store.
func (s *Store) Write(ctx context.Context, b app.Batch) (app.Written, error) {
	w, err := s.write(ctx, b)
	return w, refuse(s.path, s.conflict(ctx, err))
}

func (s *Store) write(ctx context.Context, b app.Batch) (w app.Written, err error) {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return w, err
	}
	defer tx.Rollback()
	at := b.At.UTC().Truncate(time.Millisecond)
	res, err := tx.ExecContext(ctx, "INSERT INTO journal (at, by, what, undoes) VALUES (?, ?, ?, ?)", stamp(at), b.By, b.What, null(b.Undoes))
	if err != nil {
		return w, err
	}
	if w.Revision, err = res.LastInsertId(); err != nil {
		return w, err
	}
	pen, err := newPen(ctx, tx)
	if err != nil {
		return w, err
	}
	defer pen.close()
	w.Records = make([]dossier.Record, len(b.Records))
	for i, r := range b.Records {
		if w.Records[i], err = pen.put(ctx, r, w.Revision, at, b); err != nil {
			return app.Written{}, err
		}
	}
	return w, tx.Commit()
}

// pen holds the prepared statements of one batch.
type pen struct {
	standing, supersede, insert *sql.Stmt
}

func newPen(ctx context.Context, tx *sql.Tx) (p *pen, err error) {
	p = &pen{}
	for _, s := range []struct {
		to  **sql.Stmt
		sql string
	}{
		{&p.standing, "SELECT max(version) FROM record WHERE id = ?"},
		{&p.supersede, "UPDATE record SET standing = 0 WHERE id = ? AND version = ?"},
		{&p.insert, `INSERT INTO record (id, version, kind, body, mark, basis, basis_note, basis_date, typed, source, at, by, withdrawn, revision)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`},
	} {
		if *s.to, err = tx.PrepareContext(ctx, s.sql); err != nil { //nolint:sqlclosecheck // close closes all three
			p.close()
			return nil, err
		}
	}
	return p, nil
}

func (p *pen) close() {
	for _, s := range []*sql.Stmt{p.standing, p.supersede, p.insert} {
		if s != nil {
			s.Close()
		}
	}
}

func (p *pen) put(ctx context.Context, r dossier.Record, revision int64, at time.Time, b app.Batch) (dossier.Record, error) {
	var held sql.NullInt64
	if err := p.standing.QueryRowContext(ctx, r.ID).Scan(&held); err != nil {
		return r, err
	}
	if int64(r.Version) != held.Int64 {
		return r, errStale{r}
	}
	body, typed, err := encode(r)
	if err != nil {
		return r, err
	}
	if held.Valid {
		if _, err := p.supersede.ExecContext(ctx, r.ID, r.Version); err != nil {
			return r, err
		}
	}
	if r.Version++; !b.AsGiven {
		r.At, r.By = at, b.By
	}
	_, err = p.insert.ExecContext(ctx, r.ID, r.Version, r.Kind, body, r.Mark, r.Basis, r.BasisNote, r.BasisDate.String(), typed, r.From, stamp(r.At), r.By, r.Withdrawn, revision)
	return r, err
}

// errStale is a write on a version that no longer stands; Write turns it into an app.Conflict with both versions.
type errStale struct{ yours dossier.Record }

func (errStale) Error() string { return "the record was changed in the meantime" }

func (s *Store) conflict(ctx context.Context, err error) error {
	var stale errStale
	if !errors.As(err, &stale) {
		return err
	}
	versions, e := s.Versions(ctx, stale.yours.ID)
	if e != nil {
		return e
	}
	if len(versions) == 0 {
		return app.ErrNotFound
	}
	return &app.Conflict{Yours: stale.yours, Standing: versions[len(versions)-1]}
}

// stamp writes a time in UTC; no time is the empty text.
func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format("2006-01-02T15:04:05.000Z07:00")
}

func null(n int64) any {
	if n == 0 {
		return nil
	}
	return n
}
