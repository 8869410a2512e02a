package print

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"oakum/calc"
	"oakum/field"
	"oakum/print/page"
	"oakum/quantity"
)

// lines prints the inputs or the results of a sheet: single values in one table, then every table of its own, with no more than most rows; 0 is all.
func lines(d *page.Document, list []calc.Line, inputs bool, most int) {
	t := page.Table{Columns: []page.Column{{Head: "What", Share: 1}, {Head: "Symbol", Face: page.Italic}, {Head: "Value", Face: page.Bold}, {Head: "Eight times in ten"}, {Head: "How known"}}}
	var tables []calc.Line
	for _, l := range list {
		if _, ok := rowsOf(l.Value); ok && len(l.Fields) > 0 {
			tables = append(tables, l)
			continue
		}
		known := ""
		if inputs {
			known = words(", ", string(l.Basis), l.Note, typed(l))
		}
		t.Rows = append(t.Rows, []string{l.Label, symbol(l.Symbol), value(l), between(l), known})
	}
	if len(t.Rows) > 0 {
		d.Table(keep(t))
	}
	for _, l := range tables {
		d.Subheading(words(", ", capital(l.Label), string(l.Basis), l.Note))
		table(d, l.Value, l.Fields, most)
	}
}

func typed(l calc.Line) string {
	if l.Typed == "" || l.Typed == l.Text {
		return ""
	}
	return "typed as " + l.Typed
}

// between is the range that eight of ten draws lie in.
func between(l calc.Line) string {
	if l.P10 == nil || l.P90 == nil {
		return ""
	}
	lo, err := quantity.ToBase(*l.P10, l.Unit)
	hi, err2 := quantity.ToBase(*l.P90, l.Unit)
	if err != nil || err2 != nil {
		return ""
	}
	return quantity.Range(lo, hi, l.Unit)
}

// vanishing is what the rounding of the machine leaves of nothing: 1e-12 of a metre or a tonne.
const vanishing = 1e-12

// value is a line's value in words.
func value(l calc.Line) string {
	if x, isNumber := l.Value.(float64); isNumber && math.Abs(x) < vanishing {
		return plain(0.0, l.Unit)
	}
	if l.Text != "" {
		return l.Text
	}
	if group, ok := l.Value.(map[string]any); ok && small(group) {
		return grouped(group, l.Fields)
	}
	return plain(l.Value, l.Unit)
}

// small tells whether a group holds single values and short lists only: a hull's table of offsets is told by its size.
func small(group map[string]any) bool {
	for _, v := range group {
		switch x := v.(type) {
		case []any:
			if len(x) > 4 {
				return false
			}
		case map[string]any:
			return false
		}
	}
	return true
}

// grouped says each value of a group with its label and unit, in the order they are declared.
func grouped(group map[string]any, fields []field.Field) string {
	var parts []string
	for _, f := range fields {
		if v, ok := group[f.Key]; ok && v != nil {
			parts = append(parts, f.Label+" "+plain(v, f.Unit))
		}
	}
	return strings.Join(parts, "; ")
}

// plain puts any value of a sheet into words. A list too long to read says how long it is; the file of the dossier holds it.
func plain(v any, unit string) string {
	after := ""
	if unit != "" && unit != "-" {
		after = " " + unitText(unit)
	}
	switch x := v.(type) {
	case nil:
		return "unknown"
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case float64:
		return number(x) + after
	case string:
		return cmp.Or(clock(x), "unknown")
	case []any:
		if len(x) > 24 {
			return fmt.Sprintf("%d values, from %s to %s", len(x), plain(x[0], unit), plain(x[len(x)-1], unit))
		}
		parts := make([]string, len(x))
		for i, one := range x {
			parts[i] = plain(one, "")
		}
		return strings.Join(parts, "; ") + after
	case map[string]any:
		return described(x)
	}
	return fmt.Sprint(v)
}

// number keeps five figures, more than any measurement of a ship deserves, so that the working can be followed.
func number(x float64) string {
	text := fmt.Sprintf("%.5g", x)
	if strings.ContainsRune(text, 'e') {
		if whole := fmt.Sprintf("%.0f", x); len(whole) < 12 && (x > 1 || x < -1) {
			return strings.Replace(whole, "-", "−", 1)
		}
		base, power, _ := strings.Cut(text, "e")
		return strings.ReplaceAll(base+" × 10^"+exponent(power), "-", "−")
	}
	return strings.Replace(text, "-", "−", 1)
}

