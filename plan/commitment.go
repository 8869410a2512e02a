package plan

import "oakum/quantity"

// Commitment is money signed for: a contract, an order, a change order.
type Commitment struct {
	Date      quantity.Date `key:"date" label:"date" optional:"yes"`
	To        string        `key:"to" label:"to" optional:"yes"`
	What      string        `key:"what" label:"for" optional:"yes"`
	Pot       string        `key:"pot" label:"pot" of:"pot|grant" optional:"yes"`
	Work      string        `key:"work" label:"work" of:"work" optional:"yes"`
	Change    string        `key:"change" label:"change order" of:"change" optional:"yes"`
	Amount    *float64      `key:"amount" unit:"money" label:"amount"`
	Retention *float64      `key:"retention" unit:"-" label:"share kept back" min:"0" max:"0.5"`
	Due       quantity.Date `key:"due" label:"falls due" optional:"yes"`
	Paper     string        `key:"paper" label:"paper" optional:"yes"`
	State     string        `key:"state" label:"state" enum:"signed|part paid|settled|cancelled" default:"signed"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
