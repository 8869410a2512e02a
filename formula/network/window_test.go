package network

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/quantity"
)

// passage is worked by hand below: two days each way, ten in dock.
func passage() WindowIn {
	in := Window.New()
	in.From, in.To = date(2031, 4, 1), date(2031, 4, 30)
	in.Yards = []YardWindow{{Name: "old dock", Opens: date(2031, 4, 10), Closes: date(2031, 4, 25)}}
	in.Stay, in.TowOut = 10*day, 2*day
	in.TowSeasons = []Season{{YearDay{4, 1}, YearDay{9, 30}}}
	return in
}

// Computed by hand: she must enter from the 10th and leave by the 25th, so enter by the 15th, and so leave home from the 8th to the 13th.
func TestWindowByHand(t *testing.T) {
	in := passage()
	out, err := Window.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if out.Count != 6 || out.First != date(2031, 4, 8) || out.Dates[5].Date != date(2031, 4, 13) || out.Dates[5].Out != date(2031, 4, 25) || out.Dates[5].Home != date(2031, 4, 27) {
		t.Errorf("%+v", out.Dates)
	}
	in.Money, in.Lead = date(2031, 3, 31), 10*day // from the 10th
	in.Visitors = []VisitorsSeason{{Name: "Easter", From: YearDay{4, 11}, To: YearDay{4, 14}, Income: 2000}}
	if out, _ = Window.Fn(in); out.Count != 4 || out.Best != date(2031, 4, 13) {
		t.Errorf("%d, best %v", out.Count, out.Best)
	}
	near(t, "income lost", out.Dates[0].Income, 8000, 0)
	in.Grants = []GrantTerms{{Name: "heritage", SpendBy: date(2031, 4, 23)}} // out by the 23rd: leave by the 11th
	if out, _ = Window.Fn(in); out.Count != 2 {
		t.Errorf("%d", out.Count)
	}
	in.Visitors[0].Keep = true
	out, _ = Window.Fn(in)
	if out.Count != 0 || !strings.Contains(strings.Join(out.Warnings, " "), "no day satisfies everything") {
		t.Errorf("%d %v", out.Count, out.Warnings)
	}
	i := slices.IndexFunc(out.Near, func(b BlockedDay) bool { return b.Date == date(2031, 4, 10) })
	if i < 0 || !slices.Equal(out.Near[i].Lacks, []string{"at home for Easter"}) {
		t.Errorf("near misses %+v", out.Near)
	}
}

// Computed by hand: tides at the berth of 4.0 m on the 9th, 10th and 24th, at the dock on the 12th and 22nd: only leaving on the 10th finds all four.
func TestWindowTides(t *testing.T) {
	in := passage()
	in.NeedsBerth, in.NeedsDock = new(4.0), new(4.0)
	for d := range 30 {
		h := map[bool]float64{true: 4.2, false: 3.1}
		in.Tides = append(in.Tides, TideDay{"berth", date(2031, 4, d+1), h[slices.Contains([]int{9, 10, 24}, d+1)]}, TideDay{"dock", date(2031, 4, d+1), h[slices.Contains([]int{12, 22}, d+1)]})
	}
	out, err := Window.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if out.Count != 1 || out.First != date(2031, 4, 10) {
		t.Errorf("%+v", out.Dates)
	}
	i := slices.IndexFunc(out.Blocked, func(b BlockedDay) bool { return b.Date == date(2031, 4, 9) })
	if i < 0 || !slices.Equal(out.Blocked[i].Lacks, []string{"tide to enter the dock", "tide to leave the dock", "tide to berth again"}) {
		t.Errorf("the 9th: %+v", out.Blocked[i])
	}
	in.Tides = in.Tides[:40] // none known after the 20th
	out, _ = Window.Fn(in)
	if out.Count != 0 || !slices.ContainsFunc(out.Blocked, func(b BlockedDay) bool { return slices.Contains(b.Lacks, "tide to leave the dock (not known)") }) {
		t.Errorf("a tide that is not known must block: %d", out.Count)
	}
}

