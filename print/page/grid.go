package page

// Grid is a form for a pencil: rows high enough to write in, some cells filled beforehand.
type Grid struct {
	Columns []Box
	Rows    [][]string // what is printed already; a shorter row leaves the rest open
	Empty   int        // rows without anything
}

// Box is a column of a form.
type Box struct {
	Head  string
	Width float64 // share of the width
}

const (
	writing = 8.5 // height of a row to write in, mm
	formPad = 1.2
)

// Grid prints a form, with its head on each page.
func (d *Document) Grid(g Grid) {
	total := 0.0
	for _, c := range g.Columns {
		total += c.Width
	}
	widths := make([]float64, len(g.Columns))
	for i, c := range g.Columns {
		widths[i] = c.Width / total * d.Width()
	}
	head := make([]string, len(g.Columns))
	for i, c := range g.Columns {
		head[i] = c.Head
	}
	printHead := func() { d.gridRow(widths, head, Bold) }
	d.need(3 * writing)
	printHead()
	d.repeat = printHead
	for _, row := range g.Rows {
		d.gridRow(widths, row, Plain)
	}
	for range g.Empty {
		d.gridRow(widths, nil, Plain)
	}
	d.repeat = nil
	d.Space(2)
}

func (d *Document) gridRow(widths []float64, row []string, face Face) {
	h := d.lineHeight(Small)
	height := writing
	d.set(face, Small)
	cells := make([][]string, len(row))
	for i, text := range row {
		cells[i] = d.wrap(text, widths[i]-2*formPad)
		height = max(height, float64(len(cells[i]))*h+2*formPad)
	}
	if face == Plain {
		d.need(height)
		d.set(face, Small)
	}
	x, y := d.Left(), d.pdf.GetY()
	d.pdf.SetLineWidth(thin)
	for i, w := range widths {
		d.pdf.Rect(x, y, w, height, "D")
		if i < len(cells) {
			for k, line := range cells[i] {
				d.pdf.Text(x+formPad, y+formPad+h*(float64(k)+0.76), line)
			}
		}
		x += w
	}
	d.pdf.SetXY(d.Left(), y+height)
}

// FillEmpty is how many empty rows of a form fit on what is left of this page, below its head.
func (d *Document) FillEmpty() int { return max(int((d.Room()-writing)/writing), 0) }

// Tick is a list of things to tick off, each with a box, and a line for the hand that did.
func (d *Document) Tick(lines []string) {
	g := Grid{Columns: []Box{{"Done", 6}, {"What", 62}, {"By, day, hour", 32}}}
	for _, line := range lines {
		g.Rows = append(g.Rows, []string{"", line})
	}
	d.Grid(g)
}
