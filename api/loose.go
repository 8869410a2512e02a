package api

import (
	"encoding/json"

	"oakum/field"
)

// loose gives values their numbers back as they were written: the transport reads them into float64.
func loose(values map[string]any) (map[string]any, error) {
	raw, err := json.Marshal(values)
	if err != nil {
		return nil, field.Refuse("", "the record can't be read: %v", err)
	}
	return field.Object(raw)
}
