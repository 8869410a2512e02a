package assess

import (
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// calendarOf is the steamer's docking, money and calendar on a day before her docking, with a record changed.
func calendarOf(t *testing.T, name string, change func(d *dossier.Dossier)) *Brief {
	t.Helper()
	r, err := dossier.ReadFolder(os.DirFS("../demo/" + name))
	if err != nil {
		t.Fatal(err)
	}
	d, err := r.Whole()
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(d)
	}
	c := newCase(d, PlanInForce(d), date(t, "2026-11-25"))
	b := &Brief{Day: c.day, Name: c.name(), Snapshot: c.snapshot(), book: c.book}
	b.Money = c.moneyPage(b)
	b.Docking = c.dockingPage()
	b.Calendar = c.calendarPage(b)
	return b
}

var calendars = struct {
	sync.Mutex
	made map[string]*Brief
}{made: map[string]*Brief{}}

// calendarAsIs is the same with nothing changed, made once.
func calendarAsIs(t *testing.T, name string) *Brief {
	t.Helper()
	calendars.Lock()
	defer calendars.Unlock()
	if calendars.made[name] == nil {
		calendars.made[name] = calendarOf(t, name, nil)
	}
	return calendars.made[name]
}

func yardCase(t *testing.T, p CalendarPage, key, window string) YardCase {
	t.Helper()
	for _, k := range p.Cases {
		for _, w := range k.Windows {
			if k.Key == key && w.ID == window {
				return w
			}
		}
	}
	t.Fatalf("no %s at %s", key, window)
	return YardCase{}
}

// As the invented keeper tells it: what must be done can be signed once the grant is told on 28 February. By then the spring, held until 15 January, is
// gone; in autumn she floats in on the springs after 15 September and out on those after 29 September; the lift is out of reach, for no tug goes by open
// water after September. The whole plan finds no money before the thirties.
func TestSteamersCalendar(t *testing.T) {
	p := calendarAsIs(t, "corran-vey").Calendar
	autumn := yardCase(t, p, "must-hoped", "window-autumn")
	if autumn.Verdict != satisfiesAll || autumn.Says != "She can leave on 15 to 20 September 2027." {
		t.Errorf("autumn: %s, %s", autumn.Verdict, autumn.Says)
	}
	if spring := yardCase(t, p, "must-hoped", "window-spring"); spring.Verdict != lacksSome || !strings.Contains(spring.Says, "held until 15 January 2027 and can be signed on 28 February 2027 at the soonest") || *spring.Chance.Value != 0 {
		t.Errorf("spring: %s, chance %v", spring.Says, *spring.Chance.Value)
	}
	lift := yardCase(t, p, "must-hoped", "window-orrin")
	for _, l := range lift.Lacks {
		if !strings.HasPrefix(l.What, "tow season") {
			t.Errorf("the lift lacks %s too", l.What)
		}
	}
	if len(lift.Lacks) != 2 || !strings.Contains(lift.Says, "outside May to September") {
		t.Errorf("lift: %s", lift.Says)
	}
	for _, window := range []string{"window-spring", "window-autumn", "window-orrin"} {
		w := yardCase(t, p, "plan", window)
		if w.Verdict != lacksSome || *w.Short.Value < 1e6 || !strings.Contains(w.Says, "short as likely as not on") {
			t.Errorf("the whole plan at %s: %s", window, w.Says)
		}
	}
	if !strings.Contains(p.Heading[0], "15 to 20 September 2027 for Skellby") || !strings.Contains(p.Heading[1], "no yard date satisfies all") {
		t.Errorf("heading %q", p.Heading)
	}
}

// Identity: a day has water enough over the sill going in and coming out exactly where the Docking page has a time with water enough on that day, which
// it finds another way, by walking along the curve.
func TestCalendarsTidesAreThoseOfTheDockingPage(t *testing.T) {
	b := calendarAsIs(t, "corran-vey")
	wet := map[string]bool{}
	for _, d := range b.Docking.Docks {
		for _, w := range d.Windows {
			from, _ := time.Parse(time.RFC3339, w.Start)
			to, _ := time.Parse(time.RFC3339, w.End)
			if d.ID == "dock-skellby" && w.Over > 0.005 {
				wet[from.Add(to.Sub(from)/2).Format(time.DateOnly)] = true // the day of its middle
			}
		}
	}
	for _, window := range []string{"window-spring", "window-autumn"} {
		for _, d := range yardCase(t, b.Calendar, "must-hoped", window).Days {
			out := date(t, d.Date).AddDays(14).String()
			dryIn, dryOut := slices.Contains(d.What, "tide to enter the dock"), slices.Contains(d.What, "tide to leave the dock")
			if wet[d.Date] == dryIn || wet[out] == dryOut {
				t.Errorf("%s: wet %v and %v, lacks %v", d.Date, wet[d.Date], wet[out], d.What)
			}
		}
	}
	for _, g := range yardCase(t, b.Calendar, "must-hoped", "window-autumn").Good {
		if g.Sill == "" || g.SillUp == "" || g.Out != date(t, g.In).AddDays(14).String() {
			t.Errorf("%+v", g)
		}
	}
}

