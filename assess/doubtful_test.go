package assess

import (
	"math"
	"strings"
	"testing"

	"oakum/ship"
	"oakum/survey"
)

// said finds the doubt about a record.
func said(t *testing.T, p StandingPage, id string) Notice {
	t.Helper()
	for _, n := range p.Doubtful {
		if n.ID == id {
			return n
		}
	}
	t.Fatalf("nothing is said of %s: %+v", id, p.Doubtful)
	return Notice{}
}

// A decimal point lost: 98 mm on a ship of 10 mm plate. It is named with its place and reason, nothing is worked with it, and the record stands.
func TestReadingThickerThanAnyPlate(t *testing.T) {
	d := strakeOf(t)
	gauge(t, d, "good", "2020", "24", "", 9.8)
	gauge(t, d, "bad", "2020", "60", "", 98)
	gauge(t, d, "rolled", "2020", "70", "", 11.3) // rolled 13 % over: it happens, and counts
	s := brief(t, d, "2026-05-01").Standing
	n := said(t, s, "bad")
	if !strings.Contains(n.What, "98") || !strings.Contains(n.What, "10") || n.Place == "" || n.Do == "" {
		t.Errorf("place and reason: %+v", n)
	}
	if len(s.Plates) != 2 {
		t.Errorf("%d places, want the two that can be", len(s.Plates))
	}
	if _, ok := d.Get("bad"); !ok {
		t.Error("the record is lost")
	}
	if len(s.Doubtful) != 1 {
		t.Errorf("also said: %+v", s.Doubtful)
	}
}

// The same survey from two files: each reading counts once, and the page says how many came twice.
func TestSurveyEnteredTwice(t *testing.T) {
	d := strakeOf(t)
	for i, from := range []string{"first.csv (sha256 aa), row ", "again.csv (sha256 aa), row "} {
		for row, frame := range []string{"10", "20", "30"} {
			id := string(rune('a'+i)) + frame
			putFrom(t, d, id, from+string(rune('5'+row)), survey.Thickness{Seen: survey.Seen{Date: date(t, "2020")}, Place: ship.Place{Frame: frame, Strake: "G", Side: ship.Port}, Thickness: new(0.009), Survey: "2020 afloat"})
		}
	}
	// A careful gauger reads one place twice: two rows of one file are two readings.
	putFrom(t, d, "r1", "third.csv (sha256 bb), row 4", survey.Thickness{Seen: survey.Seen{Date: date(t, "2021")}, Place: ship.Place{Frame: "40", Strake: "G", Side: ship.Port}, Thickness: new(0.009)})
	putFrom(t, d, "r2", "third.csv (sha256 bb), row 5", survey.Thickness{Seen: survey.Seen{Date: date(t, "2021")}, Place: ship.Place{Frame: "40", Strake: "G", Side: ship.Port}, Thickness: new(0.009)})
	s := brief(t, d, "2026-05-01").Standing
	readings := 0
	for _, p := range s.Plates {
		readings += p.Readings
	}
	if len(s.Plates) != 4 || readings != 5 {
		t.Errorf("%d places with %d readings, want 4 with 5", len(s.Plates), readings)
	}
	if len(s.Doubtful) != 1 || !strings.HasPrefix(s.Doubtful[0].What, "3 readings of the survey 2020 afloat are entered twice") {
		t.Errorf("said: %+v", s.Doubtful)
	}
}

// Potentials of one day by two cells are brought to one scale, and those without a cell are named and say nothing. Identity: the same steel reads the
// same on both; -850 mV against copper sulphate is -780 against silver chloride in sea water (Peabody's, as potential.read has it).
func TestPotentialsInMixedElectrodes(t *testing.T) {
	d := strakeOf(t)
	at := func(id, frame, electrode string, mv float64) {
		put(t, d, id, survey.Potential{Seen: survey.Seen{Date: date(t, "2025-06-01")}, Place: ship.Place{Frame: frame, Side: ship.Port}, Reading: new(mv / 1000), Electrode: electrode, Salinity: new(35.0), Temperature: new(25.0)})
	}
	at("cse", "10", "copper-sulphate", -850)
	at("silver", "10", "agcl-sea", -780)
	at("none", "20", "", -900)
	s := brief(t, d, "2026-05-01").Standing
	var scale []float64
	for _, v := range s.Protection.Surveys {
		if v.Weakest.Value != nil {
			scale = append(scale, *v.Weakest.Value)
		}
	}
	if len(scale) != 2 || math.Abs(scale[0]-scale[1]) > 1 || math.Abs(scale[0]+780) > 1 {
		t.Errorf("one scale: %v", scale)
	}
	n := said(t, s, "none")
	if !strings.Contains(n.What, "without their electrode") || !strings.Contains(n.Place, "20") {
		t.Errorf("%+v", n)
	}
}

func shaftOf(t *testing.T, bearings map[string]float64, segments map[string][2]float64) StandingPage {
	t.Helper()
	d := strakeOf(t)
	put(t, d, "line", ship.ShaftLine{Name: "Port shaft", LineSide: ship.Port})
	for id, x := range segments {
		put(t, d, id, ship.Segment{Line: "line", X0: new(x[0]), X1: new(x[1]), OuterDiameter: new(0.3)})
	}
	for id, x := range bearings {
		put(t, d, id, ship.Bearing{Line: "line", Name: id, X: new(x)})
	}
	return brief(t, d, "2026-05-01").Standing
}