// exponent writes 6 for +06 and -6 for -06.
func exponent(power string) string {
	n, err := strconv.Atoi(power)
	if err != nil {
		return power
	}
	return strconv.Itoa(n)
}

func unitText(unit string) string {
	u, ok := quantity.Lookup(unit)
	if !ok {
		return unit
	}
	return u.Symbol
}

// rowsOf reads a value as the rows of a table.
func rowsOf(v any) ([]map[string]any, bool) {
	list, ok := v.([]any)
	if !ok || len(list) == 0 {
		return nil, false
	}
	rows := make([]map[string]any, 0, len(list))
	for _, one := range list {
		row, ok := one.(map[string]any)
		if !ok {
			return nil, false
		}
		rows = append(rows, row)
	}
	return rows, true
}

// table prints a table of a sheet, one column a field. With a limit of rows, as in a paper of many sheets, what is the same in every row is said once, a
// column that is left alone runs on as a list, and of a longer table rows are taken evenly along it; 0 prints all.
func table(d *page.Document, v any, fields []field.Field, most int) {
	rows, _ := rowsOf(v)
	t := page.Table{Size: page.Small}
	for _, f := range fields {
		c := page.Column{Head: f.Label, Right: f.Type == field.Number || f.Type == field.Integer}
		if f.Unit != "" && f.Unit != "-" {
			c.Head += ", " + unitText(f.Unit)
		}
		t.Columns = append(t.Columns, c)
	}
	for _, row := range rows {
		cells := make([]string, len(fields))
		for i, f := range fields {
			if x, ok := row[f.Key]; ok && x != nil {
				cells[i] = plain(x, "")
			}
		}
		t.Rows = append(t.Rows, cells)
	}
	if most == 0 {
		d.Table(keep(t))
		return
	}
	if t = once(d, t); len(t.Columns) == 1 && len(t.Rows) > 3 {
		column := make([]string, len(t.Rows))
		for i, row := range t.Rows {
			column[i] = row[0]
		}
		d.Note(t.Columns[0].Head + ": " + strings.Join(column, "; ") + ".")
		return
	}
	every := (len(t.Rows) + most - 1) / most
	d.Table(keep(thinned(t, every)))
	if every > 1 {
		d.Note(fmt.Sprintf("One row in %d, and the last, of %d; all of them stand on the sheet's own paper.", every, len(t.Rows)))
	}
}

// once says above a table what is the same in each of its rows, and leaves it out of them.
func once(d *page.Document, t page.Table) page.Table {
	if len(t.Rows) < 4 {
		return t
	}
	var same []string
	left := page.Table{Size: t.Size, Rows: make([][]string, len(t.Rows))}
	for i, c := range t.Columns {
		constant := true
		for _, row := range t.Rows {
			constant = constant && row[i] == t.Rows[0][i]
		}
		switch {
		case !constant:
			left.Columns = append(left.Columns, c)
			for k, row := range t.Rows {
				left.Rows[k] = append(left.Rows[k], row[i])
			}
		case t.Rows[0][i] != "":
			same = append(same, c.Head+" "+strings.ReplaceAll(t.Rows[0][i], "\n", ", "))
		}
	}
	if len(left.Columns) == 0 {
		return t
	}
	if len(same) > 0 {
		d.Note(fmt.Sprintf("The same in all %d rows: %s.", len(t.Rows), strings.Join(same, "; ")))
	}
	return left
}

// thinned takes one row in so many, and the last.
func thinned(t page.Table, every int) page.Table {
	if every < 2 {
		return t
	}
	var rows [][]string
	for i, row := range t.Rows {
		if i%every == 0 || i == len(t.Rows)-1 {
			rows = append(rows, row)
		}
	}
	t.Rows = rows
	return t
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// described says what a group of values holds: short ones in full, tables by their size.
func described(group map[string]any) string {
	var parts []string
	for _, key := range slices.Sorted(maps.Keys(group)) {
		name := strings.ReplaceAll(key, "_", " ")
		switch x := group[key].(type) {
		case nil:
			continue
		case []any:
			if len(x) > 4 {
				parts = append(parts, fmt.Sprintf("%s: %d", name, len(x)))
				continue
			}
		}
		parts = append(parts, name+": "+plain(group[key], ""))
	}
	return strings.Join(parts, "; ")
}
