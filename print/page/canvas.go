package page

import (
	"math"

	"codeberg.org/go-pdf/fpdf"
)

// Weight is the stroke of a line.
type Weight float64

// The strokes, mm.
const (
	Heavy Weight = thick
	Line  Weight = thin
	Faint Weight = hair
)

// XY is a point in the units of a canvas: x to the right, y up.
type XY [2]float64

// Canvas is a window on the paper. What is drawn is given in the drawing's own units and clipped to the window.
type Canvas struct {
	d          *Document
	x, y, w, h float64 // of the window on the page, mm from the top left
	x0, y0     float64 // what stands at its lower left corner
	scaleX     float64 // mm a unit
	scaleY     float64
	taken      []box
}

// Area opens a window over the column's width, so many mm high, that shows x0 to x1 and y0 to y1. With even set both ways have one scale, and the
// window shrinks to what it shows.
func (d *Document) Area(height, x0, x1, y0, y1 float64, even bool, draw func(c *Canvas)) {
	if !(x1 > x0) || !(y1 > y0) {
		return
	}
	w := d.Width()
	if even {
		height = min(height, w*(y1-y0)/(x1-x0))
	}
	d.need(height)
	c := &Canvas{d: d, x: d.Left(), y: d.pdf.GetY(), w: w, h: height, x0: x0, y0: y0, scaleX: w / (x1 - x0), scaleY: height / (y1 - y0)}
	if even {
		s := min(c.scaleX, c.scaleY)
		c.x += (w - s*(x1-x0)) / 2
		c.w = s * (x1 - x0)
		c.scaleX, c.scaleY = s, s
	}
	draw(c)
	d.pdf.SetDashPattern(nil, 0)
	d.pdf.SetXY(d.Left(), c.y+height)
}

func (c *Canvas) at(p XY) (float64, float64) {
	return c.x + (p[0]-c.x0)*c.scaleX, c.y + c.h - (p[1]-c.y0)*c.scaleY
}

// Scale is how many mm of paper a unit along x takes.
func (c *Canvas) Scale() float64 { return c.scaleX }

// Strokes draws a line through points.
func (c *Canvas) Strokes(points []XY, weight Weight, dashed bool) {
	if len(points) < 2 {
		return
	}
	c.d.pdf.SetDrawColor(0, 0, 0)
	c.d.pdf.SetLineWidth(float64(weight))
	c.d.pdf.SetDashPattern(nil, 0)
	if dashed {
		c.d.pdf.SetDashPattern([]float64{1.5, 1}, 0)
	}
	for i, p := range points {
		x, y := c.at(p)
		if i == 0 {
			c.d.pdf.MoveTo(x, y)
		} else {
			c.d.pdf.LineTo(x, y)
		}
	}
	c.d.pdf.DrawPath("D")
	c.d.pdf.SetDashPattern(nil, 0)
}

// Anchor says which point of a text stands where it is put.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Text writes at a point, moved by dx, dy mm (up is positive).
func (c *Canvas) Text(p XY, dx, dy float64, text string, size float64, face Face, anchor Anchor) {
	c.d.set(face, size)
	x, y := c.at(p)
	text = clean(text)
	w := c.d.pdf.GetStringWidth(text)
	c.d.pdf.Text(x+dx-w*float64(anchor)/2, y-dy, text)
}

// TextIfClear writes unless it would run over another text written this way, and says whether it did.
func (c *Canvas) TextIfClear(p XY, dx, dy float64, text string, size float64, anchor Anchor) bool {
	c.d.set(Plain, size)
	x, y := c.at(p)
	w := c.d.pdf.GetStringWidth(clean(text))
	left := x + dx - w*float64(anchor)/2
	if !c.take(box{left - 0.6, y - dy - size*mm*0.8, left + w + 0.6, y - dy + size*mm*0.2}) {
		return false
	}
	c.d.pdf.SetFillColor(255, 255, 255)
	c.d.pdf.Rect(left-0.3, y-dy-size*mm*0.75, w+0.6, size*mm*0.95, "F")
	c.d.pdf.SetFillColor(0, 0, 0)
	c.Text(p, dx, dy, text, size, Plain, anchor)
	return true
}

// Fill fills a shape with a pattern and draws its edge.
func (c *Canvas) Fill(points []XY, p Pattern, edge Weight) {
	if len(points) < 3 {
		return
	}
	shape := make([]fpdf.PointType, len(points))
	left, top, right, foot := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i, q := range points {
		x, y := c.at(q)
		shape[i] = fpdf.PointType{X: x, Y: y}
		left, right, top, foot = min(left, x), max(right, x), min(top, y), max(foot, y)
	}
	c.d.pdf.ClipPolygon(shape, false)
	p.paint(c.d.pdf, left, top, right, foot)
	c.d.unclip()
	if edge > 0 {
		c.d.pdf.SetLineWidth(float64(edge))
		c.d.pdf.Polygon(shape, "D")
	}
}

// Tick draws a stroke down from a point, mm.
func (c *Canvas) Tick(p XY, long float64) {
	x, y := c.at(p)
	c.d.pdf.SetLineWidth(hair)
	c.d.pdf.Line(x, y, x, y+long)
}

// Wide is how wide a text is, mm.
func (c *Canvas) Wide(text string, size float64) float64 {
	c.d.set(Plain, size)
	return c.d.pdf.GetStringWidth(clean(text))
}

// unclip ends a clip. The clip takes its colours with it, which the writer does not know.
func (d *Document) unclip() {
	d.pdf.ClipEnd()
	d.pdf.SetFillColor(0, 0, 0)
	d.pdf.SetDrawColor(0, 0, 0)
	d.pdf.SetDashPattern(nil, 0)
}

// Paper wipes a shape clean.
func (c *Canvas) Paper(points []XY) {
	if len(points) < 3 {
		return
	}
	shape := make([]fpdf.PointType, len(points))
	for i, q := range points {
		x, y := c.at(q)
		shape[i] = fpdf.PointType{X: x, Y: y}
	}
	c.d.pdf.SetFillColor(255, 255, 255)
	c.d.pdf.Polygon(shape, "F")
	c.d.pdf.SetFillColor(0, 0, 0)
}
