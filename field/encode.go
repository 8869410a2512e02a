package field

import (
	"encoding"
	"math"
	"reflect"
	"strconv"

	"oakum/quantity"
)

// Plain returns the value of field f of struct v as JSON may carry it, numbers in the declared unit; ok is false where it is absent.
func (f Field) Plain(v reflect.Value) (value any, ok bool) {
	return f.plain(f.Get(v))
}

// Get returns the reflected value of the field in struct v.
func (f Field) Get(v reflect.Value) reflect.Value { return v.FieldByIndex(f.index) }

func (f Field) plain(v reflect.Value) (any, bool) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return nil, false
		}
		v = v.Elem()
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok && v.Kind() != reflect.Float64 {
		b, err := m.MarshalText()
		return string(b), err == nil && len(b) > 0
	}
	switch v.Kind() {
	case reflect.Float64:
		return f.Declared(v.Float()), true
	case reflect.Int, reflect.Int64:
		return v.Int(), true
	case reflect.Bool:
		return v.Bool(), true
	case reflect.String:
		return v.String(), v.String() != ""
	case reflect.Struct:
		return Values(v, f.Fields), true
	case reflect.Slice, reflect.Array:
		out := make([]any, v.Len())
		for i := range out {
			out[i], _ = f.plain(v.Index(i))
		}
		return out, v.Kind() == reflect.Array || !v.IsNil()
	}
	return nil, false
}

// Values returns the present fields of struct v by key, numbers in their declared units.
func Values(v reflect.Value, fields []Field) map[string]any {
	out := map[string]any{}
	for _, f := range fields {
		if x, ok := f.Plain(v); ok {
			out[f.Key] = x
		}
	}
	return out
}

// Declared converts a base value to the declared unit, rid of the last bits that the conversion added.
func (f Field) Declared(base float64) float64 {
	if f.Unit == "" {
		return Trim(base)
	}
	x, err := quantity.FromBase(base, f.Unit)
	if err != nil {
		return math.NaN()
	}
	return Trim(x)
}

// Trim rounds to 15 significant digits: what a float64 holds for sure.
func Trim(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	if err != nil {
		return x
	}
	return y
}
