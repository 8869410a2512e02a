package page

// opening prints the title in large type.
func (d *Document) opening() {
	d.set(Plain, Small)
	d.put(d.head.Ship, 0, Small)
	d.set(Bold, TitleSize)
	d.put(d.head.Title, 0, TitleSize)
	if d.head.Subject != "" {
		d.set(Plain, BodySize)
		d.put(d.head.Subject, 0, BodySize)
	}
	d.Space(2)
}

// put prints lines of the face in force, indented, turning pages as they fill.
func (d *Document) put(text string, indent, size float64) {
	h := d.lineHeight(size)
	face := d.pdf.GetFontStyle()
	for _, line := range d.wrap(text, d.Width()-indent) {
		if d.need(h) {
			d.set(Face(face), size)
		}
		y := d.pdf.GetY()
		d.pdf.Text(d.Left()+indent, y+h*0.76, line)
		d.pdf.SetXY(d.Left(), y+h)
	}
}

// Heading begins a part; it stays with what follows it.
func (d *Document) Heading(text string) {
	d.Space(3.5 * d.scale)
	d.stay(38)
	d.set(Bold, HeadSize)
	d.put(text, 0, HeadSize)
	y := d.pdf.GetY() + 0.3
	d.pdf.SetLineWidth(thin)
	d.pdf.Line(d.Left(), y, d.Right(), y)
	d.pdf.SetXY(d.Left(), y+1.5)
}

// stay keeps a heading with the beginning of what follows.
func (d *Document) stay(height float64) {
	if d.tight {
		height = 12 * d.scale
	}
	d.need(height)
}

// Subheading begins a smaller part.
func (d *Document) Subheading(text string) {
	d.Space(2)
	d.stay(32)
	d.set(Bold, BodySize)
	d.put(text, 0, BodySize)
	d.Space(0.5)
}

// Text is a paragraph.
func (d *Document) Text(text string) { d.Say(text, Plain, BodySize) }

// Strong is a paragraph that must not be missed.
func (d *Document) Strong(text string) { d.Say(text, Bold, BodySize) }

// Note is a paragraph in smaller type.
func (d *Document) Note(text string) { d.Say(text, Plain, Small) }

// Say is a paragraph of any face and size.
func (d *Document) Say(text string, face Face, size float64) {
	if text == "" {
		return
	}
	d.set(face, size)
	d.put(text, 0, size)
	d.Space(size * mm * 0.3)
}

// List is a list of sentences, each behind a dash.
func (d *Document) List(lines []string) { d.ListOf(lines, BodySize) }

// ListOf is a list in a size of type.
func (d *Document) ListOf(lines []string, size float64) {
	for _, line := range lines {
		d.set(Plain, size)
		d.need(d.lineHeight(size))
		d.set(Plain, size)
		y := d.pdf.GetY()
		d.pdf.Text(d.Left(), y+d.lineHeight(size)*0.76, "–")
		d.put(line, 4, size)
		d.Space(size * mm * 0.15)
	}
	d.Space(size * mm * 0.2)
}

// Cautions are boxed, and stand before anything else.
func (d *Document) Cautions(texts []string) {
	if len(texts) == 0 {
		return
	}
	const pad = 2.5
	d.set(Plain, CellSize)
	h := d.lineHeight(CellSize)
	var lines []string
	for _, t := range texts {
		lines = append(lines, d.wrap(t, d.Width()-2*pad-22)...)
	}
	height := float64(len(lines))*h + 2*pad
	d.need(height)
	y := d.pdf.GetY()
	d.pdf.SetLineWidth(0.8)
	d.pdf.Rect(d.Left(), y, d.Width(), height, "D")
	d.set(Bold, BodySize)
	d.pdf.Text(d.Left()+pad, y+pad+h*0.8, "CAUTION")
	d.set(Plain, CellSize)
	for i, line := range lines {
		d.pdf.Text(d.Left()+pad+22, y+pad+h*(float64(i)+0.76), line)
	}
	d.pdf.SetXY(d.Left(), y+height)
	d.Space(2.5)
}
