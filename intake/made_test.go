package intake

import (
	"bytes"
	"testing"

	"github.com/xuri/excelize/v2"
)

// classForm makes a workbook as classification societies lay out gaugings: merged heads of two levels, forward and aft readings, port and starboard.
func classForm(t testing.TB) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	const s = "Shell"
	if err := f.SetSheetName("Sheet1", s); err != nil {
		t.Fatal(err)
	}
	rows := [][]any{
		{"Thickness measurement of shell plating"},
		{"Company:", "survey firm T", nil, "Date:", "May 2023"},
		{"Readings taken by divers; frames counted from the bow; frame 1 is the ship's 151"},
		{},
		{"Frame", "Plate", "Strake", "Org. thk mm", "FORWARD READING", nil, nil, nil, "AFT READING", nil, nil, nil, "Remarks"},
		{nil, nil, nil, nil, "Gauged P", "Gauged S", "Dim. P %", "Dim. S %", "Gauged P", "Gauged S", "Dim. P %", "Dim. S %", nil},
		{22, "5th fwd", 4, 12.0, 11.25, 11.3, 0.0625, 0.058, 10.9, "N/E", 0.09, nil, "pitted"},
		{"30½", "6th fwd", 5, 12.0, 11.1, "10.8 / 11.0", nil, nil, nil, 10.7, nil, nil, nil},
		{"STRAKE 6 AND ABOVE NOT ACCESSIBLE"},
		{38, "7th fwd", 4, 12.0, nil, nil, nil, nil, nil, nil, nil, nil, "no access"},
		{"Mean", nil, nil, 12.0, 11.175, nil, nil, nil, 10.9},
		{"* readings through paint"},
	}
	for i, cells := range rows {
		for j, v := range cells {
			if v == nil {
				continue
			}
			cell, _ := excelize.CoordinatesToCellName(j+1, i+1)
			if err := f.SetCellValue(s, cell, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, m := range [][2]string{{"A1", "M1"}, {"E5", "H5"}, {"I5", "L5"}, {"A5", "A6"}, {"B5", "B6"}, {"C5", "C6"}, {"D5", "D6"}, {"M5", "M6"}, {"A9", "M9"}} {
		if err := f.MergeCell(s, m[0], m[1]); err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
