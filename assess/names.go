package assess

import (
	"strings"

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
