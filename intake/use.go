package intake

import (
	"oakum/dossier"
	"oakum/field"
	"oakum/survey"
)

// Use reads the file by a layout that somebody chose, whatever its heads.
func (t *Table) Use(r dossier.Record) error {
	m, ok := r.Body.(*survey.Mapping)
	if !ok {
		return field.Refuse("mapping", "%s is no layout", r.ID)
	}
	t.said = newSettings()
	t.recall(dossier.Entry[survey.Mapping]{Head: r.Head, Body: *m})
	t.look()
	return nil
}
