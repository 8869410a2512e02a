package field

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"oakum/quantity"
)

// Codec reads and writes the values of one struct type at full speed. It gives what Fill and Values give; a value that is not plain (a text
// with a unit, an object, a refusal) goes the long way through them. Texts are tidied: outer space goes, line ends become "\n", and an empty
// list is no list.
type Codec struct {
	slots []slot
	index map[string]int
	proto []int // slots with a default
}

type slot struct {
	Field
	elem          reflect.Type // without pointer
	pointer       bool
	textual       bool
	scale, offset float64
	bounded       bool
}

var codecs sync.Map // reflect.Type -> *Codec

// CodecOf returns the codec of a struct type.
func CodecOf(t reflect.Type) *Codec {
	if c, ok := codecs.Load(t); ok {
		return c.(*Codec)
	}
	c := &Codec{index: map[string]int{}}
	for i, f := range Of(t) {
		s := slot{Field: f, elem: t.FieldByIndex(f.index).Type, scale: 1, bounded: f.Min != nil || f.Max != nil || f.Over != nil || f.Under != nil}
		if s.elem.Kind() == reflect.Pointer {
			s.pointer, s.elem = true, s.elem.Elem()
		}
		s.textual = textual(s.elem)
		if u, ok := quantity.Lookup(f.Unit); ok && f.Unit != "" {
			s.scale, s.offset = u.Scale, u.Offset
		}
		c.slots = append(c.slots, s)
		c.index[f.Key] = i
		if f.Default != "" {
			c.proto = append(c.proto, i)
		}
	}
	codecs.Store(t, c)
	return c
}

// Len is the number of fields.
func (c *Codec) Len() int { return len(c.slots) }

// Index gives the number of the field with this key, -1 where there is none.
func (c *Codec) Index(key string) int {
	if i, ok := c.index[key]; ok {
		return i
	}
	return -1
}

// Field gives a field by its number.
func (c *Codec) Field(i int) Field { return c.slots[i].Field }

// Finish fills the defaults of what was not given and names the first required field that was not. given holds one entry for each field.
func (c *Codec) Finish(to reflect.Value, given []bool) error {
	for _, i := range c.proto {
		if !given[i] {
			s := &c.slots[i]
			in := &Input{Given: map[string]Given{}}
			if err := in.value(s.Key, s.Field, looseDefault(s.Field), to.FieldByIndex(s.index)); err != nil {
				return err
			}
		}
	}
	for i := range c.slots {
		if s := &c.slots[i]; s.Required && !given[i] {
			return Refuse(s.Key, "%s is missing%s", s.Key, inUnit(s.Field))
		}
	}
	return nil
}

// ReadJSON reads one JSON object into the struct. typed holds, by key, the text of every number that was not given as a plain number in the
// declared unit.
func (c *Codec) ReadJSON(raw []byte, to reflect.Value) (typed map[string]string, err error) {
	if c.fastJSON(raw, to) {
		return nil, nil
	}
	to.SetZero()
	values, err := Object(raw)
	if err != nil {
		return nil, err
	}
	in := &Input{Given: map[string]Given{}}
	if err := in.group("", c.fields(), values, to); err != nil {
		return nil, err
	}
	if in.Uncertain() {
		return nil, Refuse("", "a record keeps one number a field: give a spread in the fields meant for it")
	}
	for i := range c.slots {
		c.slots[i].tidy(to.FieldByIndex(c.slots[i].index))
	}
	for i := range c.slots {
		s := &c.slots[i]
		v := to.FieldByIndex(s.index)
		switch blank := v.Kind() == reflect.String && v.Len() == 0; {
		case blank && s.Required:
			return nil, Refuse(s.Key, "%s is missing%s", s.Key, inUnit(s.Field))
		case blank && s.Default != "":
			v.SetString(s.Default)
		}
	}
	return c.typed(in, values), nil
}

func (c *Codec) fields() []Field {
	fields := make([]Field, len(c.slots))
	for i := range c.slots {
		fields[i] = c.slots[i].Field
	}
	return fields
}

func (c *Codec) typed(in *Input, values map[string]any) map[string]string {
	var typed map[string]string
	for i := range c.slots {
		s := &c.slots[i]
		if s.Type != Number && s.Type != Integer {
			continue
		}
		text := ""
		switch raw := values[s.Key].(type) {
		case string:
			text = strings.TrimSpace(raw)
		case map[string]any:
			unit, _ := raw["unit"].(string)
			text = strings.TrimSpace(fmt.Sprint(raw["value"], " ", unit))
		}
		if text == "" || in.Given[s.Key].Text == "" && s.Type == Integer {
			continue
		}
		if typed == nil {
			typed = map[string]string{}
		}
		typed[s.Key] = text
	}
	return typed
}

