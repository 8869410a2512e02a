package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/potential"
	"oakum/formula/protection"
	"oakum/ship"
	"oakum/survey"
)

// ProtectedSpan is a stretch of years with one state of protection: protected, short, none, unknown.
type ProtectedSpan struct {
	From  float64 `json:"from"` // decimal years
	To    float64 `json:"to"`
	State string  `json:"state"`
	Text  string  `json:"text"`
}

// LogPoint is the rectifier log thinned to a month: means of current and potential.
type LogPoint struct {
	Year      float64  `json:"year"`
	Current   *float64 `json:"current,omitempty"`   // A
	Potential *float64 `json:"potential,omitempty"` // mV, silver chloride in sea water
}

// RateSpan is how fast plates went between two surveys, to be read beside the state of protection.
type RateSpan struct {
	From   float64 `json:"from"`
	To     float64 `json:"to"`
	Rate   Figure  `json:"rate"`
	Places int     `json:"places"`
	Bare   float64 `json:"bare_share"` // share of that time that is known to have been without protection
}

func (c *inquiry) rectifier(r *ProtectionPart, w waters) {
	in := protection.Log.New()
	var set dossier.Entry[ship.ImpressedSet]
	for _, e := range dossier.All[ship.ImpressedSet](c.d) {
		set = e
		in.Rated = e.Body.RatedAmps
	}
	var rows []dossier.Entry[survey.Rectifier]
	for _, e := range dossier.All[survey.Rectifier](c.d) {
		if !e.Body.Date.IsZero() && !c.day.Before(e.Body.Date) && (e.Body.Set == "" || set.ID == "" || e.Body.Set == set.ID) {
			rows = append(rows, e)
		}
	}
	slices.SortStableFunc(rows, func(a, b dossier.Entry[survey.Rectifier]) int {
		return cmp.Or(a.Body.Date.Compare(b.Body.Date), cmp.Compare(a.Body.Time, b.Body.Time))
	})
	if len(rows) == 0 {
		if set.ID != "" {
			r.Says = append(r.Says, "An impressed set is entered, but no line of its log: whether it has worked is not known.")
		}
		return
	}
	for _, e := range rows {
		in.Rows = append(in.Rows, c.logRow(e, w))
	}
	r.Points = monthly(in.Rows)
	sheet, out, err := work(c.book, protection.Log, "rectifier", "the log of "+set.Body.Name, in, map[string]field.Given{"rows": how(field.Measured, "the log, cells turned into the common scale"), "rated": how(basisOf(set.Head, field.Documented), ""),
		"target": how(field.Assumed, "default"), "free": how(field.Assumed, "default"), "control": how(field.Assumed, "default"), "temperature_coefficient": how(field.Assumed, "from memory"), "reference_temperature": how(field.Assumed, "default"), "reference_conductivity": how(field.Assumed, "default")})
	if err != nil {
		r.Says = append(r.Says, "The rectifier log can't be read: "+err.Error())
		return
	}
	c.logFigures(r, out, func(key, label string) Figure { return result(sheet, key, label).of("impressed_set", set.ID) })
	r.Spans = c.spans(in.Rows, out)
	dead := 0.0
	for _, s := range r.Spans {
		if s.State == "none" {
			dead += s.To - s.From
		}
	}
	r.Findings = findingNotices(out.Findings, r.Spans, set.ID, max(out.Unprotected-dead, 0))
	if dead > 0 {
		r.Says = append(r.Says, fmt.Sprintf("For %.1f years no current flowed, so far as the log tells.", dead))
	}
}

