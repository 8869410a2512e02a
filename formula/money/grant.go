package money

import (
	"fmt"

	"oakum/field"
	"oakum/quantity"
)

// Grant is money given against own money, mostly after the bill is paid.
type Grant struct {
	Name    string        `key:"name" label:"grant"`
	Pot     string        `key:"pot" label:"pot it will go to"`
	Cap     float64       `key:"cap" unit:"money" min:"0" max:"1e15" label:"at most"`
	Match   float64       `key:"match" default:"1" min:"0" max:"20" label:"own money wanted for each unit given" help:"1 for one to one"`
	Held    *float64      `key:"held" unit:"money" min:"0" max:"1e15" label:"own money held or spent against it"`
	Paid    float64       `key:"paid" unit:"money" default:"0" min:"0" max:"1e15" label:"paid so far"`
	Arrears bool          `key:"arrears" default:"yes" label:"paid only after the bills"`
	PaysOn  quantity.Date `key:"pays_on" optional:"yes" label:"expected to be paid on"`
}

// GrantState is what a grant is worth on the day.
type GrantState struct {
	Name    string  `key:"name" label:"grant"`
	Matched float64 `key:"matched" unit:"money" label:"earned by the own money held"`
	Project float64 `key:"project" unit:"money" label:"own money and grant together"`
	Open    float64 `key:"open" unit:"money" label:"of the cap not yet earned"`
	Lacking float64 `key:"lacking" unit:"money" label:"own money still to find for the whole cap"`
	ToCome  float64 `key:"to_come" unit:"money" label:"earned and not yet paid"`
}

// Matched is what a grant gives against own money: a unit for each match units, to the cap.
func Matched(own, match, most float64) float64 {
	if match == 0 {
		return most
	}
	return min(max(own, 0)/match, most)
}

func (g Grant) state(i int, pots map[string]int) (s GrantState, err error) {
	if _, known := pots[g.Pot]; !known {
		return s, field.Refuse(fmt.Sprintf("grants[%d].pot", i), "grant %q: there is no pot %q", g.Name, g.Pot)
	}
	held := 0.0
	if g.Held != nil {
		held = *g.Held
	}
	s = GrantState{Name: g.Name, Matched: Matched(held, g.Match, g.Cap)}
	s.Open = g.Cap - s.Matched
	s.Lacking = s.Open * g.Match
	s.Project = held + s.Matched
	s.ToCome = s.Matched - g.Paid
	if s.ToCome < 0 {
		key := fmt.Sprintf("grants[%d].paid", i)
		return s, field.Refuse(key, "grant %q has paid %v, more than the own money held has earned (%v): say how much own money stands against it", g.Name,
			field.Q(key, g.Paid, "money"), field.Q("", s.Matched, "money"))
	}
	return s, nil
}
