package print

import (
	"slices"
	"strings"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/plan"
	"oakum/print/page"
)

var specification = Paper{
	Name: "specification", Title: "Work specification", For: "yards that bid: each item with its quantity, method and when it is accepted, and the form to price it",
	Needs: func(b *assess.Brief) string { return needs[plan.Work](b, "no work is entered") },
	make: func(d *page.Document, b *assess.Brief) {
		d.Cautions([]string{calc.Docking.Text(), calc.HotWork.Text(), calc.Confined.Text(), calc.Lead.Text(), calc.Asbestos.Text()})
		d.Text("Price every item on the form at the end, also those that are included elsewhere: write the word. An empty line will be asked about. Quantities are those known on the day at the foot; they are measured when done and paid at the unit rate.")
		works := only(dossier.All[plan.Work](b.Dossier()), func(w plan.Work) bool { return w.State != "dropped" && w.State != "done" })
		slices.SortStableFunc(works, func(x, y dossier.Entry[plan.Work]) int { return compareItems(x.Body.Number, y.Body.Number) })
		fields := fieldsOf[plan.Work]()
		for _, e := range works {
			workItem(d, e, func(key string) string { return cell(b, e, fields, key) })
		}
		hazards(d, b)
		d.Turn()
		d.Heading("Form of bid")
		g := page.Grid{Columns: []page.Box{{Head: "Item", Width: 9}, {Head: "Work", Width: 40}, {Head: "Quantity", Width: 14}, {Head: "Unit rate", Width: 14}, {Head: "Amount, or a word", Width: 23}}}
		for _, e := range works {
			g.Rows = append(g.Rows, []string{e.Body.Number, e.Body.Name, words(" ", cell(b, e, fields, "quantity"), e.Body.Per)})
		}
		for _, line := range []string{"docking and undocking, lump sum", "a lay day", "a day beyond those offered", "an hour of growth, all in", "tow, there and back", "bond and insurance", "left out by the bidder"} {
			g.Rows = append(g.Rows, []string{"", line})
		}
		d.Grid(g)
		d.Sign(page.Signer{Who: "Bidder", For: "valid until the day written here"})
	},
}

func workItem(d *page.Document, e dossier.Entry[plan.Work], of func(key string) string) {
	w := e.Body
	d.Subheading(words(" ", w.Number, w.Name))
	var flags []string
	for _, f := range []struct {
		is  *bool
		yes string
		no  string
	}{{w.Must, "must be done", ""}, {w.OnlyInDock, "only in dock", ""}, {w.Firm, "", "only if the hull asks for it"}} {
		if f.is != nil && *f.is {
			flags = append(flags, f.yes)
		} else if f.is != nil {
			flags = append(flags, f.no)
		}
	}
	parts := []string{}
	for _, p := range []struct{ label, text string }{
		{"Where", w.Place.String()}, {"Quantity", words(" ", of("quantity"), w.Per)}, {"Area", of("area")}, {"Steel", of("steel")}, {"Days", of("days")},
		{"Method", w.Method}, {"Accepted when", w.Acceptance}, {"Treats", of("treats")}, {"Needs", of("needs")}, {"Rules out", of("excludes")}, {"", words(", ", flags...)}, {"", w.Notes},
	} {
		if p.text == "" {
			continue
		}
		parts = append(parts, sentence(words(": ", p.label, p.text)))
	}
	if len(parts) == 0 {
		parts = []string{"Nothing more is written down of this item."}
	}
	d.Say(strings.Join(parts, " "), page.Plain, page.CellSize)
}

// compareItems orders item numbers as people do: 3.2 before 3.10, and those without a number last.
func compareItems(a, b string) int {
	if a == "" || b == "" {
		return strings.Compare(b, a)
	}
	x, y := strings.Split(a, "."), strings.Split(b, ".")
	for i := range min(len(x), len(y)) {
		p, q := strings.TrimLeft(x[i], "0"), strings.TrimLeft(y[i], "0")
		if len(p) != len(q) {
			return len(p) - len(q)
		}
		if c := strings.Compare(p, q); c != 0 {
			return c
		}
	}
	return len(x) - len(y)
}
