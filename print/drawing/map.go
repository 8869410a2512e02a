package drawing

import (
	"fmt"
	"math"
	"slices"

	"oakum/assess"
	"oakum/print/page"
)

// lostFills are the patterns of so much of the original gone: a tenth, a fifth, a quarter.
var lostFills = []struct {
	from float64
	fill page.Pattern
}{{0.25, page.Solid}, {0.2, page.Hatch}, {0.1, page.Dots}, {math.Inf(-1), page.Blank}}

// Map draws one side of the map of the shell, keel at the foot: what is gone by pattern, what is unknown by its reason, and the next places by number.
func Map(d *page.Document, dr *assess.Drawing, m *assess.ShellMap, starboard bool) {
	x0, x1 := span(0, dr.Shell.Edge)
	_, g1 := span(1, dr.Shell.Edge)
	margin := (x1 - x0) / 40
	const height, scaleRoom = 48.0, 7.0
	foot := g1 * scaleRoom / (height - scaleRoom)
	d.Area(height, x0-margin, x1+margin, -foot, g1+0.2, false, func(c *page.Canvas) {
		for _, k := range m.Cells {
			if k.Girth < 0 == starboard {
				c.Fill(square(k.X, math.Abs(k.Girth), m.CellX, m.CellG), cellFill(k), 0)
			}
		}
		for _, s := range slices.Backward(dr.Strakes) { // from the rail down: where the names crowd, it is the keel's that goes without saying
			c.Strokes(points(s.Upper), page.Faint, false)
			if n := len(s.Lower); n > 0 {
				k := n / 2
				c.TextIfClear(page.XY{x0, (s.Lower[k][1] + s.Upper[k][1]) / 2}, -3, -1, s.Name, page.Small, page.Middle)
			}
		}
		c.Strokes(points(dr.Shell.Edge), page.Heavy, false)
		c.Strokes([]page.XY{{x0, 0}, {x1, 0}}, page.Heavy, false)
		for _, n := range m.Next {
			if n.Girth < 0 == starboard {
				c.Numbered(page.XY{n.X, math.Abs(n.Girth)}, fmt.Sprint(n.Number), false)
			}
		}
		scale(c, dr, 0)
	})
	d.Space(1)
}

// cellFill is the pattern of a cell: how much is gone, or why nothing can be said.
func cellFill(k assess.ShellCell) page.Pattern {
	switch k.State {
	case "read":
		return lostFill(k.Lost)
	case "covered":
		return page.Covered
	case "bare":
		return page.Unjudged
	}
	return page.Unknown
}

func lostFill(lost float64) page.Pattern {
	for _, f := range lostFills {
		if lost >= f.from {
			return f.fill
		}
	}
	return page.Blank
}

func square(x, g, w, h float64) []page.XY {
	return []page.XY{{x - w/2, max(g-h/2, 0)}, {x + w/2, max(g-h/2, 0)}, {x + w/2, g + h/2}, {x - w/2, g + h/2}}
}
