package intake

import (
	"fmt"
	"regexp"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
)

var unitSaid = regexp.MustCompile(`(?i)\b(?:all )?(?:readings?|thickness(?:es)?|figures|dimensions|values|units?|dicken|gauged)\b[^.;]{0,24}?\b(?:in|:|are)\s*(mm|millimet(?:re|er)s?|in\.?|inch(?:es)?|mils?|thou(?:sandths)?|cm)\b`)

// lookAtFigures settles the decimal mark, the order of dates and the unit of readings.
func (t *Table) lookAtFigures() {
	g := &t.guess
	mark, why := t.ev.marks.decimal()
	if t.said.decimal != nil {
		mark, why = *t.said.decimal, "said so"
	}
	g.Decimal = mark
	g.Why = append(g.Why, app.Evidence{What: map[string]string{"": "decimal mark left open", ".": "decimal point", ",": "decimal comma"}[mark], Why: why})
	order, open, _, why := datesOf(append(t.ev.dates, t.factDates()...))
	if t.said.dates != nil {
		order, why = quantity.DateOrder(*t.said.dates), "said so"
	}
	g.Dates = string(order)
	if open > 0 || order != "" {
		g.Why = append(g.Why, app.Evidence{What: map[string]string{"": "order of dates left open", "dmy": "day, month, year", "mdy": "month, day, year", "ymd": "year, month, day"}[g.Dates], Why: why})
	}
	t.lookAtUnits()
}

func (t *Table) factDates() []string {
	var list []string
	k, _ := dossier.KindNamed(t.guess.Kind)
	for _, fact := range t.guess.Facts {
		if f, ok := k.Field(fact.Field); ok && f.Type == field.Date {
			list = append(list, fact.Text)
		}
	}
	return list
}

// lookAtUnits settles the unit of readings that have none, and gives it to the columns that name none.
func (t *Table) lookAtUnits() {
	g := &t.guess
	k, _ := dossier.KindNamed(g.Kind)
	p := profileOf(k.Name)
	main, ok := k.Field(p.main)
	if !ok || main.Type != field.Number || main.Unit == "money" {
		t.declaredUnits(k)
		return
	}
	unit, why := "", ""
	for _, c := range g.Columns {
		if m, ok := parseMeaning(c.Meaning, k); ok && m.field == p.main && c.Unit != "" && unit == "" {
			unit, why = c.Unit, fmt.Sprintf("the heading %q says so", c.Heading)
		}
	}
	if unit == "" {
		for _, line := range t.ev.notes {
			if m := unitSaid.FindStringSubmatch(line); m != nil {
				if u, ok := unitNamed(m[1]); ok && quantity.SameDimension(u, unitOf(main)) {
					unit, why = u, fmt.Sprintf("%q says so", m[0])
					break
				}
			}
		}
	}
	if unit == "" && k.Name == "thickness" {
		unit, why = plateUnit(t.ev.readings)
	}
	if unit == "" {
		unit, why = unitOf(main), "nothing says another"
	}
	if t.said.unit != nil {
		unit, why = *t.said.unit, "said so"
	}
	if u, ok := unitNamed(unit); ok {
		unit = u
	}
	g.Unit = unit
	g.Why = append(g.Why, app.Evidence{What: "readings in " + unitWordsOf(unit), Why: why})
	t.declaredUnits(k)
}

// declaredUnits gives every column of figures a unit. A thickness without one is in that of the readings; a heading's unit of another dimension is dropped.
func (t *Table) declaredUnits(k dossier.Kind) {
	for i := range t.guess.Columns {
		c := &t.guess.Columns[i]
		m, ok := parseMeaning(c.Meaning, k)
		f, isField := k.Field(m.field)
		if !ok || !isField || f.Type != field.Number && (f.Type != field.List || f.Unit == "") {
			c.Unit = ""
			continue
		}
		declared := unitOf(f)
		if c.Unit == "lb" && f.Unit == "mm" && k.Name == "thickness" {
			c.Unit = "lb_plate"
		}
		if c.Unit != "" && !quantity.SameDimension(c.Unit, declared) && declared != "money" {
			c.Why += fmt.Sprintf("; its unit %s can't be that of %s, which is in %s", c.Unit, f.Label, declared)
			c.Unit = ""
		}
		switch {
		case c.Unit != "":
		case declared == "money":
		case t.guess.Unit != "" && quantity.SameDimension(t.guess.Unit, declared) && k.Name == "thickness" && f.Unit == "mm":
			c.Unit = t.guess.Unit
		case declared != "-":
			c.Unit = declared
		}
	}
}

// unitWordsOf names a unit in words: millimetres.
func unitWordsOf(key string) string {
	if u, ok := quantity.Lookup(key); ok && u.Plural != "" {
		return u.Plural
	}
	return key
}
