package page

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

func itoa(n int) string { return strconv.Itoa(n) }

// set sets the face and size in force.
func (d *Document) set(face Face, size float64) { d.pdf.SetFont(family, string(face), size*d.scale) }

// clean keeps a number with its unit: the narrow space between them, which few faces have, becomes the plain one that no line breaks at. A negative
// number gets a true minus, so that no line breaks behind it and no eye takes it for a dash.
func clean(text string) string {
	return minus.ReplaceAllString(strings.ReplaceAll(text, "\u202f", "\u00a0"), "$1\u2212$2")
}

var minus = regexp.MustCompile(`(^|[ (])-(\d)`)

// words are what a line may break between. No-break spaces hold.
func words(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' || r == '\r' })
}

// wrap breaks a text into lines of the face in force. A line end in the text stays one.
func (d *Document) wrap(text string, width float64) []string {
	var lines []string
	for _, paragraph := range strings.Split(clean(text), "\n") {
		lines = append(lines, d.wrapOne(paragraph, width)...)
	}
	return lines
}

func (d *Document) wrapOne(text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range words(text) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if d.pdf.GetStringWidth(longer) <= width {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		whole := d.split(word, width)
		lines = append(lines, whole[:len(whole)-1]...)
		line = whole[len(whole)-1]
	}
	return append(lines, line)
}

// split breaks a word that is wider than its line, behind a mark that joins names where there is one.
func (d *Document) split(word string, width float64) []string {
	var parts []string
	for d.pdf.GetStringWidth(word) > width {
		end, seam := 0, 0
		for end < len(word) {
			_, n := utf8.DecodeRuneInString(word[end:])
			if d.pdf.GetStringWidth(word[:end+n]) > width {
				break
			}
			end += n
			if strings.ContainsRune("@-./_,;*+", rune(word[end-1])) {
				seam = end
			}
		}
		if seam > 0 {
			end = seam
		}
		if end == 0 {
			_, end = utf8.DecodeRuneInString(word)
		}
		parts = append(parts, word[:end])
		if word = word[end:]; word == "" {
			return parts
		}
	}
	return append(parts, word)
}

// longest is the width of the widest word, mm.
func (d *Document) longest(text string) float64 {
	widest := 0.0
	for _, word := range words(clean(text)) {
		widest = max(widest, d.pdf.GetStringWidth(word))
	}
	return widest
}