// findingNotices tells the findings: trips, gaps and dead cells one by one, short spells together, as a set at its limit has hundreds; short is how many
// years those come to.
func findingNotices(list []protection.Finding, spans []ProtectedSpan, set string, short float64) []Notice {
	out := []Notice{}
	for _, s := range spans {
		if s.State == "none" {
			out = append(out, Notice{What: fmt.Sprintf("No current from %s to %s, %.1f years, so far as the log tells.", monthOf(s.From), monthOf(s.To), s.To-s.From), Do: "Find why nobody noticed: an alarm that reaches somebody.", Kind: "impressed_set", ID: set, Page: "standing", Worry: 2})
		}
	}
	spells := 0
	var first, last protection.Finding
	for _, f := range list {
		if f.Rule == "trip" || f.Rule == "gap" && deadAt(spans, f.From.DecimalYear()) {
			continue
		}
		if f.Rule == "short" || f.Rule == "over" {
			if spells == 0 {
				first = f
			}
			spells, last = spells+1, f
			continue
		}
		n := Notice{What: f.From.String() + ": " + f.Text, Kind: "impressed_set", ID: set, Page: "standing", Worry: map[string]int{"saturation": 1, "dead cell": 1, "gap": 1}[f.Rule]}
		n.Do = map[string]string{"dead cell": "Check the cell against a fresh one.", "saturation": "Look for bare metal or a short to the quay.", "gap": "Ask who kept the log then."}[f.Rule]
		out = append(out, n)
	}
	if spells > 0 {
		out = append(out, Notice{What: fmt.Sprintf("%s from %s to %s, %.1f years together: %s", count(spells, "spell", "spells"), first.From, last.To, short, first.Text), Do: "Read the cells against a fresh electrode, and mind the brackish water: a set point of bare silver chloride is short by the correction.",
			Kind: "impressed_set", ID: set, Page: "standing", Worry: 1})
	}
	return out
}

func (c *inquiry) logRow(e dossier.Entry[survey.Rectifier], w waters) protection.LogRow {
	b := e.Body
	row := protection.LogRow{Date: b.Date, Time: b.Time, Current: b.Amps, Voltage: b.Volts, Temperature: b.Temperature}
	if b.State == "tripped" || b.State == "off" {
		row.Current = new(0.0)
	}
	if b.Cell == nil || b.Electrode == "" || b.Electrode == "unknown" {
		return row
	}
	in := potential.Read.New()
	in.Reading, in.Electrode, in.Salinity, in.Temperature = *b.Cell, b.Electrode, 35, orElse(b.Temperature, 12)
	if w.known {
		in.Salinity = w.salinity
	}
	in.Salinity = orElse(b.Salinity, in.Salinity)
	if out, err := potential.Read.Fn(in); err == nil {
		row.Potential = &out.Silver
	}
	return row
}

func (c *inquiry) logFigures(r *ProtectionPart, out protection.LogOut, figure func(key, label string) Figure) {
	without := figure("unprotected", "years short of protection or without any, by the log")
	if out.Unprotected > 1 {
		without.Worry = 2
	} else if out.Unprotected > 0.1 {
		without.Worry = 1
	}
	r.Log = append(r.Log, without)
	if out.Share != nil {
		r.Log = append(r.Log, inUnit(figure("share_unprotected", "share of the known time without protection"), *out.Share, "%"))
	}
	unknownYears := out.Unknown / 86400 / 365.25
	silent := known("years_unknown", "years the log does not tell", unknownYears, "y", field.Computed, "gaps, and current without a potential")
	silent.Sheet = without.Sheet
	r.Log = append(r.Log, silent)
	if out.Drift != nil {
		r.Log = append(r.Log, inUnit(figure("drift", "growth of the current a year"), *out.Drift, "%/y"))
	}
	if out.Current != nil {
		r.Log = append(r.Log, figure("current_normal", "current it gives now, at 15 °C"))
	}
	r.Says = append(r.Says, fmt.Sprintf("By the rectifier log she was short of protection or without any for %.1f years, and for %.1f years nobody knows.", out.Unprotected, unknownYears))
}

// spans draws the state of protection along the years: from the log, and before it from what was fitted.
func (c *inquiry) spans(rows []protection.LogRow, out protection.LogOut) []ProtectedSpan {
	first, last := rows[0].Date.DecimalYear(), rows[len(rows)-1].Date.DecimalYear()
	list := []ProtectedSpan{{From: first, To: last, State: "protected", Text: "impressed current working, by the log"}}
	for _, f := range out.Findings {
		state := map[string]string{"trip": "none", "gap": "unknown", "saturation": "short", "short": "short"}[f.Rule]
		if f.Rule == "gap" && len(f.Rows) > 1 && dead(rows[f.Rows[0]-1]) && dead(rows[f.Rows[1]-1]) {
			state, f.Text = "none", "no current before and after a silence of the log"
		}
		if state != "" {
			list = append(list, ProtectedSpan{f.From.DecimalYear(), max(f.To.DecimalYear(), f.From.DecimalYear()+f.Days/365.25), state, f.Text})
		}
	}
	began := math.Inf(1)
	for _, e := range c.alongside() {
		if y := e.Body.Fitted.DecimalYear(); !e.Body.Fitted.IsZero() {
			began = min(began, y)
		}
	}
	if began < first {
		list = append(list, ProtectedSpan{began, first, "unknown", "anodes only; nobody measured a potential"})
	}
	slices.SortStableFunc(list, func(a, b ProtectedSpan) int { return cmp.Compare(a.From, b.From) })
	return joined(list)
}

