package docking

import (
	"fmt"
	"math"
	"strings"
	"time"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/tide"
	"oakum/source"
)

// FitShip is the ship as she comes to the dock.
type FitShip struct {
	Length     float64  `key:"length" unit:"m" symbol:"L" over:"0" max:"500" label:"length over all"`
	Beam       float64  `key:"beam" unit:"m" symbol:"B" over:"0" max:"100" label:"greatest beam, guards and belting included"`
	DraftFwd   float64  `key:"draft_fwd" unit:"m" symbol:"Tf" min:"0" max:"40" label:"draft forward"`
	DraftAft   float64  `key:"draft_aft" unit:"m" symbol:"Ta" min:"0" max:"40" label:"draft aft"`
	List       float64  `key:"list" unit:"deg" symbol:"phi" default:"0" min:"-30" max:"30" label:"list"`
	Appendage  float64  `key:"appendage_below" unit:"m" symbol:"ap" default:"0" min:"0" max:"10" label:"lowest part below the keel"`
	AirDraft   *float64 `key:"air_draft" unit:"m" symbol:"ad" over:"0" max:"120" label:"height above water"`
	Mass       *float64 `key:"displacement" unit:"t" symbol:"W" over:"0" max:"600000" label:"displacement"`
	KeelLength *float64 `key:"keel_length" unit:"m" symbol:"Lk" over:"0" max:"500" label:"length of keel that stands on blocks"`
}

// FitDock is the dock. Depths are below the datum that the tide is counted from.
type FitDock struct {
	Length    *float64 `key:"length" unit:"m" symbol:"L" over:"0" max:"1000" label:"usable length"`
	Entrance  *float64 `key:"entrance_width" unit:"m" symbol:"B" over:"0" max:"200" label:"width of the entrance"`
	Width     *float64 `key:"width" unit:"m" symbol:"Bi" over:"0" max:"200" label:"width inside, at the height of her bilge"`
	Sill      *float64 `key:"sill_depth" unit:"m" symbol:"ds" min:"-10" max:"40" label:"sill below datum"`
	Floor     *float64 `key:"floor_depth" unit:"m" symbol:"df" min:"-10" max:"40" label:"floor below datum"`
	Blocks    *float64 `key:"block_height" unit:"m" symbol:"hb" min:"0" max:"10" label:"height of the blocks"`
	Lift      *float64 `key:"lift_capacity" unit:"t" symbol:"Wl" over:"0" max:"200000" label:"lifting capacity" help:"of a lift or a floating dock"`
	LineLimit *float64 `key:"block_line_limit" unit:"t/m" symbol:"wl" over:"0" max:"1000" label:"load that the block line may carry"`
	AirLimit  *float64 `key:"air_limit" unit:"m" symbol:"al" over:"0" max:"200" label:"lowest cable or bridge on the way, above datum"`
}

// FitIn is a ship, a dock and the tide between them. The clearances are the lower ones for new docks; old docks are tighter and the dockmaster says by how much.
type FitIn struct {
	Ship           FitShip     `key:"ship" symbol:"ship" label:"ship"`
	Dock           FitDock     `key:"dock" symbol:"dock" label:"dock"`
	OverSill       float64     `key:"clearance" unit:"m" symbol:"cs" default:"0.3" min:"0" max:"10" label:"clearance over the sill" help:"common practice"`
	OverBlocks     float64     `key:"clearance_blocks" unit:"m" symbol:"cb" default:"0.6" min:"0" max:"10" label:"clearance over the blocks"`
	HeadEnd        float64     `key:"clearance_head" unit:"m" symbol:"ch" default:"1.5" min:"0" max:"100" label:"clearance at the head end" help:"1.5 to 3.0 in new docks"`
	OutboardEnd    float64     `key:"clearance_outboard" unit:"m" symbol:"co" default:"4.6" min:"0" max:"100" label:"clearance at the outboard end" help:"4.6 to 12.2 in new docks"`
	EachSide       float64     `key:"clearance_side" unit:"m" symbol:"cw" default:"3.0" min:"0" max:"50" label:"clearance on each side" help:"3.0 to 4.6 in new docks; old ones are tighter"`
	OverFloor      float64     `key:"clearance_appendage" unit:"m" symbol:"ca" default:"0.3" min:"0" max:"10" label:"clearance of the lowest part over the floor" help:"common practice"`
	Overhead       float64     `key:"clearance_overhead" unit:"m" symbol:"cv" default:"1.0" min:"0" max:"50" label:"clearance under cables and bridges" help:"from memory: a power line wants far more, its owner says how much"`
	WaterLevel     *float64    `key:"water_level" unit:"m" symbol:"z" min:"-20" max:"20" label:"height of the water over datum"`
	Tide           *tide.Place `key:"tide" symbol:"td" label:"tide"`
	Start          string      `key:"start" optional:"yes" label:"dates asked, from" help:"2031-05-14T00:00:00Z"`
	End            string      `key:"end" optional:"yes" label:"to"`
	ShortestWindow float64     `key:"shortest_window" unit:"min" symbol:"tw" default:"30" min:"0" max:"720" label:"shortest time of use" help:"common practice"`
}