// tidy brings a text or a list of words into the form that is kept.
func (s *slot) tidy(v reflect.Value) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.String:
		if t := Tidy(v.String()); t != v.String() {
			v.SetString(t)
		}
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.String {
			v.Set(reflect.ValueOf(tidyWords(v.Interface())).Convert(v.Type()))
		}
		if v.Len() == 0 {
			v.SetZero()
		}
	default:
	}
}

func tidyWords(list any) []string {
	var kept []string
	v := reflect.ValueOf(list)
	for i := range v.Len() {
		if t := Tidy(v.Index(i).String()); t != "" {
			kept = append(kept, t)
		}
	}
	return kept
}

// Tidy takes the outer space off a text, makes every line end "\n", and replaces what is not UTF-8.
func Tidy(s string) string {
	if strings.ContainsRune(s, '\r') {
		s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	}
	return strings.TrimSpace(strings.ToValidUTF8(s, "�"))
}

// SetText sets one field from a cell. column is the unit the cell's numbers are in where none is written, "" for the declared one. typed is
// true where the cell said more than the plain number. An empty cell is the caller's to leave out.
func (c *Codec) SetText(to reflect.Value, i int, cell, column string) (typed bool, err error) {
	s := &c.slots[i]
	if column == "" || column == s.Unit {
		if done, typed, err := s.plainText(to, cell); done {
			return typed, err
		}
		column = s.Unit
	}
	var raw any = cell
	switch s.Type {
	case Number:
		if raw, err = inColumn(s.Key, cell, column, s.Unit); err != nil {
			return false, err
		}
	case List:
		if raw, err = s.cellList(cell, column); err != nil {
			return false, err
		}
	default:
	}
	in := &Input{Given: map[string]Given{}}
	v := to.FieldByIndex(s.index)
	if err := in.value(s.Key, s.Field, raw, v); err != nil {
		return false, err
	}
	s.tidy(v)
	return s.Type == Number || s.Type == Integer, nil
}

// plainText sets a number, text or enum that needs no more than its own characters.
func (s *slot) plainText(to reflect.Value, cell string) (done, typed bool, err error) {
	switch {
	case s.Type == Number && plainNumber(cell):
		x, fits := float(cell)
		if !fits {
			return false, false, nil // the long way says why
		}
		if err := s.setNumber(to, x); err != nil {
			return true, false, err
		}
		var b [32]byte
		return true, string(appendNumber(b[:0], x)) != cell, nil
	case s.Type == Integer:
		n, fits := whole(cell)
		if !fits {
			return false, false, nil // the long way says why
		}
		if err := within(s.Key, s.Field, float64(n)); err != nil {
			return true, false, err
		}
		s.target(to).SetInt(n)
		return true, strconv.FormatInt(n, 10) != cell, nil
	case s.Type == Text && !s.textual && s.elem.Kind() == reflect.String:
		t := Tidy(cell)
		s.target(to).SetString(t)
		return true, false, nil
	case s.Type == Enum && s.elem.Kind() == reflect.String:
		if i := slices.Index(s.Enum, cell); i >= 0 {
			s.target(to).SetString(s.Enum[i])
			return true, false, nil
		}
	case s.Type == Date:
		if d, ok := isoDate(cell); ok {
			s.target(to).Set(reflect.ValueOf(d))
			return true, false, nil
		}
	}
	return false, false, nil
}

func float(cell string) (x float64, fits bool) {
	x, err := strconv.ParseFloat(cell, 64)
	return x, err == nil
}

// whole reads a whole number that a float64 can hold.
func whole(cell string) (n int64, fits bool) {
	n, err := strconv.ParseInt(cell, 10, 64)
	return n, err == nil && n <= 1<<53 && n >= -1<<53
}

// inColumn reads a number in the unit of its column and gives it as JSON would carry it in that unit.
func inColumn(key, cell, column, declared string) (any, error) {
	if column == declared {
		if plainNumber(cell) && cell[0] != '.' {
			return json.Number(cell), nil
		}
		return cell, nil
	}
	if !quantity.SameDimension(column, unitOr(declared)) {
		return nil, Refuse(key, "%s is wanted in %s, not in %s", key, unitOr(declared), column)
	}
	if plainNumber(cell) {
		return map[string]any{"value": json.Number(cell), "unit": column}, nil
	}
	r, err := quantity.ParseOne(cell, column)
	if err != nil {
		return nil, Refuse(key, "%s: %v", key, err)
	}
	if err := settled(key, r); err != nil {
		return nil, err
	}
	x, err := quantity.FromBase(r.Value, column)
	if err != nil {
		return nil, Refuse(key, "%s: %v", key, err)
	}
	return map[string]any{"value": x, "unit": column}, nil
}

func (s *slot) cellList(cell, column string) (any, error) {
	words := SplitList(cell)
	items := make([]any, len(words))
	numbers := s.elem.Elem().Kind() == reflect.Float64
	for i, w := range words {
		items[i] = w
		if numbers {
			item, err := inColumn(s.Key, w, column, s.Unit)
			if err != nil {
				return nil, err
			}
			items[i] = item
		}
	}
	return items, nil
}

