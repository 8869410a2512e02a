package page

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"oakum/print/pdftext"
)

func blank(t *testing.T) *Document {
	t.Helper()
	d, err := New(Head{Ship: "Trial", Title: "Trial paper", Day: "2026-11-25", Snapshot: strings.Repeat("ab", 32), Size: "A4"})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func read(t *testing.T, d *Document) []string {
	t.Helper()
	var out bytes.Buffer
	if err := d.Write(&out); err != nil {
		t.Fatal(err)
	}
	pages, err := pdftext.Pages(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func TestTableRepeatsItsHeadAndLosesNoRow(t *testing.T) {
	d := blank(t)
	tab := Table{Columns: []Column{{Head: "Numero"}, {Head: "Text", Share: 1}}}
	for i := range 300 {
		tab.Rows = append(tab.Rows, []string{fmt.Sprintf("row %d.", i), strings.Repeat("long words ", i%40)})
	}
	d.Table(tab)
	pages := read(t, d)
	if len(pages) < 5 {
		t.Fatalf("only %d pages", len(pages))
	}
	for i, p := range pages {
		if strings.Count(p, "Numero") != 1 {
			t.Errorf("page %d has the head %d times", i+1, strings.Count(p, "Numero"))
		}
	}
	all := strings.Join(pages, "\n")
	for i := range 300 {
		if !strings.Contains(all, fmt.Sprintf("row %d.", i)) {
			t.Errorf("row %d is lost", i)
		}
	}
}

func TestRowTallerThanAPageIsCut(t *testing.T) {
	d := blank(t)
	words := make([]string, 3000)
	for i := range words {
		words[i] = fmt.Sprintf("word%d", i)
	}
	d.Table(Table{Columns: []Column{{Head: "A"}, {Head: "B", Share: 1}}, Rows: [][]string{{"a", strings.Join(words, " ")}}})
	got := strings.Fields(strings.Join(read(t, d), " "))
	found := map[string]bool{}
	for _, w := range got {
		found[w] = true
	}
	for _, w := range words {
		if !found[w] {
			t.Fatalf("%s is lost", w)
		}
	}
}

func TestWrapKeepsNumberWithUnit(t *testing.T) {
	d := blank(t)
	d.set(Plain, BodySize)
	for width := 12.0; width < 60; width += 1.7 {
		for _, line := range d.wrap("it gains 1\u202f234\u202ft a year and -7 mm", width) {
			if strings.HasSuffix(line, "1") || strings.HasPrefix(line, "t ") {
				t.Errorf("at %.1f mm the number is torn: %q", width, line)
			}
		}
	}
	if got := d.wrap("by -7 mm", 100)[0]; got != "by \u22127 mm" {
		t.Errorf("minus: %q", got)
	}
}

func TestNothingIsWiderThanItsLine(t *testing.T) {
	d := blank(t)
	d.set(Plain, BodySize)
	for width := 5.0; width < 90; width += 3.1 {
		for _, line := range d.wrap("plating.rate@thickness-t1996-376 andalongwordwithoutanyseamatallthatmustbebroken x", width) {
			if d.pdf.GetStringWidth(line) > width {
				t.Errorf("%q is wider than %.1f mm", line, width)
			}
		}
	}
}

func TestOnePageShrinksThenShortens(t *testing.T) {
	for _, lines := range []int{5, 43, 120} {
		d := blank(t)
		shortened := false
		d.OnOnePage(func(d *Document, short bool) {
			shortened = short
			n := lines
			if short {
				n = 10
			}
			for range n {
				d.Text("a line")
			}
		})
		if d.Page() != 1 {
			t.Errorf("%d lines take %d pages", lines, d.Page())
		}
		if shortened != (lines == 120) {
			t.Errorf("%d lines: short is %v", lines, shortened)
		}
	}
}

// A step is 1, 2 or 5 times a power of ten, and no span is cut into more than twice as many parts as asked for.
func TestStepIsRound(t *testing.T) {
	for _, c := range []struct {
		span float64
		n    int
		want float64
	}{{10, 5, 2}, {100, 5, 20}, {0.37, 5, 0.1}, {3350, 8, 500}, {26, 8, 5}} {
		if got := Step(c.span, c.n); got != c.want {
			t.Errorf("Step(%v, %d) = %v, want %v", c.span, c.n, got, c.want)
		}
	}
}
