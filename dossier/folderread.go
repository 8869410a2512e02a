package dossier

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"oakum/field"
	"oakum/ship"
)

// Refused is a row, or a whole file, that could not be read. Its text is kept, so that nothing is lost.
type Refused struct {
	File   string `json:"file"`
	Line   int    `json:"line,omitempty"` // 0 for a whole file
	Field  string `json:"field,omitempty"`
	Reason string `json:"reason"`
	Text   string `json:"text,omitempty"` // the row as it stands in the file
}

// String says it in one line.
func (r Refused) String() string {
	at := r.File
	if r.Line > 0 {
		at = fmt.Sprintf("%s line %d", r.File, r.Line)
	}
	if r.Field != "" {
		at += ", " + r.Field
	}
	return at + ": " + r.Reason
}

// Reading is what came of reading a folder: the records that could be read, and every row that could not.
type Reading struct {
	Dossier *Dossier
	Refused []Refused
}

// Whole gives the dossier only where every row was read.
func (r Reading) Whole() (*Dossier, error) {
	if len(r.Refused) == 0 {
		return r.Dossier, nil
	}
	all := make([]error, len(r.Refused))
	for i, f := range r.Refused {
		all[i] = errors.New(f.String())
	}
	return nil, errors.Join(all...)
}

// ReadFolder reads the folder form. Rows without an ID are given one, and remember the row they came from. Files that are no CSV, other than
// ship.txt, are left alone.
func ReadFolder(fsys fs.FS) (Reading, error) {
	names, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return Reading{}, err
	}
	r := reader{fsys: fsys, out: Reading{Dossier: New()}, grids: map[string]bool{}, ids: map[string]spot{}, currency: "EUR"}
	for _, k := range kinds {
		i := slices.IndexFunc(names, func(e fs.DirEntry) bool { return e.Name() == k.File && !e.IsDir() })
		if i >= 0 {
			r.file(k)
		}
	}
	for _, e := range names {
		name := e.Name()
		if _, known := byFile[name]; known || e.IsDir() || r.grids[name] || path.Ext(name) != ".csv" {
			continue
		}
		r.refuse(Refused{File: name, Reason: "no kind of record has a file of this name, and no record names it as its table"})
	}
	if err := r.out.Dossier.Put(r.records...); err != nil {
		return Reading{}, err
	}
	return r.out, nil
}

type reader struct {
	fsys     fs.FS
	out      Reading
	records  []Record
	grids    map[string]bool
	ids      map[string]spot
	currency string
}

// spot is where a record was read.
type spot struct {
	file string
	line int
}

func (r *reader) refuse(f Refused) { r.out.Refused = append(r.out.Refused, f) }

func (r *reader) file(k Kind) {
	data, err := fs.ReadFile(r.fsys, k.File)
	if err != nil {
		r.refuse(Refused{File: k.File, Reason: err.Error()})
		return
	}
	if !utf8.Valid(data) {
		r.refuse(Refused{File: k.File, Reason: "the file is not UTF-8: save it as UTF-8 (" + badByte(data) + ")"})
		return
	}
	if k.Single {
		r.ship(k, data)
		return
	}
	r.rows(k, data)
}

func badByte(data []byte) string {
	line := 1
	for i := 0; i < len(data); {
		c, n := utf8.DecodeRune(data[i:])
		if c == utf8.RuneError && n == 1 {
			break
		}
		if c == '\n' {
			line++
		}
		i += n
	}
	return fmt.Sprintf("line %d", line)
}

// ship reads ship.txt. One bad line refuses the record: half a ship would be a wrong one.
func (r *reader) ship(k Kind, data []byte) {
	b := newBuilder(r, k)
	for _, l := range readText(data) {
		if l.fault != "" {
			r.refuse(Refused{File: k.File, Line: l.line, Reason: l.fault})
			b.bad = true
			continue
		}
		if u, ok := strings.CutPrefix(l.key, "currency"); ok && u == "" {
			r.currency = l.value
		}
	}
	for _, l := range readText(data) {
		if l.fault != "" {
			continue
		}
		col, err := columnNamed(k, b.codec, l.key, r.currency)
		if err == nil {
			value := l.value
			if col.head == "" && worded(b.codec.Field(col.field)) || col.head != "" {
				value = guard(value)
			}
			err = b.set(col, value)
		}
		if err != nil {
			key, reason := asField(err)
			r.refuse(Refused{File: k.File, Line: l.line, Field: key, Reason: reason, Text: l.key + ": " + l.value})
			b.bad = true
		}
	}
	if b.bad {
		return
	}
	if err := b.finish(k.File, 1); err != nil {
		key, reason := asField(err)
		r.refuse(Refused{File: k.File, Field: key, Reason: reason})
		return
	}
	if p, ok := b.body.Interface().(*ship.Particulars); ok {
		r.currency = p.Currency
	}
	r.records = append(r.records, b.record)
}

