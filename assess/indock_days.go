package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// DockDayRow is one day's log.
type DockDayRow struct {
	ID       string `json:"id"`
	Date     string `json:"date"`
	Day      int    `json:"day"`
	Weather  string `json:"weather"`
	Lost     Figure `json:"lost"`
	Done     string `json:"done"`
	Problems string `json:"problems"`
	Decided  string `json:"decided"`
	Spent    Figure `json:"spent"`
}

func (c *inquiry) dockDays(p *InDockPage) {
	s := c.stay()
	for _, e := range dossier.All[plan.Day](c.d) {
		b := e.Body
		if c.later(b.Date) {
			p.later++
			continue
		}
		r := DockDayRow{ID: e.ID, Date: b.Date.String(), Weather: b.Weather, Done: b.Done, Problems: b.Problems, Decided: b.Decided,
			Lost: notYetFigure("lost", "hours lost to weather").of("day", e.ID), Spent: notYetFigure("spent", "spent to date").of("day", e.ID)}
		if b.Number != nil {
			r.Day = *b.Number
		} else if n, ok := s.from.DaysUntil(b.Date); ok {
			r.Day = n + 1
		}
		if b.Lost != nil {
			r.Lost = known("lost", "hours lost to weather", *b.Lost, "h", basisOf(e.Head, field.Measured), "").of("day", e.ID)
		}
		if b.Spent != nil {
			r.Spent = known("spent", "spent to date", *b.Spent, "money", basisOf(e.Head, field.Documented), "").of("day", e.ID)
		}
		p.Log = append(p.Log, r)
	}
	slices.SortStableFunc(p.Log, func(a, b DockDayRow) int { return cmp.Compare(b.Date, a.Date) })
}

// dockTime gives the day, the days left, and the days that what was found asks for.
func (c *inquiry) dockTime(p *InDockPage, s stay) {
	from := "the log of the days"
	if s.window != "" {
		from = "the log of the days and the window"
	}
	number := func(key, label string, n int, note string) Figure {
		f := daysFigure(key, label, n, from).noted(note)
		f.Sheet = p.days
		return f
	}
	if s.day >= 1 {
		f := number("day", "day in dock", s.day, "")
		f.Text = dayText(s)
		p.Time = append(p.Time, f)
	}
	if f, ok := c.dayCost(c.day); ok {
		p.Time = append(p.Time, f)
	}
	if s.to.IsZero() {
		p.Missing = append(p.Missing, Notice{What: "Nobody has said how many days she has.", Do: "Enter the window with its days.", Kind: "dock_window", Page: "docking", Worry: 2})
		return
	}
	left := number("left", "days left", max(s.left, 0), "to "+s.to.Words())
	asked := 0.0
	for _, r := range p.Changes {
		if r.State != "refused" && r.Days.Value != nil {
			asked += *r.Days.Value
		}
	}
	switch {
	case s.over:
		left.Worry = 3
		left.Note = "the window closed on " + s.to.Words()
	case asked > float64(s.left):
		left.Worry = 2
	}
	p.Time = append(p.Time, left)
	if asked != 0 {
		p.Time = append(p.Time, known("asked", "days that the change orders ask for", asked*secondsADay, "d", field.Computed, "change orders not refused").noted("side by side they may take fewer"))
	}
}

func dayText(s stay) string {
	if s.days > 0 {
		return fmt.Sprintf("%d of %s", s.day, count(s.days, "day", "days"))
	}
	return count(s.day, "day", "days")
}

// daysFigure is a count of whole days.
func daysFigure(key, label string, n int, from string) Figure {
	f := known(key, label, float64(n)*secondsADay, "d", field.Computed, from)
	f.Text = count(n, "day", "days")
	return f
}
