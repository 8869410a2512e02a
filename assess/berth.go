package assess

import (
	"fmt"
	"math"
	"strings"
	"time"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/berth"
	"oakum/formula/docking"
	"oakum/formula/tide"
	"oakum/ship"
	"oakum/survey"
)

// BerthPart is the water under her where she lies.
type BerthPart struct {
	Name    string       `json:"name"`
	Verdict string       `json:"verdict"`
	Reason  string       `json:"reason"`
	Change  string       `json:"change"`
	Short   string       `json:"short"`
	Lowest  Figure       `json:"lowest"`
	Place   string       `json:"place"`
	When    string       `json:"when"`
	Hours   Figure       `json:"hours"`
	Wanted  Figure       `json:"wanted"`
	Days    []UnderDay   `json:"days"`
	Places  []UnderPlace `json:"places"`
	Leave   []LeaveRow   `json:"leave"`
	Leaves  int          `json:"leaves"` // how many times in the year, of which leave lists the first
	Aground AgroundPart  `json:"aground"`
}

// UnderDay is the least water under her on one day, m.
type UnderDay struct {
	Day   string  `json:"day"`
	Water float64 `json:"water"`
}

// UnderPlace is the least water of the year under one place along her.
type UnderPlace struct {
	Name  string  `json:"name"`
	X     float64 `json:"x"`
	Water Figure  `json:"water"`
}

// LeaveRow is a time at which she could leave.
type LeaveRow struct {
	Start string `json:"start"`
	End   string `json:"end"`
}

// AgroundPart is how she sits at the lowest water of the year.
type AgroundPart struct {
	Verdict  string `json:"verdict"`
	Reason   string `json:"reason"`
	Change   string `json:"change"`
	Upthrust Figure `json:"upthrust"`
	GM       Figure `json:"gm"`
	Refloat  Figure `json:"refloat"`
	Left     Figure `json:"left"`
}

// leaveRows is how many times to leave are listed.
const leaveRows = 40

func (c *inquiry) berthPart(s *afloatState) BerthPart {
	p := BerthPart{Days: []UnderDay{}, Places: []UnderPlace{}, Leave: []LeaveRow{}, Verdict: "not known"}
	p.Lowest, p.Hours, p.Wanted = unknown("lowest", "least water under her in the coming year", ""), unknown("hours", "hours a year she touches", ""), unknown("wanted", "water wanted under her", "")
	p.Aground.blank("she does not touch, or it is not known")
	e, ok := c.berthNow()
	if !ok || s == nil {
		p.Reason = "her berth is not entered, or her drafts are not known"
		return p
	}
	p.Name = e.Body.Name
	place, ok := c.tideNamed(e.Body.Name)
	if !ok {
		p.Reason = "no tide is entered for " + e.Body.Name
		return p
	}
	in := c.underkeelInput(e, s, place)
	sheet, out, err := work(c.book, berth.Underkeel, e.ID, e.Body.Name+", the coming year", in, map[string]field.Given{"tide": how(field.Documented, "tide record"), "depths": how(field.Measured, "soundings alongside, the shoaler side"), "charted_depth": how(field.Documented, "berth record"),
		"draft_fwd": how(field.Measured, "marks"), "draft_aft": how(field.Measured, "marks"), "siltation": how(field.Documented, "berth record"), "surveyed": how(field.Documented, "berth record"), "lbp": how(field.Documented, "particulars"), "required": how(field.Assumed, "particulars, or a tenth of the draft")})
	if err != nil {
		p.Reason = err.Error()
		return p
	}
	p.Verdict, p.Reason, p.Change, p.Place, p.When = out.Verdict, out.Reason, out.Change, out.Place, out.When
	p.Lowest = result(sheet, "lowest", "least water under her in the coming year")
	p.Hours = result(sheet, "touches", "hours a year she touches")
	p.Wanted = result(sheet, "required_used", "water wanted under her")
	for _, u := range out.Places {
		f := known("water", "least water of the year", u.Water, "m", field.Computed, u.Time)
		f.Sheet = sheet.ID
		if u.Water < 0 {
			f.Worry = 1
		}
		p.Places = append(p.Places, UnderPlace{u.Name, round(u.X), f})
	}
	p.Leaves = len(out.Dates)
	for _, d := range out.Dates[:min(len(out.Dates), leaveRows)] {
		p.Leave = append(p.Leave, LeaveRow{d.Start, d.End})
	}
	c.leastWaters(&p, place, in, out)
	if out.Lowest < 0 {
		p.Lowest.Worry, p.Hours.Worry = 1, 1
		c.aground(&p, e, s, out)
		p.Short = fmt.Sprintf("At %s the %s takes the ground for about %.0f hours a year, %.2f m at the lowest (%s). %s", p.Name, out.Place, out.Touches/3600, -out.Lowest, out.When[:10], sentence(p.Aground.Reason))
	}
	return p
}

func (a *AgroundPart) blank(why string) {
	a.Upthrust, a.GM = unknown("upthrust", "carried by the bottom", why), unknown("gm", "GM left as she sits", why)
	a.Refloat, a.Left = unknown("refloat", "rise of water that floats her off", why), unknown("left", "further fall until she turns unstable", why)
}

func (c *inquiry) berthNow() (dossier.Entry[ship.Berth], bool) {
	var first dossier.Entry[ship.Berth]
	for _, e := range dossier.All[ship.Berth](c.d) {
		if strings.EqualFold(e.Body.Name, c.particulars.Home) {
			return e, true
		}
		if first.ID == "" {
			first = e
		}
	}
	return first, first.ID != ""
}

