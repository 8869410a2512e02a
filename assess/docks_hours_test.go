package assess

import (
	"math"
	"testing"
	"time"

	"oakum/formula/tide"
	"oakum/plan"
	"oakum/quantity"
)

// Identity: for a tide of one constituent of 12 hours with high water at 0 and 12, hours about noon keep the full height, and hours from 2 to 4 hold at most that of
// 2 o'clock and a quarter of an hour: cos(2 pi 2.25/12) of the amplitude.
func TestTidesAreCountedInTheHoursOfTheYard(t *testing.T) {
	b := plan.Dock{}
	if h := hoursOf(b); h.known || h.to != 24*time.Hour {
		t.Errorf("nobody has said: %+v", h)
	}
	place := tide.Place{MeanLevel: new(2.0), Constituents: []tide.Constituent{{Name: "S2", Amplitude: 1, Phase: 0}}}
	day, err := quantity.ParseDate("2031-04-10")
	if err != nil {
		t.Fatal(err)
	}
	c := &inquiry{}
	best := func(from, to float64) tide.Extreme {
		b.DocksFrom, b.DocksTo = new(from*3600), new(to*3600)
		return c.highWaters(place, day, day, 1800, hoursOf(b)).best[day]
	}
	high := best(9, 15)
	if math.Abs(high.Height-(2+math.Cos(2*math.Pi*0.25/12))) > 5e-3 || high.Time.UTC().Hour() < 11 || high.Time.UTC().Hour() > 12 {
		t.Errorf("about noon: %.3f m at %s", high.Height, high.Time)
	}
	if x := best(2, 4); math.Abs(x.Height-(2+math.Cos(2*math.Pi*2.5/12))) > 5e-3 || x.Time.UTC().Hour() != 2 {
		t.Errorf("from 2 to 4: %.3f m at %s", x.Height, x.Time)
	}
	start := time.Date(2031, 4, 10, 22, 0, 0, 0, time.UTC)
	parts := hoursOf(plan.Dock{DocksFrom: new(7 * 3600.0), DocksTo: new(19 * 3600.0)}).clip(start, start.Add(40*time.Hour), 30*time.Minute)
	if len(parts) != 2 || parts[0][0].Hour() != 7 || parts[0][1].Hour() != 19 || parts[1][0].Hour() != 7 || parts[1][1].Hour() != 14 {
		t.Errorf("%v", parts)
	}
	if got := hoursOf(plan.Dock{DocksFrom: new(7 * 3600.0), DocksTo: new(19.5 * 3600.0)}).words(); got != "tides counted from 7:00 to 19:30, when the yard docks, Universal Time" {
		t.Error(got)
	}
}
