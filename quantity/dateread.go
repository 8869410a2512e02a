package quantity

import (
	"errors"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// DateReading is a date as read from a paper.
type DateReading struct {
	Date         Date   // the first of Alternatives where there are any
	Text         string // as typed
	Flags        []Flag
	Alternatives []Date // every meaning, where the order of day and month is open
}

// DateOrder says in which order a writer puts day, month and year.
type DateOrder string

const (
	OrderOpen    DateOrder = ""    // not known: ask
	DayMonthYear DateOrder = "dmy" // 25/04/21
	MonthDayYear DateOrder = "mdy" // 04/25/21
	YearMonthDay DateOrder = "ymd" // 21/04/25
)

var (
	isoDate   = regexp.MustCompile(`^(\d{4})(?:[-/.](\d{1,2})(?:[-/.](\d{1,2}))?)?(?:[t ]\d{1,2}[:.h].*)?$`)
	numDate   = regexp.MustCompile(`^(\d{1,2})([-/. ])(\d{1,2})[-/. ](\d{4}|\d{2})(?: \d{1,2}[:.h].*)?$`)
	dayFirst  = regexp.MustCompile(`^(?:(\d{1,2})(?:st|nd|rd|th)?[-. ]+)?([a-z]{3,9})[-., ']+(\d{4}|\d{2})$`)
	monthWord = regexp.MustCompile(`^([a-z]{3,9})[. ]+(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4}|\d{2})$`)
)

// ReadDate reads a date as people write them, with every meaning where there
// are several.
func ReadDate(text string) (DateReading, error) { return Habit{}.ReadDate(text) }

// ReadDate reads a date by the habit of a writer.
func (h Habit) ReadDate(text string) (DateReading, error) {
	r := DateReading{Text: text}
	if len(text) > maxText {
		return r, &ParseError{Text: clip(text), Want: wantDate, Why: tooLong}
	}
	s := plain(text)
	if word, ok := noValue(s); ok {
		return r, word
	}
	s, r.Flags = qualifiers(s)
	s = strings.ToLower(s)
	switch {
	case isoDate.MatchString(s):
		m := isoDate.FindStringSubmatch(s)
		return r.only(m[1], m[2], m[3])
	case numDate.MatchString(s):
		m := numDate.FindStringSubmatch(s)
		return r.ordered(h.Dates, m[2], [3]string{m[1], m[3], m[4]})
	}
	if m := dayFirst.FindStringSubmatch(s); m != nil && monthNumber(m[2]) != "" {
		return r.only(m[3], monthNumber(m[2]), m[1])
	}
	if m := monthWord.FindStringSubmatch(s); m != nil && monthNumber(m[1]) != "" {
		return r.only(m[3], monthNumber(m[1]), m[2])
	}
	return r, &ParseError{Text: text, Want: wantDate, Why: "it is no date"}
}

const wantDate = "a date such as 1996, 1996-10 or 1996-10-15"

// only settles a reading whose parts have known places.
func (r DateReading) only(year, month, day string) (DateReading, error) {
	d, err := r.build(year, month, day)
	if err != nil {
		return r, &ParseError{Text: r.Text, Want: wantDate, Why: err.Error()}
	}
	r.Date = d
	return r, nil
}

// ordered tries each order of day, month and year. Points between the parts
// stand for day.month.year (common practice); with strokes or hyphens every
// order that makes a date counts.
func (r DateReading) ordered(habit DateOrder, sign string, p [3]string) (DateReading, error) {
	if sign == "." && habit == OrderOpen {
		habit = DayMonthYear
	}
	var failed error
	for _, order := range []DateOrder{DayMonthYear, MonthDayYear, YearMonthDay} {
		if habit != OrderOpen && habit != order || order == YearMonthDay && len(p[2]) == 4 {
			continue
		}
		y, m, d := p[2], p[1], p[0]
		switch order {
		case MonthDayYear:
			m, d = p[0], p[1]
		case YearMonthDay:
			y, m, d = p[0], p[1], p[2]
		}
		date, err := r.build(y, m, d)
		if err == nil && !slices.Contains(r.Alternatives, date) {
			r.Alternatives = append(r.Alternatives, date)
		} else if failed == nil {
			failed = err
		}
	}
	if len(r.Alternatives) == 0 {
		return r, &ParseError{Text: r.Text, Want: wantDate, Why: failed.Error()}
	}
	r.Date = r.Alternatives[0]
	if len(r.Alternatives) == 1 {
		r.Alternatives = nil
		return r, nil
	}
	r.Flags = append(r.Flags, FlagDateOrder)
	return r, nil
}

// build makes a date of digits. Two digits of a year are 1969 to 2068, the
// rule of POSIX strptime, and the reading is flagged.
func (r *DateReading) build(year, month, day string) (Date, error) {
	y, _ := strconv.Atoi(year)
	m, _ := strconv.Atoi(month)
	d, _ := strconv.Atoi(day)
	if len(year) <= 2 {
		y += 1900
		if y < 1969 {
			y += 100
		}
		if !slices.Contains(r.Flags, FlagCentury) {
			r.Flags = append(r.Flags, FlagCentury)
		}
	}
	if month != "" && m == 0 || day != "" && d == 0 {
		return Date{}, errors.New("month and day are counted from 1")
	}
	return NewDate(y, m, d)
}

var monthNames = []string{"january", "february", "march", "april", "may", "june",
	"july", "august", "september", "october", "november", "december"}

// monthNumber gives the number of an English month name or of its first
// letters, three or more; "" where the word is none.
func monthNumber(word string) string {
	for i, name := range monthNames {
		if len(word) >= 3 && strings.HasPrefix(name, word) {
			return strconv.Itoa(i + 1)
		}
	}
	return ""
}
