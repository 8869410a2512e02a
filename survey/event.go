package survey

import (
	"oakum/quantity"
	"oakum/ship"
)

// Event is something that befell her and may have left its mark: a storm, a grounding, a fire.
type Event struct {
	Seen
	ship.Place
	What     string        `key:"what" label:"what happened"`
	Sort     string        `key:"sort" label:"sort" enum:"storm|grounding|collision|fire|flooding|ice|voyage|laid up|changed hands|other" default:"other"`
	Until    quantity.Date `key:"until" label:"until" optional:"yes"`
	Damage   string        `key:"damage" label:"damage, as far as known" optional:"yes"`
	Repaired string        `key:"repaired" label:"what was done about it" optional:"yes"`
	Paper    string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
