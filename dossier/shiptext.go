package dossier

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"

	"oakum/field"
)

// shipText writes one record as lines of "key: value". A line that belongs to the value above it begins with a tab.
func shipText(k Kind, r Record, currency string) []byte {
	c := field.CodecOf(k.body)
	v := reflect.ValueOf(r.Body).Elem()
	var b bytes.Buffer
	line := func(key, value string) {
		if value != "" {
			fmt.Fprintf(&b, "%s: %s\n", key, strings.ReplaceAll(value, "\n", "\n\t"))
		}
	}
	line("id", r.ID)
	for i := range c.Len() {
		if cell, ok := c.Text(v, i); ok {
			line(headOf(c.Field(i), currency), cell)
		}
	}
	for _, name := range headColumns {
		line(name, unguard(headText(r.Head, name)))
	}
	return b.Bytes()
}

// textLine is one key with its value, as it stands in ship.txt.
type textLine struct {
	line       int
	key, value string
	fault      string
}

// readText cuts ship.txt into its lines. Empty lines, and lines that begin with #, say nothing.
func readText(data []byte) []textLine {
	text := strings.ReplaceAll(strings.TrimPrefix(string(data), "\ufeff"), "\r\n", "\n")
	var lines []textLine
	for n, s := range strings.Split(text, "\n") {
		if more, ok := strings.CutPrefix(s, "\t"); ok && len(lines) > 0 {
			lines[len(lines)-1].value += "\n" + more
			continue
		}
		if strings.TrimSpace(s) == "" || strings.HasPrefix(s, "#") {
			continue
		}
		key, value, ok := strings.Cut(s, ":")
		l := textLine{line: n + 1, key: strings.TrimSpace(key), value: strings.TrimLeft(value, " ")}
		if !ok {
			l.fault = fmt.Sprintf("%q is no line of the form key: value", s)
		}
		lines = append(lines, l)
	}
	return lines
}
