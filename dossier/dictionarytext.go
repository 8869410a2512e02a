package dossier

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"oakum/field"
)

//go:generate go run ./dictionary ../docs/data-dictionary.md

// Dictionary is the data dictionary of the folder form, in Markdown: every kind, every field, made from the structs.
func Dictionary() []byte {
	var b bytes.Buffer
	b.WriteString(dictionaryHead)
	for _, group := range []struct{ name, title string }{{"ship", "What she is"}, {"survey", "What was seen"}, {"plan", "What is intended"}} {
		fmt.Fprintf(&b, "\n## %s\n", group.title)
		for _, k := range kinds {
			if k.Group == group.name {
				k.describe(&b)
			}
		}
	}
	return b.Bytes()
}

const dictionaryHead = `# Data dictionary

Made from the program's own types by ` + "`go generate ./dossier`" + `; do not edit.

The data of a ship is a folder that opens with any text editor or spreadsheet: ` + "`ship.txt`" + ` for the ship herself, as lines of ` + "`key: value`" + `, and one CSV file
for each kind of record (RFC 4180, UTF-8). The first row names the columns; a column that is empty in every row is left out, and the order of columns does
not matter when the file is read.

- A column of numbers carries its unit in its name, after the last underscore that a unit follows: ` + "`thickness_mm`" + `, ` + "`density_kg/m3`" + `. A name without
  a unit means the unit in the tables below; another unit of the same sort may be written instead (` + "`thickness_in`" + `). Money carries the currency of ` + "`ship.txt`" + `.
- An empty cell means that nobody knows, never zero.
- Dates are ` + "`1996-10-15`" + `, ` + "`1996-10`" + ` or ` + "`1996`" + `: as much as is known.
- Yes and no are ` + "`yes`" + ` and ` + "`no`" + `.
- A list stands in one cell, its entries parted by semicolons; a semicolon inside an entry has a backslash before it. A table of numbers stands in a file of its
  own, and the cell names that file.
- A text that begins with ` + "`=`, `+`, `-`, `@`" + ` or a tab has an apostrophe before it, so that no spreadsheet takes it for a formula. A text that begins
  with an apostrophe and one of these, or with two apostrophes, has one more. The apostrophe is taken off when the file is read.
- A column that refers to another kind holds the id found in that kind's file.
- A place is written in the columns frame, frame_to, offset, strake, strake_to, height, side, space and where.
- Distances along the ship go forward from the after perpendicular, to port from the centre line, and up from the baseline.

## Columns of every kind

| column | meaning |
|---|---|
| id | name of the record: small letters, figures, and . _ - after the first; unique in the whole folder |
| basis | how it is known: measured, documented, assumed, computed or unknown |
| basis_note | the instrument, paper or rule |
| basis_date | when it was measured or written down, for records without a date of their own |
| mark | who may see it: private, board or public; left out: board |
| at | when this version was written, as 2026-05-04T10:30:00Z |
| by | who wrote it |
| version | how many times it was written |
| typed | a JSON object: texts as they were typed, by column, where they said more than the number |
| from | file and row it was read from |
| withdrawn | yes where the record was taken back; it is kept to show that it once stood |
`

func (k Kind) describe(b *bytes.Buffer) {
	fmt.Fprintf(b, "\n### %s%s\n\n`%s` in `%s`. %s\n\n", strings.ToUpper(k.Plural[:1]), k.Plural[1:], k.Name, k.File, k.About)
	b.WriteString("| column | meaning | takes | needed |\n|---|---|---|---|\n")
	for _, f := range k.Fields {
		needed := ""
		switch {
		case f.Required:
			needed = "yes"
		case f.Default != "":
			needed = "default " + f.Default
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s |\n", headOf(f, "money"), cell(meaning(f)), cell(takes(f)), cell(needed))
	}
}

func meaning(f field.Field) string {
	if f.Help == "" {
		return f.Label
	}
	return f.Label + ": " + f.Help
}

// takes says what a field holds, within which limits.
func takes(f field.Field) string {
	var s string
	switch {
	case f.Of == "*":
		s = "id of any record"
	case f.Of != "":
		s = "id in " + strings.Join(filesOf(f.Of), " or ")
	case f.Type == field.Enum:
		s = strings.Join(f.Enum, ", ")
	case f.Type == field.Boolean:
		s = "yes or no"
	case f.Type == field.Integer:
		s = "whole number"
	case f.Type == field.Grid:
		s = "table of numbers in its own file"
	default:
		s = string(f.Type)
	}
	if f.Type == field.List {
		s = "list: " + strings.TrimPrefix(s, "list")
		s = strings.TrimSuffix(s, ": ")
	}
	return s + limits(f)
}

func filesOf(of string) []string {
	var files []string
	for name := range strings.SplitSeq(of, "|") {
		files = append(files, byName[name].File)
	}
	return files
}

func limits(f field.Field) string {
	var s []string
	add := func(word string, x *float64) {
		if x != nil {
			s = append(s, word+" "+strconv.FormatFloat(*x, 'f', -1, 64))
		}
	}
	add("from", f.Min)
	add("over", f.Over)
	add("to", f.Max)
	add("under", f.Under)
	if len(s) == 0 {
		return ""
	}
	return ", " + strings.Join(s, " ")
}

// cell keeps a text from breaking the table.
func cell(s string) string { return strings.ReplaceAll(s, "|", "\\|") }
