package assess

import (
	"cmp"
	"math"
	"slices"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/docking"
	"oakum/formula/hullform"
	"oakum/ship"
	"oakum/survey"
)

// afloatState is how she floats today, with the hydrostatics that go with it.
type afloatState struct {
	round             dossier.Entry[survey.Draft]
	fwd, aft, density float64 // drafts at the perpendiculars, m above the baseline; kg/m3
	mean              float64 // m, the draft at which her form, were it straight, would displace what the survey found
	marks             []afloat.Mark
	survey            afloat.DraftSurveyOut
	weighed           calc.Sheet // the draft survey
	q                 hullform.Hydrostatics
	hydro             afloat.HydrostaticsOut
	kg                *float64
	figures           []Figure
	sheet             calc.Sheet

	ballasted string         // where ballast has been moved for a dock: what, in a clause
	plain     *afloatState   // then: the ship as she lies
	moved     []docking.Lump // and the masses on and off
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
	if why := c.roundDoubt(s, h); why != "" {
		return nil, []Notice{{What: why, Do: "Correct the round: a figure read wrong, a comma lost, or the wrong unit.", Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 2}}
	}
	if err = c.draftSurvey(s); err != nil {
		return nil, []Notice{{What: "The marks can't be worked: " + err.Error(), Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 1}}
	}
	if err = s.straighten(h); err != nil {
		return nil, []Notice{{What: "The hydrostatics can't be worked: " + err.Error(), Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 1}}
	}
	if err = c.hydrostaticsOf(s, "today", "as she floats, "+s.round.Body.Date.String(), how(field.Computed, "at which her form, were it straight, displaces what the draft survey found")); err != nil {
		return nil, []Notice{{What: "The hydrostatics can't be worked: " + err.Error(), Kind: "draft", ID: s.round.ID, Page: "docking", Worry: 1}}
	}
	c.afloatFigures(s)
	var missing []Notice
	if s.kg == nil {
		missing = append(missing, Notice{What: "The height of her centre of gravity is not known.", Do: "Enter it from an inclining or an estimate; without it nothing can be said of her stability.", Kind: "particulars", Page: "ship", Worry: 2})
	}
	return s, missing
}

// hydrostaticsOf works her hydrostatics at the drafts of a state, with its sheet.
func (c *inquiry) hydrostaticsOf(s *afloatState, key, words string, draft field.Given) error {
	h, err := c.hull()
	if err != nil {
		return err
	}
	in := afloat.HydrostaticsOf.New()
	in.Hull, in.Draft, in.Trim = c.hullInput(), s.mean, s.aft-s.fwd
	in.Length, in.Beam, in.Density, in.KG = c.particulars.LBP, c.particulars.Beam, s.density, s.kg
	if s.q, err = h.Hydrostatics(hullform.Attitude{Draft: in.Draft, Trim: in.Trim}, s.density); err != nil {
		return err
	}
	trim := how(field.Measured, "marks of "+s.round.Body.Date.String())
	if s.plain != nil {
		trim = draft
	}
	s.sheet, s.hydro, err = work(c.book, afloat.HydrostaticsOf, key, words, in, map[string]field.Given{
		"hull": how(field.Documented, "hull form"), "draft": draft, "trim": trim,
		"water_density": how(field.Measured, "round of the marks"), "kg": how(field.Documented, c.particulars.KGNote), "length": how(field.Documented, "particulars"), "beam": how(field.Documented, "particulars"),
	})
	return err
}

// draftSurvey weighs her by the newest round, step by step; hog cancels, as the hull is bent before it is cut.
func (c *inquiry) draftSurvey(s *afloatState) (err error) {
	in := afloat.DraftSurvey.New()
	in.Marks, in.LBP, in.WaterDensity, in.Hull, in.Beam = s.marks, *c.particulars.LBP, s.density, new(c.hullInput()), c.particulars.Beam
	marks := "marks of " + s.round.Body.Date.String() + ", brought to the baseline"
	s.weighed, s.survey, err = work(c.book, afloat.DraftSurvey, "today", "what she weighs, "+s.round.Body.Date.String(), in, map[string]field.Given{
		"marks": how(basisOf(s.round.Head, field.Measured), marks), "lbp": how(field.Documented, "particulars"), "water_density": how(field.Measured, "round of the marks"),
		"hull": how(field.Documented, "hull form"), "beam": how(field.Documented, "particulars"), "table_density": how(field.Assumed, "sea water"), "keel_thickness": how(field.Documented, "the marks are brought to the baseline")})
	return err
}