// rows reads the file of one kind.
func (r *reader) rows(k Kind, data []byte) {
	t := newTable(data)
	top, ok := t.next()
	if !ok {
		return
	}
	columns := make([]column, len(top.cells))
	seen := map[column]bool{}
	bad := top.fault != ""
	if bad {
		r.refuse(Refused{File: k.File, Line: 1, Reason: top.fault, Text: top.text})
	}
	for i, name := range top.cells {
		col, err := columnNamed(k, field.CodecOf(k.body), name, r.currency)
		if err == nil && seen[column{head: col.head, field: col.field}] {
			err = fmt.Errorf("the column %q stands twice", name)
		}
		if err != nil {
			r.refuse(Refused{File: k.File, Line: 1, Field: strings.TrimSpace(name), Reason: err.Error() + ": no row of the file was read", Text: top.text})
			bad = true
		}
		seen[column{head: col.head, field: col.field}] = true
		columns[i] = col
	}
	if bad {
		return
	}
	for line, ok := t.next(); ok; line, ok = t.next() {
		if !line.blank() {
			r.row(k, columns, line)
		}
	}
}

func (r *reader) row(k Kind, columns []column, line row) {
	refuse := func(key, reason string) {
		r.refuse(Refused{File: k.File, Line: line.line, Field: key, Reason: reason, Text: line.text})
	}
	switch {
	case line.fault != "":
		refuse("", line.fault)
		return
	case len(line.cells) > len(columns):
		refuse("", fmt.Sprintf("the row has %d cells under %d column heads", len(line.cells), len(columns)))
		return
	}
	b := newBuilder(r, k)
	for i, cell := range line.cells {
		if err := b.set(columns[i], cell); err != nil {
			refuse(asField(err))
			return
		}
	}
	if err := b.finish(k.File, line.line); err != nil {
		refuse(asField(err))
		return
	}
	r.records = append(r.records, b.record)
}

// builder makes one record out of cells.
type builder struct {
	r      *reader
	kind   Kind
	codec  *field.Codec
	body   reflect.Value // pointer
	given  []bool
	typed  map[string]string
	record Record
	bad    bool
}

func newBuilder(r *reader, k Kind) *builder {
	c := field.CodecOf(k.body)
	b := &builder{r: r, kind: k, codec: c, body: reflect.New(k.body), given: make([]bool, c.Len())}
	b.record.Kind = k.Name
	return b
}

func (b *builder) set(col column, cell string) error {
	if cell = strings.TrimSpace(cell); cell == "" {
		return nil
	}
	if col.head != "" {
		if err := setHead(&b.record.Head, col.head, cell); err != nil {
			return field.Refuse(col.head, "%s", err.Error())
		}
		return nil
	}
	f := b.codec.Field(col.field)
	if f.Type == field.Grid {
		b.given[col.field] = true
		return b.grid(f, cell)
	}
	if worded(f) {
		cell = unguard(cell)
	}
	typed, err := b.codec.SetText(b.body.Elem(), col.field, cell, col.unit)
	if err != nil {
		return err
	}
	b.given[col.field] = true
	if typed {
		if col.unit != "" && strings.Trim(cell, "0123456789.,-+") == "" {
			cell += " " + col.unit
		}
		b.keep(f.Key, cell)
	}
	return nil
}

func (b *builder) keep(key, text string) {
	if b.typed == nil {
		b.typed = map[string]string{}
	}
	b.typed[key] = text
}

func (b *builder) grid(f field.Field, file string) error {
	if strings.ContainsAny(file, `/\`) || !fs.ValidPath(file) {
		return field.Refuse(f.Key, "%s must name a file of this folder, not %q", f.Key, file)
	}
	data, err := fs.ReadFile(b.r.fsys, file)
	if err != nil {
		return field.Refuse(f.Key, "%s is in %s, which can't be read", f.Key, file)
	}
	b.r.grids[file] = true
	if err := readGrid(f, data, f.Get(b.body.Elem())); err != nil {
		return field.Refuse(f.Key, "%s, %s: %v", f.Key, file, err)
	}
	return nil
}

// finish fills defaults, settles the place, and gives an ID where the row has none.
func (b *builder) finish(file string, line int) error {
	if err := b.codec.Finish(b.body.Elem(), b.given); err != nil {
		return err
	}
	h := &b.record.Head
	b.record.Body = b.body.Interface()
	h.keep(settle(b.record.Body, b.typed))
	if err := h.check(); err != nil {
		return err
	}
	for key := range h.Typed {
		if _, ok := b.kind.Field(key); !ok {
			return field.Refuse("typed", "typed names %q, which is no field of a %s", key, b.kind.Title)
		}
	}
	if h.ID == "" {
		h.ID = NewID()
		if h.From == "" {
			h.From = fmt.Sprintf("%s line %d", file, line)
		}
	}
	if other, taken := b.r.ids[h.ID]; taken {
		return field.Refuse("id", "the id %s already stands in %s line %d", h.ID, other.file, other.line)
	}
	b.r.ids[h.ID] = spot{file, line}
	return nil
}
