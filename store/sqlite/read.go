package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"time"

	"oakum/app"
	"oakum/dossier"
)

const columns = `r.id, r.version, r.kind, r.body, r.mark, r.basis, r.basis_note, r.basis_date, r.typed, r.source, r.withdrawn, r.at, r.by FROM record r`

// Load implements app.Store.
func (s *Store) Load(ctx context.Context) (records []dossier.Record, revision int64, err error) {
	tx, err := s.db.BeginTx(ctx, &sql.TxOptions{ReadOnly: true})
	if err != nil {
		return nil, 0, refuse(s.path, err)
	}
	defer tx.Rollback()
	if err := tx.QueryRowContext(ctx, "SELECT coalesce(max(revision), 0) FROM journal").Scan(&revision); err != nil {
		return nil, 0, refuse(s.path, err)
	}
	rows, err := tx.QueryContext(ctx, "SELECT "+columns+" WHERE r.standing = 1 ORDER BY r.id")
	if err != nil {
		return nil, 0, refuse(s.path, err)
	}
	records, err = scan(rows)
	return records, revision, refuse(s.path, err)
}

// Versions implements app.Store.
func (s *Store) Versions(ctx context.Context, id string) ([]dossier.Record, error) {
	rows, err := s.db.QueryContext(ctx, "SELECT "+columns+" WHERE r.id = ? ORDER BY r.version", id)
	if err != nil {
		return nil, refuse(s.path, err)
	}
	records, err := scan(rows)
	return records, refuse(s.path, err)
}

func scan(rows *sql.Rows) ([]dossier.Record, error) {
	defer rows.Close()
	var records []dossier.Record
	for rows.Next() {
		r, err := one(rows)
		if err != nil {
			return nil, err
		}
		records = append(records, r)
	}
	return records, rows.Err()
}

func one(rows *sql.Rows) (r dossier.Record, err error) {
	var body, typed sql.RawBytes
	var basisDate, at string
	err = rows.Scan(&r.ID, &r.Version, &r.Kind, &body, &r.Mark, &r.Basis, &r.BasisNote, &basisDate, &typed, &r.From, &r.Withdrawn, &at, &r.By)
	if err != nil {
		return r, err
	}
	if at != "" {
		if r.At, err = time.Parse(time.RFC3339, at); err != nil {
			return r, fmt.Errorf("%s: %w", r.ID, err)
		}
	}
	if basisDate != "" {
		if err := r.BasisDate.UnmarshalText([]byte(basisDate)); err != nil {
			return r, fmt.Errorf("%s: %w", r.ID, err)
		}
	}
	if len(typed) > 0 {
		if err := json.Unmarshal(typed, &r.Typed); err != nil {
			return r, fmt.Errorf("%s: %w", r.ID, err)
		}
	}
	if r.Body, _, err = dossier.DecodeBody(r.Kind, body); err != nil {
		return r, fmt.Errorf("%s %s: %w", r.Kind, r.ID, err)
	}
	return r, nil
}

func encode(r dossier.Record) (body string, typed any, err error) {
	b, err := dossier.EncodeBody(r.Kind, r.Body)
	if err != nil {
		return "", nil, err
	}
	if len(r.Typed) > 0 {
		t, err := json.Marshal(r.Typed)
		if err != nil {
			return "", nil, err
		}
		typed = string(t)
	}
	return string(b), typed, nil
}

// Journal implements app.Store.
func (s *Store) Journal(ctx context.Context, before int64, limit int) ([]app.Step, error) {
	if before <= 0 {
		before = 1 << 62
	}
	return s.steps(ctx, 100, "WHERE j.revision < ? ORDER BY j.revision DESC LIMIT ?", before, limit)
}

// Step implements app.Store.
func (s *Store) Step(ctx context.Context, revision int64) (app.Step, error) {
	steps, err := s.steps(ctx, 1<<62, "WHERE j.revision = ? LIMIT ?", revision, 1)
	if err != nil {
		return app.Step{}, err
	}
	if len(steps) == 0 {
		return app.Step{}, app.ErrNotFound
	}
	return steps[0], nil
}

func (s *Store) steps(ctx context.Context, each int64, where string, args ...any) ([]app.Step, error) {
	rows, err := s.db.QueryContext(ctx, `SELECT j.revision, j.at, j.by, j.what, coalesce(j.undoes, 0), EXISTS (SELECT 1 FROM journal u WHERE u.undoes = j.revision),
		(SELECT count(*) FROM record r WHERE r.revision = j.revision) FROM journal j `+where, args...)
	if err != nil {
		return nil, refuse(s.path, err)
	}
	defer rows.Close()
	steps := []app.Step{}
	for rows.Next() {
		var st app.Step
		var at string
		if err := rows.Scan(&st.Revision, &at, &st.By, &st.What, &st.Undoes, &st.Undone, &st.Count); err != nil {
			return nil, refuse(s.path, err)
		}
		if st.At, err = time.Parse(time.RFC3339, at); err != nil {
			return nil, err
		}
		steps = append(steps, st)
	}
	if err := rows.Err(); err != nil {
		return nil, refuse(s.path, err)
	}
	for i := range steps {
		if steps[i].Records, err = s.touched(ctx, steps[i].Revision, each); err != nil {
			return nil, refuse(s.path, err)
		}
	}
	return steps, nil
}

func (s *Store) touched(ctx context.Context, revision, limit int64) ([]app.Touched, error) {
	rows, err := s.db.QueryContext(ctx, "SELECT kind, id, version FROM record WHERE revision = ? ORDER BY id LIMIT ?", revision, limit)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	touched := []app.Touched{}
	for rows.Next() {
		var t app.Touched
		if err := rows.Scan(&t.Kind, &t.ID, &t.Version); err != nil {
			return nil, err
		}
		touched = append(touched, t)
	}
	return touched, rows.Err()
}
