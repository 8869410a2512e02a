package assess

import (
	"reflect"
	"strings"

	"oakum/dossier"
	"oakum/plan"
)

// nameOf names a record in a sentence: by its own name where it has one; an ID that names nothing stands as it is.
func (c *inquiry) nameOf(id string) string {
	r, ok := c.d.Get(id)
	if !ok {
		return id
	}
	name := ""
	switch b := r.Body.(type) {
	case *plan.Course:
		name = b.Name
	case *plan.Work:
		name = b.Name
	case *plan.Matter:
		name = b.Name
	case *plan.Criterion:
		name = b.Name
	case *plan.Pot:
		name = b.Name
	case *plan.Grant:
		name = b.Name
	case *plan.Dock:
		name = b.Name
	case *plan.Bid:
		name = b.Yard
	case *plan.Part:
		name = b.Name
		if b.Title != "" {
			name = b.Title
		}
	}
	if name == "" {
		return r.Label()
	}
	return name
}

func (c *inquiry) namesOf(ids []string) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = c.nameOf(id)
	}
	return strings.Join(names, "; ")
}

// textsOf are the free texts of a record, and its label.
func textsOf(r dossier.Record) []string {
	k, ok := dossier.KindNamed(r.Kind)
	if !ok {
		return nil
	}
	var list []string
	v := reflect.ValueOf(r.Body).Elem()
	for _, f := range k.Fields {
		if len(f.Enum) > 0 || f.Of != "" {
			continue
		}
		if text, isText := f.Get(v).Interface().(string); isText && text != "" {
			list = append(list, text)
		}
	}
	return list
}
