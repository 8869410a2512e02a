package book

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/print/bag"
)

// Opened is a book that was read through and found whole.
type Opened struct {
	Dossier  *dossier.Dossier
	Database string   // path of the ship file in it, "" where there is none
	Files    []string // paths of the kept files

	tables string // the folder of the tables
}

// Is tells whether a folder is a book.
func Is(dir string) bool {
	info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(records)))
	return err == nil && info.IsDir() && bag.Is(dir)
}

// Open reads a book, and refuses one that is not the one that was packed.
func Open(dir string) (Opened, error) {
	r, err := bag.Check(dir)
	if err != nil {
		return Opened{}, err
	}
	if len(r.Faults) > 0 {
		return Opened{}, field.Refuse("book", "%s is not the book that was packed: %s", dir, strings.Join(r.Faults, "; "))
	}
	o := Opened{tables: filepath.Join(dir, filepath.FromSlash(records))}
	reading, err := dossier.ReadFolder(os.DirFS(o.tables))
	if err != nil {
		return o, err
	}
	if o.Dossier, err = reading.Whole(); err != nil {
		return o, field.Refuse("book", "%s: %v", dir, err)
	}
	if p := filepath.Join(dir, filepath.FromSlash(database)); there(p) {
		o.Database = p
	}
	list, err := os.ReadDir(filepath.Join(dir, filepath.FromSlash(files)))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return o, err
	}
	for _, e := range list {
		if e.Name() != "index.csv" {
			o.Files = append(o.Files, filepath.Join(dir, filepath.FromSlash(files), e.Name()))
		}
	}
	return o, nil
}

func there(p string) bool {
	info, err := os.Stat(p)
	return err == nil && info.Mode().IsRegular()
}

// Agrees says where a dossier and the tables of the book are not the same to the byte.
func (o Opened) Agrees(d *dossier.Dossier) error {
	d, err := dossier.Uncounted(d)
	if err != nil {
		return err
	}
	list, err := os.ReadDir(o.tables)
	if err != nil {
		return err
	}
	left := map[string]bool{}
	for _, e := range list {
		left[e.Name()] = true
	}
	for name, data := range dossier.Files(d) {
		packed, err := os.ReadFile(filepath.Join(o.tables, name))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		if !bytes.Equal(packed, data) {
			return fmt.Errorf("%s of the book does not say what its ship file says", name)
		}
		delete(left, name)
	}
	for name := range left {
		return fmt.Errorf("%s of the book stands in no ship file", name)
	}
	return nil
}