// Clearance is one clearance with its limit.
type Clearance struct {
	Name  string   `key:"name" label:"clearance"`
	Value *float64 `key:"value" unit:"m" label:"there is"`
	Limit float64  `key:"limit" unit:"m" label:"wanted"`
	Tide  *float64 `key:"tide_needed" unit:"m" label:"height of tide it takes"`
	State string   `key:"state" enum:"enough|too little|needs tide|not known" label:"state"`
}

// FitWindow is a time with water enough.
type FitWindow struct {
	Start   string  `key:"start" label:"from"`
	End     string  `key:"end" label:"to"`
	Highest float64 `key:"highest" unit:"m" label:"highest water in it"`
}

// FitOut is whether she fits, and when.
type FitOut struct {
	Verdict     string      `key:"verdict" enum:"fits|fits at high water|does not fit|not known" label:"verdict"`
	Reason      string      `key:"reason" label:"why"`
	Change      string      `key:"change" label:"what would change it"`
	Fits        bool        `key:"fits" label:"fits, with the tide where one is needed"`
	Clearances  []Clearance `key:"clearances" label:"every clearance and its limit"`
	Deepest     float64     `key:"deepest" unit:"m" symbol:"D" label:"deepest point of the hull, list included" expr:"max(ship.Tf, ship.Ta)+ship.B/2*sin(abs(ship.phi))"`
	TideNeeded  *float64    `key:"tide_needed" unit:"m" symbol:"zn" label:"least height of tide"`
	TideHighest *float64    `key:"tide_highest" unit:"m" symbol:"zx" label:"greatest height of tide, for what hangs over the way"`
	LiftUsed    *float64    `key:"lift_used" unit:"%" symbol:"ul" label:"part of the lifting capacity used"`
	LineLoad    *float64    `key:"line_load" unit:"t/m" symbol:"w" label:"mean load on the block line"`
	LineUsed    *float64    `key:"line_used" unit:"%" symbol:"uw" label:"part of the block line limit used"`
	Windows     []FitWindow `key:"windows" label:"times with water enough"`

	Warnings calc.Warnings `key:"-"`
}

// Fit is whether a ship fits a dock, and at what height of tide.
//
// Over the sill: tide + sill depth must cover the deepest draft, half the beam times the sine of the list, what hangs below the keel, and the
// clearance. Over the blocks and the floor in the same way. Lengths and breadths against the clearances of UFC 4-213-10, section 3-2, which are those
// of new docks and editable. The block line by its mean only: docking.blocks has the peak.
var Fit = calc.Formula[FitIn, FitOut]{
	ID:       "docking.fit",
	Title:    "Does she fit the dock",
	About:    "Every clearance of a ship in a dock against its limit, the height of tide she needs over the sill and the times it is there.",
	Holds:    "Ship and dock as measured; still water. Wind set-down, swell at the entrance, squat and silt on the sill are not in it.",
	Accuracy: "As the drafts and the dock's drawings, 5 to 10 cm; predicted tide against the sea by some decimetres in ordinary weather.",
	Sources:  []source.Ref{{Key: "ufc-4-213-10", At: "section 3-2"}, {Key: "practice", At: "clearances over sill and floor"}, {Key: "memory", At: "clearance under cables"}, {Key: "schureman"}},
	Cautions: []calc.Caution{calc.Docking},
	Fn:       fit,
	Steps:    fitSteps,
	Samples:  200,
}

func fit(in FitIn) (out FitOut, err error) {
	s, d := in.Ship, in.Dock
	if d.Blocks != nil && d.Floor != nil && *d.Blocks > *d.Floor+15 {
		return out, field.Refuse("dock.block_height", "blocks of %v stand higher than any tide would cover over a floor %v below datum", field.Q("dock.block_height", *d.Blocks, "m"), field.Q("dock.floor_depth", *d.Floor, "m"))
	}
	if s.Beam > s.Length {
		return out, field.Refuse("ship.beam", "beam %v is more than length %v", field.Q("ship.beam", s.Beam, "m"), field.Q("ship.length", s.Length, "m"))
	}
	out.Deepest = max(s.DraftFwd, s.DraftAft) + s.Beam/2*math.Sin(math.Abs(s.List))
	out.spans(in)
	out.depths(in)
	out.loads(in)
	short, err := out.times(in)
	if err != nil {
		return out, err
	}
	out.judge(in, short)
	return out, nil
}

