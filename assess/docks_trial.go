package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/plan"
)

// DockTrial is a docking to be worked otherwise than as she lies today.
type DockTrial struct {
	Dock    string
	Stern   bool
	Ballast bool     // with the ballast moved as suggested for the dock
	Trim    *float64 // m by the stern
	KG      *float64 // m
	Slope   *float64 // m over her length, deeper aft
	Changes []string // courses and works whose weights are moved in dock
	Step    float64  // m of water level
}

// DockSequence is a docking in water-level steps, down and up again. Lengths in m, masses in t.
type DockSequence struct {
	Dock             string      `json:"dock"`
	Name             string      `json:"name"`
	Verdict          string      `json:"verdict"`
	Reason           string      `json:"reason"`
	Change           string      `json:"change"`
	VerdictUndocking string      `json:"verdict_undocking"`
	ReasonUndocking  string      `json:"reason_undocking"`
	ChangeUndocking  string      `json:"change_undocking"`
	Sheet            string      `json:"sheet"`
	Warnings         []string    `json:"warnings"`
	Touch            float64     `json:"touch"`       // water over the blocks amidships at first touch
	Landing          float64     `json:"landing"`     // when she lies flat
	Instability      float64     `json:"instability"` // where she has no stability left
	Float            float64     `json:"float"`       // undocking: floats free
	Stable           float64     `json:"stable"`      // undocking: stability of her own above this
	KeelAft          float64     `json:"keel_aft"`
	KeelFwd          float64     `json:"keel_fwd"`
	Trim             float64     `json:"trim"`
	KG               float64     `json:"kg"`
	Slope            float64     `json:"slope"`
	LBP              float64     `json:"lbp"`
	Limit            *float64    `json:"limit"`     // t/m
	Ballasted        string      `json:"ballasted"` // the ballast moved, in a clause; empty as she lies
	GMRequired       float64     `json:"gm_required"`
	Stages           []DockStage `json:"stages"`
}

// DockStage is the ship at one water level.
type DockStage struct {
	Way      string   `json:"way"` // docking or undocking
	Mark     string   `json:"mark"`
	Level    float64  `json:"level"`
	DraftFwd float64  `json:"draft_fwd"`
	DraftAft float64  `json:"draft_aft"`
	Upthrust float64  `json:"upthrust"`
	GM       float64  `json:"gm"`
	Moment   float64  `json:"moment"` // t m/rad
	LineAft  float64  `json:"line_aft"`
	LineFwd  float64  `json:"line_fwd"`
	Block    *float64 `json:"block"` // kN, on the block that carries most
}

// Sequence works a docking in water-level steps.
func (b *Brief) Sequence(t DockTrial) (DockSequence, error) {
	b.tries.Lock()
	defer b.tries.Unlock()
	return b.ask.sequence(t)
}

// trialState is the dock and the ship of a trial.
func (c *inquiry) trialState(dock string) (e dossier.Entry[plan.Dock], s *afloatState, err error) {
	e, ok := dossier.Find[plan.Dock](c.d, dock)
	if !ok {
		return e, nil, field.Refuse("dock", "there is no dock %q", dock)
	}
	s, missing := c.state()
	switch {
	case s == nil:
		return e, nil, field.Refuse("dock", "%s", first(missing).What)
	case s.kg == nil:
		return e, nil, field.Refuse("kg", "the height of her centre of gravity is not entered: without it nothing can be said of her stability")
	}
	return e, s, nil
}

