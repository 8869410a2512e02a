package main

import (
	"context"
	"fmt"
	"os"
	"time"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/store/sqlite"
)

// reading opens a ship file, or a folder of CSV files, to read.
func reading(ctx context.Context, path string) (*app.App, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("%s: there is no such file or folder", path)
	}
	if info.IsDir() {
		return fromFolder(ctx, path)
	}
	s, err := sqlite.OpenReading(ctx, path)
	if err != nil {
		return nil, err
	}
	return app.Open(ctx, s, time.Now)
}

// writing opens a ship file to read and write.
func writing(ctx context.Context, path string) (*app.App, error) {
	s, err := sqlite.Open(ctx, path)
	if err != nil {
		return nil, err
	}
	a, err := app.Open(ctx, s, time.Now)
	if err != nil {
		s.Close()
	}
	return a, err
}

// fromFolder reads a folder of CSV files whole, or refuses it with every row at fault.
func fromFolder(ctx context.Context, path string) (*app.App, error) {
	d, err := wholeFolder(path)
	if err != nil {
		return nil, err
	}
	return app.Open(ctx, heldFolder(d, path), time.Now)
}

func wholeFolder(path string) (*dossier.Dossier, error) {
	r, err := dossier.ReadFolder(os.DirFS(path))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	d, err := r.Whole()
	if err != nil {
		return nil, failure{exitRefused, fmt.Errorf("%s: %w", path, err)}
	}
	return d, nil
}

// day reads a --day flag; empty is today.
func day(text string) (d dayValue, err error) {
	if text == "" {
		return d, nil
	}
	if err := d.UnmarshalText([]byte(text)); err != nil {
		return d, field.Refuse("day", "%v", err)
	}
	return d, nil
}
