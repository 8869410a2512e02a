package network

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/source"
)

// DaysIn is the docking: when she went in, when she is to come out, and what day it is.
type DaysIn struct {
	Docked     Moment    `key:"docked" label:"she took the blocks"`
	Undock     Moment    `key:"undock" label:"she is to be floated"`
	Flood      Moment    `key:"flood" optional:"yes" label:"flooding begins" help:"left out: when she is to be floated"`
	Now        Moment    `key:"now" label:"what day it is"`
	Share      float64   `key:"inspection_share" symbol:"sh" default:"0.2" over:"0" max:"1" label:"share of the docking by which inspections must be reported"`
	Readings   []float64 `key:"final_readings" unit:"h" optional:"yes" over:"0" max:"2000" most:"20" label:"hours before flooding within which final readings are taken" help:"72 and 24 where left out"`
	DayRate    float64   `key:"day_rate" unit:"money" symbol:"rd" default:"0" min:"0" label:"cost of a day, dock and services"`
	LostIncome float64   `key:"lost_income" unit:"money" symbol:"ri" default:"0" min:"0" label:"income lost each day"`
	FreeDays   float64   `key:"extra_days" unit:"d" symbol:"xd" default:"0" min:"0" max:"2000" label:"days the yard would add" help:"as the dock window says"`
	Decisions  []Pending `key:"decisions" optional:"yes" most:"1000" label:"decisions that wait"`
}

// Pending is a decision that must be taken within hours of a finding.
type Pending struct {
	Name  string  `key:"name" label:"decision"`
	Found Moment  `key:"found" label:"found"`
	Hours float64 `key:"within" unit:"h" min:"0" max:"5000" label:"to be decided within"`
	Who   string  `key:"who" optional:"yes" label:"who decides"`
	Done  Moment  `key:"decided" optional:"yes" label:"decided"`
}

// DaysOut is where the docking stands.
type DaysOut struct {
	Day     int     `key:"day" symbol:"n" label:"day in dock" help:"the day she took the blocks is day 1"`
	Planned int     `key:"days_planned" symbol:"np" label:"days planned, first and last counted"`
	Left    int     `key:"days_left" symbol:"nl" label:"days left after today"`
	Over    int     `key:"days_over" symbol:"no" label:"days over the plan"`
	Gone    float64 `key:"share_gone" symbol:"sg" label:"share of the docking that is gone"`

	Inspection Moment     `key:"inspection_due" label:"inspections to be reported by"`
	Deadlines  []Deadline `key:"deadlines" label:"deadlines, the next first"`

	PerDay float64 `key:"cost_per_day" unit:"money" symbol:"cd" label:"cost of a day" expr:"rd+ri"`
	Spent  float64 `key:"spent" unit:"money" symbol:"cs" label:"cost of the days up to today" expr:"max(n, 0)*cd"`
	ToCome float64 `key:"to_come" unit:"money" symbol:"ct" label:"cost of the days that are left" expr:"max(nl, 0)*cd"`

	Warnings calc.Warnings `key:"-"`
}

// Deadline is something that is due.
type Deadline struct {
	What    string  `key:"what" label:"what"`
	Opens   Moment  `key:"not_before" optional:"yes" label:"not before"`
	Due     Moment  `key:"due" label:"due"`
	Left    float64 `key:"left" unit:"h" label:"hours left"`
	Overdue bool    `key:"overdue" label:"overdue"`
	Done    bool    `key:"done" label:"done"`
	Who     string  `key:"who" optional:"yes" label:"who"`
}

// Days counts the days in dock.
//
// The day she takes the blocks is day 1. Inspections are reported within the first fifth of the docking, so that what they find can still be done;
// final readings are taken within so many hours before flooding, so that they are of the hull that floats. A decision is due so many hours after its
// finding. Source: NAVSEA Standard Item 009-01 for the fifth and for 24 and 72 hours. The yard's contract may set others: put them in.
var Days = calc.Formula[DaysIn, DaysOut]{
	ID:       "calendar.days",
	Title:    "What day it is in dock",
	About:    "Which day of the docking it is, what is due and when, what a day costs, and how many are left.",
	Holds:    "Calendar days in the zone that the moments are written in. A day begun is a day paid.",
	Accuracy: "Exact. The fifth and the 24 and 72 hours are of one navy's standard; the contract governs.",
	Sources:  []source.Ref{{Key: "navsea-009-01", At: "inspection reports within the first 20 %; final readings 24 h and 72 h before flooding"}, {Key: "practice", At: "a day begun is a day paid"}},
	Cautions: []calc.Caution{calc.Docking},
	Fn:       inDock,
	Steps:    inDockSteps,
}

