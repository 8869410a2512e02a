package days

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"oakum/app"
	"oakum/assess"
	"oakum/demo"
	"oakum/dossier"
	"oakum/plan"
	"oakum/store/sqlite"
)

// aboard is the steamer's ship file on the eve of the first day, with a clock that the play moves.
func aboard(t *testing.T) (*app.App, func(time.Time)) {
	t.Helper()
	ctx := context.Background()
	st, err := sqlite.Create(ctx, filepath.Join(t.TempDir(), "ship.oakum"))
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC)
	a, err := app.Open(ctx, st, func() time.Time { return now })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { a.Close() })
	d, err := demo.Ship("corran-vey")
	if err != nil {
		t.Fatal(err)
	}
	records := slices.Collect(d.Records(""))
	for i := range records {
		records[i].Version = 0
	}
	if _, err := a.Bring(ctx, app.Who{Name: "test", Role: app.Keeper}, "the ship", records...); err != nil {
		t.Fatal(err)
	}
	return a, func(at time.Time) { now = at }
}

// told is what the page In dock must say on the evening of a day. Money in EUR.
type told struct {
	heading string // its beginning
	lit     string // trigger, direction, state, in the order of the page, each once
	called  float64
	freed   float64 // released by triggers not yet answered
	changes float64 // change orders approved and not signed for
	left    float64 // if all of that is agreed
	due     []string
}

// What is free is the same every evening: 1 141 500 in hand, less 1 026 100 signed for and 72 000 of reserve, is 43 400; a payment lessens in hand and signed
// for alike. What is left is that, less the changes, less what is called. By hand: C1 60 x 68 = 4 080; C2 37 x 1 950 = 72 150; C3 -1 400 x 33 = -46 200 (the
// forward bottom stays: money released); C4 760 x 33 = 25 080; C5 4 x 5 200 = 20 800. All pots are counted together.
var story = [Last]told{
	{heading: "Day 1 of 14 in dock; 13 days are left.", left: 43400, due: []string{"2027-04-11 Bottom gauged", "2027-04-20 Every opening"}},
	{heading: "Day 2 of 14 in dock; 12 days are left.", left: 43400, due: []string{"2027-04-11 Bottom gauged", "2027-04-20 Every opening"}},
	{heading: "Day 3 of 14 in dock; 11 days are left.", lit: "trigger-5 worse lit", called: 66000, left: -22600, due: []string{"2027-04-11 Bottom gauged", "2027-04-20 Every opening"}},
	{heading: "Day 4 of 14 in dock; 10 days are left.", lit: "trigger-4 better lit; trigger-5 worse answered", freed: 60000, changes: 4080, left: 39320, due: []string{"2027-04-12 Tail shafts", "2027-04-20 Every opening"}},
	{heading: "Day 5 of 14 in dock; 9 days are left.", lit: "trigger-4 better lit; trigger-5 worse answered; trigger-1 worse answered", freed: 60000, changes: 76230, left: -32830, due: []string{"2027-04-12 Tail shafts", "2027-04-20 Every opening"}},
	{heading: "Day 6 of 14 in dock; 8 days are left.", lit: "trigger-5 worse answered; trigger-4 better answered; trigger-1 worse answered", changes: 30030, left: 13370, due: []string{"2027-04-12 Tail shafts", "2027-04-20 Every opening"}},
	{heading: "Day 7 of 14 in dock; 7 days are left.", lit: "trigger-8 better lit; trigger-5 worse answered; trigger-4 better answered; trigger-1 worse answered", freed: 70000, changes: 30030, left: 13370, due: []string{"2027-04-20 Every opening"}},
	{heading: "Day 8 of 14 in dock; 6 days are left.", lit: "trigger-8 better lit; " + answered, freed: 70000, changes: 55110, left: -11710, due: []string{"2027-04-20 Every opening"}},
	{heading: "Day 9 of 14 in dock; 5 days are left.", lit: "trigger-8 better late; " + answered, freed: 70000, changes: 55110, left: -11710, due: []string{"2027-04-20 Every opening"}},
	{heading: "Day 10 of 14 in dock; 4 days are left.", lit: "trigger-8 better late; " + answered, freed: 70000, changes: 55110, left: -11710, due: []string{"2027-04-20 Every opening"}},
	{heading: "Day 11 of 18 in dock; 7 days are left.", lit: "trigger-8 better late; " + answered, freed: 70000, changes: 75910, left: -32510, due: []string{"2027-04-24 Every opening"}},
	{heading: "Day 12 of 18 in dock; 6 days are left.", lit: "trigger-8 better late; " + answered, freed: 70000, changes: 75910, left: -32510, due: []string{"2027-04-24 Every opening"}},
}

