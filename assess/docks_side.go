package assess

import (
	"math"
	"strconv"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/formula/tow"
	"oakum/plan"
)

// SideRow is what the side blocks of a dock carry in wind and earthquake.
type SideRow struct {
	Dock    string `json:"dock"`
	Name    string `json:"name"`
	Verdict string `json:"verdict"`
	Reason  string `json:"reason"`
	Change  string `json:"change"`
	Wind    Figure `json:"wind"`
	Lee     Figure `json:"lee"`
	Factor  Figure `json:"factor"`
	Each    Figure `json:"each"` // side blocks on each side, assumed
	Spread  Figure `json:"spread"`
}

// What is taken for side blocks that nobody has drawn yet: one for every six metres of flat keel, half the beam apart. Common practice.
const (
	sideEvery  = 6.0
	sideSpread = 0.5
	sideWind   = 50 * 1852.0 / 3600 // m/s, from memory: the yard's own rule governs
)

func (c *inquiry) sideRow(e dossier.Entry[plan.Dock], s *afloatState) (row SideRow, ok bool) {
	pr, b := c.particulars, e.Body
	if s.kg == nil || pr.KeelAft == nil || pr.KeelFwd == nil || pr.Beam == nil {
		return row, false
	}
	row = SideRow{Dock: e.ID, Name: b.Name}
	in := docking.SideBlocks.New()
	in.Mass, in.KG, in.N, in.Spread = s.q.Mass, *s.kg, max(int((*pr.KeelFwd-*pr.KeelAft)/sideEvery), 1), sideSpread**pr.Beam
	row.Wind = unknown("wind", "wind force from the side", "no tow record gives the area she shows to the side")
	if wind, out, found := c.sideForce(s); found {
		row.Wind = wind
		in.WindForce, in.WindArm = out.SideForce, (s.fwd+s.aft)/2+c.sideArea()/orElse(pr.LengthOverall, *pr.LBP)/2
	}
	if b.CapYield != nil && b.BlockLength != nil && b.BlockWidth != nil {
		in.BlockLimit = new(*b.CapYield * *b.BlockLength * *b.BlockWidth)
	}
	sheet, out, err := work(c.book, docking.SideBlocks, e.ID, b.Name, in, map[string]field.Given{"mass": how(field.Computed, "from the drafts"), "kg": how(field.Documented, pr.KGNote), "wind_force": how(field.Computed, row.Wind.Sheet),
		"wind_arm": how(field.Assumed, "middle of the area above water"), "earthquake": how(field.Assumed, "from memory: the dock's rule governs"), "n": how(field.Assumed, "one for every 6 m of flat keel"),
		"spread": how(field.Assumed, "half the beam"), "block_limit": how(field.Documented, "crushing strength of the cap on the size of a keel block")})
	if err != nil {
		return row, false
	}
	row.Verdict, row.Reason, row.Change = string(out.Verdict), out.Reason, out.Change
	row.Lee, row.Factor = result(sheet, "leeward_block", "load on a side block to leeward"), unknown("factor", "factor against going over", "nothing pushes her")
	if out.Overturning != nil {
		row.Factor = result(sheet, "overturning_factor", "factor against going over")
		row.Factor.Worry = map[docking.Verdict]int{docking.Unsafe: 3, docking.Marginal: 2}[out.Verdict]
	}
	row.Each = known("each", "side blocks on each side", float64(in.N), "-", field.Assumed, "one for every 6 m of flat keel")
	row.Each.Text = strconv.Itoa(in.N)
	row.Spread = known("spread", "port to starboard side blocks", in.Spread, "m", field.Assumed, "half the beam")
	return row, true
}

// sideArea is the largest area above water that a tow record gives her from the side, m2.
func (c *inquiry) sideArea() (area float64) {
	for _, e := range dossier.All[plan.Tow](c.d) {
		area = max(area, orElse(e.Body.SideArea, 0))
	}
	return area
}

// sideForce is the wind on her side.
func (c *inquiry) sideForce(s *afloatState) (f Figure, out tow.ResistanceOut, ok bool) {
	area := c.sideArea()
	if area == 0 {
		return f, out, false
	}
	in := tow.Resistance.New()
	in.Length, in.Beam, in.Draft, in.Wetted = *c.particulars.LBP, *c.particulars.Beam, (s.fwd+s.aft)/2, &s.hydro.Wetted
	in.Wind, in.Heading, in.Side = sideWind, math.Pi/2, area
	sheet, out, err := work(c.book, tow.Resistance, "side-wind", "wind on her side in dock, 50 kn", in, map[string]field.Given{"wind": how(field.Assumed, "50 kn, from memory: the yard's rule governs"), "side_area": how(field.Documented, "tow record")})
	if err != nil {
		return f, out, false
	}
	return result(sheet, "side_force", "wind force from the side, 50 kn"), out, true
}
