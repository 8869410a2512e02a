package app

import (
	"context"
	"io"
	"time"

	"oakum/dossier"
)

// Store keeps the records, the journal and the files of one ship. Every adapter passes the suite in store/storetest.
type Store interface {
	// Load reads the standing version of every record, withdrawn ones too, and the revision they make up.
	Load(ctx context.Context) (records []dossier.Record, revision int64, err error)
	// Write lands a whole batch or nothing, and returns once it is on the disk for good. A record whose Version is not the one the store holds
	// (0 for a new one) is refused with a *Conflict. Stored versions are one higher, with At and By set.
	Write(ctx context.Context, b Batch) (Written, error)
	// Versions reads every version of a record, oldest first.
	Versions(ctx context.Context, id string) ([]dossier.Record, error)
	// Journal reads the batches, newest first, those before the given revision; 0 starts at the newest.
	Journal(ctx context.Context, before int64, limit int) ([]Step, error)
	// Step reads one batch with every record it touched.
	Step(ctx context.Context, revision int64) (Step, error)
	// PutFile keeps a file under its SHA-256; the same bytes are kept once.
	PutFile(ctx context.Context, name, mediaType string, from io.Reader) (File, error)
	// OpenFile reads a kept file; the caller closes it.
	OpenFile(ctx context.Context, sha256 string) (io.ReadCloser, File, error)
	// Files lists the kept files.
	Files(ctx context.Context) ([]File, error)
	// Backup writes a whole copy to a path, opens it again and checks it, and only then gives it its name.
	Backup(ctx context.Context, path string) error
	Close() error
}

// Batch is what is written in one step: an edit, an import, an undo.
type Batch struct {
	By      string
	At      time.Time
	What    string // in words, for the journal: "corrected a gland", "imported survey-2023.xlsx"
	Undoes  int64  // the revision that this batch takes back; 0 none
	Records []dossier.Record
	// AsGiven keeps the At and By that records bring, as a folder read back must; the journal still says who brought them and when.
	AsGiven bool
}

// Written is what became of a batch.
type Written struct {
	Revision int64
	Records  []dossier.Record // as stored
}

// Step is one batch as the journal keeps it.
type Step struct {
	Revision int64     `json:"revision"`
	At       time.Time `json:"at"`
	By       string    `json:"by"`
	What     string    `json:"what"`
	Undoes   int64     `json:"undoes,omitempty"`
	Undone   bool      `json:"undone,omitempty"`
	Records  []Touched `json:"records"` // at most the first hundred
	Count    int       `json:"count"`
}

// Touched names one record version of a step.
type Touched struct {
	Kind    string `json:"kind"`
	ID      string `json:"id"`
	Version int    `json:"version"`
}

// File is a kept file.
type File struct {
	SHA256    string    `json:"sha256"`
	Name      string    `json:"name"`
	MediaType string    `json:"media_type"`
	Size      int64     `json:"size"`
	At        time.Time `json:"at"`
}
