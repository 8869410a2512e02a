package assess

import (
	"reflect"

	"oakum/field"
)

// inCurrency puts every amount of a page into the ship's currency: sheets and records count in "money", people read euro.
func (c *inquiry) inCurrency(page any) {
	c.named(reflect.ValueOf(page).Elem())
}

func (c *inquiry) named(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if f, ok := v.Addr().Interface().(*Figure); ok {
			if f.Unit == "money" {
				f.Unit = c.currency()
				if f.Basis != field.Unknown {
					f.Text += " " + f.Unit
				}
			}
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				c.named(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			c.named(v.Index(i))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			c.named(v.Elem())
		}
	}
}
