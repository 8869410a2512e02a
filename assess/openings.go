package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/flooding"
	"oakum/ship"
	"oakum/survey"
)

// OpeningRow is one hole through the hull with what keeps the water out.
type OpeningRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	Function string `json:"function"`
	Place    string `json:"place"`
	Space    string `json:"space"`
	Barriers string `json:"barriers"` // in words, from outside in
	Sound    Figure `json:"sound"`    // sound barriers
	Flow     Figure `json:"flow"`     // if the last one goes
	Alarm    Figure `json:"alarm"`    // time until the alarm
	Critical Figure `json:"critical"` // time until the critical level
	Blank    Figure `json:"blank"`    // plate wanted to blank it
	Bolts    Figure `json:"bolts"`    // that hold that plate

	below bool
	flow  float64
	ages  []float64 // years each barrier has stood
}

// sound is a barrier graded 1 to 3; 4 is seized or weeping, and unknown ranks as bad as weeping.
const sound = 3

func (c *inquiry) openings(p *StandingPage) {
	p.Openings = []OpeningRow{}
	barriers := map[string][]dossier.Entry[ship.Barrier]{}
	for _, b := range dossier.All[ship.Barrier](c.d) {
		barriers[b.Body.Opening] = append(barriers[b.Body.Opening], b)
	}
	for _, e := range dossier.All[ship.Opening](c.d) {
		if e.Body.State == "welded up" {
			continue
		}
		p.Openings = append(p.Openings, c.openingRow(e, barriers[e.ID]))
	}
	slices.SortStableFunc(p.Openings, func(a, b OpeningRow) int {
		return cmp.Or(b.Sound.Worry-a.Sound.Worry, compareValue(a.Sound, b.Sound), -compareValue(a.Flow, b.Flow))
	})
	if len(p.Openings) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No opening is entered.", Do: "List every hole through the hull with its valves, blanks and plugs.", Kind: "opening", Page: "standing"})
	}
}

func compareValue(a, b Figure) int {
	if a.Value == nil || b.Value == nil {
		return 0
	}
	return cmp.Compare(*a.Value, *b.Value)
}

func (c *inquiry) openingRow(e dossier.Entry[ship.Opening], list []dossier.Entry[ship.Barrier]) OpeningRow {
	b := e.Body
	row := OpeningRow{ID: e.ID, Name: b.Name, Function: b.Function, Place: b.Place.String(), Space: b.Space}
	slices.SortStableFunc(list, func(x, y dossier.Entry[ship.Barrier]) int { return cmp.Compare(orderOf(x.Body), orderOf(y.Body)) })
	good := 0
	for i, br := range list {
		grade := c.gradeOf(br)
		if grade <= sound {
			good++
		}
		if i > 0 {
			row.Barriers += "; "
		}
		row.Barriers += br.Body.Type + ", " + gradeWords(grade)
		if age, ok := br.Body.Fitted.YearsUntil(c.day); ok {
			row.ages = append(row.ages, age)
		}
	}
	if len(list) == 0 {
		row.Barriers = "none entered"
	}
	row.Sound = known("sound", b.Name+": sound barriers", float64(good), "1", field.Computed, fmt.Sprintf("of %s entered", count(len(list), "barrier", "barriers"))).of("opening", e.ID).at(row.Place)
	head, below := c.headOn(e)
	row.below = below
	row.Flow, row.flow = c.openingFlow(e, head, below)
	row.Blank = c.blankFor(e, list, head, below)
	row.Bolts = c.openingBolts(e, head, below)
	switch {
	case !below:
	case good == 0:
		row.Sound.Worry = 2
	case good == 1:
		row.Sound.Worry = 1
	}
	row.Alarm, row.Critical = c.fillTimes(e, head, row.flow)
	return row
}

// openingBolts are the bolts of the plate that would blank an opening.
func (c *inquiry) openingBolts(e dossier.Entry[ship.Opening], head float64, below bool) Figure {
	b := e.Body
	hole := 2 * math.Sqrt(orElse(b.Area, 0)/math.Pi)
	if b.Diameter != nil {
		hole = *b.Diameter
	}
	switch {
	case !below:
		return aboveWater("bolts", "bolts of the blank").of("opening", e.ID)
	case math.IsNaN(head) || hole <= 0:
		return unknown("bolts", "bolts of the blank", "its size, its height or today's draft is unknown").of("opening", e.ID)
	}
	return c.boltsOver(e.ID, b.Name, hole, head).of("opening", e.ID)
}

func orderOf(b ship.Barrier) int {
	if b.Order == nil {
		return 99
	}
	return *b.Order
}

// gradeOf is the grade of the newest trial, or the entered one; unknown is 5.
func (c *inquiry) gradeOf(br dossier.Entry[ship.Barrier]) int {
	grade, seen := 5, br.Body.LastTested
	if br.Body.Grade != nil {
		grade = *br.Body.Grade
	}
	if !br.Body.Expires.IsZero() && br.Body.Expires.Before(c.day) {
		grade = max(grade, 4)
	}
	for _, t := range dossier.All[survey.BarrierCheck](c.d) {
		if t.Body.Barrier == br.ID && t.Body.Grade != nil && t.Body.Date.Compare(seen) >= 0 {
			grade, seen = *t.Body.Grade, t.Body.Date
		}
	}
	return grade
}

func gradeWords(grade int) string {
	return [...]string{"", "opened and proven", "moves free", "stiff", "seized or weeping", "unknown"}[min(max(grade, 1), 5)]
}

// headOn is the depth of the opening below today's water, m; NaN where its height or the draft is unknown.
func (c *inquiry) headOn(e dossier.Entry[ship.Opening]) (head float64, below bool) {
	draft, ok := c.draftNow()
	z := math.NaN()
	if e.Body.Height != nil {
		z = *e.Body.Height
	} else if spot := c.locator().Locate(e.Body.Place); ship.Known(spot.Z) {
		z = spot.Z
	}
	if !ok || math.IsNaN(z) {
		return math.NaN(), true
	}
	return draft - z, draft > z
}

func (c *inquiry) openingFlow(e dossier.Entry[ship.Opening], head float64, below bool) (Figure, float64) {
	label := "water if the last one goes"
	b := e.Body
	switch {
	case !below:
		f := known("flow", label, 0, "m3/h", field.Computed, "above today's water").of("opening", e.ID)
		f.Text = "above the water"
		return f, 0
	case math.IsNaN(head):
		return unknown("flow", label, "its height or today's draft is unknown").of("opening", e.ID), 0
	case b.Diameter == nil && b.Area == nil:
		return unknown("flow", label, "its size is unknown").of("opening", e.ID), 0
	}
	in := flooding.Rate.New()
	in.Diameter, in.Area, in.Head = b.Diameter, b.Area, head
	if b.Area != nil {
		in.Diameter = nil
	}
	basis := basisOf(e.Head, field.Documented)
	sheet, out, err := work(c.book, flooding.Rate, "opening-"+e.ID, b.Name, in, map[string]field.Given{
		"diameter": how(basis, ""), "area": how(basis, ""), "head": how(field.Computed, "draft less height"), "discharge_coefficient": how(field.Assumed, "default"), "inside_level_head": how(field.Assumed, "default")})
	if err != nil {
		return unknown("flow", label, err.Error()).of("opening", e.ID), 0
	}
	return result(sheet, "flow_per_hour", label).of("opening", e.ID), out.Flow
}
