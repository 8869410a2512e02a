package assess

import (
	"math"
	"testing"

	"oakum/dossier"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// strakeOf is a ship of one strake of 10 mm plate, frames half a metre apart, with what a test puts on it.
func strakeOf(t *testing.T) *dossier.Dossier {
	t.Helper()
	d := dossier.New()
	put(t, d, "ship", ship.Particulars{Name: "Testing", LBP: new(50.0), Built: date(t, "1950"), DesignDraft: new(3.0)})
	put(t, d, "frames", ship.FrameSystem{Name: "frames", Origin: "after perpendicular", OriginX: new(0.0), First: new(0.0), Direction: "forward", Last: new(100.0), SpacingFrom: []float64{0}, Spacing: []float64{0.5}})
	put(t, d, "g", ship.Strake{Name: "G", X: []float64{0, 50}, Lower: []float64{4, 4}, Upper: []float64{6, 6}, Thickness: new(0.010)})
	return d
}

func gauge(t *testing.T, d *dossier.Dossier, id, day, frame, remark string, mm float64) {
	t.Helper()
	put(t, d, id, survey.Thickness{Seen: survey.Seen{Date: date(t, day)}, Place: ship.Place{Frame: frame, Strake: "G", Side: ship.Port}, Thickness: new(mm / 1000), Remark: remark})
}

// A doubler of 8 mm over a plate of 10 mm: its readings are of the doubler, the plate behind stays unknown, and nothing of it is a plate row.
func TestReadingsOfADoublerAreNotOfTheHull(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "doubler", ship.Doubler{Name: "Doubler 1", Place: ship.Place{Frame: "20", FrameTo: "30", Strake: "G", Side: ship.Port}, Thickness: new(0.008), Fitted: date(t, "2000"), Area: new(4.0)})
	gauge(t, d, "a", "2020", "24", "doubler", 7.0)
	gauge(t, d, "b", "2020", "60", "", 9.0)
	s := brief(t, d, "2026-05-01").Standing
	if len(s.Plates) != 1 || s.Plates[0].ID != "b" {
		t.Fatalf("plates: %+v, want the reading beside the doubler alone", s.Plates)
	}
	if len(s.Doublers) != 1 || s.Doublers[0].Readings != 1 || s.Doublers[0].Least.Value == nil || math.Abs(*s.Doublers[0].Least.Value-7) > 1e-9 {
		t.Fatalf("the doubler has no reading of its own: %+v", s.Doublers)
	}
	r := s.Doublers[0]
	if r.Behind.Value != nil || r.Behind.Text != "unknown" || r.Behind.Worry == 0 {
		t.Errorf("what is behind is not unknown: %+v", r.Behind)
	}
	// Identity: 8 mm in 2000, 7 mm in 2020: a twentieth of a millimetre a year.
	if r.Rate.Value == nil || math.Abs(*r.Rate.Value-0.05) > 0.0005 {
		t.Errorf("rate of the doubler: %v, want 0.05 mm/y", r.Rate.Text)
	}
}

// A reading on a doubler that nobody entered counts for nothing, and the page says so.
func TestReadingOfAnUnknownDoublerIsSaid(t *testing.T) {
	d := strakeOf(t)
	gauge(t, d, "a", "2020", "24", "doubler", 7.0)
	s := brief(t, d, "2026-05-01").Standing
	if len(s.Plates) != 0 {
		t.Errorf("plates: %+v", s.Plates)
	}
	for _, n := range s.Missing {
		if n.Kind == "doubler" {
			return
		}
	}
	t.Errorf("nothing is said of it: %+v", s.Missing)
}

// Identity: a plate of 5 m by 2 m and 10 mm with 2.2 mm gone is past 20 %, short of 25 %; it weighs 5 x 2 x 0.01 x 7850 kg = 0.785 t.
func TestRenewalByThreeCriteria(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "p", ship.Plate{Name: "G3", Place: ship.Place{Frame: "20", FrameTo: "30", Strake: "G", Side: ship.Port}, Thickness: new(0.010)})
	put(t, d, "q", ship.Plate{Name: "G4", Place: ship.Place{Frame: "31", FrameTo: "40", Strake: "G", Side: ship.Port}, Thickness: new(0.010)})
	gauge(t, d, "a", "2020", "24", "", 7.8)
	r := brief(t, d, "2026-05-01").Standing.Renewal
	if len(r.Criteria) != 3 || len(r.Plates) != 1 {
		t.Fatalf("%d criteria, %d plates: %+v", len(r.Criteria), len(r.Plates), r)
	}
	for i, want := range []float64{0.785, 0, 0} {
		if got := *r.Criteria[i].Steel.P50; math.Abs(got-want) > 0.02 {
			t.Errorf("%s: %.3f t, want %.3f", r.Criteria[i].Criterion, got, want)
		}
	}
	if p := r.Plates[0]; p.By20 != "renew" || p.By25 != "stays" || math.Abs(*p.Lost.P50-22) > 1e-6 || math.Abs(*p.Area.Value-10) > 1e-6 {
		t.Errorf("plate: %+v", p)
	}
	if r.Unseen[0].Key != "unread" || *r.Unseen[0].Value != 1 {
		t.Errorf("the other plate was not read: %+v", r.Unseen)
	}
}

