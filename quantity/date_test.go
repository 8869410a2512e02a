package quantity

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func day(t *testing.T, text string) Date {
	t.Helper()
	d, err := ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestReadDate(t *testing.T) {
	for text, want := range map[string]string{
		"1996": "1996", "1996-10": "1996-10", "1996-10-15": "1996-10-15", "1996/10/15": "1996-10-15", "1996.10.15": "1996-10-15",
		"2023-04-03T10:00": "2023-04-03", "2023-04-03 10:00": "2023-04-03", "25/04/1996": "1996-04-25", "04/25/1996": "1996-04-25",
		"03.04.1996": "1996-04-03", "4/4/1996": "1996-04-04", "15 Oct 1996": "1996-10-15", "15 October 1996": "1996-10-15",
		"15th Oct. 1996": "1996-10-15", "October 15, 1996": "1996-10-15", "Oct 1996": "1996-10", "oct-1996": "1996-10",
		"SEPT 1996": "1996-09", " 1996\u00a0": "1996", "29.02.2024": "2024-02-29", "31/12/1999": "1999-12-31",
	} {
		r, err := ReadDate(text)
		if err != nil || r.Date.String() != want || len(r.Alternatives) > 0 || len(r.Flags) > 0 || r.Text != text {
			t.Errorf("ReadDate(%q) = %+v, %v; want %s", text, r, err, want)
		}
	}
}

func TestReadDateAsks(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  []string
		flags []Flag
	}{
		{"03/04/21", []string{"2021-04-03", "2021-03-04", "2003-04-21"}, []Flag{FlagCentury, FlagDateOrder}},
		{"03/04/2021", []string{"2021-04-03", "2021-03-04"}, []Flag{FlagDateOrder}},
		{"13-04-31", []string{"2031-04-13"}, []Flag{FlagCentury}}, // 2013-04-31 is no day
		{"03.04.21", []string{"2021-04-03"}, []Flag{FlagCentury}},
		{"12-Oct-68", []string{"2068-10-12"}, []Flag{FlagCentury}}, // POSIX strptime: 00..68 are of the 2000s
		{"12-Oct-69", []string{"1969-10-12"}, []Flag{FlagCentury}}, // and 69..99 of the 1900s
		{"c. 1931", []string{"1931"}, []Flag{FlagAbout}},
		{"1931?", []string{"1931"}, []Flag{FlagDoubtful}},
	} {
		r, err := ReadDate(c.text)
		if err != nil {
			t.Errorf("ReadDate(%q): %v", c.text, err)
			continue
		}
		got := []string{r.Date.String()}
		for i, d := range r.Alternatives {
			if i > 0 {
				got = append(got, d.String())
			}
		}
		if !slices.Equal(got, c.want) || !slices.Equal(r.Flags, c.flags) {
			t.Errorf("ReadDate(%q) = %v %v, want %v %v", c.text, got, r.Flags, c.want, c.flags)
		}
		if _, err := ParseDate(c.text); (err == nil) != (len(c.want) == 1) {
			t.Errorf("ParseDate(%q): %v", c.text, err)
		}
	}
	for order, want := range map[DateOrder]string{DayMonthYear: "2021-04-03", MonthDayYear: "2021-03-04", YearMonthDay: "2003-04-21"} {
		r, err := Habit{Dates: order}.ReadDate("03/04/21")
		if err != nil || r.Date.String() != want || len(r.Alternatives) > 0 {
			t.Errorf("03/04/21 by the habit %s = %+v, %v; want %s", order, r, err, want)
		}
	}
}

