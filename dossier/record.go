package dossier

import (
	"reflect"
	"strings"

	"oakum/quantity"
	"oakum/ship"
)

// Record is a head and a body; the body is a pointer to the struct of its kind.
type Record struct {
	Head
	Body any
}

// RecordOf makes a record of a typed entry.
func RecordOf[T any](e Entry[T]) Record { return Record{e.Head, &e.Body} }

// Place returns where the record is; ok is false where its kind has no place.
func (r Record) Place() (p ship.Place, ok bool) {
	l, ok := r.Body.(interface{ Located() ship.Place })
	if !ok {
		return ship.Place{}, false
	}
	return l.Located(), true
}

// Day returns the day of the thing recorded: the date a reading was taken, or else that of its evidence.
func (r Record) Day() quantity.Date {
	if s, ok := r.Body.(interface{ When() quantity.Date }); ok {
		return s.When()
	}
	v := reflect.ValueOf(r.Body).Elem()
	if f, ok := byName[r.Kind].Field("date"); ok {
		if d, isDate := f.Get(v).Interface().(quantity.Date); isDate && !d.IsZero() {
			return d
		}
	}
	return r.BasisDate
}

// labels are the fields that can stand for a record in a sentence, best first.
var labels = []string{"name", "title", "number", "what", "question", "item", "description", "material", "station", "yard", "giver", "to"}

// Label names the record in a sentence: its name, or its kind and place, or its kind and date, or its kind and ID.
func (r Record) Label() string {
	k := byName[r.Kind]
	if r.Body == nil {
		return r.Kind + " " + r.ID
	}
	v := reflect.ValueOf(r.Body).Elem()
	for _, key := range labels {
		f, ok := k.Field(key)
		if !ok {
			continue
		}
		if text, _ := f.Plain(v); text != nil {
			if s, isText := text.(string); isText && s != "" {
				return named(k.Title, key, s)
			}
		}
	}
	if p, ok := r.Place(); ok && !p.Empty() {
		return k.Title + " at " + p.String()
	}
	if d := r.Day(); !d.IsZero() {
		return k.Title + " of " + d.String()
	}
	return k.Title + " " + r.ID
}

func named(title, key, text string) string {
	if key == "number" || key == "material" || key == "station" {
		return title + " " + text
	}
	if strings.Contains(strings.ToLower(text), title) {
		return text
	}
	return title + " " + text
}
