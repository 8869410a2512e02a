package assess

import (
	"fmt"
	"slices"
	"strings"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/coating"
	"oakum/ship"
	"oakum/survey"
)

// CoatingRow is one zone of paint.
type CoatingRow struct {
	ID        string `json:"id"`
	Zone      string `json:"zone"`
	System    string `json:"system"`
	Condition string `json:"condition"`
	Age       Figure `json:"age"`
	Bare      Figure `json:"bare"`
	Area      Figure `json:"area"`
	Litres    Figure `json:"litres"` // for its nominal film once over
	Packs     Figure `json:"packs"`
	Film      string `json:"film"` // what the film readings say
}

// PaintingPart is when the air lets people paint.
type PaintingPart struct {
	Says  []string `json:"says"`
	Dew   []Figure `json:"dew"`
	Hours []Figure `json:"hours"`
}

// Paint, where the records say nothing. From memory: a surface tolerant epoxy, 80 % solids, tins of 20 litres.
const (
	paintSolids = 0.80
	paintLoss   = 0.30
	paintPack   = 20e-3
	blastDepth  = 75e-6
)

func (c *inquiry) coatings(p *StandingPage) {
	p.Coatings = []CoatingRow{}
	films := map[string][]string{}
	for _, e := range dossier.All[survey.Film](c.d) {
		films[e.Body.Zone] = append(films[e.Body.Zone], c.filmWords(e))
	}
	for _, e := range dossier.All[ship.CoatingZone](c.d) {
		if e.Body.Metal == "bronze" {
			continue
		}
		p.Coatings = append(p.Coatings, c.coatingRow(e, films[e.ID]))
	}
	slices.SortStableFunc(p.Coatings, func(a, b CoatingRow) int { return b.Age.Worry - a.Age.Worry })
	c.painting(p)
}

func (c *inquiry) coatingRow(e dossier.Entry[ship.CoatingZone], films []string) CoatingRow {
	b := e.Body
	r := CoatingRow{ID: e.ID, Zone: b.Name, System: b.System, Condition: b.Condition, Film: strings.Join(films, "; ")}
	if r.Film == "" {
		r.Film = "no film reading"
	}
	life := orElse(b.DesignLife, coatingLife)
	r.Age = unknown("age", b.Name+": age of the coat", "the date it was applied is not entered").of("coating_zone", e.ID)
	if age, ok := b.Applied.YearsUntil(c.day); ok {
		r.Age = known("age", b.Name+": age of the coat", age, "y", basisOf(e.Head, field.Documented), "applied "+b.Applied.String()).of("coating_zone", e.ID)
		r.Age.Note = fmt.Sprintf("reckoned good for %.0f years", life)
		switch {
		case age > 1.5*life:
			r.Age.Worry = 2
		case age > life:
			r.Age.Worry = 1
		}
	}
	r.Bare = unknown("bare", "bare", "nobody has said how much is bare").of("coating_zone", e.ID)
	if b.BareShare != nil {
		r.Bare = known("bare", "bare", *b.BareShare, "%", basisOf(e.Head, field.Measured), "seen "+b.Seen.String()).of("coating_zone", e.ID)
	}
	r.Area, r.Litres, r.Packs = unknown("area", "area", "not entered").of("coating_zone", e.ID), unknown("litres", "paint", "the area or the film is not entered"), unknown("packs", "tins", "")
	if b.Area == nil {
		return r
	}
	r.Area = known("area", "area", *b.Area, "m2", basisOf(e.Head, field.Documented), "").of("coating_zone", e.ID)
	if b.Nominal == nil || *b.Nominal <= 0 {
		return r
	}
	in := coating.Quantity.New()
	in.Areas, in.DFT, in.Solids, in.Loss, in.Profile, in.Pack = []float64{*b.Area}, *b.Nominal, paintSolids, paintLoss, blastDepth, new(float64(paintPack))
	sheet, out, err := work(c.book, coating.Quantity, e.ID, "paint for "+b.Name, in, map[string]field.Given{"areas": how(basisOf(e.Head, field.Documented), "the zone"), "dft": how(basisOf(e.Head, field.Documented), "nominal film, all coats"), "solids": how(field.Assumed, "80 %, from memory: the tin says"),
		"loss": how(field.Assumed, "airless spray"), "profile": how(field.Assumed, "75 µm"), "pack": how(field.Assumed, "20 L"), "thinning": how(field.Assumed, "none"), "coats": how(field.Assumed, "the whole film")})
	if err != nil {
		r.Litres.Note = err.Error()
		return r
	}
	r.Litres = result(sheet, "litres", "paint").of("coating_zone", e.ID).band(out.Litres*0.85, out.Litres, out.Litres*1.3)
	r.Litres.Note = "losses are a painter's guess"
	r.Packs = wholeOf(result(sheet, "packs", "tins of 20 L"))
	return r
}

// filmWords judges one set of film readings.
func (c *inquiry) filmWords(e dossier.Entry[survey.Film]) string {
	if len(e.Body.Readings) == 0 || e.Body.Nominal == nil {
		return e.Body.Date.String() + ": readings or nominal film missing"
	}
	_, out, err := c.judgeFilm(e)
	switch {
	case err != nil:
		return e.Body.Date.String() + ": " + err.Error()
	case out.Pass:
		return fmt.Sprintf("%s: accepted, mean %.0f µm", e.Body.Date, out.Mean*1e6)
	}
	return fmt.Sprintf("%s: not accepted, mean %.0f µm (%s)", e.Body.Date, out.Mean*1e6, strings.Join(out.Failed, "; "))
}

