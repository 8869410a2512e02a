package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
	"github.com/pressly/goose/v3"
	_ "modernc.org/sqlite" // the driver

	"oakum/app"
)

// applicationID marks the file as a ship file: "Oakm" in ASCII, as SQLite's application_id.
const applicationID = 0x4F616B6D

// wholeCheck is the size in bytes up to which a file is checked through and through when it is opened; a larger one is checked without its indexes.
const wholeCheck = 64 << 20

//go:embed migrations/*.sql
var migrations embed.FS

// Store is an open ship file.
type Store struct {
	db   *sql.DB
	path string
	lock *flock.Flock // nil when opened for reading
}

var _ app.Store = (*Store)(nil)

// Create makes a new, empty ship file. It refuses to write over anything.
func Create(ctx context.Context, path string) (*Store, error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return nil, refuse(path, err)
	}
	if err := f.Close(); err != nil {
		return nil, refuse(path, err)
	}
	s, err := open(ctx, path, true)
	if err != nil {
		os.Remove(path)
		return nil, err
	}
	return s, nil
}

// Open opens a ship file for reading and writing; one program at a time may.
func Open(ctx context.Context, path string) (*Store, error) { return open(ctx, path, false) }

func open(ctx context.Context, path string, fresh bool) (*Store, error) {
	if err := writable(path); err != nil {
		return nil, refuse(path, err)
	}
	lock := flock.New(path + ".lock")
	held, err := lock.TryLock()
	if err != nil {
		return nil, refuse(path, err)
	}
	if !held {
		return nil, fmt.Errorf("%s: %w; close it there first", path, app.ErrLocked)
	}
	s := &Store{path: path, lock: lock}
	if err := s.begin(ctx, fresh); err != nil {
		s.Close()
		return nil, refuse(path, err)
	}
	return s, nil
}

// OpenReading opens a ship file to read only, beside a program that may be writing it.
func OpenReading(ctx context.Context, path string) (*Store, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, refuse(path, err)
	}
	s := &Store{path: path}
	if err := s.connect("mode=ro"); err != nil {
		return nil, refuse(path, err)
	}
	if err := s.examine(ctx, false); err != nil {
		s.Close()
		return nil, refuse(path, err)
	}
	return s, nil
}

func writable(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return f.Close()
}

func (s *Store) connect(options string) error {
	q := url.PathEscape(filepath.ToSlash(s.path))
	dsn := "file:" + q + "?" + options + "&_pragma=busy_timeout(5000)&_pragma=foreign_keys(1)&_pragma=synchronous(FULL)&_txlock=immediate"
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(4)
	s.db = db
	return nil
}

// begin readies a file for writing: journal mode, checks, migrations, readme and views.
func (s *Store) begin(ctx context.Context, fresh bool) error {
	if err := s.connect("_pragma=journal_mode(WAL)"); err != nil {
		return err
	}
	if fresh {
		if _, err := s.db.ExecContext(ctx, fmt.Sprintf("PRAGMA application_id = %d", applicationID)); err != nil {
			return err
		}
	}
	if err := s.examine(ctx, fresh); err != nil {
		return err
	}
	p, err := s.provider()
	if err != nil {
		return err
	}
	if _, err := p.Up(ctx); err != nil {
		return err
	}
	return s.explain(ctx)
}

func (s *Store) provider() (*goose.Provider, error) {
	dir, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return nil, err
	}
	return goose.NewProvider(goose.DialectSQLite3, s.db, dir)
}

// examine refuses what is no ship file, is newer than this program, or is damaged.
func (s *Store) examine(ctx context.Context, fresh bool) error {
	var id int64
	if err := s.db.QueryRowContext(ctx, "PRAGMA application_id").Scan(&id); err != nil {
		return err
	}
	if id != applicationID {
		return app.ErrNotAShip
	}
	if fresh {
		return nil
	}
	if err := s.sound(ctx); err != nil {
		return err
	}
	var has, wants int64
	if err := s.db.QueryRowContext(ctx, "SELECT coalesce(max(version_id), 0) FROM goose_db_version WHERE is_applied").Scan(&has); err != nil {
		return err
	}
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		return err
	}
	wants = int64(len(names))
	if has > wants {
		return fmt.Errorf("%w (its version is %d, this program knows %d): use the newer program", app.ErrNewer, has, wants)
	}
	return nil
}

func (s *Store) sound(ctx context.Context) error {
	check := "PRAGMA integrity_check(5)"
	if info, err := os.Stat(s.path); err == nil && info.Size() > wholeCheck {
		check = "PRAGMA quick_check(5)"
	}
	rows, err := s.db.QueryContext(ctx, check)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var line string
		if err := rows.Scan(&line); err != nil {
			return err
		}
		if line != "ok" {
			return fmt.Errorf("%w (%s): go back to the last backup, and keep this file for whoever can mend it", app.ErrDamaged, line)
		}
	}
	return rows.Err()
}

// Close closes the file and lets others open it.
func (s *Store) Close() error {
	var err error
	if s.db != nil {
		err = s.db.Close()
	}
	if s.lock != nil {
		err = errors.Join(err, s.lock.Unlock())
		_ = os.Remove(s.lock.Path()) // a lock file left lying locks nobody
	}
	return err
}
