package assess

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
	"oakum/ship"
)

// LitRow is a trigger met by something found.
type LitRow struct {
	Trigger   string `json:"trigger"`
	Found     string `json:"found"`
	Sentence  string `json:"sentence"`
	Finding   string `json:"finding"`
	Place     string `json:"place"`
	Direction string `json:"direction"`
	Money     Figure `json:"money"` // called where worse, released where better
	Days      Figure `json:"days"`
	Answer    string `json:"answer_by"`
	Who       string `json:"who"`
	State     string `json:"state"` // lit, answered, or late
}

// litRows holds every trigger against everything found.
func (c *inquiry) litRows(p *InDockPage) {
	l := c.locator()
	for _, t := range dossier.All[plan.Trigger](c.d) {
		if t.Body.State == "withdrawn" {
			continue
		}
		for _, f := range dossier.All[plan.Found](c.d) {
			if c.later(f.Body.Date) {
				continue
			}
			if f.Body.Trigger == t.ID || meets(l, t.Body, f.Body) {
				p.Lit = append(p.Lit, c.litRow(t, f))
			}
		}
	}
	slices.SortStableFunc(p.Lit, func(a, b LitRow) int {
		return cmp.Or(cmp.Compare(litOrder(a.State), litOrder(b.State)), cmp.Compare(a.Answer, b.Answer), cmp.Compare(a.Found, b.Found))
	})
}

func litOrder(state string) int {
	return max(slices.Index([]string{"late", "lit", "answered"}, state), 0)
}

func (c *inquiry) litRow(t dossier.Entry[plan.Trigger], f dossier.Entry[plan.Found]) LitRow {
	r := LitRow{Trigger: t.ID, Found: f.ID, Sentence: c.triggerSentence(t.Body), Finding: foundWords(f), Place: f.Body.Place.String(), Direction: cmp.Or(t.Body.Direction, "worse"), Who: t.Body.Decider, State: "lit"}
	r.Money = notYetFigure("money", "calls up to").of("trigger", t.ID)
	cost, from := c.foundCost(f.Body)
	switch {
	case r.Direction == "better" && t.Body.Money != nil:
		r.Money = known("money", "releases up to", *t.Body.Money, "money", basisOf(t.Head, field.Assumed), "as agreed").of("trigger", t.ID)
	case cost != nil:
		r.Money = known("money", "costs", *cost, "money", basisOf(f.Head, field.Assumed), from).of("found", f.ID)
		if t.Body.Money != nil && *cost > *t.Body.Money {
			r.Money.Worry, r.Money.Note = 2, "more than was agreed beforehand ("+c.money(*t.Body.Money)+")"
		}
	case t.Body.Money != nil:
		r.Money = known("money", "calls up to", *t.Body.Money, "money", basisOf(t.Head, field.Assumed), "as agreed; the report names no cost").of("trigger", t.ID)
	}
	r.Days = notYetFigure("days", "days").of("trigger", t.ID)
	if d := cmp.Or(f.Body.Days, t.Body.Days); d != nil {
		r.Days = known("days", "days", *d, "d", basisOf(f.Head, field.Assumed), "")
	}
	c.answerBy(&r, t, f)
	return r
}

// answerBy fills when the trigger must be answered: so many hours after the day of the report, counted in whole days.
func (c *inquiry) answerBy(r *LitRow, t dossier.Entry[plan.Trigger], f dossier.Entry[plan.Found]) {
	if t.Body.Hours != nil && !f.Body.Date.IsZero() {
		r.Answer = f.Body.Date.AddDays(int(math.Ceil(*t.Body.Hours / secondsADay))).String()
	}
	switch {
	case t.Body.State == "answered" || f.Body.Disposition != "open" && f.Body.Disposition != "" && !f.Body.Decided.IsZero():
		r.State = "answered"
	case r.Answer != "" && r.Answer < c.day.String():
		r.State = "late"
		r.Money.Worry = 3
	default:
		r.Money.Worry = max(r.Money.Worry, 2)
	}
	if r.Direction == "better" {
		r.Money.Worry = min(r.Money.Worry, 1)
	}
}

func foundWords(e dossier.Entry[plan.Found]) string {
	b := e.Body
	words := b.Finding
	if b.Number != "" {
		words = b.Number + ": " + words
	}
	for _, m := range measures {
		if x := m.of(b); x != nil {
			words += ", " + m.name + " " + quantity.Format(*x, m.unit, -1)
		}
	}
	return words
}

// meets tells whether what was found lights a trigger: the same sort of finding, at its place as far as both say where, beyond its limit.
func meets(l ship.Locator, t plan.Trigger, f plan.Found) bool {
	if t.Finding != f.Finding || !covers(l, t.Place, f.Place) {
		return false
	}
	if t.When == "at all" || t.Measure == "" || t.Measure == "seen" {
		return true
	}
	value, ok := measured(f, t.Measure)
	limit, known := limitOfTrigger(t)
	if !ok || !known {
		return false
	}
	if t.When == "below" {
		return value < limit
	}
	return value > limit
}

func measured(f plan.Found, measure string) (float64, bool) {
	for _, m := range measures {
		if m.name == measure {
			x := m.of(f)
			if x == nil {
				return 0, false
			}
			return *x, true
		}
	}
	return 0, false
}

// limitOfTrigger is the limit in base units; without a unit it stands in the measure's own.
func limitOfTrigger(t plan.Trigger) (float64, bool) {
	if t.Limit == nil {
		return 0, false
	}
	unit := t.Unit
	for _, m := range measures {
		if m.name == t.Measure && unit == "" {
			unit = m.unit
		}
	}
	x, err := quantity.ToBase(*t.Limit, unit)
	return x, err == nil
}

// covers tells whether a place may lie within another. What either leaves out does not part them.
func covers(l ship.Locator, wide, place ship.Place) bool {
	if wide.Side != "" && place.Side != "" && wide.Side != place.Side && wide.Side != ship.Both && place.Side != ship.Both {
		return false
	}
	if wide.Space != "" && place.Space != "" && !strings.EqualFold(wide.Space, place.Space) {
		return false
	}
	if !strakeWithin(l, wide, place) {
		return false
	}
	a, b := l.Locate(wide), l.Locate(place)
	lowA, highA, okA := alongShip(a)
	lowB, highB, okB := alongShip(b)
	if !okA || !okB {
		return wide.Frame == "" || place.Frame == "" || wide.Frame == place.Frame
	}
	return lowB <= highA+samePlace && highB >= lowA-samePlace
}

func alongShip(s ship.Spot) (low, high float64, ok bool) {
	switch {
	case ship.Known(s.X0) && ship.Known(s.X1):
		return min(s.X0, s.X1), max(s.X0, s.X1), true
	case ship.Known(s.X):
		return s.X, s.X, true
	}
	return 0, 0, false
}

// strakeWithin compares strakes by their order on the shell, or by name where the shell is not described.
func strakeWithin(l ship.Locator, wide, place ship.Place) bool {
	if wide.Strake == "" || place.Strake == "" {
		return true
	}
	order := func(name string) int {
		if l.Shell == nil {
			return -1
		}
		return l.Shell.Index(name)
	}
	low, high := order(wide.Strake), order(cmp.Or(wide.StrakeTo, wide.Strake))
	first, last := order(place.Strake), order(cmp.Or(place.StrakeTo, place.Strake))
	if low < 0 || high < 0 || first < 0 || last < 0 {
		return strings.EqualFold(wide.Strake, place.Strake) || strings.EqualFold(wide.StrakeTo, place.Strake)
	}
	return min(first, last) <= max(low, high) && max(first, last) >= min(low, high)
}
