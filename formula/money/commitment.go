package money

import (
	"fmt"

	"oakum/field"
	"oakum/quantity"
)

// Commitment is money signed for: a contract, an order, a change order. A credit is a negative amount.
type Commitment struct {
	Name      string        `key:"name" label:"commitment"`
	Pot       string        `key:"pot" label:"pot"`
	Date      quantity.Date `key:"date" label:"signed"`
	Amount    float64       `key:"amount" unit:"money" min:"-1e15" max:"1e15" label:"amount" help:"negative for a credit"`
	Paper     string        `key:"paper" label:"paper that shows it"`
	Due       quantity.Date `key:"due" optional:"yes" label:"falls due" help:"left out: at once"`
	Retention float64       `key:"retention" default:"0" min:"0" max:"0.5" label:"share kept back"`
	Release   quantity.Date `key:"release" optional:"yes" label:"what is kept back falls due" help:"left out: with the rest"`
}

func (c Commitment) check(i int, pots map[string]int) error {
	at := func(key string) string { return fmt.Sprintf("commitments[%d].%s", i, key) }
	switch _, known := pots[c.Pot]; {
	case c.Name == "":
		return field.Refuse(at("name"), "commitments[%d] has no name", i)
	case !known:
		return field.Refuse(at("pot"), "commitment %q: there is no pot %q", c.Name, c.Pot)
	case c.Date.IsZero():
		return field.Refuse(at("date"), "commitment %q has no date", c.Name)
	case c.Paper == "":
		return field.Refuse(at("paper"), "commitment %q names no paper", c.Name)
	}
	return nil
}

// split is what is still owed, and how much of it is kept back until the release.
func (c Commitment) split(paid float64) (open, kept float64) {
	open = c.Amount - paid
	return open, min(max(open, 0), max(c.Retention*c.Amount, 0))
}
