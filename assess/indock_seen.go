package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/ship"
	"oakum/survey"
)

// FilmRow is one set of film readings of the docking, held to its rule.
type FilmRow struct {
	ID      string `json:"id"`
	Kind    string `json:"kind"`
	Date    string `json:"date"`
	Zone    string `json:"zone"`
	Place   string `json:"place"`
	Mean    Figure `json:"mean"`
	Nominal Figure `json:"nominal"`
	Verdict string `json:"verdict"`
	Who     string `json:"who"`
}

// LeakRow is water seen coming in, or running out of her, while she stands in dock.
type LeakRow struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"`
	Number string `json:"number"`
	Date   string `json:"date"`
	Place  string `json:"place"`
	Source string `json:"source"`
	Rate   Figure `json:"rate"`
	State  string `json:"state"`
	Notes  string `json:"notes"`
}

// seenInDock gathers the films and the leaks since the water went, newest first.
func (c *inquiry) seenInDock(p *InDockPage, s stay) {
	if s.from.IsZero() {
		return
	}
	for _, e := range dossier.All[survey.Film](c.d) {
		if e.Body.Date.Compare(s.from) >= 0 && !c.later(e.Body.Date) {
			p.Films = append(p.Films, c.filmRow(e))
		}
	}
	for _, e := range dossier.All[survey.Leak](c.d) {
		b := e.Body
		if b.Date.Compare(s.from) < 0 || c.later(b.Date) {
			continue
		}
		r := LeakRow{ID: e.ID, Kind: "leak", Number: b.Number, Date: b.Date.String(), Place: b.Place.String(), Source: cmp.Or(b.Source, "unknown"), State: cmp.Or(b.State, "unknown"), Notes: cmp.Or(b.Notes, b.Cause), Rate: notYetFigure("rate", "rate").of("leak", e.ID)}
		if b.Rate != nil {
			r.Rate = known("rate", "rate", *b.Rate, "L/h", basisOf(e.Head, field.Measured), "").of("leak", e.ID)
		}
		p.Leaks = append(p.Leaks, r)
	}
	slices.SortStableFunc(p.Films, func(a, b FilmRow) int { return cmp.Compare(b.Date, a.Date) })
	slices.SortStableFunc(p.Leaks, func(a, b LeakRow) int { return cmp.Compare(b.Date, a.Date) })
}

func (c *inquiry) filmRow(e dossier.Entry[survey.Film]) FilmRow {
	b := e.Body
	r := FilmRow{ID: e.ID, Kind: "film", Date: b.Date.String(), Place: b.Place.String(), Who: b.Who, Verdict: "readings or nominal film missing",
		Mean: notYetFigure("mean", "mean").of("film", e.ID), Nominal: notYetFigure("nominal", "nominal").of("film", e.ID)}
	if z, ok := dossier.Find[ship.CoatingZone](c.d, b.Zone); ok {
		r.Zone = z.Body.Name
	}
	if b.Nominal == nil || len(b.Readings) == 0 {
		return r
	}
	r.Nominal = known("nominal", "nominal", *b.Nominal, "um", basisOf(e.Head, field.Documented), "").of("film", e.ID)
	sheet, out, err := c.judgeFilm(e)
	if err != nil {
		r.Verdict = err.Error()
		return r
	}
	r.Mean, r.Verdict = result(sheet, "mean", "mean"), "accepted"
	if !out.Pass {
		r.Verdict, r.Mean.Worry = "not accepted: "+strings.Join(out.Failed, "; "), 2
	}
	return r
}