// Identity: a uniform shaft on two bearings at the quarter points carries half its weight on each; with the propeller off its after end the after
// bearing carries less and the other more.
func TestBearingThatGainsLoadIsNamed(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "line", ship.ShaftLine{Name: "Shaft", LineSide: ship.Centre})
	put(t, d, "s", ship.Segment{Line: "line", X0: new(0.0), X1: new(8.0), OuterDiameter: new(0.3), Density: new(7850.0)})
	put(t, d, "aft", ship.Bearing{Line: "line", Name: "after", X: new(2.0)})
	put(t, d, "fore", ship.Bearing{Line: "line", Name: "fore", X: new(6.0)})
	put(t, d, "prop", ship.Propeller{Name: "Screw", Line: "line", X: new(0.5), Mass: new(1000.0), Density: new(8300.0), State: "on the shaft"})
	s := brief(t, d, "2026-05-01").Standing.Shafts
	if len(s) != 1 || len(s[0].Cases) != 5 {
		t.Fatalf("shafts: %+v", s)
	}
	half := math.Pi / 4 * 0.09 * 8 * 7850 * 9.80665 / 2000 // kN
	for _, b := range s[0].Cases[1].Bearings {
		if math.Abs(*b.Force.P50-half) > 0.01 {
			t.Errorf("%s without the propeller: %.3f kN, want %.3f", b.Name, *b.Force.P50, half)
		}
	}
	if len(s[0].Gaining) == 0 || !contains(s[0].Gaining, "propeller off, afloat: fore carries") || contains(s[0].Gaining, "after carries") && !contains(s[0].Gaining, "dry in dock, all on: after") {
		t.Errorf("gaining: %v", s[0].Gaining)
	}
}

func contains(list []string, part string) bool {
	for _, s := range list {
		if len(s) >= len(part) && s[:len(part)] == part {
			return true
		}
	}
	return false
}

// A set that stood dead for a year: the span is drawn as without protection, and said.
func TestDeadYearIsDrawn(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "set", ship.ImpressedSet{Name: "Set", RatedAmps: new(50.0), Electrode: "agcl-kcl"})
	for i := range 36 {
		day, _ := quantity.ParseDate([]string{"2019", "2020", "2021"}[i/12] + []string{"-01", "-02", "-03", "-04", "-05", "-06", "-07", "-08", "-09", "-10", "-11", "-12"}[i%12] + "-15")
		r := survey.Rectifier{Seen: survey.Seen{Date: day}, Set: "set", Amps: new(20.0), Cell: new(-0.860), Electrode: "agcl-kcl", State: "on"}
		if i/12 == 1 {
			r.Amps, r.Cell, r.State = new(0.0), new(-0.600), "tripped"
		}
		put(t, d, "r"+day.String(), r)
	}
	p := brief(t, d, "2026-05-01").Standing.Protection
	dead := 0.0
	for _, s := range p.Spans {
		if s.State == "none" {
			dead += s.To - s.From
		}
	}
	if math.Abs(dead-1) > 0.1 {
		t.Errorf("dead for %.2f years, want 1: %+v", dead, p.Spans)
	}
	if len(p.Findings) == 0 || p.Findings[0].Worry != 2 {
		t.Errorf("findings: %+v", p.Findings)
	}
}

// The invented steamer's map: what lies behind her doublers is never shown as read, and ten places are named.
func TestSteamersShell(t *testing.T) {
	d, _, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	c := newCase(d, PlanInForce(d), date(t, "2026-11-25"))
	p := c.standingPage()
	m, err := c.shellMap(&p)()
	if err != nil {
		t.Fatal(err)
	}
	covered := 0
	for _, k := range m.Cells {
		if k.State == "covered" {
			covered++
		}
	}
	if covered < 50 || len(m.Next) != nextPlaces || m.Share.Value == nil {
		t.Errorf("covered %d, next %d, share %v", covered, len(m.Next), m.Share.Text)
	}
	if _, ok := c.book.Sheet(m.Sheet); !ok {
		t.Errorf("the map has no sheet %q", m.Sheet)
	}
	if _, err := newCase(dossier.New(), Plan{}, c.day).shellMap(&StandingPage{})(); err == nil {
		t.Error("an empty ship is mapped")
	}
}

// A diver's bare share beats the table's: a tenth bare in 2020 and a hundredth a year since is 16 % in 2026, whatever a table says of paint of 1990.
func TestSeenBareShareBeatsTheTable(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "z", ship.CoatingZone{Name: "Bottom", Exposure: "immersed", Metal: "steel", Area: new(100.0), Applied: date(t, "1990"), Seen: date(t, "2020-05-01"), BareShare: new(0.10), BreakdownA: new(0.1), BreakdownB: new(0.01)})
	r := brief(t, d, "2026-05-01").Standing.Protection.Demand
	if len(r) != 1 || math.Abs(*r[0].Bare.Value-16) > 0.02 {
		t.Fatalf("bare: %+v", r)
	}
}
