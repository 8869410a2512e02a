package print

import (
	"cmp"
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"oakum/assess"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// Where the form of bid begins, and its columns.
const (
	bidSheet = "Bid"
	bidHead  = 8
)

var bidColumns = []struct {
	head string
	wide float64
}{{"Item", 9}, {"Description", 60}, {"Quantity", 12}, {"Unit", 9}, {"Rate", 14}, {"Amount", 16}, {"Remarks", 34}}

// bidRest are the lines that every bid is asked for beside the items, so that bids stand on one footing.
var bidRest = []struct{ item, what, per string }{
	{"L1", "Docking and undocking, lump sum", "piece"}, {"L2", "A lay day", "day"}, {"L3", "A day beyond those offered", "day"}, {"L4", "An hour of growth, all in", "hour"},
	{"L5", "Tow, there and back", "piece"}, {"L6", "Bond and insurance", "piece"}, {"L7", "Days offered from docking to undocking", "day"}, {"L8", "Left out by the bidder (write what)", ""},
}

// BidForm writes the form of bid as a workbook: quantities stand in it and are locked, rates and words are typed into it, amounts work themselves out. What
// comes back is read by the program as any bid is.
func BidForm(w io.Writer, b *assess.Brief) error {
	works := bidWorks(b)
	if len(works) == 0 {
		return field.Refuse("name", "the form of bid can't be made yet: no work is entered")
	}
	f := excelize.NewFile()
	defer f.Close()
	s := bidWriter{f: f, currency: currencyIn(b, "money")}
	s.check(f.SetSheetName("Sheet1", bidSheet))
	s.styles()
	s.top(b)
	row := bidHead + 1
	for _, e := range works {
		row = s.line(row, e.Body.Number, bidText(e.Body), e.Body.Quantity, e.Body.Per)
	}
	for _, l := range bidRest {
		row = s.line(row, l.item, l.what, nil, l.per)
	}
	s.foot(row)
	if s.err != nil {
		return s.err
	}
	return f.Write(w)
}

// bidWorks are the works that are asked for, by their numbers; those that wait for what the hull shows come last, with nominal quantities.
func bidWorks(b *assess.Brief) []dossier.Entry[plan.Work] {
	firm, contingent := specified(b)
	return append(firm, contingent...)
}

func bidText(w plan.Work) string {
	if isContingent(w) {
		return w.Name + " (only if the hull asks for it; the quantity is nominal)"
	}
	return w.Name
}

type bidWriter struct {
	f        *excelize.File
	currency string
	plain    int // locked
	open     int // to be typed into
	amount   int
	bold     int
	err      error
}

func (s *bidWriter) check(err error) { s.err = cmp.Or(s.err, err) }

func (s *bidWriter) set(col string, row int, v any) {
	s.check(s.f.SetCellValue(bidSheet, fmt.Sprint(col, row), v))
}

func (s *bidWriter) styles() {
	edge := []excelize.Border{{Type: "bottom", Color: "999999", Style: 1}}
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	style := func(st *excelize.Style) int {
		id, err := s.f.NewStyle(st)
		s.check(err)
		return id
	}
	s.plain = style(&excelize.Style{Border: edge, Alignment: top})
	s.open = style(&excelize.Style{Border: []excelize.Border{{Type: "bottom", Color: "000000", Style: 1}, {Type: "left", Color: "000000", Style: 1}, {Type: "right", Color: "000000", Style: 1}}, Alignment: top, Protection: &excelize.Protection{Locked: false}})
	s.amount = style(&excelize.Style{Border: edge, Alignment: top, CustomNumFmt: new("#,##0.00"), Protection: &excelize.Protection{Locked: false}})
	s.bold = style(&excelize.Style{Font: &excelize.Font{Bold: true}, Border: []excelize.Border{{Type: "bottom", Color: "000000", Style: 2}}, Alignment: top})
}

func (s *bidWriter) top(b *assess.Brief) {
	for i, text := range []string{
		b.Name + ": form of bid, items of the specification as of " + b.Day.Words(),
		"Yard:", "Bid valid until:",
		"Type a rate in " + s.currency + " in every line, or one of the words: included, by owner, no bid. An empty line will be asked about; it is never taken for nothing to pay.",
		"Quantities are those known on the day above; they are measured when done and paid at the rate. The specification governs; this form is no contract and no permit.",
		"From the records " + b.Snapshot[:min(16, len(b.Snapshot))],
	} {
		s.set("A", i+1, text)
	}
	s.check(s.f.SetCellStyle(bidSheet, "A1", "A1", s.bold))
	s.check(s.f.SetCellStyle(bidSheet, "C2", "E3", s.open))
	for i, c := range bidColumns {
		col := string(rune('A' + i))
		head := c.head
		if head == "Rate" || head == "Amount" {
			head += " " + s.currency
		}
		s.set(col, bidHead, head)
		s.check(s.f.SetColWidth(bidSheet, col, col, c.wide))
	}
	s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("A", bidHead), fmt.Sprint("G", bidHead), s.bold))
}

// line writes one item; a quantity that nobody knows is left to the bidder.
func (s *bidWriter) line(row int, item, what string, quantity *float64, per string) int {
	s.set("A", row, item)
	s.set("B", row, what)
	s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("A", row), fmt.Sprint("D", row), s.plain))
	if quantity != nil {
		s.set("C", row, *quantity)
	} else {
		s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("C", row), fmt.Sprint("C", row), s.open))
	}
	s.set("D", row, per)
	s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("E", row), fmt.Sprint("G", row), s.open))
	s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("F", row), fmt.Sprint("F", row), s.amount))
	times := fmt.Sprintf("IF(ISNUMBER(C%d),C%d,1)*E%d", row, row, row)
	s.check(s.f.SetCellFormula(bidSheet, fmt.Sprint("F", row), fmt.Sprintf(`IF(ISNUMBER(E%d),%s,IF(E%d="","",E%d))`, row, times, row, row)))
	return row + 1
}

func (s *bidWriter) foot(row int) {
	s.set("B", row, "Sum of the amounts (days and rates for growth are not in it)")
	s.check(s.f.SetCellFormula(bidSheet, fmt.Sprint("F", row), fmt.Sprintf("SUM(F%d:F%d)", bidHead+1, row-1-len(bidRest))))
	s.check(s.f.SetCellStyle(bidSheet, fmt.Sprint("A", row), fmt.Sprint("G", row), s.bold))
	s.check(s.f.SetPanes(bidSheet, &excelize.Panes{Freeze: true, YSplit: bidHead, TopLeftCell: fmt.Sprint("A", bidHead+1), ActivePane: "bottomLeft"}))
	s.check(s.f.SetPageLayout(bidSheet, &excelize.PageLayoutOptions{Size: new(9), Orientation: new("landscape"), FitToWidth: new(1), FitToHeight: new(0)}))
	s.check(s.f.SetSheetProps(bidSheet, &excelize.SheetPropsOptions{FitToPage: new(true)}))
	s.check(s.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("%s!$%d:$%d", bidSheet, bidHead, bidHead), Scope: bidSheet}))
	s.check(s.f.ProtectSheet(bidSheet, &excelize.SheetProtectionOptions{SelectLockedCells: true, SelectUnlockedCells: true, FormatColumns: true, FormatRows: true}))
}
