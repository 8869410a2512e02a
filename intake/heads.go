package intake

import (
	"fmt"
	"strings"
	"unicode"
)

// Bounds of the search for headings: rows looked at, and levels of a heading.
const (
	headWithin = 60
	mostLevels = 4
)

// heads are the heading rows of a sheet, with the joined heading of every column.
type heads struct {
	first, count int // row numbers of the file; count 0 where there is none
	headings     []string
	units        []string // named by the headings, "" where none is
	found        int      // columns whose meaning is known
	why          string
}

// headsOf finds the heading rows by the number of columns whose heading is known.
func headsOf(rows []row, p profile, names func(string) bool) heads {
	words := p.vocabulary()
	best, at := 0, -1
	for i, r := range rows[:min(len(rows), headWithin)] {
		if n := known(r, words, names); n > best {
			best, at = n, i
		}
	}
	if best < 2 {
		return heads{why: "no row was found whose cells are column heads"}
	}
	from, to := at, at
	for from > 0 && to-from+1 < mostLevels && rows[from-1].n == rows[from].n-1 && upperLevel(rows[from-1], words) {
		from--
	}
	for to+1 < len(rows) && to-from+1 < mostLevels && rows[to+1].n == rows[to].n+1 && lowerLevel(rows[to+1], words) {
		to++
	}
	h := joined(rows[from : to+1])
	h.first, h.count, h.found = rows[from].n, rows[to].n-rows[from].n+1, best
	h.why = fmt.Sprintf("%s of row %d are known column heads", plural(best, "cell", "cells"), rows[at].n)
	if h.count > 1 {
		h.why += fmt.Sprintf(", and rows %d to %d belong together as heads of %d levels", h.first, h.first+h.count-1, h.count)
	}
	return h
}

// headsAt takes the heading rows that somebody named.
func headsAt(rows []row, first, count int) heads {
	var some []row
	for _, r := range rows {
		if r.n >= first && r.n < first+count {
			some = append(some, r)
		}
	}
	h := joined(some)
	h.first, h.count, h.why = first, count, "said so"
	return h
}

// known counts the distinct meanings that a row's cells have as headings. A row with figures of its own is no heading.
func known(r row, words []word, names func(string) bool) int {
	seen, numbers := map[string]bool{}, 0
	last := ""
	for _, c := range r.cells {
		if c == "" || c == last {
			continue
		}
		last = c
		if len(c) > 60 {
			continue
		}
		if figures(c) && !names(c) {
			numbers++
			continue
		}
		if names(c) {
			seen["of "+c] = true
			continue
		}
		rest, _ := unitIn(strings.ReplaceAll(c, "\n", " "))
		plain := plainHead(rest)
		if m, strength := meaningOf(plain, words); strength >= 1.2 {
			seen[m] = true
			continue
		}
		if bare, side, end := facetOf(plain); side != "" || end != "" {
			if bare == "" {
				seen["facet "+side+end] = true
			} else if m, strength := meaningOf(bare, words); strength >= 1.2 {
				seen[m+side+end] = true
			}
		}
	}
	if numbers > 1 {
		return 0
	}
	return len(seen)
}

// figures tells whether a cell is mostly a number.
func figures(c string) bool {
	digits, letters := 0, 0
	for _, r := range c {
		switch {
		case unicode.IsDigit(r):
			digits++
		case unicode.IsLetter(r):
			letters++
		}
	}
	return digits > 0 && digits >= letters
}

// upperLevel tells whether a row stands over the heads: groups such as FORWARD and AFT, more than one, no figures.
func upperLevel(r row, words []word) bool {
	distinct := map[string]bool{}
	known := 0
	for _, c := range r.cells {
		if c == "" || distinct[c] {
			continue
		}
		if figures(c) || len(c) > 48 || strings.Contains(c, ": ") {
			return false
		}
		distinct[c] = true
		bare, side, end := facetOf(plainHead(c))
		if m, _ := meaningOf(bare, words); m != "" || side != "" || end != "" {
			known++
		}
	}
	return len(distinct) > 1 && known > 0
}

// lowerLevel tells whether a row under the heads still belongs to them: only units, sides, ends and words for readings.
func lowerLevel(r row, words []word) bool {
	seen, strange := 0, 0
	for _, c := range r.cells {
		if c == "" {
			continue
		}
		if figures(c) {
			return false
		}
		rest, unit := unitIn(c)
		if _, whole := unitAlone(c); whole {
			seen++
			continue
		}
		bare, side, end := facetOf(plainHead(rest))
		m, strength := meaningOf(bare, words)
		if unit == "" && side == "" && end == "" && (m == "" || strength < 3) {
			strange++
			continue
		}
		seen++
	}
	return seen > 1 && strange*3 <= seen && distinctCells(r) > 1 && !onlySides(r)
}

// onlySides tells whether a row has nothing but sides in one or two cells, as a row of readings without figures may.
func onlySides(r row) bool { return r.filled() < 2 }

func distinctCells(r row) int {
	seen := map[string]bool{}
	for _, c := range r.cells {
		if c != "" {
			seen[c] = true
		}
	}
	return len(seen)
}

// joined joins heading rows into one heading a column. In an upper row a text goes on over the empty cells to its right, as far as the rows below have heads.
func joined(rows []row) heads {
	h := heads{}
	width := 0
	for _, r := range rows {
		width = max(width, len(r.cells))
	}
	h.headings, h.units = make([]string, width), make([]string, width)
	for level, r := range rows {
		over := ""
		for i := range width {
			c := strings.Join(strings.Fields(r.at(i)), " ")
			upper := level < len(rows)-1
			switch {
			case c != "":
				over = c
			case upper && over != "" && below(rows[level+1:], i) && !startsGroup(rows, level, i):
				c = over
			default:
				over = ""
				continue
			}
			if u, ok := unitAlone(c); ok && len(rows) > 1 && !upper {
				h.units[i] = u
				continue
			}
			if !strings.HasSuffix(h.headings[i], c) {
				h.headings[i] = strings.TrimPrefix(h.headings[i]+" / "+c, " / ")
			}
		}
	}
	return h
}

func below(rows []row, i int) bool {
	for _, r := range rows {
		if r.at(i) != "" {
			return true
		}
	}
	return false
}

// startsGroup tells whether the column begins something of its own: an upper row has a text there already.
func startsGroup(rows []row, level, i int) bool {
	for _, r := range rows[:level] {
		if r.at(i) != "" {
			return true
		}
	}
	return false
}
