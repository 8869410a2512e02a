package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/afloat"
	"oakum/formula/docking"
	"oakum/plan"
)

// withBallast works landing and blocks again for the ship with the ballast moved, and sets them beside those of the ship as she lies.
func (c *inquiry) withBallast(row *BallastRow, e dossier.Entry[plan.Dock], s *afloatState, in docking.BallastIn, out docking.BallastOut) {
	then, err := c.ballasted(e, s, in, out, row.Short)
	if err != nil {
		row.Again = "With the ballast moved she can't be worked again: " + stopped(err.Error())
		return
	}
	for i, f := range []*Figure{&row.DraftFwd, &row.DraftAft} {
		key, label, v := "draft_fwd", "draft forward then", then.fwd
		if i == 1 {
			key, label, v = "draft_aft", "draft aft then", then.aft
		}
		*f = known(key, label, v, "m", field.Computed, "hull at rest with the ballast moved")
		f.Sheet = then.sheet.ID
	}
	landings, first, why := c.landings(e, then)
	if why != "" {
		row.Again = "With the ballast moved the landing can't be worked: " + stopped(why)
		return
	}
	blocks := c.blockRow(e, then, first)
	row.Landing, row.Blocks = landings, &blocks
	row.beside(c, e, s, then)
}

// ballasted is the ship with the ballast moved as a sheet suggests: her hull brought to rest with the new mass and centre.
func (c *inquiry) ballasted(e dossier.Entry[plan.Dock], s *afloatState, in docking.BallastIn, out docking.BallastOut, short string) (*afloatState, error) {
	rest := afloat.Equilibrium.New()
	rest.Hull, rest.Length = c.hullInput(), c.particulars.LBP
	rest.Mass, rest.LCG, rest.VCG, rest.Density = &out.MassNow, &out.LCGNow, &out.VCGNow, s.density
	rest.FreeSurface = orElse(c.particulars.FreeSurface, 0)
	moved := how(field.Computed, "as she lies, with the ballast moved as docking.ballast suggests")
	key := "ballasted-" + e.ID
	words := e.Body.Name + ", with " + short
	_, f, err := work(c.book, afloat.Equilibrium, key, words, rest, map[string]field.Given{"hull": how(field.Documented, "hull form"), "length": how(field.Documented, "particulars"), "mass": moved, "lcg": moved, "vcg": moved,
		"water_density": how(field.Measured, "round of the marks"), "free_surface_moment": how(field.Assumed, "as entered, or none")})
	if err != nil {
		return nil, err
	}
	t := *s
	t.plain, t.ballasted, t.moved, t.kg = s, short, lumps(in, out), &out.VCGNow
	t.fwd, t.aft, t.mean = f.DraftFwd, f.DraftAft, f.DraftMid
	t.round.Body.List = &out.ListNow
	return &t, c.hydrostaticsOf(&t, key, words, how(field.Computed, "hull at rest with the ballast moved"))
}

// lumps are the masses on and off, each at its place, for the weight curve.
func lumps(in docking.BallastIn, out docking.BallastOut) (list []docking.Lump) {
	at := map[string]float64{}
	for _, p := range in.Places {
		at[p.Name] = p.X
	}
	lump := func(place string, mass float64) {
		if x, ok := at[place]; ok {
			list = append(list, docking.Lump{Name: "ballast, " + place, X0: x - 1, X1: x + 1, Mass: mass})
		}
	}
	for _, m := range out.Moves {
		lump(m.From, -m.Mass)
		lump(m.To, m.Mass)
	}
	return list
}

// beside sets the figures that a docking turns on beside each other, and says in words what the ballast does.
func (row *BallastRow) beside(c *inquiry, e dossier.Entry[plan.Dock], s, then *afloatState) {
	before, first, why := c.landings(e, s)
	if why != "" || len(before) == 0 || len(row.Landing) == 0 {
		return
	}
	were, are := c.blockRow(e, s, first), *row.Blocks
	was, is := before[0], row.Landing[0]
	draft := func(key, label string, v float64, sheet string) Figure {
		f := known(key, label, v, "m", field.Computed, "")
		f.Sheet = sheet
		return f
	}
	both := func(what string, before, after Figure) {
		row.Beside = append(row.Beside, BesideRow{what, before, after})
	}
	both("draft forward, coming in", draft("draft_fwd", "draft forward", s.fwd, s.sheet.ID), row.DraftFwd)
	both("draft aft, coming in", draft("draft_aft", "draft aft", s.aft, s.sheet.ID), row.DraftAft)
	both("trim by the stern", draft("trim", "trim by the stern", s.aft-s.fwd, s.sheet.ID), draft("trim", "trim by the stern", then.aft-then.fwd, then.sheet.ID))
	both("upthrust when she lies flat", was.Upthrust, is.Upthrust)
	both("GM left then", was.GM, is.GM)
	both("fall of water until she turns unstable", was.Margin, is.Margin)
	both("line load at the after end", were.Aft, are.Aft)
	both("line load at the fore end", were.Fwd, are.Fwd)
	both("largest load on one block", were.Peak, are.Peak)
	row.Again = fmt.Sprintf("As she lies: %.2f m forward, %.2f m aft; landing %s; the line carries %s aft and %s forward. With %s: %.2f m forward, %.2f m aft; landing %s; the line carries %s aft and %s forward",
		s.fwd, s.aft, was.Verdict, were.Aft.Text, were.Fwd.Text, row.Short, then.fwd, then.aft, is.Verdict, are.Aft.Text, are.Fwd.Text)
	if e.Body.LineLimit != nil {
		row.Again += ", " + are.Limit.Text + " allowed"
	}
	row.Again += "."
	if is.Verdict != "safe" {
		row.Again += " " + stopped(is.Reason)
	}
	if are.Verdict != "safe" {
		row.Again += " Blocks: " + stopped(are.Reason)
	}
}