// straighten finds the draft at which the straight hull displaces what the survey of the bent one found, with the hydrostatics there: one displacement
// then stands on every sheet.
func (s *afloatState) straighten(h *hullform.Hull) (err error) {
	for range 20 {
		if s.q, err = h.Hydrostatics(hullform.Attitude{Draft: s.mean, Trim: s.aft - s.fwd}, s.density); err != nil {
			return err
		}
		over := s.q.Mass - s.survey.Displacement
		if math.Abs(over) <= 1e-9*s.q.Mass {
			return nil
		}
		s.mean -= over / (s.density * s.q.Cut.Waterplane)
	}
	return nil
}

func (c *inquiry) newestRound(s *afloatState) bool {
	xf, xm, xa := c.marksX()
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
		s.round, found = e, true
	}
	if !found {
		return false
	}
	b := s.round.Body
	fwd, aft := c.overBaseline("forward", meanOf(b.FwdPort, b.FwdStarboard)), c.overBaseline("aft", meanOf(b.AftPort, b.AftStarboard))
	slope := (aft - fwd) / (xf - xa)
	s.aft, s.fwd = aft+slope*xa, fwd-slope*(*c.particulars.LBP-xf)
	s.mean = (s.fwd + s.aft) / 2
	s.density = c.densityOf(s.round)
	for _, m := range []struct {
		place, mark string
		x           float64
		port, stbd  *float64
	}{{"fwd", "forward", xf, b.FwdPort, b.FwdStarboard}, {"mid", "midships", xm, b.MidPort, b.MidStarboard}, {"aft", "aft", xa, b.AftPort, b.AftStarboard}} {
		for side, r := range map[string]*float64{"port": m.port, "starboard": m.stbd} {
			if r != nil {
				s.marks = append(s.marks, afloat.Mark{Place: m.place, Side: side, Reading: c.overBaseline(m.mark, *r), X: m.x})
			}
		}
	}
	slices.SortFunc(s.marks, func(a, b afloat.Mark) int {
		return cmp.Or(-cmp.Compare(a.X, b.X), cmp.Compare(a.Side, b.Side))
	})
	return true
}

// marksX is where the marks stand, m from the after perpendicular; marks whose place is not entered are taken at the perpendiculars and amidships.
func (c *inquiry) marksX() (fwd, mid, aft float64) {
	lbp := *c.particulars.LBP
	fwd, mid, aft = c.markX("forward"), c.markX("midships"), c.markX("aft")
	if math.IsNaN(fwd) || math.IsNaN(aft) || fwd <= aft {
		fwd, aft = lbp, 0
	}
	if math.IsNaN(mid) {
		mid = lbp / 2
	}
	return fwd, mid, aft
}

// hullInput is the hull form as a sheet takes it.
func (c *inquiry) hullInput() afloat.Hull {
	e, _ := dossier.One[ship.HullForm](c.d)
	h := bareHull(e.Body)
	for _, a := range appendages(c.d) {
		h.Appendages = append(h.Appendages, afloat.Appendage{Name: a.Name, Volume: a.Volume, X: a.Centre.X, Y: a.Centre.Y, Z: a.Centre.Z, Area: a.Area})
	}
	return h
}

// bareHull is a hull form without its appendages.
func bareHull(f ship.HullForm) afloat.Hull {
	if len(f.Stations) > 0 {
		return afloat.Hull{Offsets: &afloat.Offsets{Stations: f.Stations, Waterlines: f.Waterlines, HalfBreadths: f.HalfBreadths, Keel: f.KeelHeights}}
	}
	return afloat.Hull{Vertices: f.Vertices, Triangles: f.Triangles}
}

// appendages are those whose volume and place are entered.
func appendages(d *dossier.Dossier) (list []hullform.Appendage) {
	for _, e := range dossier.All[ship.Appendage](d) {
		if b := e.Body; b.Volume != nil && b.X != nil && b.Z != nil {
			list = append(list, hullform.Appendage{Name: b.Name, Volume: *b.Volume, Centre: hullform.Point{X: *b.X, Y: orElse(b.Y, 0), Z: *b.Z}, Area: orElse(b.Area, 0)})
		}
	}
	return list
}

func (c *inquiry) afloatFigures(s *afloatState) {
	marks := "marks of " + s.round.Body.Date.String()
	s.figures = append(s.figures,
		known("draft_fwd", "draft forward", s.fwd, "m", field.Measured, marks).of("draft", s.round.ID),
		known("draft_aft", "draft aft", s.aft, "m", field.Measured, marks).of("draft", s.round.ID),
	)
	displaced := result(s.weighed, "displacement", "displacement").of("draft", s.round.ID)
	displaced = displaced.band(s.survey.Displacement-s.survey.Uncertainty, s.survey.Displacement, s.survey.Displacement+s.survey.Uncertainty)
	s.figures = append(s.figures, result(s.weighed, "quarter_mean", "draft that stands for her bent form"), result(s.weighed, "hog", "hog (sag where negative)"), displaced, result(s.sheet, "lcf", "centre of flotation, from the after perpendicular"), result(s.sheet, "tpc", "tonnes a centimetre"),
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
