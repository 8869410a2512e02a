package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
	"oakum/survey"
)

// docked is a ship on her fifth day of fourteen, with two triggers, two things found and one change order.
func docked(t *testing.T) *dossier.Dossier {
	d := dossier.New()
	put(t, d, "ship", ship.Particulars{Name: "Box", LBP: new(60.0)})
	put(t, d, "frames", ship.FrameSystem{Name: "frames", Origin: "after perpendicular", Spacing: []float64{0.6}})
	for _, s := range []string{"A", "B", "C", "G"} {
		put(t, d, "strake-"+strings.ToLower(s), ship.Strake{Name: s})
	}
	put(t, d, "win", plan.DockWindow{Dock: "d", Opens: date(t, "2027-04-08"), Closes: date(t, "2027-04-21"), State: "signed"})
	put(t, d, "day-1", plan.Day{Date: date(t, "2027-04-08"), Number: new(1)})
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(500000.0)})
	put(t, d, "res", plan.Reserve{Name: "home", Likely: new(72000.0)})
	put(t, d, "worse", plan.Trigger{Place: ship.Place{Frame: "28", FrameTo: "60", Strake: "G"}, Finding: "doubler", Measure: "thickness", Limit: new(7.5), Unit: "mm", When: "below", Then: "off", Money: new(150000.0), Hours: new(24 * 3600.0), Decider: "three"})
	put(t, d, "better", plan.Trigger{Place: ship.Place{Frame: "60", FrameTo: "90", Strake: "A", StrakeTo: "C"}, Finding: "plate", Direction: "better", Measure: "thickness", Limit: new(10.2), Unit: "mm", When: "above", Then: "stay", Money: new(60000.0), Hours: new(12 * 3600.0)})
	put(t, d, "f1", plan.Found{Number: "F1", Date: date(t, "2027-04-11"), Place: ship.Place{Frame: "40", Strake: "G", Side: ship.Port}, Finding: "doubler", Against: "worse", Thickness: new(0.0061), Cost: new(120000.0), Days: new(3 * 86400.0)})
	put(t, d, "f2", plan.Found{Number: "F2", Date: date(t, "2027-04-12"), Place: ship.Place{Frame: "70", Strake: "B"}, Finding: "plate", Against: "better", Thickness: new(0.0108)})
	put(t, d, "f3", plan.Found{Number: "F3", Date: date(t, "2027-04-12"), Place: ship.Place{Frame: "20", Strake: "G"}, Finding: "doubler", Against: "worse", Thickness: new(0.005)}) // outside the frames of the trigger
	put(t, d, "f4", plan.Found{Number: "F4", Date: date(t, "2027-04-12"), Place: ship.Place{Frame: "70", Strake: "G"}, Finding: "plate", Thickness: new(0.011)})                     // another strake
	put(t, d, "ch", plan.Change{Number: "C1", Quantity: new(200.0), UnitRate: new(40.0), Days: new(86400.0), State: "approved", Pot: "fund"})
	put(t, d, "hold", plan.Inspection{What: "reports in", Share: new(0.2), Hold: new(true)})
	put(t, d, "last", plan.Inspection{What: "last readings", Before: new(72 * 3600.0)})
	return d
}

func TestDaysAndMoneyInDock(t *testing.T) {
	b := brief(t, docked(t), "2027-04-12")
	p := b.InDock
	if got := number(t, p.Time, "day"); got != 5 {
		t.Errorf("day %v, want 5", got)
	}
	if got := number(t, p.Time, "left"); got != 9 {
		t.Errorf("%v days left, want 9", got)
	}
	if p.Heading[0] != "Day 5 of 14 in dock; 9 days are left." {
		t.Errorf("heading %q", p.Heading[0])
	}
	// Free 500 000 - 72 000 = 428 000, less the change of 200 x 40 = 8 000, less 120 000 called: 300 000. The 60 000 released is not counted.
	for key, want := range map[string]float64{"free": 428000, "likely_sum": 8000, "called": 120000, "released": 60000, "left": 300000} {
		if got := number(t, p.Money, key); got != want {
			t.Errorf("%s = %v, want %v", key, got, want)
		}
	}
	// By hand: a fifth of the thirteen days from 8 to 21 April is 2.6 days, and 72 and 24 hours before the 21st are the 18th and the 20th. The two
	// triggers lit on the 11th and 12th want an answer within 24 and 12 hours. The keeper's own inspections stand for the fifth and the 72 hours.
	want := []string{"2027-04-10 hold 2", "2027-04-12 f1 0", "2027-04-12 f2 0", "2027-04-18 last 0", "2027-04-21  0"}
	var got []string
	for _, n := range p.Deadlines {
		got = append(got, fmt.Sprintf("%s %s %d", n.Due, n.ID, n.Worry))
	}
	if !slices.Equal(got, want) {
		t.Errorf("deadlines %q, want %q", got, want)
	}
	if f := p.Deadlines[4]; f.What != "Final readings of the last 24 hours" || !strings.Contains(f.Do, "20 April 2027") {
		t.Errorf("%+v", f)
	}
}

