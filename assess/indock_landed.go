package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/ship"
)

// LandedRow is one keel block where she landed on it.
type LandedRow struct {
	Block   int    `json:"block"` // from aft
	X       Figure `json:"x"`     // of its middle, from the after perpendicular
	Place   string `json:"place"`
	State   string `json:"state"`
	Covered string `json:"covered"` // what stands on it and can't be reached
}

// landed lays out the blocks as she stands on them, and says what of her bottom lies on a block and can't be seen, measured or painted this time.
func (c *inquiry) landed(p *InDockPage) {
	list := dossier.All[plan.Landing](c.d)
	if len(list) == 0 {
		if len(p.Log) > 0 {
			p.Missing = append(p.Missing, Notice{What: "Nobody has written down how she landed on the blocks.", Do: "Measure where the aftermost block stands and how far she is off the line: the next dock needs other places for its blocks.", Kind: "landing", Page: "indock", Worry: 1})
		}
		return
	}
	e := list[0]
	for _, one := range list[1:] {
		if one.Body.Date.Compare(e.Body.Date) > 0 {
			e = one
		}
	}
	b := e.Body
	for _, l := range []struct {
		key, label string
		x          *float64
	}{{"forward_of_plan", "landed forward of the plan", b.Forward}, {"to_port", "landed to port of the block line", b.ToPort}} {
		if l.x != nil {
			p.Landed = append(p.Landed, known(l.key, l.label, *l.x, "m", basisOf(e.Head, field.Measured), b.Measured).of("landing", e.ID))
		}
	}
	xs, length, why := c.blockPlaces(b)
	if why != "" {
		p.Missing = append(p.Missing, Notice{What: "The blocks can't be laid out: " + why + ".", Do: "Enter it.", Kind: "landing", ID: e.ID, Page: "indock", Worry: 1})
		return
	}
	for i, x := range xs {
		r := LandedRow{Block: i + 1, X: known("x", "middle of the block", x, "m", basisOf(e.Head, field.Measured), "as landed").of("landing", e.ID), Place: c.frameAt(x), State: "bears", Covered: c.onBlock(x, length)}
		if slices.Contains(b.Slack, i+1) {
			r.State, r.X.Worry = "bears nothing", 1
		}
		if slices.Contains(b.Crushed, i+1) {
			r.State, r.X.Worry = "cap crushed", 2
		}
		p.Blocks = append(p.Blocks, r)
	}
}

// blockPlaces are the middles of the blocks as she stands on them: measured, or those of the plan moved by how far off she landed.
func (c *inquiry) blockPlaces(b plan.Landing) (xs []float64, length float64, why string) {
	dock, ok := dossier.Find[plan.Dock](c.d, b.Dock)
	if !ok {
		return nil, 0, "no dock is named"
	}
	planned, why := c.plannedBlocks(dock.Body)
	if b.First == nil || b.Count == nil {
		if why != "" {
			return nil, 0, why
		}
		for _, one := range planned {
			xs = append(xs, one-orElse(b.Forward, 0))
		}
		return xs, *dock.Body.BlockLength, ""
	}
	spacing := b.Spacing
	if spacing == nil {
		spacing = dock.Body.BlockSpacing
	}
	if spacing == nil || dock.Body.BlockLength == nil {
		return nil, 0, "size and spacing of the blocks of " + dock.Body.Name + " are not entered"
	}
	for i := range *b.Count {
		xs = append(xs, *b.First+float64(i)**spacing)
	}
	return xs, *dock.Body.BlockLength, ""
}

// plannedBlocks are the middles of a dock's blocks under the flat part of her keel, spread evenly about its middle; why says what is missing.
func (c *inquiry) plannedBlocks(b plan.Dock) (xs []float64, why string) {
	pr := c.particulars
	switch {
	case pr.KeelAft == nil || pr.KeelFwd == nil || *pr.KeelFwd <= *pr.KeelAft:
		return nil, "where the flat keel begins and ends is not entered"
	case b.BlockSpacing == nil || b.BlockLength == nil:
		return nil, "size and spacing of the blocks of " + b.Name + " are not entered"
	}
	n := int((*pr.KeelFwd-*pr.KeelAft) / *b.BlockSpacing) + 1
	first := (*pr.KeelAft + *pr.KeelFwd - float64(n-1)**b.BlockSpacing) / 2
	for i := range n {
		xs = append(xs, first+float64(i)**b.BlockSpacing)
	}
	return xs, ""
}

// frameAt names the frame nearest to x.
func (c *inquiry) frameAt(x float64) string {
	l := c.locator()
	if l.Frames == nil {
		return ""
	}
	best, off := "", math.Inf(1)
	for n := range 1000 {
		at, err := l.Frames.X(frameName(n), nil)
		if err != nil {
			continue
		}
		if d := math.Abs(at - x); d < off {
			best, off = frameName(n), d
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf("near frame %s", best)
}

// onBlock names openings and doublers of the keel and the garboard strakes that lie over a block.
func (c *inquiry) onBlock(x, length float64) string {
	var names []string
	l := c.locator()
	look := func(place ship.Place, name string) {
		if !strings.EqualFold(place.Strake, "K") {
			return
		}
		low, high, ok := alongShip(l.Locate(place))
		if ok && low <= x+length/2 && high >= x-length/2 {
			names = append(names, name)
		}
	}
	for _, e := range dossier.All[ship.Opening](c.d) {
		look(e.Body.Place, dossier.RecordOf(e).Label())
	}
	for _, e := range dossier.All[ship.Doubler](c.d) {
		look(e.Body.Place, dossier.RecordOf(e).Label())
	}
	return strings.Join(names, "; ")
}
