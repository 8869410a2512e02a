package intake

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Bounds of what a workbook may unpack to, in bytes, so that a small file can't fill the machine.
const (
	mostUnpacked = 2 << 30
	mostPart     = 256 << 20
	mostFilled   = 200_000 // cells that merged ranges may fill
)

var (
	oleMark = []byte{0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1}
	zipMark = []byte("PK\x03\x04")
)

// refuseForeign refuses in words the files that are neither text nor a workbook that can be read.
func refuseForeign(data []byte) error {
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return errors.New("the file is empty")
	case bytes.HasPrefix(data, oleMark):
		return errors.New("the file is an old workbook (.xls) or one with a password: open it in its program, take the password off, and save it as .xlsx or CSV")
	case bytes.HasPrefix(data, zipMark) && bytes.Contains(data[:min(len(data), 200)], []byte("opendocument")):
		return errors.New("the file is an OpenDocument sheet: save it as .xlsx or CSV")
	case bytes.HasPrefix(data, []byte("%PDF")):
		return errors.New("the file is a PDF, a picture of a table: type its figures into a template, and keep the PDF as a document")
	case bytes.HasPrefix(data, []byte("\x89PNG")), bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return errors.New("the file is a photograph: type its figures into a template, and keep the photograph as a photograph")
	}
	if even, odd := zeros(data[:min(4096, len(data))]); !bytes.HasPrefix(data, zipMark) && even > 0 && odd > 0 && even+odd > len(data[:min(4096, len(data))])/8 {
		return errors.New("the file is neither text nor a workbook")
	}
	return nil
}

func isWorkbook(data []byte) bool { return bytes.HasPrefix(data, zipMark) }

// workbook reads every sheet of an .xlsx file.
func workbook(data []byte) (sheets []sheet, err error) {
	defer func() {
		if r := recover(); r != nil {
			sheets, err = nil, fmt.Errorf("the workbook is damaged: %v", r)
		}
	}()
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true, UnzipSizeLimit: mostUnpacked, UnzipXMLSizeLimit: mostPart})
	if err != nil {
		return nil, fmt.Errorf("the workbook can't be opened: %w", err)
	}
	defer f.Close()
	kinds := styles(f)
	for _, name := range f.GetSheetList() {
		s, err := oneSheet(f, name, kinds)
		if err != nil {
			return nil, fmt.Errorf("sheet %q can't be read: %w", name, err)
		}
		sheets = append(sheets, s)
	}
	if len(sheets) == 0 {
		return nil, errors.New("the workbook has no sheets of cells")
	}
	return sheets, nil
}

func oneSheet(f *excelize.File, name string, styles map[int]numberForm) (sheet, error) {
	it, err := f.Rows(name)
	if err != nil {
		return sheet{}, err
	}
	defer it.Close()
	var table [][]string
	for it.Next() {
		cells, err := it.Columns()
		if err != nil {
			return sheet{}, err
		}
		for i, c := range cells {
			cells[i] = strings.TrimSpace(c)
			if len(styles) > 0 && numeric(cells[i]) {
				cells[i] = shownAs(f, name, i, len(table), cells[i], styles)
			}
			if len(cells[i]) > 15 && numeric(cells[i]) {
				cells[i] = short(cells[i])
			}
		}
		table = append(table, cells)
	}
	if err := it.Error(); err != nil {
		return sheet{}, err
	}
	s := sheet{name: name, count: len(table)}
	filled, err := fillMerged(f, name, table)
	if err != nil {
		return sheet{}, err
	}
	if filled > 0 {
		s.note = plural(filled, "merged range was", "merged ranges were") + " filled with the text that stands in it"
	}
	s.rows = func(yield func(row) bool) {
		for i, cells := range table {
			if !yield(row{i + 1, cells}) {
				return
			}
		}
	}
	return s, nil
}

// fillMerged puts the text of a merged range into every cell of it.
func fillMerged(f *excelize.File, name string, table [][]string) (filled int, err error) {
	merged, err := f.GetMergeCells(name)
	if err != nil {
		return 0, err
	}
	budget := mostFilled
	for _, m := range merged {
		c1, r1, err1 := excelize.CellNameToCoordinates(m.GetStartAxis())
		c2, r2, err2 := excelize.CellNameToCoordinates(m.GetEndAxis())
		if err1 != nil || err2 != nil || c2 < c1 || r2 < r1 || r1 > len(table) || c1 > len(table[r1-1]) {
			continue
		}
		text := table[r1-1][c1-1]
		r2 = min(r2, len(table))
		area := (c2 - c1 + 1) * (r2 - r1 + 1)
		if text == "" || area < 2 || area > budget {
			continue
		}
		budget -= area
		for r := r1; r <= r2; r++ {
			for len(table[r-1]) < c2 {
				table[r-1] = append(table[r-1], "")
			}
			for c := c1; c <= c2; c++ {
				table[r-1][c-1] = text
			}
		}
		filled++
	}
	return filled, nil
}

func numeric(s string) bool {
	if s == "" || s[0] != '-' && s[0] != '.' && (s[0] < '0' || s[0] > '9') {
		return false
	}
	_, err := strconv.ParseFloat(s, 64)
	return err == nil
}

// short gives a number with the fifteen figures that a spreadsheet keeps: 0.46500000000000002 is 0.465.
func short(s string) string {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return s
	}
	v, err = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 15, 64), 64)
	if err != nil {
		return s
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
