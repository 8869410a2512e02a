package assess

import (
	"math"
	"reflect"
	"strings"

	"oakum/field"
	"oakum/quantity"
)

// In is the brief as a reader of a family of units is shown it: every figure in the partner of its unit, and every quantity that a sentence of ours names.
// Sheets stay in the units they are worked in, and what a person typed stays as it was typed. The brief itself is not changed.
func (b *Brief) In(system quantity.System) *Brief {
	if system != quantity.Metric && system != quantity.US {
		return b
	}
	out := *b
	v := reflect.ValueOf(&out).Elem()
	for i := range v.NumField() {
		if v.Type().Field(i).IsExported() {
			v.Field(i).Set(inUnits(v.Field(i), system))
		}
	}
	return &out
}

var figureType = reflect.TypeFor[Figure]()

// inUnits copies what holds figures, and converts them; anything else is handed on as it is.
func inUnits(v reflect.Value, system quantity.System) reflect.Value {
	switch {
	case v.Type() == figureType:
		return reflect.ValueOf(v.Interface().(Figure).in(system))
	case v.Kind() == reflect.Struct && strings.HasPrefix(v.Type().PkgPath(), "oakum/assess"):
		to := reflect.New(v.Type()).Elem()
		to.Set(v)
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				to.Field(i).Set(inUnits(v.Field(i), system))
			}
		}
		return to
	case v.Kind() == reflect.String:
		to := reflect.New(v.Type()).Elem()
		to.SetString(quantity.Retell(system, v.String()))
		return to
	case v.Kind() == reflect.Slice && !v.IsNil() && holdsFigures(v.Type().Elem()):
		to := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		for i := range v.Len() {
			to.Index(i).Set(inUnits(v.Index(i), system))
		}
		return to
	case v.Kind() == reflect.Pointer && !v.IsNil() && holdsFigures(v.Type().Elem()):
		to := reflect.New(v.Type().Elem())
		to.Elem().Set(inUnits(v.Elem(), system))
		return to
	}
	return v
}

// holdsFigures tells whether there may be a figure or a sentence in a type: those of this package may hold one.
func holdsFigures(t reflect.Type) bool {
	for t.Kind() == reflect.Slice || t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return t.Kind() == reflect.String || t.Kind() == reflect.Struct && strings.HasPrefix(t.PkgPath(), "oakum/assess")
}

// in is the figure in the partner of its unit. One that says more than its number ("17 t, of 18 t allowed") keeps its number and has
// its words retold.
func (f Figure) in(system quantity.System) Figure {
	f.Label, f.From, f.Note = quantity.Retell(system, f.Label), quantity.Retell(system, f.From), quantity.Retell(system, f.Note)
	unit := quantity.In(system, f.Unit)
	if f.Value == nil || unit == f.Unit || unit == "" {
		f.Text = quantity.Retell(system, f.Text)
		return f
	}
	text, ok := f.retold(unit)
	if !ok {
		f.Text = quantity.Retell(system, f.Text)
		return f
	}
	f.Text, f.Declared = text, f.Value
	for _, x := range []**float64{&f.Value, &f.P10, &f.P50, &f.P90} {
		if *x != nil {
			if y, err := quantity.Convert(**x, f.Unit, unit); err == nil {
				*x = new(field.Trim(y))
			}
		}
	}
	f.Unit = unit
	return f
}

// retold is the text of the figure in another unit, where its text is that of its number or of its range.
func (f Figure) retold(unit string) (string, bool) {
	base := func(x float64) float64 {
		y, err := quantity.ToBase(x, f.Unit)
		if err != nil {
			return math.NaN()
		}
		return y
	}
	if f.P10 != nil && f.P90 != nil && f.Text == quantity.Range(base(*f.P10), base(*f.P90), f.Unit) {
		return quantity.Range(base(*f.P10), base(*f.P90), unit), true
	}
	if f.Text == quantity.Format(base(*f.Value), f.Unit, -1) {
		return quantity.Format(base(*f.Value), unit, -1), true
	}
	return "", false
}