func (c *inquiry) sequence(t DockTrial) (out DockSequence, err error) {
	e, s, err := c.trialState(t.Dock)
	if err == nil && t.Ballast {
		s, err = c.suggested(e, s)
	}
	if err != nil {
		return out, err
	}
	slope := c.blockSlope(e.Body)
	if t.Slope != nil {
		slope = *t.Slope
	} else if t.Stern {
		slope = -slope
	}
	base := c.exactInput(e.Body, s, slope)
	in := docking.Sequence.New()
	in.Particulars, in.Shape, in.BlockSlope = base.Particulars, base.Shape, slope
	in.KeelAft, in.KeelFwd = c.particulars.KeelAft, c.particulars.KeelFwd
	if t.Step > 0 {
		in.Step = t.Step
	}
	if t.KG != nil {
		in.KG, in.VCG = t.KG, t.KG
	}
	if t.Trim != nil {
		c.trimmed(&in, s, *t.Trim)
	}
	if in.Changes, err = c.changesLeft(t.Changes); err != nil {
		return out, err
	}
	given := c.landingGiven()
	given["keel_aft"], given["keel_fwd"] = how(field.Documented, "particulars"), how(field.Documented, "particulars")
	given["changes"] = how(field.Assumed, "courses and works as chosen")
	id := enter(c.book, docking.Sequence, "tried-"+s.key(e.ID), s.words(e.Body.Name)+", as last tried, "+changesWords(in.Changes), in, given)
	r, err := docking.Sequence.Fn(in)
	if err != nil {
		return out, err
	}
	out = DockSequence{Dock: e.ID, Name: e.Body.Name, Verdict: string(r.Verdict), Reason: r.Reason, Change: r.Change, VerdictUndocking: string(r.VerdictUndocking), ReasonUndocking: r.ReasonUndocking, ChangeUndocking: r.ChangeUndocking,
		Sheet: id, Warnings: append([]string{}, r.Warnings...), Touch: round(r.TouchLevel), Landing: round(r.LandingLevel), Instability: round(r.InstabilityLevel), Float: round(r.FloatLevel), Stable: round(r.StableLevel),
		Ballasted: s.ballasted, KG: *in.KG, Trim: round(*in.DraftAft - *in.DraftFwd), Slope: slope, LBP: *c.particulars.LBP, GMRequired: in.GMRequired, KeelAft: orElse(c.particulars.KeelAft, 0), KeelFwd: orElse(c.particulars.KeelFwd, *c.particulars.LBP)}
	if e.Body.LineLimit != nil {
		out.Limit = new(*e.Body.LineLimit / 1000)
	}
	out.stages(r)
	return out, nil
}

// suggested is the ship with the ballast moved that is suggested for a dock.
func (c *inquiry) suggested(e dossier.Entry[plan.Dock], s *afloatState) (*afloatState, error) {
	var row BallastRow
	if s.kg == nil || c.particulars.KeelAft == nil || c.particulars.KeelFwd == nil {
		return nil, field.Refuse("ballast", "no ballast is suggested: where her flat keel begins and ends, or the height of her centre of gravity, is not entered")
	}
	in, _ := c.ballastInput(e.Body, s, &row)
	out, err := docking.Ballast.Fn(in)
	switch {
	case err != nil:
		return nil, err
	case out.Verdict != "enough":
		return nil, field.Refuse("ballast", "no ballast is suggested for %s: %s", e.Body.Name, out.Reason)
	}
	row.fill("", out)
	return c.ballasted(e, s, in, out, row.Short)
}

// trimmed gives the ship another trim at the same mass: weights moved along her, the drafts turned about the centre of flotation.
func (c *inquiry) trimmed(in *docking.SequenceIn, s *afloatState, trim float64) {
	turn := trim - (s.aft - s.fwd)
	share := s.hydro.LCF / *c.particulars.LBP
	in.DraftAft, in.DraftFwd = new(s.aft+turn*share), new(s.fwd-turn*(1-share))
	in.LCG = new(*in.LCG - turn*s.hydro.MCT/s.hydro.Displacement)
}

func (out *DockSequence) stages(r docking.SequenceOut) {
	for _, s := range r.Stages {
		d := DockStage{Way: s.Direction, Mark: s.Mark, Level: round(s.Level), DraftFwd: round(s.DraftFwd), DraftAft: round(s.DraftAft), Upthrust: math.Round(s.Upthrust/100) / 10, GM: round(s.GM), Moment: math.Round(s.Moment / 1000),
			LineAft: math.Round(s.LineAft/10) / 100, LineFwd: math.Round(s.LineFwd/10) / 100}
		if s.Block != nil {
			d.Block = new(math.Round(*s.Block / 1000))
		}
		out.Stages = append(out.Stages, d)
	}
}

// DockBlocks is what the blocks carry with some left out.
type DockBlocks struct {
	BlockRow
	Before  *float64    `json:"before"` // kN, largest load with none left out
	Without []int       `json:"without"`
	Length  float64     `json:"length"` // m, of one block
	Knuckle []KnuckleOn `json:"knuckle"`
}

// KnuckleOn is the first touch shared by the first blocks.
type KnuckleOn struct {
	Blocks int      `json:"blocks"`
	Force  float64  `json:"force"` // kN on each
	Used   *float64 `json:"used"`  // per cent of what they may carry
}

// Blocks works what the keel blocks of a dock carry with some left out.
// With ballast, the ship is the one with the ballast moved as suggested.
func (b *Brief) Blocks(dock string, without []int, ballast bool) (DockBlocks, error) {
	b.tries.Lock()
	defer b.tries.Unlock()
	return b.ask.dockBlocks(dock, without, ballast)
}

