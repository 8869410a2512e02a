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

// guaranteeMonths is how long a yard answers for its work where nothing is written: common practice.
const guaranteeMonths = 6

// Until is the day it runs out, and whether that is written anywhere.
func (g Guarantee) Until() (ends quantity.Date, written bool) {
	if !g.Ends.IsZero() || g.Begins.IsZero() {
		return g.Ends, true
	}
	return quantity.DateOf(g.Begins.Last().AddDate(0, guaranteeMonths, 0)), false
}

// LookBy is the day to look at it by: the one set, or else a month before it runs out.
func (g Guarantee) LookBy() quantity.Date {
	if !g.Look.IsZero() {
		return g.Look
	}
	ends, _ := g.Until()
	if ends.IsZero() {
		return ends
	}
	return ends.AddDays(-30)
}
