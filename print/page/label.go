package page

import (
	"strings"

	"rsc.io/qr"
)

// Label is a tag to tie to a thing: its name in large letters, lines of small ones, and a code that any telephone reads as plain words.
type Label struct {
	Title string
	Mark  string
	Lines []string
	Code  string
}

const (
	labelHigh = 62.0
	labelPad  = 4.0
	hole      = 3.0  // radius of the hole to punch, mm
	codeWide  = 26.0 // a code of some hundred letters is still read from paper at this width
	markSize  = 13.0
)

// Labels prints tags two abreast, to cut out along their lines and to punch at the ring.
func (d *Document) Labels(list []Label) {
	const gap = 4.0
	wide := (d.Width() - gap) / 2
	for i, l := range list {
		if i%2 == 0 {
			d.need(labelHigh + gap)
		}
		x, y := d.Left()+float64(i%2)*(wide+gap), d.pdf.GetY()
		d.label(x, y, wide, l)
		if i%2 == 1 || i == len(list)-1 {
			d.pdf.SetXY(d.Left(), y+labelHigh+gap)
		} else {
			d.pdf.SetXY(d.Left(), y)
		}
	}
}

func (d *Document) label(x, y, wide float64, l Label) {
	d.pdf.SetLineWidth(thin)
	d.pdf.SetDashPattern([]float64{2, 1.5}, 0)
	d.pdf.Rect(x, y, wide, labelHigh, "D")
	d.pdf.SetDashPattern(nil, 0)
	d.pdf.SetLineWidth(hair)
	d.pdf.Circle(x+labelPad+hole, y+labelPad+hole, hole, "D")
	room := wide - 2*labelPad
	at := y + labelPad + 5
	d.set(Bold, markSize)
	d.pdf.Text(x+labelPad+2*hole+3, at, d.fit(l.Mark, room-2*hole-3))
	at += 3
	d.set(Bold, BodySize)
	for _, line := range d.wrap(l.Title, room)[:1] {
		at += d.lineHeight(BodySize)
		d.pdf.Text(x+labelPad, at, line)
	}
	d.code(x+wide-labelPad-codeWide, y+labelHigh-labelPad-codeWide, codeWide, l.Code)
	h := d.lineHeight(Small)
	for _, text := range l.Lines {
		d.set(Plain, Small)
		beside := room
		for _, line := range d.wrap(text, room-codeWide-2) {
			if at+h > y+labelHigh-labelPad {
				return
			}
			if at+h < y+labelHigh-labelPad-codeWide-1 {
				line = d.fit(line, beside)
			}
			at += h
			d.pdf.Text(x+labelPad, at, line)
		}
	}
}

// code draws a text as a QR code (ISO/IEC 18004) in black squares, with its quiet margin left white around it.
func (d *Document) code(x, y, wide float64, text string) {
	c, err := qr.Encode(strings.TrimSpace(text), qr.M)
	if err != nil {
		d.pdf.SetError(err)
		return
	}
	s := wide / float64(c.Size)
	d.pdf.SetFillColor(0, 0, 0)
	for j := range c.Size {
		for i := 0; i < c.Size; i++ {
			run := i
			for run < c.Size && c.Black(run, j) {
				run++
			}
			if run > i {
				d.pdf.Rect(x+float64(i)*s, y+float64(j)*s, float64(run-i)*s, s, "F")
				i = run
			}
		}
	}
	d.ink()
}
