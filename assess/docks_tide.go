package assess

import (
	"fmt"
	"math"
	"time"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/formula/tide"
	"oakum/plan"
	"oakum/ship"
)

// WindowRow is a time with enough water.
type WindowRow struct {
	Start   string  `json:"start"`
	End     string  `json:"end"`
	Highest float64 `json:"highest"` // m above datum
	Over    float64 `json:"over"`    // m above what is needed
	Yard    bool    `json:"yard"`    // the dock is free then, by its own windows
}

// lookAhead is how far ahead windows of water are sought, days.
const lookAhead = 365

// comingYear is the span over which water is sought.
func (c *inquiry) comingYear() (start, end string) {
	return c.day.Time().UTC().Format(time.RFC3339), c.day.AddDays(lookAhead).Time().UTC().Format(time.RFC3339)
}

// tideAt makes the tide of a place from its record.
func (c *inquiry) tideAt(id string) (tide.Place, bool) {
	e, ok := dossier.Find[ship.Tide](c.d, id)
	if !ok {
		return tide.Place{}, false
	}
	b := e.Body
	p := tide.Place{MeanLevel: b.MeanLevel}
	for i, name := range b.Names {
		if i < len(b.Amplitudes) && i < len(b.Phases) {
			p.Constituents = append(p.Constituents, tide.Constituent{Name: name, Amplitude: b.Amplitudes[i], Phase: b.Phases[i]})
		}
	}
	return p, len(p.Constituents) > 0 && p.MeanLevel != nil
}

// amplitude of a constituent, m; zero where it is not among them.
func amplitude(p tide.Place, name string) float64 {
	for _, k := range p.Constituents {
		if k.Name == name {
			return k.Amplitude
		}
	}
	return 0
}

// waters fills the windows of the coming year and what is left over at springs and neaps. Mean high water springs and neaps are the mean level with
// M2 and S2 together and against each other: the usual reckoning from the constants.
func (c *inquiry) waters(row *DockRow, e dossier.Entry[plan.Dock], in docking.FitIn, out docking.FitOut, sheet string) {
	if in.Tide == nil || out.TideNeeded == nil {
		return
	}
	hours := hoursOf(e.Body)
	row.Hours = hours.words()
	for _, w := range out.Windows {
		c.inHours(row, e.ID, hours, in, w, *out.TideNeeded)
	}
	level, m2, s2 := *in.Tide.MeanLevel, amplitude(*in.Tide, "M2"), amplitude(*in.Tide, "S2")
	over := func(key, label string, height float64) Figure {
		f := known(key, label, height-*out.TideNeeded, "m", field.Computed, fmt.Sprintf("high water of %.2f m less the tide needed", height))
		f.Sheet = sheet
		return f.of("dock", e.ID)
	}
	row.Spring = over("spring", "to spare at mean high water springs", level+m2+s2)
	row.Neap = over("neap", "to spare at mean high water neaps", level+math.Abs(m2-s2))
	spring, neap := level+m2+s2-*out.TideNeeded, level+math.Abs(m2-s2)-*out.TideNeeded
	if neap < 0 {
		row.Neap.Note, row.Neap.Worry = "not enough at neaps", 1
	}
	switch {
	case out.Verdict != "fits at high water":
	case spring >= 0 && neap < 0:
		row.Verdict = "fits on springs only"
		row.Reason = fmt.Sprintf("she fits on springs only, with about %.1f m to spare over the clearances wanted at mean high water springs; at neaps the water is %.1f m too low. %d tides of the coming year are high enough (%s)", spring, -neap, len(row.Windows), row.Hours)
	case spring < 0:
		row.Verdict = "fits on the highest springs only"
		row.Reason = fmt.Sprintf("she fits on the highest springs only: mean high water springs stands %.2f m too low. %d tides of the coming year are high enough (%s)", -spring, len(row.Windows), row.Hours)
	default:
		row.Reason = fmt.Sprintf("she fits on most tides: %.2f m to spare at mean high water neaps", neap)
		if level-m2-s2 >= *out.TideNeeded {
			row.Reason = "water enough at every state of the tide"
		}
	}
}

// inHours adds what of a time with water enough lies within the hours in which the yard docks. The highest water of a time that is cut is looked for anew.
func (c *inquiry) inHours(row *DockRow, id string, hours dockHours, in docking.FitIn, w docking.FitWindow, need float64) {
	from, err1 := time.Parse(time.RFC3339, w.Start)
	to, err2 := time.Parse(time.RFC3339, w.End)
	if err1 != nil || err2 != nil {
		return
	}
	for _, p := range hours.clip(from, to, time.Duration(in.ShortestWindow*float64(time.Second))) {
		start, end, top := p[0].Format(time.RFC3339), p[1].Format(time.RFC3339), w.Highest
		if hours.known && (start != w.Start || end != w.End) {
			curve, err := in.Tide.Curve("tide.", p[0].Add(-time.Hour), p[1].Add(time.Hour))
			if err != nil {
				continue
			}
			top = math.Max(curve.Height(p[0]), curve.Height(p[1]))
			for _, x := range curve.Extremes(p[0], p[1]) {
				top = math.Max(top, x.Height)
			}
		}
		row.Windows = append(row.Windows, WindowRow{start, end, round(top), round(top - need), c.yardFree(id, start, end)})
	}
}

// yardFree tells whether a dock is offered at some time between start and end, by its windows.
func (c *inquiry) yardFree(dock, start, end string) bool {
	from, err1 := time.Parse(time.RFC3339, start)
	to, err2 := time.Parse(time.RFC3339, end)
	if err1 != nil || err2 != nil {
		return false
	}
	for _, w := range dossier.All[plan.DockWindow](c.d) {
		b := w.Body
		if b.Dock == dock && b.State != "lost" && b.State != "past" && !b.Opens.IsZero() && to.After(b.Opens.First()) && (b.Closes.IsZero() || from.Before(b.Closes.AddDays(1).First())) {
			return true
		}
	}
	return false
}

// highest is the highest water of the windows, m above datum.
func (row *DockRow) highest() (float64, bool) {
	top := math.Inf(-1)
	for _, w := range row.Windows {
		top = max(top, w.Highest)
	}
	return top, len(row.Windows) > 0
}
