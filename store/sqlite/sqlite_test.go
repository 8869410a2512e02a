package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/ship"
	"oakum/store/storetest"
)

func TestSuite(t *testing.T) {
	storetest.Run(t, func(t *testing.T) storetest.Opener {
		path := filepath.Join(t.TempDir(), "ship.oakum")
		open := func(how func(context.Context, string) (*Store, error)) func(t *testing.T) app.Store {
			return func(t *testing.T) app.Store {
				s, err := how(context.Background(), path)
				if err != nil {
					t.Fatal(err)
				}
				t.Cleanup(func() { s.Close() })
				return s
			}
		}
		return storetest.Opener{Create: open(Create), Reopen: open(Open)}
	})
}

func made(t *testing.T) (*Store, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "ship.oakum")
	s, err := Create(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	bore := 0.343
	r := dossier.Record{Head: dossier.Head{ID: "g", Kind: "gland"}, Body: &ship.Gland{Name: "port", Bore: &bore}}
	if _, err := s.Write(context.Background(), app.Batch{By: "t", At: time.Now(), What: "w", Records: []dossier.Record{r}}); err != nil {
		t.Fatal(err)
	}
	return s, path
}

// The file must explain itself to whoever opens it with nothing but a SQLite tool.
func TestFileExplainsItself(t *testing.T) {
	s, path := made(t)
	s.Close()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var lines int
	if err := db.QueryRow("SELECT count(*) FROM readme").Scan(&lines); err != nil || lines != len(readme) {
		t.Errorf("the readme has %d lines, %v", lines, err)
	}
	var bore float64
	var name string
	if err := db.QueryRow("SELECT name, bore_mm FROM ship_gland").Scan(&name, &bore); err != nil || bore != 343 || name != "port" {
		t.Errorf("the view gives %q %g, %v", name, bore, err)
	}
	for _, k := range dossier.Kinds() {
		if _, err := db.Exec("SELECT * FROM ship_" + k.Name); err != nil {
			t.Errorf("the view of %s: %v", k.Plural, err)
		}
	}
}

func TestRefusalsAreInWords(t *testing.T) {
	dir := t.TempDir()
	text := filepath.Join(dir, "notes.txt")
	if err := os.WriteFile(text, []byte(strings.Repeat("these are notes, no ship\n", 100)), 0o644); err != nil {
		t.Fatal(err)
	}
	other := filepath.Join(dir, "other.db")
	db, _ := sql.Open("sqlite", other)
	db.Exec("CREATE TABLE t (x)")
	db.Close()
	newer := newerFile(t, dir)
	damaged := damagedFile(t, dir)
	for path, want := range map[string]error{
		text: app.ErrNotAShip, other: app.ErrNotAShip, newer: app.ErrNewer, damaged: app.ErrDamaged, filepath.Join(dir, "none", "ship.oakum"): os.ErrNotExist,
	} {
		s, err := Open(context.Background(), path)
		if err == nil {
			s.Close()
		}
		if !errors.Is(err, want) || !strings.Contains(err.Error(), filepath.Base(path)) {
			t.Errorf("%s: %v, want %v with the file's name", filepath.Base(path), err, want)
		}
	}
}

func newerFile(t *testing.T, dir string) string {
	path := filepath.Join(dir, "newer.oakum")
	s, err := Create(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.db.Exec("INSERT INTO goose_db_version (version_id, is_applied) VALUES (999, 1)"); err != nil {
		t.Fatal(err)
	}
	s.Close()
	return path
}

func damagedFile(t *testing.T, dir string) string {
	path := filepath.Join(dir, "damaged.oakum")
	s, err := Create(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	junk := []byte(strings.Repeat("\xde\xad", 6000))
	if _, err := f.WriteAt(junk, 8192); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestOneWriterAtATimeAndReadersBeside(t *testing.T) {
	_, path := made(t)
	if _, err := Open(context.Background(), path); !errors.Is(err, app.ErrLocked) {
		t.Errorf("a second writer gets %v", err)
	}
	r, err := OpenReading(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if records, revision, err := r.Load(context.Background()); err != nil || len(records) != 1 || revision != 1 {
		t.Errorf("a reader beside gets %d records at %d, %v", len(records), revision, err)
	}
	if _, err := r.Write(context.Background(), app.Batch{What: "no"}); !errors.Is(err, app.ErrReadOnly) {
		t.Errorf("a reader writes: %v", err)
	}
}

func TestCreateWritesOverNothing(t *testing.T) {
	_, path := made(t)
	if _, err := Create(context.Background(), path); !errors.Is(err, os.ErrExist) {
		t.Errorf("a second Create gives %v", err)
	}
}

func TestBackupIsTheSameShip(t *testing.T) {
	s, path := made(t)
	to := filepath.Join(t.TempDir(), "copy.oakum")
	if err := s.Backup(context.Background(), to); err != nil {
		t.Fatal(err)
	}
	c, err := Open(context.Background(), to)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	a, _, _ := s.Load(context.Background())
	b, _, _ := c.Load(context.Background())
	if len(a) != 1 || len(b) != 1 || a[0].ID != b[0].ID {
		t.Errorf("%v, %v of %s", a, b, path)
	}
	left, _ := filepath.Glob(filepath.Join(filepath.Dir(to), ".backup-*"))
	if len(left) != 0 {
		t.Errorf("the backup left %v", left)
	}
}