func (c *inquiry) dockBlocks(dock string, without []int, ballast bool) (out DockBlocks, err error) {
	e, s, err := c.trialState(dock)
	if err == nil && ballast {
		s, err = c.suggested(e, s)
	}
	if err != nil {
		return out, err
	}
	in, given, why := c.blocksInput(e.Body, s)
	if why != "" {
		return out, field.Refuse("dock", "%s", why)
	}
	in.LeaveOut = without
	if land, err := c.landingOf(e, s); err == nil && land.Upthrust > 0 {
		in.Knuckle, in.KnuckleEnd = new(land.Upthrust), "aft"
		if land.ContactUsed > *c.particulars.LBP/2 {
			in.KnuckleEnd = "fwd"
		}
	}
	given["leave_out"] = how(field.Assumed, "as tried")
	sheet, r, err := work(c.book, docking.Blocks, "tried-"+s.key(e.ID), s.words(fmt.Sprintf("%s, %d blocks left out", e.Body.Name, len(without))), in, given)
	if err != nil {
		return out, err
	}
	out.BlockRow = BlockRow{Dock: e.ID, Name: e.Body.Name, Blocks: []BlockBar{}}
	out.Limit, out.Peak = unknown("limit", "the block line may carry", "not entered"), unknown("peak", "largest load on one block", "these blocks do not hold her")
	out.Line, out.Used = unknown("line", "largest load on the block line", "these blocks do not hold her"), unknown("used", "part of the nearest limit", "no limit is known")
	out.fill(e.Body, sheet, r)
	out.Without, out.Length, out.Knuckle = append([]int{}, without...), *e.Body.BlockLength, []KnuckleOn{}
	if r.PeakBefore != nil {
		out.Before = new(math.Round(*r.PeakBefore / 1000))
	}
	for _, k := range r.Knuckles {
		on := KnuckleOn{Blocks: k.Blocks, Force: math.Round(k.Force / 1000)}
		if k.Used != nil {
			on.Used = new(math.Round(*k.Used * 100))
		}
		out.Knuckle = append(out.Knuckle, on)
	}
	return out, nil
}

// landingOf is the landing bow first, without a row of its own.
func (c *inquiry) landingOf(e dossier.Entry[plan.Dock], s *afloatState) (docking.LandingOut, error) {
	in := c.exactInput(e.Body, s, c.blockSlope(e.Body))
	return docking.Landing.Fn(in)
}

// Shape is her hull as triangles for a drawing in space, with what stands in and under her. Lengths in m.
type Shape struct {
	Vertices  []float64    `json:"vertices"`  // x, y, z after each other
	Triangles []int        `json:"triangles"` // three corners after each other, counted from 0
	DraftFwd  float64      `json:"draft_fwd"`
	DraftAft  float64      `json:"draft_aft"`
	LBP       float64      `json:"lbp"`
	Spaces    []DrawnSpace `json:"spaces"`
	Blocks    []float64    `json:"blocks"` // x of the keel blocks of the first dock that has any
}

// Shape gives her hull in space. It refuses where no hull form is entered.
func (b *Brief) Shape() (Shape, error) { return b.ask.shape() }

func (c *inquiry) shape() (out Shape, err error) {
	h, err := c.hull()
	if err != nil {
		return out, err
	}
	m := h.Mesh()
	out = Shape{Vertices: make([]float64, 0, 3*len(m.Vertices)), Triangles: make([]int, 0, 3*len(m.Triangles)), LBP: h.Length(), Blocks: []float64{}}
	for _, v := range m.Vertices {
		out.Vertices = append(out.Vertices, round(v.X), round(v.Y), round(v.Z))
	}
	for _, t := range m.Triangles {
		out.Triangles = append(out.Triangles, t[0], t[1], t[2])
	}
	if s, _ := c.state(); s != nil {
		out.DraftFwd, out.DraftAft = round(s.fwd), round(s.aft)
	}
	var d Drawing
	d.Spaces = []DrawnSpace{}
	d.spaces(c.d)
	out.Spaces = d.Spaces
	for _, e := range dossier.All[plan.Dock](c.d) {
		if list, why := c.keelBlocks(e.Body); why == "" && len(out.Blocks) == 0 {
			for _, k := range list {
				out.Blocks = append(out.Blocks, round(k.X))
			}
		}
	}
	return out, nil
}
