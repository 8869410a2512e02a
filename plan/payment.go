package plan

import "oakum/quantity"

// Payment is money that went out.
type Payment struct {
	Date       quantity.Date `key:"date" label:"date" optional:"yes"`
	Pot        string        `key:"pot" label:"pot" of:"pot" optional:"yes"`
	Amount     *float64      `key:"amount" unit:"money" label:"amount"`
	To         string        `key:"to" label:"to" optional:"yes"`
	What       string        `key:"what" label:"for" optional:"yes"`
	Commitment string        `key:"commitment" label:"of commitment" of:"commitment" optional:"yes"`
	Work       string        `key:"work" label:"work" of:"work" optional:"yes"`
	Paper      string        `key:"paper" label:"paper" optional:"yes"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
