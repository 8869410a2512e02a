package drawing

import (
	"fmt"

	"oakum/assess"
	"oakum/print/page"
)

// Place is a mark with the number it carries on the drawing and in the list beside it.
type Place struct {
	Number int
	Mark   assess.Mark
}

// Profile draws her from the side, bow to the right, with her spaces and the places numbered.
func Profile(d *page.Document, dr *assess.Drawing, places []Place) {
	x0, x1 := span(0, dr.Profile.Outline, dr.Profile.Deck)
	z0, z1 := span(1, dr.Profile.Outline, dr.Profile.Deck)
	margin := (x1 - x0) / 60
	foot := 7.0 * (x1 - x0) / d.Width() // room for the frame numbers
	above := 0.0
	if len(places) > 0 {
		above = 14 * (x1 - x0) / d.Width() // room for the rings that don't fit inside her
	}
	d.Area(75, x0-margin, x1+margin, z0-foot, z1+margin+above, true, func(c *page.Canvas) {
		for _, s := range dr.Spaces {
			box := []page.XY{{s.X[0], s.Z[0]}, {s.X[1], s.Z[0]}, {s.X[1], s.Z[1]}, {s.X[0], s.Z[1]}}
			c.Strokes(closed(box), page.Faint, true)
		}
		c.Strokes(closed(points(dr.Profile.Outline)), page.Heavy, false)
		c.Strokes(points(dr.Profile.Deck), page.Line, false)
		for _, line := range underDeck(dr) {
			c.Strokes(points(line), page.Line, false)
		}
		c.Strokes(water(dr, x0-margin, x1+margin), page.Line, true)
		scale(c, dr, z0)
		for _, s := range dr.Spaces {
			mid := page.XY{(s.X[0] + s.X[1]) / 2, (s.Z[0] + s.Z[1]) / 2}
			if c.Wide(s.Name, page.Small-1) < (s.X[1]-s.X[0])*c.Scale() {
				c.TextIfClear(mid, 0, 0, s.Name, page.Small-1, page.Middle)
			}
		}
		for _, p := range places {
			if p.Mark.Z != nil {
				c.Numbered(page.XY{p.Mark.X, *p.Mark.Z}, fmt.Sprint(p.Number), p.Mark.Worry >= 2)
			}
		}
	})
	d.Space(1)
}

// underDeck are her shafts, screws and rudder, and what else is not above the deck: masts and funnel would make the drawing three times as high.
func underDeck(dr *assess.Drawing) [][]assess.XY {
	var lines [][]assess.XY
	for _, g := range dr.Gear {
		for _, line := range g.Profile {
			if _, high := span(1, line); high <= dr.Particulars.Depth {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// water is the line at which she floats: as the newest marks tell, or at the design draft where nobody has read them.
func water(dr *assess.Drawing, from, to float64) []page.XY {
	if w := dr.Water; w != nil {
		at := func(x float64) page.XY { return page.XY{x, w.Aft + (w.Fore-w.Aft)*x/dr.Particulars.Length} }
		return []page.XY{at(from), at(to)}
	}
	if t := dr.Particulars.Draft; t != nil {
		return []page.XY{{from, *t}, {to, *t}}
	}
	return nil
}

// Plan draws her from above, bow to the right and port up.
func Plan(d *page.Document, dr *assess.Drawing, places []Place) {
	x0, x1 := span(0, dr.Plan.Outline)
	_, y1 := span(1, dr.Plan.Outline)
	margin := (x1 - x0) / 60
	foot := 9.0 * (x1 - x0) / d.Width()
	d.Area(60, x0-margin, x1+margin, -y1-foot, y1+margin, true, func(c *page.Canvas) {
		c.Strokes([]page.XY{{x0, 0}, {x1, 0}}, page.Faint, true)
		for _, w := range dr.Plan.Waterlines {
			c.Strokes(points(w.Points), page.Faint, false)
			c.Strokes(mirrored(w.Points), page.Faint, false)
		}
		c.Strokes(points(dr.Plan.Outline), page.Heavy, false)
		c.Strokes(mirrored(dr.Plan.Outline), page.Heavy, false)
		scale(c, dr, -y1)
		for _, p := range places {
			if p.Mark.Y != nil {
				c.Numbered(page.XY{p.Mark.X, *p.Mark.Y}, fmt.Sprint(p.Number), p.Mark.Worry >= 2)
			}
		}
	})
	d.Space(1)
}
