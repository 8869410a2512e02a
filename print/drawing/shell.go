package drawing

import (
	"oakum/assess"
	"oakum/print/page"
)

// Cell is a stretch of a strake of which something is known.
type Cell struct {
	Strake string
	From   float64 // along the ship, m
	To     float64
	Fill   page.Pattern
}

// Shell draws one side rolled out, keel at the foot. What no cell covers carries the pattern of what nobody has looked at.
func Shell(d *page.Document, dr *assess.Drawing, cells []Cell) {
	x0, x1 := span(0, dr.Shell.Edge)
	_, g1 := span(1, dr.Shell.Edge)
	margin := (x1 - x0) / 40
	const height, scaleRoom = 80.0, 7.0
	foot := g1 * scaleRoom / (height - scaleRoom)
	d.Area(height, x0-margin, x1+margin, -foot, g1+0.2, false, func(c *page.Canvas) {
		for _, s := range dr.Strakes {
			c.Fill(stretch(s, x0, x1), page.Unknown, 0)
		}
		for _, cell := range cells {
			for _, s := range dr.Strakes {
				if s.Name == cell.Strake {
					shape := stretch(s, cell.From, cell.To)
					c.Paper(shape)
					c.Fill(shape, cell.Fill, page.Faint)
				}
			}
		}
		for _, s := range dr.Strakes {
			c.Strokes(points(s.Lower), page.Faint, false)
			c.Strokes(points(s.Upper), page.Faint, false)
			if n := len(s.Lower); n > 0 {
				k := n / 2
				mid := page.XY{x0, (s.Lower[k][1] + s.Upper[k][1]) / 2}
				c.Text(mid, -3, -1, s.Name, page.Small, page.Bold, page.Middle)
			}
		}
		c.Strokes(points(dr.Shell.Edge), page.Heavy, false)
		c.Strokes([]page.XY{{x0, 0}, {x1, 0}}, page.Heavy, false)
		scale(c, dr, 0)
	})
	d.Space(1)
}

// stretch is the part of a strake between two places.
func stretch(s assess.DrawnStrake, from, to float64) []page.XY {
	var shape []page.XY
	lower, upper := cut(s.Lower, from, to), cut(s.Upper, from, to)
	shape = append(shape, lower...)
	for i := len(upper) - 1; i >= 0; i-- {
		shape = append(shape, upper[i])
	}
	return shape
}

// cut is the part of a line between two values of x.
func cut(line []assess.XY, from, to float64) []page.XY {
	var part []page.XY
	for i, p := range line {
		if i > 0 {
			q := line[i-1]
			for _, x := range []float64{from, to} {
				if q[0] < x && x < p[0] {
					t := (x - q[0]) / (p[0] - q[0])
					part = append(part, page.XY{x, q[1] + t*(p[1]-q[1])})
				}
			}
		}
		if from <= p[0] && p[0] <= to {
			part = append(part, page.XY(p))
		}
	}
	return part
}
