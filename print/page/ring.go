package page

import "math"

// box is a part of the page that something stands in: left, top, right, foot, mm.
type box [4]float64

// take claims a box unless something stands there.
func (c *Canvas) take(b box) bool {
	for _, o := range c.taken {
		if b[0] < o[2] && o[0] < b[2] && b[1] < o[3] && o[1] < b[3] {
			return false
		}
	}
	c.taken = append(c.taken, b)
	return true
}

// ring is the radius of a numbered ring, mm.
const ring = 2.0

// Numbered draws a ring with a number at a point, black where it is urgent. Where the point is taken the ring moves aside, with a line to where it
// belongs.
func (c *Canvas) Numbered(p XY, n string, urgent bool) {
	x, y := c.at(p)
	cx, cy := c.free(x, y)
	pdf := c.d.pdf
	pdf.SetLineWidth(hair)
	if cx != x || cy != y {
		away := math.Hypot(cx-x, cy-y)
		pdf.Line(x, y, cx-(cx-x)*ring/away, cy-(cy-y)*ring/away)
		pdf.Circle(x, y, 0.4, "F")
	}
	pdf.SetLineWidth(thin)
	pdf.SetFillColor(255, 255, 255)
	if urgent {
		pdf.SetFillColor(0, 0, 0)
		pdf.SetTextColor(255, 255, 255)
	}
	pdf.Circle(cx, cy, ring, "FD")
	c.d.set(Bold, 7.5)
	pdf.Text(cx-pdf.GetStringWidth(n)/2, cy+0.95, n)
	pdf.SetTextColor(0, 0, 0)
	pdf.SetFillColor(0, 0, 0)
}

// free is the nearest place to a point that a ring may stand, within the window; the point itself where all are taken.
func (c *Canvas) free(x, y float64) (float64, float64) {
	for away := 0.0; away < 45; away += 1.5 {
		for k := range 16 {
			// straight up first, then by turns to both sides, so that the lines to the points cross little
			turn := float64((k+1)/2) * math.Pi / 8
			if k%2 == 1 {
				turn = -turn
			}
			cx, cy := x+away*math.Sin(turn), y-away*math.Cos(turn)
			inside := cx > c.x+ring && cx < c.x+c.w-ring && cy > c.y+ring && cy < c.y+c.h-ring
			if inside && c.take(box{cx - ring - 0.2, cy - ring - 0.2, cx + ring + 0.2, cy + ring + 0.2}) {
				return cx, cy
			}
			if away == 0 {
				break
			}
		}
	}
	return x, y
}
