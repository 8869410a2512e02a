package field

import (
	"encoding"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"oakum/quantity"
)

// Given says how one value arrived.
type Given struct {
	Text  string // as typed, where it was text
	Unit  string // the unit it was given in
	Basis Basis  // what the giver said of it, or Assumed for a default
	Note  string
	Dist  *Dist // how uncertain, where known
}

// Input is a struct filled from loose values, with how each came, by path ("zones[2].area").
type Input struct {
	Given map[string]Given
	loose []leaf
}

type leaf struct {
	at   *float64
	dist Dist
}

// Fill decodes loose values (as encoding/json gives them with UseNumber, or text from cells and forms) into the struct that to points to.
// Numbers are taken in the declared unit, objects {"value","unit","sd"} and {"low","likely","high","unit"} are converted, text goes
// through quantity.ParseOne, which refuses a text with several meanings. What is absent takes its default. Unknown keys, wrong dimensions and values out of bounds are refused with an *Error.
func Fill(to any, values map[string]any) (*Input, error) {
	in := &Input{Given: map[string]Given{}}
	if err := in.group("", Of(reflect.TypeOf(to)), values, reflect.ValueOf(to).Elem()); err != nil {
		return nil, err
	}
	return in, nil
}

// Defaults fills the defaults of the struct that to points to, leaving the rest alone.
func Defaults(to any) {
	v := reflect.ValueOf(to).Elem()
	in := &Input{Given: map[string]Given{}}
	for _, f := range Of(v.Type()) {
		if f.Default == "" {
			continue
		}
		if err := in.value(f.Key, f, looseDefault(f), v.FieldByIndex(f.index)); err != nil {
			panic(fmt.Sprintf("field: default of %s: %v", f.Key, err))
		}
	}
}

// Units returns the unit each scalar was given in, by path.
func (in *Input) Units() map[string]string {
	units := map[string]string{}
	for path, g := range in.Given {
		units[path] = g.Unit
	}
	return units
}

// Uncertain tells whether any value came with a spread.
func (in *Input) Uncertain() bool { return len(in.loose) > 0 }

// Draw sets every uncertain value of the struct to a sample; u gives a uniform number in (0, 1) for each.
func (in *Input) Draw(u func() float64) {
	for _, l := range in.loose {
		*l.at = l.dist.At(u())
	}
}

// Settle sets every uncertain value back to its central one.
func (in *Input) Settle() {
	for _, l := range in.loose {
		*l.at = l.dist.Centre()
	}
}

func (in *Input) group(path string, fields []Field, values map[string]any, v reflect.Value) error {
	for key := range values {
		if !slices.ContainsFunc(fields, func(f Field) bool { return f.Key == key }) {
			return Refuse(join(path, key), "%s is not a key here; the keys are %s", key, keys(fields))
		}
	}
	for _, f := range fields {
		raw, ok := values[f.Key]
		p := join(path, f.Key)
		if text, isText := raw.(string); isText && strings.TrimSpace(text) == "" && f.Type != Text {
			ok = false
		}
		if !ok || raw == nil {
			switch {
			case f.Default != "":
				raw = looseDefault(f)
			case f.Required:
				return Refuse(p, "%s is missing%s", p, inUnit(f))
			default:
				continue
			}
			if err := in.value(p, f, raw, v.FieldByIndex(f.index)); err != nil {
				return err
			}
			g := in.Given[p]
			g.Basis, g.Note = Assumed, "default"
			in.Given[p] = g
			continue
		}
		if err := in.value(p, f, raw, v.FieldByIndex(f.index)); err != nil {
			return err
		}
	}
	return nil
}

func looseDefault(f Field) any {
	if f.Type == Number || f.Type == Integer {
		return json.Number(f.Default)
	}
	return f.Default
}

func inUnit(f Field) string {
	switch {
	case f.Type == Number && f.Unit != "" && f.Unit != "-":
		return ": give it in " + f.Unit
	case f.Type == Enum:
		return ": one of " + strings.Join(f.Enum, ", ")
	case f.Type == Table:
		return ": give a list of rows with " + keys(f.Fields)
	}
	return ""
}

