package intake

import (
	"maps"

	"oakum/app"
)

// settings are what somebody said, or a mapping remembers: it has the last word over every guess.
type settings struct {
	kind, encoding, delimiter, decimal, dates, unit *string
	sheets                                          map[string]app.GuessedSheet
	columns                                         map[int]app.GuessedColumn
	facts                                           map[string]string
	answers                                         map[string]string
	why                                             string // for what a mapping remembers
}

func newSettings() settings {
	return settings{sheets: map[string]app.GuessedSheet{}, columns: map[int]app.GuessedColumn{}, facts: map[string]string{}, answers: map[string]string{}}
}

// take keeps what differs between the guess that was shown and the one that came back. Where rows are cut anew the columns are guessed anew.
func (s *settings) take(was, now app.Guess) {
	anew := false
	text := func(to **string, was, now string, cuts bool) {
		if was != now {
			*to = &now
			anew = anew || cuts
		}
	}
	text(&s.kind, was.Kind, now.Kind, true)
	text(&s.encoding, was.Encoding, now.Encoding, true)
	text(&s.delimiter, was.Delimiter, now.Delimiter, true)
	text(&s.decimal, was.Decimal, now.Decimal, false)
	text(&s.dates, was.Dates, now.Dates, false)
	text(&s.unit, was.Unit, now.Unit, false)
	before := map[string]app.GuessedSheet{}
	for _, sh := range was.Sheets {
		before[sh.Name] = sh
	}
	for _, sh := range now.Sheets {
		b := before[sh.Name]
		if sh.First != b.First || sh.Heads != b.Heads || sh.Read != b.Read {
			s.sheets[sh.Name] = sh
			anew = anew || sh.First != b.First || sh.Heads != b.Heads
		}
	}
	if anew {
		clear(s.columns)
	} else {
		s.takeColumns(was, now)
	}
	s.takeFacts(was, now)
	for _, q := range now.Questions {
		if q.Answer != "" {
			s.answers[q.Key] = q.Answer
		}
	}
	for _, q := range was.Questions {
		if q.Answer != "" && !asked(now.Questions, q.Key) {
			delete(s.answers, q.Key)
		}
	}
}

func asked(list []app.Question, key string) bool {
	for _, q := range list {
		if q.Key == key && q.Answer != "" {
			return true
		}
	}
	return false
}

func (s *settings) takeColumns(was, now app.Guess) {
	before := map[int]app.GuessedColumn{}
	for _, c := range was.Columns {
		before[c.Index] = c
	}
	for _, c := range now.Columns {
		if b, ok := before[c.Index]; ok && (b.Meaning != c.Meaning || b.Unit != c.Unit) {
			s.columns[c.Index] = c
		}
	}
}

func (s *settings) takeFacts(was, now app.Guess) {
	said := map[string]string{}
	for _, f := range now.Facts {
		said[f.Field] = f.Text
	}
	for _, f := range was.Facts {
		if _, kept := said[f.Field]; !kept && now.Facts != nil {
			s.facts[f.Field] = ""
		}
	}
	for _, f := range was.Facts {
		if t, kept := said[f.Field]; kept && t == f.Text {
			delete(said, f.Field)
		}
	}
	maps.Copy(s.facts, said)
}
