package main

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"maps"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"oakum/app"
	"oakum/dossier"
	"oakum/quantity"
)

type dayValue = quantity.Date

// held is a store over a dossier in memory, to read a folder as if it were a ship file. It writes nothing. Files that its records name lie in the
// folder files beside the tables.
type held struct {
	d    *dossier.Dossier
	dir  string
	kept func() map[string]app.File // by SHA-256
}

// heldFolder holds a folder of tables with its files.
func heldFolder(d *dossier.Dossier, dir string) held {
	h := held{d: d, dir: filepath.Join(dir, folderFiles)}
	h.kept = sync.OnceValue(h.list)
	return h
}

// folderFiles is where a folder of tables keeps the files that its records name.
const folderFiles = "files"

// list works out the fingerprints of the files; a folder without any has none.
func (h held) list() map[string]app.File {
	kept := map[string]app.File{}
	names, err := os.ReadDir(h.dir)
	if err != nil {
		return kept
	}
	for _, e := range names {
		data, err := os.ReadFile(filepath.Join(h.dir, e.Name()))
		if err != nil {
			continue
		}
		sum := sha256.Sum256(data)
		f := app.File{SHA256: hex.EncodeToString(sum[:]), Name: e.Name(), MediaType: http.DetectContentType(data), Size: int64(len(data))}
		kept[f.SHA256] = f
	}
	return kept
}

var errFolder = errors.New("a folder is read only: import it into a ship file first (oakum import)")

func (h held) Load(context.Context) ([]dossier.Record, int64, error) {
	return slices.Concat(slices.Collect(h.d.Records("")), slices.Collect(h.d.Withdrawn(""))), 0, nil
}
func (h held) Write(context.Context, app.Batch) (app.Written, error) { return app.Written{}, errFolder }
func (h held) Versions(_ context.Context, id string) ([]dossier.Record, error) {
	r, ok := h.d.Get(id)
	if !ok {
		return nil, nil
	}
	return []dossier.Record{r}, nil
}
func (h held) Journal(context.Context, int64, int) ([]app.Step, error) { return []app.Step{}, nil }
func (h held) Step(context.Context, int64) (app.Step, error)           { return app.Step{}, app.ErrNotFound }
func (h held) PutFile(context.Context, string, string, io.Reader) (app.File, error) {
	return app.File{}, errFolder
}
func (h held) OpenFile(_ context.Context, sum string) (io.ReadCloser, app.File, error) {
	if h.kept == nil {
		return nil, app.File{}, app.ErrNoFile
	}
	f, ok := h.kept()[sum]
	if !ok {
		return nil, app.File{}, app.ErrNoFile
	}
	from, err := os.Open(filepath.Join(h.dir, f.Name))
	return from, f, err
}
func (h held) Files(context.Context) ([]app.File, error) {
	if h.kept == nil {
		return []app.File{}, nil
	}
	return slices.SortedFunc(maps.Values(h.kept()), func(a, b app.File) int { return cmp.Compare(a.SHA256, b.SHA256) }), nil
}
func (h held) Backup(context.Context, string) error { return errFolder }
func (h held) Close() error                         { return nil }
