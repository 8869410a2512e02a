package page

import (
	"math"
	"strconv"
)

// Chart is one set of axes. Its lines are told apart by stroke and by the word at their end, never by colour.
type Chart struct {
	X, Y   string // what runs along, with the unit
	Height float64
	Series []Series
	Limits []Limit // level lines with a word
	Band   *Band
	FromY0 bool // the axis of y begins at zero
	Years  bool // x is a calendar year: no thousands, whole steps
}

// Series is a line, or dots.
type Series struct {
	Name   string
	Points []XY
	Dots   bool
	Dashed bool
}

// Limit is a level that matters.
type Limit struct {
	At   float64
	Name string
}

// Band is what eight of ten lie in: hatched, between two lines of the same x.
type Band struct{ Low, High []XY }

// Chart draws a chart; nothing where there is nothing to draw.
func (d *Document) Chart(ch Chart) {
	x0, x1, y0, y1 := ch.bounds()
	if !(x1 > x0) || !(y1 > y0) {
		return
	}
	height := ch.Height
	if height == 0 {
		height = 60
	}
	const left, foot, right, top = 16.0, 11.0, 4.0, 3.0
	ux := (x1 - x0) / (d.Width() - left - right)
	uy := (y1 - y0) / (height - foot - top)
	d.Area(height, x0-left*ux, x1+right*ux, y0-foot*uy, y1+top*uy, false, func(c *Canvas) {
		if ch.Band != nil {
			c.Fill(append(append([]XY{}, ch.Band.Low...), backwards(ch.Band.High)...), Hatch, Faint)
		}
		ch.axes(c, x0, x1, y0, y1)
		for _, l := range ch.Limits {
			c.Strokes([]XY{{x0, l.At}, {x1, l.At}}, Line, true)
			c.TextIfClear(XY{x0, l.At}, 1.5, 0.8, l.Name, Small, Start)
		}
		for _, s := range ch.Series {
			if s.Dots {
				for _, p := range s.Points {
					c.dot(p)
				}
				continue
			}
			c.Strokes(s.Points, Heavy, s.Dashed)
			if n := len(s.Points); n > 0 && s.Name != "" {
				c.TextIfClear(s.Points[n-1], -1, 1.2, s.Name, Small, End)
			}
		}
	})
	d.Space(2)
}

func (ch Chart) bounds() (x0, x1, y0, y1 float64) {
	x0, x1, y0, y1 = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	take := func(list []XY) {
		for _, p := range list {
			x0, x1, y0, y1 = min(x0, p[0]), max(x1, p[0]), min(y0, p[1]), max(y1, p[1])
		}
	}
	for _, s := range ch.Series {
		take(s.Points)
	}
	if ch.Band != nil {
		take(ch.Band.Low)
		take(ch.Band.High)
	}
	for _, l := range ch.Limits {
		y0, y1 = min(y0, l.At), max(y1, l.At)
	}
	if ch.FromY0 {
		y0 = min(y0, 0)
	}
	step := Step(y1-y0, 5)
	y0, y1 = math.Floor(y0/step)*step, math.Ceil(y1/step)*step
	return x0, x1, y0, y1
}

func (ch Chart) axes(c *Canvas, x0, x1, y0, y1 float64) {
	c.Strokes([]XY{{x0, y1}, {x0, y0}, {x1, y0}}, Line, false)
	stepY := Step(y1-y0, 5)
	for k := math.Ceil(y0/stepY - 1e-9); k*stepY <= y1+stepY*1e-9; k++ {
		y := k * stepY
		c.Strokes([]XY{{x0, y}, {x1, y}}, Faint, false)
		c.Text(XY{x0, y}, -1.5, -1, figure(y, stepY), Small, Plain, End)
	}
	stepX := Step(x1-x0, 8)
	if ch.Years {
		stepX = max(stepX, 1)
	}
	for k := math.Ceil(x0/stepX - 1e-9); k*stepX <= x1+stepX*1e-9; k++ {
		x := k * stepX
		c.Tick(XY{x, y0}, 1.2)
		c.Text(XY{x, y0}, 0, -4.6, figure(x, stepX), Small, Plain, Middle)
	}
	c.Text(XY{x1, y0}, 0, -9, ch.X, Small, Plain, End)
	c.TextIfClear(XY{x0, y1}, 1, 1, ch.Y, Small, Start)
}

// Step is a round interval that divides a span into about n parts: 1, 2 or 5 and a power of ten.
func Step(span float64, n int) float64 {
	if !(span > 0) {
		return 1
	}
	raw := span / float64(n)
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, m := range []float64{1, 2, 5} {
		if raw <= m*power*1.0001 {
			return m * power
		}
	}
	return 10 * power
}

// figure prints a number of an axis with the places that its step has.
func figure(x, step float64) string {
	places := 0
	if step < 1 {
		places = int(math.Ceil(-math.Log10(step) - 1e-9))
	}
	return strconv.FormatFloat(x+0, 'f', places, 64)
}

func backwards(list []XY) []XY {
	out := make([]XY, len(list))
	for i, p := range list {
		out[len(list)-1-i] = p
	}
	return out
}

func (c *Canvas) dot(p XY) {
	x, y := c.at(p)
	c.d.pdf.SetFillColor(0, 0, 0)
	c.d.pdf.Circle(x, y, 0.5, "F")
}