func TestReadDateRefuses(t *testing.T) {
	for text, says := range map[string]string{
		"1996-13": "month 13", "1996-02-30": "day 30 is outside 1 to 29 of February 1996", "1997-02-29": "1 to 28", "1996-00": "counted from 1",
		"12 xyz 1996": "no date", "0996": "year 996", "yesterday": "no date", "31/31/1996": "month 31", "1996-10-": "no date",
		"5 Octopus 1996": "no date", strings.Repeat("1", 300): "longer than 200",
	} {
		if r, err := ReadDate(text); err == nil || !strings.Contains(err.Error(), says) || !r.Date.IsZero() {
			t.Errorf("ReadDate(%q) = %v, %v; want an error with %q", text, r.Date, err, says)
		}
	}
	var word *NoValue
	if _, err := ReadDate("N/A"); !errors.As(err, &word) || word.Meaning != NotApplicable {
		t.Errorf("ReadDate(N/A): %v", err)
	}
}

func TestNewDateRefuses(t *testing.T) {
	for _, c := range [][3]int{{0, 0, 0}, {999, 1, 1}, {10000, 1, 1}, {1996, 13, 1}, {1996, -1, 0}, {1996, 0, 5}, {1996, 4, 31}, {1996, 4, -1}, {1900, 2, 29}} {
		if d, err := NewDate(c[0], c[1], c[2]); err == nil {
			t.Errorf("NewDate(%v) = %s", c, d)
		}
	}
}

func TestDateSpans(t *testing.T) {
	for _, c := range []struct{ text, first, mid, last, words string }{
		{"1996", "1996-01-01T00:00", "1996-07-02T00:00", "1996-12-31T00:00", "1996"},
		{"1997", "1997-01-01T00:00", "1997-07-02T12:00", "1997-12-31T00:00", "1997"},
		{"1996-02", "1996-02-01T00:00", "1996-02-15T12:00", "1996-02-29T00:00", "February 1996"},
		{"1996-10-15", "1996-10-15T00:00", "1996-10-15T12:00", "1996-10-15T00:00", "15 October 1996"},
	} {
		d := day(t, c.text)
		const clock = "2006-01-02T15:04"
		got := []string{d.First().Format(clock), d.Time().Format(clock), d.Last().Format(clock), d.Words()}
		if !slices.Equal(got, []string{c.first, c.mid, c.last, c.words}) {
			t.Errorf("%s spans %v", c.text, got)
		}
	}
	var none Date
	if !none.First().IsZero() || !none.Time().IsZero() || !none.Last().IsZero() || none.DecimalYear() != 0 || none.HalfWidth() != 0 {
		t.Error("no date has a time")
	}
	if none.Words() != "no date" || none.String() != "" || none.Precision() != "" {
		t.Error("no date has words")
	}
}

func TestYears(t *testing.T) {
	for _, c := range []struct {
		from, to string
		years    float64
		within   float64
	}{
		{"1996", "2023", 27, 0},
		{"1996-10-15", "2023-10-15", 27, 0.003}, // one leap day between the places in their years
		{"2023-01-01", "2024-01-01", 1, 1e-4},
		{"2011-06", "2023-06", 12, 0.001},
		{"2023", "2011", -12, 0},
	} {
		got, ok := day(t, c.from).YearsUntil(day(t, c.to))
		if !ok || math.Abs(got-c.years) > c.within+1e-12 {
			t.Errorf("%s to %s is %v years, %v; want %v", c.from, c.to, got, ok, c.years)
		}
	}
	if _, ok := (Date{}).YearsUntil(day(t, "2023")); ok {
		t.Error("years from no date")
	}
	if _, ok := day(t, "2023").DaysUntil(Date{}); ok {
		t.Error("days to no date")
	}
	if n, ok := day(t, "2024-02-28").DaysUntil(day(t, "2024-03-01")); n != 2 || !ok {
		t.Errorf("28 February to 1 March 2024 is %d days", n)
	}
	if got := day(t, "1996").HalfWidth(); got != 0.5 {
		t.Errorf("half width of a year is %v", got)
	}
	if got := day(t, "2024-12-30").AddDays(3).String(); got != "2025-01-02" {
		t.Errorf("three days after 30 December 2024 is %s", got)
	}
	if got := day(t, "1996").AddYears(28).String(); got != "2024-07-02" {
		t.Errorf("28 years after the middle of 1996 is %s", got)
	}
	for _, years := range []float64{1e9, -1e9, math.NaN(), math.Inf(1)} {
		if d := day(t, "1996").AddYears(years); !d.IsZero() {
			t.Errorf("%v years after 1996 is %s", years, d)
		}
	}
}

