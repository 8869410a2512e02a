package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/plating"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// samePlace is how far apart along the ship two readings of one strake and side may be taken and still count as one place, m. Common practice: a place is
// re-found to about half a frame space.
const samePlace = 0.35

// PlateRow is one place of the shell, with what its readings say.
type PlateRow struct {
	ID        string   `json:"id"` // of the newest reading
	Place     string   `json:"place"`
	Strake    string   `json:"strake"`
	Side      string   `json:"side"`
	Readings  int      `json:"readings"`
	Newest    string   `json:"newest"`
	Thickness Figure   `json:"thickness"`
	Original  Figure   `json:"original"`
	Limit     Figure   `json:"limit"`
	Rate      Figure   `json:"rate"`
	Life      Figure   `json:"life"`
	Verdict   string   `json:"verdict"`
	Warnings  []string `json:"warnings"`

	spot   ship.Spot
	due    due
	left   wastage
	steps  []wasted
	record dossier.Head
	read   float64 // decimal year of the newest reading
}

// wasted is what a place lost from one survey to the next, m a year.
type wasted struct {
	from, to quantity.Date
	rate     float64
}

// stepsOf are the losses between the surveys of one place; two visits within a year are one survey.
func stepsOf(group []reading) []wasted {
	list := slices.Clone(group)
	slices.SortStableFunc(list, func(a, b reading) int { return a.body.Date.Compare(b.body.Date) })
	var steps []wasted
	for i := 1; i < len(list); i++ {
		years, ok := list[i-1].body.Date.YearsUntil(list[i].body.Date)
		if !ok || years < 1 {
			continue
		}
		steps = append(steps, wasted{list[i-1].body.Date, list[i].body.Date, (asReading(list[i-1], "").Thickness - asReading(list[i], "").Thickness) / years})
	}
	return steps
}

// wastage is what the futures need of a place, m and m a year.
type wastage struct {
	thickness, sd, rate, rateSD float64
	since                       float64 // years from the newest reading to today
	extra                       float64 // m, what years without protection since it was read have likely taken besides
	known                       bool
}

// reading is one thickness record where it lies.
type reading struct {
	head dossier.Head
	body survey.Thickness
	spot ship.Spot
}

func (c *inquiry) plates(p *StandingPage) {
	l := c.locator()
	lost := 0
	var doubled []reading
	for _, group := range c.readingsByPlace(l, p, &lost, &doubled) {
		row, ok := c.plateRow(group)
		if ok {
			p.Plates = append(p.Plates, row)
		}
	}
	c.doublers(p, doubled)
	sortPlates(p.Plates)
	if len(p.Plates) == 0 {
		p.Plates = []PlateRow{}
		p.Missing = append(p.Missing, Notice{What: "No thickness reading with a place is entered.", Do: "Import a thickness survey, or enter readings by hand.", Kind: "thickness", Page: "standing"})
	}
	if lost > 0 {
		p.Missing = append(p.Missing, Notice{
			What: fmt.Sprintf("%s could not be placed on the shell.", count(lost, "reading", "readings")),
			Do:   "Give the frame system, the strakes, or the reading's own frame and strake.", Kind: "thickness", Page: "ship", Worry: 1,
		})
	}
	p.Coverage = c.coverage(p.Plates)
}

