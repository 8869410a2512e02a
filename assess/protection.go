package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/potential"
	"oakum/formula/seawater"
	"oakum/ship"
	"oakum/survey"
)

// ProtectionPart is what keeps the hull from wasting, and when nothing did.
type ProtectionPart struct {
	Says     []string          `json:"says"`
	Water    []Figure          `json:"water"`
	Surveys  []PotentialSurvey `json:"surveys"`
	Stations []StationRow      `json:"stations"` // of the newest survey
	Log      []Figure          `json:"log"`
	Findings []Notice          `json:"findings"`
	Spans    []ProtectedSpan   `json:"spans"`
	Points   []LogPoint        `json:"points"`
	Rates    []RateSpan        `json:"rates"` // how fast the plates went between surveys
	Demand   []DemandRow       `json:"demand"`
	Asked    []Figure          `json:"asked"`
	Anodes   []AnodePlanRow    `json:"anode_plan"`
	Set      []Figure          `json:"set"` // the impressed set, sized
}

// PotentialSurvey is one day's potentials, all on the scale of silver chloride in sea water.
type PotentialSurvey struct {
	Date      string `json:"date"`
	Electrode string `json:"electrode"`
	Current   string `json:"current"` // impressed current, on or off
	Readings  int    `json:"readings"`
	Under     int    `json:"under"` // of them, less negative than protected steel
	Over      int    `json:"over"`
	Weakest   Figure `json:"weakest"`
	Strongest Figure `json:"strongest"`
	Flags     string `json:"flags"`
}

// StationRow is one potential of the newest survey.
type StationRow struct {
	ID      string  `json:"id"`
	Place   string  `json:"place"`
	Level   string  `json:"level"`
	Read    Figure  `json:"read"`
	Silver  Figure  `json:"silver"`
	Verdict string  `json:"verdict"`
	X       float64 `json:"x"`
	Z       float64 `json:"z"`
	Side    string  `json:"side"`
}

// waters is the water of this place: the means of the log of the last ten years it covers.
type waters struct {
	salinity, temperature, resistivity float64
	count                              int
	known                              bool
}

func (c *inquiry) water() waters {
	var w waters
	n := 0
	for _, e := range dossier.All[survey.Water](c.d) {
		if e.Body.Salinity == nil || c.day.Before(e.Body.Date) || e.Body.Date.DecimalYear() < c.day.DecimalYear()-10 {
			continue
		}
		w.salinity += *e.Body.Salinity
		w.temperature += orElse(e.Body.Temperature, 12)
		n++
	}
	if n == 0 {
		return w
	}
	w.salinity, w.temperature, w.count, w.known = w.salinity/float64(n), w.temperature/float64(n), n, true
	in := seawater.Resistivity.New()
	in.Salinity, in.Temperature = &w.salinity, w.temperature
	if out, err := seawater.Resistivity.Fn(in); err == nil && out.Resistivity != nil {
		w.resistivity = *out.Resistivity
	}
	return w
}

// word of the water for the anode tables.
func (w waters) word() string {
	switch {
	case w.salinity > 25:
		return "sea"
	case w.salinity > 1:
		return "brackish"
	}
	return "fresh"
}

func (c *inquiry) protection(p *StandingPage) {
	r := ProtectionPart{Says: []string{}, Water: []Figure{}, Surveys: []PotentialSurvey{}, Stations: []StationRow{}, Log: []Figure{}, Findings: []Notice{}, Spans: []ProtectedSpan{},
		Points: []LogPoint{}, Rates: []RateSpan{}, Demand: []DemandRow{}, Asked: []Figure{}, Anodes: []AnodePlanRow{}, Set: []Figure{}}
	w := c.water()
	c.waterFigures(&r, w)
	c.potentials(&r, w)
	c.rectifier(&r, w)
	c.rateSpans(&r, p)
	c.demand(&r, w)
	p.Protection = r
}