func inDock(in DaysIn) (out DaysOut, err error) {
	if in.Flood.IsZero() {
		in.Flood = in.Undock
	}
	for _, m := range []struct {
		key string
		at  Moment
	}{{"docked", in.Docked}, {"undock", in.Undock}, {"now", in.Now}} {
		if m.at.IsZero() {
			return out, field.Refuse(m.key, "%s is missing: write 2031-05-12 or 2031-05-12T07:30:00+01:00", m.key)
		}
	}
	whole := in.Docked.until(in.Undock)
	switch {
	case whole < 0:
		return out, field.Refuse("undock", "undock (%s) must not lie before docked (%s)", in.Undock, in.Docked)
	case in.Docked.until(in.Flood) < 0:
		return out, field.Refuse("flood", "flood (%s) must not lie before docked (%s)", in.Flood, in.Docked)
	}
	out.Day = in.Docked.days(in.Now) + 1
	out.Planned = in.Docked.days(in.Undock) + 1
	out.Left = in.Now.days(in.Undock)
	out.Over = max(-out.Left, 0)
	out.PerDay = in.DayRate + in.LostIncome
	out.Spent, out.ToCome = float64(max(out.Day, 0))*out.PerDay, float64(max(out.Left, 0))*out.PerDay
	if whole > 0 {
		out.Gone = min(max(in.Docked.until(in.Now)/whole, 0), 1)
	}
	out.Inspection = in.Docked.add(in.Share * whole)
	if err := out.deadlines(in); err != nil {
		return out, err
	}
	out.warn(in)
	return out, nil
}

func (out *DaysOut) deadlines(in DaysIn) error {
	out.Deadlines = []Deadline{{What: "inspections reported", Due: out.Inspection}}
	readings := in.Readings
	if readings == nil {
		readings = []float64{72 * 3600, 24 * 3600}
	}
	for _, r := range readings {
		out.Deadlines = append(out.Deadlines, Deadline{What: fmt.Sprintf("final readings of the last %g hours", r/3600), Opens: in.Flood.add(-r / day), Due: in.Flood})
	}
	for i, d := range in.Decisions {
		if d.Found.IsZero() {
			return field.Refuse(fmt.Sprintf("decisions[%d].found", i), "decision %q: it is not said when it was found", d.Name)
		}
		out.Deadlines = append(out.Deadlines, Deadline{What: "decide: " + d.Name, Due: d.Found.add(d.Hours / day), Done: !d.Done.IsZero(), Who: d.Who})
	}
	for i := range out.Deadlines {
		d := &out.Deadlines[i]
		d.Left = in.Now.until(d.Due) * day
		d.Overdue = d.Left < 0 && !d.Done
	}
	slices.SortStableFunc(out.Deadlines, func(a, b Deadline) int { return cmp.Compare(a.Left, b.Left) })
	return nil
}

func (out *DaysOut) warn(in DaysIn) {
	say := func(format string, a ...any) { out.Warnings = append(out.Warnings, fmt.Sprintf(format, a...)) }
	if out.Day < 1 {
		say("she has not taken the blocks yet: %d days to go", 1-out.Day)
	}
	if out.Over > 0 {
		say("%d days over the plan; the yard would add %g, and a day costs %.0f", out.Over, in.FreeDays/day, out.PerDay)
		if float64(out.Over) > in.FreeDays/day {
			say("that is more than the yard would add")
		}
	}
	for _, d := range out.Deadlines {
		if d.Overdue {
			say("overdue by %.0f hours: %s", -d.Left/3600, d.What)
		}
	}
}

func inDockSteps(in DaysIn, out DaysOut) []calc.Step {
	return []calc.Step{
		{Symbol: "n", Value: float64(out.Day), Unit: "-", Text: fmt.Sprintf("days from %s to %s, and one", in.Docked, in.Now)},
		{Symbol: "nl", Value: float64(out.Left), Unit: "-", Text: fmt.Sprintf("days from %s to %s", in.Now, in.Undock)},
		{Symbol: "due", Value: in.Now.until(out.Inspection), Unit: "d", Text: fmt.Sprintf("days until the inspections must be reported: %g of the docking after %s", in.Share, in.Docked)},
	}
}
