package page

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool    // numbers stand under each other at their right end
	Share float64 // of the width left over when the others have what they need; 0 takes by need
	Face  Face
}

// Table runs over as many pages as it takes, with its head on each.
type Table struct {
	Columns []Column
	Rows    [][]string
	Size    float64 // of the type; CellSize where it is 0
	Heavy   func(row int) bool
}

const (
	gutter = 3.0 // between columns, mm
	lead   = 0.8 // above and below the text of a row, mm
)

// Table prints a table.
func (d *Document) Table(t Table) {
	if t.Size == 0 {
		t.Size = CellSize
	}
	widths := d.widths(t)
	head := make([]string, len(t.Columns))
	named := false
	for i, c := range t.Columns {
		head[i] = c.Head
		named = named || c.Head != ""
	}
	printHead := func() {
		if named {
			d.tableRow(t, widths, head, true, false)
		}
	}
	d.need(3 * (d.lineHeight(t.Size) + 2*lead))
	printHead()
	d.repeat = printHead
	for i, row := range t.Rows {
		d.tableRow(t, widths, row, false, t.Heavy != nil && t.Heavy(i))
	}
	d.repeat = nil
	d.Space(2)
}

// tableRow prints a row. One that is taller than the page is printed a page at a time.
func (d *Document) tableRow(t Table, widths []float64, row []string, head, heavy bool) {
	h := d.lineHeight(t.Size)
	cells := make([][]string, len(widths))
	most := 1
	for i := range widths {
		if i < len(row) {
			d.set(t.face(i, head, heavy), t.Size)
			cells[i] = d.wrap(row[i], widths[i])
			most = max(most, len(cells[i]))
		}
	}
	fits := max(int((d.PageHeight()-20)/h), 1)
	for from := 0; from < most; from += fits {
		lines := min(fits, most-from)
		lead := lead * d.scale
		height := float64(lines)*h + 2*lead
		if !head {
			d.need(height)
		}
		y := d.pdf.GetY()
		x := d.Left()
		for i, w := range widths {
			d.set(t.face(i, head, heavy), t.Size)
			for k := from; k < min(from+lines, len(cells[i])); k++ {
				at := x
				if t.Columns[i].Right {
					at = x + w - d.pdf.GetStringWidth(cells[i][k])
				}
				d.pdf.Text(at, y+lead+h*(float64(k-from)+0.76), cells[i][k])
			}
			x += w + gutter
		}
		d.pdf.SetLineWidth(hair)
		if head {
			d.pdf.SetLineWidth(thin)
		}
		d.pdf.Line(d.Left(), y+height, d.Right(), y+height)
		d.pdf.SetXY(d.Left(), y+height)
	}
}

func (t Table) face(column int, head, heavy bool) Face {
	if head || heavy {
		return Bold
	}
	return t.Columns[column].Face
}

// widths gives each column what it needs where there is room; where there is not, the wide ones wrap and none is narrower than its widest word.
func (d *Document) widths(t Table) []float64 {
	n := len(t.Columns)
	need, least := make([]float64, n), make([]float64, n)
	for i, c := range t.Columns {
		d.set(Bold, t.Size)
		least[i], need[i] = d.longest(c.Head), d.pdf.GetStringWidth(clean(c.Head))
		d.set(t.face(i, false, t.Heavy != nil), t.Size)
		for _, row := range t.Rows {
			if i < len(row) {
				least[i] = max(least[i], min(d.longest(row[i]), d.Width()*0.3))
				need[i] = max(need[i], d.pdf.GetStringWidth(clean(row[i])))
			}
		}
		least[i], need[i] = least[i]+0.1, need[i]+0.1
	}
	room := d.Width() - gutter*float64(n-1)
	if sum(need) <= room {
		return d.spread(t, need, room-sum(need))
	}
	if sum(least) >= room {
		return scaled(least, room/sum(least))
	}
	return fill(t.Columns, need, least, room)
}

// spread hands the room left over to the columns that ask for a share.
func (d *Document) spread(t Table, widths []float64, left float64) []float64 {
	shares := 0.0
	for _, c := range t.Columns {
		shares += c.Share
	}
	if shares > 0 {
		for i, c := range t.Columns {
			widths[i] += left * c.Share / shares
		}
	}
	return widths
}

// fill caps the widest columns at one width such that all fit; those that ask for a share of the room may be wider.
func fill(columns []Column, need, least []float64, room float64) []float64 {
	low, high := 0.0, room
	capped := func(limit float64) []float64 {
		w := make([]float64, len(need))
		for i := range need {
			w[i] = max(least[i], min(need[i], limit*(1+0.8*columns[i].Share)))
		}
		return w
	}
	for range 40 {
		if mid := (low + high) / 2; sum(capped(mid)) > room {
			high = mid
		} else {
			low = mid
		}
	}
	return capped(low)
}

func sum(xs []float64) float64 {
	total := 0.0
	for _, x := range xs {
		total += x
	}
	return total
}

func scaled(xs []float64, by float64) []float64 {
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[i] = x * by
	}
	return out
}
