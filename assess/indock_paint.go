package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/coating"
	"oakum/survey"
)

// paintDays is how far back from today, and how far forward, readings of the weather count for the paint window.
const paintDays = 3

// paintWindow says from the readings and forecasts out of doors in which hours steel may be painted.
func (c *inquiry) paintWindow(p *InDockPage) {
	in := coating.Window.New()
	forecast := 0
	for _, e := range dossier.All[survey.Climate](c.d) {
		b := e.Body
		n, ok := c.day.DaysUntil(b.Date)
		if b.Space != "" || !ok || n < -paintDays || n > paintDays || b.Time == "" || b.Air == nil || b.Humidity == nil || *b.Humidity <= 0 {
			continue
		}
		if yes(b.Forecast) {
			forecast++
		} else if n > 0 {
			continue // nothing is measured tomorrow
		}
		in.Rows = append(in.Rows, coating.Weather{Time: b.Date.String() + "T" + b.Time, Air: *b.Air, Humidity: *b.Humidity, Steel: b.Steel, Wind: b.Wind, Rain: b.Rain})
	}
	if len(in.Rows) < 2 {
		p.Missing = append(p.Missing, Notice{What: "No weather at the dock is read, so nobody can say when steel may be painted.", Do: "Read air, humidity and steel out of doors, with the hour, three times a day.", Kind: "climate", Page: "indock", Worry: 1})
		return
	}
	slices.SortFunc(in.Rows, func(a, b coating.Weather) int { return cmp.Compare(a.Time, b.Time) })
	in.Rows = slices.CompactFunc(in.Rows, func(a, b coating.Weather) bool { return a.Time == b.Time })
	sheet, out, err := work(c.book, coating.Window, "dock", "hours that allow painting in dock", in, map[string]field.Given{"rows": how(field.Measured, fmt.Sprintf("readings out of doors, %d of them a forecast", forecast))})
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "The paint window can't be worked out: " + err.Error() + ".", Do: "Correct that reading.", Kind: "climate", Page: "indock", Worry: 1})
		return
	}
	hours := result(sheet, "hours", "hours that allow painting")
	if out.Hours == 0 {
		hours.Worry = 2
	}
	p.Paint = append(p.Paint, hours, result(sheet, "hours_covered", "hours that the readings cover"))
	for _, z := range out.Zones {
		f := known("margin", "least margin of steel over the dew point", z.Worst, "K", field.Computed, z.Zone)
		f.Sheet = sheet.ID
		if z.Why != "" {
			f.Note = "most often stopped by: " + z.Why
		}
		p.Paint = append(p.Paint, f)
	}
	for _, w := range out.Spells {
		p.Spells = append(p.Spells, PaintRow{From: w.From, To: w.To, Hours: known("hours", "hours", w.Hours, "h", field.Computed, "coating window").at(w.Zone).sheeted(sheet.ID)})
	}
}

// PaintRow is an unbroken time in which steel may be painted.
type PaintRow struct {
	From  string `json:"from"`
	To    string `json:"to"`
	Hours Figure `json:"hours"`
}

func (f Figure) sheeted(id string) Figure { f.Sheet = id; return f }
