package drawing

import (
	"oakum/assess"
	"oakum/print/page"
)

// Stand is what a docking draws round her: keel blocks, water, marks and low parts. Lengths in m.
type Stand struct {
	Blocks   []float64 // middles of the keel blocks
	Fwd, Aft *float64  // drafts at the perpendiculars
	Marks    []float64 // where draft marks stand
	Low      []Low
}

// Low is the lowest point of a part that hangs under or beside the keel.
type Low struct {
	X, Z float64
	Name string
}

// blockDrawn is how high a keel block is drawn, m.
const blockDrawn = 1.2

// OnBlocks draws her from the side over her keel blocks, bow to the right.
func OnBlocks(d *page.Document, dr *assess.Drawing, s Stand) {
	x0, x1 := span(0, dr.Profile.Outline, dr.Profile.Deck)
	z0, z1 := span(1, dr.Profile.Outline, dr.Profile.Deck)
	z0 = min(z0, -blockDrawn)
	margin := (x1 - x0) / 60
	foot := 7.0 * (x1 - x0) / d.Width() // room for the frame numbers
	d.Area(75, x0-margin, x1+margin, z0-foot, z1+margin, true, func(c *page.Canvas) {
		for _, w := range dr.Spaces {
			c.Strokes(closed([]page.XY{{w.X[0], w.Z[0]}, {w.X[1], w.Z[0]}, {w.X[1], w.Z[1]}, {w.X[0], w.Z[1]}}), page.Faint, true)
		}
		c.Strokes(closed(points(dr.Profile.Outline)), page.Heavy, false)
		c.Strokes(points(dr.Profile.Deck), page.Line, false)
		half := 0.45
		for _, x := range s.Blocks {
			c.Strokes(closed([]page.XY{{x - half, -blockDrawn}, {x + half, -blockDrawn}, {x + half, 0}, {x - half, 0}}), page.Line, false)
		}
		if s.Fwd != nil && s.Aft != nil && dr.Particulars.Length > 0 {
			at := func(x float64) float64 { return *s.Aft + (*s.Fwd-*s.Aft)*x/dr.Particulars.Length }
			c.Strokes([]page.XY{{x0 - margin, at(x0 - margin)}, {x1 + margin, at(x1 + margin)}}, page.Line, true)
		}
		for _, l := range s.Low {
			c.Strokes([]page.XY{{l.X - 0.8, l.Z}, {l.X + 0.8, l.Z}}, page.Heavy, false)
		}
		for _, x := range s.Marks {
			c.Strokes([]page.XY{{x, 0}, {x, z1 * 0.75}}, page.Faint, false)
			c.TextIfClear(page.XY{x, z1 * 0.78}, 0, 0, "M", page.Small-1, page.Middle)
		}
		scale(c, dr, z0)
	})
	d.Space(1)
}
