package print

import (
	"oakum/assess"
	"oakum/print/page"
)

// blockLoads prints what the keel blocks and the side blocks carry, dock by dock.
func blockLoads(d *page.Document, p assess.DockingPage, r *references) {
	for _, row := range p.Blocks {
		d.Heading("Keel blocks at " + row.Name)
		d.Strong(sentence(row.Reason))
		d.Text(sentence(row.Change))
		blockChart(d, row)
		r.figures(d, said(row.Aft, row.Fwd, row.Limit, row.Peak, row.Line, row.Used))
	}
	for _, row := range p.Side {
		d.Heading("Side blocks at " + row.Name)
		d.Strong(sentence(row.Reason))
		d.Text(sentence(row.Change))
		r.figures(d, said(row.Wind, row.Lee, row.Factor, row.Each, row.Spread))
	}
}

// blockChart draws the load of the line over the length, with the trapezoid that the hand method gives.
func blockChart(d *page.Document, row assess.BlockRow) {
	if len(row.Blocks) < 2 {
		return
	}
	worked := page.Series{Name: "block by block"}
	for _, k := range row.Blocks {
		worked.Points = append(worked.Points, page.XY{k.X, k.Line})
	}
	ch := page.Chart{X: "from the after perpendicular, m", Y: "load on the line, t/m", Height: 52, FromY0: true, Series: []page.Series{worked}}
	first, last := row.Blocks[0].X, row.Blocks[len(row.Blocks)-1].X
	if row.Aft.Value != nil && row.Fwd.Value != nil {
		ch.Series = append(ch.Series, page.Series{Name: "trapezoid", Dashed: true, Points: []page.XY{{first, *row.Aft.Value}, {last, *row.Fwd.Value}}})
	}
	if row.Limit.Value != nil {
		ch.Limits = append(ch.Limits, page.Limit{At: *row.Limit.Value, Name: "may carry"})
	}
	d.Chart(ch)
}

// ballast prints the least that must be moved to meet what each dock wants.
func ballast(d *page.Document, p assess.DockingPage, r *references) {
	for _, row := range p.Ballast {
		d.Heading("Ballast for " + row.Name + ": " + row.Verdict)
		d.Text(sentences(row.Reason))
		if len(row.Beside) == 0 {
			d.Text(sentences(row.Again))
		}
		t := page.Table{Columns: []page.Column{{Head: "Do", Face: page.Bold}, {Head: "From", Share: 1}, {Head: "To", Share: 1}, {Head: "Mass", Right: true}}}
		for _, m := range row.Moves {
			t.Rows = append(t.Rows, []string{m.What, m.From, m.To, m.Mass.Text})
		}
		if len(t.Rows) > 0 {
			d.Table(keep(t))
			if len(row.Beside) == 0 {
				r.figures(d, said(row.Moved, row.Trim, row.List, row.LineAft, row.LineFwd, row.GM))
			}
			beside(d, row, r)
		}
	}
}

// beside sets the ship as she lies and the ship with the ballast moved in two columns.
func beside(d *page.Document, row assess.BallastRow, r *references) {
	if len(row.Beside) == 0 {
		return
	}
	t := page.Table{Columns: []page.Column{{Head: "What", Share: 1}, {Head: "As she lies"}, {Head: "With the ballast moved", Face: page.Bold}, {Head: "Worked on"}}}
	for _, x := range row.Beside {
		before := x.Before.Text
		if w := worry(x.Before.Worry); w != "" {
			before += " " + w
		}
		t.Rows = append(t.Rows, []string{x.What, before, x.After.Text, words(", ", r.mark(x.Before.Sheet), r.mark(x.After.Sheet))})
	}
	d.Table(keep(t))
	for _, l := range row.Landing {
		d.Text(sentence(l.What + ", ballast moved: " + l.Verdict))
	}
	if row.Blocks != nil {
		d.Text(sentence("Keel blocks, ballast moved: " + row.Blocks.Reason))
	}
}

// weightRegister prints every weight on record, and what it does not explain.
func weightRegister(d *page.Document, b *assess.Brief, r *references) {
	w := b.Docking.Weights
	if len(w.Rows) == 0 {
		return
	}
	d.Heading("Weights on record")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Weight", Share: 1, Face: page.Bold}, {Head: "Group"}, {Head: "Mass", Right: true}, {Head: "From aft", Right: true}, {Head: "Above baseline", Right: true}, {Head: "To port", Right: true}, {Head: "On board since"}}}
	for _, x := range w.Rows {
		t.Rows = append(t.Rows, []string{x.Name, x.Group, x.Mass.Text, x.LCG.Text, x.VCG.Text, x.TCG.Text, x.Added})
	}
	d.Table(keep(t))
	r.figures(d, said(w.Sum, w.Centre, w.Height, w.ByDrafts, w.Unexplained))
}

// said leaves out figures that the brief did not make; one that nobody knows stays, as unknown.
func said(list ...assess.Figure) []assess.Figure {
	kept := []assess.Figure{}
	for _, f := range list {
		if f.Text != "" {
			kept = append(kept, f)
		}
	}
	return kept
}
