package assess

import (
	"math"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/flooding"
	"oakum/ship"
)

// spaceNamed finds a compartment by name.
func (c *inquiry) spaceNamed(name string) (dossier.Entry[ship.Compartment], bool) {
	for _, e := range dossier.All[ship.Compartment](c.d) {
		if name != "" && (strings.EqualFold(e.Body.Name, name) || e.ID == name) {
			return e, true
		}
	}
	return dossier.Entry[ship.Compartment]{}, false
}

// fillTimes are the times from the last barrier of an opening going until the alarm, and until the critical level of the space it floods.
func (c *inquiry) fillTimes(e dossier.Entry[ship.Opening], head, flow float64) (alarm, critical Figure) {
	if head <= 0 {
		return aboveWater("alarm", "time to the alarm").of("opening", e.ID), aboveWater("critical", "time to the critical level").of("opening", e.ID)
	}
	alarm = unknown("alarm", "time to the alarm", "").of("opening", e.ID)
	critical = unknown("critical", "time to the critical level", "").of("opening", e.ID)
	space, ok := c.spaceNamed(e.Body.Space)
	if !ok || flow <= 0 || math.IsNaN(head) {
		why := "the space it floods is not entered"
		if ok {
			why = "the flow is not known"
		}
		alarm.Note, critical.Note = why, why
		return alarm, critical
	}
	b := space.Body
	if b.X0 == nil || b.X1 == nil || b.Z0 == nil {
		alarm.Note, critical.Note = "the size of "+b.Name+" is not entered", "the size of "+b.Name+" is not entered"
		return alarm, critical
	}
	in := flooding.Time.New()
	in.Area = c.floorOf(b)
	if b.Permeability != nil {
		in.Permeability = *b.Permeability
	}
	in.HoleArea, in.HoleDiameter = e.Body.Area, e.Body.Diameter
	if in.HoleArea != nil {
		in.HoleDiameter = nil
	}
	draft, _ := c.draftNow()
	in.HoleHeight = max(draft-head-*b.Z0, 0)
	in.OutsideHead = head
	to := func(z *float64) (Figure, bool) {
		if z == nil {
			return Figure{}, false
		}
		in.ToHeight = new(*z - *b.Z0)
		sheet, _, err := work(c.book, flooding.Time, "opening-"+e.ID+"-to-"+heightKey(*z), b.Name+" filling through "+e.Body.Name, in, map[string]field.Given{"area": how(field.Computed, "the space as a box"), "permeability": how(field.Assumed, "as entered, or default")})
		if err != nil {
			return Figure{}, false
		}
		return result(sheet, "time_to_height", ""), true
	}
	if f, ok := to(c.alarmHeight(b)); ok {
		f.Key, f.Label = "alarm", "time to the alarm"
		alarm = f.of("opening", e.ID)
	} else {
		alarm.Note = "no alarm watches " + b.Name
	}
	if f, ok := to(b.CriticalLevel); ok {
		f.Key, f.Label = "critical", "time to the critical level"
		critical = f.of("opening", e.ID)
	} else {
		critical.Note = "no critical level is entered for " + b.Name
	}
	return alarm, critical
}

// floorOf is the plan area of a space as a box, m2; its breadth is the ship's where its sides are the shell.
func (c *inquiry) floorOf(b ship.Compartment) float64 {
	if b.FloorArea != nil {
		return *b.FloorArea
	}
	breadth := 0.0
	switch {
	case b.Y0 != nil && b.Y1 != nil:
		breadth = *b.Y1 - *b.Y0
	case c.particulars.Beam != nil:
		breadth = *c.particulars.Beam * 0.8 // common practice: a space bounded by the shell is narrower than the beam
	}
	return max((*b.X1-*b.X0)*breadth, 0.1)
}

func (c *inquiry) alarmHeight(b ship.Compartment) *float64 {
	if b.AlarmHeight != nil {
		return b.AlarmHeight
	}
	for _, a := range dossier.All[ship.Alarm](c.d) {
		if strings.EqualFold(a.Body.Space, b.Name) && a.Body.Watches == "bilge water" && a.Body.Height != nil && a.Body.State != "faulty" && a.Body.State != "switched off" {
			return a.Body.Height
		}
	}
	return nil
}

// heightKey names a height in a sheet's ID, in millimetres.
func heightKey(z float64) string { return strconv.Itoa(int(z*1000+0.5)) + "mm" }
