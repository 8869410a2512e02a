package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

// TriggerRow is one agreement made before the water goes, as a sentence.
type TriggerRow struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	Sentence  string `json:"sentence"`
	Place     string `json:"place"`
	Direction string `json:"direction"`
	State     string `json:"state"`
	Money     Figure `json:"money"`
	Days      Figure `json:"days"`
	Chance    Figure `json:"chance"`
	Who       string `json:"who"`
	Agreed    string `json:"agreed"`
	Lacks     string `json:"lacks"` // what the sentence does not say
}

func (c *inquiry) triggers(p *ChoicesPage) {
	for _, e := range dossier.All[plan.Trigger](c.d) {
		p.Triggers = append(p.Triggers, c.triggerRow(e))
	}
	slices.SortStableFunc(p.Triggers, func(a, b TriggerRow) int {
		return cmp.Or(-cmp.Compare(a.Direction, b.Direction), cmp.Compare(a.Place, b.Place))
	})
	if len(p.Triggers) == 0 && len(p.Matters) > 0 {
		p.Missing = append(p.Missing, Notice{What: "No trigger is agreed.", Kind: "trigger", Page: "choices",
			Do: "Agree before the water goes, in both directions: what finding calls which course, worth how much, decided by whom within how many hours."})
	}
	c.oneSided(p)
}

// oneSided warns where every trigger runs the same way: money agreed only for the worse case is never released.
func (c *inquiry) oneSided(p *ChoicesPage) {
	worse := 0
	for _, t := range p.Triggers {
		if t.Direction == "worse" {
			worse++
		}
	}
	switch {
	case len(p.Triggers) == 0:
	case worse == len(p.Triggers):
		p.Missing = append(p.Missing, Notice{What: "Every trigger runs towards worse.", Do: "Agree what is done with the money if the hull turns out better.", Kind: "trigger", Page: "choices"})
	case worse == 0:
		p.Missing = append(p.Missing, Notice{What: "Every trigger runs towards better.", Do: "Agree what is done, and from what money, if the hull turns out worse.", Kind: "trigger", Page: "choices", Worry: 1})
	}
}

func (c *inquiry) triggerRow(e dossier.Entry[plan.Trigger]) TriggerRow {
	b := e.Body
	r := TriggerRow{ID: e.ID, Name: b.Name, Place: b.Place.String(), Direction: b.Direction, State: b.State, Who: b.Decider, Agreed: b.Agreed.String()}
	if r.Direction == "" {
		r.Direction = "worse"
	}
	if r.State == "" {
		r.State = "ready"
	}
	given := func(key, label string, x *float64, unit string) Figure {
		if x == nil {
			return notYetFigure(key, label).of("trigger", e.ID)
		}
		return known(key, label, *x, unit, basisOf(e.Head, field.Assumed), e.BasisNote).of("trigger", e.ID)
	}
	r.Money = given("money", map[bool]string{true: "releases up to", false: "calls up to"}[r.Direction == "better"], b.Money, "money")
	r.Days = given("days", "days", b.Days, "d")
	r.Chance = given("chance", "chance, as guessed", b.Chance, "%")
	r.Sentence = c.triggerSentence(b)
	r.Lacks = triggerLacks(b)
	return r
}

// triggerSentence is the agreement in its one form: if FINDING at PLACE beyond LIMIT then COURSE, worth up to MONEY and DAYS, decided by WHO within HOURS.
func (c *inquiry) triggerSentence(b plan.Trigger) string {
	s := "If " + findingWords(b)
	if at := b.Place.String(); at != "" {
		s += " at " + at
	}
	s += " " + limitWords(b)
	then := b.Then
	if b.Course != "" {
		then = c.nameOf(b.Course)
	}
	if then == "" {
		then = "nothing is agreed yet"
	}
	s += ", then " + then
	verb := "worth up to "
	if b.Direction == "better" {
		verb = "which releases up to "
	}
	var worth []string
	if b.Money != nil {
		worth = append(worth, c.money(*b.Money))
	}
	if b.Days != nil {
		worth = append(worth, inWhole(*b.Days, "d", "day", "days"))
	}
	if len(worth) > 0 {
		s += ", " + verb + strings.Join(worth, " and ")
	}
	if b.Decider != "" {
		s += ", decided by " + b.Decider
	}
	if b.Hours != nil {
		s += " within " + inWhole(*b.Hours, "h", "hour", "hours")
	}
	return s + "."
}

// findings says what was looked at, as the subject of a sentence.
var findings = map[string]string{
	"plate": "the plating", "pit": "a pit", "crack": "a crack", "through": "a hole", "doubler": "a doubler", "opening": "an opening", "gland": "a gland", "bearing": "a bearing",
	"shaft": "a shaft", "propeller": "a propeller", "rudder": "the rudder", "coating": "the coating", "anode": "an anode", "fouling": "fouling", "frames": "a frame", "timber": "timber",
}

func findingWords(b plan.Trigger) string {
	if words, ok := findings[b.Finding]; ok {
		return words
	}
	return "anything else"
}

func limitWords(b plan.Trigger) string {
	if b.Limit == nil || b.When == "at all" || b.Measure == "seen" || b.Measure == "" {
		if b.Direction == "better" {
			return "is found good"
		}
		return "is found wanting"
	}
	side := "above"
	if b.When == "below" {
		side = "below"
	}
	unit := b.Unit
	if unit == "-" {
		unit = ""
	}
	return strings.TrimSpace(fmt.Sprintf("is found with its %s %s %g %s", b.Measure, side, *b.Limit, unit))
}

// inWhole prints a time in words, without figures that nobody meant.
func inWhole(base float64, unit, one, many string) string {
	x, err := quantity.FromBase(base, unit)
	if err != nil {
		return "an unknown time"
	}
	x = field.Trim(x)
	if x == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%g %s", x, many)
}

func triggerLacks(b plan.Trigger) string {
	var lacks []string
	for _, l := range []struct {
		missing bool
		words   string
	}{
		{b.Limit == nil && b.When != "at all" && b.Measure != "seen" && b.Measure != "", "a limit"}, {b.Course == "" && b.Then == "", "what is then done"}, {b.Money == nil, "a sum"},
		{b.Decider == "", "who decides"}, {b.Hours == nil, "how fast"}, {b.Agreed.IsZero(), "the day it was agreed"},
	} {
		if l.missing {
			lacks = append(lacks, l.words)
		}
	}
	return strings.Join(lacks, ", ")
}