// readingsByPlace sorts the readings by strake and side along the ship and cuts them where two neighbours stand too far apart to be one place.
// Readings of a doubler are handed out apart: they say nothing of the hull behind it.
func (c *inquiry) readingsByPlace(l ship.Locator, p *StandingPage, lost *int, doubled *[]reading) [][]reading {
	all := dossier.All[survey.Thickness](c.d)
	placed := make([]reading, 0, len(all))
	for i := range all {
		e := &all[i]
		b := &e.Body
		if b.Thickness == nil && len(b.Readings) == 0 {
			continue // no echo, not reached: kept as "never seen"
		}
		spot := l.Locate(b.Place)
		if !ship.Known(spot.X) || b.Strake == "" && !ship.Known(spot.Girth) {
			*lost++
			continue
		}
		placed = append(placed, reading{e.Head, *b, spot})
	}
	rows := map[string][]*reading{}
	kept := c.setAside(p, placed)
	for i := range kept {
		r := &kept[i]
		if r.body.Remark == "doubler" {
			*doubled = append(*doubled, *r)
			continue
		}
		key := r.body.Strake + "/" + string(r.body.Side)
		rows[key] = append(rows[key], r)
	}
	var groups [][]reading
	c.indexPlates()
	for _, key := range slices.Sorted(mapKeys(rows)) {
		order := slices.DeleteFunc(rows[key], c.renewedSince)
		slices.SortStableFunc(order, func(a, b *reading) int { return cmp.Compare(a.spot.X, b.spot.X) })
		list := make([]reading, len(order))
		for i, r := range order {
			list[i] = *r
		}
		start := 0
		for i := 1; i <= len(list); i++ {
			if i == len(list) || list[i].spot.X-list[i-1].spot.X > samePlace || list[i].spot.X-list[start].spot.X > 2*samePlace {
				groups = append(groups, list[start:i])
				start = i
			}
		}
	}
	return groups
}

// renewedSince tells whether the plate that a reading was taken on has been renewed since.
func (c *inquiry) renewedSince(r *reading) bool {
	c.indexPlates()
	for i := range c.plateIndex[r.body.Strake] {
		p := &c.plateIndex[r.body.Strake][i]
		if !p.entry.Body.Renewed.IsZero() && p.holds(r) && r.body.Date.Before(p.entry.Body.Renewed) {
			return true
		}
	}
	return false
}

func mapKeys[V any](m map[string]V) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// plateRow works one place.
func (c *inquiry) plateRow(group []reading) (PlateRow, bool) {
	newest := slices.MaxFunc(group, func(a, b reading) int { return a.body.Date.Compare(b.body.Date) })
	place := newest.body.Place
	row := PlateRow{ID: newest.head.ID, Place: place.String(), Strake: place.Strake, Side: string(place.Side), Readings: len(group),
		Newest: newest.body.Date.String(), spot: newest.spot, record: newest.head, read: newest.body.Date.DecimalYear()}
	row.steps = stepsOf(group)
	original, basis, from := c.originalOf(newest)
	in := plating.Rate.New()
	in.Basis = "nominal"
	if c.particulars.OriginalThickness != "" {
		in.Basis = c.particulars.OriginalThickness
	}
	in.Original = original
	if !c.particulars.Built.IsZero() {
		in.Built = new(c.particulars.Built)
	}
	for _, r := range group {
		in.Readings = append(in.Readings, asReading(r, row.Place))
	}
	row.Thickness = known("thickness", "thickness", in.Readings[indexOf(group, newest)].Thickness, "mm", basisOf(newest.head, field.Measured), newest.body.Survey).of("thickness", newest.head.ID).at(row.Place)
	if original == nil {
		row.Original = unknown("original", "original thickness", "no plan, plate or earlier reading gives it")
		row.Life = unknown("life", "years to the limit", "the original thickness is unknown").of("thickness", row.ID).at(row.Place)
		row.Life.Worry = 1
		row.Limit, row.Rate = unknown("limit", "least allowed", ""), unknown("rate", "rate of loss", "")
		row.Verdict = "unknown"
		return row, true
	}
	row.Original = known("original", "original thickness", *original, "mm", basis, from)
	limit, ok := c.limitOf(newest, *original, &row)
	if !ok {
		return row, false
	}
	in.Limit = limit
	subject := "thickness-" + newest.head.ID
	out, err := plating.Rate.Fn(in)
	if err != nil {
		row.Life = unknown("life", "years to the limit", err.Error()).of("thickness", row.ID).at(row.Place)
		row.Rate, row.Verdict = unknown("rate", "rate of loss", err.Error()), "unknown"
		return row, true
	}
	sheet := enter(c.book, plating.Rate, subject, row.Place, in, map[string]field.Given{
		"original": how(basis, from), "limit": how(field.Computed, "wastage rule"), "readings": how(field.Measured, surveysOf(group)), "built": how(field.Documented, "particulars"),
	})
	row.figures(out, sheet, c.day, newest.body.Date)
	return row, true
}

