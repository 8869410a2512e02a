package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/plating"
	"oakum/ship"
)

// steel is the density of plate, kg/m3. Common practice.
const steel = 7850

// RenewalPart is what of the shell would have to be renewed, by each criterion in turn.
type RenewalPart struct {
	Criteria []CriterionRow `json:"criteria"`
	Plates   []RenewalRow   `json:"plates"`
	Unseen   []Figure       `json:"unseen"` // what the plates nobody read may hold
}

// CriterionRow is one criterion: so much of the original thickness may be lost.
type CriterionRow struct {
	Criterion string `json:"criterion"`
	Plates    Figure `json:"plates"`
	Area      Figure `json:"area"`
	Steel     Figure `json:"steel"`
}

// RenewalRow is one plate whose worst reading has lost a fifth or more, or may have.
type RenewalRow struct {
	ID        string `json:"id"`
	Plate     string `json:"plate"`
	Place     string `json:"place"`
	Readings  int    `json:"readings"`
	Lost      Figure `json:"lost"` // of the original thickness, by the worst reading
	Area      Figure `json:"area"`
	Steel     Figure `json:"steel"`
	HeadLimit Figure `json:"head_limit"` // least plate for the water over it
	By20      string `json:"by_20"`
	By25      string `json:"by_25"`
	By30      string `json:"by_30"`
}

// gaugedPlate is a plate with the places read on it.
type gaugedPlate struct {
	entry    dossier.Entry[ship.Plate]
	spot     ship.Spot
	original float64
	rows     []*PlateRow
	worst    *PlateRow
	lost, sd float64 // share of the original, worst place
	doubled  bool
}

// area is the plate's area, m2: as entered, or its length along times the width of its strake.
func (g gaugedPlate) area() (float64, bool) {
	if a := g.entry.Body.Area; a != nil {
		return *a, true
	}
	a := (g.spot.X1 - g.spot.X0) * (g.spot.G1 - g.spot.G0)
	return a, a > 0 && !math.IsNaN(a)
}

// chance that more than a share of the original is gone at the worst place.
func (g gaugedPlate) chance(share float64) float64 {
	if g.worst == nil || g.sd <= 0 {
		return 0
	}
	return math.Erfc((share-g.lost)/g.sd/math.Sqrt2) / 2
}

// words of a plate against a criterion.
func (g gaugedPlate) words(share float64) string {
	switch p := g.chance(share); {
	case p > 0.9:
		return "renew"
	case p > 0.1:
		return "doubtful"
	}
	return "stays"
}

// gauged puts the places read onto the plates they lie on. A plate of both sides is two.
func (c *inquiry) gauged(p *StandingPage) []gaugedPlate {
	byStrake := map[string][]*PlateRow{}
	for i := range p.Plates {
		byStrake[p.Plates[i].Strake] = append(byStrake[p.Plates[i].Strake], &p.Plates[i])
	}
	for _, rows := range byStrake {
		slices.SortStableFunc(rows, func(a, b *PlateRow) int { return cmp.Compare(a.spot.X, b.spot.X) })
	}
	c.indexPlates()
	var list []gaugedPlate
	for _, strake := range slices.Sorted(mapKeys(c.plateIndex)) {
		for _, pl := range c.plateIndex[strake] {
			g := gaugedPlate{entry: pl.entry, spot: pl.spot}
			switch b := pl.entry.Body; {
			case b.AsBuilt != nil:
				g.original = *b.AsBuilt
			case b.Thickness != nil:
				g.original = *b.Thickness
			}
			rows := byStrake[strake]
			from, _ := slices.BinarySearchFunc(rows, pl.spot.X0-0.05, func(r *PlateRow, x float64) int { return cmp.Compare(r.spot.X, x) })
			for _, r := range rows[from:] {
				if r.spot.X > pl.spot.X1+0.05 {
					break
				}
				if pl.entry.Body.Side.Meets(ship.Side(r.Side)) {
					g.take(r)
				}
			}
			for i := range p.Doublers {
				d := &p.Doublers[i]
				g.doubled = g.doubled || d.strake == strake && d.side.Meets(pl.entry.Body.Side) && d.spot.X0 < pl.spot.X1 && pl.spot.X0 < d.spot.X1
			}
			list = append(list, g)
		}
	}
	return list
}

func (g *gaugedPlate) take(r *PlateRow) {
	g.rows = append(g.rows, r)
	if r.Original.Value == nil || r.left.thickness <= 0 {
		return
	}
	original := *r.Original.Value / 1000
	if lost := 1 - r.left.thickness/original; g.worst == nil || lost > g.lost {
		g.worst, g.lost, g.sd, g.original = r, lost, max(r.left.sd/original, 1e-4), original
	}
}

