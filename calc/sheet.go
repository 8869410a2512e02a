package calc

import (
	"encoding/json"
	"math"
	"reflect"

	"oakum/field"
	"oakum/quantity"
)

// Sheet is one calculation as data, ready to be shown, printed, checked by hand and signed.
type Sheet struct {
	ID       string   `json:"id"`     // where it stands in a brief: method@subject; the method's own ID otherwise
	Method   string   `json:"method"` // catalogue ID
	Title    string   `json:"title"`
	Subject  string   `json:"subject,omitempty"` // what it was worked for, in words: "strake C, frame 37½, port"
	About    string   `json:"about"`
	Inputs   []Line   `json:"inputs"`
	Steps    []Step   `json:"steps"`
	Results  []Line   `json:"results"`
	Warnings []string `json:"warnings"`
	Cautions []string `json:"cautions"`
	Sources  []string `json:"sources"`
	Holds    string   `json:"holds"`
	Accuracy string   `json:"accuracy"`
}

// Line is one input or result. Value is in Unit (numbers), or a word, a truth, a list or a table.
type Line struct {
	Key    string      `json:"key"`
	Symbol string      `json:"symbol,omitempty"`
	Label  string      `json:"label"`
	Value  any         `json:"value"`
	Unit   string      `json:"unit"`
	Text   string      `json:"text"` // formatted for people
	Basis  field.Basis `json:"basis,omitempty"`
	Note   string      `json:"basis_note,omitempty"`
	Typed  string      `json:"typed,omitempty"`
	P10    *float64    `json:"p10,omitempty"`
	P50    *float64    `json:"p50,omitempty"`
	P90    *float64    `json:"p90,omitempty"`

	// Fields describes the columns where Value is a table.
	Fields []field.Field `json:"fields,omitempty"`
	Spread *field.Dist   `json:"-"`

	raw reflect.Value
}

// Step is one line of working, in base units. Formula is over symbols and evaluates to Value; it is empty where the step is a table, an
// integral or a solve, and Text then says what was done.
type Step struct {
	Symbol  string  `json:"symbol"`
	Formula string  `json:"formula"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	Text    string  `json:"text"`
}

func symbolOf(f field.Field) string {
	if f.Symbol != "" {
		return f.Symbol
	}
	return f.Key
}

// unitOf is the base unit a step's value stands in.
func unitOf(f field.Field) string {
	if f.Unit == "" {
		return "-"
	}
	return f.Base()
}

func lineOf(f field.Field, v reflect.Value) (Line, bool) {
	value, ok := f.Plain(v)
	if !ok {
		return Line{}, false
	}
	unit := f.Unit
	if unit == "" && (f.Type == field.Number || f.Type == field.Integer) {
		unit = "-"
	}
	l := Line{Key: f.Key, Symbol: f.Symbol, Label: f.Label, Value: value, Unit: unit, Fields: f.Fields, raw: f.Get(v)}
	if x, isNumber := l.base(); isNumber {
		digits := -1
		if f.Type == field.Integer {
			digits = 0 // 56 blocks, not 56.00
		}
		l.Text = quantity.Format(x, unit, digits)
		if unit == "s" && math.Abs(x) >= 120 {
			l.Text += " (" + quantity.Lasting(x) + ")"
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			l.Value = nil
			l.Text = "not defined"
		}
	}
	return l, true
}

// base returns the number in base units.
func (l Line) base() (float64, bool) {
	v := l.raw
	if !v.IsValid() {
		return 0, false
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return 0, false
		}
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.Float64:
		return v.Float(), true
	case reflect.Int, reflect.Int64:
		return float64(v.Int()), true
	}
	return 0, false
}

// Result returns the result line with that key.
func (s Sheet) Result(key string) (Line, bool) {
	for _, l := range s.Results {
		if l.Key == key {
			return l, true
		}
	}
	return Line{}, false
}

// Contract is the sheet in the form of the calling contract: method, results by key, steps, warnings, cautions, sources.
func (s Sheet) Contract() ([]byte, error) {
	return json.MarshalIndent(struct {
		Method   string     `json:"method"`
		Inputs   lineObject `json:"inputs"`
		Results  lineObject `json:"results"`
		Steps    []Step     `json:"steps"`
		Warnings []string   `json:"warnings"`
		Cautions []string   `json:"cautions"`
		Sources  []string   `json:"sources"`
	}{s.Method, s.Inputs, s.Results, s.Steps, s.Warnings, s.Cautions, s.Sources}, "", "  ")
}

// lineObject prints lines as one object by key, in their order.
type lineObject []Line

// MarshalJSON implements json.Marshaler.
func (ls lineObject) MarshalJSON() ([]byte, error) {
	out := []byte{'{'}
	for i, l := range ls {
		if i > 0 {
			out = append(out, ',')
		}
		name, _ := json.Marshal(l.Key)
		body, err := json.Marshal(struct {
			Value  any               `json:"value"`
			Unit   string            `json:"unit"`
			Symbol string            `json:"symbol,omitempty"`
			Basis  field.Basis       `json:"basis,omitempty"`
			Units  map[string]string `json:"units,omitempty"`
			P10    *float64          `json:"p10,omitempty"`
			P50    *float64          `json:"p50,omitempty"`
			P90    *float64          `json:"p90,omitempty"`
		}{l.Value, l.Unit, l.Symbol, l.Basis, columnUnits(l.Fields), l.P10, l.P50, l.P90})
		if err != nil {
			return nil, err
		}
		out = append(append(append(out, name...), ':'), body...)
	}
	return append(out, '}'), nil
}

func columnUnits(fields []field.Field) map[string]string {
	var units map[string]string
	for _, f := range fields {
		if f.Unit != "" {
			if units == nil {
				units = map[string]string{}
			}
			units[f.Key] = f.Unit
		}
	}
	return units
}
