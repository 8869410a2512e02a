package assess

import (
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/plan"
	"oakum/quantity"
)

// notYet stands where nothing is known yet.
const notYet = "not yet"

// notSaid stands where a course says nothing of a matter.
const notSaid = "not said"

// CourseRow is one possible answer, with what is known of it under the same headings as the others.
type CourseRow struct {
	ID         string `json:"id"`
	Matter     string `json:"matter"`
	MatterID   string `json:"matter_id"`
	Name       string `json:"name"`
	Taken      bool   `json:"taken"`  // by the plan in force
	Leaves     bool   `json:"leaves"` // leaves things as they are
	Cost       Figure `json:"cost"`
	Low        Figure `json:"cost_low"`
	Likely     Figure `json:"cost_likely"`
	High       Figure `json:"cost_high"`
	Yearly     Figure `json:"yearly"`
	Days       Figure `json:"days"`
	Mass       Figure `json:"mass_off"`
	Sinkage    Figure `json:"sinkage"`
	Trim       Figure `json:"trim_change"`
	Heel       Figure `json:"heel"`
	GM         Figure `json:"gm"`
	Protection string `json:"protection"`
	Bare       Figure `json:"bronze_off"`
	Risk       string `json:"risk"`
	RiskLeft   Figure `json:"risk_left"`
	Holds      Figure `json:"holds"`
	Heritage   string `json:"heritage"`
	Custody    string `json:"custody"`
	Gate       string `json:"gate"`  // whether what comes off may be given away
	Needs      string `json:"needs"` // courses and works it can't do without
	RulesOut   string `json:"rules_out"`
	Notes      string `json:"notes"`

	// Of a course that says what becomes of propellers and tail lengths; absent for any other.
	PartMass *Figure `json:"part_mass,omitempty"`
	Lift     *Figure `json:"lift,omitempty"`
	Shackle  *Figure `json:"shackle,omitempty"`
	Stand    *Figure `json:"stand,omitempty"`
	Road     *Figure `json:"road,omitempty"`
	Current  *Figure `json:"current,omitempty"`
	Bearing  *Figure `json:"bearing,omitempty"`
	Plate    *Figure `json:"plate,omitempty"`
	Bolts    *Figure `json:"bolts,omitempty"`
}

func (c *inquiry) courseRow(e dossier.Entry[plan.Course], m *MatterRow) CourseRow {
	entered := e.Body
	e.Body = c.filled(e.Body)
	b := e.Body
	r := CourseRow{
		ID: e.ID, Matter: m.Name, MatterID: m.ID, Name: b.Name, Taken: c.takes(e.ID), Leaves: yes(b.Leaves),
		Protection: wordsOr(b.Protection, notSaid), Risk: wordsOr(b.Risk, notSaid), Heritage: wordsOr(b.Heritage, notSaid), Custody: wordsOr(b.Custody, notSaid),
		Needs: c.namesOf(b.Needs), RulesOut: c.namesOf(b.Excludes), Notes: b.Notes,
	}
	if b.Custody == "" && b.HeavyParts != "" && !comesOff(b) {
		r.Custody = "nothing comes off"
	}
	basis, of := basisOf(e.Head, field.Assumed), func(f Figure) Figure { return f.of("course", e.ID) }
	given := func(key, label string, x *float64, unit string) Figure {
		if x == nil {
			f := unknown(key, label, "nobody has said")
			f.Text = notSaid
			return of(f)
		}
		return of(known(key, label, *x, unit, basis, e.BasisNote))
	}
	c.courseCost(&r, e)
	r.Yearly = given("yearly", "a year afterwards", b.Yearly, "money")
	r.Days = c.courseDays(e)
	r.Bare = given("bronze_off", "bare bronze taken out of the water", b.Bare, "m2")
	if b.Bare != nil && entered.Bare == nil {
		r.Bare.Basis, r.Bare.From = field.Computed, "blades of the propellers that come off"
	}
	r.RiskLeft = given("risk_left", "share of the risk that stays", b.RiskLeft, "%")
	r.Holds = given("holds", "holds for", b.LifeAdded, "y")
	c.courseWeights(&r, e)
	if b.MassOff != nil && entered.MassOff == nil {
		r.Mass.Basis, r.Mass.From = field.Computed, "the parts that come off, from their records"
	}
	c.heavyCourse(&r, e)
	r.Gate = c.gateOf(e)
	return r
}

func notYetFigure(key, label string) Figure {
	f := unknown(key, label, "nobody has said")
	f.Text = notYet
	return f
}

func wordsOr(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return s
}

func yes(b *bool) bool { return b != nil && *b }

// takes tells whether the plan in force takes a course or a work.
func (c *inquiry) takes(id string) bool {
	for _, list := range [][]string{c.plan.Courses, c.plan.Works} {
		for _, x := range list {
			if x == id {
				return true
			}
		}
	}
	return false
}