// joined makes one span of those of one state that touch, give or take a month: a log of a dead set is a chain of trips and silences.
func joined(list []ProtectedSpan) []ProtectedSpan {
	out := []ProtectedSpan{}
	at := map[string]int{}
	for _, s := range list {
		if i, ok := at[s.State]; ok && s.State != "protected" && s.From-out[i].To < 1.0/12 {
			out[i].To = max(out[i].To, s.To)
			continue
		}
		at[s.State] = len(out)
		out = append(out, s)
	}
	return out
}

// monthly thins a log to one point a month.
func monthly(rows []protection.LogRow) []LogPoint {
	type sum struct{ i, ni, e, ne float64 }
	by := map[int]*sum{}
	for _, r := range rows {
		key := r.Date.Year()*12 + max(r.Date.Month(), 1) - 1
		if by[key] == nil {
			by[key] = new(sum)
		}
		if r.Current != nil {
			by[key].i += *r.Current
			by[key].ni++
		}
		if r.Potential != nil {
			by[key].e += *r.Potential * 1000
			by[key].ne++
		}
	}
	list := []LogPoint{}
	for key, s := range by {
		p := LogPoint{Year: float64(key)/12 + 1.0/24}
		if s.ni > 0 {
			p.Current = new(round(s.i / s.ni))
		}
		if s.ne > 0 {
			p.Potential = new(math.Round(s.e / s.ne))
		}
		list = append(list, p)
	}
	slices.SortFunc(list, func(a, b LogPoint) int { return cmp.Compare(a.Year, b.Year) })
	return list
}

// rateSpans are the rates of loss between one survey and the next, below today's water, beside the share of that time without protection.
func (c *inquiry) rateSpans(r *ProtectionPart, p *StandingPage) {
	type pair struct{ from, to string }
	rates := map[pair][]float64{}
	years := map[pair][2]float64{}
	draft, ok := c.draftNow()
	for i := range p.Plates {
		row := &p.Plates[i]
		if ok && ship.Known(row.spot.Z) && row.spot.Z > draft+0.3 {
			continue
		}
		for _, s := range row.steps {
			k := pair{s.from.String(), s.to.String()}
			rates[k] = append(rates[k], s.rate)
			years[k] = [2]float64{s.from.DecimalYear(), s.to.DecimalYear()}
		}
	}
	for k, list := range rates {
		if len(list) < 5 {
			continue
		}
		slices.Sort(list)
		q := func(t float64) float64 { return list[int(t*float64(len(list)-1))] }
		f := known("rate", "rate of loss under water, middle of the places", q(0.5), "mm/y", field.Computed, "places read at both surveys; from one in four to three in four").band(q(0.25), q(0.5), q(0.75))
		y := years[k]
		r.Rates = append(r.Rates, RateSpan{From: y[0], To: y[1], Rate: f, Places: len(list), Bare: round(bareShare(r.Spans, y[0], y[1]))})
	}
	slices.SortFunc(r.Rates, func(a, b RateSpan) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To)) })
}

// bareShare is the share of a time that the spans say was without protection.
func bareShare(spans []ProtectedSpan, from, to float64) float64 {
	bare := 0.0
	for _, s := range spans {
		if s.State == "none" {
			bare += max(min(s.To, to)-max(s.From, from), 0)
		}
	}
	if to <= from {
		return 0
	}
	return bare / (to - from)
}

// dead tells that no current flowed at a line of the log.
func dead(r protection.LogRow) bool { return r.Current != nil && *r.Current <= 0 }

// deadAt tells that no current flowed at a time.
func deadAt(spans []ProtectedSpan, year float64) bool {
	return slices.ContainsFunc(spans, func(s ProtectedSpan) bool { return s.State == "none" && year >= s.From && year < s.To })
}

// monthOf words a decimal year as its month.
func monthOf(year float64) string {
	y := math.Floor(year)
	return fmt.Sprintf("%04.0f-%02d", y, min(int((year-y)*12)+1, 12))
}
