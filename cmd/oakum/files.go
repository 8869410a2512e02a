package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"oakum/app"
)

// takeFiles keeps the files of a folder of the form that export writes; a folder without any has none.
func takeFiles(ctx context.Context, a *app.App, dir string) (n int, err error) {
	list, err := os.ReadDir(filepath.Join(dir, folderFiles))
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	for _, e := range list {
		if !e.Type().IsRegular() {
			continue
		}
		if err := keep(ctx, a, filepath.Join(dir, folderFiles, e.Name())); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}

// giveFiles writes the kept files beside the tables, under their own names where those are plain and met once, else under their fingerprints.
func giveFiles(ctx context.Context, a *app.App, dir string) error {
	list, err := a.Files(ctx)
	if err != nil || len(list) == 0 {
		return err
	}
	if err := os.MkdirAll(filepath.Join(dir, folderFiles), 0o755); err != nil {
		return err
	}
	for _, f := range list {
		name := f.Name
		if !filepath.IsLocal(name) || filepath.Base(name) != name || there(filepath.Join(dir, folderFiles, name)) {
			name = f.SHA256
		}
		if err := give(ctx, a, f, filepath.Join(dir, folderFiles, name)); err != nil {
			return fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	return nil
}

func give(ctx context.Context, a *app.App, f app.File, to string) error {
	from, _, err := a.OpenFile(ctx, f.SHA256)
	if err != nil {
		return err
	}
	defer from.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, from)
	return errors.Join(err, out.Close())
}

func there(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// takePictures keeps the drawings that stand for the photographs of an invented ship.
func takePictures(ctx context.Context, a *app.App, folders []fs.FS) error {
	for _, dir := range folders {
		list, err := fs.ReadDir(dir, ".")
		if err != nil {
			return err
		}
		for _, e := range list {
			f, err := dir.Open(e.Name())
			if err != nil {
				return err
			}
			_, err = a.PutFile(ctx, e.Name(), "image/png", f)
			if err = errors.Join(err, f.Close()); err != nil {
				return err
			}
		}
	}
	return nil
}
