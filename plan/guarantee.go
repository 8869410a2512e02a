package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Guarantee is what somebody answers for after the work is done, and until when. What it covers is looked at again before it runs out.
type Guarantee struct {
	What string `key:"what" label:"what is guaranteed"`
	ship.Place
	About   []string      `key:"about" label:"about" of:"*" optional:"yes"`
	Giver   string        `key:"giver" label:"given by" optional:"yes"`
	Begins  quantity.Date `key:"begins" label:"from" optional:"yes"`
	Ends    quantity.Date `key:"ends" label:"until" help:"common practice where nothing is written: six months" optional:"yes"`
	Look    quantity.Date `key:"look" label:"look at it by" help:"early enough to claim" optional:"yes"`
	Looked  quantity.Date `key:"looked" label:"looked at" optional:"yes"`
	Terms   string        `key:"terms" label:"what it covers, and what ends it" optional:"yes"`
	Claimed quantity.Date `key:"claimed" label:"claimed" optional:"yes"`
	State   string        `key:"state" label:"state" enum:"running|claimed|made good|ended" default:"running"`
	Paper   string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
