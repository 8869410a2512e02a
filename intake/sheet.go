package intake

import (
	"fmt"
	"iter"
	"strings"
)

// row is one row with the number it has in the file, from 1. Its cells hold only until the next row.
type row struct {
	n     int
	cells []string
}

// sheet is one table of rows. A text file has one without a name.
type sheet struct {
	name  string
	rows  iter.Seq[row]
	count int
	note  string // what was done to read it: merged cells filled, hidden rows
}

// at gives the cell of a column, "" where the row is shorter.
func (r row) at(i int) string {
	if i < len(r.cells) {
		return r.cells[i]
	}
	return ""
}

// blank tells whether the row holds nothing.
func (r row) blank() bool {
	for _, c := range r.cells {
		if c != "" {
			return false
		}
	}
	return true
}

// filled counts the cells that hold something.
func (r row) filled() int {
	n := 0
	for _, c := range r.cells {
		if c != "" {
			n++
		}
	}
	return n
}

// text is the row as one line.
func (r row) text() string {
	var parts []string
	for i, c := range r.cells {
		if c != "" && (i == 0 || c != r.cells[i-1]) {
			parts = append(parts, c)
		}
	}
	return strings.Join(parts, " ")
}

// kept copies the row so that it lasts.
func (r row) kept() row { return row{r.n, append([]string{}, r.cells...)} }

// first gives the first rows that hold anything, to last.
func (s sheet) first(most int) []row {
	var list []row
	for r := range s.rows {
		if r.blank() {
			continue
		}
		if list = append(list, r.kept()); len(list) >= most {
			break
		}
	}
	return list
}

// textSheet cuts a text into one sheet.
func textSheet(text string, comma byte) sheet {
	s := sheet{rows: func(yield func(row) bool) {
		c := newCutter(text, comma)
		for n, cells, ok := c.next(); ok; n, cells, ok = c.next() {
			if !yield(row{n, cells}) {
				return
			}
		}
	}}
	s.count = lines(text)
	if text != "" && !strings.HasSuffix(text, "\n") && !strings.HasSuffix(text, "\r") {
		s.count++
	}
	return s
}

// columnName is a column as spreadsheets letter it: A, B, ... Z, AA.
func columnName(i int) string {
	name := ""
	for i++; i > 0; i = (i - 1) / 26 {
		name = string(rune('A'+(i-1)%26)) + name
	}
	return name
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
