package book

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"oakum/app"
	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
	printing "oakum/print"
	"oakum/print/bag"
	"oakum/print/text"
)

// Where things stand in the book.
const (
	records    = "data/records"
	papers     = "data/papers"
	sheets     = "data/sheets"
	files      = "data/files"
	dictionary = "data/DATA-DICTIONARY.txt"
	briefText  = "data/BRIEF.txt"
	database   = "data/ship.oakum"
	readMe     = "READ-ME-FIRST.txt"
)

// Made is what came of writing a book.
type Made struct {
	Records int
	Papers  int
	Files   int
	Bag     bag.Report
}

// Write makes the book in a folder that must be new or empty. It is made beside it under another name and gets its name once it has been read through:
// half a book is never left behind.
func Write(ctx context.Context, dir string, a *app.App, b *assess.Brief, at time.Time) (Made, error) {
	if list, err := os.ReadDir(dir); err == nil && len(list) > 0 {
		return Made{}, field.Refuse("folder", "%s is not empty: choose a new one", dir)
	}
	dir = filepath.Clean(dir)
	if err := os.MkdirAll(filepath.Dir(dir), 0o755); err != nil {
		return Made{}, err
	}
	tmp, err := os.MkdirTemp(filepath.Dir(dir), ".oakum-book-*")
	if err != nil {
		return Made{}, err
	}
	defer os.RemoveAll(tmp)
	w := writer{ctx: ctx, dir: tmp, app: a, brief: b, at: at}
	for _, step := range []func() error{w.records, w.dictionary, w.text, w.papers, w.sheets, w.files, w.database, w.readMe, w.seal} {
		if err := errors.Join(ctx.Err(), step()); err != nil {
			return w.made, err
		}
	}
	if err := os.Chmod(tmp, 0o755); err != nil {
		return w.made, err
	}
	if err := os.Remove(dir); err != nil && !os.IsNotExist(err) {
		return w.made, err
	}
	return w.made, os.Rename(tmp, dir)
}

type writer struct {
	ctx    context.Context
	dir    string
	app    *app.App
	brief  *assess.Brief
	at     time.Time
	made   Made
	listed []string // papers, for the account
}

func (w *writer) records() error {
	d, _ := w.app.Dossier()
	d, err := dossier.Uncounted(d)
	if err != nil {
		return err
	}
	w.made.Records = d.Len()
	return dossier.WriteFolder(filepath.Join(w.dir, records), d)
}

func (w *writer) dictionary() error {
	return w.put(dictionary, func(f io.Writer) error {
		_, err := f.Write(dossier.Dictionary())
		return err
	})
}

func (w *writer) text() error {
	return w.put(briefText, func(f io.Writer) error { return text.Brief(f, w.brief) })
}

// papers prints every paper that the brief has something for.
func (w *writer) papers() error {
	for _, p := range printing.Has(w.brief) {
		if err := w.ctx.Err(); err != nil {
			return err
		}
		if err := w.pdf(papers+"/"+p.Name+".pdf", func(f io.Writer) error { return p.Illustrated(f, w.brief, "A4", w.photo) }); err != nil {
			return fmt.Errorf("the paper %s: %w", p.Name, err)
		}
		w.made.Papers++
		w.listed = append(w.listed, fmt.Sprintf("  papers/%s.pdf: %s", p.Name, p.Title))
	}
	return nil
}

// photo is a kept photograph, for the papers that show some; nothing where it is not kept.
func (w *writer) photo(sha256 string) []byte {
	from, _, err := w.app.OpenFile(w.ctx, sha256)
	if err != nil {
		return nil
	}
	defer from.Close()
	data, err := io.ReadAll(io.LimitReader(from, app.MostBytes))
	if err != nil {
		return nil
	}
	return data
}

// pdf writes a PDF file that was found to need nothing outside it.
func (w *writer) pdf(name string, write func(io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	if err := standsAlone(b.Bytes()); err != nil {
		return err
	}
	return w.put(name, func(f io.Writer) error { _, err := b.WriteTo(f); return err })
}

// put writes one file of the book.
func (w *writer) put(name string, write func(io.Writer) error) error {
	p := filepath.Join(w.dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(p, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	return errors.Join(write(f), f.Close())
}

// database puts the ship file in: a copy that was opened again and checked.
func (w *writer) database() error {
	return w.app.Backup(w.ctx, filepath.Join(w.dir, filepath.FromSlash(database)))
}

func (w *writer) seal() (err error) {
	w.made.Bag, err = bag.Seal(w.dir, []bag.Line{
		{Label: "Source-Organization", Text: owner(w.brief)},
		{Label: "External-Description", Text: "The book of " + w.brief.Name + ": records, papers, files and the ship file, as on " + w.brief.Day.String()},
		{Label: "External-Identifier", Text: w.brief.Snapshot},
		{Label: "Bagging-Date", Text: w.at.UTC().Format(time.DateOnly)},
	})
	return err
}

func owner(b *assess.Brief) string {
	for r := range b.Dossier().Records("particulars") {
		if text, ok := textOf(r, "title_owner"); ok {
			return text
		}
	}
	return strings.TrimSpace("the keepers of " + b.Name)
}
