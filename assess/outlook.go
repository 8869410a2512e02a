package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/field"
)

// OutlookPage answers what fails first, when, and what happens then.
type OutlookPage struct {
	Heading []string     `json:"heading"`
	First   *Figure      `json:"first,omitempty"` // the date band of what is likely to fail first
	Dated   []OutlookRow `json:"dated"`           // every part's life in one list, earliest first
	Futures *FuturesPart `json:"futures,omitempty"`
	Floods  []FloodRow   `json:"floods"` // each space, and each pair, open to the sea
	Missing []Notice     `json:"missing"`

	parts []lifePart
}

// OutlookRow is one part that can fail.
type OutlookRow struct {
	Kind  string `json:"kind"`
	ID    string `json:"id"`
	What  string `json:"what"`
	Place string `json:"place"`
	Space string `json:"space"`
	When  Figure `json:"when"`
	Water Figure `json:"water"`
	Pumps Figure `json:"pumps"` // what the pumps of that space take out against it
}

func (c *inquiry) outlookPage(standing StandingPage) OutlookPage {
	p := OutlookPage{Heading: []string{}, Dated: []OutlookRow{}, Floods: c.floodRows(), Missing: []Notice{}}
	c.seen = &standing
	p.parts = c.lifeParts(standing)
	slices.SortStableFunc(p.parts, func(a, b lifePart) int {
		return cmp.Or(cmp.Compare(a.due.early, b.due.early), cmp.Compare(a.due.likely, b.due.likely))
	})
	for _, part := range p.parts {
		p.Dated = append(p.Dated, c.outlookRow(part))
	}
	c.carriedDated(&p)
	if len(p.parts) == 0 {
		p.Heading = append(p.Heading, "Nothing with a life is entered yet, so nothing can be dated.")
		p.Missing = append(p.Missing, Notice{What: "No part has a life.", Do: "Enter thickness readings of two surveys, packing dates, openings and anodes.", Page: "standing"})
		return p
	}
	c.firstWater(&p)
	c.runFutures(&p)
	return p
}

func (c *inquiry) outlookRow(part lifePart) OutlookRow {
	row := OutlookRow{Kind: part.kind, ID: part.id, What: part.name, Place: part.place, Space: part.space, Water: part.flowFigure}
	row.When = part.dated(c.day.DecimalYear())
	row.Pumps = c.pumpsAgainst(part)
	return row
}

// dated is the figure of when a part fails: a band of dates.
func (p lifePart) dated(day float64) Figure {
	f := Figure{Key: "when", Label: p.name, Unit: calendar, Text: p.due.words(day), Basis: field.Computed, Sheet: p.sheet, Place: p.place, Kind: p.kind, ID: p.id, Note: p.note}
	if !horizon(p.due.likely) {
		f.Value, f.P50 = new(round(p.due.likely)), new(round(p.due.likely))
	}
	if !horizon(p.due.early) {
		f.P10 = new(round(p.due.early))
	}
	if !horizon(p.due.late) {
		f.P90 = new(round(p.due.late))
	}
	switch {
	case p.due.likely <= day:
		f.Worry = 2
	case p.due.early <= day:
		f.Worry = 2
	case p.due.early <= day+5:
		f.Worry = 1
	}
	return f
}

// firstWater is the band of the date of first water when every part that lets water in may be the first: the chance that none has failed is the
// product of theirs.
func (c *inquiry) firstWater(p *OutlookPage) {
	day := c.day.DecimalYear()
	survive := func(t float64) float64 {
		s := 1.0
		for _, part := range p.parts {
			if part.flow > 0 {
				s *= 1 - part.failedBy(t)
			}
		}
		return s
	}
	at := func(failed float64) float64 {
		low, high := 0.0, 300.0
		if 1-survive(high) < failed {
			return math.Inf(1)
		}
		for range 60 {
			mid := (low + high) / 2
			if 1-survive(mid) < failed {
				low = mid
			} else {
				high = mid
			}
		}
		return high
	}
	band := due{day + at(0.1), day + at(0.5), day + at(0.9)}
	if horizon(band.early) {
		p.Heading = append(p.Heading, "Nothing that is known lets water in within a century.")
		return
	}
	f := Figure{Key: "first", Label: "first water from the parts that are known", Unit: calendar, Text: band.words(day), Basis: field.Computed, Note: "parts taken as independent"}
	f.Value, f.P50, f.P10 = new(round(band.likely)), new(round(band.likely)), new(round(band.early))
	if !horizon(band.late) {
		f.P90 = new(round(band.late))
	}
	if band.early < day+3 {
		f.Worry = 2
	}
	p.First = &f
	p.Heading = append(p.Heading, fmt.Sprintf("First water is likely between %s; what fails first is most likely %s.", band.spoken(), p.likeliest()))
}

func (d due) spoken() string {
	if horizon(d.late) {
		return yearText(d.early) + " and beyond"
	}
	return yearText(d.early) + " and " + yearText(d.late)
}

// failedBy is the chance of having failed t years from today.
func (p lifePart) failedBy(t float64) float64 {
	if p.wastage == nil {
		return p.law.By(t)
	}
	w := p.wastage
	t += w.since
	sd := math.Sqrt(w.sd*w.sd + w.rateSD*w.rateSD*t*t)
	left := w.thickness - through - w.rate*t
	if sd == 0 {
		return 0
	}
	return 0.5 * math.Erfc(left/sd/math.Sqrt2)
}

// likeliest names the part with the greatest chance of letting water in within ten years.
func (p *OutlookPage) likeliest() string {
	best, name := -1.0, "nothing that is known"
	for _, part := range p.parts {
		if part.flow <= 0 {
			continue
		}
		if f := part.failedBy(10); f > best {
			best, name = f, part.name
			if part.place != "" {
				name += " at " + part.place
			}
		}
	}
	return name
}
