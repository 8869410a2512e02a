package dossier

import (
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"oakum/field"
	"oakum/ship"
)

// ShipFile is the text file of the folder form that holds the particulars.
const ShipFile = "ship.txt"

// Files gives the folder form of a dossier, file by file: ship.txt, and one CSV a kind that has records. The same dossier gives the same bytes.
func Files(d *Dossier) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		currency := Currency(d)
		for _, k := range kinds {
			records := everyOf(d, k.Name)
			if len(records) == 0 {
				continue
			}
			if k.Single {
				if !yield(k.File, shipText(k, records[0], currency)) {
					return
				}
				continue
			}
			if !yield(k.File, sheet(k, records, currency)) {
				return
			}
			for _, r := range records {
				if !yieldGrids(k, r, yield) {
					return
				}
			}
		}
	}
}

// Currency is that of the ship's particulars, EUR where it is not said.
func Currency(d *Dossier) string {
	for _, r := range everyOf(d, "particulars") {
		if p, ok := r.Body.(*ship.Particulars); ok && p.Currency != "" {
			return p.Currency
		}
	}
	return "EUR"
}

// everyOf gives the records of a kind, those withdrawn too, in the order of their IDs.
func everyOf(d *Dossier, kind string) []Record {
	records := slices.AppendSeq(slices.Collect(d.Records(kind)), d.Withdrawn(kind))
	slices.SortStableFunc(records, func(a, b Record) int { return strings.Compare(a.ID, b.ID) })
	return records
}

// WriteFolder writes the folder form into a folder, which it makes where there is none. A file of a kind that has no records now is removed,
// so that the folder says what the dossier says.
func WriteFolder(dir string, d *Dossier) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	written := map[string]bool{}
	for name, data := range Files(d) {
		written[name] = true
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
	}
	for _, k := range kinds {
		if written[k.File] {
			continue
		}
		if err := os.Remove(filepath.Join(dir, k.File)); err != nil && !os.IsNotExist(err) {
			return fmt.Errorf("an old %s is in the way: %w", k.File, err)
		}
	}
	return nil
}

// sheet writes the records of one kind. A column stands only where some record has something in it.
func sheet(k Kind, records []Record, currency string) []byte {
	c := field.CodecOf(k.body)
	names := []string{"id"}
	for i := range c.Len() {
		names = append(names, headOf(c.Field(i), currency))
	}
	names = append(names, headColumns...)
	rows := make([][]string, len(records))
	used := make([]bool, len(names))
	used[0] = true
	for n, r := range records {
		rows[n] = cellsOf(k, c, r)
		for i, cell := range rows[n] {
			used[i] = used[i] || cell != ""
		}
	}
	out := appendUsed(nil, names, used)
	for _, cells := range rows {
		out = appendUsed(out, cells, used)
	}
	return out
}

func appendUsed(dst []byte, cells []string, used []bool) []byte {
	kept := make([]string, 0, len(cells))
	for i, c := range cells {
		if used[i] {
			kept = append(kept, c)
		}
	}
	return appendRow(dst, kept)
}

func cellsOf(k Kind, c *field.Codec, r Record) []string {
	v := reflect.ValueOf(r.Body).Elem()
	cells := make([]string, 0, 1+c.Len()+len(headColumns))
	cells = append(cells, r.ID)
	for i := range c.Len() {
		cells = append(cells, cellOf(k, c, r.ID, v, i))
	}
	for _, name := range headColumns {
		cells = append(cells, headText(r.Head, name))
	}
	return cells
}

func cellOf(k Kind, c *field.Codec, id string, v reflect.Value, i int) string {
	f := c.Field(i)
	if f.Type == field.Grid {
		if f.Get(v).Len() == 0 {
			return ""
		}
		return gridFile(k, id, f)
	}
	cell, ok := c.Text(v, i)
	if !ok {
		return ""
	}
	if worded(f) {
		return guard(cell)
	}
	return cell
}

func yieldGrids(k Kind, r Record, yield func(string, []byte) bool) bool {
	v := reflect.ValueOf(r.Body).Elem()
	for _, f := range k.Fields {
		if f.Type != field.Grid || f.Get(v).Len() == 0 {
			continue
		}
		if !yield(gridFile(k, r.ID, f), writeGrid(f, f.Get(v))) {
			return false
		}
	}
	return true
}
