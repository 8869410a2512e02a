package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Deferred is something left undone on purpose, with the day it must be looked at again.
type Deferred struct {
	What string `key:"what" label:"what"`
	ship.Place
	Work    string        `key:"work" label:"work" of:"work" optional:"yes"`
	Found   string        `key:"found" label:"found report" of:"found" optional:"yes"`
	Why     string        `key:"why" label:"why it was left" optional:"yes"`
	Who     string        `key:"who" label:"decided by" optional:"yes"`
	Since   quantity.Date `key:"since" label:"since" optional:"yes"`
	Review  quantity.Date `key:"review" label:"look again by" optional:"yes"`
	Due     quantity.Date `key:"due" label:"do by" optional:"yes"`
	Cost    *float64      `key:"cost" unit:"money" label:"cost" min:"0"`
	InDock  *bool         `key:"only_in_dock" label:"can only be done in dock"`
	Monitor string        `key:"monitor" label:"watched how" optional:"yes"`
	State   string        `key:"state" label:"state" enum:"waiting|done|dropped" default:"waiting"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