// Identity: every day is good or blocked, none both; and taking a condition away never blocks a day.
func TestWindowLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := passage()
		in.To = date(2031, 12, 31)
		in.Stay = float64(rapid.IntRange(1, 40).Draw(t, "stay")) * day
		in.Yards = append(in.Yards, YardWindow{Name: "lift", Opens: date(2031, rapid.IntRange(4, 6).Draw(t, "month"), 1), Closes: date(2031, 10, 15)})
		in.Closed = []Span{{From: date(2031, 7, 10), To: date(2031, 7, 20), Why: "regatta"}}
		out, err := Window.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		good := map[quantity.Date]bool{}
		for _, g := range out.Dates {
			good[g.Date] = true
		}
		for _, b := range out.Blocked {
			if good[b.Date] || len(b.Lacks) == 0 {
				t.Fatalf("%v is good and blocked, or lacks nothing", b.Date)
			}
		}
		if n, _ := in.From.DaysUntil(in.To); len(good)+len(out.Blocked) != n+1 {
			t.Fatalf("%d good and %d blocked of %d", len(good), len(out.Blocked), n+1)
		}
		in.Closed = nil
		more, _ := Window.Fn(in)
		if more.Count < out.Count {
			t.Fatalf("%d days with the regatta, %d without", out.Count, more.Count)
		}
	})
}

// Identity: a season over the turn of the year has the days that the rest of the year lacks.
func TestSeasonOverTheNewYear(t *testing.T) {
	winter, rest := Season{YearDay{11, 15}, YearDay{2, 10}}, Season{YearDay{2, 11}, YearDay{11, 14}}
	for k := range 366 {
		d := date(2032, 1, 1).AddDays(k)
		if winter.Has(d) == rest.Has(d) {
			t.Errorf("%v lies in both or neither", d)
		}
	}
}

func TestWindowRefuses(t *testing.T) {
	for want, change := range map[string]func(*WindowIn){
		"from and to are needed": func(in *WindowIn) { in.From = quantity.Date{} },
		"must not lie before":    func(in *WindowIn) { in.To = date(2030, 1, 1) },
		"are looked at":          func(in *WindowIn) { in.To = date(2081, 1, 1) },
		"yards is empty":         func(in *WindowIn) { in.Yards = nil },
		"two ends":               func(in *WindowIn) { in.Yards[0].Closes = date(2031, 1, 1) },
		"needs a day":            func(in *WindowIn) { in.Tides = []TideDay{{"dock", date(2031, 4, 0), 3}} },
	} {
		in := passage()
		change(&in)
		_, err := Window.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
	if _, err := Window.Run(map[string]any{"from": "2031-04-01", "to": "2031-04-30", "stay": 5.0, "yards": []any{map[string]any{"name": "x", "opens": "2031-04-01", "closes": "2031-04-30"}},
		"tow_seasons": []any{map[string]any{"from": "31-04", "to": "09-30"}}}); err == nil || !strings.Contains(err.Error(), "no day of the year") {
		t.Errorf("got %v", err)
	}
}

func ExampleWindow() {
	out, err := Window.Fn(passage())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d days, from %s; the 1st lacks: %s\n", out.Count, out.First, strings.Join(out.Blocked[0].Lacks, ", "))
	// Output: 6 days, from 2031-04-08; the 1st lacks: dock free
}

// Computed by hand, for leaving on 1 April: in dock from the 3rd to the 13th, seven days before it opens; home on the 15th. The tide on the 3rd stands
// 0.9 m too low. Money on the 20th, with ten days of notice, is 29 days late, and the dock is held until the 12th, eight days before it. The tow home
// from the 13th to the 15th lies three days outside its own season. The grant wants the works done by the 11th: two days.
func TestWindowSaysByHowMuch(t *testing.T) {
	in := passage()
	in.Yards[0].SignBy = date(2031, 4, 12)
	in.NeedsDock = new(4.0)
	in.Tides = []TideDay{{"dock", date(2031, 4, 3), 3.1}, {"dock", date(2031, 4, 13), 4.1}}
	in.HomeSeason = []Season{{YearDay{5, 1}, YearDay{9, 30}}}
	in.Money, in.Lead = date(2031, 4, 20), 10*day
	in.Grants = []GrantTerms{{Name: "heritage", SpendBy: date(2031, 4, 11)}}
	out, err := Window.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{"dock free": 7, "tow season home": 3, "money": 29, "signed while the dock is held": 8, "heritage: done too late": 2}
	for _, s := range out.Blocked[0].By {
		if s.What == "tide to enter the dock" {
			near(t, s.What, *s.Water, 0.9, 1e-9)
			continue
		}
		if s.Days == nil {
			t.Errorf("%q has no days", s.What)
			continue
		}
		near(t, s.What, *s.Days/day, want[s.What], 0)
		delete(want, s.What)
	}
	if len(want) > 0 || len(out.Blocked[0].Lacks) != 6 {
		t.Errorf("not said: %v; lacks %v", want, out.Blocked[0].Lacks)
	}
}
