package plan

import "oakum/quantity"

// Pledge is money promised. A conditional one counts as nothing until its condition is met.
type Pledge struct {
	Giver       string        `key:"giver" label:"promised by" optional:"yes"`
	Pot         string        `key:"pot" label:"pot" of:"pot" optional:"yes"`
	Amount      *float64      `key:"amount" unit:"money" label:"amount" min:"0"`
	Promised    quantity.Date `key:"promised" label:"promised" optional:"yes"`
	Due         quantity.Date `key:"due" label:"due" optional:"yes"`
	Conditional *bool         `key:"conditional" label:"conditional"`
	Condition   string        `key:"condition" label:"condition" optional:"yes"`
	Met         quantity.Date `key:"met" label:"condition met" optional:"yes"`
	Chance      *float64      `key:"chance" unit:"-" label:"chance that it comes" min:"0" max:"1"`
	Received    *float64      `key:"received" unit:"money" label:"received so far" min:"0"`
	State       string        `key:"state" label:"state" enum:"open|paid|withdrawn" default:"open"`
	Written     *bool         `key:"written" label:"in writing"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
