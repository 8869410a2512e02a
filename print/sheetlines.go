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
	return plain(l.Value, l.Unit)
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

// table prints a table of a sheet, one column a field, with no more than most rows; 0 is all.
func table(d *page.Document, v any, fields []field.Field, most int) {
	rows, _ := rowsOf(v)
	left := 0
	if most > 0 && len(rows) > most {
		left = len(rows) - most
		rows = rows[:most]
	}
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
	d.Table(keep(t))
	if left > 0 {
		d.Note(fmt.Sprintf("And %d rows more, on the sheet's own paper.", left))
	}
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
