package assess

import (
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// Identity: the sea of a table is low enough for the part of the time that the table itself says, and what nobody has entered is said, not guessed.
func TestWeatherOfATowIsOfItsTable(t *testing.T) {
	d := dossier.New()
	knots := func(x float64) *float64 { return new(x * 1852 / 3600) }
	put(t, d, "dock", plan.Dock{Name: "Basin slipway"})
	put(t, d, "window", plan.DockWindow{Dock: "dock", Opens: date(t, "2031-04-01"), Closes: date(t, "2031-04-20"), Days: new(14 * 86400.0)})
	way := plan.Tow{Name: "There", Dock: "dock", Way: "to the dock", Date: date(t, "2031-04-03"), Distance: new(40 * 1852.0), Speed: knots(5), Current: knots(1), Seas: []string{"spring"}}
	put(t, d, "tow", way)
	says := func() WeatherRow { return brief(t, d, "2030-11-01").Docking.Tows[0].Weather }
	if w := says(); !strings.Contains(w.Says, "not known: the tow has no wave limit") || w.Chance.Value != nil {
		t.Errorf("without a limit: %q", w.Says)
	}
	way.Wave = new(1.0)
	put(t, d, "tow", way)
	if w := says(); !strings.Contains(w.Says, "not known: no wave table of the way is entered for April") {
		t.Errorf("without a table: %q", w.Says)
	}
	put(t, d, "spring", ship.WaveTable{Name: "Off the bar", Months: "5 to 8", Waves: []float64{0.5, 1, 2}, Over: []float64{0.6, 0.3, 0.05}})
	if w := says(); w.Wait.Value != nil {
		t.Errorf("a table of other months answers for April: %q", w.Says)
	}
	put(t, d, "spring", ship.WaveTable{Name: "Off the bar", Months: "3 to 5", Waves: []float64{0.5, 1, 2}, Over: []float64{0.6, 0.3, 0.05}})
	w := says()
	if got := *w.Below.Value; got < 68 || got > 72 {
		t.Errorf("low enough %v %% of the time, the table says 70", got)
	}
	// 40 nautical miles at 4 knots over the ground are 10 hours, and 20 with the margin; 1 to 20 April less 14 days leave 6 days
	if !strings.Contains(spaced(w.Says), "a calm of 20 h") || w.Chance.Note != "within 6 days" {
		t.Errorf("%q, %s", w.Says, w.Chance.Note)
	}
	way.Booked = new(2 * 86400.0)
	put(t, d, "tow", way)
	if shorter := says(); *shorter.Chance.Value >= *w.Chance.Value || *shorter.Wait.Value != *w.Wait.Value {
		t.Errorf("fewer days booked: %v after %v", *shorter.Chance.Value, *w.Chance.Value)
	}
}

// Tugs that pull more than the weakest link bears are said beside the line, and so is a line that pulls more than it; a link that bears more is not.
func TestWeakestLinkIsHeldBesideThePull(t *testing.T) {
	d, _, err := inventedSteamer()
	if err != nil {
		t.Fatal(err)
	}
	way, _ := dossier.Find[plan.Tow](d, "tow-orrin")
	for link, says := range map[float64]string{60e3: "", 30e3: "the tugs can pull 45 t together and the weakest link bears 30 t", 1e3: "more than the weakest link, 1 t"} {
		way.Body.Weakest = &link
		put(t, d, "tow-orrin", way.Body)
		for _, row := range brief(t, d, "2026-11-25").Docking.Tows {
			if row.ID == "tow-orrin" && (!strings.HasPrefix(spaced(row.Line.Note), says) || (says == "") != (row.Line.Worry == 0)) {
				t.Errorf("a link of %g kg: %q, %d", link, row.Line.Note, row.Line.Worry)
			}
		}
	}
}
