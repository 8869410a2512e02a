package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/plating"
	"oakum/quantity"
	"oakum/ship"
)

// wetted are the exposures that impressed current and anodes guard.
func wetted(exposure string) bool {
	return slices.Contains([]string{"immersed", "waterline", "block strip", "mud"}, exposure)
}

// withoutProtection feeds the years in which nothing guarded her into her plates: a place that was read before them, and is bare, has gone on at the rate
// of bare steel. Its early date moves forward by that; whether it is bare nobody knows, so its likely date stays.
func (c *inquiry) withoutProtection(p *StandingPage) {
	zones := map[string]dossier.Entry[ship.CoatingZone]{}
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		zones[e.Body.Name] = e
	}
	today := c.day.DecimalYear()
	for i := range p.Zones {
		z := &p.Zones[i]
		z.Dead = c.lostUnguarded(*z, zones[z.Zone], yearsDead(p.Protection.Spans, 0, today))
	}
	for i := range p.Plates {
		r := &p.Plates[i]
		e, ok := zones[c.zoneAt(r.spot)]
		if !ok || !wetted(e.Body.Exposure) || !r.left.known || r.left.rate <= 0 {
			continue
		}
		years := yearsDead(p.Protection.Spans, r.read, today)
		rate, ok := bareRateOf(e.Body)
		extra := (rate - r.left.rate) * years
		if !ok || extra <= 0 {
			continue
		}
		r.left.extra = extra * orElse(e.Body.BareShare, 1)
		r.unguarded(c.day, years, extra)
	}
	sortPlates(p.Plates)
}

// lostUnguarded is what bare steel of a zone lost while nothing guarded her.
func (c *inquiry) lostUnguarded(z ZoneRow, e dossier.Entry[ship.CoatingZone], years float64) Figure {
	const label = "lost where bare, in the years without current"
	rate, ok := bareRateOf(e.Body)
	switch {
	case !wetted(z.Exposure):
		return aboveWater("dead", label)
	case years <= 0:
		f := known("dead", label, 0, "mm", field.Computed, "no time without current is on record")
		f.Text = "none known"
		return f
	case !ok:
		return unknown("dead", label, "no rate of bare steel is known here")
	}
	f := known("dead", label, rate*years, "mm", field.Computed, fmt.Sprintf("%.1f years at the rate of bare steel", years))
	f.Text, f.Sheet = quantity.Format(rate*years, "mm", 2), z.Expected.Sheet
	return f
}

// bareRateOf is what bare steel of a zone loses, m/y: by the zone's record, or by its exposure.
func bareRateOf(b ship.CoatingZone) (float64, bool) {
	if b.Bare != nil {
		return *b.Bare, true
	}
	exposure := exposureOf(b.Exposure)
	if exposure == "" {
		return 0, false
	}
	in := plating.Corrosion.New()
	in.Exposure = &exposure
	out, err := plating.Corrosion.Fn(in)
	if err != nil {
		return 0, false
	}
	return out.Rate, true
}

// yearsDead are the years from one decimal year to another in which no current flowed, so far as is known.
func yearsDead(spans []ProtectedSpan, from, to float64) float64 {
	if to <= from {
		return 0
	}
	return bareShare(spans, from, to) * (to - from)
}

// unguarded moves the early date of a place by what it may have lost in years without protection after it was read.
func (row *PlateRow) unguarded(day quantity.Date, years, extra float64) {
	row.due.early -= extra / row.left.rate
	words := fmt.Sprintf("read before %.1f years without current: %s more may be gone where it is bare", years, quantity.Format(extra, "mm", 2))
	row.Warnings = append(row.Warnings, words)
	row.Life.Note = strings.TrimPrefix(row.Life.Note+fmt.Sprintf("; %.1f years without current since it was read", years), "; ")
	if row.Life.Value == nil {
		return
	}
	if row.Life.P10 != nil {
		row.Life.P10 = new(*row.Life.P10 - extra/row.left.rate)
	}
	row.Life.Text = row.due.words(day.DecimalYear())
	switch {
	case row.due.earlyBefore(day, 0):
		row.Life.Worry = max(row.Life.Worry, 2)
	case row.due.earlyBefore(day, 10):
		row.Life.Worry = max(row.Life.Worry, 1)
	}
}

// sortPlates puts the worst first.
func sortPlates(list []PlateRow) {
	slices.SortStableFunc(list, func(a, b PlateRow) int {
		return cmp.Or(b.Life.Worry-a.Life.Worry, compareLow(a.Life, b.Life), strings.Compare(a.Place, b.Place))
	})
}