// The tug: what must be done has a date in May, the whole plan one in the autumn of the next year, and no tow in February.
func TestTugsCalendar(t *testing.T) {
	p := calendarAsIs(t, "pell").Calendar
	for _, c := range []struct{ key, window, verdict string }{
		{"must", "window-0", lacksSome}, {"must", "window-1", satisfiesAll}, {"plan", "window-1", lacksSome}, {"plan", "window-2", lacksSome}, {"plan", "window-3", satisfiesAll},
	} {
		if w := yardCase(t, p, c.key, c.window); w.Verdict != c.verdict {
			t.Errorf("%s at %s: %s, %s", c.key, c.window, w.Verdict, w.Says)
		}
	}
	if w := yardCase(t, p, "plan", "window-1"); !strings.Contains(w.Says, "But for the money she could leave on 3 to 16 May 2027.") {
		t.Errorf("%s", w.Says)
	}
	if n := p.Network; len(n.Bars) != 10 || n.Refused != nil || len(n.Chances) != 3 {
		t.Errorf("network %+v", n)
	}
}

// Unknown stays unknown: nothing that nobody has entered counts as good, and it is said.
func TestCalendarSaysWhatNobodyHasEntered(t *testing.T) {
	p := calendarOf(t, "pell", func(d *dossier.Dossier) {
		for _, id := range []string{"season", "tow-out", "tow-back", "tide-basin", "crew-smith"} {
			d.Remove(id)
		}
	}).Calendar
	w := yardCase(t, p, "must", "window-1")
	if w.Verdict != satisfiesKnown || !slices.Equal(w.Unknown, []string{"the tow", "the water over the sill", "the water at her berth"}) {
		t.Errorf("%s, unknown %q", w.Verdict, w.Unknown)
	}
	for _, l := range p.Lanes {
		if strings.HasPrefix(l.Key, "sill") || strings.HasPrefix(l.Key, "tow") || l.Key == "berth" || l.Key == "visitors" {
			if l.Known || len(l.Spans) > 0 || l.Says == "" {
				t.Errorf("%s is not known: %+v", l.Name, l)
			}
		}
	}
	said := ""
	for _, n := range p.Missing {
		said += n.What + "\n"
	}
	for _, want := range []string{"visitors' season", "No tow to Basin slipway", "No tide is entered for Basin slipway", "how many there are of: smith"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said in\n%s", want, said)
		}
	}
}

// A fault in the network is refused with its field, and the rest of the page still works.
func TestCalendarRefusesABadNetwork(t *testing.T) {
	for name, c := range map[string]struct {
		id   string
		body plan.Activity
		want string
		do   string
	}{
		"in a circle": {"act-wash", plan.Activity{Name: "Washed and scraped", Phase: "in dock", Low: new(86400.0), Likely: new(86400.0), High: new(86400.0), After: []string{"act-look"}}, "wait for each other in a circle", "Correct after"},
		"negative":    {"act-coat", plan.Activity{Name: "Two coats", Phase: "in dock", Low: new(-86400.0), Likely: new(86400.0), High: new(2 * 86400.0), After: []string{"act-wash"}}, "must not be less than 0", "Correct low"},
		"unknown":     {"act-coat", plan.Activity{Name: "Two coats", Phase: "in dock", Likely: new(86400.0), After: []string{"act-sandblast"}}, "which is no activity here", "Correct after"},
		"upside down": {"act-coat", plan.Activity{Name: "Two coats", Phase: "in dock", Low: new(5 * 86400.0), Likely: new(2 * 86400.0), High: new(8 * 86400.0)}, "needs low <= likely <= high", "Correct likely"},
		"no days":     {"act-coat", plan.Activity{Name: "Two coats", Phase: "in dock"}, "has no duration", "Correct duration"},
	} {
		p := calendarOf(t, "pell", func(d *dossier.Dossier) { put(t, d, c.id, c.body) }).Calendar
		n := p.Network.Refused
		if n == nil || !strings.Contains(n.What, c.want) || !strings.HasPrefix(n.Do, c.do) || n.Kind != "activity" || n.ID == "" {
			t.Errorf("%s: %+v", name, n)
			continue
		}
		if strings.Contains(n.What, "act-") && name != "unknown" {
			t.Errorf("%s: an ID where a name belongs: %s", name, n.What)
		}
		if len(p.Lanes) < 5 || yardCase(t, p, "must", "window-1").Verdict != satisfiesAll || !slices.ContainsFunc(p.Missing, func(m Notice) bool { return m.What == n.What }) {
			t.Errorf("%s: the rest of the page does not work", name)
		}
	}
}

