package plan

import "oakum/quantity"

// Decision is what was settled, by whom and why, with what was turned down.
type Decision struct {
	Matter   string        `key:"matter" label:"matter" of:"matter" optional:"yes"`
	Course   string        `key:"course" label:"course taken" of:"course" optional:"yes"`
	What     string        `key:"what" label:"what was decided" optional:"yes"`
	Date     quantity.Date `key:"date" label:"date" optional:"yes"`
	Who      string        `key:"who" label:"decided by" optional:"yes"`
	Why      string        `key:"why" label:"why" optional:"yes"`
	Rejected []string      `key:"rejected" label:"turned down" of:"course" optional:"yes"`
	Against  string        `key:"against" label:"who was against, and why" optional:"yes"`
	Until    quantity.Date `key:"review" label:"to be looked at again" optional:"yes"`
	Paper    string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
