package intake

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

// Harvest implements app.Table.
func (t *Table) Harvest() (app.Harvest, error) {
	if open := t.guess.Open(); len(open) > 0 {
		var asks []string
		for _, q := range open {
			asks = append(asks, q.Ask)
		}
		return app.Harvest{}, field.Refuse(open[0].Key, "%s must be answered first: %s", plural(len(open), "question", "questions"), strings.Join(asks, " "))
	}
	r, err := t.reader()
	if err != nil {
		return app.Harvest{}, err
	}
	var h app.Harvest
	for _, f := range r.facets {
		if b := r.bids[f.of]; b != nil {
			h.Records = append(h.Records, *b)
		}
	}
	h.Records = slices.Grow(h.Records, r.atMost())
	r.each(0, func(x seen) bool {
		h.Rows++
		switch {
		case x.as != "":
			r.total(x)
			h.Named = append(h.Named, app.NamedRow{Sheet: x.sheet, Row: x.row.n, As: x.as, Text: cut(x.row.text())})
		case x.err != nil:
			h.Refused = append(h.Refused, app.RefusedRow{Sheet: x.sheet, Row: x.row.n, Reason: reasonOf(x.err), Cells: slices.Clone(x.row.cells)})
		default:
			h.Gave++
			h.Records = append(h.Records, x.records...)
		}
		return true
	})
	footnotes(&h)
	return h, nil
}

// mostAhead bounds how many records room is made for before the rows are read: a workbook may claim a million rows and hold ten.
const mostAhead = 1 << 18

// atMost is how many records the sheets that are read can give, to make room for.
func (r *reader) atMost() int {
	n := 0
	for i, sh := range r.t.guess.Sheets {
		if sh.Read {
			n += r.t.sheets[i].count * len(r.facets)
		}
	}
	return min(n, mostAhead)
}

// seen is one row and what became of it.
type seen struct {
	sheet   string
	row     row
	records []dossier.Record
	err     error
	as      string
}

// each reads the rows of every sheet that is read, at most some of each where most is not 0.
func (r *reader) each(most int, take func(seen) bool) {
	for i, sh := range r.t.guess.Sheets {
		if !sh.Read {
			continue
		}
		if !r.sheet(r.t.sheets[i], r.t.heads[i], most, take) {
			return
		}
	}
}

func (r *reader) sheet(s sheet, h heads, most int, take func(seen) bool) bool {
	r.from = r.t.name + " (sha256 " + r.t.sum[:12] + "), "
	if s.name != "" {
		r.from += "sheet " + s.name + ", "
	}
	r.above, r.context = nil, r.nameSays(s.name)
	top, n := "", 0
	for x := range s.rows {
		if x.blank() {
			continue
		}
		if n++; most > 0 && n > most {
			return true
		}
		out := seen{sheet: s.name, row: x}
		if x.n == h.first {
			top = x.text()
		}
		if out.as = r.nameRow(x, h, top); out.as == "" {
			out.records, out.err = r.data(x)
		} else if out.as == rowHeading && x.n >= h.first+h.count {
			if says := r.titleSays(x.text()); len(says) > 0 {
				r.context = maps.Clone(r.context)
				maps.Copy(r.context, says)
				r.above = nil
			}
		}
		if !take(out) {
			return false
		}
	}
	return true
}

// data reads a row of data, ditto marks and blanks filled from the row above where that was answered.
func (r *reader) data(x row) ([]dossier.Record, error) {
	cells, err := r.filled(x.cells)
	if err != nil {
		return nil, err
	}
	records, err := r.row(x.n, cells)
	r.above = append(r.above[:0], cells...)
	return records, err
}

var errBlankPlace = errors.New("the frame or the strake is blank, and such rows were to be refused")

// filled resolves ditto marks, and blank places, against the row above.
func (r *reader) filled(cells []string) ([]string, error) {
	copied := false
	set := func(i int, text string) {
		if !copied {
			cells, copied = slices.Clone(cells), true
		}
		for len(cells) <= i {
			cells = append(cells, "")
		}
		cells[i] = text
	}
	for i, c := range cells {
		if !maybeDitto(c) || i >= len(r.above) || r.above[i] == "" {
			continue
		}
		if isWord, meaning := wordOf(c); isWord && meaning == quantity.SameAsAbove {
			set(i, r.above[i])
		}
	}
	if r.byNumber != nil && r.byLetter != nil && r.byNumber.col < len(cells) && cells[r.byNumber.col] != "" && (r.byLetter.col >= len(cells) || cells[r.byLetter.col] == "") {
		n, _ := strconv.Atoi(cells[r.byNumber.col])
		letter := r.t.ev.pairs[n]
		if letter == "" {
			return cells, fmt.Errorf("column %s%s: strake number %q has no letter beside it in any row", r.byNumber.name, named(r.byNumber.head), cells[r.byNumber.col])
		}
		set(r.byLetter.col, letter)
	}
	if r.answers["blank_place"] == "" {
		return cells, nil
	}
	for _, s := range r.shared {
		if s.mean.field != "frame" && (s.mean.field != "strake" || len(r.t.ev.pairs) > 0) || s.col < len(cells) && cells[s.col] != "" {
			continue
		}
		switch r.answers["blank_place"] {
		case "above":
			if s.col < len(r.above) {
				set(s.col, r.above[s.col])
			}
		case "refuse":
			return cells, errBlankPlace
		}
	}
	return cells, nil
}

// maybeDitto tells quickly whether a cell can be a ditto mark.
func maybeDitto(c string) bool {
	return c != "" && len(c) < 12 && (c[0] == '"' || c[0] == 'd' || c[0] == 'D' || c[0] == '\'' || c[0] == ',' || c[0] == '-' || c[0] >= 0x80)
}

// footnotes names the lines of words after the last row of data footnotes.
func footnotes(h *app.Harvest) {
	last := map[string]int{}
	for _, f := range h.Refused {
		last[f.Sheet] = max(last[f.Sheet], f.Row)
	}
	for _, rec := range h.Records {
		sheet, n := rowIn(rec.From)
		last[sheet] = max(last[sheet], n)
	}
	for i, n := range h.Named {
		if n.As == rowHeading && n.Row > last[n.Sheet] {
			h.Named[i].As = rowFootnote
		}
	}
}

// rowIn reads sheet and row back from where a record came from.
func rowIn(from string) (sheet string, n int) {
	if _, tail, ok := strings.Cut(from, "), sheet "); ok {
		if i := strings.LastIndex(tail, ", "); i >= 0 {
			sheet = tail[:i]
		}
	}
	for i := len(from); i > 0; i-- {
		if from[i-1] < '0' || from[i-1] > '9' {
			from = from[i:]
			break
		}
	}
	for _, c := range from {
		n = n*10 + int(c-'0')
	}
	return sheet, n
}

func cut(s string) string {
	if runes := []rune(s); len(runes) > 200 {
		return string(runes[:200]) + "..."
	}
	return s
}

// Preview implements app.Table.
func (t *Table) Preview(rows int) []app.PreviewRow {
	list := []app.PreviewRow{}
	r, err := t.reader()
	if err != nil {
		return list
	}
	r.each(rows, func(x seen) bool {
		p := app.PreviewRow{Sheet: x.sheet, Row: x.row.n, Cells: slices.Clone(x.row.cells), As: x.as}
		if x.err != nil {
			p.Refused = reasonOf(x.err)
		}
		for _, rec := range x.records {
			p.Becomes = append(p.Becomes, inWords(rec, t.guess.Facts))
		}
		list = append(list, p)
		return true
	})
	return list
}
