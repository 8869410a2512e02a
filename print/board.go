package print

import (
	"fmt"
	"slices"

	"oakum/assess"
	"oakum/calc"
	"oakum/dossier"
	"oakum/print/page"
)

var board = Paper{
	Name: "board", Title: "Board paper", For: "trustees: one page to decide from, and an annex", Needs: always,
	make: func(d *page.Document, b *assess.Brief) {
		var r references
		d.OnOnePage(func(d *page.Document, short bool) {
			r = references{}
			boardPage(d, b.Record.Board, &r, short)
		})
		boardAnnex(d, b, &r)
	},
}

// boardPage is the one page.
func boardPage(d *page.Document, p assess.BoardPaper, r *references, short bool) {
	some := func(lines []string, most int) []string {
		if !short || len(lines) <= most {
			return lines
		}
		return append(append([]string{}, lines[:most]...), fmt.Sprintf("And %d more, in the annex.", len(lines)-most))
	}
	d.Cautions([]string{calc.Screening.Text()})
	d.Heading("Where we are")
	d.List(some(p.Where, 3))
	r.figures(d, unremarked(p.Worst))
	d.Heading(changed(p.Since))
	d.List(orSay(some(p.Changed, 2), "Nothing was seen, decided or received."))
	d.Heading("Money")
	r.figures(d, p.Money)
	d.Heading("What you must decide")
	if len(p.Decide) == 0 {
		d.Text("Nothing waits for a decision.")
	}
	notices(d, p.Decide, "Question")
	d.Heading("What if not")
	d.List(orSay(some(p.IfNot, 2), "Nobody has worked out what waiting brings: the pages say what to enter."))
}

func changed(since string) string {
	if since == "" {
		return "What changed in the last year"
	}
	return "What changed since " + since
}

func orSay(lines []string, otherwise string) []string {
	if len(lines) == 0 {
		return []string{otherwise}
	}
	return lines
}

// boardAnnex holds what a trustee may ask for: what is overdue, what was never looked at, what is not known, and the sheets.
func boardAnnex(d *page.Document, b *assess.Brief, r *references) {
	d.Turn()
	d.Say("Annex", page.Bold, page.HeadSize)
	d.Heading("Where we are, what changed, what if not: in full")
	p := b.Record.Board
	d.List(p.Where)
	d.List(p.Changed)
	d.List(p.IfNot)
	if len(b.Front.Overdue) > 0 {
		d.Heading("Overdue")
		boardNotices(d, b, b.Front.Overdue, "What")
	}
	if len(b.Standing.NeverSeen) > 0 {
		d.Heading("Never looked at: unknown, not sound")
		boardNotices(d, b, b.Standing.NeverSeen, "Where")
	}
	if f := b.Outlook.Futures; f != nil {
		d.Heading("What the figures of the future take for granted")
		d.ListOf(f.Assumptions, page.Small)
	}
	if len(b.Front.Missing) > 0 {
		d.Heading("What would make this paper better")
		boardNotices(d, b, b.Front.Missing, "Not known")
	}
	r.list(d, b)
}

// boardNotices prints what the board may see; how many it may not is said, so that nobody takes the list for the whole.
func boardNotices(d *page.Document, b *assess.Brief, list []assess.Notice, what string) {
	open := slices.DeleteFunc(slices.Clone(list), func(n assess.Notice) bool {
		r, ok := b.Dossier().Get(n.ID)
		return ok && !r.Shown(dossier.Board) || b.Hides(n.What+" "+n.Do+" "+n.Who, dossier.Board)
	})
	notices(d, open, what)
	if n := len(list) - len(open); n > 0 {
		d.Note(fmt.Sprintf("%d more rest on private records and stand in the keeper's own list.", n))
	}
}

// unremarked leaves the remarks of figures to their sheets: a page for a board has no room for them.
func unremarked(list []assess.Figure) []assess.Figure {
	out := slices.Clone(list)
	for i := range out {
		out[i].Note = ""
	}
	return out
}
