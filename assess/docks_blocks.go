package assess

import (
	"fmt"
	"math"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/docking"
	"oakum/plan"
	"oakum/ship"
)

// BlockRow is what the keel blocks of a dock carry.
type BlockRow struct {
	Dock    string     `json:"dock"`
	Name    string     `json:"name"`
	Verdict string     `json:"verdict"`
	Reason  string     `json:"reason"`
	Change  string     `json:"change"`
	Aft     Figure     `json:"aft"`   // load of the line at its after end, even blocks and a rigid ship
	Fwd     Figure     `json:"fwd"`   // the same at its fore end
	Limit   Figure     `json:"limit"` // what the line may carry
	Peak    Figure     `json:"peak"`  // largest load of one block, hull bending and blocks giving
	Line    Figure     `json:"line"`  // largest load on the line there
	Used    Figure     `json:"used"`
	Blocks  []BlockBar `json:"blocks"`
}

// BlockBar is one keel block.
type BlockBar struct {
	Number int     `json:"number"`
	X      float64 `json:"x"`     // m
	Force  float64 `json:"force"` // kN
	Line   float64 `json:"line"`  // t/m
	State  string  `json:"state"`
}

// steelModulus is of mild steel and wrought iron plating, Pa: common practice.
const steelModulus = 206e9

// keelBlocks are the blocks of a dock under the flat part of her keel; why says what is missing.
func (c *inquiry) keelBlocks(b plan.Dock) (list []docking.Block, why string) {
	pr := c.particulars
	switch {
	case pr.KeelAft == nil || pr.KeelFwd == nil || *pr.KeelFwd <= *pr.KeelAft:
		return nil, "where the flat keel begins and ends is not entered"
	case b.BlockSpacing == nil || b.BlockLength == nil || b.BlockWidth == nil:
		return nil, "size and spacing of the blocks of " + b.Name + " are not entered"
	}
	n := int((*pr.KeelFwd-*pr.KeelAft) / *b.BlockSpacing) + 1
	first := (*pr.KeelAft + *pr.KeelFwd - float64(n-1)**b.BlockSpacing) / 2
	for i := range n {
		list = append(list, docking.Block{X: first + float64(i)**b.BlockSpacing, Length: *b.BlockLength, Width: *b.BlockWidth, Layers: layersOf(b)})
	}
	return list, ""
}

// layersOf are the layers of a block from the floor up; none where a part of its make is not known.
func layersOf(b plan.Dock) []docking.Layer {
	if b.BlockHeight == nil || b.BlockCap == nil || b.CapModulus == nil || b.BaseModulus == nil || *b.BlockHeight <= *b.BlockCap || *b.BlockCap <= 0 {
		return nil
	}
	return []docking.Layer{
		{Material: "block", Height: *b.BlockHeight - *b.BlockCap, Modulus: *b.BaseModulus},
		{Material: orWord(b.BlockTimber, "cap"), Height: *b.BlockCap, Modulus: *b.CapModulus, Yield: b.CapYield},
	}
}

// weightCurve is the register spread along her, with what the register does not explain laid on so that mass and centre are those of the drafts.
func (c *inquiry) weightCurve(mass, lcg float64) []docking.Lump {
	var list []docking.Lump
	var sum, moment float64
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range dossier.All[ship.Weight](c.d) {
		b := e.Body
		if !c.onBoard(b) || b.Mass == nil || b.LCG == nil {
			continue
		}
		x0, x1 := orElse(b.X0, *b.LCG-0.5), orElse(b.X1, *b.LCG+0.5)
		if x1 <= x0 {
			x0, x1 = *b.LCG-0.5, *b.LCG+0.5
		}
		list = append(list, halves(b.Name, x0, x1, *b.Mass, *b.LCG)...)
		sum, moment = sum+*b.Mass, moment+*b.Mass**b.LCG
		low, high = min(low, x0), max(high, x1)
	}
	if len(list) == 0 {
		return nil
	}
	rest := mass - sum
	at := (low + high) / 2
	if rest != 0 {
		at = (mass*lcg - moment) / rest
	}
	return append(list, halves("what the register does not explain", low, high, rest, at)...)
}

