package intake

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/survey"
)

// fingerprint is a layout in short: its column heads in plain form.
func (t *Table) fingerprint() string {
	h := t.heads[t.main]
	if h.count == 0 {
		return ""
	}
	var plain []string
	for _, text := range h.headings {
		plain = append(plain, plainHead(text))
	}
	sum := sha256.Sum256([]byte(strings.TrimRight(strings.Join(plain, "|"), "|")))
	return hex.EncodeToString(sum[:8])
}

// remembered finds the newest mapping of this layout.
func (t *Table) remembered() (found dossier.Entry[survey.Mapping], ok bool) {
	mark := t.fingerprint()
	for _, e := range dossier.All[survey.Mapping](t.ship) {
		if mark != "" && e.Body.Fingerprint == mark && (!ok || e.At.After(found.At) || e.At.Equal(found.At) && e.ID > found.ID) {
			found, ok = e, true
		}
	}
	return found, ok
}

// recall takes a mapping as if somebody had said it, with the mapping as the reason.
func (t *Table) recall(e dossier.Entry[survey.Mapping]) {
	m := e.Body
	t.known = dossier.RecordOf(e)
	t.said.why = fmt.Sprintf("as in the layout %q, by which a file was read before", m.Name)
	t.guess.Known = m.Name
	if m.OfKind != t.guess.Kind {
		t.said.kind = &m.OfKind
	}
	text := func(to **string, s string) {
		if s != "" {
			*to = &s
		}
	}
	text(&t.said.decimal, m.Decimal)
	text(&t.said.dates, m.Dates)
	if k, ok := dossier.KindNamed(m.OfKind); ok {
		for i, line := range m.Meanings {
			parts := strings.Split(line, " = ")
			if len(parts) < 3 || i >= len(m.Headings) {
				continue
			}
			means, unit := parts[len(parts)-2], parts[len(parts)-1]
			if unit == "-" {
				unit = ""
			}
			if means == "-" {
				means = ""
			}
			if _, ok := parseMeaning(means, k); ok || means == "" {
				t.said.columns[i] = app.GuessedColumn{Index: i, Meaning: means, Unit: unit, Why: t.said.why}
			}
		}
	}
	for _, line := range m.Answers {
		if key, answer, ok := strings.Cut(line, " = "); ok {
			t.said.answers[key] = answer
		}
	}
	for _, line := range m.Facts {
		if key, answer, ok := strings.Cut(line, " = "); ok {
			t.said.facts[key] = answer
		}
	}
}

// lasting are facts that go for the next file of a firm too; a date or a report's name does not.
var lasting = map[string]bool{"firm": true, "instrument": true, "velocity": true, "taken_from": true, "paint": true, "electrode": true, "set": true, "gauge": true}

// Mapping implements app.Table. Read by a mapping that still fits, it is that record corrected; otherwise a new one.
func (t *Table) Mapping() dossier.Record {
	g := t.guess
	m := survey.Mapping{Name: t.mappingName(), OfKind: g.Kind, Fingerprint: t.fingerprint(), Delimiter: g.Delimiter, Decimal: g.Decimal, Dates: g.Dates, Unit: g.Unit}
	if m.Delimiter != "" {
		m.Delimiter = delimiterName(m.Delimiter)
	}
	for _, c := range g.Columns {
		m.Headings = append(m.Headings, orDash(strings.Join(strings.Fields(c.Heading), " ")))
		m.Meanings = append(m.Meanings, strings.Join([]string{orDash(strings.Join(strings.Fields(c.Heading), " ")), orDash(c.Meaning), orDash(c.Unit)}, " = "))
	}
	answers := map[string]string{}
	for _, q := range g.Questions {
		if q.Answer != "" && q.Key != "odd_unit" {
			answers[q.Key] = q.Answer
		}
	}
	for _, key := range slices.Sorted(maps.Keys(answers)) {
		m.Answers = append(m.Answers, key+" = "+answers[key])
	}
	for _, f := range g.Facts {
		if lasting[f.Field] && f.Text != "" {
			m.Facts = append(m.Facts, f.Field+" = "+f.Text)
		}
	}
	r := dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "mapping", Basis: field.Documented, From: t.name}, Body: &m}
	if t.known.Kind != "" {
		r.ID, r.Version = t.known.ID, t.known.Version
		m.Name = t.known.Body.(*survey.Mapping).Name
		m.Notes = t.known.Body.(*survey.Mapping).Notes
	}
	return r
}

func (t *Table) mappingName() string {
	for _, key := range []string{"firm", "yard", "survey"} {
		for _, f := range t.guess.Facts {
			if f.Field == key && f.Text != "" {
				return f.Text
			}
		}
	}
	return t.name
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// alreadyIn says when a file with these bytes was brought in.
func alreadyIn(d *dossier.Dossier, sum string) string {
	for _, e := range dossier.All[survey.Import](d) {
		if e.Body.SHA256 == sum {
			n := 0
			if e.Body.Records != nil {
				n = *e.Body.Records
			}
			return fmt.Sprintf("this very file was brought in on %s as %s, and gave %s", e.Body.Date.Words(), e.Body.File, plural(n, "record", "records"))
		}
	}
	return ""
}