func (c *inquiry) waterFigures(r *ProtectionPart, w waters) {
	if !w.known {
		r.Says = append(r.Says, "No sample of the water is entered: sea water is taken, and readings of bare silver chloride are not corrected for brackish water.")
		return
	}
	from := fmt.Sprintf("mean of %d samples of the last ten years", w.count)
	r.Water = append(r.Water, known("salinity", "salinity of her water", w.salinity, "psu", field.Measured, from), known("temperature", "its temperature", w.temperature, "degC", field.Measured, from))
	in := seawater.Resistivity.New()
	in.Salinity, in.Temperature = &w.salinity, w.temperature
	if sheet, _, err := work(c.book, seawater.Resistivity, "here", "the water she lies in", in, map[string]field.Given{"salinity": how(field.Measured, from), "temperature": how(field.Measured, from)}); err == nil {
		r.Water = append(r.Water, result(sheet, "resistivity", "its resistivity"))
	}
}

// silver is a reading on the scale of silver chloride in sea water.
type silver struct {
	e       dossier.Entry[survey.Potential]
	in      potential.ReadIn
	out     potential.ReadOut
	refused string
}

func (c *inquiry) silverOf(e dossier.Entry[survey.Potential], w waters) silver {
	b := e.Body
	s := silver{e: e, in: potential.Read.New()}
	s.in.Reading, s.in.Electrode = *b.Reading, b.Electrode
	if b.Electrode == "" || b.Electrode == "unknown" {
		s.refused = "the electrode is not entered: the reading says nothing"
		return s
	}
	s.in.Salinity, s.in.Temperature = 35, 12
	if w.known {
		s.in.Salinity, s.in.Temperature = w.salinity, w.temperature
	}
	s.in.Salinity, s.in.Temperature = orElse(b.Salinity, s.in.Salinity), orElse(b.Temperature, s.in.Temperature)
	out, err := potential.Read.Fn(s.in)
	if err != nil {
		s.refused = err.Error()
	}
	s.out = out
	return s
}

// potentials turns every survey of the hull's potential into one scale.
func (c *inquiry) potentials(r *ProtectionPart, w waters) {
	by := map[string][]silver{}
	for _, e := range dossier.All[survey.Potential](c.d) {
		if e.Body.Reading != nil && !c.day.Before(e.Body.Date) {
			key := e.Body.Date.String() + "|" + e.Body.Electrode + "|" + e.Body.Current
			by[key] = append(by[key], c.silverOf(e, w))
		}
	}
	keys := slices.Sorted(mapKeys(by))
	for _, key := range keys {
		r.Surveys = append(r.Surveys, c.potentialSurvey(by[key]))
	}
	slices.Reverse(r.Surveys)
	if len(keys) == 0 {
		r.Says = append(r.Says, "No potential of the hull is entered.")
		return
	}
	for _, s := range by[keys[len(keys)-1]] {
		r.Stations = append(r.Stations, c.stationRow(s))
	}
	slices.SortStableFunc(r.Stations, func(a, b StationRow) int {
		return cmp.Or(b.Silver.Worry-a.Silver.Worry, -compareValue(a.Silver, b.Silver))
	})
	last := r.Surveys[0]
	if last.Under > 0 {
		r.Says = append(r.Says, fmt.Sprintf("On %s %d of %d readings stood short of protection once all are on one scale.", last.Date, last.Under, last.Readings))
	} else {
		r.Says = append(r.Says, fmt.Sprintf("On %s every reading stood in the protected range, on one scale.", last.Date))
	}
}