// halves spreads a mass evenly over each half of a stretch so that its centre is at lcg.
func halves(name string, x0, x1, mass, lcg float64) []docking.Lump {
	mid, half := (x0+x1)/2, (x1-x0)/2
	fore := mass * (lcg - (x0 + half/2)) / half
	return []docking.Lump{{Name: name, X0: x0, X1: mid, Mass: mass - fore}, {Name: name, X0: mid, X1: x1, Mass: fore}}
}

// onBoard tells whether a weight is on board on the day.
func (c *inquiry) onBoard(w ship.Weight) bool {
	return (w.Added.IsZero() || !c.day.Before(w.Added)) && (w.Removed.IsZero() || c.day.Before(w.Removed))
}

// blocksInput gathers docking.blocks for a dock.
func (c *inquiry) blocksInput(b plan.Dock, s *afloatState) (in docking.BlocksIn, given map[string]field.Given, why string) {
	in = docking.Blocks.New()
	if in.Blocks, why = c.keelBlocks(b); why != "" {
		return in, nil, why
	}
	mass, lcg := c.massAndCentre(s)
	in.Mass, in.LCG = &mass, &lcg
	if s.plain == nil {
		in.Weights = c.weightCurve(mass, lcg)
	} else if in.Weights = c.weightCurve(c.massAndCentre(s.plain)); len(in.Weights) > 0 {
		in.Weights = append(in.Weights, s.moved...)
	}
	in.KeelAft, in.KeelFwd = c.particulars.KeelAft, c.particulars.KeelFwd
	in.BlockLimit = newtons(b.BlockLimit)
	given = map[string]field.Given{"mass": how(field.Computed, "from the drafts"), "lcg": how(field.Computed, "from the drafts"), "blocks": how(field.Documented, "dock record, under her flat keel"),
		"weights": how(field.Documented, "weight register, the rest laid on to meet the drafts"), "block_limit": how(field.Documented, "dock record"),
		"keel_aft": how(field.Documented, "particulars"), "keel_fwd": how(field.Documented, "particulars")}
	if i := c.particulars.GirderInertia; i != nil && len(in.Weights) > 0 {
		in.Hull = []docking.Stiff{{X0: *c.particulars.KeelAft, X1: *c.particulars.KeelFwd, EI: *i * steelModulus}}
		given["ei"] = how(field.Assumed, "midship section all along her, 206 GPa")
	}
	return in, given, ""
}

// newtons is the weight of a mass: a limit entered in t or t/m, as N or N/m.
func newtons(mass *float64) *float64 {
	if mass == nil {
		return nil
	}
	return new(*mass * calc.Gravity)
}

func (c *inquiry) blockRow(e dossier.Entry[plan.Dock], s *afloatState, knuckle *docking.LandingOut) BlockRow {
	b := e.Body
	row := BlockRow{Dock: e.ID, Name: b.Name, Verdict: "not known", Blocks: []BlockBar{}}
	row.Aft, row.Fwd = unknown("aft", "line load at the after end", ""), unknown("fwd", "line load at the fore end", "")
	row.Limit, row.Peak = unknown("limit", "the block line may carry", "not entered"), unknown("peak", "largest load on one block", "")
	row.Line, row.Used = unknown("line", "largest load on the block line", ""), unknown("used", "part of the nearest limit", "")
	in, given, why := c.blocksInput(b, s)
	if why != "" {
		row.Reason = why
		return row
	}
	if knuckle != nil && knuckle.Upthrust > 0 {
		in.Knuckle, in.KnuckleEnd = new(knuckle.Upthrust), "aft"
		if knuckle.ContactUsed > *c.particulars.LBP/2 {
			in.KnuckleEnd = "fwd"
		}
	}
	sheet, out, err := work(c.book, docking.Blocks, s.key(e.ID), s.words(b.Name), in, given)
	if err != nil {
		row.Reason = err.Error()
		return row
	}
	row.fill(b, sheet, out)
	return row
}