// By hand, with days that are certain: 2 days, then two side by side of 3 and 5, then 1: eight days, the shorter of the two can slip two. One gang for
// both makes it eleven.
func TestNetworkByHand(t *testing.T) {
	d := dossier.New()
	day := func(n float64) *float64 { return new(n * 86400) }
	put(t, d, "ship", ship.Particulars{Name: "Box"})
	put(t, d, "dock", plan.Dock{Name: "Slip", DayRate: new(400.0), Services: new(50.0)})
	put(t, d, "win", plan.DockWindow{Dock: "dock", Opens: date(t, "2027-05-03"), Closes: date(t, "2027-05-20"), Days: day(9), State: "signed"})
	put(t, d, "scheme", plan.Scheme{Name: "all", Dock: "dock", Window: "win", Date: date(t, "2027-05-03"), Standing: new(true)})
	put(t, d, "season", plan.Season{Name: "sailing", Begins: new(5), Ends: new(5), Income: new(3100.0)})
	put(t, d, "a", plan.Activity{Name: "Up", Phase: "in dock", Likely: day(2)})
	put(t, d, "b", plan.Activity{Name: "Rivets", Phase: "in dock", Likely: day(3), After: []string{"a"}, Crews: []string{"gang"}})
	put(t, d, "c", plan.Activity{Name: "Plates", Phase: "in dock", Likely: day(5), After: []string{"a"}, Crews: []string{"gang"}})
	put(t, d, "e", plan.Activity{Name: "Down", Phase: "in dock", Likely: day(1), After: []string{"b", "c"}})
	p := brief(t, d, "2027-01-04").Calendar
	if got := number(t, p.Network.Figures, "length"); got != 8 {
		t.Errorf("%v days, want 8", got)
	}
	// A day costs 400 + 50 and a thirty-first of what May brings.
	if got := number(t, p.Network.Figures, "cost_per_day"); math.Abs(got-550) > 1e-6 {
		t.Errorf("%v a day, want 550", got)
	}
	slips := map[string]float64{"Up": 0, "Rivets": 2, "Plates": 0, "Down": 0}
	for _, b := range p.Network.Bars {
		if *b.Float.Value != slips[b.Name] || b.Critical != (slips[b.Name] == 0) {
			t.Errorf("%s: float %v, critical %v", b.Name, *b.Float.Value, b.Critical)
		}
	}
	put(t, d, "gang", plan.Crew{Name: "Gang", Count: new(1)})
	p = brief(t, d, "2027-01-04").Calendar
	if got := number(t, p.Network.Figures, "resource_length"); got != 11 {
		t.Errorf("%v days with one gang, want 11", got)
	}
	if got := p.Network.Chances[0]; *got.All.Value != 100 || *got.Crews.Value != 0 {
		t.Errorf("done in nine days: surely with gangs enough, never with one: %+v", got)
	}
	if p.Network.Start != "2027-05-03" || p.Network.End != "2027-05-13" {
		t.Errorf("%s to %s", p.Network.Start, p.Network.End)
	}
}

// Identity: what meets waits for the last, so the chance with all paths is never above that of the critical path alone by more than the sampling error,
// and sharing crews never raises it.
func TestMergeBias(t *testing.T) {
	for _, name := range []string{"corran-vey", "pell"} {
		for _, r := range calendarAsIs(t, name).Calendar.Network.Chances {
			if *r.All.Value > *r.Simple.Value+1.5 || *r.Crews.Value > *r.All.Value+1.5 {
				t.Errorf("%s, %s: %v, %v, %v", name, r.What, *r.Simple.Value, *r.All.Value, *r.Crews.Value)
			}
		}
	}
}