// spans compares lengths and breadths.
func (out *FitOut) spans(in FitIn) {
	s, d := in.Ship, in.Dock
	row := func(name string, there *float64, ship, limit float64, share float64) {
		c := Clearance{Name: name, Limit: limit, State: "not known"}
		if there != nil {
			c.Value = new((*there - ship) * share)
			c.State = "enough"
			if *c.Value < limit-1e-9 {
				c.State = "too little"
			}
		}
		out.Clearances = append(out.Clearances, c)
	}
	row("both ends together", d.Length, s.Length, in.HeadEnd+in.OutboardEnd, 1)
	row("each side in the entrance", d.Entrance, s.Beam, in.EachSide, 0.5)
	if d.Width != nil {
		row("each side inside", d.Width, s.Beam, in.EachSide, 0.5)
	}
}

// depths compares heights; what they leave over moves with the tide.
func (out *FitOut) depths(in FitIn) {
	s, d := in.Ship, in.Dock
	low := out.Deepest + s.Appendage
	if d.Sill != nil || d.Lift == nil { // a lift and a floating dock have no sill
		out.depth(in, "over the sill", d.Sill, low, in.OverSill)
	}
	if d.Floor != nil && d.Blocks != nil {
		out.depth(in, "over the blocks", new(*d.Floor-*d.Blocks), out.Deepest, in.OverBlocks)
	} else {
		out.depth(in, "over the blocks", nil, out.Deepest, in.OverBlocks)
	}
	if s.Appendage > 0 {
		out.depth(in, "lowest part over the floor", d.Floor, low, in.OverFloor)
	}
	if d.AirLimit == nil {
		return
	}
	c := Clearance{Name: "under cables and bridges", Limit: in.Overhead, State: "not known"}
	if s.AirDraft != nil {
		out.TideHighest = new(*d.AirLimit - *s.AirDraft - in.Overhead)
		c.Tide, c.State = out.TideHighest, "needs tide"
		if in.WaterLevel != nil {
			c.Value = new(*d.AirLimit - *in.WaterLevel - *s.AirDraft)
			c.State = state(*c.Value, c.Limit)
		}
	}
	out.Clearances = append(out.Clearances, c)
}

func state(value, limit float64) string {
	if value < limit-1e-9 {
		return "too little"
	}
	return "enough"
}

func (out *FitOut) depth(in FitIn, name string, below *float64, draws, limit float64) {
	c := Clearance{Name: name, Limit: limit, State: "not known"}
	if below != nil {
		c.Tide = new(draws + limit - *below)
		c.State = "needs tide"
		if out.TideNeeded == nil || *c.Tide > *out.TideNeeded {
			out.TideNeeded = c.Tide
		}
		if in.WaterLevel != nil {
			c.Value = new(*below + *in.WaterLevel - draws)
			c.State = state(*c.Value, limit)
		}
	}
	out.Clearances = append(out.Clearances, c)
}

// loads compares weights.
func (out *FitOut) loads(in FitIn) {
	s, d := in.Ship, in.Dock
	if s.Mass == nil {
		return
	}
	if d.Lift != nil {
		out.LiftUsed = new(*s.Mass / *d.Lift)
	}
	if s.KeelLength != nil {
		out.LineLoad = new(*s.Mass / *s.KeelLength)
		if d.LineLimit != nil {
			out.LineUsed = new(*out.LineLoad / *d.LineLimit)
		}
	}
}

// times lists the windows; short tells that the tide asked for never comes in the dates asked.
func (out *FitOut) times(in FitIn) (short bool, err error) {
	if in.Tide == nil || out.TideNeeded == nil {
		return false, nil
	}
	if in.Start == "" || in.End == "" {
		return false, field.Refuse("start", "start and end are wanted with a tide: the dates asked")
	}
	start, end, err := tide.Span(in.Start, in.End, 2)
	if err != nil {
		return false, err
	}
	curve, err := in.Tide.Curve("tide.", start, end)
	if err != nil {
		return false, err
	}
	highest := math.Inf(1)
	if out.TideHighest != nil {
		highest = *out.TideHighest
	}
	for _, w := range tide.Above(curve, *out.TideNeeded, highest, start, end) {
		if w.End.Sub(w.Start).Seconds() < in.ShortestWindow {
			continue
		}
		top := max(curve.Height(w.Start), curve.Height(w.End))
		for _, x := range curve.Extremes(w.Start, w.End) {
			top = max(top, x.Height)
		}
		stamp := func(t time.Time) string { return t.In(start.Location()).Round(time.Second).Format(time.RFC3339) }
		out.Windows = append(out.Windows, FitWindow{stamp(w.Start), stamp(w.End), top})
	}
	out.Warnings = append(out.Warnings, "windows are by predicted tide: low air pressure or wind off the land can take decimetres away; check the gauge on the day")
	return len(out.Windows) == 0, nil
}

