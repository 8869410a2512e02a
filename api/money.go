package api

import (
	"math"
	"strconv"
	"strings"

	"oakum/field"
)

// sum reads an amount of money that may be left out.
func sum(name, text string) (*float64, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(strings.ReplaceAll(text, " ", ""), "\u202f", ""), 64)
	if err != nil || math.IsNaN(v) || v < 0 || v > 1e12 {
		return nil, field.Refuse(name, "%s: %q is no sum of money", name, text)
	}
	return &v, nil
}