func TestCompareDates(t *testing.T) {
	order := []Date{{}, day(t, "1996"), day(t, "1996-01"), day(t, "1996-01-01"), day(t, "1996-01-02"), day(t, "1996-02"), day(t, "1997")}
	if !slices.IsSortedFunc(order, Date.Compare) {
		t.Error("dates are out of order")
	}
	if !day(t, "1996").Contains(day(t, "1996-10")) || day(t, "1996-10").Contains(day(t, "1996")) || day(t, "1996").Contains(Date{}) {
		t.Error("containing is wrong")
	}
	if day(t, "1996").Before(day(t, "1996-10")) || !day(t, "1996").Before(day(t, "1997")) || (Date{}).Before(day(t, "1997")) {
		t.Error("before is wrong")
	}
}

func TestDateText(t *testing.T) {
	type record struct {
		On Date `json:"on,omitzero"`
	}
	for _, text := range []string{"1996", "1996-10", "1996-10-15"} {
		in := record{day(t, text)}
		body, err := json.Marshal(in)
		if err != nil || string(body) != `{"on":"`+text+`"}` {
			t.Errorf("%s is written as %s, %v", text, body, err)
		}
		var out record
		if err := json.Unmarshal(body, &out); err != nil || out != in {
			t.Errorf("%s came back as %v, %v", body, out, err)
		}
	}
	var out record
	if body, _ := json.Marshal(out); string(body) != "{}" {
		t.Errorf("no date is written as %s", body)
	}
	if err := json.Unmarshal([]byte(`{"on":""}`), &out); err != nil || !out.On.IsZero() {
		t.Errorf("empty text is %v, %v", out, err)
	}
	if err := json.Unmarshal([]byte(`{"on":"03/04/2021"}`), &out); err == nil || !strings.Contains(err.Error(), "2021-04-03 or 2021-03-04") {
		t.Errorf("03/04/2021 is %v, %v", out, err)
	}
}

func TestDateProperties(t *testing.T) {
	draw := func(t *rapid.T, name string) Date {
		at := time.Date(rapid.IntRange(1100, 2900).Draw(t, name), 1, rapid.IntRange(1, 366).Draw(t, name+" day"), 0, 0, 0, 0, time.UTC)
		d := DateOf(at)
		switch rapid.IntRange(0, 2).Draw(t, name+" precision") {
		case 0:
			d.month, d.day = 0, 0
		case 1:
			d.day = 0
		}
		return d
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := draw(t, "a"), draw(t, "b"), draw(t, "c")
		if back, err := ParseDate(a.String()); err != nil || back != a {
			t.Fatalf("%s came back as %s, %v", a, back, err)
		}
		if back, err := ParseDate(a.Words()); err != nil || back != a {
			t.Fatalf("%s came back as %s, %v", a.Words(), back, err)
		}
		ab, _ := a.YearsUntil(b)
		bc, _ := b.YearsUntil(c)
		ac, _ := a.YearsUntil(c)
		ba, _ := b.YearsUntil(a)
		if math.Abs(ab+bc-ac) > 1e-9 || ab != -ba {
			t.Fatalf("years do not add up: %v + %v, %v, %v", ab, bc, ac, ba)
		}
		if a.Before(b) && (a.Compare(b) >= 0 || ab <= 0) {
			t.Fatalf("%s is before %s, but %d, %v years", a, b, a.Compare(b), ab)
		}
		if got := a.AddYears(ab); !b.Contains(got) {
			t.Fatalf("%s and %v years is %s, not in %s", a, ab, got, b)
		}
	})
}
