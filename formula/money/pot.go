package money

import (
	"fmt"

	"oakum/field"
	"oakum/quantity"
)

// Pot is a sum kept apart.
type Pot struct {
	Name       string  `key:"name" label:"pot"`
	Restricted string  `key:"restricted" optional:"yes" label:"what alone it may be spent on" help:"works, a place, dates; left out where it is free"`
	Reserve    bool    `key:"reserve" default:"no" label:"kept to undock, tow home and moor again"`
	Opening    float64 `key:"opening" unit:"money" default:"0" min:"-1e15" max:"1e15" label:"in hand before the first movement"`
}

// Movement is money that came in or went out.
type Movement struct {
	Pot        string        `key:"pot" label:"pot"`
	Date       quantity.Date `key:"date" label:"date"`
	Amount     float64       `key:"amount" unit:"money" min:"0" max:"1e15" label:"amount"`
	Paper      string        `key:"paper" label:"paper that shows it"`
	Commitment string        `key:"commitment" optional:"yes" label:"commitment it pays" help:"for a payment"`
}

// PotState is what a pot holds on the day.
type PotState struct {
	Name       string  `key:"name" label:"pot"`
	Restricted string  `key:"restricted" optional:"yes" label:"what alone it may be spent on"`
	InHand     float64 `key:"in_hand" unit:"money" label:"in hand"`
	Committed  float64 `key:"committed" unit:"money" label:"signed for and not yet paid"`
	Reserve    float64 `key:"reserve" unit:"money" label:"reserve"`
	Free       float64 `key:"free" unit:"money" label:"free" help:"within what the pot may be spent on"`
}

// potIndex finds pots by name.
func potIndex(pots []Pot) (map[string]int, error) {
	if len(pots) == 0 {
		return nil, field.Refuse("pots", "pots is empty: name at least one pot that money lies in")
	}
	at := map[string]int{}
	for i, p := range pots {
		if p.Name == "" {
			return nil, field.Refuse(fmt.Sprintf("pots[%d].name", i), "pots[%d] has no name", i)
		}
		if _, twice := at[p.Name]; twice {
			return nil, field.Refuse(fmt.Sprintf("pots[%d].name", i), "pot %q stands twice", p.Name)
		}
		at[p.Name] = i
	}
	return at, nil
}

// check refuses a movement without pot, date or paper, or one that runs backwards.
func (m Movement) check(list string, i int, pots map[string]int) error {
	at := func(key string) string { return fmt.Sprintf("%s[%d].%s", list, i, key) }
	switch _, known := pots[m.Pot]; {
	case !known:
		return field.Refuse(at("pot"), "%s[%d]: there is no pot %q", list, i, m.Pot)
	case m.Date.IsZero():
		return field.Refuse(at("date"), "%s[%d] has no date", list, i)
	case m.Paper == "":
		return field.Refuse(at("paper"), "%s[%d] names no paper: every movement needs one", list, i)
	case m.Amount < 0:
		return field.Refuse(at("amount"), "%s[%d]: amount must not be negative (%v); money back is a movement the other way", list, i, field.Q(at("amount"), m.Amount, "money"))
	}
	return nil
}
