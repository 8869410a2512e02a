package print

import (
	"fmt"
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
		d.Text("Price every item on the form at the end, or in the workbook that goes with this paper (bid-form.xlsx), also those that are included elsewhere: write the word. An empty line will be asked about. Quantities are those known on the day at the foot; they are measured when done and paid at the unit rate.")
		firm, contingent := specified(b)
		chapter := ""
		for _, e := range firm {
			if c := chapterOf(e.Body.Number); c != chapter {
				chapter = c
				d.Heading(chapterWords(c, firm))
			}
			workItem(d, b, e)
		}
		if len(contingent) > 0 {
			d.Heading("Contingent items: ordered only if the hull asks for them")
			d.Note("The quantity is nominal, so that rates can be compared; nothing of it is promised. It is ordered by a change order at the rate bid, after a found report that owner and yard have signed.")
			for _, e := range contingent {
				workItem(d, b, e)
			}
		}
		hazards(d, b)
		bidGrid(d, append(firm, contingent...))
		d.Sign(page.Signer{Who: "Bidder", For: "valid until the day written here"})
	},
}

// specified are the works that yards are asked for, by their numbers: those to be done, and those that wait for what the hull shows.
func specified(b *assess.Brief) (firm, contingent []dossier.Entry[plan.Work]) {
	works := only(dossier.All[plan.Work](b.Dossier()), func(w plan.Work) bool { return w.State != "dropped" && w.State != "done" })
	slices.SortStableFunc(works, func(x, y dossier.Entry[plan.Work]) int { return compareItems(x.Body.Number, y.Body.Number) })
	for _, e := range works {
		if isContingent(e.Body) {
			contingent = append(contingent, e)
		} else {
			firm = append(firm, e)
		}
	}
	return firm, contingent
}

func isContingent(w plan.Work) bool { return w.Firm != nil && !*w.Firm && (w.Must == nil || !*w.Must) }

// chapterOf is the first part of an item's number.
func chapterOf(number string) string {
	c, _, _ := strings.Cut(number, ".")
	return c
}

// chapterWords names a chapter by the groups of its works.
func chapterWords(chapter string, works []dossier.Entry[plan.Work]) string {
	var groups []string
	for _, e := range works {
		if g := e.Body.Group; chapterOf(e.Body.Number) == chapter && g != "" && !slices.Contains(groups, g) {
			groups = append(groups, g)
		}
	}
	if chapter == "" {
		return "Items without a number"
	}
	return words(" ", chapter, capital(strings.Join(groups, ", ")))
}

func bidGrid(d *page.Document, works []dossier.Entry[plan.Work]) {
	d.Turn()
	d.Heading("Form of bid")
	g := page.Grid{Columns: []page.Box{{Head: "Item", Width: 9}, {Head: "Work", Width: 40}, {Head: "Quantity", Width: 14}, {Head: "Unit rate", Width: 14}, {Head: "Amount, or a word", Width: 23}}}
	for _, e := range works {
		g.Rows = append(g.Rows, []string{e.Body.Number, e.Body.Name, quantityOf(e.Body)})
	}
	for _, l := range bidRest {
		g.Rows = append(g.Rows, []string{l.item, l.what})
	}
	d.Grid(g)
}

// quantityOf says a quantity as people do: 980 m², 13 days, 2 pieces.
func quantityOf(w plan.Work) string {
	if w.Quantity == nil {
		return ""
	}
	per := map[string]string{"m2": "m²", "m3": "m³"}[w.Per]
	switch {
	case per != "":
	case *w.Quantity != 1 && (w.Per == "piece" || w.Per == "day" || w.Per == "hour"):
		per = w.Per + "s"
	default:
		per = w.Per
	}
	return words("\u00a0", number(*w.Quantity), per)
}

func workItem(d *page.Document, b *assess.Brief, e dossier.Entry[plan.Work]) {
	w := e.Body
	fields := fieldsOf[plan.Work]()
	of := func(key string) string { return cell(b, e, fields, key) }
	d.Keep(16)
	d.Subheading(words(" ", w.Number, w.Name))
	var flags []string
	for _, f := range []struct {
		is  *bool
		yes string
	}{{w.Must, "must be done"}, {w.OnlyInDock, "only in dock"}} {
		if f.is != nil && *f.is {
			flags = append(flags, f.yes)
		}
	}
	days := ""
	if w.Days != nil {
		days = number(*w.Days / secondsADay)
	}
	parts := []string{}
	for _, p := range []struct{ label, text string }{
		{"Where", w.Place.String()}, {"Quantity", quantityOf(w)}, {"Area", of("area")}, {"Steel", of("steel")}, {"Days", days},
		{"Method", w.Method}, {"Accepted when", w.Acceptance}, {"Treats", named(b, w.Treats)}, {"Comes after", named(b, w.Needs)}, {"Rules out", named(b, w.Excludes)}, {"", words(", ", flags...)}, {"", w.Notes},
	} {
		if p.text != "" {
			parts = append(parts, sentence(words(": ", p.label, p.text)))
		}
	}
	if w.Method == "" && w.Acceptance == "" {
		parts = append(parts, "Method and acceptance are not written yet: the yard proposes both.")
	}
	d.Say(strings.Join(parts, " "), page.Plain, page.CellSize)
}

// secondsADay turns the days of a record, kept in seconds, back.
const secondsADay = 86400

// named lists records by their own names.
func named(b *assess.Brief, ids []string) string {
	var list []string
	for _, id := range ids {
		if w, ok := dossier.Find[plan.Work](b.Dossier(), id); ok {
			list = append(list, words(" ", w.Body.Number, w.Body.Name))
		} else if r, ok := b.Dossier().Get(id); ok {
			list = append(list, r.Label())
		} else {
			list = append(list, fmt.Sprintf("%s (no such record)", id))
		}
	}
	return strings.Join(list, "; ")
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
