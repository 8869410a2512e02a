package page

// Signer is somebody who checks or takes the paper, and what for.
type Signer struct {
	Who string
	For string
}

// Sign leaves a box for each signer: name, licence or office, day, hand.
func (d *Document) Sign(signers ...Signer) {
	const high = 24.0
	d.Space(3)
	for _, s := range signers {
		d.need(high + 2)
		y := d.pdf.GetY()
		d.pdf.SetLineWidth(thin)
		d.pdf.Rect(d.Left(), y, d.Width(), high, "D")
		d.set(Bold, CellSize)
		d.pdf.Text(d.Left()+2, y+5, s.Who)
		w := d.pdf.GetStringWidth(s.Who)
		d.set(Plain, CellSize)
		d.pdf.Text(d.Left()+2+w+2, y+5, d.fit(s.For, d.Width()-w-8))
		x := d.Left() + 2
		for _, part := range []struct {
			label string
			share float64
		}{{"name", 0.3}, {"licence or office", 0.25}, {"day", 0.15}, {"signature", 0.3}} {
			w := part.share*(d.Width()-4) - 3
			d.pdf.SetLineWidth(hair)
			d.pdf.Line(x, y+high-6, x+w, y+high-6)
			d.set(Plain, labelSize)
			d.pdf.Text(x, y+high-2.5, part.label)
			x += w + 3
		}
		d.pdf.SetXY(d.Left(), y+high)
		d.Space(2)
	}
}
