package hullfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"oakum/formula/hullform"
)

// Offsets reads a table of half-breadths. The first row holds the heights of the waterlines behind a free first cell; each further row the x of a
// station and its half-breadths. Columns headed keel, deck and deck half-breadth may stand anywhere after the first. An empty cell or a dash means
// that none was taken. Cells are parted by comma, semicolon or tab; with the latter two a decimal comma is read. Rows opening with # are passed over.
func Offsets(data []byte) (hullform.Offsets, error) {
	rows, lines, decimal, err := cells(data)
	if err != nil {
		return hullform.Offsets{}, err
	}
	if len(rows) < 3 {
		return hullform.Offsets{}, errors.New("the table needs a row of waterline heights and at least two stations")
	}
	t := table{decimal: decimal}
	if err := t.heading(rows[0]); err != nil {
		return hullform.Offsets{}, fmt.Errorf("line %d: %w", lines[0], err)
	}
	for i, row := range rows[1:] {
		if err := t.station(row); err != nil {
			return hullform.Offsets{}, fmt.Errorf("line %d: %w", lines[i+1], err)
		}
	}
	return t.out, nil
}

// cells parts the text into rows of cells and says on which line each row begins and whether numbers may have a decimal comma.
func cells(data []byte) (rows [][]string, lines []int, decimal bool, err error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	r := csv.NewReader(bytes.NewReader(data))
	r.Comment, r.FieldsPerRecord, r.LazyQuotes, r.TrimLeadingSpace = '#', -1, true, false
	for _, mark := range ";\t" {
		if bytes.ContainsRune(firstRow(data), mark) {
			r.Comma, decimal = mark, true
			break
		}
	}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return rows, lines, decimal, nil
		}
		if err != nil {
			return nil, nil, false, err
		}
		if blank(row) {
			continue
		}
		line, _ := r.FieldPos(0)
		rows, lines = append(rows, row), append(lines, line)
	}
}

// firstRow is the first line that is no remark, nil when there is none.
func firstRow(data []byte) []byte {
	for line := range bytes.Lines(data) {
		if t := bytes.TrimSpace(line); len(t) > 0 && t[0] != '#' {
			return line
		}
	}
	return nil
}

func blank(row []string) bool {
	for _, c := range row {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

// table is what has been read so far.
type table struct {
	decimal bool
	columns []column
	out     hullform.Offsets
}

// column says what a column after the first holds.
type column int

const (
	halfBreadth column = iota
	keel
	deck
	deckHalfBreadth
	nothing
)

func (t *table) heading(row []string) error {
	for i, c := range row[1:] {
		kind, z, err := t.headed(c)
		if err != nil {
			return fmt.Errorf("column %d: %w", i+2, err)
		}
		if kind == halfBreadth {
			t.out.Waterlines = append(t.out.Waterlines, z)
		}
		t.columns = append(t.columns, kind)
	}
	if len(t.out.Waterlines) < 2 {
		return fmt.Errorf("%d waterline heights are given, at least 2 are needed", len(t.out.Waterlines))
	}
	return nil
}

// headed reads one cell of the first row.
func (t *table) headed(cell string) (column, float64, error) {
	word := strings.NewReplacer("_", " ", "-", " ").Replace(strings.ToLower(strings.TrimSpace(cell)))
	switch word {
	case "":
		return nothing, 0, nil
	case "keel":
		return keel, 0, nil
	case "deck":
		return deck, 0, nil
	case "deck half breadth":
		return deckHalfBreadth, 0, nil
	}
	z, err := t.number(cell)
	if err != nil {
		return 0, 0, fmt.Errorf("%q is neither a waterline height nor keel, deck or deck half-breadth", cell)
	}
	return halfBreadth, z, nil
}

func (t *table) station(row []string) error {
	x, err := t.number(row[0])
	if err != nil {
		return fmt.Errorf("station: %w", err)
	}
	var half []float64
	extra := map[column]float64{}
	for i, kind := range t.columns {
		v := math.NaN()
		if i+1 < len(row) {
			if v, err = t.optional(row[i+1]); err != nil {
				return fmt.Errorf("column %d: %w", i+2, err)
			}
		}
		if kind == halfBreadth {
			half = append(half, v)
		} else {
			extra[kind] = v
		}
	}
	t.out.Stations, t.out.HalfBreadths = append(t.out.Stations, x), append(t.out.HalfBreadths, half)
	for kind, list := range map[column]*[]float64{keel: &t.out.Keel, deck: &t.out.Deck, deckHalfBreadth: &t.out.DeckHalfBreadths} {
		if v, ok := extra[kind]; ok {
			*list = append(*list, v)
		}
	}
	return nil
}

// optional reads a cell; NaN stands for one that is empty or a dash.
func (t *table) optional(cell string) (float64, error) {
	switch strings.TrimSpace(cell) {
	case "", "-", "–", "—":
		return math.NaN(), nil
	}
	return t.number(cell)
}

func (t *table) number(cell string) (float64, error) {
	s := strings.TrimSpace(cell)
	if t.decimal {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a number", cell)
	}
	return v, nil
}
