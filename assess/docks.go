package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/plan"
	"oakum/quantity"
)

// DockRow is the fit of one dock.
type DockRow struct {
	ID         string         `json:"id"`
	Kind       string         `json:"kind"`
	Name       string         `json:"name"`
	Verdict    string         `json:"verdict"`
	Reason     string         `json:"reason"`
	Change     string         `json:"change"`
	Tide       Figure         `json:"tide"`   // least height of tide
	Spring     Figure         `json:"spring"` // what is left over at mean high water springs
	Neap       Figure         `json:"neap"`   // the same at neaps
	Line       Figure         `json:"line"`   // mean load on the block line
	Clearances []ClearanceRow `json:"clearances"`
	Windows    []WindowRow    `json:"windows"`
	Hours      string         `json:"hours"` // in which hours tides are counted
}

// ClearanceRow is one clearance with its limit.
type ClearanceRow struct {
	Name  string `json:"name"`
	There Figure `json:"there"`
	Want  Figure `json:"want"`
	State string `json:"state"`
}

func (c *inquiry) dockRow(e dossier.Entry[plan.Dock], s *afloatState) DockRow {
	b := e.Body
	row := DockRow{ID: e.ID, Kind: "dock", Name: b.Name, Clearances: []ClearanceRow{}, Windows: []WindowRow{}}
	row.Tide = unknown("tide", "least height of tide", "").of("dock", e.ID)
	row.Spring, row.Neap = unknown("spring", "to spare at mean high water springs", "no tide"), unknown("neap", "to spare at mean high water neaps", "no tide")
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
			row.Line.Note = quantity.Format(*out.LineUsed, "%", 0) + " of its limit, as a mean"
		}
	}
	c.waters(&row, e, in, out, sheet.ID)
	row.clear(out, sheet.ID)
	return row
}

func (row *DockRow) clear(out docking.FitOut, sheet string) {
	highest, tidal := row.highest()
	for _, cl := range out.Clearances {
		r := ClearanceRow{Name: cl.Name, State: cl.State, Want: known("want", "wanted", cl.Limit, "m", field.Assumed, "clearance wanted")}
		r.There = unknown("there", "there is", "not known")
		switch {
		case cl.Value != nil:
			r.There = known("there", "there is", *cl.Value, "m", field.Computed, "")
		case cl.Tide != nil && tidal && cl.Name != "under cables and bridges":
			r.There = known("there", "there is", cl.Limit+highest-*cl.Tide, "m", field.Computed, "at the highest tide of the coming year")
			r.State = "enough at high water"
			if highest < *cl.Tide {
				r.State, r.There.Worry = "too little", 2
			}
		case cl.Tide != nil && cl.Name == "under cables and bridges" && tidal:
			r.There = known("there", "there is", cl.Limit+*cl.Tide-highest, "m", field.Computed, "at the highest tide of the coming year")
			r.State = "enough at high water"
			if highest > *cl.Tide {
				r.State, r.There.Worry = "wants lower water", 1
			}
		}
		r.There.Sheet = sheet
		if cl.State == "too little" {
			r.There.Worry = 2
		}
		row.Clearances = append(row.Clearances, r)
	}
}

// load adds to the fit of a dock what the line of blocks says of it.
func (row *DockRow) load(b BlockRow, s BallastRow) {
	over := b.Aft
	if b.Fwd.Value != nil && over.Value != nil && *b.Fwd.Value > *over.Value {
		over = b.Fwd
	}
	if over.Worry < 3 {
		return
	}
	end := "after"
	if over.Key == "fwd" {
		end = "fore"
	}
	text := fmt.Sprintf("UNSAFE as she lies: over the line load, %s at the %s end of the keel where the blocks may carry %s", over.Text, end, b.Limit.Text)
	water := row.Reason
	row.Change = "What would change it: weight off, or ballast moved towards the other end."
	if s.Verdict == "enough" {
		row.Change = "What would change it: " + s.Short + ". Besides: " + water + "."
	}
	if row.Verdict == "does not fit" {
		row.Reason += "; " + text
		return
	}
	row.Verdict, row.Reason = "does not fit", text
	if s.Verdict == "enough" {
		row.Verdict = "only with ballast moved"
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
		in.Start, in.End = c.comingYear()
		given["tide"] = how(field.Documented, "tide record")
	}
	return in, given, ""
}
