package app

import (
	"context"
	"io"
)

// PutFile keeps a file.
func (a *App) PutFile(ctx context.Context, name, mediaType string, from io.Reader) (File, error) {
	return a.store.PutFile(ctx, name, mediaType, from)
}

// OpenFile reads a kept file; the caller closes it.
func (a *App) OpenFile(ctx context.Context, sha256 string) (io.ReadCloser, File, error) {
	return a.store.OpenFile(ctx, sha256)
}

// Files lists the kept files.
func (a *App) Files(ctx context.Context) ([]File, error) { return a.store.Files(ctx) }
