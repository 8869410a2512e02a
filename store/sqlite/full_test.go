package sqlite

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/survey"
)

// SQLite itself refuses to grow the file: SQLITE_FULL, as on a full disk.
func TestAFullFileRefusesInWordsAndLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ship.oakum")
	s, err := Create(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { s.Close() }()
	s.db.SetMaxOpenConns(1) // the limit holds for a connection
	limit := func(pages int) {
		if _, err := s.db.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages)); err != nil {
			t.Fatal(err)
		}
	}
	limit(120)
	said, err := fillUp(s, func() { limit(1 << 20) })
	if err != nil {
		t.Fatal(err)
	}
	t.Log(said)
	s.Close()
	if s, err = Open(context.Background(), path); err != nil {
		t.Fatalf("it does not open again: %v", err)
	}
}

// fillUp writes until there is no room, looks whether what was acknowledged is there and nothing else, makes room, and writes on. It returns what the
// refusals said.
func fillUp(s *Store, makeRoom func()) (said string, err error) {
	ctx := context.Background()
	written := 0
	write := func() error {
		r := dossier.Record{Head: dossier.Head{ID: fmt.Sprintf("r%d", written), Kind: "leak"}, Body: &survey.Leak{Notes: strings.Repeat("water ", 300)}}
		_, err := s.Write(ctx, app.Batch{By: "w", At: time.Now(), What: "w", Records: []dossier.Record{r}})
		return err
	}
	for err = write(); err == nil; err = write() {
		if written++; written > 100_000 {
			return "", errors.New("it never filled up")
		}
	}
	said = err.Error()
	_, fileErr := s.PutFile(ctx, "plate.jpg", "image/jpeg", bytes.NewReader(make([]byte, 4<<20)))
	for what, err := range map[string]error{"write": err, "file": fileErr} {
		if !errors.Is(err, app.ErrFull) || !strings.Contains(fmt.Sprint(err), "make room and do it again") {
			return "", fmt.Errorf("%s: refused with %w", what, err)
		}
	}
	said += "; " + fileErr.Error()
	if err := holds(s, written, 0); err != nil {
		return "", fmt.Errorf("while it is full: %w", err)
	}
	makeRoom()
	if err := write(); err != nil {
		return "", fmt.Errorf("after room was made: %w", err)
	}
	written++
	if _, err := s.PutFile(ctx, "plate.jpg", "image/jpeg", bytes.NewReader(make([]byte, 1<<20))); err != nil {
		return "", fmt.Errorf("after room was made: %w", err)
	}
	return said, holds(s, written, 1)
}

func holds(s *Store, records, files int) error {
	ctx := context.Background()
	all, revision, err := s.Load(ctx)
	if err != nil {
		return err
	}
	kept, err := s.Files(ctx)
	if err != nil {
		return err
	}
	if len(all) != records || revision < int64(records) || len(kept) != files {
		return fmt.Errorf("it holds %d records and %d files, not the %d and %d that were acknowledged", len(all), len(kept), records, files)
	}
	var sound string
	if err := s.db.QueryRow("PRAGMA integrity_check").Scan(&sound); err != nil || sound != "ok" {
		return fmt.Errorf("the file is not sound: %s %w", sound, err)
	}
	return nil
}
