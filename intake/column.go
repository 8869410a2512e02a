package intake

import (
	"fmt"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
)

// columnsOf guesses the meaning and unit of every column from its heading, or else from what stands in it.
func columnsOf(h heads, rows []row, p profile, names func(string) bool) []app.GuessedColumn {
	k, _ := dossier.KindNamed(p.kind)
	words := p.vocabulary()
	width := len(h.headings)
	for _, r := range rows {
		for i := width; i < len(r.cells); i++ {
			if r.cells[i] != "" {
				width = i + 1
			}
		}
	}
	list := make([]app.GuessedColumn, width)
	for i := range list {
		c := app.GuessedColumn{Index: i}
		if i < len(h.headings) {
			c.Heading, c.Unit = h.headings[i], h.units[i]
		}
		headMeans(&c, k, p, words)
		eachGroup(&c, k, p, words)
		if p.subject != "" && c.Heading != "" && (c.Meaning == "" || !strings.Contains(c.Why, "says so")) && names(c.Heading) {
			c.Meaning, c.Why = meaning{field: p.main, each: true}.String(), fmt.Sprintf("the heading %q names what was read", c.Heading)
		}
		list[i] = c
	}
	bareSides(list, k, p)
	strakeNumbers(list, rows)
	for i := range list {
		if list[i].Meaning == "" {
			contentMeans(&list[i], list, rows, k)
		}
	}
	once(list, k, p)
	return list
}

// headMeans reads a heading.
func headMeans(c *app.GuessedColumn, k dossier.Kind, p profile, words []word) {
	if c.Heading == "" {
		c.Why = "the column has no heading"
		return
	}
	if p.own && ownHead(c, k) {
		return
	}
	parts := strings.Split(c.Heading, " / ")
	share := strings.Contains(c.Heading, "%")
	for i, part := range parts {
		rest, unit := unitIn(part)
		if unit != "" && unit != "%" {
			c.Unit = unit
		}
		if unit != "%" {
			parts[i] = rest
		}
	}
	whole := plainHead(strings.Join(parts, " "))
	last := plainHead(parts[len(parts)-1])
	for _, text := range []string{whole, last} {
		if m, strength := meaningOf(text, words); strength >= 3 {
			c.Meaning, c.Why = m, fmt.Sprintf("the heading %q says so", c.Heading)
			inPerCent(c, share)
			return
		}
	}
	bare, side, end := facetOf(whole)
	m, strength := meaningOf(bare, words)
	lastBare, _, _ := facetOf(last)
	if l, s := meaningOf(lastBare, words); s >= strength && l != "" {
		m, strength = l, s
	}
	if bare == "" && (side != "" || end != "") {
		c.Meaning = meaning{"?", side, end, false}.String() // only a side: settled when all columns are known
		return
	}
	if m == "" {
		c.Why = "the heading is not known: say what it means, or leave the column out"
		return
	}
	if key := p.ended[strings.TrimPrefix(meaning{"", side, end, false}.String(), "_")]; key != "" && (m == p.main || m == "" || slices.Contains(p.needs, m)) {
		c.Meaning, c.Why = key, fmt.Sprintf("the heading %q says so", c.Heading)
		return
	}
	if !sided(m, k) {
		side, end = "", ""
	}
	c.Meaning = meaning{m, side, end, false}.String()
	c.Why = fmt.Sprintf("the heading %q says so", c.Heading)
	if strength < 2 {
		c.Why = fmt.Sprintf("the heading %q has the word in it", c.Heading)
	}
	inPerCent(c, share)
}

// eachGroup reads a head of two levels whose upper one names what the figures are of: a bidder over "unit" and "total".
func eachGroup(c *app.GuessedColumn, k dossier.Kind, p profile, words []word) {
	top, bottom, ok := strings.Cut(c.Heading, " / ")
	if p.subject == "" || !ok {
		return
	}
	if m, _ := meaningOf(plainHead(top), words); m != "" {
		return
	}
	rest, unit := unitIn(bottom)
	m, strength := meaningOf(plainHead(rest), words)
	if p.lower[plainHead(rest)] != "" {
		m, strength = p.lower[plainHead(rest)], 3
	}
	if f, isField := k.Field(m); strength >= 3 && isField && f.Type == field.Number {
		c.Meaning, c.Why = meaning{field: m, each: true}.String(), fmt.Sprintf("the upper heading %q names what it is of, the lower one says %s", top, f.Label)
		if unit != "" {
			c.Unit = unit
		}
	}
}

// ownHead reads a head of a template.
func ownHead(c *app.GuessedColumn, k dossier.Kind) bool {
	rest, unit := unitIn(c.Heading)
	for _, f := range k.Fields {
		switch plainHead(f.Label) {
		case plainHead(c.Heading):
			unit = ""
		case plainHead(rest):
		default:
			continue
		}
		c.Meaning, c.Unit, c.Why = f.Key, unit, "it is a head of the template"
		return true
	}
	return false
}

// inPerCent makes a loss in per cent of a loss whose heading carries the sign.
func inPerCent(c *app.GuessedColumn, share bool) {
	if tail, isLoss := strings.CutPrefix(c.Meaning, meansLoss); share && isLoss && !strings.HasPrefix(tail, "_percent") {
		c.Meaning = meansLossShare + tail
	}
}

// bareSides settles columns headed only with a side or an end: they hold the reading, unless another column does.
func bareSides(list []app.GuessedColumn, k dossier.Kind, p profile) {
	taken := false
	for _, c := range list {
		taken = taken || c.Meaning == p.main
	}
	for i, c := range list {
		tail, bare := strings.CutPrefix(c.Meaning, "?")
		if !bare {
			continue
		}
		list[i].Meaning = ""
		if key := p.ended[strings.TrimPrefix(tail, "_")]; key != "" {
			list[i].Meaning, list[i].Why = key, fmt.Sprintf("the heading %q says so", c.Heading)
			continue
		}
		if p.main == "" || taken {
			list[i].Why = "the heading only names a side: say what the column holds"
			continue
		}
		if m, ok := parseMeaning(p.main+tail, k); ok {
			list[i].Meaning = m.String()
			list[i].Why = fmt.Sprintf("the heading %q only names a side or an end, so it holds the reading there", c.Heading)
		}
	}
}

// once leaves out a second column of one meaning. Several columns of readings are several readings of one place, and several of remarks are joined.
func once(list []app.GuessedColumn, k dossier.Kind, p profile) {
	first := map[string]int{}
	for i := range list {
		c := &list[i]
		if c.Meaning == "" || derived[strings.SplitN(c.Meaning, "_", 2)[0]] != "" {
			continue
		}
		at, twice := first[c.Meaning]
		if !twice {
			first[c.Meaning] = i
			continue
		}
		if strings.HasSuffix(c.Meaning, "_each") {
			continue
		}
		m, _ := parseMeaning(c.Meaning, k)
		f, _ := k.Field(m.field)
		if m.field == p.main && f.Type == field.Number && p.kind == "thickness" || m.field == "notes" {
			c.Why = "as column " + columnName(at) + ": both are kept"
			continue
		}
		if m.field == "original" && c.Unit != list[at].Unit {
			c.Why = "as column " + columnName(at) + ", for the rows where that is blank"
			continue
		}
		c.Meaning, c.Why = "", "column "+columnName(at)+" holds this already"
	}
}
