package dossier

import (
	"strings"
)

// row is one row of a CSV file, with the line it begins on and its own text.
type row struct {
	line  int
	cells []string
	text  string
	fault string // why it is no row of RFC 4180
}

// table cuts a CSV file into rows (RFC 4180; a line may end in LF alone). A row that breaks the form is kept with its text and its fault.
type table struct {
	rest  string
	line  int
	comma byte
	cells []string // of the row before, used again
}

// newTable starts at the top of a file. Where the first line has no comma but semicolons or tabs, those part the cells.
func newTable(data []byte) *table {
	t := &table{rest: strings.TrimPrefix(string(data), "\ufeff"), line: 1, comma: ','}
	first, _, _ := strings.Cut(t.rest, "\n")
	for _, c := range []byte{',', ';', '\t'} {
		if strings.IndexByte(first, c) >= 0 {
			t.comma = c
			break
		}
	}
	return t
}

// next gives the next row; ok is false at the end. Its cells hold until the next call.
func (t *table) next() (r row, ok bool) {
	if len(t.rest) == 0 {
		return row{}, false
	}
	r.line, r.cells = t.line, t.cells[:0]
	i := 0
	for {
		cell, end, fault := t.cell(i)
		r.cells = append(r.cells, cell)
		i = end
		if fault != "" {
			r.fault = fault
			i = t.toLineEnd(i)
		}
		if i < len(t.rest) && t.rest[i] == t.comma {
			i++
			continue
		}
		break
	}
	r.text = t.rest[:i]
	i = t.pastLineEnd(i)
	t.line += strings.Count(t.rest[:i], "\n")
	t.rest, t.cells = t.rest[i:], r.cells
	return r, true
}

// cell reads one cell from i and gives where it ends.
func (t *table) cell(i int) (cell string, end int, fault string) {
	if i >= len(t.rest) || t.rest[i] != '"' {
		end = i
		for end < len(t.rest) && t.rest[end] != t.comma && t.rest[end] != '\n' && !t.crlf(end) {
			end++
		}
		return t.rest[i:end], end, ""
	}
	var b strings.Builder
	for i++; ; {
		j := strings.IndexByte(t.rest[i:], '"')
		if j < 0 {
			return b.String() + t.rest[i:], len(t.rest), "the quotation mark is not closed"
		}
		b.WriteString(t.rest[i : i+j])
		i += j + 1
		if i < len(t.rest) && t.rest[i] == '"' {
			b.WriteByte('"')
			i++
			continue
		}
		break
	}
	if i < len(t.rest) && t.rest[i] != t.comma && t.rest[i] != '\n' && !t.crlf(i) {
		return b.String(), i, "there is text after a closing quotation mark"
	}
	return b.String(), i, ""
}

func (t *table) crlf(i int) bool {
	return t.rest[i] == '\r' && i+1 < len(t.rest) && t.rest[i+1] == '\n'
}

func (t *table) toLineEnd(i int) int {
	if j := strings.IndexByte(t.rest[i:], '\n'); j >= 0 {
		return i + j
	}
	return len(t.rest)
}

func (t *table) pastLineEnd(i int) int {
	if i < len(t.rest) && t.rest[i] == '\r' {
		i++
	}
	if i < len(t.rest) && t.rest[i] == '\n' {
		i++
	}
	return i
}

// blank tells whether a row has no text at all.
func (r row) blank() bool {
	for _, c := range r.cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return r.fault == ""
}

// appendRow writes one row, quoting what RFC 4180 wants quoted.
func appendRow(dst []byte, cells []string) []byte {
	for i, c := range cells {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = appendCell(dst, c)
	}
	return append(dst, '\r', '\n')
}

func appendCell(dst []byte, c string) []byte {
	if !strings.ContainsAny(c, ",\"\r\n;\t") && c == strings.TrimSpace(c) {
		return append(dst, c...)
	}
	dst = append(dst, '"')
	dst = append(dst, strings.ReplaceAll(c, `"`, `""`)...)
	return append(dst, '"')
}
