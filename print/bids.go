package print

import (
	"fmt"

	"oakum/assess"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/page"
	"oakum/quantity"
)

var bids = Paper{
	Name: "bids", Title: "Bid tabulation", For: "whoever opens the bids: each as its yard wrote it, line by line, with what does not add up", Across: true,
	Needs: func(b *assess.Brief) string {
		if len(b.Money.Bids) == 0 {
			return "no bid is entered"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.Heading("As the yards wrote them, and on one footing")
		t := page.Table{Columns: []page.Column{{Head: "Yard", Face: page.Bold, Share: 1}, {Head: "Valid until"}, {Head: "As written", Right: true}, {Head: "On one footing", Right: true, Face: page.Bold}, {Head: "Enough eight times in ten", Right: true}, {Head: "Ends as the lowest", Right: true}, {Head: "A day", Right: true}, {Head: "Days", Right: true}, {Head: "Tow", Right: true}, {Head: "Left out", Share: 1}, {Head: "Would cost", Right: true}, {Head: "Lines empty", Right: true}}, Size: page.Small}
		for _, x := range b.Money.Bids {
			t.Rows = append(t.Rows, []string{words(", ", x.Yard, x.State), x.Valid, x.Written.Text, x.Evaluated.Text, x.Sure.Text, x.Lowest.Text, x.DayRate.Text, x.Days.Text, x.Tow.Text, x.LeftOut, x.Excluded.Text, fmt.Sprintf("%d of %d", x.Blanks, x.Lines)})
		}
		d.Table(keep(t))
		d.Note("The totals as written can't be compared: each leaves out something else, and their days differ. On one footing the gaps are filled by the own estimate. An empty line is not nothing to pay: ask.")
		bidTurns(d, b)
		if len(b.Money.BidNotes) > 0 {
			d.Heading("To be made clear before anything is signed")
			notices(d, b.Money.BidNotes, "What")
		}
		bidLines(d, b)
		for _, id := range sheetsOf(b, "money.bids@") {
			r.mark(id)
		}
		r.list(d, b)
		sheetResults(d, b, "money.bids@")
		d.Sign(page.Signer{Who: "Opened and read", For: "by two people"})
	},
}

// bidTurns says at which quantities two bids change places.
func bidTurns(d *page.Document, b *assess.Brief) {
	if len(b.Money.Bids) < 2 {
		return
	}
	d.Heading("Where two bids change places")
	if len(b.Money.Turns) == 0 {
		d.Text("Over the quantities that are expected no two bids change places.")
		return
	}
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "How much of", Share: 1, Face: page.Bold}, {Head: "They cost the same at", Right: true}, {Head: "Expected"}, {Head: "Cheaper below it"}, {Head: "Cheaper above it"}, {Head: "Within what is expected"}}}
	for _, x := range b.Money.Turns {
		t.Rows = append(t.Rows, []string{x.Item, x.At.Text, x.Now.Text, x.Below, x.Above, mark(x.Within)})
	}
	d.Table(keep(t))
}

// bidLines sets the lines of all bids side by side by item number.
func bidLines(d *page.Document, b *assess.Brief) {
	yards := dossier.All[plan.Bid](b.Dossier())
	lines := dossier.All[plan.BidLine](b.Dossier())
	if len(lines) == 0 {
		return
	}
	d.Heading("Line by line")
	t := page.Table{Size: page.Small, Columns: []page.Column{{Head: "Item", Face: page.Bold}, {Head: "What", Share: 1}, {Head: "Own estimate", Right: true}}}
	column := map[string]int{}
	for i, y := range yards {
		column[y.ID] = i + 3
		t.Columns = append(t.Columns, page.Column{Head: y.Body.Yard, Right: true})
	}
	row := map[string]int{}
	for _, e := range lines {
		l := e.Body
		at, ok := column[l.Bid]
		if !ok {
			continue
		}
		key := l.Item
		if key == "" {
			key = l.Description
		}
		k, known := row[key]
		if !known {
			k = len(t.Rows)
			row[key] = k
			t.Rows = append(t.Rows, append([]string{l.Item, l.Description, amount(b, l.Estimate)}, make([]string, len(yards))...))
		}
		t.Rows[k][at] = entry(b, l)
		if t.Rows[k][2] == "" {
			t.Rows[k][2] = amount(b, l.Estimate)
		}
	}
	for k := range t.Rows {
		for i := range yards {
			if t.Rows[k][i+3] == "" {
				t.Rows[k][i+3] = "no such line"
			}
		}
	}
	d.Table(keep(t))
}

// entry is what stands in a line: the amount, or the word.
func entry(b *assess.Brief, l plan.BidLine) string {
	if l.Entry != "" && l.Entry != "number" {
		return l.Entry
	}
	switch {
	case l.Extension != nil:
		return amount(b, l.Extension)
	case l.Quantity != nil && l.UnitRate != nil:
		return amount(b, new(*l.Quantity**l.UnitRate)) + ", from its rate"
	case l.UnitRate != nil:
		return amount(b, l.UnitRate) + " a " + l.Per
	}
	return "blank"
}

func amount(b *assess.Brief, x *float64) string {
	if x == nil {
		return ""
	}
	return quantity.Format(*x, currencyIn(b, "money"), -1)
}
