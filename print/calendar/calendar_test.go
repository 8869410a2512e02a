package calendar

import (
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

func TestCalendar(t *testing.T) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	day, _ := quantity.ParseDate("2026-11-25")
	secret, _ := quantity.ParseDate("2027-01-02")
	if err := d.Put(dossier.Record{Head: dossier.Head{ID: "m", Kind: "matter", Mark: dossier.Private}, Body: &plan.Matter{Name: "SECRET", Due: secret}}); err != nil {
		t.Fatal(err)
	}
	b := assess.Assess(d, assess.PlanInForce(d), day)
	said := Of(b)
	if Of(b) != said {
		t.Error("the same brief, another calendar")
	}
	if strings.Contains(said, "SECRET") {
		t.Error("a private date is in the calendar")
	}
	// RFC 5545, section 3.1: lines end in CRLF and are no longer than 75 octets.
	for line := range strings.SplitSeq(strings.TrimSuffix(said, "\r\n"), "\r\n") {
		if len(line) > 75 || strings.ContainsAny(line, "\r\n") {
			t.Errorf("%d octets: %q", len(line), line)
		}
	}
	cal, err := ics.ParseCalendar(strings.NewReader(said))
	if err != nil {
		t.Fatal(err)
	}
	found, names := false, map[string]bool{}
	for _, e := range cal.Events() {
		if names[e.Id()] {
			t.Errorf("%s stands twice", e.Id())
		}
		names[e.Id()] = true
		p := e.GetProperty(ics.ComponentPropertyDtStart)
		found = found || strings.Contains(e.GetProperty(ics.ComponentPropertySummary).Value, "forecastle bell") && p.Value == "20250914"
	}
	if !found {
		t.Errorf("the overdue look at the bell is missing from %d dates", len(names))
	}
}

// The dates of the docking are in the calendar: spans by their two ends (RFC 5545, section 3.6.1: DTEND is the day after the last), held until, grants, when
// it can be signed, the days that satisfy all, and the deadlines that set themselves.
func TestCalendarOfTheDocking(t *testing.T) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	day, _ := quantity.ParseDate("2026-11-25")
	cal, err := ics.ParseCalendar(strings.NewReader(Of(assess.Assess(d, assess.PlanInForce(d), day))))
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, e := range cal.Events() {
		value := func(p ics.ComponentProperty) string { return e.GetProperty(p).Value }
		got[value(ics.ComponentPropertySummary)+" "+value(ics.ComponentPropertyDtStart)] = value(ics.ComponentPropertyDtEnd)
	}
	for what, end := range map[string]string{
		"Skellby Old Graving Dock is free 20270407": "20270503", "Last day that Skellby Old Graving Dock is held for us: sign\\, or ask for longer 20270115": "20270116",
		"Afloat heritage fund: match to be shown by 20270331": "20270401", "She can leave for Skellby Old Graving Dock 20270915": "20270921",
		"In dock: Final readings of the last 72 hours 20270420": "20270421",
	} {
		if got[what] != end && got[strings.ReplaceAll(what, "\\,", ",")] != end {
			t.Errorf("%s ends %q, want %q", what, got[what], end)
		}
	}
	signed := false
	for what := range got {
		signed = signed || strings.HasPrefix(what, "Can be signed: ")
	}
	if !signed {
		t.Error("when it can be signed is missing")
	}
}
