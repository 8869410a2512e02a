package dossier

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"oakum/field"
)

// references looks for references to nothing, to another kind, or to a record taken back.
func (c *checker) references() {
	for r := range c.d.Records("") {
		v := reflect.ValueOf(r.Body).Elem()
		for _, i := range refFields[r.Kind] {
			f := byName[r.Kind].Fields[i]
			for _, id := range idsIn(f, v) {
				c.reference(r, f, id)
			}
		}
	}
}

var refFields = map[string][]int{}

func init() {
	for _, k := range kinds {
		for i, f := range k.Fields {
			if f.Of != "" {
				refFields[k.Name] = append(refFields[k.Name], i)
			}
		}
	}
}

func idsIn(f field.Field, v reflect.Value) []string {
	switch x := f.Get(v).Interface().(type) {
	case string:
		if x != "" {
			return []string{x}
		}
	case []string:
		return x
	}
	return nil
}

func (c *checker) reference(r Record, f field.Field, id string) {
	to, ok := c.d.Get(id)
	kinds := strings.Split(f.Of, "|")
	switch {
	case !ok:
		c.tell(Wrong, r, fmt.Sprintf("The %s names %q as its %s, and there is no such record.", r.Label(), id, f.Label),
			fmt.Sprintf("Enter %s, or correct the %s.", aKind(kinds), f.Label))
	case to.Withdrawn:
		c.tell(Wrong, r, fmt.Sprintf("The %s names %s as its %s, which was taken back.", r.Label(), to.Label(), f.Label), fmt.Sprintf("Name another %s, or leave it out.", f.Label))
	case f.Of != "*" && !slices.Contains(kinds, to.Kind):
		c.tell(Wrong, r, fmt.Sprintf("The %s names %s as its %s, which is a %s.", r.Label(), to.Label(), f.Label, byName[to.Kind].Title), fmt.Sprintf("Name %s.", aKind(kinds)))
	}
}

func aKind(names []string) string {
	words := make([]string, len(names))
	for i, n := range names {
		words[i] = "a " + byName[n].Title
		if n == "*" {
			words[i] = "the record"
		}
	}
	return strings.Join(words, " or ")
}
