package main

import (
	"context"
	"errors"
	"io"
	"slices"

	"oakum/app"
	"oakum/dossier"
	"oakum/quantity"
)

type dayValue = quantity.Date

// held is a store over a dossier in memory, to read a folder as if it were a ship file. It writes nothing.
type held struct{ d *dossier.Dossier }

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
func (h held) OpenFile(context.Context, string) (io.ReadCloser, app.File, error) {
	return nil, app.File{}, app.ErrNoFile
}
func (h held) Files(context.Context) ([]app.File, error) { return []app.File{}, nil }
func (h held) Backup(context.Context, string) error      { return errFolder }
func (h held) Close() error                              { return nil }
