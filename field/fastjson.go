package field

import (
	"reflect"
	"slices"
	"strconv"
	"unicode/utf8"

	"oakum/quantity"
)

// fastJSON reads a flat object of plain values. It gives up, having perhaps set some fields, on anything else: the long way then reads it
// again from the start and refuses by name.
func (c *Codec) fastJSON(raw []byte, to reflect.Value) bool {
	r := scanner{raw: raw}
	given := make([]bool, len(c.slots))
	if !r.take('{') {
		return false
	}
	for first := true; !r.take('}'); first = false {
		if !first && !r.take(',') {
			return false
		}
		key, ok := r.text()
		if !ok || !r.take(':') {
			return false
		}
		i, known := c.index[string(key)]
		if !known || given[i] || !r.value(&c.slots[i], to) {
			return false
		}
		given[i] = true
	}
	if !r.end() {
		return false
	}
	return c.Finish(to, given) == nil
}

type scanner struct {
	raw []byte
	at  int
}

func (r *scanner) space() {
	for r.at < len(r.raw) {
		switch r.raw[r.at] {
		case ' ', '\t', '\n', '\r':
			r.at++
		default:
			return
		}
	}
}

func (r *scanner) take(c byte) bool {
	r.space()
	if r.at < len(r.raw) && r.raw[r.at] == c {
		r.at++
		return true
	}
	return false
}

func (r *scanner) end() bool {
	r.space()
	return r.at == len(r.raw)
}

// text reads a string without escapes.
func (r *scanner) text() ([]byte, bool) {
	if !r.take('"') {
		return nil, false
	}
	for i := r.at; i < len(r.raw); i++ {
		switch c := r.raw[i]; {
		case c == '"':
			s := r.raw[r.at:i]
			r.at = i + 1
			return s, utf8.Valid(s)
		case c == '\\' || c < ' ':
			return nil, false
		}
	}
	return nil, false
}

// number reads the characters of a number.
func (r *scanner) number() (float64, string, bool) {
	r.space()
	i := r.at
	for i < len(r.raw) && (r.raw[i] >= '0' && r.raw[i] <= '9' || r.raw[i] == '-' || r.raw[i] == '.' || r.raw[i] == 'e' || r.raw[i] == 'E' || r.raw[i] == '+') {
		i++
	}
	s := string(r.raw[r.at:i])
	if !jsonNumber(s) {
		return 0, "", false
	}
	x, err := strconv.ParseFloat(s, 64)
	r.at = i
	return x, s, err == nil
}

func (r *scanner) word(w string) bool {
	r.space()
	if len(r.raw)-r.at >= len(w) && string(r.raw[r.at:r.at+len(w)]) == w {
		r.at += len(w)
		return true
	}
	return false
}

func (r *scanner) value(s *slot, to reflect.Value) bool {
	switch s.Type {
	case Number:
		x, _, ok := r.number()
		return ok && s.setNumber(to, x) == nil
	case Integer:
		_, text, ok := r.number()
		n, fits := whole(text)
		if !ok || !fits || s.bounded && within(s.Key, s.Field, float64(n)) != nil {
			return false
		}
		s.target(to).SetInt(n)
		return true
	case Boolean:
		is := r.word("true")
		if !is && !r.word("false") {
			return false
		}
		s.target(to).SetBool(is)
		return true
	case Text, Enum, Date:
		return r.words(s, to)
	case List:
		return r.list(s, to)
	default:
		return false
	}
}

func (r *scanner) words(s *slot, to reflect.Value) bool {
	b, ok := r.text()
	if !ok || len(b) == 0 {
		return false
	}
	if s.Type == Enum {
		i := slices.IndexFunc(s.Enum, func(e string) bool { return e == string(b) })
		if i >= 0 {
			s.target(to).SetString(s.Enum[i])
		}
		return i >= 0
	}
	text := string(b)
	if s.Type == Date {
		d, ok := isoDate(text)
		if ok {
			s.target(to).Set(reflect.ValueOf(d))
		}
		return ok
	}
	if s.textual || s.elem.Kind() != reflect.String || Tidy(text) != text {
		return false
	}
	s.target(to).SetString(text)
	return true
}

// list reads a list of plain numbers without bounds, or of plain words.
func (r *scanner) list(s *slot, to reflect.Value) bool {
	if s.pointer || s.elem.Kind() != reflect.Slice || s.Enum != nil || !r.take('[') {
		return false
	}
	v := to.FieldByIndex(s.index)
	switch list := v.Addr().Interface().(type) {
	case *[]float64:
		return r.floats(s, list)
	case *[]string:
		return r.strings(s, list)
	}
	return false
}

func (r *scanner) floats(s *slot, list *[]float64) bool {
	var out []float64
	for !r.take(']') {
		if len(out) > 0 && !r.take(',') {
			return false
		}
		x, _, ok := r.number()
		if !ok || s.bounded && within(s.Key, s.Field, x) != nil {
			return false
		}
		out = append(out, x*s.scale+s.offset)
	}
	*list = out
	return s.Most == 0 || len(out) <= s.Most
}

func (r *scanner) strings(s *slot, list *[]string) bool {
	var out []string
	for !r.take(']') {
		if len(out) > 0 && !r.take(',') {
			return false
		}
		b, ok := r.text()
		if !ok || len(b) == 0 || Tidy(string(b)) != string(b) {
			return false
		}
		out = append(out, string(b))
	}
	*list = out
	return s.Most == 0 || len(out) <= s.Most
}

// jsonNumber tells whether a text is a number by the grammar of JSON (RFC 8259 section 6).
func jsonNumber(s string) bool {
	i := 0
	digits := func() bool {
		start := i
		for i < len(s) && s[i] >= '0' && s[i] <= '9' {
			i++
		}
		return i > start
	}
	if i < len(s) && s[i] == '-' {
		i++
	}
	if i < len(s) && s[i] == '0' {
		i++
	} else if !digits() {
		return false
	}
	if i < len(s) && s[i] == '.' {
		i++
		if !digits() {
			return false
		}
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		if !digits() {
			return false
		}
	}
	return i == len(s) && i > 0
}

// plainNumber tells whether a cell is a number that has one meaning: JSON's grammar, and a leading point (.465). A number with exactly three
// decimals and a short whole part ("1.234") is plain too: a column that means thousands by it must say so before it comes here.
func plainNumber(s string) bool {
	if len(s) > 1 && s[0] == '.' {
		return jsonNumber("0" + s)
	}
	return jsonNumber(s)
}

// isoDate reads 2023-05-04, 2023-05 and 2023.
func isoDate(s string) (quantity.Date, bool) {
	part := func(from, to int) int {
		n := 0
		for i := from; i < to; i++ {
			if s[i] < '0' || s[i] > '9' {
				return -1
			}
			n = n*10 + int(s[i]-'0')
		}
		return n
	}
	var year, month, day int
	switch {
	case len(s) == 4:
		year = part(0, 4)
	case len(s) == 7 && s[4] == '-':
		year, month = part(0, 4), part(5, 7)
	case len(s) == 10 && s[4] == '-' && s[7] == '-':
		year, month, day = part(0, 4), part(5, 7), part(8, 10)
	default:
		return quantity.Date{}, false
	}
	if year < 0 || month < 0 || day < 0 || len(s) > 4 && month == 0 || len(s) > 7 && day == 0 {
		return quantity.Date{}, false
	}
	d, err := quantity.NewDate(year, month, day)
	return d, err == nil
}