// tideNamed finds the tide of a place by its name.
func (c *inquiry) tideNamed(name string) (tide.Place, bool) {
	for _, e := range dossier.All[ship.Tide](c.d) {
		if strings.EqualFold(e.Body.Name, name) {
			return c.tideAt(e.ID)
		}
	}
	return tide.Place{}, false
}

func (c *inquiry) underkeelInput(e dossier.Entry[ship.Berth], s *afloatState, place tide.Place) berth.UnderkeelIn {
	in := berth.Underkeel.New()
	b := e.Body
	in.Depth, in.Tide, in.DraftFwd, in.DraftAft, in.LBP = b.ChartedDepth, &place, s.fwd, s.aft, c.particulars.LBP
	in.Start, in.End = c.comingYear()
	in.Beam, in.List = orElse(c.particulars.Beam, 0), orElse(s.round.Body.List, 0)
	if in.Surveyed = b.Surveyed; !in.Surveyed.IsZero() && b.Siltation != nil {
		in.Siltation = *b.Siltation
	}
	in.Required = c.particulars.UnderKeel
	for _, q := range dossier.All[ship.Propeller](c.d) {
		if q.Body.BossBelow != nil && !strings.HasPrefix(q.Body.State, "off") {
			in.PropellerBelow = *q.Body.BossBelow
		}
	}
	for _, q := range dossier.All[ship.Rudder](c.d) {
		if q.Body.Below != nil {
			in.RudderBelow = *q.Body.Below
		}
	}
	for _, d := range dossier.All[survey.Depth](c.d) {
		if d.Body.X == nil || d.Body.Depth == nil || d.Body.Berth != "" && d.Body.Berth != e.ID {
			continue
		}
		in.Depths = shoaler(in.Depths, berth.Sounding{Name: fmt.Sprintf("keel at %.0f m", *d.Body.X), X: *d.Body.X, Depth: *d.Body.Depth})
	}
	return in
}

// shoaler keeps the lesser of two soundings at one place along her.
func shoaler(list []berth.Sounding, d berth.Sounding) []berth.Sounding {
	for i := range list {
		if math.Abs(list[i].X-d.X) < 0.01 {
			list[i].Depth = min(list[i].Depth, d.Depth)
			return list
		}
	}
	return append(list, d)
}

// leastWaters lists the least water of each day of the year.
func (c *inquiry) leastWaters(p *BerthPart, place tide.Place, in berth.UnderkeelIn, out berth.UnderkeelOut) {
	start, err1 := time.Parse(time.RFC3339, in.Start)
	end, err2 := time.Parse(time.RFC3339, in.End)
	when, err3 := time.Parse(time.RFC3339, out.When)
	curve, err4 := place.Curve("tide.", start, end)
	if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
		return
	}
	over := out.Lowest - curve.Height(when) // of the tide's height to the water under her, at that time
	for _, x := range c.highsAndLows(place, curve, start, end) {
		if x.High {
			continue
		}
		silt := in.Siltation * x.Time.Sub(when).Hours() / 24 / 365.25
		d := UnderDay{x.Time.Format(time.DateOnly), round(x.Height + over - silt)}
		if n := len(p.Days); n > 0 && p.Days[n-1].Day == d.Day {
			p.Days[n-1].Water = min(p.Days[n-1].Water, d.Water)
			continue
		}
		p.Days = append(p.Days, d)
	}
}

// aground works how she sits at the lowest water of the year, on a hard bottom: mud carries less.
func (c *inquiry) aground(p *BerthPart, e dossier.Entry[ship.Berth], s *afloatState, out berth.UnderkeelOut) {
	in := docking.Aground.New()
	w := s.hydro
	in.Displacement, in.LBP, in.LCF, in.DraftFwd, in.DraftAft = &w.Displacement, c.particulars.LBP, &w.LCF, &s.fwd, &s.aft
	in.KG, in.KM, in.TPC, in.MCT = s.kg, &w.KMt, &w.TPC, &w.MCT
	in.FreeSurface, in.GMRequired = orElse(c.particulars.FreeSurface, in.FreeSurface), orElse(c.particulars.GMRequired, in.GMRequired)
	in.Contact, in.Fall = new(out.X), new(-out.Lowest)
	hydro := how(field.Computed, "hydrostatics at the drafts read")
	sheet, a, err := work(c.book, docking.Aground, e.ID, e.Body.Name+" at the lowest water", in, map[string]field.Given{"displacement": hydro, "lcf": hydro, "km": hydro, "tpc": hydro, "mct": hydro, "lbp": how(field.Documented, "particulars"),
		"kg": how(field.Documented, c.particulars.KGNote), "contact": how(field.Computed, "where the water is least"), "fall": how(field.Computed, "least water of the year, below zero"), "draft_fwd": how(field.Measured, "marks"), "draft_aft": how(field.Measured, "marks")})
	if err != nil {
		p.Aground.Reason = err.Error()
		return
	}
	p.Aground.Verdict, p.Aground.Reason, p.Aground.Change = string(a.Verdict), a.Reason, a.Change
	p.Aground.Upthrust = result(sheet, "upthrust", "carried by the bottom")
	p.Aground.Refloat = result(sheet, "refloat_rise", "rise of water that floats her off")
	if a.GM != nil {
		p.Aground.GM = result(sheet, "gm", "GM left as she sits")
		p.Aground.GM.Worry = map[docking.Verdict]int{docking.Unsafe: 3, docking.Marginal: 2}[a.Verdict]
	}
	if a.FallLeft != nil {
		p.Aground.Left = result(sheet, "fall_left", "further fall until she turns unstable")
	}
}
