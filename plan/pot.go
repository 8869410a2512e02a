package plan

import "oakum/quantity"

// Pot is a sum kept apart, with the rules it may be spent under.
type Pot struct {
	Name        string        `key:"name" label:"pot"`
	Restricted  *bool         `key:"restricted" label:"restricted"`
	Restriction string        `key:"restriction" label:"what it is for" optional:"yes"`
	Groups      []string      `key:"groups" label:"pays for groups of work" help:"glands, shafts, coating" optional:"yes"`
	Works       []string      `key:"works" label:"pays for works" of:"work" optional:"yes"`
	Matters     []string      `key:"matters" label:"pays for matters" of:"matter" optional:"yes"`
	NotBefore   quantity.Date `key:"not_before" label:"not before" optional:"yes"`
	NotAfter    quantity.Date `key:"not_after" label:"not after" optional:"yes"`
	Opening     *float64      `key:"opening" unit:"money" label:"in hand at the start"`
	OpenedOn    quantity.Date `key:"opened_on" label:"on the day" optional:"yes"`
	Reserve     *bool         `key:"reserve" label:"kept for undocking, tow home and mooring"`
	Giver       string        `key:"giver" label:"set up by" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