// courseCost fills the cost of a course: its own three figures; otherwise the works that belong to it.
func (c *inquiry) courseCost(r *CourseRow, e dossier.Entry[plan.Course]) {
	lines, note := c.courseLines(e)
	r.Cost, r.Low = notYetFigure("cost", "cost").of("course", e.ID), notYetFigure("cost_low", "lowest").of("course", e.ID)
	r.Likely, r.High = notYetFigure("cost_likely", "likeliest").of("course", e.ID), notYetFigure("cost_high", "highest").of("course", e.ID)
	if len(lines) == 0 {
		r.Cost.Note = note
		return
	}
	low, likely, high := endsOf(lines)
	basis := basisOf(e.Head, field.Assumed)
	set := func(f *Figure, x float64) { *f = known(f.Key, f.Label, x, "money", basis, note).of("course", e.ID) }
	set(&r.Low, low)
	set(&r.Likely, likely)
	set(&r.High, high)
	in := estimate.Estimate.New()
	in.Lines = lines
	sheet, out, err := c.price("course-"+e.ID, r.Matter+": "+r.Name, in, map[string]field.Given{
		"lines": how(basis, note), "correlation": how(field.Assumed, "a default, from memory")})
	if err != nil {
		r.Cost.Note = err.Error()
		return
	}
	r.Cost = result(sheet, "p50", "cost").of("course", e.ID)
	r.Cost.Key = "cost"
	r.Cost = r.Cost.band(out.P10, out.P50, out.P90).noted("eight times in ten within this; " + note)
}

// courseLines are the lines of the estimate of a course, and where they come from.
func (c *inquiry) courseLines(e dossier.Entry[plan.Course]) ([]estimate.Line, string) {
	var lines []estimate.Line
	unpriced := 0
	for _, w := range dossier.All[plan.Work](c.d) {
		if w.Body.Course != e.ID || w.Body.State == "dropped" {
			continue
		}
		if l, ok := c.workLine(w); ok {
			lines = append(lines, l)
		} else {
			unpriced++
		}
	}
	own, ok := lineFrom(e.Body.Name, e.Body.CostLow, e.Body.CostLikely, e.Body.CostHigh, "")
	switch {
	case ok:
		return []estimate.Line{own}, "the course's own figures"
	case len(lines) > 0 && unpriced > 0:
		return lines, fmt.Sprintf("too low: %s still without a price", count(unpriced, "work of it is", "works of it are"))
	case len(lines) > 0:
		return lines, "sum of " + count(len(lines), "work", "works")
	case e.Body.CostLikely != nil:
		return nil, "its low, likely and high cost are not in order"
	case unpriced > 0:
		return nil, "its works have no price yet"
	}
	return nil, "no cost is entered"
}

// lineFrom makes a line of an estimate; without a range the amount stands as it is.
func lineFrom(name string, low, likely, high *float64, shape string) (estimate.Line, bool) {
	l := estimate.Line{Name: name, Low: low, Likely: likely, High: high, Kind: shape, Share: 1}
	if l.Kind == "" {
		l.Kind = "triangular"
	}
	switch {
	case likely == nil:
		return l, false
	case low == nil || high == nil:
		l.Kind, l.Low, l.High = "fixed", nil, nil
	case *low > *likely || *likely > *high:
		return l, false
	}
	return l, true
}

// endsOf adds up the three points of lines.
func endsOf(lines []estimate.Line) (low, likely, high float64) {
	for _, l := range lines {
		likely += *l.Likely
		if l.Kind == "fixed" {
			low, high = low+*l.Likely, high+*l.Likely
			continue
		}
		low, high = low+*l.Low, high+*l.High
	}
	return low, likely, high
}

// courseDays is the days in dock: the course's own, or the longest of its works. Works may run side by side, so their sum is no answer.
func (c *inquiry) courseDays(e dossier.Entry[plan.Course]) Figure {
	if d := e.Body.Days; d != nil {
		return known("days", "days in dock", *d, "d", basisOf(e.Head, field.Assumed), e.BasisNote).of("course", e.ID)
	}
	longest, n := 0.0, 0
	for _, w := range dossier.All[plan.Work](c.d) {
		if w.Body.Course == e.ID && w.Body.Days != nil && w.Body.State != "dropped" {
			longest, n = max(longest, *w.Body.Days), n+1
		}
	}
	if n == 0 {
		return notYetFigure("days", "days in dock").of("course", e.ID)
	}
	return known("days", "days in dock", longest, "d", field.Computed, "the longest of "+count(n, "work", "works")).of("course", e.ID)
}

// matterCost spans the courses that have a cost, from the cheapest that is likely to the dearest.
func matterCost(rows []CourseRow) Figure {
	low, high, n := 0.0, 0.0, 0
	for _, r := range rows {
		if r.Likely.Value == nil {
			continue
		}
		if n == 0 || *r.Likely.Value < low {
			low = *r.Likely.Value
		}
		high, n = max(high, *r.Likely.Value), n+1
	}
	if n == 0 {
		return notYetFigure("cost", "cost")
	}
	f := Figure{Key: "cost", Label: "cost", Unit: "money", Text: quantity.Range(low, high, "money"), Basis: field.Computed,
		From: "likeliest costs of " + count(n, "course", "courses"), Note: "from the cheapest to the dearest"}
	if low == high {
		f.Value = new(low)
	}
	return f
}