func keys(fields []Field) string {
	names := make([]string, len(fields))
	for i, f := range fields {
		names[i] = f.Key
	}
	return strings.Join(names, ", ")
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func (in *Input) value(path string, f Field, raw any, v reflect.Value) error {
	if v.Kind() == reflect.Pointer {
		p := reflect.New(v.Type().Elem())
		if err := in.value(path, f, raw, p.Elem()); err != nil {
			return err
		}
		v.Set(p)
		return nil
	}
	switch f.Type {
	case Number:
		return in.number(path, f, raw, v)
	case Integer:
		return in.integer(path, f, raw, v)
	case Boolean:
		return in.boolean(path, raw, v)
	case Text, Enum, Date:
		return in.text(path, f, raw, v)
	case List, Grid, Table:
		return in.list(path, f, raw, v)
	case Group:
		m, ok := raw.(map[string]any)
		if !ok {
			return Refuse(path, "%s must be an object with %s", path, keys(f.Fields))
		}
		return in.group(path, f.Fields, m, v)
	}
	return Refuse(path, "%s can't be read", path)
}

func (in *Input) list(path string, f Field, raw any, v reflect.Value) error {
	items, ok := raw.([]any)
	if !ok {
		if text, isText := raw.(string); isText && f.Type == List {
			items, ok = cells(text), true
		}
		if m, isObject := raw.(map[string]any); isObject && pairs(f) {
			items, ok = rowsOf(f, m), true
		}
	}
	if !ok {
		return Refuse(path, "%s must be a list", path)
	}
	most := f.Most
	if most == 0 {
		most = 1_000_000
	}
	if len(items) > most {
		return Refuse(path, "%s has %d entries; at most %d are taken", path, len(items), most)
	}
	if v.Kind() == reflect.Array {
		if len(items) != v.Len() {
			return Refuse(path, "%s must have %d entries, not %d", path, v.Len(), len(items))
		}
	} else {
		v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	}
	element := f
	switch e := v.Type().Elem(); {
	case f.Type == Table:
		element.Type = Group
	case f.Type == Grid:
		element.Type, _ = sort(e, nil, func(string, ...any) {})
		element.Most = 0
	default:
		element.Type, _ = sort(e, f.Enum, func(string, ...any) {})
	}
	for i, item := range items {
		if bare(f, element, item, v.Index(i)) {
			continue
		}
		if err := in.value(fmt.Sprintf("%s[%d]", path, i), element, item, v.Index(i)); err != nil {
			return err
		}
	}
	return nil
}

// pairs tells whether a table has two columns, a name and a number, so that an object of numbers by name stands for its rows: {"crane": 1}.
func pairs(f Field) bool {
	return f.Type == Table && len(f.Fields) == 2 && f.Fields[0].Type == Text && (f.Fields[1].Type == Number || f.Fields[1].Type == Integer)
}

// rowsOf makes the rows of such an object, in the order of the names.
func rowsOf(f Field, m map[string]any) []any {
	rows := make([]any, 0, len(m))
	for _, name := range slices.Sorted(maps.Keys(m)) {
		rows = append(rows, map[string]any{f.Fields[0].Key: name, f.Fields[1].Key: m[name]})
	}
	return rows
}

// bare sets a plain number of a list without keeping how it was given: a hull has a hundred thousand of them.
func bare(f, element Field, item any, v reflect.Value) bool {
	n, ok := item.(json.Number)
	if !ok || f.Min != nil || f.Max != nil || f.Over != nil || f.Under != nil {
		return false
	}
	if element.Type == Integer {
		i, err := strconv.ParseInt(string(n), 10, 64)
		if err == nil {
			v.SetInt(i)
		}
		return err == nil
	}
	if element.Type != Number {
		return false
	}
	x, err := strconv.ParseFloat(string(n), 64)
	if err != nil {
		return false
	}
	if f.Unit != "" {
		if x, err = quantity.ToBase(x, f.Unit); err != nil {
			return false
		}
	}
	v.SetFloat(x)
	return true
}

// cells splits a cell that holds a list: entries are separated by semicolons or, failing those, by white space.
func cells(text string) []any {
	split := strings.Fields
	if strings.Contains(text, ";") {
		split = func(s string) []string { return strings.Split(s, ";") }
	}
	var out []any
	for _, part := range split(text) {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}

func (in *Input) boolean(path string, raw any, v reflect.Value) error {
	switch b := raw.(type) {
	case bool:
		v.SetBool(b)
		return nil
	case string:
		switch strings.ToLower(strings.TrimSpace(b)) {
		case "true", "yes", "y", "x", "1":
			v.SetBool(true)
			return nil
		case "false", "no", "n", "0":
			v.SetBool(false)
			return nil
		}
	}
	return Refuse(path, "%s must be true or false, not %v", path, said(raw))
}

func (in *Input) text(path string, f Field, raw any, v reflect.Value) error {
	s, ok := raw.(string)
	if n, isNumber := raw.(json.Number); isNumber {
		s, ok = n.String(), true
	}
	if !ok {
		return Refuse(path, "%s must be text", path)
	}
	in.Given[path] = Given{Text: s}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		if err := u.UnmarshalText([]byte(s)); err != nil {
			return Refuse(path, "%v", err)
		}
		return nil
	}
	if f.Enum != nil && s != "" && !slices.Contains(f.Enum, s) {
		return Refuse(path, "%s must be one of %s, not %q", path, strings.Join(f.Enum, ", "), s)
	}
	v.SetString(s)
	return nil
}

func (in *Input) integer(path string, f Field, raw any, v reflect.Value) error {
	var text string
	switch n := raw.(type) {
	case json.Number:
		text = n.String()
	case string:
		text = strings.TrimSpace(n)
	case float64:
		text = strconv.FormatFloat(n, 'f', -1, 64)
	case map[string]any:
		if unit, _ := n["unit"].(string); unit != "" && unit != "-" {
			return Refuse(path, "%s is a count and takes no unit: %q", path, unit)
		}
		return in.integer(path, f, n["value"], v)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x != math.Trunc(x) || math.Abs(x) > 1<<53 {
		return Refuse(path, "%s must be a whole number, not %v", path, said(raw))
	}
	if err := within(path, f, x); err != nil {
		return err
	}
	v.SetInt(int64(x))
	in.Given[path] = Given{Text: text}
	return nil
}

func textual(t reflect.Type) bool {
	return t.Kind() != reflect.Float64 && reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

// Object reads one JSON object loosely, as Fill wants it. A NaN or infinity written into it is named by its key.
func Object(raw []byte) (map[string]any, error) {
	d := json.NewDecoder(strings.NewReader(string(raw)))
	d.UseNumber()
	var values map[string]any
	if err := d.Decode(&values); err != nil || values == nil {
		if key, word := notFinite(raw); key != "" {
			return nil, Refuse(key, "%s must be a finite number, not %s", key, word)
		}
		if err != nil {
			return nil, Refuse("", "the input is not one JSON object: %v", err)
		}
		return nil, Refuse("", "the input is not one JSON object")
	}
	if d.More() {
		return nil, Refuse("", "the input holds more than one JSON object")
	}
	return values, nil
}

// Base returns the quantity base unit of a field's declared unit.
func (f Field) Base() string { return quantity.BaseUnit(f.Unit) }
