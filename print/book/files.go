package book

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"path"
	"strings"
	"time"

	"oakum/app"
	"oakum/dossier"
)

// files puts every kept file under its SHA-256, with a list of their names and of the records that speak of them.
func (w *writer) files() error {
	list, err := w.app.Files(w.ctx)
	if err != nil || len(list) == 0 {
		return err
	}
	d, _ := w.app.Dossier()
	about := spokenOf(d)
	var index bytes.Buffer
	index.Write(dossier.Row("file", "sha256", "name", "media_type", "size_B", "kept_at", "records"))
	for _, f := range list {
		if err := w.ctx.Err(); err != nil {
			return err
		}
		name := f.SHA256 + extension(f.Name)
		if err := w.put(files+"/"+name, func(to io.Writer) error { return w.copy(to, f) }); err != nil {
			return err
		}
		index.Write(dossier.Row(name, f.SHA256, f.Name, f.MediaType, fmt.Sprint(f.Size), f.At.UTC().Format(time.RFC3339), strings.Join(about[f.SHA256], "; ")))
		w.made.Files++
	}
	return w.put(files+"/index.csv", func(to io.Writer) error { _, err := to.Write(index.Bytes()); return err })
}

// copy writes a kept file, and refuses one whose bytes are not those that were kept.
func (w *writer) copy(to io.Writer, f app.File) error {
	from, _, err := w.app.OpenFile(w.ctx, f.SHA256)
	if err != nil {
		return err
	}
	defer from.Close()
	sum := sha256.New()
	if _, err := io.Copy(io.MultiWriter(to, sum), from); err != nil {
		return err
	}
	if got := hex.EncodeToString(sum.Sum(nil)); got != f.SHA256 {
		return fmt.Errorf("the kept file %s (%s) is not what was kept: its SHA-256 is %s now", f.Name, f.SHA256, got)
	}
	return nil
}

// extension is the end of a file's name where it is a plain one, so that a double click still opens it.
func extension(name string) string {
	ext := strings.ToLower(path.Ext(name))
	if len(ext) < 2 || len(ext) > 6 || fileName(ext) != ext {
		return ""
	}
	return ext
}

// spokenOf lists by SHA-256 the records that name a file.
func spokenOf(d *dossier.Dossier) map[string][]string {
	by := map[string][]string{}
	for _, kind := range []string{"photo", "document", "import"} {
		for r := range d.Records(kind) {
			if sum, ok := textOf(r, "sha256"); ok {
				by[sum] = append(by[sum], r.ID)
			}
		}
	}
	return by
}
