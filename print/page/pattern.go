package page

import (
	"math"

	"codeberg.org/go-pdf/fpdf"
)

// Pattern is a fill that holds in black and white, photocopied twice.
type Pattern int

// The patterns: how bad, and not known. Each is told from the others by its shape, not its shade.
const (
	Blank    Pattern = iota // looked at, sound
	Dots                    // watch
	Hatch                   // act
	Solid                   // now
	Unknown                 // nobody has looked: broken lines the other way
	Covered                 // behind something: crosses
	Unjudged                // looked at or not, it can't be judged: level lines
)

// paint fills a box of the page; the caller has clipped it. The lines run through one lattice for the whole page, so that neighbours join.
func (p Pattern) paint(pdf *fpdf.Fpdf, left, top, right, foot float64) {
	pdf.SetDrawColor(0, 0, 0)
	pdf.SetFillColor(0, 0, 0)
	switch p {
	case Solid:
		pdf.Rect(left, top, right-left, foot-top, "F")
	case Dots:
		const step = 1.4
		for y := math.Floor(top/step) * step; y < foot+step; y += step {
			for x := math.Floor(left/step) * step; x < right+step; x += step {
				pdf.Circle(x, y, 0.22, "F")
			}
		}
	case Hatch:
		slanted(pdf, left, top, right, foot, 1.2, 1)
	case Unknown:
		pdf.SetDashPattern([]float64{0.7, 0.9}, 0)
		slanted(pdf, left, top, right, foot, 1.8, -1)
		pdf.SetDashPattern(nil, 0)
	case Covered:
		pdf.SetLineWidth(0.2)
		const step, arm = 2.0, 0.55
		for y := math.Floor(top/step) * step; y < foot+step; y += step {
			for x := math.Floor(left/step) * step; x < right+step; x += step {
				pdf.Line(x-arm, y, x+arm, y)
				pdf.Line(x, y-arm, x, y+arm)
			}
		}
	case Unjudged:
		pdf.SetLineWidth(0.1)
		const step = 1.0
		for y := math.Floor(top/step) * step; y < foot+step; y += step {
			pdf.Line(left, y, right, y)
		}
	}
}

// slanted draws lines of 45 degrees, way 1 rising to the right, -1 falling.
func slanted(pdf *fpdf.Fpdf, left, top, right, foot, step, way float64) {
	pdf.SetLineWidth(0.2)
	tall := foot - top
	if way > 0 {
		for s := math.Floor((left+top)/step) * step; s < right+foot; s += step {
			pdf.Line(s-top, top, s-foot, foot)
		}
		return
	}
	for s := math.Floor((left-foot)/step) * step; s < right-top; s += step {
		pdf.Line(s+top, top, s+top+tall, foot)
	}
}
