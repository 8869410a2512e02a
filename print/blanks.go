package print

import (
	"fmt"
	"math"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/print/drawing"
	"oakum/print/page"
	"oakum/quantity"
	"oakum/ship"
)

var blanks = Paper{
	Name: "blanks", Title: "Blank list", For: "yard, diver: a plate for every opening below the water and for each stern tube, with its size, its bolts and its place on the drawing",
	Across: true, Needs: openings.Needs,
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Openings.Text(), calc.Diving.Text(), calc.HotWork.Text()})
		list, places := blanksOf(b)
		d.Text(fmt.Sprintf("%d blanks for openings below today's water. Thickness for the head of water, loose on its gasket, with an allowance for rust; bolts as for a plate inside, which the water pushes off its seat. A plate outside is pressed on: the same bolts are then plenty. To order: the next plate of a usual size, six millimetres at least.", len(list)))
		if dr, err := b.Drawing(); err == nil {
			where := numbered(dr, places)
			drawing.Profile(d, dr, where)
			drawing.Plan(d, dr, where)
			d.Note("By the numbers of the list. A black ring has no sound barrier today: it comes first. Never take the last sound barrier off before the blank is proved to hold.")
		}
		blankSketch(d)
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "No.", Right: true}, {Head: "Opening", Share: 1, Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "Hole a", Right: true}, {Head: "Gasket b", Right: true}, {Head: "Bolts on c", Right: true}, {Head: "Plate d", Right: true}, {Head: "Least t", Right: true}, {Head: "Order t", Right: true, Face: page.Bold}, {Head: "Bolts"}, {Head: "What keeps the water out today", Share: 1}, {Head: "How known"}}}
		var r references
		for i, k := range list {
			t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), k.name, k.place, k.hole, k.gasket, k.circle, k.plate, k.thick.Text, stockPlate(k.thick), k.bolts, k.barriers, words(", ", r.mark(k.thick.Sheet), r.mark(k.boltSheet))})
		}
		d.Table(keep(t))
		d.Subheading("Fitted")
		g := page.Grid{Columns: []page.Box{{Head: "No.", Width: 5}, {Head: "Opening", Width: 22}, {Head: "plate measured, mm", Width: 14}, {Head: "inside or outside", Width: 12}, {Head: "proved how, by whom", Width: 22}, {Head: "day", Width: 10}, {Head: "remarks", Width: 25}}}
		for i, k := range list {
			g.Rows = append(g.Rows, []string{fmt.Sprint(i + 1), k.name})
		}
		d.Grid(g)
		d.Sign(page.Signer{Who: "Naval architect or surveyor", For: "sizes checked"}, page.Signer{Who: "Superintendent", For: "each fitted and proved as written"})
		r.list(d, b)
	},
}

// stockPlates are the plates a yard has, mm; nothing thinner than 6 mm is bolted or welded on a hull. Common practice.
var stockPlates = []float64{6, 8, 10, 12, 15, 20, 25, 30, 40}

// stockPlate is the next plate to be had.
func stockPlate(f assess.Figure) string {
	for _, mm := range stockPlates {
		if f.Value != nil && mm >= *f.Value {
			return fmt.Sprintf("%.0f mm", mm)
		}
	}
	return "by calculation"
}

// blank is a line of the list.
type blank struct {
	name, place, hole, gasket, circle, plate, bolts, barriers, boltSheet string
	thick                                                                assess.Figure
}

// blanksOf lists the openings below the water, those without a sound barrier first, and then the stern tubes; with the figures that find them on the drawing.
func blanksOf(b *assess.Brief) ([]blank, []assess.Figure) {
	var list []blank
	var places []assess.Figure
	for _, o := range b.Standing.Openings {
		if o.Blank.Value == nil {
			continue
		}
		hole := ""
		if e, ok := dossier.Find[ship.Opening](b.Dossier(), o.ID); ok && e.Body.Diameter != nil {
			hole = quantity.Format(*e.Body.Diameter, "mm", 0)
		} else if ok && e.Body.Area != nil {
			hole = quantity.Format(2*math.Sqrt(*e.Body.Area/math.Pi), "mm", 0) + ", as round"
		}
		list = append(list, sized(b, blank{name: o.Name, place: o.Place, hole: hole, thick: o.Blank, barriers: o.Barriers}, o.Bolts))
		places = append(places, o.Sound)
	}
	for _, s := range b.Standing.Shafts {
		if s.Plate.Value == nil {
			continue
		}
		hole := ""
		if e, ok := dossier.Find[ship.ShaftLine](b.Dossier(), s.ID); ok && e.Body.TubeBore != nil {
			hole = quantity.Format(*e.Body.TubeBore, "mm", 0)
		}
		list = append(list, sized(b, blank{name: "Stern tube, " + s.Name, place: s.Side, hole: hole, thick: s.Plate, barriers: "its gland; only if the tail is drawn"}, s.Bolts))
		places = append(places, assess.Figure{Kind: "gland", ID: glandOf(b, s.ID)})
	}
	return list, places
}

