package print

import (
	"cmp"
	"fmt"
	"reflect"
	"strings"

	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
	"oakum/print/page"
	"oakum/quantity"
	"oakum/ship"
)

// recordTable prints records as they stand, one a row, with the fields of those keys; "place" is where it is. Fields that no record fills are left out.
func recordTable[T any](d *page.Document, b *assess.Brief, list []dossier.Entry[T], keys ...string) {
	if len(list) == 0 {
		return
	}
	fields := fieldsOf[T]()
	t := page.Table{Size: page.Small}
	for i, key := range keys {
		c := page.Column{Head: key}
		if f, ok := fields[key]; ok {
			c.Head, c.Right = f.Label, f.Type == field.Number || f.Type == field.Integer
		}
		if i == 0 {
			c.Face = page.Bold
		}
		if !c.Right {
			c.Share = 1
		}
		t.Columns = append(t.Columns, c)
	}
	for _, e := range list {
		row := make([]string, len(keys))
		for i, key := range keys {
			row[i] = cell(b, e, fields, key)
		}
		t.Rows = append(t.Rows, row)
	}
	d.Table(keep(t))
}

func fieldsOf[T any]() map[string]field.Field {
	fields := map[string]field.Field{}
	for _, f := range field.For[T]() {
		fields[f.Key] = f
	}
	return fields
}

func cell[T any](b *assess.Brief, e dossier.Entry[T], fields map[string]field.Field, key string) string {
	if key == "place" {
		p, _ := dossier.RecordOf(e).Place()
		return p.String()
	}
	if key == "id" {
		return e.ID
	}
	f, ok := fields[key]
	if !ok {
		return ""
	}
	return fieldText(b, f, f.Get(reflect.ValueOf(e.Body)))
}

// fieldText puts a field's value into words; nothing where nobody has said.
func fieldText(b *assess.Brief, f field.Field, v reflect.Value) string {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return ""
		}
		v = v.Elem()
	}
	switch x := v.Interface().(type) {
	case float64:
		if f.Unit == "" {
			return number(x)
		}
		return quantity.Format(x, currencyIn(b, f.Unit), -1)
	case bool:
		return plain(x, "")
	case []string:
		named := make([]string, len(x))
		for i, one := range x {
			named[i] = label(b, f, one)
		}
		return strings.Join(named, "; ")
	case []float64:
		parts := make([]string, len(x))
		for i, one := range x {
			parts[i] = quantity.FormatShort(one, cmp.Or(f.Unit, "-"), -1)
		}
		return strings.Join(parts, " ")
	case string:
		return label(b, f, x)
	case fmt.Stringer:
		return x.String()
	}
	if v.Kind() == reflect.String {
		return v.String()
	}
	return fmt.Sprint(v.Interface())
}

// label names the record that a text refers to; a text that refers to none stands as it is.
func label(b *assess.Brief, f field.Field, text string) string {
	if f.Of == "" || text == "" {
		return text
	}
	if r, ok := b.Dossier().Get(text); ok {
		return r.Label()
	}
	return text
}

// currencyIn puts the ship's currency for "money", alone or at the head of a rate.
func currencyIn(b *assess.Brief, unit string) string {
	rest, isMoney := strings.CutPrefix(unit, "money")
	if !isMoney {
		return unit
	}
	if e, ok := dossier.One[ship.Particulars](b.Dossier()); ok && e.Body.Currency != "" {
		return e.Body.Currency + rest
	}
	return "EUR" + rest
}

// needs says what is missing where there is no record of a kind.
func needs[T any](b *assess.Brief, otherwise string) string {
	if len(dossier.All[T](b.Dossier())) == 0 {
		return otherwise
	}
	return ""
}

// only keeps the records that a test lets through.
func only[T any](list []dossier.Entry[T], test func(T) bool) []dossier.Entry[T] {
	var kept []dossier.Entry[T]
	for _, e := range list {
		if test(e.Body) {
			kept = append(kept, e)
		}
	}
	return kept
}

// orderedFields are the fields of a kind as they are declared, those of its place left to the place.
func orderedFields[T any]() []field.Field {
	var list []field.Field
	place := fieldsOf[ship.Place]()
	for _, f := range field.For[T]() {
		if _, ofPlace := place[f.Key]; !ofPlace {
			list = append(list, f)
		}
	}
	return list
}

// sideBySide prints records as the columns of one table, a field a row; what none of them says is left out.
func sideBySide[T any](d *page.Document, b *assess.Brief, list []dossier.Entry[T]) {
	t := page.Table{Columns: []page.Column{{Head: "", Face: page.Bold}}}
	fields := fieldsOf[T]()
	for _, e := range list {
		t.Columns = append(t.Columns, page.Column{Head: dossier.RecordOf(e).Label(), Share: 1})
	}
	for _, f := range orderedFields[T]() {
		row, said := []string{f.Label}, false
		for _, e := range list {
			text := cell(b, e, fields, f.Key)
			said = said || text != ""
			row = append(row, text)
		}
		if said && f.Key != "name" {
			t.Rows = append(t.Rows, row)
		}
	}
	known := []string{"how it is known"}
	for _, e := range list {
		known = append(known, words(", ", string(e.Basis), e.BasisNote))
	}
	t.Rows = append(t.Rows, known)
	d.Table(t)
}
