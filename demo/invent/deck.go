package invent

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

// Values are the fields of one record by key, numbers in their declared units.
type Values map[string]any

// Note stands on every made-up record.
const Note = "invented"

// Deck collects made-up records. The first thing that goes wrong is kept and ends the collecting.
type Deck struct {
	records []dossier.Record
	count   map[string]int
	err     error
}

// NewDeck returns an empty deck.
func NewDeck() *Deck { return &Deck{count: map[string]int{}} }

// Records returns what was collected, or what went wrong.
func (d *Deck) Records() ([]dossier.Record, error) { return d.records, d.err }

// Next gives the next ID of a sequence: pre-0001, pre-0002.
func (d *Deck) Next(prefix string) string {
	d.count[prefix]++
	return fmt.Sprintf("%s-%04d", prefix, d.count[prefix])
}

// Add adds one record. The keys basis, basis_note, basis_date, mark and by belong to the head; all others to the body.
func (d *Deck) Add(kind, id string, v Values) {
	if d.err != nil {
		return
	}
	k, ok := dossier.KindNamed(kind)
	if !ok {
		d.err = fmt.Errorf("%s: no kind %s", id, kind)
		return
	}
	head := dossier.Head{ID: id, Kind: kind, Basis: field.Assumed, BasisNote: Note, By: "made up"}
	body := map[string]any{}
	for key, x := range v {
		done, err := headed(&head, key, x)
		if err != nil {
			d.err = fmt.Errorf("%s: %s: %w", id, key, err)
			return
		}
		if !done {
			body[key] = loose(x)
		}
	}
	b := k.New()
	if _, err := field.Fill(b, body); err != nil {
		d.err = fmt.Errorf("%s %s: %w", kind, id, err)
		return
	}
	d.records = append(d.records, dossier.Record{Head: head, Body: b})
}

// headed puts a value into the head where it belongs there. A basis note keeps the word that says the record is made up.
func headed(h *dossier.Head, key string, x any) (bool, error) {
	text := fmt.Sprint(x)
	switch key {
	case "basis":
		h.Basis = field.Basis(text)
	case "basis_note":
		h.BasisNote = Note + "; " + text
	case "basis_date":
		date, err := quantity.ParseDate(text)
		h.BasisDate = date
		return true, err
	case "mark":
		h.Mark = dossier.Mark(text)
	case "by":
		h.By = text
	default:
		return false, nil
	}
	return true, nil
}

// loose turns Go values into what a reader of JSON would hand over.
func loose(x any) any {
	switch x := x.(type) {
	case float64:
		return number(x)
	case int:
		return json.Number(strconv.Itoa(x))
	case []float64:
		out := make([]any, len(x))
		for i, y := range x {
			out[i] = number(y)
		}
		return out
	case [][]float64:
		out := make([]any, len(x))
		for i, y := range x {
			out[i] = loose(y)
		}
		return out
	case []string:
		out := make([]any, len(x))
		for i, y := range x {
			out[i] = y
		}
		return out
	}
	return x
}

func number(x float64) json.Number { return json.Number(strconv.FormatFloat(x, 'f', -1, 64)) }

// Table adds the records of a text table: one line of keys, of which the first is id, then a line a record, cells parted by "|". An empty cell
// is absent; entries of a list are parted by ";". Values of common stand in every record that has no other.
func (d *Deck) Table(kind, text string, common Values) {
	k, _ := dossier.KindNamed(kind)
	var keys []string
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line == "" || d.err != nil {
			continue
		}
		cells := strings.Split(line, "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		if keys == nil {
			keys = cells
			continue
		}
		if len(cells) > len(keys) {
			d.err = fmt.Errorf("%s %s: %d cells for %d keys", kind, cells[0], len(cells), len(keys))
			return
		}
		v := maps.Clone(common)
		if v == nil {
			v = Values{}
		}
		for i, cell := range cells[1:] {
			if cell != "" {
				f, _ := k.Field(keys[i+1])
				v[keys[i+1]] = read(f, cell)
			}
		}
		d.Add(kind, cells[0], v)
	}
}

// read gives a cell the type its field asks for.
func read(f field.Field, cell string) any {
	switch f.Type {
	case field.Number, field.Integer:
		return json.Number(cell)
	case field.List:
		out := []any{}
		for _, entry := range strings.Split(cell, ";") {
			if entry = strings.TrimSpace(entry); entry != "" {
				out = append(out, entry)
			}
		}
		if _, err := strconv.ParseFloat(fmt.Sprint(out[0]), 64); err == nil {
			for i := range out {
				out[i] = json.Number(fmt.Sprint(out[i]))
			}
		}
		return out
	}
	return cell
}

// Sorted gives the keys of a map in order, so that what is made from it comes out the same each time.
func Sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// Err is what went wrong so far.
func (d *Deck) Err() error { return d.err }
