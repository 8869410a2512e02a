package assess

import (
	"fmt"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/plan"
)

// LandingRow is one landing, with the hull at each water level; the same by the hand formula stands beside it.
type LandingRow struct {
	Dock     string `json:"dock"`
	What     string `json:"what"`
	Way      string `json:"way"` // bow first or stern first
	Verdict  string `json:"verdict"`
	Reason   string `json:"reason"`
	Change   string `json:"change"`
	Upthrust Figure `json:"upthrust"`
	GM       Figure `json:"gm"`
	Draft    Figure `json:"draft"`
	Margin   Figure `json:"margin"`
	TrimMax  Figure `json:"trim_max"`

	HandVerdict  string `json:"hand_verdict"`
	HandUpthrust Figure `json:"hand_upthrust"`
	HandGM       Figure `json:"hand_gm"`
	HandMargin   Figure `json:"hand_margin"`
}

// landings works the landing in a dock, bow first and, where its line of blocks falls, stern first too. first is the landing bow first.
func (c *inquiry) landings(e dossier.Entry[plan.Dock], s *afloatState) (rows []LandingRow, first *docking.LandingOut, why string) {
	if s.kg == nil {
		return nil, nil, "the height of her centre of gravity is not entered"
	}
	slope := c.blockSlope(e.Body)
	ways := []struct {
		name  string
		slope float64
	}{{"bow first", slope}, {"stern first", -slope}}
	if slope == 0 {
		ways = ways[:1]
		ways[0].name = "bow or stern first, level blocks"
	}
	for i, w := range ways {
		row, out, err := c.landingRow(e, s, w.name, w.slope)
		if err != nil {
			return rows, first, err.Error()
		}
		if i == 0 {
			first = &out
		}
		rows = append(rows, row)
	}
	return rows, first, ""
}

// key names the sheets of a dock: those of the ship with ballast moved have names of their own.
func (s *afloatState) key(dock string) string {
	if s.plain != nil {
		return dock + "-ballasted"
	}
	return dock
}

func (s *afloatState) words(subject string) string {
	if s.plain != nil {
		return subject + ", with " + s.ballasted
	}
	return subject
}

// blockSlope is how much deeper the blocks lie under her stern than under her bow, over her length, when she comes in bow first, m.
func (c *inquiry) blockSlope(b plan.Dock) float64 {
	if b.BlockFall == nil || b.Length == nil || c.particulars.LBP == nil {
		return 0
	}
	return *b.BlockFall * *c.particulars.LBP / *b.Length
}

// exactInput is the landing with her hull in a dock.
func (c *inquiry) exactInput(b plan.Dock, s *afloatState, slope float64) docking.LandingIn {
	in := docking.Landing.New()
	in.LBP, in.DraftFwd, in.DraftAft, in.KG = c.particulars.LBP, &s.fwd, &s.aft, s.kg
	in.Hull, in.Density = new(c.hullInput()), s.density
	mass, lcg := c.massAndCentre(s)
	in.Mass, in.LCG = &mass, &lcg
	in.BlockSlope = slope
	in.FreeSurface, in.GMRequired = orElse(c.particulars.FreeSurface, in.FreeSurface), orElse(c.particulars.GMRequired, in.GMRequired)
	blocks, _ := c.keelBlocks(b)
	for _, k := range blocks {
		in.Blocks = append(in.Blocks, docking.Stand{X: k.X})
	}
	return in
}

// handInput is the same landing by the hand formula, with the hydrostatics of today.
func (c *inquiry) handInput(exact docking.LandingIn, s *afloatState) docking.LandingIn {
	in := exact
	w := s.hydro
	in.Shape = docking.Landing.New().Shape
	in.Density = exact.Density
	in.Displacement, in.LCF, in.KM, in.TPC, in.MCT = &w.Displacement, &w.LCF, &w.KMt, &w.TPC, &w.MCT
	if n := len(exact.Blocks); n > 0 {
		in.Contact = new(exact.Blocks[0].X)
		if s.aft-s.fwd < exact.BlockSlope {
			in.Contact = new(exact.Blocks[n-1].X)
		}
	}
	return in
}

func (c *inquiry) landingGiven() map[string]field.Given {
	hydro := how(field.Computed, "hydrostatics at the drafts read")
	return map[string]field.Given{
		"displacement": hydro, "lcf": hydro, "km": hydro, "tpc": hydro, "mct": hydro, "mass": hydro, "lcg": hydro, "kg": how(field.Documented, c.particulars.KGNote), "lbp": how(field.Documented, "particulars"),
		"draft_fwd": how(field.Measured, "marks"), "draft_aft": how(field.Measured, "marks"), "free_surface_moment": how(field.Assumed, "as entered, or none"), "hull": how(field.Documented, "hull form"),
		"water_density": how(field.Measured, "round of the marks"), "blocks": how(field.Documented, "dock record, under her flat keel"), "gm_required": how(field.Assumed, "from memory unless entered"),
		"margin_required": how(field.Assumed, "from memory"), "block_slope": how(field.Documented, "fall of the block line, dock record"), "contact": how(field.Documented, "end of the block line")}
}

func (c *inquiry) landingRow(e dossier.Entry[plan.Dock], s *afloatState, way string, slope float64) (row LandingRow, out docking.LandingOut, err error) {
	in := c.exactInput(e.Body, s, slope)
	key := s.key(e.ID)
	if way == "stern first" {
		key += "-stern-first"
	}
	words := s.words(fmt.Sprintf("%s, %s, drafts of %s", e.Body.Name, way, s.round.Body.Date))
	sheet, out, err := work(c.book, docking.Landing, key, words, in, c.landingGiven())
	if err != nil {
		return row, out, err
	}
	row = LandingRow{Dock: e.ID, What: "Landing at " + e.Body.Name + ", " + way, Way: way, Verdict: string(out.Verdict), Reason: out.Reason, Change: out.Change}
	row.Upthrust = result(sheet, "upthrust", "upthrust when she lies flat")
	row.GM = result(sheet, "gm", "GM left then")
	row.Draft = result(sheet, "landing_draft", "draft then, at the centre of flotation")
	row.Margin = result(sheet, "margin", "fall of water until she turns unstable")
	row.TrimMax = unknown("trim_max", "largest trim allowed", "no trim at which the GM wanted is left")
	if out.TrimMax != nil {
		row.TrimMax = result(sheet, "trim_max", "largest trim allowed")
	}
	for _, f := range []*Figure{&row.GM, &row.Margin} {
		f.Worry = map[docking.Verdict]int{docking.Unsafe: 3, docking.Marginal: 2}[out.Verdict]
	}
	c.byHand(&row, in, s, key, words)
	return row, out, nil
}

func (c *inquiry) byHand(row *LandingRow, exact docking.LandingIn, s *afloatState, key, words string) {
	row.HandVerdict = "not known"
	sheet, out, err := work(c.book, docking.Landing, key+"-by-hand", words+", by hand", c.handInput(exact, s), c.landingGiven())
	if err != nil {
		row.HandUpthrust, row.HandGM, row.HandMargin = unknown("hand_upthrust", "upthrust, by hand", err.Error()), unknown("hand_gm", "GM left, by hand", err.Error()), unknown("hand_margin", "fall of water, by hand", err.Error())
		return
	}
	row.HandVerdict = string(out.Verdict)
	row.HandUpthrust = result(sheet, "upthrust", "upthrust, by hand")
	row.HandGM = result(sheet, "gm", "GM left, by hand")
	row.HandMargin = result(sheet, "margin", "fall of water until unstable, by hand, KM constant")
}