func indexOf(group []reading, r reading) int {
	return slices.IndexFunc(group, func(x reading) bool { return x.head.ID == r.head.ID })
}

func surveysOf(group []reading) string {
	var names []string
	for _, r := range group {
		if n := r.body.Survey; n != "" && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return strings.Join(names, ", ")
}

func asReading(r reading, place string) plating.Reading {
	t := r.body.Thickness
	if t == nil {
		t = new(slices.Min(r.body.Readings))
	}
	out := plating.Reading{Thickness: *t, Date: r.body.Date, SD: 1e-4, Place: place, Group: r.body.Strake, Surface: "smooth", Echo: "multiple"}
	if r.body.SD != nil {
		out.SD = *r.body.SD
	}
	if r.body.Remark == "pit" || r.body.Remark == "scale" {
		out.Surface = "rough"
	}
	out.Paint = r.body.Paint == "yes"
	if strings.Contains(r.body.Instrument, "single") {
		out.Echo = "single"
	}
	return out
}

func (row *PlateRow) figures(out plating.RateOut, sheet string, day, seen quantity.Date) {
	row.Warnings = append([]string{}, out.Warnings...)
	row.Verdict = out.Verdict
	row.Thickness.Sheet = sheet
	row.left = wastage{thickness: out.Thickness, sd: out.SD}
	if years, ok := seen.YearsUntil(day); ok {
		row.left.since = max(years, 0)
	}
	if out.Rate == nil || *out.Rate <= 0 {
		row.Rate = unknown("rate", "rate of loss", "no loss that the readings can show").of("thickness", row.ID)
		if out.Rate != nil {
			row.Rate = known("rate", "rate of loss", *out.Rate, "mm/y", field.Computed, "").of("thickness", row.ID)
		}
		row.Rate.Sheet = sheet
		row.Life = unknown("life", "years to the limit", "no loss that the readings can show").of("thickness", row.ID).at(row.Place)
		row.Life.Sheet, row.Life.Text, row.Life.Basis = sheet, "no loss seen", field.Computed
		if out.Verdict == "refer" || out.Verdict == "renew" {
			row.Life.Worry, row.Life.Text = 2, "at or under its limit"
		}
		return
	}
	row.left.rate, row.left.rateSD, row.left.known = *out.Rate, *out.RateSD, true
	row.Rate = known("rate", "rate of loss", *out.Rate, "mm/y", field.Computed, "").of("thickness", row.ID)
	row.Rate.Sheet = sheet
	row.Rate = row.Rate.band(max(*out.Rate-1.2816**out.RateSD, 0), *out.Rate, *out.Rate+1.2816**out.RateSD)
	row.lifeFigure(out, sheet, day, seen)
}

func (row *PlateRow) lifeFigure(out plating.RateOut, sheet string, day, seen quantity.Date) {
	f := known("life", "years to the limit", *out.Life, "y", field.Computed, "").of("thickness", row.ID).at(row.Place)
	f.Sheet = sheet
	low, high := *out.Life, math.Inf(1)
	if out.LifeP10 != nil {
		low = *out.LifeP10
	}
	if out.LifeP90 != nil {
		high = *out.LifeP90
	}
	f = f.band(low, *out.Life, high)
	row.due = dueAfter(seen, low, *out.Life, high)
	f.Text = row.due.words(day.DecimalYear())
	switch {
	case out.Verdict == "renew", out.Verdict == "refer" && row.due.likelyBefore(day, 0):
		f.Worry = 3
	case row.due.earlyBefore(day, 0), out.Verdict == "refer":
		f.Worry = 2
	case row.due.earlyBefore(day, 10), out.Verdict == "watch":
		f.Worry = 1
	}
	f.Label = "plate reaches its limit"
	row.Life = f
}
