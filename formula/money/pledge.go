package money

import (
	"fmt"
	"math"
	"time"

	"oakum/field"
	"oakum/quantity"
)

// Pledge is money promised.
type Pledge struct {
	Name        string        `key:"name" label:"pledge"`
	Pot         string        `key:"pot" label:"pot it will go to"`
	Amount      float64       `key:"amount" unit:"money" min:"0" max:"1e15" label:"amount"`
	Due         quantity.Date `key:"due" label:"due"`
	Conditional bool          `key:"conditional" default:"no" label:"hangs on a condition"`
	Met         bool          `key:"met" default:"no" label:"the condition is met"`
	Received    float64       `key:"received" unit:"money" default:"0" min:"0" max:"1e15" label:"received so far"`
	Allowance   *float64      `key:"allowance" min:"0" max:"1" label:"share not expected to come" help:"left out: the allowance for all"`
}

// PledgeState is what a pledge counts for on the day.
type PledgeState struct {
	Name    string  `key:"name" label:"pledge"`
	Open    float64 `key:"open" unit:"money" label:"not yet received"`
	Years   float64 `key:"years" unit:"y" label:"years until it is due"`
	Present float64 `key:"present" unit:"money" label:"worth today if it surely came"`
	Counted float64 `key:"counted" unit:"money" label:"counted, less the allowance"`
	Waiting bool    `key:"waiting" label:"its condition is not met: it counts for nothing"`
	Overdue bool    `key:"overdue" label:"overdue"`
}

// state discounts the pledge from the last day of its date and takes the allowance off.
func (p Pledge) state(i int, pots map[string]int, day time.Time, discount, allowance float64) (s PledgeState, err error) {
	at := func(key string) string { return fmt.Sprintf("pledges[%d].%s", i, key) }
	switch _, known := pots[p.Pot]; {
	case !known:
		return s, field.Refuse(at("pot"), "pledge %q: there is no pot %q", p.Name, p.Pot)
	case p.Due.IsZero():
		return s, field.Refuse(at("due"), "pledge %q has no due date", p.Name)
	case p.Received > p.Amount:
		return s, field.Refuse(at("received"), "pledge %q: more was received (%v) than was promised (%v); the rest is a gift", p.Name,
			field.Q(at("received"), p.Received, "money"), field.Q(at("amount"), p.Amount, "money"))
	}
	s = PledgeState{Name: p.Name, Open: p.Amount - p.Received, Waiting: p.Conditional && !p.Met}
	due := p.Due.Last()
	s.Overdue = due.Before(day) && s.Open > 0
	s.Years = max(yearsBetween(day, due), 0)
	if s.Waiting {
		return s, nil
	}
	if p.Allowance != nil {
		allowance = *p.Allowance
	}
	s.Present = s.Open * math.Pow(1+discount, -s.Years)
	s.Counted = s.Present * (1 - allowance)
	return s, nil
}

// yearsBetween counts whole years from day to day and the rest as a part of the year it lies in.
func yearsBetween(from, to time.Time) float64 {
	if to.Before(from) {
		return -yearsBetween(to, from)
	}
	whole := to.Year() - from.Year()
	if from.AddDate(whole, 0, 0).After(to) {
		whole--
	}
	start, end := from.AddDate(whole, 0, 0), from.AddDate(whole+1, 0, 0)
	return float64(whole) + float64(to.Sub(start))/float64(end.Sub(start))
}
