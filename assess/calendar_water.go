package assess

import (
	"math"
	"time"

	"oakum/dossier"
	"oakum/formula/berth"
	"oakum/formula/docking"
	"oakum/formula/network"
	"oakum/formula/tide"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// waterDays is the best high water of each day at a place.
type waterDays struct {
	place tide.Place
	curve tide.Curve
	best  map[quantity.Date]tide.Extreme
	silt  func(t time.Time) float64 // m since the reckoning of what she needs
}

// yardWater finds what water she needs at the dock and at her berth, and what there is.
func (c *inquiry) yardWater(b *Brief, y *yardDate) {
	for _, r := range b.Docking.Docks {
		if r.ID != y.dock.ID {
			continue
		}
		y.needsDock = r.Tide.Value
		switch r.Verdict {
		case "does not fit":
			y.takes = r.Reason
		case "only with ballast moved":
			y.besides = r.Verdict
		case "not known":
			y.lacks("Whether "+r.Name+" takes her is not known: "+r.Reason+".", "Enter what is missing on the Docking page.", "dock", r.ID)
		}
	}
	from := y.opens.AddDays(-10)
	until := y.closes.AddDays(30)
	if y.needsDock != nil {
		if place, ok := c.tideAt(y.dock.Body.Tide); ok {
			y.sill = c.highWaters(place, from, until, docking.Fit.New().ShortestWindow, hoursOf(y.dock.Body))
		}
		if y.sill == nil {
			y.needsDock = nil
			y.lacks("No tide is entered for "+y.dock.Body.Name+".", "Enter the tide at the dock; where there is none, a constituent of no height.", "dock", y.dock.ID)
		}
	}
	c.berthWater(y, from, until)
}

// berthWater is the tide she needs to leave her berth: the water wanted under her, less what there is at the level of the datum.
func (c *inquiry) berthWater(y *yardDate, from, until quantity.Date) {
	e, ok := c.berthNow()
	s, _ := c.state()
	if !ok || s == nil {
		y.lacks("Whether she floats off her berth is not known.", "Enter the berth with its depths, and a round of the marks.", "berth", e.ID)
		return
	}
	place, ok := c.tideNamed(e.Body.Name)
	if !ok {
		y.lacks("No tide is entered for "+e.Body.Name+".", "Enter the tide at her berth; where there is none, a constituent of no height.", "tide", "")
		return
	}
	need, when, ok := c.berthNeeds(e, s, place)
	if !ok {
		y.lacks("Whether she floats off "+e.Body.Name+" can't be told.", "Enter the depths alongside.", "berth", e.ID)
		return
	}
	y.needsBerth = &need
	if y.berth = c.highWaters(place, from, until, 0, hoursOf(plan.Dock{})); y.berth == nil {
		y.needsBerth = nil
		return
	}
	if rate := or0(e.Body.Siltation); rate != 0 && !e.Body.Surveyed.IsZero() {
		y.berth.silt = func(t time.Time) float64 { return rate * t.Sub(when).Hours() / 24 / quantity.DaysPerYear }
	}
}

// berthNeeds looks at one month: the height of tide at which she has the water wanted, on the day it was reckoned for.
func (c *inquiry) berthNeeds(e dossier.Entry[ship.Berth], s *afloatState, place tide.Place) (need float64, when time.Time, ok bool) {
	in := c.underkeelInput(e, s, place)
	in.End = c.day.AddDays(30).Time().UTC().Format(time.RFC3339)
	out, err := berth.Underkeel.Fn(in)
	if err != nil {
		return 0, when, false
	}
	when, err1 := time.Parse(time.RFC3339, out.When)
	curve, err2 := place.Curve("tide.", when.Add(-time.Hour), when.Add(time.Hour))
	if err1 != nil || err2 != nil {
		return 0, when, false
	}
	return out.Required - (out.Lowest - curve.Height(when)), when, true
}

// highWaters is the best high water of each day within some hours: the level that it stands above for so many seconds. Where the high waters of a day
// fall outside those hours it is the best of their beginning and end. A place without tide has the level of noon. It is nil where the tide is not known
// for those days.
func (c *inquiry) highWaters(place tide.Place, from, until quantity.Date, stands float64, hours dockHours) *waterDays {
	start, end := from.First(), until.AddDays(1).First()
	curve, err := place.Curve("tide.", start, end)
	if err != nil {
		return nil
	}
	w := &waterDays{place: place, curve: curve, best: map[quantity.Date]tide.Extreme{}, silt: func(time.Time) float64 { return 0 }}
	half := time.Duration(stands / 2 * float64(time.Second))
	for _, x := range c.highsAndLows(place, curve, start, end) {
		d := quantity.DateOf(x.Time)
		x.Height = min(curve.Height(x.Time.Add(-half)), curve.Height(x.Time.Add(half)))
		first, last := hours.on(x.Time)
		if hours.known && (x.Time.Add(-half).Before(first) || x.Time.Add(half).After(last)) {
			continue
		}
		if was, known := w.best[d]; x.High && (!known || x.Height > was.Height) {
			w.best[d] = x
		}
	}
	if hours.known {
		w.edges(hours, half, from, until)
	}
	if len(w.best) == 0 {
		for d := from; !until.Before(d); d = d.AddDays(1) {
			w.best[d] = tide.Extreme{Time: d.Time(), Height: curve.Height(d.Time()), High: true}
		}
	}
	return w
}

// edges looks at the beginning and the end of the hours of each day too.
func (w *waterDays) edges(hours dockHours, half time.Duration, from, until quantity.Date) {
	for d := from; !until.Before(d); d = d.AddDays(1) {
		first, last := hours.on(d.Time())
		for _, at := range []time.Time{first.Add(half), last.Add(-half)} {
			x := tide.Extreme{Time: at, Height: min(w.curve.Height(at.Add(-half)), w.curve.Height(at.Add(half))), High: true}
			if was, known := w.best[d]; !known || x.Height > was.Height {
				w.best[d] = x
			}
		}
	}
}

// highsAndLows are the high and low waters of a place from start to end; curve is the place's for those times.
func (c *inquiry) highsAndLows(place tide.Place, curve tide.Curve, start, end time.Time) []tide.Extreme {
	list, _ := recall(c.memo, "turns", func() ([]tide.Extreme, error) { return curve.Extremes(start, end), nil }, place, start.Format(time.RFC3339Nano), end.Format(time.RFC3339Nano))
	return list
}

// tides lists the days as the formula takes them.
func (w *waterDays) tides(place string, from, until quantity.Date) (list []network.TideDay) {
	if w == nil {
		return nil
	}
	for d := from; !until.Before(d); d = d.AddDays(1) {
		if x, known := w.best[d]; known {
			list = append(list, network.TideDay{Place: place, Date: d, Height: x.Height - w.silt(x.Time)})
		}
	}
	return list
}

// times says from when to when on a day there is water enough, Universal Time, about the best high water.
func (w *waterDays) times(d quantity.Date, need *float64) string {
	if w == nil || need == nil {
		return ""
	}
	x, known := w.best[d]
	if !known || x.Height < *need {
		return ""
	}
	at := x.Time
	open := tide.Above(w.curve, *need, math.Inf(1), at.Add(-6*time.Hour), at.Add(6*time.Hour))
	for _, o := range open {
		if o.Start.After(at) || o.End.Before(at) {
			continue
		}
		if o.End.Sub(o.Start) > 11*time.Hour {
			return "at every state of the tide"
		}
		return o.Start.Format("15:04") + " to " + o.End.Format("15:04")
	}
	return ""
}

// enough tells for each day whether there is water enough.
func (w *waterDays) enough(need float64) func(d quantity.Date) bool {
	return func(d quantity.Date) bool {
		x, known := w.best[d]
		return known && x.Height-w.silt(x.Time) >= need
	}
}