func (out *FitOut) judge(in FitIn, short bool) {
	var wrong, unknown, ways []string
	for _, c := range out.Clearances {
		switch c.State {
		case "too little":
			wrong = append(wrong, fmt.Sprintf("%s %.2f m of %.2f m", c.Name, *c.Value, c.Limit))
		case "not known":
			unknown = append(unknown, c.Name)
		}
	}
	over := func(what string, used *float64) {
		if used != nil && *used > 1 {
			wrong = append(wrong, fmt.Sprintf("%s %.0f %% of what it may be", what, *used*100))
			ways = append(ways, "weight off")
		}
	}
	over("lift", out.LiftUsed)
	over("block line, mean", out.LineUsed)
	if short {
		wrong = append(wrong, fmt.Sprintf("the tide never stands at %.2f m long enough in these dates", *out.TideNeeded))
		ways = append(ways, "other dates", "less draft or trim", "lower blocks")
	}
	if len(wrong) > 0 {
		ways = append(ways, "the dockmaster's own limits: those here, unless you set them, are for new docks")
	}
	switch {
	case len(wrong) > 0:
		out.Verdict, out.Reason = "does not fit", "DOES NOT FIT: "+strings.Join(wrong, "; ")
		out.Change = "What would change it: " + strings.Join(ways, ", ") + "."
	case len(unknown) > 0:
		out.Verdict, out.Reason = "not known", "NOT KNOWN: "+strings.Join(unknown, ", ")
		out.Change = "Give what is not known: " + strings.Join(unknown, ", ") + "."
	case out.TideNeeded != nil && in.WaterLevel == nil:
		out.Verdict, out.Fits = "fits at high water", true
		out.Reason = fmt.Sprintf("she fits when the tide stands at %.2f m or more", *out.TideNeeded)
		out.Change = "A decimetre more draft or a degree of list takes away as much water as it adds depth."
	default:
		out.Verdict, out.Fits, out.Reason = "fits", true, "every clearance is enough at this height of water"
		out.Change = "More draft, list or trim, or a lower water, would change it."
	}
	if !out.Fits {
		out.Warnings = append([]string{out.Reason}, out.Warnings...)
	}
	if out.LineUsed != nil {
		out.Warnings = append(out.Warnings, "the block line is compared by its mean; its peak is higher: see docking.blocks")
	}
}

func fitSteps(in FitIn, out FitOut) []calc.Step {
	var steps []calc.Step
	var terms []string
	add := func(symbol, formula string, value float64, text string) {
		steps = append(steps, calc.Step{Symbol: symbol, Formula: formula, Value: value, Unit: "m", Text: text})
		terms = append(terms, symbol)
	}
	for _, c := range out.Clearances {
		switch {
		case c.Tide == nil:
		case c.Name == "over the sill":
			add("z1", "D+ship.ap+cs-dock.ds", *c.Tide, "tide needed over the sill")
		case c.Name == "over the blocks":
			add("z2", "D+cb-(dock.df-dock.hb)", *c.Tide, "tide needed over the blocks")
		case c.Name == "lowest part over the floor":
			add("z3", "D+ship.ap+ca-dock.df", *c.Tide, "tide needed over the floor")
		}
	}
	if out.TideNeeded != nil {
		formula := terms[0]
		if len(terms) > 1 {
			formula = "max(" + strings.Join(terms, ", ") + ")"
		}
		steps = append(steps, calc.Step{Symbol: "zn", Formula: formula, Value: *out.TideNeeded, Unit: "m", Text: "least height of tide"})
	}
	if out.TideHighest != nil {
		steps = append(steps, calc.Step{Symbol: "zx", Formula: "dock.al-ship.ad-cv", Value: *out.TideHighest, Unit: "m", Text: "greatest height of tide under cables and bridges"})
	}
	share := func(symbol, formula string, value *float64, unit, text string) {
		if value != nil {
			steps = append(steps, calc.Step{Symbol: symbol, Formula: formula, Value: *value, Unit: unit, Text: text})
		}
	}
	share("ul", "ship.W/dock.Wl", out.LiftUsed, "-", "part of the lifting capacity")
	share("w", "ship.W/ship.Lk", out.LineLoad, "kg/m", "mean load on the block line")
	share("uw", "w/dock.wl", out.LineUsed, "-", "part of the block line limit")
	return steps
}
