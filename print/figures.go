package print

import (
	"fmt"
	"strings"

	"oakum/assess"
	"oakum/print/page"
)

// worry is how bad, in a word that stands where a screen has a colour.
func worry(level int) string {
	switch level {
	case 1:
		return "watch"
	case 2:
		return "act"
	case 3:
		return "NOW"
	}
	return ""
}

// sentence begins with a capital and ends with a stop.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s != "" && !strings.ContainsAny(s[len(s)-1:], ".?!:") {
		s += "."
	}
	return capital(s)
}

// sentences joins what is not empty, each a sentence.
func sentences(parts ...string) string {
	for i, p := range parts {
		parts[i] = sentence(p)
	}
	return words(" ", parts...)
}

// words joins what is not empty.
func words(between string, parts ...string) string {
	kept := parts[:0:0]
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, between)
}

// references numbers the sheets that a paper rests on, so that a line carries a number and the annex the whole name.
type references struct {
	order []string
	at    map[string]int
}

func (r *references) mark(sheet string) string {
	if sheet == "" {
		return ""
	}
	if r.at == nil {
		r.at = map[string]int{}
	}
	n, ok := r.at[sheet]
	if !ok {
		r.order = append(r.order, sheet)
		n = len(r.order)
		r.at[sheet] = n
	}
	return fmt.Sprintf("sheet %d", n)
}

// from says how a figure is known: the sheet that worked it out, or the basis of the record.
func (r *references) from(f assess.Figure) string {
	if m := r.mark(f.Sheet); m != "" {
		return m
	}
	return words(", ", string(f.Basis), f.From)
}

// figures prints figures as a table.
func (r *references) figures(d *page.Document, list []assess.Figure) {
	if len(list) == 0 {
		return
	}
	t := page.Table{Columns: []page.Column{{Head: "What", Share: 1}, {Head: "Where", Share: 1}, {Head: "Figure", Face: page.Bold}, {Head: "Worry", Face: page.Bold}, {Head: "How known"}, {Head: "Note", Share: 0.3}}}
	for _, f := range list {
		t.Rows = append(t.Rows, []string{f.Label, f.Place, f.Text, worry(f.Worry), r.from(f), f.Note})
	}
	d.Table(keep(t))
}

// list prints the sheets by number, with what each was worked for and what it gave.
func (r *references) list(d *page.Document, b *assess.Brief) {
	if len(r.order) == 0 {
		return
	}
	d.Heading("The sheets behind the figures")
	d.Note("Each can be printed and checked by hand: oakum paper FILE sheet:NAME.")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Sheet", Right: true}, {Head: "Name"}, {Head: "Worked for", Share: 1}, {Head: "Method"}}}
	m := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Method", Face: page.Bold}, {Head: "How good", Share: 1}}}
	told := map[string]bool{}
	for i, id := range r.order {
		s, ok := b.Sheet(id)
		if !ok {
			t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), id, "it can't be made again from these records", ""})
			continue
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), id, s.Subject, s.Title})
		if !told[s.Method] {
			told[s.Method] = true
			m.Rows = append(m.Rows, []string{s.Title, s.Accuracy})
		}
	}
	d.Table(t)
	d.Table(m)
}

// notices prints what to do, by whom and by when.
func notices(d *page.Document, list []assess.Notice, what string) {
	if len(list) == 0 {
		return
	}
	t := page.Table{Columns: []page.Column{{Head: what, Share: 1}, {Head: "What to do", Share: 1}, {Head: "By"}, {Head: "Who"}}}
	for _, n := range list {
		t.Rows = append(t.Rows, []string{words(", ", n.What, n.Place), capital(n.Do), n.Due, n.Who})
	}
	d.Table(keep(t))
}

// keep leaves out the columns that are empty in every row.
func keep(t page.Table) page.Table {
	out := page.Table{Size: t.Size, Heavy: t.Heavy, Rows: make([][]string, len(t.Rows))}
	for i, c := range t.Columns {
		full := false
		for _, row := range t.Rows {
			full = full || i < len(row) && row[i] != ""
		}
		if !full {
			continue
		}
		out.Columns = append(out.Columns, c)
		for k, row := range t.Rows {
			out.Rows[k] = append(out.Rows[k], row[i])
		}
	}
	return out
}
