package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/field"
)

// OutlookPage answers what fails first, when, and what happens then.
type OutlookPage struct {
	Heading []string     `json:"heading"`
	First   *Figure      `json:"first,omitempty"` // the date band of first water under the plan in force
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
	c.runFutures(&p)
	c.firstWater(&p)
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

// firstWater tells when water is likely to come in first and what lets it in, from the futures of the plan in force. A part that the docking renews soon
// may be the likeliest to fail by itself and still not be the first: what the same futures say of her left as she lies stands beside it.
func (c *inquiry) firstWater(p *OutlookPage) {
	if p.Futures == nil || len(p.Futures.Plans) == 0 {
		return
	}
	n := p.Futures.N
	planned := &p.Futures.Plans[0]
	if len(planned.First) == 0 {
		p.Heading = append(p.Heading, "Nothing that is known lets water in within forty years.")
		return
	}
	f := planned.FirstWater
	if f.P10 != nil && *f.P10 < c.day.DecimalYear()+3 {
		f.Worry = 2
	}
	p.First = &f
	first := planned.First[0]
	says := fmt.Sprintf("With “%s”, first water is likely %s, most often by %s", planned.Name, f.spokenYears(), mostOften(planned.First, n))
	if planned.Docked.Value != nil && !first.Renewed {
		says += "; no work of that plan renews " + lowerFirst(first.What)
	}
	p.Heading = append(p.Heading, says+".")
	if left := p.left(); left != nil && len(left.First) > 0 && left.First[0].ID != first.ID {
		p.Heading = append(p.Heading, "Left as she lies, without that docking, it is most often by "+mostOften(left.First, n)+".")
	}
}

// left is the plan that docks her only when she must, where it is among those compared and not the first.
func (p *OutlookPage) left() *PlanFuture {
	if p.Futures == nil {
		return nil
	}
	if at := slices.IndexFunc(p.Futures.Plans, func(f PlanFuture) bool { return f.Key == planMust }); at > 0 {
		return &p.Futures.Plans[at]
	}
	return nil
}

// spokenYears is a band of dates within a sentence.
func (f Figure) spokenYears() string {
	switch {
	case f.P10 == nil:
		return "in fewer than one future in ten within forty years"
	case f.P90 == nil:
		return "between " + due{early: *f.P10, late: math.Inf(1)}.spoken()
	}
	return "between " + due{early: *f.P10, late: *f.P90}.spoken()
}

// mostOften names what lets the first water in most often in n futures, with what the futures can't tell apart from it.
func mostOften(rows []FirstRow, n int) string {
	same := tied(rows, n)
	says := fmt.Sprintf("%s (%.0f %% of futures)", rows[0].named(), 100*rows[0].Share)
	switch len(same) {
	case 0:
		return says
	case 1, 2:
		return says + ", which can't be told apart from " + strings.Join(same, " and ")
	}
	return fmt.Sprintf("%s, which can't be told apart from %d others", says, len(same))
}

// tied are the parts after the first whose shares can't be told apart from its own: each of n futures has one part first, so the variance of the
// difference of two shares is (a + b - (a-b)^2)/n.
func tied(rows []FirstRow, n int) (names []string) {
	for _, r := range rows[1:] {
		a, b := rows[0].Share, r.Share
		if a-b > 2*math.Sqrt((a+b-(a-b)*(a-b))/float64(n)) {
			break
		}
		names = append(names, r.named())
	}
	return names
}

// named is the part as a sentence calls it; a plate has no name but its place.
func (r FirstRow) named() string {
	if r.Kind != "thickness" || r.Place == "" {
		return r.What
	}
	return r.What + " at " + r.Place
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
