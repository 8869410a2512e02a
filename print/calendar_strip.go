package print

import (
	"time"

	"oakum/assess"
	"oakum/print/page"
)

// calendarPaper is the calendar on one sheet: every condition along the months, then the yard dates with what each lacks.
var calendarPaper = Paper{
	Name: "calendar", Title: "When it can be done", For: "trustees: yard, tides, tow, money, grants and visitors on one strip", Across: true,
	Needs: func(b *assess.Brief) string {
		if len(b.Calendar.Lanes) == 0 || len(b.Calendar.Cases) == 0 {
			return "no yard date is entered, or she is in dock"
		}
		return ""
	},
	make: func(d *page.Document, b *assess.Brief) {
		d.OnOnePage(func(d *page.Document, short bool) { calendarSheet(d, b.Calendar, b.Day.String(), short) })
	},
}

func calendarSheet(d *page.Document, c assess.CalendarPage, today string, short bool) {
	k := c.Cases[0]
	d.Cautions(c.Cautions)
	d.List(c.Heading[:min(len(c.Heading), 2)])
	strip(d, c, k, today)
	d.Heading("The yard dates: " + k.Name + ", to be signed " + k.Signing.Text)
	t := page.Table{Columns: []page.Column{{Head: "Yard date", Face: page.Bold}, {Head: "Answer"}, {Head: "Dates, or what it lacks and by how much", Share: 1}, {Head: "Money there in time", Right: true}}}
	for _, w := range k.Windows {
		says := w.Says
		if short && len(w.Lacks) > 0 && len(w.Good) == 0 {
			says = w.Lacks[0].Says
		}
		t.Rows = append(t.Rows, []string{w.Name, w.Verdict, says, w.Chance.Text})
	}
	d.Table(t)
}

// laneNames is the part of the width that the names of the lanes take.
const laneNames = 0.24

// strip draws the lanes over the months, in black and white.
func strip(d *page.Document, c assess.CalendarPage, k assess.CalendarCase, today string) {
	lanes := append(append([]assess.Lane{}, c.Lanes...), k.Lanes...)
	first, err1 := time.Parse(time.DateOnly, c.From)
	last, err2 := time.Parse(time.DateOnly, c.To)
	if err1 != nil || err2 != nil || !last.After(first) {
		return
	}
	days := last.Sub(first).Hours()/24 + 1
	left := days * laneNames / (1 - laneNames)
	at := func(iso string, after float64) float64 {
		t, err := time.Parse(time.DateOnly, iso)
		if err != nil {
			return 0
		}
		return min(max(t.Sub(first).Hours()/24+after, 0), days)
	}
	n := float64(len(lanes))
	d.Area(6*n+8, -left, days, 0, n+1.3, false, func(p *page.Canvas) {
		for m := first; m.Before(last); m = m.AddDate(0, 1, 0) {
			x := m.Sub(first).Hours() / 24
			p.Strokes([]page.XY{{x, 0}, {x, n}}, page.Faint, false)
			p.TextIfClear(page.XY{x, n}, 0.5, 1, m.Format("Jan 06"), page.Small-1, page.Start)
		}
		for i, l := range lanes {
			y := n - float64(i) - 1
			p.Text(page.XY{-left, y + 0.3}, 0, 0, l.Name, page.Small, page.Plain, page.Start)
			laneOnPaper(p, l, y, days, at)
		}
		if x := at(today, 0); x > 0 {
			p.Strokes([]page.XY{{x, 0}, {x, n}}, page.Line, true)
			p.TextIfClear(page.XY{x, n}, 0.5, 4, "today", page.Small-1, page.Start)
		}
	})
	d.ListOf([]string{"Blank: good. Hatched: not possible. Dots: perhaps, or possible but it costs. Broken lines: not known. Black: the days that satisfy all. Ticks: days that bind."}, page.Small)
}

func laneOnPaper(p *page.Canvas, l assess.Lane, y, days float64, at func(string, float64) float64) {
	box := func(a, b float64) []page.XY {
		return []page.XY{{a, y + 0.15}, {b, y + 0.15}, {b, y + 0.8}, {a, y + 0.8}}
	}
	if !l.Known {
		p.Fill(box(0, days), page.Unknown, page.Faint)
	}
	patterns := map[string]page.Pattern{"open": page.Blank, "blocked": page.Hatch, "perhaps": page.Dots, "costs": page.Dots}
	for _, s := range l.Spans {
		p.Fill(box(at(s.From, 0), at(s.To, 1)), patterns[s.State], page.Faint)
	}
	for _, m := range l.Marks {
		x := at(m.Date, 0)
		if m.State == "good" {
			p.Fill(box(x, max(at(m.Date, 1), x+days/400)), page.Solid, page.Faint)
			continue
		}
		p.Strokes([]page.XY{{at(m.Date, 1), y + 0.05}, {at(m.Date, 1), y + 0.95}}, page.Heavy, false)
	}
}
