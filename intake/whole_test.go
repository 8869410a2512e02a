package intake

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// mess is what cells hold, and more.
var mess = []string{
	"", "", "37", "37 1/2", "38-39", "37½", "A", "K", "C", "P", "S", "stbd", "BB", "Q", "11.9", "11,9", ".465", "465", "1,234", "1.234", "20.4#", "20 lb", "3/8", `1/2"`, "12 1/2", "N/E", "N/A", "X", "-", "<.100", "0.412?", ".187/.201",
	"12,7; 11,9", `"`, "do", "ditto", "03/04/21", "14.6.2011", "2011-06-14", "pit 3 mm", "dbl", "no access", "hole", "Total", "Mean", "* note", "STRAKE D PORT", "example", "0", "-5", "1e9", "999999999999", "¼", "über", "=1+1", "#REF!",
	"6'-4", "DRY", "850", "-.80 V", "included", "NB", "1.538.088,00", "EUR 5", "USD 5", "\u00a0", "12:30",
}

var someHeads = [][]string{
	{"Rdg", "Fr", "Strake", "Side", "Orig", "Gauged", "Rem"},
	{"Nr", "Spant", "Gang", "Seite", "Orig. mm", "gem. mm", "Bemerkung"},
	{"Frame", "Plate", "Gauged P", "Gauged S", "Dim. P %", "Date", "Remarks"},
	{"Date", "Tank", "Sounding (cm)", "Ullage", "Product", "Remarks", "By"},
	{"Date", "Station", "Reading mV", "Electrode", "Depth", "Meter", "Remarks"},
	{"Item", "Description", "Qty", "Unit", "Rate", "Amount", "Remarks"},
	{"Date", "Amount", "From", "Fund", "Type", "Paper", "Notes"},
	{"a", "b", "c", "d", "e", "f", "g"},
}

// Identity: the rows that hold anything are those that gave records, those refused and those named, whatever stands in them.
func TestEveryRowIsAccountedFor(t *testing.T) {
	d := vessel(t)
	rapid.Check(t, func(rt *rapid.T) {
		comma := rapid.SampledFrom([]string{";", ",", "\t", "|"}).Draw(rt, "comma")
		var b strings.Builder
		for range rapid.IntRange(0, 2).Draw(rt, "titles") {
			b.WriteString(rapid.SampledFrom(mess).Draw(rt, "title") + "\n")
		}
		b.WriteString(strings.Join(rapid.SampledFrom(someHeads).Draw(rt, "heads"), comma) + "\n")
		for range rapid.IntRange(0, 12).Draw(rt, "rows") {
			b.WriteString(strings.Join(rapid.SliceOfN(rapid.SampledFrom(mess), 1, 9).Draw(rt, "cells"), comma) + "\n")
		}
		tb, err := Open("made.csv", []byte(b.String()), d)
		if err != nil {
			rt.Fatal(err)
		}
		if err := tb.Correct(tb.Guess().Usual()); err != nil {
			rt.Fatal(err)
		}
		tb.Preview(20)
		h, err := tb.Harvest()
		if err != nil {
			return // a question without a usual answer is open: nothing lands
		}
		rows := 0
		for r := range tb.sheets[0].rows {
			if !r.blank() {
				rows++
			}
		}
		if h.Rows != rows || h.Gave+len(h.Refused)+len(h.Named) != rows {
			rt.Fatalf("%d rows in %q: %d gave, %d refused, %d named", rows, b.String(), h.Gave, len(h.Refused), len(h.Named))
		}
	})
}

func FuzzOpen(f *testing.F) {
	names, _ := filepath.Glob("testdata/*.*")
	for _, name := range names {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(data)
		}
	}
	f.Add(classForm(f))
	f.Add([]byte("\xff\xfeF\x00r\x00;\x00\n\x00"))
	d := vessel(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<16 {
			return
		}
		tb, err := Open("file", data, d)
		if err != nil {
			return
		}
		if err := tb.Correct(tb.Guess().Usual()); err != nil {
			t.Fatal(err)
		}
		tb.Preview(10)
		if h, err := tb.Harvest(); err == nil {
			whole(t, tb, h)
		}
	})
}