func TestShaftThatCantStand(t *testing.T) {
	for name, w := range map[string]struct {
		bearings map[string]float64
		segments map[string][2]float64
		why      string
	}{
		"one bearing": {map[string]float64{"aft": 2}, map[string][2]float64{"s": {0, 8}}, "bearing"},
		"overlapping": {map[string]float64{"aft": 2, "fore": 6}, map[string][2]float64{"s": {0, 5}, "t": {4, 8}}, "segments must meet"},
	} {
		t.Run(name, func(t *testing.T) {
			s := shaftOf(t, w.bearings, w.segments)
			n := said(t, s, "line")
			if !strings.Contains(n.What, "Port shaft") || !strings.Contains(n.What, w.why) || n.Kind != "shaft_line" {
				t.Errorf("%+v", n)
			}
			for _, k := range s.Shafts[0].Cases {
				if k.Why == "" || len(k.Bearings) > 0 {
					t.Errorf("%s is worked all the same: %+v", k.Case, k)
				}
			}
			if len(s.Shafts[0].Drawn.Segments) != len(w.segments) {
				t.Error("what was entered is not drawn")
			}
		})
	}
}

// Identity: a box of 130 mm takes six rings of 19 mm (114 mm), not eight (152 mm).
func TestPackingLargerThanItsBox(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "many", ship.Gland{Name: "Port gland", Place: ship.Place{Frame: "12", Side: ship.Port}, Bore: new(0.343), Shaft: new(0.305), Rings: new(8), BoxDepth: new(0.130)})
	put(t, d, "thick", ship.Gland{Name: "Starboard gland", Place: ship.Place{Frame: "12", Side: ship.Starboard}, Bore: new(0.300), Shaft: new(0.305), Rings: new(5)})
	put(t, d, "fits", ship.Gland{Name: "Rudder gland", Place: ship.Place{Frame: "2", Side: ship.Centre}, Bore: new(0.343), Shaft: new(0.305), Rings: new(6), BoxDepth: new(0.130)})
	s := brief(t, d, "2026-05-01").Standing
	if n := said(t, s, "many"); !strings.Contains(n.What, "8 rings") || !strings.Contains(n.What, "takes 6") || !strings.Contains(n.Place, "12") {
		t.Errorf("%+v", n)
	}
	if n := said(t, s, "thick"); !strings.Contains(n.What, "bore must be larger than shaft") {
		t.Errorf("%+v", n)
	}
	if len(s.Doubtful) != 2 || len(s.Glands) != 3 {
		t.Errorf("%d doubts, %d glands: %+v", len(s.Doubtful), len(s.Glands), s.Doubtful)
	}
}

// Years without current after a place was read move its early date. Identity: a year dead at 0.035 mm of bare steel, where the plate goes at 0.010 mm a
// year, is 0.025 mm more, two and a half years of its own rate.
func TestYearsWithoutCurrentMoveTheEarlyDate(t *testing.T) {
	at := func(dead bool) PlateRow {
		d := strakeOf(t)
		put(t, d, "z", ship.CoatingZone{Name: "Bottom", Exposure: "immersed", Metal: "steel", X0: new(0.0), X1: new(50.0), Bare: new(0.035e-3)})
		put(t, d, "set", ship.ImpressedSet{Name: "Set", RatedAmps: new(50.0), Electrode: "agcl-kcl"})
		gauge(t, d, "a", "2000-06-15", "24", "", 9.5)
		for i := range 36 {
			day := date(t, []string{"2019", "2020", "2021"}[i/12]+"-"+[]string{"01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12"}[i%12]+"-15")
			r := survey.Rectifier{Seen: survey.Seen{Date: day}, Set: "set", Amps: new(20.0), Cell: new(-0.860), Electrode: "agcl-kcl", State: "on"}
			if dead && i/12 == 1 {
				r.Amps, r.Cell, r.State = new(0.0), new(-0.600), "tripped"
			}
			put(t, d, "r"+day.String(), r)
		}
		return brief(t, d, "2026-05-01").Standing.Plates[0]
	}
	with, without := at(true), at(false)
	if with.left.rate <= 0 || math.Abs(with.left.rate-0.01e-3) > 0.5e-6 {
		t.Fatalf("rate %v", with.left.rate)
	}
	moved := without.due.early - with.due.early
	if want := (0.035e-3 - with.left.rate) / with.left.rate; math.Abs(moved-want) > 0.15*want || !strings.Contains(with.Life.Note, "without current") || strings.Contains(without.Life.Note, "without current") {
		t.Errorf("moved by %.2f years, want about %.2f; %q", moved, want, with.Life.Note)
	}
	if with.due.likely != without.due.likely {
		t.Error("nobody knows that the place is bare, and its likely date moved")
	}
}

// A storm stands on the time line in its own lane, and what lasted is drawn as long as it lasted.
func TestStormsStandOnTheTimeLine(t *testing.T) {
	d := strakeOf(t)
	put(t, d, "storm", survey.Event{Seen: survey.Seen{Date: date(t, "1987-10-16")}, What: "lay against the quay", Sort: "storm"})
	put(t, d, "rest", survey.Event{Seen: survey.Seen{Date: date(t, "1972")}, What: "laid up", Sort: "laid up", Until: date(t, "1974")})
	lanes := map[string]Happening{}
	for _, h := range brief(t, d, "2026-05-01").Standing.TimeLine {
		lanes[h.ID] = h
	}
	if lanes["storm"].Sort != "storm" || lanes["storm"].Until != nil {
		t.Errorf("storm: %+v", lanes["storm"])
	}
	if h := lanes["rest"]; h.Sort != "event" || h.Until == nil || math.Abs(*h.Until-h.Year-2) > 0.01 {
		t.Errorf("laid up: %+v", h)
	}
}
