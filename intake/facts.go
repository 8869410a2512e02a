package intake

import (
	"fmt"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
	"oakum/ship"
)

// factWords are the lines above a table that say something for every row.
var factWords = []word{
	{"date", []string{"date", "date of survey", "survey date", "dates", "inspection date", "datum", "date of gauging", "surveyed", "gauged on", "date of inspection", "prufdatum"}},
	{"firm", []string{"firm", "company", "gauging firm", "service supplier", "contractor", "firma", "gauging company", "name of company"}},
	{"instrument", []string{"instrument", "gauge", "equipment", "gauge make", "meter", "gerat", "make and serial", "gauge make & serial", "probe"}},
	{"velocity", []string{"velocity", "sound velocity", "velocity of sound", "schallgeschwindigkeit", "velocity set", "v"}},
	{"who", []string{"operator", "surveyor", "read by", "taken by", "inspector", "by", "prufer"}},
	{"survey", []string{"survey", "report", "report no", "report number", "campaign", "job no", "title"}},
	{"side", []string{"side", "seite"}},
	{"strake", []string{"strake", "gang"}},
	{"paint", []string{"over paint", "through paint"}},
	{"electrode", []string{"electrode", "reference electrode", "reference cell", "half cell"}},
	{"set", []string{"rectifier", "set", "unit no", "impressed current set"}},
	{"tank", []string{"tank"}},
	{"yard", []string{"yard", "bidder"}},
	{"bid", []string{"bid"}},
	{"pot", []string{"pot", "fund", "account"}},
	{"product", []string{"product", "liquid"}},
	{"gauge", []string{"station", "gauge", "place"}},
}

// preamble is what stands above the heads, and in notes, as one line a row.
func (t *Table) preamble(i int) []row {
	var list []row
	top := t.heads[i].first
	for r := range t.sheets[i].rows {
		if r.n >= top || len(list) > 200 {
			break
		}
		if !r.blank() {
			list = append(list, r.kept())
		}
	}
	return list
}

// lookAtFacts finds what goes for every row.
func (t *Table) lookAtFacts() {
	k, _ := dossier.KindNamed(t.guess.Kind)
	found := map[string]app.GuessedFact{}
	add := func(key, text, why string) {
		if _, has := found[key]; has || text == "" {
			return
		}
		if f, ok := k.Field(key); ok && (key == "date" || !means(t.guess.Columns, key)) && fitsField(f, text) {
			found[key] = app.GuessedFact{Field: key, Text: text, Why: why}
		}
	}
	for _, r := range t.preamble(t.main) {
		for _, pair := range pairsOf(r) {
			for _, key := range factsNamed(pair[0], k) {
				add(key, pair[1], fmt.Sprintf("row %d says %q", r.n, pair[0]))
			}
		}
		if d, ok := dayIn(r.text()); ok {
			add("date", d, fmt.Sprintf("row %d holds a date", r.n))
		}
		for _, s := range sayings {
			if s.pattern.MatchString(r.text()) {
				add(s.field, s.text, fmt.Sprintf("row %d says %q", r.n, s.pattern.FindString(r.text())))
			}
		}
	}
	if name := strings.TrimSuffix(t.name, filepath.Ext(t.name)); name != "" {
		add("survey", strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '_' || r == ' ' }), " "), "from the name of the file")
		if m := yearIn.FindString(name); m != "" {
			add("date", m, "from the name of the file")
		}
	}
	for key, text := range t.said.facts {
		delete(found, key)
		if text != "" {
			found[key] = app.GuessedFact{Field: key, Text: text, Why: "said so"}
		}
	}
	for _, key := range slices.Sorted(maps.Keys(found)) {
		t.guess.Facts = append(t.guess.Facts, found[key])
	}
}

var yearIn = regexp.MustCompile(`\b(19[5-9]\d|20[0-4]\d)(-[01]\d(-[0-3]\d)?)?\b`)

