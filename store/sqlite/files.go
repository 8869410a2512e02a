package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"oakum/app"
)

// partSize is how many bytes of a file one row holds.
const partSize = 1 << 20

// PutFile implements app.Store.
func (s *Store) PutFile(ctx context.Context, name, mediaType string, from io.Reader) (app.File, error) {
	tmp, err := os.CreateTemp("", "oakum-file-*")
	if err != nil {
		return app.File{}, refuse(os.TempDir(), err)
	}
	defer os.Remove(tmp.Name())
	defer tmp.Close()
	h := sha256.New()
	size, err := io.Copy(io.MultiWriter(tmp, h), from)
	if err != nil {
		return app.File{}, refuse(name, err)
	}
	if _, err := tmp.Seek(0, io.SeekStart); err != nil {
		return app.File{}, err
	}
	f := app.File{SHA256: hex.EncodeToString(h.Sum(nil)), Name: name, MediaType: mediaType, Size: size, At: time.Now().UTC().Truncate(time.Millisecond)}
	return f, refuse(s.path, s.keep(ctx, f, tmp))
}

func (s *Store) keep(ctx context.Context, f app.File, from io.Reader) error {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	res, err := tx.ExecContext(ctx, "INSERT OR IGNORE INTO file VALUES (?, ?, ?, ?, ?)", f.SHA256, f.Name, f.MediaType, f.Size, stamp(f.At))
	if err != nil {
		return err
	}
	if n, err := res.RowsAffected(); err != nil || n == 0 {
		return err // the same bytes are kept already
	}
	buf := make([]byte, partSize)
	for part := 0; ; part++ {
		n, err := io.ReadFull(from, buf)
		if n > 0 {
			if _, err := tx.ExecContext(ctx, "INSERT INTO file_part VALUES (?, ?, ?)", f.SHA256, part, buf[:n]); err != nil {
				return err
			}
		}
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			return tx.Commit()
		}
		if err != nil {
			return err
		}
	}
}

// OpenFile implements app.Store.
func (s *Store) OpenFile(ctx context.Context, sum string) (io.ReadCloser, app.File, error) {
	f := app.File{SHA256: sum}
	var at string
	err := s.db.QueryRowContext(ctx, "SELECT name, media_type, size, at FROM file WHERE sha256 = ?", sum).Scan(&f.Name, &f.MediaType, &f.Size, &at)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, f, fmt.Errorf("%w: %s", app.ErrNoFile, sum)
	}
	if err != nil {
		return nil, f, refuse(s.path, err)
	}
	if f.At, err = time.Parse(time.RFC3339, at); err != nil {
		return nil, f, err
	}
	return &parts{ctx: ctx, s: s, sum: sum}, f, nil
}

// parts reads a kept file part by part.
type parts struct {
	ctx  context.Context
	s    *Store
	sum  string
	next int
	rest []byte
}

func (p *parts) Read(to []byte) (int, error) {
	if len(p.rest) == 0 {
		err := p.s.db.QueryRowContext(p.ctx, "SELECT bytes FROM file_part WHERE sha256 = ? AND part = ?", p.sum, p.next).Scan(&p.rest)
		if errors.Is(err, sql.ErrNoRows) {
			return 0, io.EOF
		}
		if err != nil {
			return 0, refuse(p.s.path, err)
		}
		p.next++
	}
	n := copy(to, p.rest)
	p.rest = p.rest[n:]
	return n, nil
}

func (p *parts) Close() error { return nil }

// Files implements app.Store.
func (s *Store) Files(ctx context.Context) ([]app.File, error) {
	rows, err := s.db.QueryContext(ctx, "SELECT sha256, name, media_type, size, at FROM file ORDER BY at, sha256")
	if err != nil {
		return nil, refuse(s.path, err)
	}
	defer rows.Close()
	files := []app.File{}
	for rows.Next() {
		var f app.File
		var at string
		if err := rows.Scan(&f.SHA256, &f.Name, &f.MediaType, &f.Size, &at); err != nil {
			return nil, refuse(s.path, err)
		}
		if f.At, err = time.Parse(time.RFC3339, at); err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	return files, refuse(s.path, rows.Err())
}
