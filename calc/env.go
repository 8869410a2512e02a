package calc

import (
	"encoding"
	"reflect"

	"oakum/field"
)

// Gravity is the standard acceleration of free fall, m/s2, exact by definition (ISO 80000-3; 3rd CGPM 1901).
const Gravity = 9.80665

// Env holds every symbol of a sheet with its value in base units, as an expression evaluator needs it: inputs and results by symbol, tables as
// lists of objects by column symbol, and the constants g and pi.
func (s Sheet) Env() map[string]any {
	env := map[string]any{"g": Gravity, "pi": 3.141592653589793}
	for _, ls := range [][]Line{s.Inputs, s.Results} {
		for _, l := range ls {
			name := l.Symbol
			if name == "" {
				name = l.Key
			}
			if v, ok := bare(l.raw, l.Fields); ok {
				env[name] = v
			}
		}
	}
	for _, st := range s.Steps {
		if _, ok := env[st.Symbol]; !ok {
			env[st.Symbol] = st.Value
		}
	}
	return env
}

func bare(v reflect.Value, fields []field.Field) (any, bool) {
	if !v.IsValid() {
		return nil, false
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return nil, false
		}
		v = v.Elem()
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok && v.Kind() != reflect.Float64 {
		b, err := m.MarshalText()
		return string(b), err == nil
	}
	switch v.Kind() {
	case reflect.Float64:
		return v.Float(), true
	case reflect.Int, reflect.Int64:
		return float64(v.Int()), true
	case reflect.Bool:
		return v.Bool(), true
	case reflect.String:
		return v.String(), true
	case reflect.Slice, reflect.Array:
		list := make([]any, v.Len())
		for i := range list {
			list[i], _ = bare(v.Index(i), fields)
		}
		return list, true
	case reflect.Struct:
		row := map[string]any{}
		for _, f := range fields {
			name := f.Symbol
			if name == "" {
				name = f.Key
			}
			if x, ok := bare(f.Get(v), f.Fields); ok {
				row[name] = x
			}
		}
		return row, true
	}
	return nil, false
}