func TestTriggersLightBothWays(t *testing.T) {
	p := brief(t, docked(t), "2027-04-12").InDock
	if len(p.Lit) != 2 {
		t.Fatalf("%d lit: %+v", len(p.Lit), p.Lit)
	}
	got := map[string]LitRow{}
	for _, l := range p.Lit {
		got[l.Trigger+"/"+l.Found] = l
	}
	w, ok := got["worse/f1"]
	if !ok || w.Answer != "2027-04-12" || w.State != "lit" || *w.Money.Value != 120000 || w.Money.Worry != 2 {
		t.Errorf("worse: %+v", w)
	}
	if r, ok := got["better/f2"]; !ok || *r.Money.Value != 60000 || r.Money.Worry > 1 {
		t.Errorf("better: %+v", r)
	}
	late := brief(t, docked(t), "2027-04-14").InDock
	if late.Lit[0].State != "late" {
		t.Errorf("unanswered after its hours: %+v", late.Lit[0])
	}
}

// May to October has 184 days: 184 000 of income is 1 000 a day, of which 0.62 is left after costs that stop too and a tenth is kept: 558. With a
// dock at 3 900 and services at 850 a day in June costs 5 308, and in January 4 750.
func TestOneMoreDay(t *testing.T) {
	d := dossier.New()
	put(t, d, "dock", plan.Dock{Name: "the dock", DayRate: new(3900.0), Services: new(850.0)})
	put(t, d, "season", plan.Season{Name: "visitors", Begins: new(5), Ends: new(10), Income: new(184000.0), Net: new(0.62), Keeps: new(0.1)})
	put(t, d, "s", plan.Scheme{Name: "one", Standing: new(true), Dock: "dock"})
	c := newCase(d, PlanInForce(d), date(t, "2027-01-01"))
	for day, want := range map[string]float64{"2027-06-10": 5308, "2027-01-10": 4750} {
		f, ok := c.dayCost(date(t, day))
		if !ok || math.Abs(*f.Value-want) > 1e-6 {
			t.Errorf("%s: %+v", day, f)
		}
	}
}

func TestTimeRunsOut(t *testing.T) {
	p := brief(t, docked(t), "2027-04-23").InDock
	if p.Heading[0] != "The time promised in dock ended on 21 April 2027." {
		t.Errorf("heading %q", p.Heading[0])
	}
	for _, f := range p.Time {
		if f.Key == "left" && f.Worry != 3 {
			t.Errorf("no days left and no worry: %+v", f)
		}
	}
}

func TestPhotographsOfAFinding(t *testing.T) {
	d := docked(t)
	put(t, d, "left", survey.Photo{Seen: survey.Seen{Date: date(t, "2027-04-14")}, Of: "f1", Moment: "as left", Pair: "seen", SHA256: "bb"})
	put(t, d, "seen", survey.Photo{Seen: survey.Seen{Date: date(t, "2027-04-11")}, Of: "f1", Moment: "as found", SHA256: "aa"})
	put(t, d, "other", survey.Photo{Seen: survey.Seen{Date: date(t, "2027-04-11")}, Of: "f2"})
	for day, want := range map[string]string{"2027-04-12": "seen", "2027-04-14": "seen left"} {
		p := brief(t, d, day).InDock
		for _, f := range p.Found {
			if f.ID != "f1" {
				continue
			}
			var got []string
			for _, x := range f.Pictures {
				got = append(got, x.ID)
			}
			if strings.Join(got, " ") != want || f.Photos != len(got) {
				t.Errorf("on %s: %v, %d counted; want %s", day, got, f.Photos, want)
			}
		}
	}
}

// Nine of ten readings at or above nominal and none under nine tenths of it pass 90/10; 110 of 125 is under.
func TestFilmsAndLeaksOfTheDocking(t *testing.T) {
	d := docked(t)
	put(t, d, "good", survey.Film{Seen: survey.Seen{Date: date(t, "2027-04-11")}, Readings: []float64{131e-6, 126e-6, 125e-6, 128e-6, 130e-6, 127e-6, 133e-6, 129e-6, 126e-6, 119e-6}, Nominal: new(125e-6), Rule: "pspc-90-10"})
	put(t, d, "thin", survey.Film{Seen: survey.Seen{Date: date(t, "2027-04-12")}, Readings: []float64{131e-6, 110e-6}, Nominal: new(125e-6), Rule: "pspc-90-10"})
	put(t, d, "old", survey.Film{Seen: survey.Seen{Date: date(t, "2014-06-01")}, Readings: []float64{131e-6}, Nominal: new(125e-6)})
	put(t, d, "wet", survey.Leak{Seen: survey.Seen{Date: date(t, "2027-04-09")}, Source: "rivet", Rate: new(3e-3 / 3600)})
	put(t, d, "tomorrow", survey.Leak{Seen: survey.Seen{Date: date(t, "2027-04-13")}})
	p := brief(t, d, "2027-04-12").InDock
	if len(p.Films) != 2 || p.Films[0].ID != "thin" || !strings.HasPrefix(p.Films[0].Verdict, "not accepted") || p.Films[0].Mean.Worry != 2 || p.Films[1].Verdict != "accepted" {
		t.Errorf("films %+v", p.Films)
	}
	if len(p.Leaks) != 1 || p.Leaks[0].Rate.Text == "" || p.Leaks[0].State != "unknown" {
		t.Errorf("leaks %+v", p.Leaks)
	}
}
