package intake

import (
	"fmt"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
)

// kindOf guesses what the rows are: the kind whose headings stand there most, with words in the names of file and sheets as a help.
func (t *Table) kindOf(samples [][]row) (kind, why string) {
	t.template = false
	if t.said.kind != nil {
		return *t.said.kind, "said so"
	}
	for _, rows := range samples {
		for _, r := range rows[:min(3, len(rows))] {
			if m := templateTitle.FindStringSubmatch(r.text()); m != nil {
				if k, ok := dossier.KindNamed(m[1]); ok {
					t.template = true
					return k.Name, "the file is a template for " + k.Plural
				}
			}
		}
	}
	best, score := "thickness", 0.0
	for _, p := range profiles {
		s, reason := t.speaksFor(p, samples)
		if s > score {
			best, score, why = p.kind, s, reason
		}
	}
	if score == 0 {
		why = "nothing speaks for any kind: say what the rows are"
	}
	return best, why
}

func (t *Table) speaksFor(p profile, samples [][]row) (score float64, why string) {
	k, ok := dossier.KindNamed(p.kind)
	if !ok {
		return 0, ""
	}
	for _, rows := range samples {
		h := headsOf(rows, p, t.named(p))
		if h.count == 0 {
			continue
		}
		cols := columnsOf(h, nil, p, t.named(p))
		var meant []string
		for _, c := range cols {
			if c.Meaning != "" {
				meant = append(meant, c.Meaning)
			}
		}
		s := 0.0
		if hasOne(meant, p.needs, k) {
			s = float64(len(meant))
		}
		if s > score {
			score, why = s, fmt.Sprintf("%s have heads of %s", plural(len(meant), "column", "columns"), k.Plural)
		}
	}
	if score == 0 {
		return 0, ""
	}
	names := plainHead(t.name)
	for _, s := range t.sheets {
		names += " " + plainHead(s.name)
	}
	for _, w := range p.names {
		if strings.Contains(" "+names+" ", " "+w+" ") {
			return score + 2, why + fmt.Sprintf(", and %q is in the name", w)
		}
	}
	return score, why
}

func hasOne(meant, needs []string, k dossier.Kind) bool {
	for _, text := range meant {
		if m, ok := parseMeaning(text, k); ok && slices.Contains(needs, m.field) {
			return true
		}
	}
	return false
}

// profile is what is known of how the kind is kept; a template is read by the names of the fields alone.
func (t *Table) profile() profile {
	p := profileOf(t.guess.Kind)
	p.own = t.template
	return p
}

// Meanings implements app.Table.
func (t *Table) Meanings() []string {
	k, ok := dossier.KindNamed(t.guess.Kind)
	if !ok {
		return []string{}
	}
	list := []string{}
	for _, f := range k.Fields {
		if f.Type != field.Grid && f.Type != field.Table && f.Type != field.Group {
			list = append(list, f.Key)
		}
	}
	if placed(k) {
		list = append(list, meansPlaceInText)
		if main := profileOf(k.Name).main; main != "" {
			for _, end := range []string{"", "forward", "aft"} {
				for _, side := range []string{"port", "starboard"} {
					list = append(list, meaning{main, side, end, false}.String())
				}
			}
		}
	}
	if p := profileOf(k.Name); p.subject != "" {
		list = append(list, meaning{field: p.main, each: true}.String())
	}
	if k.Name == "thickness" {
		list = append(list, meansLoss, meansLossShare)
	}
	return list
}

// allowed refuses what can't be: a kind, a meaning or a unit that is none.
func (t *Table) allowed(g app.Guess) error {
	k, ok := dossier.KindNamed(g.Kind)
	if !ok {
		return field.Refuse("kind", "%q is not a kind of record", g.Kind)
	}
	if k.Single {
		return field.Refuse("kind", "a table can't give the ship's %s: enter them by hand", k.Plural)
	}
	if len(g.Delimiter) > 1 {
		return field.Refuse("delimiter", "the mark between columns must be one character, not %q", g.Delimiter)
	}
	if !slices.Contains([]string{"", ".", ","}, g.Decimal) {
		return field.Refuse("decimal", "the decimal sign must be . or , not %q", g.Decimal)
	}
	if !slices.Contains([]string{"", "dmy", "mdy", "ymd"}, g.Dates) {
		return field.Refuse("dates", "the order of dates must be dmy, mdy or ymd, not %q", g.Dates)
	}
	if g.Unit != "" {
		if _, ok := unitNamed(g.Unit); !ok {
			return field.Refuse("unit", "%q is no unit that is known", g.Unit)
		}
	}
	for _, c := range g.Columns {
		if _, ok := parseMeaning(c.Meaning, k); c.Meaning != "" && !ok && g.Kind == t.guess.Kind {
			return field.Refuse("columns", "column %s can't mean %q: a %s has no such field", columnName(c.Index), c.Meaning, k.Title)
		}
		if _, ok := unitNamed(c.Unit); c.Unit != "" && !ok {
			return field.Refuse("columns", "the unit %q of column %s is not known", c.Unit, columnName(c.Index))
		}
	}
	return nil
}
