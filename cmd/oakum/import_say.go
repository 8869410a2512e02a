package main

import (
	"slices"
	"strings"
	"time"

	"oakum/app"
	"oakum/field"
)

var now = time.Now

// pair splits KEY=VALUE.
func pair(flag, text string) (key, value string, err error) {
	key, value, ok := strings.Cut(text, "=")
	if !ok || key == "" {
		return "", "", field.Refuse(flag, "--%s wants KEY=VALUE, not %q", flag, text)
	}
	return strings.TrimSpace(key), strings.TrimSpace(value), nil
}

func (c importCommand) sets(g *app.Guess) error {
	parts := map[string]*string{"kind": &g.Kind, "delimiter": &g.Delimiter, "decimal": &g.Decimal, "dates": &g.Dates, "encoding": &g.Encoding, "unit": &g.Unit}
	for _, text := range c.Set {
		key, value, err := pair("set", text)
		if err != nil {
			return err
		}
		to, ok := parts[key]
		if !ok {
			return field.Refuse("set", "--set knows kind, delimiter, decimal, dates, encoding and unit, not %q", key)
		}
		if key == "delimiter" && (value == "tab" || value == `\t`) {
			value = "\t"
		}
		*to = value
	}
	return nil
}

func (c importCommand) sheets(g *app.Guess) error {
	if len(c.Sheet) == 0 {
		return nil
	}
	for _, name := range c.Sheet {
		if !slices.ContainsFunc(g.Sheets, func(s app.GuessedSheet) bool { return s.Name == name }) {
			return field.Refuse("sheet", "there is no sheet %q", name)
		}
	}
	for i := range g.Sheets {
		g.Sheets[i].Read = slices.Contains(c.Sheet, g.Sheets[i].Name)
	}
	return nil
}

func (c importCommand) columns(g *app.Guess) error {
	for _, text := range c.Column {
		key, value, err := pair("column", text)
		if err != nil {
			return err
		}
		i := columnAt(key)
		if i < 0 || i >= len(g.Columns) {
			return field.Refuse("column", "there is no column %q: they run from A, and there are %d", key, len(g.Columns))
		}
		meaning, unit, hasUnit := strings.Cut(value, ":")
		g.Columns[i].Meaning = meaning
		if hasUnit {
			g.Columns[i].Unit = unit
		}
	}
	return nil
}

// columnAt reads the letters of a column: A is 0; -1 where they are none.
func columnAt(letters string) int {
	n := 0
	for _, r := range strings.ToUpper(letters) {
		if r < 'A' || r > 'Z' || n > 1000 {
			return -1
		}
		n = n*26 + int(r-'A') + 1
	}
	return n - 1
}

func (c importCommand) facts(g *app.Guess) error {
	for _, text := range c.Fact {
		key, value, err := pair("fact", text)
		if err != nil {
			return err
		}
		g.Facts = slices.DeleteFunc(g.Facts, func(f app.GuessedFact) bool { return f.Field == key })
		if value != "" {
			g.Facts = append(g.Facts, app.GuessedFact{Field: key, Text: value})
		}
	}
	return nil
}

func (c importCommand) answers(g *app.Guess) error {
	for _, text := range c.Answer {
		key, value, err := pair("answer", text)
		if err != nil {
			return err
		}
		i := slices.IndexFunc(g.Questions, func(q app.Question) bool { return q.Key == key })
		if i < 0 {
			continue // a question of another of the files
		}
		g.Questions[i].Answer = value
	}
	return nil
}