const answered = "trigger-5 worse answered; trigger-4 better answered; trigger-1 worse answered; trigger-6 worse answered"

// The story of the found hull: a cracked boss calls money aft on the third day, sound plating releases it forward on the fourth and is decided on the sixth,
// and what is behind the doublers calls more than is free on the fifth.
func TestTwelveDaysTellTheStory(t *testing.T) {
	a, set := aboard(t)
	for day := 1; day <= Last; day++ {
		if err := Through(context.Background(), a, set, day, day); err != nil {
			t.Fatal(err)
		}
		b, err := a.Brief("", a.Today())
		if err != nil {
			t.Fatal(err)
		}
		story[day-1].hold(t, day, b.InDock)
	}
	same(t, a)
	hands(t, a)
}

func (s told) hold(t *testing.T, day int, p assess.InDockPage) {
	t.Helper()
	if !strings.HasPrefix(strings.Join(p.Heading, " "), s.heading) {
		t.Errorf("day %d: heading %q, want %q", day, p.Heading, s.heading)
	}
	if got := lit(p); got != s.lit {
		t.Errorf("day %d: lit %q, want %q", day, got, s.lit)
	}
	for key, want := range map[string]float64{"free": 43400, "called": s.called, "released": s.freed, "likely_sum": s.changes, "left": s.left} {
		if got := money(p.Money, key); math.Abs(got-want) > 0.5 {
			t.Errorf("day %d: %s %.0f, want %.0f", day, key, got, want)
		}
	}
	var due []string
	for _, n := range p.Deadlines {
		due = append(due, n.Due+" "+n.What)
	}
	for _, want := range s.due {
		if !slices.ContainsFunc(due, func(have string) bool { return strings.HasPrefix(have, want) }) {
			t.Errorf("day %d: due %q, want %q among them", day, due, want)
		}
	}
	if len(p.Log) != day {
		t.Errorf("day %d: %d days are written down", day, len(p.Log))
	}
}

func money(list []assess.Figure, key string) float64 {
	for _, f := range list {
		if f.Key == key && f.Value != nil {
			return *f.Value
		}
	}
	return 0
}

func lit(p assess.InDockPage) string {
	var all []string
	for _, l := range p.Lit {
		all = append(all, fmt.Sprintf("%s %s %s", l.Trigger, l.Direction, l.State))
	}
	return strings.Join(slices.Compact(all), "; ")
}

// hands looks into the journal: what each hand entered stands under its name, at its hour, and what came from the dock came by phone.
func hands(t *testing.T, a *app.App) {
	t.Helper()
	versions, err := a.Versions(context.Background(), "found-03")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, v := range versions {
		got = append(got, v.At.Format("02 15:04 ")+v.By+" "+v.Body.(*plan.Found).Disposition)
	}
	want := []string{"12 11:00 superintendent open", "12 18:00 superintendent open", "12 20:00 board's three insert", "17 16:30 superintendent insert"}
	if !slices.Equal(got, want) {
		t.Errorf("found-03 went through %q, want %q", got, want)
	}
	d, _ := a.Dossier()
	if n := d.Count("delivery"); n < 30 {
		t.Errorf("%d lots came by phone", n)
	}
	if n := d.Count("clash"); n != 0 {
		t.Errorf("%d entries clashed", n)
	}
	files, err := a.Files(context.Background())
	if err != nil || len(files) < 7 {
		t.Errorf("%d photographs are kept: %v", len(files), err)
	}
}

func TestOnlyTheTwelveDaysAreKnown(t *testing.T) {
	for _, day := range []int{0, -1, 13} {
		if err := Through(context.Background(), nil, nil, 1, day); err == nil || !strings.Contains(err.Error(), "days 1 to 12") {
			t.Errorf("day %d: %v", day, err)
		}
	}
}

// same holds what stands after the twelfth day against the folder of the twelve days: the play ends where the folder does.
func same(t *testing.T, a *app.App) {
	t.Helper()
	want, err := demo.InDock()
	if err != nil {
		t.Fatal(err)
	}
	got, _ := a.Dossier()
	for r := range want.Records("") {
		g, ok := got.Get(r.ID)
		if !ok {
			t.Errorf("%s %s was never entered", r.Kind, r.ID)
			continue
		}
		x, err := dossier.EncodeBody(r.Kind, r.Body)
		if err != nil {
			t.Fatal(err)
		}
		y, err := dossier.EncodeBody(g.Kind, g.Body)
		if err != nil {
			t.Fatal(err)
		}
		if string(x) != string(y) || r.Mark != g.Mark || r.Basis != g.Basis {
			t.Errorf("%s %s:\n%s %s %s, in the folder\n%s %s %s, played", r.Kind, r.ID, x, r.Mark, r.Basis, y, g.Mark, g.Basis)
		}
	}
}
