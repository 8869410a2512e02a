package dossier

import (
	"reflect"

	"oakum/quantity"
)

// Foreign is an amount typed in another currency than the ship's. It is kept as typed, but no rate of exchange is known, so that nothing is worked from it.
type Foreign struct{ Key, Label, Text string }

// ForeignMoney lists the amounts of a record that are not in the ship's currency.
func ForeignMoney(r Record, own string) (list []Foreign) {
	if len(r.Typed) == 0 {
		return nil
	}
	for _, f := range byName[r.Kind].Fields {
		text := r.Typed[f.Key]
		if text == "" || f.Unit != "money" {
			continue
		}
		read, err := quantity.Parse(text, "")
		if err != nil || read.Unit == own || read.Unit == "money" {
			continue
		}
		if _, err := quantity.NewMoney(read.Value, read.Unit); err == nil {
			list = append(list, Foreign{f.Key, f.Label, text})
		}
	}
	return list
}

// Lacking is a body without the values of some keys, as if they had never been entered. The body itself stays as it is.
func Lacking(body any, keys ...string) any {
	old := reflect.ValueOf(body).Elem()
	without := reflect.New(old.Type())
	without.Elem().Set(old)
	for i := range old.NumField() {
		for _, key := range keys {
			if old.Type().Field(i).Tag.Get("key") == key {
				without.Elem().Field(i).SetZero()
			}
		}
	}
	return without.Interface()
}