// judgeFilm holds film readings to their rule, or to ISO 19840 where none is named.
func (c *inquiry) judgeFilm(e dossier.Entry[survey.Film]) (calc.Sheet, coating.AcceptanceOut, error) {
	in := coating.Acceptance.New()
	in.Readings, in.Nominal, in.Rule = e.Body.Readings, *e.Body.Nominal, "iso-19840"
	rule := how(field.Assumed, "ISO 19840 taken")
	if e.Body.Rule != "" {
		in.Rule, rule = e.Body.Rule, how(basisOf(e.Head, field.Documented), "")
	}
	given := map[string]field.Given{"readings": how(basisOf(e.Head, field.Measured), ""), "nominal": how(basisOf(e.Head, field.Documented), ""), "rule": rule, "correction": how(field.Assumed, "default")}
	return work(c.book, coating.Acceptance, e.ID, "film of "+e.Body.Date.String(), in, given)
}

// painting reads the climate log for dew point and the hours that allow painting, space by space.
func (c *inquiry) painting(p *StandingPage) {
	p.Painting = PaintingPart{Says: []string{}, Dew: []Figure{}, Hours: []Figure{}}
	newest := map[string]dossier.Entry[survey.Climate]{}
	n, good := map[string]int{}, map[string]int{}
	for _, e := range dossier.All[survey.Climate](c.d) {
		b := e.Body
		if b.Air == nil || b.Humidity == nil || b.Steel == nil || c.day.Before(b.Date) {
			continue
		}
		if e.Body.Date.Compare(newest[b.Space].Body.Date) >= 0 {
			newest[b.Space] = e
		}
		in := coating.Dew.New()
		in.Air, in.Humidity, in.Steel = *b.Air, *b.Humidity, b.Steel
		if out, err := coating.Dew.Fn(in); err == nil {
			n[b.Space]++
			if out.Go {
				good[b.Space]++
			}
		}
	}
	for _, space := range slices.Sorted(mapKeys(newest)) {
		e := newest[space]
		name := space
		if name == "" {
			name = "out of doors"
		}
		p.Painting.Dew = append(p.Painting.Dew, c.dewFigure(e, name))
		if n[space] > 0 {
			f := known("allows", name+": readings that allowed painting", float64(good[space])/float64(n[space]), "%", field.Computed, fmt.Sprintf("%d of %d readings", good[space], n[space]))
			p.Painting.Hours = append(p.Painting.Hours, f)
		}
	}
	if len(newest) == 0 {
		p.Painting.Says = append(p.Painting.Says, "No reading of air, humidity and steel together is entered: when paint will hold can't be told.")
	}
	c.forecastHours(p)
}

func (c *inquiry) dewFigure(e dossier.Entry[survey.Climate], name string) Figure {
	b := e.Body
	in := coating.Dew.New()
	in.Air, in.Humidity, in.Steel = *b.Air, *b.Humidity, b.Steel
	basis := basisOf(e.Head, field.Measured)
	sheet, out, err := work(c.book, coating.Dew, e.ID, name+", "+b.Date.String(), in, map[string]field.Given{"air": how(basis, ""), "humidity": how(basis, ""), "steel": how(basis, ""), "margin_wanted": how(field.Assumed, "ISO 8502-4"), "humidity_limit": how(field.Assumed, "common practice"), "constants": how(field.Assumed, "WMO")})
	label := name + ": steel over the dew point"
	if err != nil {
		return unknown("dew", label, err.Error())
	}
	f := result(sheet, "margin", label).of("climate", e.ID)
	f.Note = "on " + b.Date.String() + ": allows painting"
	if !out.Go {
		f.Note, f.Worry = "on "+b.Date.String()+": "+strings.Join(out.Reasons, "; "), 1
	}
	return f
}

// forecastHours reads a forecast, where one is entered with its hours.
func (c *inquiry) forecastHours(p *StandingPage) {
	in := coating.Window.New()
	for _, e := range dossier.All[survey.Climate](c.d) {
		b := e.Body
		if b.Forecast == nil || !*b.Forecast || b.Air == nil || b.Humidity == nil || b.Date.Before(c.day) || b.Time == "" {
			continue
		}
		in.Rows = append(in.Rows, coating.Weather{Time: b.Date.String() + "T" + b.Time, Air: *b.Air, Humidity: *b.Humidity, Steel: b.Steel, Wind: b.Wind, Rain: b.Rain})
	}
	if len(in.Rows) < 2 {
		p.Painting.Says = append(p.Painting.Says, "No forecast is entered: bring in a weather file of the next days, and the hours that allow painting stand here.")
		return
	}
	slices.SortFunc(in.Rows, func(a, b coating.Weather) int { return strings.Compare(a.Time, b.Time) })
	sheet, out, err := work(c.book, coating.Window, "standing", "hours of the forecast", in, map[string]field.Given{"rows": how(field.Documented, "forecast"), "lag": how(field.Assumed, "from memory"), "margin_wanted": how(field.Assumed, "ISO 8502-4"), "humidity_limit": how(field.Assumed, "common practice")})
	if err != nil {
		p.Painting.Says = append(p.Painting.Says, "The forecast can't be read: "+err.Error())
		return
	}
	p.Painting.Hours = append(p.Painting.Hours, result(sheet, "hours", "hours of the forecast that allow painting"))
	for _, s := range out.Spells {
		p.Painting.Says = append(p.Painting.Says, fmt.Sprintf("From %s to %s: %.0f hours.", s.From, s.To, s.Hours/3600))
	}
}
