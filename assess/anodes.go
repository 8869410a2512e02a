package assess

import (
	"fmt"
	"math"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/protection"
	"oakum/ship"
	"oakum/survey"
)

// AnodeRow is one anode or group of like ones, with what a diver said of it.
type AnodeRow struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Place  string `json:"place"`
	Alloy  string `json:"alloy"`
	Count  int    `json:"count"`
	Fitted string `json:"fitted"`
	Seen   string `json:"seen"`
	Share  Figure `json:"share"`
	Left   Figure `json:"left"`
	Says   string `json:"says"`

	due due
}

// anodeCapacity is the charge in a kilogram where nothing else is said, A.h/kg, from memory: zinc 780, aluminium 2000, magnesium 1100.
var anodeCapacity = map[string]float64{"zinc": 780, "aluminium": 2000, "magnesium": 1100}

func (c *inquiry) anodes(p *StandingPage) {
	p.Anodes = []AnodeRow{}
	for _, e := range dossier.All[ship.Anode](c.d) {
		if e.Body.Removed.IsZero() {
			p.Anodes = append(p.Anodes, c.anodeRow(e))
		}
	}
	if len(p.Anodes) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No anode is entered.", Do: "Enter the anodes with alloy, mass and date; a diver's note then gives their life.", Kind: "anode", Page: "standing"})
	}
}

func (c *inquiry) anodeRow(e dossier.Entry[ship.Anode]) AnodeRow {
	b := e.Body
	row := AnodeRow{ID: e.ID, Name: b.Name, Place: b.Place.String(), Alloy: b.Alloy, Count: 1, Fitted: b.Fitted.String(), due: never}
	if b.Count != nil {
		row.Count = *b.Count
	}
	label := b.Name
	if label == "" {
		label = "anodes"
	}
	row.Share = unknown("share", "share left", "no diver has looked").of("anode", e.ID)
	row.Left = unknown("left", label+": years left", "no diver has looked").of("anode", e.ID).at(row.Place)
	row.Left.Worry = 1
	seen := c.lastSeen(e.ID)
	if seen == nil {
		return row
	}
	share, ok := shareOf(seen.Body, b)
	if !ok {
		return row
	}
	row.Seen = seen.Body.Date.String()
	row.Share = known("share", "share left", share, "%", basisOf(seen.Head, field.Measured), "seen "+row.Seen).of("anode", e.ID)
	years, ok := b.Fitted.YearsUntil(seen.Body.Date)
	if !ok || b.MassNew == nil || years <= 0 {
		row.Left.Note = "the date fitted or the mass when new is not entered"
		return row
	}
	c.anodeLife(&row, e, *seen, share, years, label)
	return row
}

func (c *inquiry) anodeLife(row *AnodeRow, e dossier.Entry[ship.Anode], seen dossier.Entry[survey.AnodeSeen], share, years float64, label string) {
	in := protection.AnodeLife.New()
	in.MassNew, in.ShareLeft, in.Years = *e.Body.MassNew, share, years
	basis, note := field.Assumed, "from memory, by alloy"
	if v, ok := anodeCapacity[e.Body.Alloy]; ok {
		in.Capacity = v
	}
	if e.Body.Capacity != nil {
		in.Capacity, basis, note = *e.Body.Capacity, basisOf(e.Head, field.Documented), ""
	}
	if e.Body.Utilisation != nil {
		in.Utilisation = *e.Body.Utilisation
	}
	sheet, out, err := work(c.book, protection.AnodeLife, "anode-"+e.ID, label, in, map[string]field.Given{
		"mass_new": how(basisOf(e.Head, field.Documented), ""), "share_left": how(basisOf(seen.Head, field.Measured), "seen "+row.Seen), "years": how(field.Computed, "from the dates"), "capacity": how(basis, note), "utilisation": how(field.Assumed, "default")})
	if err != nil {
		row.Left.Note = err.Error()
		return
	}
	row.Says = out.Reading
	if out.Left == nil {
		row.Left.Note = "it has hardly worked: look whether it is joined to the hull"
		return
	}
	f := result(sheet, "life_left", label+": spent").of("anode", e.ID).at(row.Place)
	// A diver's share is good to about a tenth of the whole: common practice. It spreads the rate, and so the life left.
	spread := 0.1 / max(1-share, 0.1)
	row.due = dueAfter(seen.Body.Date, *out.Left*math.Max(1-spread, 0), *out.Left, *out.Left*(1+spread))
	f.Text, f.Note = row.due.words(c.day.DecimalYear()), fmt.Sprintf("%.0f %% left when seen %s", share*100, row.Seen)
	f.P10, f.P90 = new(row.due.early-c.day.DecimalYear()), new(row.due.late-c.day.DecimalYear())
	switch {
	case row.due.likelyBefore(c.day, 0):
		f.Worry = 2
	case row.due.earlyBefore(c.day, 5):
		f.Worry = 1
	}
	row.Left = f
}

func (c *inquiry) lastSeen(anode string) *dossier.Entry[survey.AnodeSeen] {
	var last *dossier.Entry[survey.AnodeSeen]
	for _, e := range dossier.All[survey.AnodeSeen](c.d) {
		if e.Body.Anode == anode && (e.Body.ShareLeft != nil || e.Body.MassLeft != nil) && (last == nil || e.Body.Date.Compare(last.Body.Date) >= 0) {
			last = &e
		}
	}
	return last
}

func shareOf(s survey.AnodeSeen, a ship.Anode) (float64, bool) {
	switch {
	case s.ShareLeft != nil:
		return *s.ShareLeft, true
	case s.MassLeft != nil && a.MassNew != nil && *a.MassNew > 0:
		return *s.MassLeft / *a.MassNew, true
	}
	return 0, false
}
