package plan

import "oakum/quantity"

// Grant is money given for named work, often against money of one's own and paid after it is spent.
type Grant struct {
	Name       string        `key:"name" label:"grant"`
	Giver      string        `key:"giver" label:"giver" optional:"yes"`
	Pot        string        `key:"pot" label:"pot" of:"pot" optional:"yes"`
	Cap        *float64      `key:"cap" unit:"money" label:"at most" min:"0"`
	Match      *float64      `key:"match" unit:"-" label:"own money wanted for each unit given" help:"1 for one to one" min:"0" max:"20"`
	Arrears    *bool         `key:"arrears" label:"paid in arrears"`
	PaidAfter  *float64      `key:"paid_after" unit:"d" label:"days until a claim is paid" min:"0" max:"1000"`
	State      string        `key:"state" label:"state" enum:"idea|applied|awarded|refused|closed" default:"idea"`
	Chance     *float64      `key:"chance" unit:"-" label:"chance of award" min:"0" max:"1"`
	Deadline   quantity.Date `key:"deadline" label:"apply by" optional:"yes"`
	Award      quantity.Date `key:"award" label:"awarded, or expected" optional:"yes"`
	MatchBy    quantity.Date `key:"match_by" label:"match to be shown by" optional:"yes"`
	SpendFrom  quantity.Date `key:"spend_from" label:"may be spent from" optional:"yes"`
	SpendBy    quantity.Date `key:"spend_by" label:"to be spent by" optional:"yes"`
	Groups     []string      `key:"groups" label:"for groups of work" optional:"yes"`
	Works      []string      `key:"works" label:"for works" of:"work" optional:"yes"`
	Claimed    *float64      `key:"claimed" unit:"money" label:"claimed" min:"0"`
	Paid       *float64      `key:"paid" unit:"money" label:"paid" min:"0"`
	Covenant   *float64      `key:"covenant" unit:"y" label:"binds for" min:"0" max:"200"`
	Conditions string        `key:"conditions" label:"conditions" optional:"yes"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
