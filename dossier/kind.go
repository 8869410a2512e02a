package dossier

import (
	"reflect"

	"oakum/field"
)

// Kind is one kind of record.
type Kind struct {
	Name   string        `json:"name"`   // "gland"
	Title  string        `json:"title"`  // "gland"
	Plural string        `json:"plural"` // "glands"
	Group  string        `json:"group"`  // ship, survey or plan: the package it stands in
	File   string        `json:"file"`   // its file in the folder form
	About  string        `json:"about"`  // one sentence
	Single bool          `json:"single,omitempty"`
	Fields []field.Field `json:"fields"`

	body reflect.Type
	list func() list
}

// New returns an empty body with its defaults filled.
func (k Kind) New() any {
	body := reflect.New(k.body).Interface()
	field.Defaults(body)
	return body
}

// Field returns one field by its key.
func (k Kind) Field(key string) (field.Field, bool) {
	for _, f := range k.Fields {
		if f.Key == key {
			return f, true
		}
	}
	return field.Field{}, false
}

func kind[T any](group, name, title, plural, file, about string) Kind {
	t := reflect.TypeFor[T]()
	return Kind{
		Name: name, Title: title, Plural: plural, Group: group, File: file, About: about, Fields: field.Of(t),
		body: t, list: func() list { return &entries[T]{kind: name} },
	}
}

var (
	byName = map[string]Kind{}
	byType = map[reflect.Type]string{}
	byFile = map[string]Kind{}
)

func init() {
	for i := range kinds {
		k := kinds[i]
		byName[k.Name], byType[k.body], byFile[k.File] = k, k.Name, k
	}
}

// Kinds lists every kind in the order in which people meet them.
func Kinds() []Kind { return kinds }

// KindNamed finds a kind by its name.
func KindNamed(name string) (Kind, bool) {
	k, ok := byName[name]
	return k, ok
}

// KindOf names the kind of a body type, "" where it is none.
func KindOf[T any]() string { return byType[reflect.TypeFor[T]()] }
