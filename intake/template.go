package intake

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"regexp"
	"strings"

	"github.com/xuri/excelize/v2"

	"oakum/dossier"
	"oakum/field"
)

// templateTitle stands above the heads of a template, so that a filled one is known again.
var templateTitle = regexp.MustCompile(`^Template for .+ \[([a-z_]+)\]`)

// exampleNote marks the example row of a template; such a row is never read as a record.
const exampleNote = "example, not read"

// Template makes a file to fill for a kind of record: heads with their units, and one example row that is ignored on reading. form is csv or xlsx.
func (Reader) Template(kind, form string) ([]byte, error) {
	k, ok := dossier.KindNamed(kind)
	if !ok {
		return nil, field.Refuse("kind", "%q is not a kind of record", kind)
	}
	if k.Single {
		return nil, field.Refuse("kind", "the ship's %s are entered by hand: there is one of them", k.Plural)
	}
	fields := templateFields(k)
	rows := [][]string{
		{fmt.Sprintf("Template for %s [%s]. Fill rows under the example; columns that you don't need may stay empty. Dates as 2024-05-14, or 2024-05, or 2024.", k.Plural, k.Name)},
		{"Row"}, {exampleNote},
	}
	for _, f := range fields {
		rows[1] = append(rows[1], templateHead(f))
		rows[2] = append(rows[2], exampleOf(f))
	}
	if form == "csv" {
		return templateCSV(rows)
	}
	return templateWorkbook(k, fields, rows)
}

// templateFields are the fields that fit into a cell of a table.
func templateFields(k dossier.Kind) []field.Field {
	var list []field.Field
	for _, f := range k.Fields {
		if f.Type != field.Grid && f.Type != field.Table && f.Type != field.Group && f.Of != "photo" {
			list = append(list, f)
		}
	}
	return list
}

func templateHead(f field.Field) string {
	head := strings.ToUpper(f.Label[:1]) + f.Label[1:]
	if f.Unit != "" && f.Unit != "-" && f.Unit != "money" {
		head += " [" + f.Unit + "]"
	}
	return head
}

// exampleOf is a value that shows how a cell is filled.
func exampleOf(f field.Field) string {
	switch f.Key {
	case "frame":
		return "37½"
	case "strake":
		return "C"
	case "side":
		return "port"
	case "frame_to", "strake_to", "offset", "where":
		return ""
	case "time":
		return "14:30"
	}
	switch f.Type {
	case field.Date:
		return "2024-05-14"
	case field.Enum:
		if f.Default != "" {
			return f.Default
		}
		return f.Enum[0]
	case field.Boolean:
		return "yes"
	case field.Number, field.Integer:
		if f.Default != "" {
			return f.Default
		}
		return exampleNumber(f)
	case field.Text:
		if f.Required {
			return "its name"
		}
	}
	return ""
}

func exampleNumber(f field.Field) string {
	v := 10.0
	if f.Max != nil && v > *f.Max {
		v = *f.Max
	}
	if f.Min != nil && v < *f.Min {
		v = *f.Min
	}
	return fmt.Sprintf("%g", v)
}

func templateCSV(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString("\ufeff") // so that office programs read it as UTF-8
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// templateWorkbook adds to the rows: bold heads, lists of the words allowed, and a second sheet that says what each column means.
func templateWorkbook(k dossier.Kind, fields []field.Field, rows [][]string) ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	sheet := sheetName(k.Plural)
	if err := f.SetSheetName("Sheet1", sheet); err != nil {
		return nil, err
	}
	for i, cells := range rows {
		for j, c := range cells {
			if err := f.SetCellStr(sheet, cellName(j, i), c); err != nil {
				return nil, err
			}
		}
	}
	if err := dress(f, sheet, len(rows[1])); err != nil {
		return nil, err
	}
	for j, fl := range fields {
		if err := allow(f, sheet, j+1, fl); err != nil {
			return nil, err
		}
	}
	if err := explain(f, fields); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func sheetName(s string) string {
	if r := []rune(s); len(r) > 31 {
		return string(r[:31]) // the most a workbook takes
	}
	return s
}

func cellName(col, line int) string {
	name, err := excelize.CoordinatesToCellName(col+1, line+1)
	if err != nil {
		return "A1"
	}
	return name
}

// dress makes heads bold, the example grey, and keeps the heads in sight.
func dress(f *excelize.File, sheet string, width int) error {
	bold, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}, Border: []excelize.Border{{Type: "bottom", Style: 1, Color: "000000"}}})
	if err != nil {
		return err
	}
	grey, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Italic: true, Color: "6B6B6B"}})
	if err != nil {
		return err
	}
	if err := f.SetCellStyle(sheet, cellName(0, 1), cellName(width-1, 1), bold); err != nil {
		return err
	}
	if err := f.SetCellStyle(sheet, cellName(0, 2), cellName(width-1, 2), grey); err != nil {
		return err
	}
	if err := f.SetColWidth(sheet, "A", "A", 18); err != nil {
		return err
	}
	return f.SetPanes(sheet, &excelize.Panes{Freeze: true, YSplit: 2, TopLeftCell: "A3", ActivePane: "bottomLeft"})
}

// mostListed bounds the letters of a list of words in a cell (a limit of the format).
const mostListed = 255

// allow offers the words of a list in the cells of its column.
func allow(f *excelize.File, sheet string, col int, fl field.Field) error {
	if fl.Type != field.Enum || len(strings.Join(fl.Enum, ",")) > mostListed {
		return nil
	}
	name, err := excelize.ColumnNumberToName(col + 1)
	if err != nil {
		return err
	}
	v := excelize.NewDataValidation(true)
	v.Sqref = name + "3:" + name + "5000"
	if err := v.SetDropList(fl.Enum); err != nil {
		return err
	}
	v.ShowErrorMessage = false // another word is allowed: it is read or refused with its reason
	return f.AddDataValidation(sheet, v)
}

// explain writes the second sheet.
func explain(f *excelize.File, fields []field.Field) error {
	const sheet = "What the columns mean"
	if _, err := f.NewSheet(sheet); err != nil {
		return err
	}
	rows := [][]string{{"In the column", "Write", "To know"}}
	for _, fl := range fields {
		write := string(fl.Type)
		switch {
		case fl.Type == field.Enum:
			write = "one of: " + strings.Join(fl.Enum, ", ")
		case fl.Of != "":
			write = "the name of a " + words(fl.Of)
		case fl.Unit != "" && fl.Unit != "-":
			write = "number in " + unitWordsOf(fl.Unit) + ", or with its own unit"
		}
		need := "may stay empty"
		if fl.Required {
			need = "must be there"
		}
		rows = append(rows, []string{templateHead(fl), write, strings.TrimPrefix(fl.Help+"; "+need, "; ")})
	}
	for i, cells := range rows {
		for j, c := range cells {
			if err := f.SetCellStr(sheet, cellName(j, i), c); err != nil {
				return err
			}
		}
	}
	return f.SetColWidth(sheet, "A", "C", 40)
}
