package survey

import (
	"oakum/quantity"
	"oakum/ship"
)

// Leak is water found coming in.
type Leak struct {
	Seen
	ship.Place
	Number   string        `key:"number" label:"number" optional:"yes"`
	Rate     *float64      `key:"rate" unit:"L/h" label:"rate" min:"0"`
	Head     *float64      `key:"head" unit:"m" label:"below the water" min:"0" max:"50"`
	Source   string        `key:"source" label:"through" enum:"plate|rivet|seam|crack|gland|valve|blank|pipe|doubler|deck|rain|unknown" optional:"yes"`
	Of       string        `key:"part" label:"part" of:"*" help:"the gland, opening or doubler" optional:"yes"`
	Cause    string        `key:"cause" label:"cause" optional:"yes"`
	State    string        `key:"state" label:"state" enum:"running|weeping|stopped|patched|unknown" optional:"yes"`
	Stopped  quantity.Date `key:"stopped" label:"stopped" optional:"yes"`
	Repair   string        `key:"repair" label:"repair" of:"repair|doubler" optional:"yes"`
	DockItem string        `key:"work" label:"work in dock" of:"work" optional:"yes"`
	Photo    string        `key:"photo" label:"photograph" of:"photo" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
