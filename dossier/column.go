package dossier

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"

	"oakum/field"
	"oakum/quantity"
)

// headColumns are the columns of the head that follow those of the body; "id" stands before.
var headColumns = []string{"basis", "basis_note", "basis_date", "mark", "at", "by", "version", "typed", "from", "withdrawn"}

// column is one column of a kind's file: a field of the body, or a part of the head.
type column struct {
	head  string // name of a part of the head, "" for a field
	field int    // number of the field in the codec
	unit  string // unit of the column where it is not the declared one
}

// headOf writes the name of a field's column, with its unit. Money is in the ship's currency.
func headOf(f field.Field, currency string) string {
	switch f.Unit {
	case "", "-":
		return f.Key
	case "money":
		return f.Key + "_" + currency
	}
	return f.Key + "_" + f.Unit
}

// columnNamed finds what a column's name means: a key, or a key and a unit of the right dimension after "_".
func columnNamed(k Kind, c *field.Codec, name, currency string) (column, error) {
	name = strings.TrimSpace(name)
	if name == "id" {
		return column{head: "id"}, nil
	}
	for _, h := range headColumns {
		if h == name {
			return column{head: h}, nil
		}
	}
	if i := c.Index(name); i >= 0 {
		return column{field: i}, nil
	}
	for i := range c.Len() {
		f := c.Field(i)
		unit, ok := strings.CutPrefix(name, f.Key+"_")
		if !ok {
			continue
		}
		if f.Unit == "money" {
			if unit != currency {
				return column{}, fmt.Errorf("%s is in %s, but the ship's currency is %s", name, unit, currency)
			}
			return column{field: i}, nil
		}
		u, known := quantity.Lookup(unit)
		if !known {
			continue
		}
		declared := f.Unit
		if declared == "" {
			declared = "-"
		}
		if !quantity.SameDimension(u.Key, declared) {
			return column{}, fmt.Errorf("%s is wanted in %s, not in %s", f.Key, declared, unit)
		}
		if u.Key == declared {
			return column{field: i}, nil
		}
		return column{field: i, unit: u.Key}, nil
	}
	return column{}, fmt.Errorf("no column %q is known for %s", name, k.Plural)
}

// headText gives a part of the head as a cell, "" where it is absent.
func headText(h Head, name string) string {
	switch name {
	case "id":
		return h.ID
	case "basis":
		return string(h.Basis)
	case "basis_note":
		return guard(h.BasisNote)
	case "basis_date":
		return h.BasisDate.String()
	case "mark":
		return string(h.Mark)
	case "at":
		if h.At.IsZero() {
			return ""
		}
		return h.At.UTC().Format(time.RFC3339Nano)
	case "by":
		return guard(h.By)
	case "version":
		if h.Version == 0 {
			return ""
		}
		return strconv.Itoa(h.Version)
	case "typed":
		if len(h.Typed) == 0 {
			return ""
		}
		b, err := json.Marshal(h.Typed) // keys come out sorted
		if err != nil {
			return ""
		}
		return string(b)
	case "from":
		return guard(h.From)
	case "withdrawn":
		if h.Withdrawn {
			return "yes"
		}
	}
	return ""
}

// setHead reads a part of the head from a cell that is not empty.
func setHead(h *Head, name, cell string) error {
	var err error
	switch name {
	case "id":
		h.ID = cell
		err = CheckID(cell)
	case "basis":
		h.Basis = field.Basis(cell)
	case "basis_note":
		h.BasisNote = field.Tidy(unguard(cell))
	case "basis_date":
		h.BasisDate, err = quantity.ParseDate(cell)
	case "mark":
		h.Mark = Mark(cell)
	case "at":
		h.At, err = time.Parse(time.RFC3339Nano, cell)
		h.At = h.At.UTC()
		if err != nil {
			err = fmt.Errorf("at must be a time like 2026-05-04T10:30:00Z, not %q", cell)
		}
	case "by":
		h.By = field.Tidy(unguard(cell))
	case "version":
		h.Version, err = strconv.Atoi(cell)
		if err != nil {
			err = fmt.Errorf("version must be a whole number, not %q", cell)
		}
	case "typed":
		if err = json.Unmarshal([]byte(cell), &h.Typed); err != nil {
			err = fmt.Errorf("typed must be a JSON object of texts: %w", err)
		}
	case "from":
		h.From = field.Tidy(unguard(cell))
	case "withdrawn":
		switch cell {
		case "yes":
			h.Withdrawn = true
		case "no":
		default:
			err = fmt.Errorf("withdrawn must be yes or no, not %q", cell)
		}
	}
	return err
}

// worded tells whether a field's cell is free text, which a spreadsheet could take for a formula.
func worded(f field.Field) bool {
	return f.Type == field.Text || f.Type == field.List && f.Unit == ""
}
