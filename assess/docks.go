package assess

import (
	"fmt"
	"time"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/formula/tide"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// lookAhead is how far ahead windows of water are sought when no yard window is entered, days.
const lookAhead = 30

// docks works the fit of every dock.
func (c *inquiry) docks(p *DockingPage, s *afloatState) {
	for _, e := range dossier.All[plan.Dock](c.d) {
		p.Docks = append(p.Docks, c.dockRow(e, s))
	}
}

func (c *inquiry) dockRow(e dossier.Entry[plan.Dock], s *afloatState) DockRow {
	b := e.Body
	row := DockRow{ID: e.ID, Name: b.Name, Clearances: []ClearanceRow{}, Windows: []WindowRow{}}
	row.Tide = unknown("tide", "least height of tide", "").of("dock", e.ID)
	row.Line = unknown("line", "mean load on the block line", "").of("dock", e.ID)
	in, given, why := c.fitInput(b, s)
	if why != "" {
		row.Verdict, row.Reason = "not known", why
		return row
	}
	sheet, out, err := work(c.book, docking.Fit, "dock-"+e.ID, b.Name, in, given)
	if err != nil {
		row.Verdict, row.Reason = "not known", err.Error()
		return row
	}
	row.Verdict, row.Reason, row.Change = out.Verdict, out.Reason, out.Change
	if out.TideNeeded != nil {
		row.Tide = result(sheet, "tide_needed", "least height of tide").of("dock", e.ID)
	}
	if out.LineLoad != nil {
		row.Line = result(sheet, "line_load", "mean load on the block line").of("dock", e.ID)
		if out.LineUsed != nil {
			row.Line.Note = quantity.Format(*out.LineUsed, "%", 0) + " of its limit"
			if *out.LineUsed > 1 {
				row.Line.Worry = 3
			} else if *out.LineUsed > 0.9 {
				row.Line.Worry = 1
			}
		}
	}
	row.clear(out, sheet.ID)
	return row
}

func (row *DockRow) clear(out docking.FitOut, sheet string) {
	for _, cl := range out.Clearances {
		r := ClearanceRow{Name: cl.Name, State: cl.State, Want: known("want", "wanted", cl.Limit, "m", field.Assumed, "clearance wanted")}
		r.There = unknown("there", "there is", "not known")
		if cl.Value != nil {
			r.There = known("there", "there is", *cl.Value, "m", field.Computed, "")
		}
		r.There.Sheet = sheet
		if cl.State == "too little" {
			r.There.Worry = 2
		}
		row.Clearances = append(row.Clearances, r)
	}
	for i, w := range out.Windows {
		if i == 40 {
			break
		}
		row.Windows = append(row.Windows, WindowRow{w.Start, w.End, round(w.Highest)})
	}
}

// fitInput gathers a fit from the records; why says what is missing.
func (c *inquiry) fitInput(b plan.Dock, s *afloatState) (in docking.FitIn, given map[string]field.Given, why string) {
	pr := c.particulars
	length, beam := pr.LengthOverall, pr.BeamExtreme
	if length == nil {
		length = pr.LBP
	}
	if beam == nil {
		beam = pr.Beam
	}
	switch {
	case length == nil || beam == nil:
		return in, nil, "her length or beam is not entered"
	case s == nil:
		return in, nil, "her drafts are not known"
	}
	in = docking.Fit.New()
	field.Defaults(&in.Ship)
	in.Ship.Length, in.Ship.Beam, in.Ship.DraftFwd, in.Ship.DraftAft = *length, *beam, s.fwd, s.aft
	if s.round.Body.List != nil {
		in.Ship.List = *s.round.Body.List
	}
	if pr.BelowBaseline != nil {
		in.Ship.Appendage = *pr.BelowBaseline
	}
	if pr.AirDraft != nil {
		in.Ship.AirDraft = new(*pr.AirDraft - min(s.fwd, s.aft))
	}
	in.Ship.Mass = new(s.hydro.Displacement)
	if pr.KeelFwd != nil && pr.KeelAft != nil && *pr.KeelFwd > *pr.KeelAft {
		in.Ship.KeelLength = new(*pr.KeelFwd - *pr.KeelAft)
	}
	in.Dock = docking.FitDock{Length: b.Length, Entrance: b.EntranceWidth, Width: b.FloorWidth, Sill: b.SillDepth, Floor: b.FloorDepth, Blocks: b.BlockHeight, Lift: b.LiftCapacity, LineLimit: b.LineLimit, AirLimit: b.AirDraft}
	for _, v := range []struct {
		from *float64
		to   *float64
	}{{b.ClearOver, &in.OverBlocks}, {b.ClearSide, &in.EachSide}, {b.ClearHead, &in.HeadEnd}, {b.ClearOut, &in.OutboardEnd}} {
		if v.from != nil {
			*v.to = *v.from
		}
	}
	given = map[string]field.Given{"ship": how(field.Measured, "newest round of the marks, particulars"), "dock": how(field.Documented, "dock record")}
	if place, ok := c.tideAt(b.Tide); ok {
		in.Tide = &place
		in.Start, in.End = c.whenTo(b)
		given["tide"] = how(field.Documented, "tide record")
	}
	return in, given, ""
}

// whenTo is the span over which water is sought: the dock's next window, or the next month.
func (c *inquiry) whenTo(b plan.Dock) (start, end string) {
	from, to := c.day, c.day.AddDays(lookAhead)
	for _, w := range dossier.All[plan.DockWindow](c.d) {
		e, ok := dossier.Find[plan.Dock](c.d, w.Body.Dock)
		if ok && e.Body.Name == b.Name && !w.Body.Opens.IsZero() && c.day.Before(w.Body.Opens) {
			from, to = w.Body.Opens, w.Body.Closes
			if to.IsZero() {
				to = from.AddDays(14)
			}
			break
		}
	}
	return from.Time().UTC().Format(time.RFC3339), to.Time().UTC().Format(time.RFC3339)
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

// landing works the landing by the hand formula: as she floats today, stern first.
func (c *inquiry) landing(p *DockingPage, s *afloatState) {
	if s.kg == nil {
		return
	}
	row, err := c.landingRow(s)
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The landing can't be worked: " + err.Error(), Page: "docking", Worry: 1})
		return
	}
	p.Landing = append(p.Landing, row)
}

func (c *inquiry) landingRow(s *afloatState) (LandingRow, error) {
	in := docking.Landing.New()
	w := s.hydro
	in.Displacement, in.LBP, in.LCF, in.DraftFwd, in.DraftAft = &w.Displacement, c.particulars.LBP, &w.LCF, &s.fwd, &s.aft
	in.KG, in.KM, in.TPC, in.MCT = s.kg, &w.KMt, &w.TPC, &w.MCT
	if c.particulars.FreeSurface != nil {
		in.FreeSurface = *c.particulars.FreeSurface
	}
	if c.particulars.GMRequired != nil {
		in.GMRequired = *c.particulars.GMRequired
	}
	if s.aft > s.fwd && c.particulars.KeelAft != nil {
		in.Contact = c.particulars.KeelAft
	}
	hydro := how(field.Computed, s.sheet.ID)
	sheet, out, err := work(c.book, docking.Landing, "today", "as she floats, "+s.round.Body.Date.String(), in, map[string]field.Given{
		"displacement": hydro, "lcf": hydro, "km": hydro, "tpc": hydro, "mct": hydro, "kg": how(field.Documented, c.particulars.KGNote), "lbp": how(field.Documented, "particulars"),
		"draft_fwd": how(field.Measured, "marks"), "draft_aft": how(field.Measured, "marks"), "free_surface_moment": how(field.Assumed, "as entered, or none"),
		"gm_required": how(field.Assumed, "from memory unless entered"), "margin_required": how(field.Assumed, "from memory"), "block_slope": how(field.Assumed, "level blocks"), "contact": how(field.Documented, "after end of the flat keel")})
	if err != nil {
		return LandingRow{}, err
	}
	row := LandingRow{What: fmt.Sprintf("Landing with the drafts of %s, by the hand formula", s.round.Body.Date), Verdict: string(out.Verdict), Reason: out.Reason, Change: out.Change}
	row.Upthrust = result(sheet, "upthrust", "upthrust when she lies flat")
	row.GM = result(sheet, "gm", "GM left then")
	row.Draft = result(sheet, "landing_draft", "draft then")
	row.Margin = result(sheet, "margin", "fall of water until she turns unstable")
	row.TrimMax = unknown("trim_max", "largest trim allowed", "no trim at which the GM wanted is left")
	if out.TrimMax != nil {
		row.TrimMax = result(sheet, "trim_max", "largest trim allowed")
	}
	for _, f := range []*Figure{&row.GM, &row.Margin} {
		switch out.Verdict {
		case "unsafe":
			f.Worry = 3
		case "marginal":
			f.Worry = 2
		}
	}
	return row, nil
}
