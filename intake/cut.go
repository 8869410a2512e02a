package intake

import "strings"

// longestQuoted bounds how far a quotation mark may reach before it closes, in bytes: one that runs on is a mark, not the opening of a quoted cell.
const longestQuoted = 4000

// cutter cuts text into rows of cells. It reads RFC 4180 and what people make of it: a lone quotation mark is a ditto mark or inches, and a mark that
// never closes swallows no rows.
type cutter struct {
	rest  string
	line  int // of the next row, from 1
	comma byte
	cells []string // of the row before, used again
}

func newCutter(text string, comma byte) *cutter { return &cutter{rest: text, line: 1, comma: comma} }

// next gives the next row and the line it begins on. Its cells hold until the next call.
func (c *cutter) next() (line int, cells []string, ok bool) {
	if c.rest == "" {
		return 0, nil, false
	}
	line, cells = c.line, c.cells[:0]
	s := c.rest
	i := 0
	for {
		cell, end := c.cell(s, i)
		cells = append(cells, cell)
		i = end
		if i < len(s) && s[i] == c.comma {
			i++
			continue
		}
		break
	}
	if i < len(s) && s[i] == '\r' {
		i++
	}
	if i < len(s) && s[i] == '\n' {
		i++
	}
	c.line += lines(s[:i])
	c.rest, c.cells = s[i:], cells
	return line, cells, true
}

// lines counts line ends: \n, \r\n, or \r alone.
func lines(s string) int {
	n := strings.Count(s, "\n")
	if strings.IndexByte(s, '\r') >= 0 {
		n += strings.Count(s, "\r") - strings.Count(s, "\r\n")
	}
	return n
}

// cell reads the cell at i and gives where it ends.
func (c *cutter) cell(s string, i int) (string, int) {
	start := i
	for start < len(s) && s[start] == ' ' && c.comma != ' ' {
		start++
	}
	if start < len(s) && s[start] == '"' {
		if text, end, ok := c.quoted(s, start); ok {
			return text, end
		}
	}
	end := i
	for end < len(s) && s[end] != c.comma && s[end] != '\n' && s[end] != '\r' {
		end++
	}
	return strings.TrimSpace(s[i:end]), end
}

// quoted reads a cell in quotation marks; ok is false where the mark opens none.
func (c *cutter) quoted(s string, i int) (text string, end int, ok bool) {
	if c.atEnd(s, i+1) {
		return "", i, false // the mark stands alone: a ditto mark
	}
	from, doubled := i+1, false
	for j := from; j < len(s) && j-i < longestQuoted; j++ {
		if s[j] != '"' {
			continue
		}
		if j+1 < len(s) && s[j+1] == '"' {
			doubled = true
			j++
			continue
		}
		end = j + 1
		for end < len(s) && s[end] == ' ' && c.comma != ' ' {
			end++
		}
		if !c.atEnd(s, end) {
			return "", i, false
		}
		text = s[from:j]
		if doubled {
			text = strings.ReplaceAll(text, `""`, `"`)
		}
		return strings.TrimSpace(text), end, true
	}
	return "", i, false
}

// atEnd tells whether a cell ends here.
func (c *cutter) atEnd(s string, i int) bool {
	return i >= len(s) || s[i] == c.comma || s[i] == '\n' || s[i] == '\r'
}