// sayings are words above a table that mean a field.
var sayings = []struct {
	pattern     *regexp.Regexp
	field, text string
}{
	{regexp.MustCompile(`(?i)\b(in dry ?dock|in dock|docked|on blocks)\b`), "in_dock", "yes"},
	{regexp.MustCompile(`(?i)\b(afloat|at (her )?berth)\b`), "in_dock", "no"},
	{regexp.MustCompile(`(?i)\b(taken|read|gauged|from)( \w+)? (the )?inside\b|\bfrom inboard\b`), "taken_from", "inside"},
	{regexp.MustCompile(`(?i)\b(taken|read|gauged|from)( \w+)? (the )?outside\b`), "taken_from", "outside"},
	{regexp.MustCompile(`(?i)\bby divers?\b`), "taken_from", "diver"},
	{regexp.MustCompile(`(?i)\b(through|over) (the )?(paint|coating)\b`), "paint", "yes"},
	{regexp.MustCompile(`(?i)\b(bare steel|bright (metal|steel)|paint (removed|ground off))\b`), "paint", "no"},
}

// pairsOf finds "name: value" in the cells of a row, and a name in one cell with its value in the next.
func pairsOf(r row) [][2]string {
	var list [][2]string
	last := ""
	for i, c := range r.cells {
		if c == "" || c == last {
			continue
		}
		last = c
		for part := range strings.SplitSeq(c, ";") {
			name, value, ok := strings.Cut(part, ":")
			if ok && strings.TrimSpace(value) != "" {
				list = append(list, [2]string{strings.TrimSpace(name), strings.TrimSpace(value)})
			}
		}
		name := strings.TrimRight(c, ": ")
		for _, next := range r.cells[min(i+1, len(r.cells)):] {
			if next != "" && next != c {
				list = append(list, [2]string{name, next})
				break
			}
		}
	}
	return list
}

func factsNamed(name string, k dossier.Kind) []string {
	plain := plainHead(name)
	var keys []string
	for _, w := range factWords {
		for part := range strings.SplitSeq(plain, " / ") {
			if slices.Contains(w.heads, part) && !slices.Contains(keys, w.meaning) {
				keys = append(keys, w.meaning)
			}
		}
	}
	for _, f := range k.Fields {
		if plain == plainHead(f.Label) && !slices.Contains(keys, f.Key) {
			keys = append(keys, f.Key)
		}
	}
	return keys
}

// fitsField tells whether a text can be a field at all, so that a line of prose does not become a number.
func fitsField(f field.Field, text string) bool {
	switch f.Type {
	case field.Date:
		_, err := readDate(quantity.Habit{}, text)
		return err == nil
	case field.Number:
		_, err := quantity.Parse(text, unitOf(f))
		return err == nil
	case field.Enum:
		if f.Key == "side" {
			s, err := ship.ParseSide(text)
			return err == nil && s != ""
		}
		_, ok := enumWord(f, text)
		return ok
	case field.Text:
		return len(text) < 120
	}
	_, yesNo := enumSpellings[strings.ToLower(text)]
	return f.Type == field.Boolean && yesNo
}

var dayPattern = regexp.MustCompile(`(?i)\b(\d{4}-\d{2}(?:-\d{2})?|\d{1,2}\.? (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]* \d{4}|(?:january|february|march|april|may|june|july|august|september|october|november|december) \d{4})\b`)

// dayIn finds a date that can be read only one way in a line of words.
func dayIn(text string) (string, bool) {
	if m := dayRange.FindStringSubmatch(text); m != nil {
		return m[1], true // of several days the month is what is known
	}
	m := dayPattern.FindString(text)
	if m == "" {
		return "", false
	}
	r, err := quantity.ReadDate(m)
	return m, err == nil && len(r.Alternatives) == 0
}

func unitOf(f field.Field) string {
	if f.Unit == "" {
		return "-"
	}
	return f.Unit
}

var (
	dayRange  = regexp.MustCompile(`(?i)\b\d{1,2}\.?\s*(?:-|–|to|and|bis|&)\s*\d{1,2}\.?\s+([a-z]{3,9} \d{4})\b`)
	monthYear = regexp.MustCompile(`^(\d{1,2})[./](\d{4})$`)
)

// readDate reads a date as people write it: besides what package quantity reads, 10.1996 and 15-19 May 2023, of which the month is known.
func readDate(h quantity.Habit, text string) (quantity.DateReading, error) {
	plain := strings.TrimSpace(text)
	if m := monthYear.FindStringSubmatch(plain); m != nil {
		plain = m[2] + "-" + m[1]
	} else if m := dayRange.FindStringSubmatch(plain); m != nil {
		plain = m[1]
	}
	return h.ReadDate(plain)
}
