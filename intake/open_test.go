package intake

import (
	"os"
	"testing"

	"oakum/dossier"
	"oakum/ship"
)

func vessel(t *testing.T) *dossier.Dossier {
	t.Helper()
	d := dossier.New()
	last := 152.0
	first := 0.0
	records := []dossier.Record{{Head: dossier.Head{ID: "frames", Kind: "frame_system"}, Body: &ship.FrameSystem{Name: "frames", Origin: "after perpendicular", First: &first, Last: &last, Direction: "forward"}}}
	for i, n := range []string{"K", "A", "B", "C", "D", "E", "F", "G", "H", "J"} {
		order := i
		records = append(records, dossier.Record{Head: dossier.Head{ID: "strake-" + string(rune('a'+i)), Kind: "strake"}, Body: &ship.Strake{Name: n, Order: &order}})
	}
	if err := d.Put(records...); err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDump(t *testing.T) {
	name := os.Getenv("DUMP")
	if name == "" {
		name = "testdata/surveyor-list.csv"
	}
	data, err := os.ReadFile(name)
	if name == "class" {
		name, data, err = "shell.xlsx", classForm(t), nil
	}
	if err != nil {
		t.Fatal(err)
	}
	tb, err := Open(name, data, vessel(t))
	if err != nil {
		t.Fatal(err)
	}
	g := tb.Guess()
	t.Log(g.Kind, g.Layout, "enc", g.Encoding, "dec", g.Decimal, "dates", g.Dates, "unit", g.Unit, g.Landed)
	for _, s := range g.Sheets {
		t.Logf("sheet %+v", s)
	}
	for _, c := range g.Columns {
		t.Logf("col %s %q = %q [%s] %s", columnName(c.Index), c.Heading, c.Meaning, c.Unit, c.Why)
	}
	for _, f := range g.Facts {
		t.Logf("fact %+v", f)
	}
	for _, w := range g.Why {
		t.Logf("why %s: %s", w.What, w.Why)
	}
	for _, q := range g.Questions {
		t.Logf("ask %s: %s (%s) usual %s answer %q %v", q.Key, q.Ask, q.Why, q.Usual, q.Answer, q.Options)
	}
	if err := tb.Correct(g.Usual()); err != nil {
		t.Fatal(err)
	}
	for _, p := range tb.Preview(25) {
		t.Logf("row %d %s %q -> %q refused %q", p.Row, p.As, p.Cells, p.Becomes, p.Refused)
	}
	h, err := tb.Harvest()
	t.Log(h.Rows, "gave", h.Gave, "records", len(h.Records), "refused", len(h.Refused), "named", len(h.Named), err)
	for _, r := range h.Records[:min(3, len(h.Records))] {
		t.Logf("%+v", r.Head)
	}
}