func (row *BlockRow) fill(b plan.Dock, sheet calc.Sheet, out docking.BlocksOut) {
	row.Verdict, row.Reason, row.Change = string(out.Verdict), out.Reason, out.Change
	ends := func(key, label string, v float64) Figure {
		f := known(key, label, v, "t/m", field.Computed, "trapezoid")
		f.Sheet = sheet.ID
		if b.LineLimit != nil && v > *b.LineLimit {
			f.Worry, f.Note = 3, "over what the line may carry"
		}
		return f
	}
	row.Aft, row.Fwd = ends("aft", "line load at the after end", out.Trapezoid.Aft), ends("fwd", "line load at the fore end", out.Trapezoid.Fwd)
	if b.LineLimit != nil {
		row.Limit = known("limit", "the block line may carry", *b.LineLimit, "t/m", field.Documented, "dock record").of("dock", row.Dock)
	}
	if out.Peak != nil {
		row.Peak = result(sheet, "peak", "largest load on one block")
	}
	if out.LineLoad != nil {
		row.Line = known("line", "largest load on the block line", *out.LineLoad/calc.Gravity, "t/m", field.Computed, "hull bending, blocks giving")
		row.Line.Sheet = sheet.ID
	}
	row.line(b)
	if out.Used != nil {
		row.Used = known("used", "part of the nearest limit", *out.Used, "%", field.Computed, "")
		row.Used.Sheet = sheet.ID
		if *out.Used > 1 {
			row.Used.Worry = 3
		} else if *out.Used > 0.9 {
			row.Used.Worry = 1
		}
	}
	for _, l := range out.Loads {
		row.Blocks = append(row.Blocks, BlockBar{l.Number, round(l.X), math.Round(l.Force / 1000), math.Round(l.Line/calc.Gravity/100) / 10, l.State})
	}
}

// line compares the block line with its limit. A limit in t/m is compared with the trapezoid, as it is meant by common practice; what a bending ship puts on
// the last blocks is more and is said beside it.
func (row *BlockRow) line(b plan.Dock) {
	if b.LineLimit == nil {
		return
	}
	if worst := max(*row.Aft.Value, *row.Fwd.Value); row.Aft.Worry == 3 || row.Fwd.Worry == 3 {
		row.Verdict = "unsafe"
		row.Reason = fmt.Sprintf("UNSAFE: over the line load of the dock: %.1f t/m by the trapezoid, %s allowed. Block by block, the hull bending: %s.", worst, row.Limit.Text, inside(row.Reason))
		row.Change = "What would change it: ballast moved towards the other end, weight off, or a longer line. " + row.Change
		return
	}
	row.Reason = fmt.Sprintf("%.1f t/m by the trapezoid at the heavier end of the line, %s allowed. Block by block, the hull bending: %s.", max(*row.Aft.Value, *row.Fwd.Value), row.Limit.Text, inside(row.Reason))
	if row.Line.Value != nil && *row.Line.Value > *row.Limit.Value {
		row.Line.Worry, row.Line.Note = 2, "more than the line limit over the last block: ask over what length the limit is meant, or set softer caps at the ends"
		row.Reason = strings.TrimSuffix(row.Reason, ".") + fmt.Sprintf("; but on the line there the heaviest block makes %s: ask over what length the %s are meant.", row.Line.Text, row.Limit.Text)
		if row.Verdict == "safe" {
			row.Verdict = "marginal"
		}
	}
}

// massAndCentre is her mass, kg, and its centre, m, by the drafts: centre of gravity and of buoyancy lie in one plumb line.
func (c *inquiry) massAndCentre(s *afloatState) (mass, lcg float64) {
	n := s.q.Cut.Plane.Normal
	kg := s.q.KB
	if s.kg != nil {
		kg = *s.kg
	}
	return s.q.Mass, s.q.LCB + (kg-s.q.KB)*n.X/n.Z
}
