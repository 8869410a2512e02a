package intake

import (
	"fmt"
	"strings"
)

var delimiters = []struct {
	mark byte
	name string
}{{';', "semicolon"}, {'\t', "tab"}, {'|', "upright stroke"}, {',', "comma"}}

func delimiterName(mark string) string {
	for _, d := range delimiters {
		if string(d.mark) == mark {
			return d.name
		}
	}
	return fmt.Sprintf("%q", mark)
}

// delimiterOf finds what parts the columns: the mark that cuts most rows into the same number of cells, of several the one that cuts into more. A
// comma that only stands between figures is a decimal comma and parts nothing.
func delimiterOf(text string) (mark byte, why string) {
	head := sample(text, 1<<16)
	best, score, width := byte(','), 0.0, 1
	for _, d := range delimiters {
		s, w := steadiness(head, d.mark)
		if s > score {
			best, score, width = d.mark, s, w
		}
	}
	if width < 2 {
		return ',', "nothing parts the rows: each is one cell"
	}
	return best, fmt.Sprintf("most rows have %d cells when cut at the %s", width, delimiterName(string(best)))
}

func sample(text string, most int) string {
	if len(text) <= most {
		return text
	}
	if i := strings.LastIndexAny(text[:most], "\r\n"); i > 0 {
		return text[:i]
	}
	return text[:most]
}

// steadiness is how well a mark cuts a text: the share of rows with the commonest width over one, weighed by that width.
func steadiness(text string, mark byte) (score float64, width int) {
	c := newCutter(text, mark)
	counts, rows := map[int]int{}, 0
	for range 400 {
		_, cells, ok := c.next()
		if !ok {
			break
		}
		if len(cells) == 1 && cells[0] == "" {
			continue
		}
		rows++
		counts[len(cells)]++
	}
	for w, n := range counts {
		if s := float64(n) / float64(rows) * min(float64(w), 12); w > 1 && (s > score || s == score && w > width) {
			score, width = s, w
		}
	}
	return score, width
}
