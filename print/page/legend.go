package page

// Legend says what the patterns mean, in a row of boxes.
func (d *Document) Legend(patterns []Pattern, meaning []string) {
	d.need(8)
	y := d.pdf.GetY() + 0.5
	x := d.Left()
	for i, p := range patterns {
		d.set(Plain, Small)
		w := 9 + 2 + d.pdf.GetStringWidth(meaning[i]) + 6
		if x+w > d.Right() {
			x = d.Left()
			y += 6
		}
		d.pdf.ClipRect(x, y, 9, 4.5, false)
		p.paint(d.pdf, x, y, x+9, y+4.5)
		d.unclip()
		d.pdf.SetLineWidth(thin)
		d.pdf.Rect(x, y, 9, 4.5, "D")
		d.set(Plain, Small)
		d.pdf.Text(x+11, y+3.4, meaning[i])
		x += w
	}
	d.pdf.SetXY(d.Left(), y+6)
	d.Space(1)
}
