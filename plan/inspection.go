package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Inspection is something that must be looked at by a day: a hold point in dock, a yearly trial, a check of a part ashore.
type Inspection struct {
	What string `key:"what" label:"what"`
	ship.Place
	About    string        `key:"about" label:"about" of:"*" optional:"yes"`
	Due      quantity.Date `key:"due" label:"due" optional:"yes"`
	Every    *float64      `key:"every" unit:"y" label:"every" over:"0" max:"100"`
	Share    *float64      `key:"share_of_docking" unit:"-" label:"due by this share of the docking" help:"0.2 for the first fifth" min:"0" max:"1"`
	Before   *float64      `key:"before_flooding" unit:"h" label:"hours before flooding" min:"0" max:"1000"`
	Hold     *bool         `key:"hold_point" label:"work stops until it is done"`
	Activity string        `key:"activity" label:"activity" of:"activity" optional:"yes"`
	Who      string        `key:"who" label:"who" optional:"yes"`
	Done     quantity.Date `key:"done" label:"done" optional:"yes"`
	Result   string        `key:"result" label:"result" enum:"pass|fail|partly|not done" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