// glandOf is the gland of a shaft line, by which its tube is found on the drawing.
func glandOf(b *assess.Brief, line string) string {
	for _, e := range dossier.All[ship.Gland](b.Dossier()) {
		if e.Body.Line == line {
			return e.ID
		}
	}
	return ""
}

// sized takes the sizes of a blank off the sheet of its bolts.
func sized(b *assess.Brief, k blank, bolts assess.Figure) blank {
	k.bolts, k.boltSheet = bolts.Text, bolts.Sheet
	s, ok := b.Sheet(bolts.Sheet)
	if !ok {
		return k
	}
	size := ""
	for _, l := range s.Inputs {
		switch l.Key {
		case "gasket_diameter":
			if mm, ok := l.Value.(float64); ok {
				k.gasket = fmt.Sprintf("%.0f mm", mm)
			}
		case "bolt":
			size, _ = l.Value.(string)
		}
	}
	if l, ok := s.Result("bolt_circle"); ok {
		if mm, ok := l.Value.(float64); ok {
			k.circle = fmt.Sprintf("%.0f mm", mm)
			var bolt float64
			if _, err := fmt.Sscanf(size, "M%g", &bolt); err == nil {
				k.plate = fmt.Sprintf("%.0f mm", mm+3*bolt)
			}
		}
	}
	return k
}

// blankSketch draws a blank from the front and cut through, with the letters of the list.
func blankSketch(d *page.Document) {
	d.Keep(52)
	d.Subheading("A blank, from the front and cut through, no scale")
	d.Area(46, -60, 60, -16, 16, true, func(c *page.Canvas) {
		const cx = -22.0
		circle := func(x, r float64) []page.XY {
			var pts []page.XY
			for i := range 49 {
				a := float64(i) / 48 * 2 * math.Pi
				pts = append(pts, page.XY{x + r*math.Cos(a), r * math.Sin(a)})
			}
			return pts
		}
		c.Strokes(circle(cx, 14), page.Heavy, false)
		c.Strokes(circle(cx, 12), page.Faint, true)
		c.Strokes(circle(cx, 9), page.Line, false)
		c.Strokes(circle(cx, 6.5), page.Line, true)
		for i := range 12 {
			a := float64(i) / 12 * 2 * math.Pi
			x, y := cx+12*math.Cos(a), 12*math.Sin(a)
			hole := circle(0, 0.8)
			for j := range hole {
				hole[j] = page.XY{hole[j][0] + x, hole[j][1] + y}
			}
			c.Strokes(hole, page.Line, false)
		}
		for _, m := range []struct {
			r, y   float64
			letter string
		}{{6.5, -2, "a"}, {9, 2, "b"}, {12, 5.5, "c"}, {14, -6, "d"}} {
			reach := math.Sqrt(m.r*m.r - m.y*m.y)
			c.Strokes([]page.XY{{cx - reach, m.y}, {cx + reach, m.y}}, page.Faint, false)
			c.TextIfClear(page.XY{cx, m.y}, 0, 0.6, m.letter, page.Small, page.Middle)
		}
		// cut through: hull with its hole, gasket, plate, bolts
		const hull, gasket, plate = 18.0, 20.5, 21.7
		for _, up := range []float64{1, -1} {
			c.Fill([]page.XY{{hull, up * 6.5}, {gasket, up * 6.5}, {gasket, up * 16}, {hull, up * 16}}, page.Hatch, page.Line)
			c.Fill([]page.XY{{gasket, up * 8}, {plate, up * 8}, {plate, up * 10}, {gasket, up * 10}}, page.Solid, page.Line)
			c.Strokes([]page.XY{{hull - 1.5, up * 12}, {plate + 4.5, up * 12}}, page.Heavy, false)
		}
		c.Strokes([]page.XY{{plate, -14}, {plate + 2.6, -14}, {plate + 2.6, 14}, {plate, 14}, {plate, -14}}, page.Heavy, false)
		c.TextIfClear(page.XY{plate + 1.3, 0}, 0, 0, "t", page.Small, page.Middle)
		c.TextIfClear(page.XY{hull - 3, 0}, 0, 0, "water", page.Small, page.End)
		c.TextIfClear(page.XY{plate + 6, 9}, 0, 0, "gasket", page.Small, page.Start)
		c.TextIfClear(page.XY{plate + 6, 12}, 0, 0, "bolt", page.Small, page.Start)
		c.TextIfClear(page.XY{plate + 6, 15}, 0, 0, "shell or flange, hatched", page.Small, page.Start)
	})
	d.Space(1)
}