// renewal works the list by the three criteria that yards and surveyors argue about.
func (c *inquiry) renewal(p *StandingPage, plates []gaugedPlate) {
	r := RenewalPart{Criteria: []CriterionRow{}, Plates: []RenewalRow{}, Unseen: []Figure{}}
	if len(plates) > 0 {
		for _, share := range []float64{0.20, 0.25, 0.30} {
			r.Criteria = append(r.Criteria, c.criterion(plates, share))
		}
		for _, g := range plates {
			if g.worst != nil && (g.lost >= 0.2 || g.chance(0.2) > 0.1) {
				r.Plates = append(r.Plates, c.renewalRow(g))
			}
		}
		slices.SortStableFunc(r.Plates, func(a, b RenewalRow) int { return -compareValue(a.Lost, b.Lost) })
		r.Plates = r.Plates[:min(len(r.Plates), 200)]
		c.unseen(&r, plates)
	}
	p.Renewal = r
}

// criterion counts what surely and what perhaps is past a share lost.
func (c *inquiry) criterion(plates []gaugedPlate, share float64) CriterionRow {
	in := plating.Wastage.New()
	in.Rule, in.Share, in.Original = "own", &share, 10e-3
	sheet := enter(c.book, plating.Wastage, fmt.Sprintf("criterion-%.0f", share*100), fmt.Sprintf("%.0f %% of the original lost, a plate of 10 mm", share*100), in,
		map[string]field.Given{"original": how(field.Assumed, "a plate of 10 mm, to show the rule"), "rule": how(field.Assumed, "a criterion to compare"), "share": how(field.Assumed, "")})
	var n, a, t [3]float64 // surely, expected, perhaps
	lacking := 0
	for _, g := range plates {
		p := g.chance(share)
		area, ok := g.area()
		if g.worst != nil && p > 0.1 && !ok {
			lacking++
		}
		for i, take := range [3]float64{boolean(p > 0.9), p, boolean(p > 0.1)} {
			n[i] += take
			if ok {
				a[i] += take * area
				t[i] += take * area * g.original * steel
			}
		}
	}
	note := "surely to perhaps: nine chances in ten to one in ten, whole plates, of those read"
	if lacking > 0 {
		note += fmt.Sprintf("; %s without an area", count(lacking, "plate", "plates"))
	}
	row := CriterionRow{Criterion: fmt.Sprintf("%.0f %% of the original gone", share*100)}
	row.Plates = known("plates", "plates to renew", math.Round(n[1]), "1", field.Computed, "").band(n[0], n[1], n[2]).noted(note)
	row.Area = known("area", "area", a[1], "m2", field.Computed, "").band(a[0], a[1], a[2]).noted(note)
	row.Steel = known("steel", "steel", t[1], "t", field.Computed, "area by original thickness by 7850 kg/m³").band(t[0], t[1], t[2]).noted(note)
	row.Plates.Sheet, row.Area.Sheet, row.Steel.Sheet = sheet, sheet, sheet
	return row
}

func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func (c *inquiry) renewalRow(g gaugedPlate) RenewalRow {
	b := g.entry.Body
	r := RenewalRow{ID: g.entry.ID, Plate: b.Name, Place: b.Place.String(), Readings: len(g.rows), By20: g.words(0.2), By25: g.words(0.25), By30: g.words(0.3)}
	r.Lost = known("lost", "lost of the original", g.lost, "%", field.Computed, "worst of its readings, "+g.worst.Newest).of("plate", r.ID).at(r.Place)
	r.Lost = r.Lost.band(g.lost-1.2816*g.sd, g.lost, g.lost+1.2816*g.sd)
	r.Lost.Sheet = g.worst.Thickness.Sheet
	switch {
	case g.chance(0.25) > 0.9:
		r.Lost.Worry = 3
	case g.chance(0.25) > 0.1:
		r.Lost.Worry = 2
	default:
		r.Lost.Worry = 1
	}
	r.Area, r.Steel = unknown("area", "area", "neither its area nor its strake's edges are entered"), unknown("steel", "steel", "its area is not known")
	if a, ok := g.area(); ok {
		r.Area = known("area", "area", a, "m2", basisOf(g.entry.Head, field.Documented), "whole plate").of("plate", r.ID)
		r.Steel = known("steel", "steel", a*g.original*steel, "t", field.Computed, "whole plate").of("plate", r.ID)
	}
	r.HeadLimit = c.headLimit(g)
	return r
}

