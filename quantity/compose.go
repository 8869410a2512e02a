package quantity

import "strings"

// maxSpelling bounds the text taken for a unit, in bytes.
const maxSpelling = 48

// spelled finds the units of one clean spelling: a row of the table, or rows
// joined by "." and "/". Row first, so that "N/m2" is a pressure.
func spelled(text string) []Unit {
	if text == "" || len(text) > maxSpelling {
		return nil
	}
	if found := table.row(text); len(found) > 0 {
		return found
	}
	if u, ok := compose(text); ok {
		return []Unit{u}
	}
	if strings.Contains(text, " ") {
		return table.row(strings.ReplaceAll(text, " ", ".")) // "ohm cm"
	}
	return nil
}

// compose splits at the last "/" outside brackets, or else at the last ".",
// or takes a power of a length ("yd2").
func compose(text string) (Unit, bool) {
	if i := lastOutside(text, '/'); i > 0 {
		return join(text[:i], text[i+1:], "/")
	}
	if i := lastOutside(text, '.'); i > 0 {
		return join(text[:i], text[i+1:], ".")
	}
	return power(text)
}

func join(left, right, sign string) (Unit, bool) {
	a, okA := single(unbracket(left))
	b, okB := single(unbracket(right))
	if !okA || !okB || !joins(a) || !joins(b) || b.Key == "1" {
		return Unit{}, false
	}
	u := Unit{Key: a.Key + sign + bracket(b.Key), base: a.base + sign + bracket(b.base), Digits: 2}
	if sign == "/" {
		u.Scale = a.Scale / b.Scale
		u.Name, u.Plural = a.Name+" per "+b.Name, a.Plural+" per "+b.Name
	} else {
		u.Scale = a.Scale * b.Scale
		u.Name, u.Plural = a.Name+" "+b.Name, a.Name+" "+b.Plural
	}
	if a.Key == "1" {
		u.Name, u.Plural = "per "+b.Name, "per "+b.Name
	}
	return settle(u)
}

// joins tells whether a unit may be part of a composed one. A temperature has
// no true zero, a fraction no unit.
func joins(u Unit) bool { return u.Dim != DimTemperature && u.Key != "-" }

// settle gives a composed unit its dimension: that of the table where its base
// unit stands there, else one of its own, named by its base unit.
func settle(u Unit) (Unit, bool) {
	if rows := table.row(u.Key); len(rows) == 1 {
		return rows[0], true
	}
	u.Symbol = symbol(strings.TrimPrefix(u.Key, "money")) // "/d" after an amount of the ship's money
	u.Dim = Dimension(u.base)
	if base, ok := table.byBase(u.base); ok {
		u.Dim, u.Digits, u.base = base.Dim, base.Digits, base.Key
	}
	return u, true
}

func power(text string) (Unit, bool) {
	n := len(text) - 1
	if n < 1 || text[n] < '2' || text[n] > '4' {
		return Unit{}, false
	}
	rows := table.row(text[:n])
	if len(rows) != 1 || rows[0].Dim != DimLength || strings.Contains(rows[0].Key, "_") {
		return Unit{}, false
	}
	root, p := rows[0], text[n:]
	u := Unit{Key: root.Key + p, base: root.base + p, Scale: 1, Digits: 2}
	for range text[n] - '0' {
		u.Scale *= root.Scale
	}
	words := map[string]string{"2": " squared", "3": " cubed", "4": " to the fourth"}[p]
	u.Name, u.Plural = root.Name+words, root.Plural+words
	return settle(u)
}

// single finds the one unit of a spelling.
func single(text string) (Unit, bool) {
	found := spelled(text)
	if len(found) != 1 {
		return Unit{}, false
	}
	return found[0], true
}

func lastOutside(text string, sign byte) int {
	depth := 0
	for i := len(text) - 1; i >= 0; i-- {
		switch {
		case text[i] == ')':
			depth++
		case text[i] == '(':
			depth--
		case text[i] == sign && depth == 0:
			return i
		}
	}
	return -1
}

func unbracket(s string) string {
	s = strings.TrimSpace(s)
	if strings.HasPrefix(s, "(") && strings.HasSuffix(s, ")") {
		return s[1 : len(s)-1]
	}
	return s
}

func bracket(key string) string {
	if strings.ContainsAny(key, "./") {
		return "(" + key + ")"
	}
	return key
}
