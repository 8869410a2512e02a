package page

import (
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// Head is what the title block says.
type Head struct {
	Ship     string
	Title    string
	Subject  string // what the paper is about, where the title does not say it
	Day      string // the day the paper speaks of, as an ISO date
	Snapshot string // SHA-256 of the records that the paper was made from
	Size     string // A4, Letter or A3
	Across   bool   // the long side lies
	// Photo opens a kept photograph by its SHA-256; nil where none is at hand.
	Photo func(sha256 string) []byte
}

// Sizes lists the sizes of paper.
var Sizes = []string{"A4", "Letter", "A3"}

// The frame stands as on a working drawing: 20 mm for filing on the left and 10 mm elsewhere (ISO 5457, from memory), the title block along its foot.
const (
	filing  = 20.0
	edge    = 10.0
	inside  = 4.0 // from the frame to the text
	block   = 23.0
	running = 8.0 // the block of the pages that follow
)

// Document is a paper in the making. A mistake is kept and comes out of Write.
type Document struct {
	pdf    *fpdf.Fpdf
	head   Head
	w, h   float64 // of the sheet, mm
	scale  float64 // of the type
	tight  bool    // one page is all there is: a heading may stand at its foot
	repeat func()  // draws again what a page break cut, such as the head of a table
}

// New begins a paper.
func New(h Head) (*Document, error) {
	known := false
	for _, s := range Sizes {
		known = known || s == h.Size
	}
	if !known {
		return nil, fmt.Errorf("size: %q is not one of A4, Letter, A3", h.Size)
	}
	lie := "P"
	if h.Across {
		lie = "L"
	}
	d := &Document{pdf: fpdf.New(lie, "mm", h.Size, ""), head: h, scale: 1}
	d.pdf.SetCatalogSort(true)
	d.pdf.SetTitle(h.Ship+": "+h.Title, true)
	d.pdf.SetSubject(h.Subject, true)
	d.pdf.SetCreator("Oakum", true)
	d.pdf.SetKeywords("snapshot "+h.Snapshot, true)
	d.pdf.SetLang("en")
	at := dayOf(h.Day)
	d.pdf.SetCreationDate(at)
	d.pdf.SetModificationDate(at)
	fonts(d.pdf)
	d.pdf.SetAutoPageBreak(false, 0)
	d.pdf.SetCellMargin(0)
	d.w, d.h = d.pdf.GetPageSize()
	d.turn()
	d.opening()
	return d, nil
}

// dayOf gives the paper the date of what it says, not of its printing: the same brief gives the same bytes.
func dayOf(iso string) time.Time {
	if t, err := time.Parse(time.DateOnly, iso); err == nil {
		return t
	}
	return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
}

// Write ends the paper.
func (d *Document) Write(w io.Writer) error {
	if err := d.pdf.Error(); err != nil {
		return err
	}
	// The frames come last, when the number of pages is known.
	d.scale = 1
	for n := range d.pdf.PageCount() {
		d.pdf.SetPage(n + 1)
		d.frame()
	}
	return d.pdf.Output(w)
}

// Photo is a kept photograph, or nothing where it is not at hand.
func (d *Document) Photo(sha256 string) []byte {
	if d.head.Photo == nil || sha256 == "" {
		return nil
	}
	return d.head.Photo(sha256)
}

// Left is where the column of text begins, mm from the edge of the sheet.
func (d *Document) Left() float64 { return filing + inside }

// Right is where it ends.
func (d *Document) Right() float64 { return d.w - edge - inside }

// Width is the width of the column of text, mm.
func (d *Document) Width() float64 { return d.Right() - d.Left() }

// floor is where the column ends on this page.
func (d *Document) floor() float64 {
	foot := running
	if d.pdf.PageNo() == 1 {
		foot = block
	}
	return d.h - edge - foot - 3
}

// top is where the column of a following page begins.
func (d *Document) top() float64 { return edge + inside + 1 }

// Room is the height left on this page, mm.
func (d *Document) Room() float64 { return d.floor() - d.pdf.GetY() }

// PageHeight is the height of the column on a following page, mm.
func (d *Document) PageHeight() float64 { return d.h - edge - running - 3 - d.top() }

// Page is the number of this page.
func (d *Document) Page() int { return d.pdf.PageNo() }

// Turn begins a new page.
func (d *Document) Turn() { d.turn() }

func (d *Document) turn() {
	d.pdf.AddPage()
	d.ink()
	d.pdf.SetXY(d.Left(), d.top())
	if d.repeat != nil {
		d.repeat()
	}
}

// need turns the page unless so much height is left. It says whether it turned.
func (d *Document) need(height float64) bool {
	if d.Room() >= min(height, d.PageHeight()) {
		return false
	}
	d.turn()
	return true
}

// Keep turns the page unless so much height is left, for what must not be torn apart.
func (d *Document) Keep(height float64) { d.need(height) }

// Space leaves a gap, mm at the full size of type, except at the top of a page.
func (d *Document) Space(height float64) {
	if y := d.pdf.GetY(); y > d.top() {
		d.pdf.SetY(min(y+height*d.scale, d.floor()))
	}
	d.pdf.SetX(d.Left())
}

// smallest is the least that the type of a page may shrink to; table text then stands at about the size of Small.
const smallest = 0.85

// OnOnePage draws what must stand on the first page alone, in the largest type that does it. Where even the smallest is too large, draw is asked to be
// short, and leaves the rest to the annex.
func (d *Document) OnOnePage(draw func(d *Document, short bool)) {
	short := false
	for !d.fits(draw, short) {
		if d.scale -= 0.03; d.scale < smallest {
			if short {
				break
			}
			short, d.scale = true, 1
		}
	}
	d.tight = true
	draw(d, short)
	d.scale, d.tight = 1, false
}

// fits tries a page on paper that is thrown away.
func (d *Document) fits(draw func(d *Document, short bool), short bool) bool {
	trial, err := New(d.head)
	if err != nil {
		return true
	}
	trial.scale, trial.tight = d.scale, true
	draw(trial, short)
	return trial.Page() == 1
}
