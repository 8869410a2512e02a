// Package pdftext reads the words back out of the papers that this program writes, so that a test can say what stands on which page. It reads no other
// program's files.
package pdftext

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf16"
)

// content marks the stream of a page as the writer spells it.
var content = regexp.MustCompile(`<</Filter /FlateDecode /Length \d+>>\nstream\n`)

// Pages gives the text of each page, one line a piece of text in the order it was written.
func Pages(pdf []byte) ([]string, error) {
	if !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		return nil, errors.New("this is no PDF file")
	}
	var pages []string
	for _, at := range content.FindAllIndex(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(pdf[at[1]:]))
		if err != nil {
			return nil, fmt.Errorf("a stream can't be opened: %w", err)
		}
		stream, err := io.ReadAll(r)
		if err != nil {
			return nil, fmt.Errorf("a stream can't be read: %w", err)
		}
		if text, ok := words(stream); ok {
			pages = append(pages, text)
		}
	}
	return pages, nil
}

// words collects what is shown by Tj. A stream that shows nothing, such as a font, is no page.
func words(stream []byte) (string, bool) {
	var lines []string
	for {
		i := bytes.IndexByte(stream, '(')
		if i < 0 {
			break
		}
		raw, rest := literal(stream[i+1:])
		if bytes.HasPrefix(rest, []byte(" Tj")) || bytes.HasPrefix(rest, []byte("Tj")) {
			lines = append(lines, decode(raw))
		}
		stream = rest
	}
	return strings.Join(lines, "\n"), len(lines) > 0
}

// literal reads a string up to its closing bracket.
func literal(s []byte) (raw, rest []byte) {
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case ')':
			return raw, s[i+1:]
		case '\\':
			if i++; i < len(s) {
				if s[i] == 'r' {
					raw = append(raw, '\r')
				} else {
					raw = append(raw, s[i])
				}
			}
		default:
			raw = append(raw, s[i])
		}
	}
	return raw, nil
}

// decode reads the letters, which the writer numbers as UTF-16 does.
func decode(raw []byte) string {
	units := make([]uint16, len(raw)/2)
	for i := range units {
		units[i] = uint16(raw[2*i])<<8 | uint16(raw[2*i+1])
	}
	return string(utf16.Decode(units))
}
