package print_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/xuri/excelize/v2"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/intake"
	"oakum/plan"
	printing "oakum/print"
	"oakum/quantity"
)

// The form goes out, a yard fills it in a spreadsheet, and what comes back is read as a bid: rates as numbers, words as words, empty lines as blanks.
func TestTheFormOfBidComesBackAsABid(t *testing.T) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	on, _ := quantity.ParseDate("2026-11-25")
	var form bytes.Buffer
	if err := printing.BidForm(&form, assess.Assess(d, assess.PlanInForce(d), on)); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&form)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := f.GetRows("Bid")
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, r := range rows {
		if len(r) > 0 {
			at[r[0]] = i + 1
		}
	}
	for _, item := range []string{"1.01", "3.03", "6.01", "8.06", "L1", "L8"} {
		if at[item] == 0 {
			t.Fatalf("the form has no line %s", item)
		}
	}
	set := func(cell string, v any) {
		t.Helper()
		if err := f.SetCellValue("Bid", cell, v); err != nil {
			t.Fatal(err)
		}
	}
	cell := func(col, item string) string { return fmt.Sprint(col, at[item]) }
	set(cell("E", "6.01"), 412.5)
	set(cell("F", "6.01"), 412.5*96) // as a spreadsheet works it out and keeps it
	set(cell("E", "1.04"), "included")
	set(cell("F", "1.04"), "included")
	if got, err := f.CalcCellValue("Bid", cell("F", "3.02")); err != nil || got != "" {
		t.Errorf("an empty line is worth %q, %v", got, err)
	}
	var back bytes.Buffer
	if err := f.Write(&back); err != nil {
		t.Fatal(err)
	}
	lines := readBack(t, d, back.Bytes())
	if l := lines["6.01"]; l.UnitRate == nil || *l.UnitRate != 412.5 || l.Quantity == nil || *l.Quantity != 96 || l.Extension == nil || *l.Extension != 39600 {
		t.Errorf("anodes came back as %+v", l)
	}
	if l := lines["1.04"]; l.Entry != "included" {
		t.Errorf("a word came back as %+v", l)
	}
	if l := lines["3.02"]; l.Entry != "blank" || l.UnitRate != nil || l.Extension != nil {
		t.Errorf("an empty line came back as %+v", l)
	}
}

// readBack reads a filled form as the program reads any bid.
func readBack(t *testing.T, d *dossier.Dossier, file []byte) map[string]plan.BidLine {
	t.Helper()
	table, err := intake.Open("offer of a yard.xlsx", file, d)
	if err != nil {
		t.Fatal(err)
	}
	g := table.Guess()
	if g.Kind != "bid_line" {
		t.Fatalf("read as %q: %v", g.Kind, g.Why)
	}
	for i := range g.Questions {
		if g.Questions[i].Key == "bid" {
			g.Questions[i].Answer = "new:a yard"
		}
	}
	if err := table.Correct(g.Usual()); err != nil {
		t.Fatal(err)
	}
	h, err := table.Harvest()
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string]plan.BidLine{}
	for _, r := range h.Records {
		if b, ok := r.Body.(*plan.BidLine); ok {
			lines[b.Item] = *b
		}
	}
	return lines
}