func (s *slot) target(to reflect.Value) reflect.Value {
	v := to.FieldByIndex(s.index)
	if s.pointer {
		v.Set(reflect.New(s.elem))
		return v.Elem()
	}
	return v
}

// setNumber sets a number given in the declared unit.
func (s *slot) setNumber(to reflect.Value, x float64) error {
	base := x
	if s.scale != 1 || s.offset != 0 {
		base = x*s.scale + s.offset
	}
	if s.bounded {
		if err := within(s.Key, s.Field, x); err != nil {
			return err
		}
	}
	s.target(to).SetFloat(base)
	return nil
}

// Text gives one field as a cell; ok is false where it is absent. Numbers stand in the declared unit.
func (c *Codec) Text(v reflect.Value, i int) (cell string, ok bool) {
	s := &c.slots[i]
	f := v.FieldByIndex(s.index)
	if s.Type == List {
		return s.listText(f)
	}
	b, ok := s.append(nil, f, false)
	return string(b), ok
}

func (s *slot) listText(f reflect.Value) (string, bool) {
	if f.Len() == 0 {
		return "", false
	}
	words := make([]string, f.Len())
	for i := range words {
		b, _ := s.append(nil, f.Index(i), false)
		words[i] = string(b)
	}
	return JoinList(words), true
}

// AppendJSON appends the present fields as one JSON object, in the order they are declared, numbers in their declared units.
func (c *Codec) AppendJSON(dst []byte, v reflect.Value) []byte {
	dst = append(dst, '{')
	first := true
	for i := range c.slots {
		s := &c.slots[i]
		start := len(dst)
		if !first {
			dst = append(dst, ',')
		}
		dst = append(dst, '"')
		dst = append(dst, s.Key...)
		dst = append(dst, '"', ':')
		written, ok := s.append(dst, v.FieldByIndex(s.index), true)
		if !ok {
			dst = dst[:start]
			continue
		}
		dst, first = written, false
	}
	return append(dst, '}')
}

// append writes one value as JSON, or as the plain text of a cell.
func (s *slot) append(dst []byte, v reflect.Value, asJSON bool) ([]byte, bool) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return dst, false
		}
		v = v.Elem()
	}
	switch k := v.Kind(); {
	case k == reflect.Float64:
		x := v.Float()
		if s.scale != 1 || s.offset != 0 {
			x = (x - s.offset) / s.scale
		}
		return appendNumber(dst, Trim(x)), true
	case k == reflect.String:
		return appendText(dst, v.String(), asJSON)
	case k == reflect.Int || k == reflect.Int64:
		return strconv.AppendInt(dst, v.Int(), 10), true
	case k == reflect.Bool && asJSON:
		return strconv.AppendBool(dst, v.Bool()), true
	case k == reflect.Bool:
		return append(dst, map[bool]string{true: "yes", false: "no"}[v.Bool()]...), true
	case k == reflect.Slice && asJSON:
		return s.appendList(dst, v)
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		b, err := m.MarshalText()
		if err != nil {
			return dst, false
		}
		return appendText(dst, string(b), asJSON)
	}
	if x, ok := s.plain(v); ok && asJSON {
		b, err := json.Marshal(x)
		return append(dst, b...), err == nil
	}
	return dst, false
}

func (s *slot) appendList(dst []byte, v reflect.Value) ([]byte, bool) {
	if v.Len() == 0 {
		return dst, false
	}
	if s.Type == Table {
		b, err := json.Marshal(mustPlain(s.Field, v))
		return append(dst, b...), err == nil
	}
	dst = append(dst, '[')
	for i := range v.Len() {
		if i > 0 {
			dst = append(dst, ',')
		}
		written, ok := s.append(dst, v.Index(i), true)
		switch {
		case ok:
			dst = written
		case v.Index(i).Kind() == reflect.Slice:
			dst = append(dst, '[', ']')
		default:
			dst = append(dst, '"', '"')
		}
	}
	return append(dst, ']'), true
}

func mustPlain(f Field, v reflect.Value) any {
	x, _ := f.plain(v)
	return x
}

func appendText(dst []byte, s string, asJSON bool) ([]byte, bool) {
	if s == "" {
		return dst, false
	}
	if !asJSON {
		return append(dst, s...), true
	}
	b, err := json.Marshal(s)
	return append(dst, b...), err == nil
}

// appendNumber writes a finite number as JSON does: no exponent between 1e-6 and 1e21.
func appendNumber(dst []byte, x float64) []byte {
	if a := math.Abs(x); a != 0 && (a < 1e-6 || a >= 1e21) {
		return strconv.AppendFloat(dst, x, 'e', -1, 64)
	}
	if x == 0 {
		x = 0 // minus nothing is nothing
	}
	return strconv.AppendFloat(dst, x, 'f', -1, 64)
}
