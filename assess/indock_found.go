package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// FoundRow is one thing found.
type FoundRow struct {
	ID          string       `json:"id"`
	Number      string       `json:"number"`
	Date        string       `json:"date"`
	Place       string       `json:"place"`
	Finding     string       `json:"finding"`
	Against     string       `json:"against"` // expectation
	Condition   string       `json:"condition"`
	Measure     Figure       `json:"measure"`
	Proposed    string       `json:"proposed"`
	Cost        Figure       `json:"cost"`
	Days        Figure       `json:"days"`
	Disposition string       `json:"disposition"`
	Who         string       `json:"decided_by"`
	AsLeft      string       `json:"as_left"`
	Photos      int          `json:"photos"`
	Pictures    []PictureRow `json:"pictures"`
}

func (c *inquiry) foundRows(p *InDockPage) {
	pictures := c.pictures()
	for _, e := range dossier.All[plan.Found](c.d) {
		if c.later(e.Body.Date) {
			p.later++
			continue
		}
		r := foundRow(e)
		c.priceFound(&r, e)
		r.Pictures = picturesOf(pictures, e)
		r.Photos = len(r.Pictures)
		p.Found = append(p.Found, r)
		closed := r.Disposition != "open" && r.Disposition != "monitor" && r.Disposition != "defer"
		if closed && e.Body.AsLeft == "" && c.past(e.Body.Decided) {
			p.Missing = append(p.Missing, Notice{What: "Found report " + cmp.Or(r.Number, r.ID) + " says how it was found and not how it was left.", Do: "Enter it as left, with a photograph of the same place.", Kind: "found", ID: e.ID, Place: r.Place, Page: "indock"})
		}
	}
	slices.SortStableFunc(p.Found, func(a, b FoundRow) int {
		return cmp.Or(cmp.Compare(decided(a), decided(b)), cmp.Compare(b.Date, a.Date), cmp.Compare(a.Number, b.Number))
	})
}

func decided(r FoundRow) int {
	if r.Disposition == "open" {
		return 0
	}
	return 1
}

func foundRow(e dossier.Entry[plan.Found]) FoundRow {
	b := e.Body
	r := FoundRow{ID: e.ID, Number: b.Number, Date: b.Date.String(), Place: b.Place.String(), Finding: b.Finding, Against: cmp.Or(b.Against, "unknown"), Condition: b.Condition, Proposed: b.Proposed,
		Disposition: cmp.Or(b.Disposition, "open"), Who: b.Decider, AsLeft: b.AsLeft}
	given := func(key, label string, x *float64, unit string) Figure {
		if x == nil {
			return notYetFigure(key, label).of("found", e.ID)
		}
		return known(key, label, *x, unit, basisOf(e.Head, field.Measured), e.BasisNote).of("found", e.ID).at(r.Place)
	}
	r.Cost, r.Days = given("cost", "cost", b.Cost, "money"), given("days", "days", b.Days, "d")
	r.Measure = notYetFigure("measure", "measured").of("found", e.ID)
	for _, m := range measures {
		if x := m.of(b); x != nil {
			r.Measure = given(m.name, m.name, x, m.unit)
			break
		}
	}
	if r.Disposition == "open" && r.Against == "worse" {
		r.Cost.Worry = 2
	}
	return r
}

// priceFound prices a finding that has a quantity and no cost by the rate agreed for its item of work.
func (c *inquiry) priceFound(r *FoundRow, e dossier.Entry[plan.Found]) {
	if x, from := c.foundCost(e.Body); x != nil && e.Body.Cost == nil {
		worry := r.Cost.Worry
		r.Cost = known("cost", "cost", *x, "money", field.Computed, from).of("found", e.ID).at(r.Place)
		r.Cost.Worry = worry
	}
}

// foundCost is what a finding costs: as written, or its quantity at the agreed rate of its item of work.
func (c *inquiry) foundCost(b plan.Found) (x *float64, from string) {
	if b.Cost != nil {
		return b.Cost, "the found report"
	}
	w, ok := dossier.Find[plan.Work](c.d, b.Work)
	if !ok || b.Quantity == nil {
		return nil, ""
	}
	rate, ok := dossier.Find[plan.Rate](c.d, w.Body.Rate)
	if !ok || rate.Body.Likely == nil || b.Per != "" && rate.Body.Per != b.Per {
		return nil, ""
	}
	return new(*b.Quantity * *rate.Body.Likely), fmt.Sprintf("%g %s at the agreed rate of %g", *b.Quantity, rate.Body.Per, *rate.Body.Likely)
}

// measures are the ways a finding is measured, as triggers name them, with the unit a bare limit stands in.
var measures = []struct {
	name, unit string
	of         func(plan.Found) *float64
}{
	{"thickness", "mm", func(f plan.Found) *float64 { return f.Thickness }},
	{"share lost", "%", func(f plan.Found) *float64 { return f.ShareLost }},
	{"area", "m2", func(f plan.Found) *float64 { return f.Area }},
	{"length", "m", func(f plan.Found) *float64 { return f.Length }},
	{"depth", "mm", func(f plan.Found) *float64 { return f.Depth }},
	{"clearance", "mm", func(f plan.Found) *float64 { return f.Clearance }},
	{"share", "%", func(f plan.Found) *float64 { return f.Share }},
	{"count", "1", func(f plan.Found) *float64 {
		if f.Count == nil {
			return nil
		}
		return new(float64(*f.Count))
	}},
}
