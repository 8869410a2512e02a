package assess

import (
	"math"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/hullform"
	"oakum/ship"
	"oakum/survey"
)

// afloatState is how she floats today, with the hydrostatics that go with it.
type afloatState struct {
	round             dossier.Entry[survey.Draft]
	fwd, aft, density float64 // drafts at the perpendiculars, m above the baseline; kg/m3
	q                 hullform.Hydrostatics
	hydro             afloat.HydrostaticsOut
	kg                *float64
	figures           []Figure
	sheet             calc.Sheet
	from              field.Basis
}

// floating works out how she floats from the newest round of the marks; what is missing is said instead.
func (c *inquiry) floating() (*afloatState, []Notice) {
	h, err := c.hull()
	if err != nil {
		return nil, []Notice{{What: "No hull form is entered.", Do: "Enter a table of offsets, or import a mesh.", Kind: "hull_form", Page: "ship", Worry: 1}}
	}
	if c.particulars.LBP == nil {
		return nil, []Notice{{What: "The length between perpendiculars is not entered.", Do: "Enter it in the particulars.", Kind: "particulars", Page: "ship", Worry: 1}}
	}
	s := &afloatState{kg: c.particulars.KG, density: seaWater}
	if !c.newestRound(s) {
		return nil, []Notice{{What: "No round of the draft marks is entered.", Do: "Read the marks fore and aft, both sides, and enter them with the place of the marks.", Kind: "draft", Page: "standing", Worry: 1}}
	}
	in := afloat.HydrostaticsOf.New()
	in.Hull, in.Draft, in.Trim = c.hullInput(), (s.fwd+s.aft)/2, s.aft-s.fwd
	in.Length, in.Beam, in.Density, in.KG = c.particulars.LBP, c.particulars.Beam, s.density, s.kg
	given := map[string]field.Given{
		"hull": how(field.Documented, "hull form"), "draft": how(field.Measured, "marks of "+s.round.Body.Date.String()), "trim": how(field.Measured, "marks of "+s.round.Body.Date.String()),
		"water_density": how(field.Measured, "round of the marks"), "kg": how(field.Documented, c.particulars.KGNote), "length": how(field.Documented, "particulars"), "beam": how(field.Documented, "particulars"),
	}
	if s.q, err = h.Hydrostatics(hullform.Attitude{Draft: in.Draft, Trim: in.Trim}, s.density); err != nil {
		return nil, []Notice{{What: "The hydrostatics can't be worked: " + err.Error(), Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 1}}
	}
	if s.sheet, s.hydro, err = work(c.book, afloat.HydrostaticsOf, "today", "as she floats, "+s.round.Body.Date.String(), in, given); err != nil {
		return nil, []Notice{{What: "The hydrostatics can't be worked: " + err.Error(), Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 1}}
	}
	c.afloatFigures(s)
	var missing []Notice
	if s.kg == nil {
		missing = append(missing, Notice{What: "The height of her centre of gravity is not known.", Do: "Enter it from an inclining or an estimate; without it nothing can be said of her stability.", Kind: "particulars", Page: "ship", Worry: 2})
	}
	return s, missing
}

func (c *inquiry) newestRound(s *afloatState) bool {
	xf, xa := c.markX("forward"), c.markX("aft")
	if math.IsNaN(xf) || math.IsNaN(xa) || xf <= xa {
		xf, xa = *c.particulars.LBP, 0
	}
	found := false
	for _, e := range dossier.All[survey.Draft](c.d) {
		b := e.Body
		fwd, aft := meanOf(b.FwdPort, b.FwdStarboard), meanOf(b.AftPort, b.AftStarboard)
		if c.day.Before(b.Date) || b.Measure == "freeboard" || b.Afloat == "aground" || b.Afloat == "on blocks" || b.Afloat == "touching" || math.IsNaN(fwd) || math.IsNaN(aft) {
			continue
		}
		if found && b.Date.Compare(s.round.Body.Date) < 0 {
			continue
		}
		fwd, aft = c.overBaseline("forward", fwd), c.overBaseline("aft", aft)
		slope := (aft - fwd) / (xf - xa)
		s.round, found = e, true
		s.aft, s.fwd = aft+slope*xa, fwd-slope*(*c.particulars.LBP-xf)
		s.density = c.densityOf(e)
	}
	return found
}

// hullInput is the hull form as a sheet takes it.
func (c *inquiry) hullInput() afloat.Hull {
	for _, e := range dossier.All[ship.HullForm](c.d) {
		f := e.Body
		if len(f.Stations) > 0 {
			return afloat.Hull{Offsets: &afloat.Offsets{Stations: f.Stations, Waterlines: f.Waterlines, HalfBreadths: f.HalfBreadths, Keel: f.KeelHeights}}
		}
		return afloat.Hull{Vertices: f.Vertices, Triangles: f.Triangles}
	}
	return afloat.Hull{}
}

func (c *inquiry) afloatFigures(s *afloatState) {
	marks := "marks of " + s.round.Body.Date.String()
	s.figures = append(s.figures,
		known("draft_fwd", "draft forward", s.fwd, "m", field.Measured, marks).of("draft", s.round.ID),
		known("draft_aft", "draft aft", s.aft, "m", field.Measured, marks).of("draft", s.round.ID),
	)
	displaced := result(s.sheet, "displacement", "displacement").of("draft", s.round.ID)
	// A draft survey is good to half a per cent of the displacement at best.
	displaced = displaced.band(s.hydro.Displacement*0.995, s.hydro.Displacement, s.hydro.Displacement*1.005)
	s.figures = append(s.figures, displaced, result(s.sheet, "lcf", "centre of flotation, from the after perpendicular"), result(s.sheet, "tpc", "tonnes a centimetre"),
		result(s.sheet, "mct", "moment to change trim"), result(s.sheet, "km_t", "metacentre above the baseline"), result(s.sheet, "cb", "block coefficient"))
	if s.hydro.GM == nil {
		gm := unknown("gm", "metacentric height GM", "the height of her centre of gravity is not known")
		gm.Worry = 2
		s.figures = append(s.figures, gm)
		return
	}
	gm := result(s.sheet, "gm", "metacentric height GM, free surfaces not counted")
	switch {
	case *s.hydro.GM <= 0:
		gm.Worry = 3
	case *s.hydro.GM < 0.3:
		gm.Worry = 2
	}
	s.figures = append(s.figures, gm)
}