// headLimit is the least plate for the water over it today, as a first screen.
func (c *inquiry) headLimit(g gaugedPlate) Figure {
	const label = "least for the head of water"
	b := g.entry.Body
	draft, ok := c.draftNow()
	spacing := orElse(b.FrameSpacing, c.spacingAt(g.spot.X))
	switch {
	case spacing <= 0:
		return unknown("head_limit", label, "the frame spacing is not known").of("plate", g.entry.ID)
	case !ok || !ship.Known(g.worst.spot.Z):
		return unknown("head_limit", label, "today's draft or the plate's height is not known").of("plate", g.entry.ID)
	case g.worst.spot.Z >= draft:
		f := known("head_limit", label, 0, "mm", field.Computed, "").of("plate", g.entry.ID)
		f.Text = "above the water"
		return f
	}
	in := plating.Head.New()
	in.Spacing, in.Length, in.Head, in.Thickness = spacing, b.PanelLength, draft-g.worst.spot.Z, new(g.worst.left.thickness)
	sheet, out, err := work(c.book, plating.Head, "plate-"+g.entry.ID, "plate "+b.Name, in, map[string]field.Given{
		"spacing": how(basisOf(g.entry.Head, field.Documented), ""), "length": how(basisOf(g.entry.Head, field.Documented), ""), "head": how(field.Computed, "draft less height"), "plate_thickness": how(field.Measured, "worst reading"),
		"allowable": how(field.Assumed, "common practice"), "edges": how(field.Assumed, "default"), "water_density": how(field.Assumed, "sea water"), "modulus": how(field.Assumed, "steel")})
	if err != nil {
		return unknown("head_limit", label, err.Error()).of("plate", g.entry.ID)
	}
	f := result(sheet, "thickness", label).of("plate", g.entry.ID)
	if out.Used != nil && *out.Used > 1 {
		f.Worry, f.Note = 2, "the plate is thinner than this screen asks for"
	}
	return f
}

// unseen says what the plates that nobody read may hold, by the count of those that were.
func (c *inquiry) unseen(r *RenewalPart, plates []gaugedPlate) {
	in := plating.Sample.New()
	all, read, below, doubled := 0, 0, 0, 0
	for _, g := range plates {
		all++
		if g.doubled {
			doubled++
		}
		if g.worst != nil {
			read++
			if g.lost > 0.25 {
				below++
			}
		}
	}
	r.Unseen = append(r.Unseen, known("unread", "plates without a reading", float64(all-read), "1", field.Computed, "").worried(min(all-read, 1)))
	if doubled > 0 {
		r.Unseen = append(r.Unseen, known("doubled", "plates behind a doubler, wholly or in part", float64(doubled), "1", field.Computed, "unknown, not sound").worried(1))
	}
	if read == 0 {
		return
	}
	in.Plates, in.Inspected, in.Below = &all, &read, &below
	sheet, _, err := work(c.book, plating.Sample, "shell", "plates of the shell past 25 % lost", in, map[string]field.Given{"plates": how(field.Documented, "plates entered"), "inspected": how(field.Measured, "plates with a reading"), "below": how(field.Measured, "worst reading past 25 %"), "confidence": how(field.Assumed, "default"), "wanted": how(field.Assumed, "default")})
	if err != nil {
		return
	}
	if _, ok := sheet.Result("upper_plates"); ok {
		r.Unseen = append(r.Unseen, wholeOf(result(sheet, "upper_plates", "plates past 25 % there may be in all, with 95 % confidence")).noted("holds where the plates read were drawn at random; a survey that sought the worst errs on the safe side"))
	}
	if _, ok := sheet.Result("needed_more"); ok {
		r.Unseen = append(r.Unseen, wholeOf(result(sheet, "needed_more", "plates still to read, to miss no more than one in twenty")))
	}
}

// spacingAt is how far apart the frames stand at a place, m; 0 where that is not known.
func (c *inquiry) spacingAt(x float64) float64 {
	l := c.locator()
	if l.Frames == nil {
		return 0
	}
	name, _ := l.Frames.At(x)
	n, err := l.Frames.Number(name)
	if err != nil {
		return 0
	}
	a, errA := l.Frames.X(frameName(int(n)), nil)
	b, errB := l.Frames.X(frameName(int(n)+1), nil)
	if errA != nil || errB != nil {
		return 0
	}
	return math.Abs(b - a)
}
