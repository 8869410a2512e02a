package print

import (
	"bytes"
	"strings"
	"testing"

	"oakum/assess"
	"oakum/demo"
	"oakum/print/pdftext"
	"oakum/quantity"
)

func TestLabelsSayWhatATagMust(t *testing.T) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	on, _ := quantity.ParseDate("2026-11-25")
	b := assess.Assess(d, assess.PlanInForce(d), on)
	var pdf bytes.Buffer
	if err := Print(&pdf, b, "labels", "A4"); err != nil {
		t.Fatal(err)
	}
	pages, err := pdftext.Pages(pdf.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(strings.Join(pages, " ")), " ")
	for _, w := range []string{"CV-014", "Spare blade of 1931", "412.0 kg", "hung on the after hold bulkhead", "two straps, store 4", "record part-blade", "radium paint on the dial", "CV-001"} {
		if !strings.Contains(strings.ReplaceAll(said, "\u202f", " "), w) {
			t.Errorf("no label says %q:\n%s", w, said)
		}
	}
	for _, p := range b.Record.Parts {
		if code := labelOf(b, p).Code; len(code) < 40 || len(code) > 300 || !strings.Contains(code, p.ID) {
			t.Errorf("%s: a code of %d letters: %q", p.Name, len(code), code)
		}
	}
}
