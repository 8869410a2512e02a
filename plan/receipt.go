package plan

import "oakum/quantity"

// Receipt is money that came in.
type Receipt struct {
	Pot    string        `key:"pot" label:"pot" of:"pot" optional:"yes"`
	Date   quantity.Date `key:"date" label:"date" optional:"yes"`
	Amount *float64      `key:"amount" unit:"money" label:"amount"`
	Kind   string        `key:"type" label:"type" enum:"gift|legacy|giving|tickets|grant|loan|sale|interest|transfer|other" optional:"yes"`
	Giver  string        `key:"giver" label:"from" optional:"yes"`
	Pledge string        `key:"pledge" label:"fulfils pledge" of:"pledge" optional:"yes"`
	Grant  string        `key:"grant" label:"of grant" of:"grant" optional:"yes"`
	For    string        `key:"given_for" label:"given for" help:"the part of the ship or the work that the giver chose" of:"*" optional:"yes"`
	Thanks string        `key:"thanked_as" label:"thanked as" help:"the name that others may read; nobody is named where it is empty" optional:"yes"`
	Paper  string        `key:"paper" label:"paper" optional:"yes"`
	Notes  string        `key:"notes" label:"notes" optional:"yes"`
}
