package intake

import (
	"reflect"
	"strconv"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
)

// inWords says in one line what a record holds: its place, then each other field with its unit. What goes for every row is left out.
func inWords(r dossier.Record, facts []app.GuessedFact) string {
	every := map[string]bool{}
	for _, f := range facts {
		every[f.Field] = true
	}
	var parts []string
	place, hasPlace := r.Place()
	if hasPlace && !place.Empty() {
		parts = append(parts, place.String())
	}
	v := reflect.ValueOf(r.Body).Elem()
	c := field.CodecOf(v.Type())
	for i := range c.Len() {
		f := c.Field(i)
		if hasPlace && inPlace(f.Key) || every[f.Key] {
			continue
		}
		text, ok := c.Text(v, i)
		if !ok || text == "" || text == f.Default {
			continue
		}
		if x, err := strconv.ParseFloat(text, 64); err == nil && f.Type == field.Number {
			text = strconv.FormatFloat(x, 'g', 6, 64)
			if f.Unit != "" && f.Unit != "-" && f.Unit != "money" {
				text += " " + f.Unit
			}
		}
		parts = append(parts, f.Label+" "+text)
	}
	return strings.Join(parts, "; ")
}

func inPlace(key string) bool {
	switch key {
	case "frame", "frame_to", "offset", "strake", "strake_to", "height", "side", "space", "where":
		return true
	}
	return false
}
