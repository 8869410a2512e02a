package calendar

import (
	"slices"
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"

	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
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

// What a docking leaves with a last day is in the calendar: guarantees by the day to look and the day they end, temporary repairs by theirs. A month is to its
// end. What is over, looked at, replaced or not for the board is not there.
func TestCalendarOfWhatIsCarried(t *testing.T) {
	d := dossier.New()
	put := func(id, kind string, mark dossier.Mark, body any) {
		t.Helper()
		if err := d.Put(dossier.Record{Head: dossier.Head{ID: id, Kind: kind, Mark: mark}, Body: body}); err != nil {
			t.Fatal(err)
		}
	}
	on := func(s string) quantity.Date {
		t.Helper()
		day, err := quantity.ParseDate(s)
		if err != nil {
			t.Fatal(err)
		}
		return day
	}
	put("paint", "guarantee", dossier.Board, &plan.Guarantee{What: "bottom paint", Giver: "the yard", Begins: on("2027-04-25"), Ends: on("2029-04-25"), Look: on("2029-02-01")})
	put("weld", "guarantee", dossier.Board, &plan.Guarantee{What: "welds", Begins: on("2027-04-25")})
	put("valve", "guarantee", dossier.Board, &plan.Guarantee{What: "valves", Ends: on("2028-04"), Looked: on("2027-04-28")})
	put("made", "guarantee", dossier.Board, &plan.Guarantee{What: "made good", Ends: on("2028-04-25"), State: "made good"})
	put("own", "guarantee", dossier.Private, &plan.Guarantee{What: "private", Ends: on("2028-04-25")})
	put("box", "repair", dossier.Board, &ship.Repair{Name: "cement box", Fitted: on("2027-04-18"), Expires: on("2030-06")})
	put("patch", "repair", dossier.Board, &ship.Repair{Name: "patch", Fitted: on("2027-04-18")}) // nobody wrote until when: ten years at the most
	put("plug", "repair", dossier.Board, &ship.Repair{Name: "plug", Expires: on("2030-01-01"), State: "replaced"})
	cal, err := ics.ParseCalendar(strings.NewReader(Of(assess.Assess(d, assess.PlanInForce(d), on("2027-05-01")))))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range cal.Events() {
		got = append(got, e.GetProperty(ics.ComponentPropertyDtStart).Value+" "+e.GetProperty(ics.ComponentPropertySummary).Value)
	}
	want := []string{
		"20270925 Look at it under guarantee: welds", "20271025 Guarantee ends: welds", "20280430 Guarantee ends: valves", "20290201 Look at it under guarantee: bottom paint",
		"20290425 Guarantee ends: bottom paint", "20300630 Temporary repair good until today: cement box", "20370418 Temporary repair good until today: patch",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}
