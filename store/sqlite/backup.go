package sqlite

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"oakum/app"
)

// Backup implements app.Store: the copy is made under another name, opened and checked through and through, put on the disk for good, and only then
// gets the name asked for. It refuses to write over a file.
func (s *Store) Backup(ctx context.Context, path string) error {
	if _, err := os.Stat(path); err == nil {
		return fmt.Errorf("%s: a file of that name is there already: choose another name", path)
	}
	dir, err := os.MkdirTemp(filepath.Dir(path), ".backup-*")
	if err != nil {
		return refuse(path, err)
	}
	defer os.RemoveAll(dir)
	tmp := filepath.Join(dir, "copy")
	if _, err := s.db.ExecContext(ctx, "VACUUM INTO ?", tmp); err != nil {
		return refuse(path, err)
	}
	if err := s.agrees(ctx, tmp); err != nil {
		return err
	}
	if err := flush(tmp); err != nil {
		return refuse(path, err)
	}
	if err := os.Rename(tmp, path); err != nil {
		return refuse(path, err)
	}
	return refuse(path, flush(filepath.Dir(path)))
}

// agrees opens a copy and compares it with this file.
func (s *Store) agrees(ctx context.Context, path string) error {
	c, err := OpenReading(ctx, path)
	if err != nil {
		return fmt.Errorf("the backup can't be opened again: %w", err)
	}
	defer c.Close()
	mine, err := s.extent(ctx)
	if err != nil {
		return err
	}
	theirs, err := c.extent(ctx)
	if err != nil {
		return err
	}
	if theirs.records > mine.records || theirs.files != mine.files && theirs.revision == mine.revision {
		return fmt.Errorf("%w: the backup does not agree with the file (%+v, %+v)", app.ErrDamaged, theirs, mine)
	}
	return nil
}

type extent struct{ revision, records, files int64 }

func (s *Store) extent(ctx context.Context) (e extent, err error) {
	err = s.db.QueryRowContext(ctx, `SELECT (SELECT coalesce(max(revision), 0) FROM journal), (SELECT count(*) FROM record), (SELECT count(*) FROM file)`).
		Scan(&e.revision, &e.records, &e.files)
	return e, refuse(s.path, err)
}

// flush puts a file or a folder's entries on the disk for good.
func flush(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}
