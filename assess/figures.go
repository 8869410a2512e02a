package assess

import "reflect"

// figures walks the brief and returns every figure in it, page by page.
func (b *Brief) figures() []Figure {
	var all []Figure
	collect(reflect.ValueOf(*b), &all)
	return all
}

// Figures returns every figure of the brief in the order of the pages.
func (b *Brief) Figures() []Figure { return b.figures() }

func collect(v reflect.Value, all *[]Figure) {
	switch v.Kind() {
	case reflect.Struct:
		if f, ok := v.Interface().(Figure); ok {
			*all = append(*all, f)
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				collect(v.Field(i), all)
			}
		}
	case reflect.Slice, reflect.Array:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return
		}
		for i := range v.Len() {
			collect(v.Index(i), all)
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			collect(v.Elem(), all)
		}
	}
}
