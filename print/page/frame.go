package page

// thick, thin and hair are the strokes of a working drawing, mm (ISO 128 series, from memory).
const (
	thick = 0.5
	thin  = 0.25
	hair  = 0.13
)

// ink makes everything black.
func (d *Document) ink() {
	d.pdf.SetDrawColor(0, 0, 0)
	d.pdf.SetFillColor(0, 0, 0)
	d.pdf.SetTextColor(0, 0, 0)
}

// frame draws the border and the block of the page in hand.
func (d *Document) frame() {
	d.ink()
	// The page forgot the type in force when others were drawn; the writer did not. Another size makes it say so again.
	d.set(Italic, 1)
	d.pdf.SetLineWidth(thick)
	d.pdf.Rect(filing, edge, d.w-filing-edge, d.h-2*edge, "D")
	if d.pdf.PageNo() == 1 {
		d.titleBlock()
	} else {
		d.runningBlock()
	}
}

// cell is one box of a title block.
type cell struct {
	label, text string
	width       float64 // share of the row
	face        Face
}

// titleBlock stands at the foot of the first page.
func (d *Document) titleBlock() {
	top := d.h - edge - block
	d.pdf.SetLineWidth(thick)
	d.pdf.Line(filing, top, d.w-edge, top)
	half := block / 2
	d.row(top, half, []cell{{"Ship", d.head.Ship, 0.34, Bold}, {"Paper", d.head.Title, 0.44, Bold}, {"Page", d.pageText(), 0.22, Bold}})
	d.pdf.SetLineWidth(thin)
	d.pdf.Line(filing, top+half, d.w-edge, top+half)
	subject := d.head.Subject
	if subject == "" {
		subject = "the whole ship"
	}
	d.row(top+half, half, []cell{{"About", subject, 0.48, Plain}, {"As of", d.head.Day, 0.16, Plain}, {"Records", short(d.head.Snapshot), 0.23, Plain}, {"Made with", "Oakum", 0.13, Plain}})
}

// runningBlock stands at the foot of the pages that follow.
func (d *Document) runningBlock() {
	top := d.h - edge - running
	d.pdf.SetLineWidth(thin)
	d.pdf.Line(filing, top, d.w-edge, top)
	d.row(top, running, []cell{{"", d.head.Ship + ": " + d.head.Title, 0.46, Plain}, {"", d.head.Day, 0.14, Plain}, {"", "records " + short(d.head.Snapshot), 0.24, Plain}, {"", "page " + d.pageText(), 0.16, Plain}})
}

func (d *Document) row(top, height float64, cells []cell) {
	x := filing
	whole := d.w - filing - edge
	for i, c := range cells {
		w := c.width * whole
		if i > 0 {
			d.pdf.SetLineWidth(thin)
			d.pdf.Line(x, top, x, top+height)
		}
		size := BodySize
		base := top + height - 3
		if c.label == "" {
			size = Small
			base = top + height/2 + size*mm*0.35
		} else {
			d.set(Plain, labelSize)
			d.pdf.Text(x+2, top+3.8, c.label)
		}
		d.set(c.face, size)
		d.pdf.Text(x+2, base, d.fit(c.text, w-4))
		x += w
	}
}

func (d *Document) pageText() string {
	return itoa(d.pdf.PageNo()) + " of " + itoa(d.pdf.PageCount())
}

// short is the beginning of a snapshot, enough to tell two apart; the whole of it stands in the file's own data.
func short(snapshot string) string {
	if len(snapshot) > 12 {
		return snapshot[:12]
	}
	return snapshot
}

// fit cuts a text that is wider than its cell, with an ellipsis.
func (d *Document) fit(text string, width float64) string {
	text = clean(text)
	if d.pdf.GetStringWidth(text) <= width {
		return text
	}
	letters := []rune(text)
	for len(letters) > 1 && d.pdf.GetStringWidth(string(letters)+"…") > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}
