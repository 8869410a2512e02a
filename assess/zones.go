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

// ZoneRow is one zone of the shell: how fast it goes, and the worst spot that nobody measured.
type ZoneRow struct {
	Zone     string `json:"zone"`
	Exposure string `json:"exposure"`
	Plates   int    `json:"plates"`
	Read     int    `json:"read"`
	Rate     Figure `json:"rate"`     // of the places with two surveys or more
	Expected Figure `json:"expected"` // of bare steel there
	Dead     Figure `json:"dead"`     // lost where bare while nothing guarded her
	Deepest  Figure `json:"deepest"`  // loss at the worst spot of the whole zone
	Least    Figure `json:"least"`    // thickness left there
	Through  Figure `json:"through"`  // chance that it is through
	Says     string `json:"says"`
}

// leastPlates is how many plates a zone must have read before its worst spot is worked out. Common practice: ten.
const leastPlates = 10

// zones gathers the plates by coating zone.
func (c *inquiry) zones(p *StandingPage, plates []gaugedPlate) {
	p.Zones = []ZoneRow{}
	by := map[string][]gaugedPlate{}
	names := map[string]dossier.Entry[ship.CoatingZone]{}
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		names[e.ID] = e
	}
	for _, g := range plates {
		name := c.zoneAt(g.spot)
		if e, ok := names[g.entry.Body.Zone]; ok {
			name = e.Body.Name
		}
		by[name] = append(by[name], g)
	}
	for _, name := range slices.Sorted(mapKeys(by)) {
		var zone dossier.Entry[ship.CoatingZone]
		for _, e := range names {
			if e.Body.Name == name {
				zone = e
			}
		}
		p.Zones = append(p.Zones, c.zoneRow(name, zone, by[name]))
	}
	slices.SortStableFunc(p.Zones, func(a, b ZoneRow) int {
		return cmp.Or(b.Through.Worry-a.Through.Worry, -compareValue(a.Deepest, b.Deepest))
	})
}

func (c *inquiry) zoneRow(name string, zone dossier.Entry[ship.CoatingZone], plates []gaugedPlate) ZoneRow {
	r := ZoneRow{Zone: name, Exposure: zone.Body.Exposure, Plates: len(plates)}
	const note = "fewer than ten plates of the zone were read"
	r.Deepest, r.Least, r.Through = unknown("deepest", "deepest loss of the zone", note), unknown("least", "least thickness of the zone", note), unknown("through", "chance that a spot is through", note)
	r.Rate = unknown("rate", "rate of loss", "no place was read often enough")
	var rates, lost []float64
	var thick []float64
	area, read := 0.0, 0.0
	for _, g := range plates {
		a, ok := g.area()
		if ok {
			area += a
		}
		for _, row := range g.rows {
			if row.left.known {
				rates = append(rates, row.left.rate)
			}
		}
		if g.worst != nil && ok {
			r.Read++
			read += a
			lost = append(lost, max(g.lost*g.original, 0))
			thick = append(thick, g.original)
		}
	}
	if len(rates) > 2 {
		slices.Sort(rates)
		q := func(p float64) float64 { return rates[int(p*float64(len(rates)-1))] }
		r.Rate = known("rate", "rate of loss", q(0.5), "mm/y", field.Computed, fmt.Sprintf("middle of %d places; from one in ten to nine in ten of them", len(rates))).band(q(0.1), q(0.5), q(0.9))
	}
	r.Expected = c.bareRate(name, zone)
	if r.Read >= leastPlates && area > read/float64(r.Read) {
		c.worstOf(&r, lost, thick, read/float64(r.Read), area)
	}
	return r
}

// exposureOf is a zone's exposure as the published rates name it, "" where there is none.
func exposureOf(zone string) string {
	return map[string]string{"immersed": "immersed", "block strip": "immersed", "waterline": "low-water", "splash": "splash", "mud": "below-bed"}[zone]
}

