package api

import (
	"math"
	"strconv"

	"oakum/field"
)

// metres reads a length that may be left out, within bounds in m.
func metres(name, text string, least, most float64) (*float64, error) {
	if text == "" {
		return nil, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) {
		return nil, field.Refuse(name, "%s: %q is no number of metres", name, text)
	}
	if v < least || v > most {
		return nil, field.Refuse(name, "%s of %v lies outside %v to %v", name, field.Q(name, v, "m"), field.Q(name, least, "m"), field.Q(name, most, "m"))
	}
	return &v, nil
}
