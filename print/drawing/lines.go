package drawing

import (
	"math"

	"oakum/assess"
	"oakum/print/page"
)

func points(of []assess.XY) []page.XY {
	list := make([]page.XY, len(of))
	for i, p := range of {
		list[i] = page.XY(p)
	}
	return list
}

func mirrored(of []assess.XY) []page.XY {
	list := points(of)
	for i := range list {
		list[i][1] = -list[i][1]
	}
	return list
}

func closed(of []page.XY) []page.XY {
	if len(of) == 0 {
		return of
	}
	return append(of[:len(of):len(of)], of[0])
}

// span is the lowest and the highest of one coordinate.
func span(axis int, lists ...[]assess.XY) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, list := range lists {
		for _, p := range list {
			low, high = min(low, p[axis]), max(high, p[axis])
		}
	}
	return low, high
}

// scale writes the frames along a height, where their numbers stand clear.
func scale(c *page.Canvas, dr *assess.Drawing, at float64) {
	for _, f := range dr.Frames {
		p := page.XY{f.X, at}
		if c.TextIfClear(p, 0, -3.4, f.Label, page.Small-1, page.Middle) {
			c.Tick(p, 1)
		}
	}
}
