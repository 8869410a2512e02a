package assess

import (
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/plating"
	"oakum/ship"
)

// DoublerRow is one doubler, with the readings that were taken on it. What it covers is unknown until it comes off, or is gauged from inside.
type DoublerRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	Place    string `json:"place"`
	Fitted   string `json:"fitted"`
	Edges    string `json:"edges"`
	Readings int    `json:"readings"` // taken on the doubler itself
	Least    Figure `json:"least"`    // the doubler's own thickness
	Rate     Figure `json:"rate"`
	Area     Figure `json:"area"`
	Behind   Figure `json:"behind"`

	spot   ship.Spot
	side   ship.Side
	strake string
}

// doublerSlack is how far outside its frames a reading may lie and still be of a doubler, m. Common practice: as for a place re-found.
const doublerSlack = samePlace

// onDoubler is the number of the doubler that a reading gauges, or -1. A reading says so by its remark; whether one taken from outside is of the
// doubler or beside it nobody can tell afterwards.
func onDoubler(rows []DoublerRow, doublers []dossier.Entry[ship.Doubler], r reading) int {
	for i, e := range doublers {
		b, s := e.Body, rows[i].spot
		if b.Strake == r.body.Strake && b.Side.Meets(r.body.Side) && r.spot.X >= s.X0-doublerSlack && r.spot.X <= s.X1+doublerSlack {
			return i
		}
	}
	return -1
}

// doublers lists the doublers with their own readings, and hands back what no doubler claims.
func (c *inquiry) doublers(p *StandingPage, taken []reading) {
	p.Doublers = []DoublerRow{}
	list := dossier.All[ship.Doubler](c.d)
	l := c.locator()
	for _, e := range list {
		b := e.Body
		row := DoublerRow{ID: e.ID, Name: b.Name, Place: b.Place.String(), Fitted: b.Fitted.String(), Edges: b.EdgeState, spot: l.Locate(b.Place), side: b.Side, strake: b.Strake}
		row.Behind = unknown("behind", "hull plate behind it", "out of sight: unknown, not sound").of("doubler", e.ID).at(row.Place).worried(1)
		if b.Behind != "" {
			row.Behind.Note += "; last seen: " + b.Behind
		}
		if expires := expiryOf(b.Expires, b.Fitted); !expires.IsZero() && expires.Before(c.day) {
			row.Behind.Worry = 2
			row.Behind.Note += fmt.Sprintf("; the doubler is past its date, %s", expires)
		}
		if b.EdgeState == "leaking" {
			row.Behind.Worry = 3
			row.Behind.Note += "; its edge leaks"
		}
		row.Least, row.Rate = unknown("least", "thickness of the doubler", "nobody gauged it").of("doubler", e.ID), unknown("rate", "rate of loss", "").of("doubler", e.ID)
		row.Area = unknown("area", "covers", "its area is not entered").of("doubler", e.ID)
		if b.Area != nil {
			row.Area = known("area", "covers", *b.Area, "m2", basisOf(e.Head, field.Documented), "").of("doubler", e.ID)
		}
		p.Doublers = append(p.Doublers, row)
	}
	own := make([][]reading, len(list))
	lost := 0
	for _, r := range taken {
		if i := onDoubler(p.Doublers, list, r); i >= 0 {
			own[i] = append(own[i], r)
		} else {
			lost++
		}
	}
	for i := range list {
		c.doublerThickness(&p.Doublers[i], list[i], own[i])
	}
	if lost > 0 {
		p.Missing = append(p.Missing, Notice{What: fmt.Sprintf("%s taken on a doubler that is not entered.", count(lost, "reading was", "readings were")),
			Do: "Enter the doubler with its frames, strake and side; until then these readings count for nothing, as the plate behind was not gauged.", Kind: "doubler", Page: "standing", Worry: 1})
	}
}

func (c *inquiry) doublerThickness(row *DoublerRow, e dossier.Entry[ship.Doubler], list []reading) {
	row.Readings = len(list)
	if len(list) == 0 {
		return
	}
	newest := slices.MaxFunc(list, func(a, b reading) int { return a.body.Date.Compare(b.body.Date) })
	in := plating.Rate.New()
	in.Original = e.Body.Thickness
	if in.Original == nil {
		in.Original = newest.body.Original
	}
	least := 0.0
	for _, r := range list {
		q := asReading(r, "frame "+r.body.Frame)
		in.Readings = append(in.Readings, q)
		if r.body.Date.Compare(newest.body.Date) == 0 && (least == 0 || q.Thickness < least) {
			least = q.Thickness
		}
	}
	row.Least = known("least", "thickness of the doubler", least, "mm", field.Measured, "least of the readings of "+newest.body.Date.String()).of("doubler", e.ID)
	if in.Original == nil || e.Body.Fitted.IsZero() {
		row.Rate.Note = "the doubler's own thickness or its date is not entered"
		return
	}
	in.Built, in.Limit = &e.Body.Fitted, *in.Original*0.75
	sheet, out, err := work(c.book, plating.Rate, "doubler-"+e.ID, "the doubler "+row.Name+" itself", in, map[string]field.Given{
		"original": how(basisOf(e.Head, field.Documented), "as fitted"), "built": how(field.Documented, "fitted"), "limit": how(field.Assumed, "25 % gone"), "readings": how(field.Measured, "readings marked as of a doubler")})
	if err != nil {
		row.Rate.Note = err.Error()
		return
	}
	row.Least.Sheet = sheet.ID
	if out.Rate != nil {
		row.Rate = known("rate", "rate of loss", *out.Rate, "mm/y", field.Computed, "the fastest place").of("doubler", e.ID)
		row.Rate.Sheet = sheet.ID
		if out.RateSD != nil {
			row.Rate = row.Rate.band(*out.Rate-1.2816**out.RateSD, *out.Rate, *out.Rate+1.2816**out.RateSD)
		}
	}
}
