package print

import (
	"fmt"

	"oakum/assess"
	"oakum/print/page"
)

// renewal prints how much plate each criterion asks to renew, and plate by plate.
func renewal(d *page.Document, b *assess.Brief, r *references) {
	x := b.Standing.Renewal
	if len(x.Criteria) > 0 {
		d.Heading("What there is to renew, by how much loss is let pass")
		t := page.Table{Columns: []page.Column{{Head: "Renewed where so much is lost", Share: 1, Face: page.Bold}, {Head: "Plates", Right: true}, {Head: "Area", Right: true}, {Head: "Steel", Right: true}, {Head: "How known"}}}
		for _, c := range x.Criteria {
			t.Rows = append(t.Rows, []string{c.Criterion, c.Plates.Text, c.Area.Text, c.Steel.Text, r.from(c.Steel)})
		}
		d.Table(t)
	}
	if len(x.Unseen) > 0 {
		d.Subheading("What the plates nobody read may hold")
		r.figures(d, x.Unseen)
	}
	if len(x.Plates) > 0 {
		d.Subheading("Plate by plate, by the worst reading on it")
		t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Plate", Share: 1, Face: page.Bold}, {Head: "Read", Right: true}, {Head: "Lost", Right: true}, {Head: "Area", Right: true}, {Head: "Steel", Right: true}, {Head: "Least for the water over it", Right: true}, {Head: "By 20 %"}, {Head: "By 25 %"}, {Head: "By 30 %"}, {Head: "How known"}}}
		for _, p := range x.Plates {
			t.Rows = append(t.Rows, []string{words(", ", p.Plate, p.Place), fmt.Sprint(p.Readings), p.Lost.Text, p.Area.Text, p.Steel.Text, p.HeadLimit.Text, p.By20, p.By25, p.By30, r.mark(p.HeadLimit.Sheet)})
		}
		d.Table(keep(t))
	}
}

func doublers(d *page.Document, b *assess.Brief, r *references) {
	if len(b.Standing.Doublers) == 0 {
		return
	}
	d.Heading("Doublers: what is behind them is not seen")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Doubler", Share: 1, Face: page.Bold}, {Head: "Fitted"}, {Head: "Edges"}, {Head: "Read", Right: true}, {Head: "Its own thickness", Right: true}, {Head: "Loss a year", Right: true}, {Head: "Covers", Right: true}, {Head: "Hull plate behind", Share: 1}, {Head: "How known"}}}
	for _, x := range b.Standing.Doublers {
		t.Rows = append(t.Rows, []string{words(", ", x.Name, x.Place), x.Fitted, x.Edges, fmt.Sprint(x.Readings), x.Least.Text, x.Rate.Text, x.Area.Text, words(": ", x.Behind.Text, x.Behind.Note), r.mark(x.Rate.Sheet)})
	}
	d.Table(keep(t))
}

// zones prints what the readings of a zone say of the worst spot that nobody read.
func zones(d *page.Document, b *assess.Brief, r *references) {
	if len(b.Standing.Zones) == 0 {
		return
	}
	d.Heading("Zone by zone: the worst spot, read or not")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Zone", Face: page.Bold, Share: 1}, {Head: "Plates", Right: true}, {Head: "of them read", Right: true}, {Head: "Loss a year"}, {Head: "if bare"}, {Head: "Deepest loss"}, {Head: "Least left", Face: page.Bold}, {Head: "Chance it is through"}, {Head: "Says", Share: 1}, {Head: "How known"}}}
	for _, z := range b.Standing.Zones {
		t.Rows = append(t.Rows, []string{words(", ", z.Zone, z.Exposure), fmt.Sprint(z.Plates), fmt.Sprint(z.Read), z.Rate.Text, z.Expected.Text, z.Deepest.Text, z.Least.Text, z.Through.Text, z.Says, r.mark(z.Least.Sheet)})
	}
	d.Table(keep(t))
}
