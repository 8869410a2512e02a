package field

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"oakum/quantity"
)

// Type is the sort of value a field holds, as forms and descriptions need it.
type Type string

// The sorts of value.
const (
	Number  Type = "number"
	Integer Type = "integer"
	Text    Type = "text"
	Enum    Type = "enum"
	Boolean Type = "boolean"
	Date    Type = "date"
	List    Type = "list"  // of numbers or words
	Grid    Type = "grid"  // list of lists of numbers
	Table   Type = "table" // list of structs
	Group   Type = "group" // one struct
)

// Field is one field of a struct as data. Bounds are in the declared unit.
type Field struct {
	Key      string   `json:"key"`
	Symbol   string   `json:"symbol,omitempty"`
	Label    string   `json:"label"`
	Help     string   `json:"help,omitempty"`
	Unit     string   `json:"unit,omitempty"`
	Type     Type     `json:"type"`
	Default  string   `json:"default,omitempty"`
	Min      *float64 `json:"min,omitempty"`
	Max      *float64 `json:"max,omitempty"`
	Over     *float64 `json:"over,omitempty"`
	Under    *float64 `json:"under,omitempty"`
	Enum     []string `json:"enum,omitempty"`
	Required bool     `json:"required"`
	Most     int      `json:"most,omitempty"`
	Of       string   `json:"of,omitempty"`
	Expr     string   `json:"expr,omitempty"`
	Fields   []Field  `json:"fields,omitempty"`

	index []int
}

var known sync.Map // reflect.Type -> []Field

// Of returns the fields of struct type t in the order they are declared. A wrong tag is a mistake of the program and panics, so that the
// first test that touches the struct shows it.
func Of(t reflect.Type) []Field {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if f, ok := known.Load(t); ok {
		return f.([]Field)
	}
	fields := structFields(t, nil)
	known.Store(t, fields)
	return fields
}

// For is Of for a type known when the program is written.
func For[T any]() []Field { return Of(reflect.TypeFor[T]()) }

func structFields(t reflect.Type, at []int) []Field {
	var fields []Field
	for i := range t.NumField() {
		sf := t.Field(i)
		index := append(append([]int{}, at...), i)
		key := sf.Tag.Get("key")
		switch {
		case sf.Anonymous && key == "" && sf.Type.Kind() == reflect.Struct:
			fields = append(fields, structFields(sf.Type, index)...)
			continue
		case !sf.IsExported(), key == "", key == "-":
			continue
		}
		fields = append(fields, one(t, sf, index))
	}
	return fields
}

func one(t reflect.Type, sf reflect.StructField, index []int) Field {
	tag := sf.Tag
	fail := func(format string, a ...any) {
		panic(fmt.Sprintf("field: %s.%s: %s", t, sf.Name, fmt.Sprintf(format, a...)))
	}
	f := Field{
		Key: tag.Get("key"), Symbol: tag.Get("symbol"), Label: tag.Get("label"), Help: tag.Get("help"), Unit: tag.Get("unit"),
		Default: tag.Get("default"), Of: tag.Get("of"), Expr: tag.Get("expr"), index: index,
	}
	if f.Label == "" {
		f.Label = strings.ReplaceAll(f.Key, "_", " ")
	}
	if f.Unit != "" {
		if _, ok := quantity.Lookup(f.Unit); !ok {
			fail("unit %q is not in package quantity", f.Unit)
		}
	}
	for name, to := range map[string]**float64{"min": &f.Min, "max": &f.Max, "over": &f.Over, "under": &f.Under} {
		text, ok := tag.Lookup(name)
		if !ok {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			fail("%s %q is not a number", name, text)
		}
		*to = &v
	}
	if text := tag.Get("most"); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil {
			fail("most %q is not a whole number", text)
		}
		f.Most = n
	}
	if text := tag.Get("enum"); text != "" {
		f.Enum = strings.Split(text, "|")
	}
	_, hasDefault := tag.Lookup("default")
	f.Required = !hasDefault && sf.Type.Kind() != reflect.Pointer && tag.Get("optional") == ""
	f.Type, f.Fields = sort(sf.Type, f.Enum, fail)
	return f
}

var (
	dateType = reflect.TypeFor[quantity.Date]()
)

func sort(t reflect.Type, enum []string, fail func(string, ...any)) (Type, []Field) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t == dateType:
		return Date, nil
	case textual(t) && enum != nil:
		return Enum, nil
	case textual(t):
		return Text, nil
	}
	switch t.Kind() {
	case reflect.Float64:
		return Number, nil
	case reflect.Int, reflect.Int64:
		return Integer, nil
	case reflect.Bool:
		return Boolean, nil
	case reflect.String:
		if enum != nil {
			return Enum, nil
		}
		return Text, nil
	case reflect.Struct:
		return Group, Of(t)
	case reflect.Slice, reflect.Array:
		e := t.Elem()
		if e.Kind() == reflect.Slice || e.Kind() == reflect.Array {
			return Grid, nil
		}
		if e.Kind() == reflect.Struct && !textual(e) && e != dateType {
			return Table, Of(e)
		}
		return List, nil
	}
	fail("type %s has no place in a form", t)
	return "", nil
}
