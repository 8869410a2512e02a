package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"

	"oakum/app"
	"oakum/print/bag"
	"oakum/print/book"
	"oakum/store/sqlite"
)

// book writes the book of a ship file.
func (c exportCommand) book(ctx context.Context, s streams, a *app.App) error {
	at, err := day(c.Day)
	if err != nil {
		return err
	}
	b, err := a.Brief("", at)
	if err != nil {
		return err
	}
	made, err := book.Write(ctx, c.Folder, a, b, now())
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s written, read through again and found whole: %d records, %d papers, %d kept files, %d files in all\n",
		c.Folder, made.Records, made.Papers, made.Files, made.Bag.Files)
	return err
}

// bag says whether a bag is the one that was packed.
func (c checkCommand) bag(s streams) error {
	r, err := bag.Check(c.File)
	if err != nil {
		return err
	}
	if c.JSON {
		err = printJSON(s.out, r)
	}
	for _, f := range r.Faults {
		if !c.JSON {
			fmt.Fprintln(s.out, f)
		}
	}
	switch {
	case err != nil:
		return err
	case len(r.Faults) > 0:
		return failure{status: exitFound}
	case !c.JSON:
		fmt.Fprintf(s.out, "whole: %d files, %d bytes, each held against its sum\n", r.Files, r.Bytes)
	}
	return nil
}

// book brings in a book: into a new ship file the whole of it, every earlier version too; into one that is there what is new.
func (c importCommand) book(ctx context.Context, s streams, path string, fresh bool) error {
	o, err := book.Open(path)
	if err != nil {
		return err
	}
	if !fresh || o.Database == "" {
		return c.leaves(ctx, s, o, path, fresh)
	}
	st, err := sqlite.OpenReading(ctx, o.Database)
	if err != nil {
		return err
	}
	a, err := app.Open(ctx, st, now)
	if err != nil {
		st.Close()
		return err
	}
	defer a.Close()
	d, _ := a.Dossier()
	if err := o.Agrees(d); err != nil {
		return failure{exitRefused, err}
	}
	if err := a.Backup(ctx, c.File); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s: %d records landed, with every earlier version and every kept file\n", path, d.Len())
	return nil
}

// leaves brings in the tables and the kept files of a book one by one.
func (c importCommand) leaves(ctx context.Context, s streams, o book.Opened, path string, fresh bool) error {
	if fresh {
		st, err := sqlite.Create(ctx, c.File)
		if err != nil {
			return err
		}
		if err := st.Close(); err != nil {
			return err
		}
	}
	a, err := c.open(ctx)
	if err != nil {
		return err
	}
	defer a.Close()
	if err := c.records(ctx, s, a, path, o.Dossier); err != nil || c.Show {
		return err
	}
	for _, name := range o.Files {
		if err := keep(ctx, a, name); err != nil {
			return err
		}
	}
	return nil
}

func keep(ctx context.Context, a *app.App, name string) error {
	f, err := os.Open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = a.PutFile(ctx, filepath.Base(name), mediaOf(f), f)
	return err
}

// mediaOf tells what a file is by its first bytes.
func mediaOf(f io.ReadSeeker) string {
	head := make([]byte, 512)
	n, _ := io.ReadFull(f, head)
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return "application/octet-stream"
	}
	return http.DetectContentType(head[:n])
}

func missing(path string) bool {
	_, err := os.Stat(path)
	return errors.Is(err, fs.ErrNotExist)
}
