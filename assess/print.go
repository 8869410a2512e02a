package assess

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"
	"reflect"
	"slices"
	"time"
)

// printOf is the hash over a step and its inputs: every field, exported or not, every element, every bit of a number. It is not ok where an input
// holds what has no lasting value of its own, such as a function.
func printOf(step string, inputs []any) (key imprint, ok bool) {
	p := printer{to: sha256.New(), ok: true}
	p.text(step)
	for _, in := range inputs {
		p.value(reflect.ValueOf(in), 0)
	}
	p.flush()
	p.to.Sum(key[:0])
	return key, p.ok
}

// printer writes values to a hash so that no two differ and write the same: lengths before contents, types before what an interface holds.
type printer struct {
	to  hash.Hash
	buf []byte
	ok  bool
}

func (p *printer) flush() {
	p.to.Write(p.buf)
	p.buf = p.buf[:0]
}

func (p *printer) number(u uint64) {
	if len(p.buf) > 4000 {
		p.flush()
	}
	p.buf = binary.LittleEndian.AppendUint64(p.buf, u)
}

func (p *printer) text(s string) {
	p.number(uint64(len(s)))
	p.buf = append(p.buf, s...)
}

// deepest is how far values may lie within values; no input comes near.
const deepest = 40

var timeType = reflect.TypeFor[time.Time]()

func (p *printer) value(v reflect.Value, depth int) {
	if depth > deepest {
		p.ok = false
	}
	if !p.ok {
		return
	}
	switch v.Kind() {
	case reflect.Invalid:
		p.number(0)
	case reflect.Bool:
		bit := uint64(0)
		if v.Bool() {
			bit = 1
		}
		p.number(bit)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		p.number(uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		p.number(v.Uint())
	case reflect.Float64, reflect.Float32:
		p.number(math.Float64bits(v.Float()))
	case reflect.String:
		p.text(v.String())
	case reflect.Pointer, reflect.Interface:
		p.held(v, depth)
	case reflect.Slice, reflect.Array:
		p.list(v, depth)
	case reflect.Struct:
		p.fields(v, depth)
	case reflect.Map:
		p.pairs(v, depth)
	default:
		p.ok = false
	}
}

func (p *printer) held(v reflect.Value, depth int) {
	if v.IsNil() {
		p.number(0)
		return
	}
	p.number(1)
	if v.Kind() == reflect.Interface {
		t := v.Elem().Type()
		p.text(t.PkgPath() + "." + t.String())
	}
	p.value(v.Elem(), depth+1)
}

func (p *printer) list(v reflect.Value, depth int) {
	if v.Kind() == reflect.Slice && v.IsNil() {
		p.number(math.MaxUint64) // none is not the same as an empty one
		return
	}
	p.number(uint64(v.Len()))
	for i := range v.Len() {
		p.value(v.Index(i), depth+1)
	}
}

func (p *printer) fields(v reflect.Value, depth int) {
	if v.Type() == timeType {
		p.ok = false // a moment holds its zone by address: inputs carry moments as text
		return
	}
	for i := range v.NumField() {
		p.value(v.Field(i), depth+1)
	}
}

// pairs writes a map in the order of the prints of its pairs.
func (p *printer) pairs(v reflect.Value, depth int) {
	if v.IsNil() {
		p.number(math.MaxUint64)
		return
	}
	list := make([]string, 0, v.Len())
	for _, k := range v.MapKeys() {
		pair := printer{to: sha256.New(), ok: true}
		pair.value(k, depth+1)
		pair.value(v.MapIndex(k), depth+1)
		pair.flush()
		p.ok = p.ok && pair.ok
		list = append(list, string(pair.to.Sum(nil)))
	}
	slices.Sort(list)
	p.number(uint64(len(list)))
	for _, s := range list {
		p.text(s)
	}
}
