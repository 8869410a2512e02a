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