func (c *inquiry) potentialSurvey(list []silver) PotentialSurvey {
	b := list[0].e.Body
	s := PotentialSurvey{Date: b.Date.String(), Electrode: electrodeWords(b.Electrode), Current: b.Current, Readings: len(list)}
	s.Weakest, s.Strongest = unknown("weakest", "weakest", "no reading can be turned into the scale"), unknown("strongest", "strongest", "")
	weak, strong := math.Inf(-1), math.Inf(1)
	var at [2]silver
	flags := map[string]int{}
	for _, v := range list {
		if v.refused != "" {
			flags[v.refused]++
			continue
		}
		switch v.out.Verdict {
		case "under", "free":
			s.Under++
		case "over":
			s.Over++
		}
		if v.out.SignGuess || v.e.Body.SignGiven != nil && !*v.e.Body.SignGiven {
			flags["written without a sign, taken as negative"]++
		}
		if v.out.Silver > weak {
			weak, at[0] = v.out.Silver, v
		}
		if v.out.Silver < strong {
			strong, at[1] = v.out.Silver, v
		}
	}
	if b.Electrode == "agcl-sea" && list[0].in.Salinity < 30 {
		flags[fmt.Sprintf("bare silver chloride in brackish water: moved by %+.0f mV", 1000*(at[0].out.Silver-at[0].out.Used))]++
	}
	if b.Neighbours == "yes" {
		flags["joined to other ships or the quay: their metal is in the reading"]++
	}
	for _, k := range slices.Sorted(mapKeys(flags)) {
		if flags[k] > 1 {
			k = fmt.Sprintf("%s (%d)", k, flags[k])
		}
		s.Flags = strings.TrimPrefix(s.Flags+"; "+k, "; ")
	}
	if !math.IsInf(weak, 0) {
		s.Weakest, s.Strongest = c.silverFigure(at[0], "weakest", "weakest"), c.silverFigure(at[1], "strongest", "strongest")
	}
	return s
}

func electrodeWords(e string) string {
	words := map[string]string{"agcl-sea": "bare silver chloride", "agcl-kcl": "silver chloride in its own solution", "copper-sulphate": "copper sulphate", "calomel": "calomel", "zinc": "zinc"}
	if w, ok := words[e]; ok {
		return w
	}
	return "not entered"
}

// silverFigure is one reading on the common scale, with its sheet.
func (c *inquiry) silverFigure(s silver, key, label string) Figure {
	if s.refused != "" {
		return unknown(key, label, s.refused).of("potential", s.e.ID)
	}
	basis := basisOf(s.e.Head, field.Measured)
	salinity := how(basis, "of the reading")
	if s.e.Body.Salinity == nil {
		salinity = how(field.Assumed, "mean of the water log, or sea water")
	}
	id := enter(c.book, potential.Read, s.e.ID, "potential at "+s.e.Body.Place.String(), s.in, map[string]field.Given{"reading": how(basis, s.e.Body.Date.String()), "electrode": how(basis, ""), "salinity": salinity, "temperature": salinity})
	f := known(key, label, s.out.Silver, "mV", field.Computed, "silver chloride in sea water").of("potential", s.e.ID).at(s.e.Body.Place.String())
	f.Sheet = id
	switch s.out.Verdict {
	case "free":
		f.Worry = 3
	case "under":
		f.Worry = 2
	case "over":
		f.Worry = 1
	}
	return f
}

func (c *inquiry) stationRow(s silver) StationRow {
	b := s.e.Body
	r := StationRow{ID: s.e.ID, Place: b.Place.String(), Level: b.Level, Verdict: verdictWords(s.out.Verdict), Side: sideLetter(b.Side)}
	if s.refused != "" {
		r.Verdict = "unknown"
	}
	r.Read = known("read", "as read", *b.Reading, "mV", basisOf(s.e.Head, field.Measured), electrodeWords(b.Electrode)).of("potential", s.e.ID)
	r.Silver = c.silverFigure(s, "silver", "on the common scale")
	spot := c.locator().Locate(b.Place)
	r.X = round(orElse(b.X, spot.X))
	if math.IsNaN(r.X) {
		r.X = 0
	}
	if draft, ok := c.draftNow(); ok && b.Depth != nil {
		r.Z = round(draft - *b.Depth)
	}
	return r
}

func verdictWords(v string) string {
	return map[string]string{"under": "short of protection", "protected": "protected", "over": "over-protected: paint lifts", "free": "not protected at all"}[v]
}

// alongside are the anodes still on her, as the sheets take them.
func (c *inquiry) alongside() []dossier.Entry[ship.Anode] {
	var list []dossier.Entry[ship.Anode]
	for _, e := range dossier.All[ship.Anode](c.d) {
		if e.Body.Removed.IsZero() {
			list = append(list, e)
		}
	}
	return list
}
