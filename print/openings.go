package print

import (
	"fmt"

	"oakum/assess"
	"oakum/calc"
	"oakum/print/drawing"
	"oakum/print/page"
)

var openings = Paper{
	Name: "openings", Title: "Openings register", For: "keeper, diver, yard: every hole through the hull and what keeps the water out of it",
	Across: true,
	Needs: func(b *assess.Brief) string {
		if len(b.Standing.Openings) == 0 {
			return "no opening is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Openings.Text(), calc.Diving.Text()})
		var r references
		none := 0
		for _, o := range b.Standing.Openings {
			if o.Sound.Value != nil && *o.Sound.Value == 0 {
				none++
			}
		}
		said := fmt.Sprintf("%d openings are on record; %d have no barrier known to be sound.", len(b.Standing.Openings), none)
		if none == 0 {
			said = fmt.Sprintf("%d openings are on record; each has a barrier known to be sound.", len(b.Standing.Openings))
		}
		d.Text(said + " A barrier nobody tested counts as none.")
		var worst []assess.Figure
		for _, o := range b.Standing.Openings {
			worst = append(worst, o.Sound)
		}
		if dr, err := b.Drawing(); err == nil {
			drawing.Profile(d, dr, numbered(dr, worst))
			d.Note("Black rings have no sound barrier.")
		}
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "No.", Right: true}, {Head: "Opening", Share: 1, Face: page.Bold}, {Head: "Where", Share: 1}, {Head: "Barriers, from outside in", Share: 1}, {Head: "Sound", Right: true}, {Head: "Water if the last goes", Right: true}, {Head: "To the alarm", Right: true}, {Head: "To the critical level", Right: true}, {Head: "How known"}}}
		for i, o := range b.Standing.Openings {
			t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), o.Name, o.Place, o.Barriers, o.Sound.Text, o.Flow.Text, o.Alarm.Text, o.Critical.Text, r.from(o.Flow)})
		}
		d.Table(keep(t))
		d.Sign(page.Signer{Who: "Seen and tested", For: "each barrier worked, or the remark beside it says which did not"})
		r.list(d, b)
	},
}