// bareRate is what bare steel of the zone's exposure loses, where nothing protects it.
func (c *inquiry) bareRate(name string, zone dossier.Entry[ship.CoatingZone]) Figure {
	const label = "bare and unprotected it would lose"
	in := plating.Corrosion.New()
	given := map[string]field.Given{"sides": how(field.Assumed, "outside only")}
	exposure := exposureOf(zone.Body.Exposure)
	switch {
	case zone.Body.Bare != nil:
		in.Rate = zone.Body.Bare
		given["rate"] = how(basisOf(zone.Head, field.Assumed), "the zone's record")
	case exposure != "":
		in.Exposure = &exposure
		given["exposure"] = how(field.Documented, "the zone's exposure")
	default:
		return unknown("expected", label, "the zone's exposure is not one that a published rate is for")
	}
	if age, ok := zone.Body.Applied.YearsUntil(c.day); ok && age > 0 {
		in.Age, in.Life, in.Transition = &age, coatingLife, 10
		if zone.Body.DesignLife != nil {
			in.Life = *zone.Body.DesignLife
		}
		given["age"], given["coating_life"], given["transition"] = how(field.Documented, "paint applied "+zone.Body.Applied.String()), how(basisOf(zone.Head, field.Assumed), "reckoned good for"), how(field.Assumed, "ten years, from memory")
	}
	sheet, _, err := work(c.book, plating.Corrosion, "zone-"+name, name, in, given)
	if err != nil {
		return unknown("expected", label, err.Error())
	}
	return result(sheet, "rate", label)
}

// worstOf works the worst spot of the zone from the deepest loss of each plate read.
func (c *inquiry) worstOf(r *ZoneRow, lost, thick []float64, patch, area float64) {
	slices.Sort(thick)
	in := plating.Extreme.New()
	in.Maxima, in.PatchArea, in.ZoneArea = lost, patch, area
	in.Thickness = new(thick[len(thick)/2])
	in.Limit = new(*in.Thickness * 0.75)
	sheet, out, err := work(c.book, plating.Extreme, "zone-"+r.Zone, r.Zone+": the worst spot that was not measured", in, map[string]field.Given{
		"maxima": how(field.Measured, "deepest loss of each plate that was read"), "patch_area": how(field.Computed, "mean area of a plate read"), "zone_area": how(field.Computed, "plates of the zone"), "plate_thickness": how(field.Documented, "middle of the originals"),
		"thickness": how(field.Documented, "middle of the originals"), "limit": how(field.Assumed, "25 % gone"), "model": how(field.Assumed, "Gumbel"), "growth": how(field.Assumed, "default")})
	if err != nil {
		r.Says = err.Error()
		return
	}
	take := func(f *Figure, low, mid, high string) {
		if _, ok := sheet.Result(mid); !ok {
			return
		}
		*f = result(sheet, mid, f.Label)
		a, okA := sheet.Result(low)
		b, okB := sheet.Result(high)
		if x, y := asNumber(a.Value), asNumber(b.Value); okA && okB && !math.IsNaN(x) && !math.IsNaN(y) {
			*f = f.band(min(x, y)/1000, *f.Value/1000, max(x, y)/1000)
		}
	}
	take(&r.Deepest, "deepest_p10", "deepest_p50", "deepest_p90")
	take(&r.Least, "least_p10", "least_p50", "least_p90")
	if _, ok := sheet.Result("probability_through"); ok {
		r.Through = chanceOf(result(sheet, "probability_through", r.Through.Label))
		switch {
		case out.Through != nil && *out.Through > 0.5:
			r.Through.Worry = 2
		case out.Through != nil && *out.Through > 0.05:
			r.Through.Worry = 1
		}
	}
	if len(out.Warnings) > 0 {
		r.Says = out.Warnings[0]
	}
}

// asNumber is a sheet's value as a number, NaN where it is none.
func asNumber(v any) float64 {
	if x, ok := v.(float64); ok {
		return x
	}
	return math.NaN()
}

// chanceOf words a small chance for people: nobody reads a power of ten.
func chanceOf(f Figure) Figure {
	if f.Value == nil {
		return f
	}
	p := *f.Value
	f = inUnit(f, p, "%")
	switch {
	case p < 0.001:
		f.Text = "under 0.1 %"
	case p > 0.999:
		f.Text = "almost certain"
	}
	return f
}

// wholeOf words a count.
func wholeOf(f Figure) Figure {
	if f.Value != nil {
		f.Text, f.Unit = fmt.Sprintf("%.0f", *f.Value), "1"
	}
	return f
}
