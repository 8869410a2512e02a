package survey

import (
	"oakum/quantity"
	"oakum/ship"
)

// Photo is one photograph with its place, direction and scale.
type Photo struct {
	Seen
	ship.Place
	Title     string        `key:"title" label:"what it shows" optional:"yes"`
	File      string        `key:"file" label:"file" optional:"yes"`
	SHA256    string        `key:"sha256" label:"SHA-256 of the file" optional:"yes"`
	Small     string        `key:"small_sha256" label:"SHA-256 of the copy for the sheet" optional:"yes"`
	Direction string        `key:"direction" label:"looking" enum:"forward|aft|port|starboard|up|down|at the plate|unknown" optional:"yes"`
	Scale     string        `key:"scale" label:"scale" help:"what in the picture gives the size" optional:"yes"`
	Of        string        `key:"about" label:"about" of:"*" optional:"yes"`
	Moment    string        `key:"moment" label:"moment" enum:"before|as found|during|as left|after" optional:"yes"`
	Pair      string        `key:"pair" label:"pair of" of:"photo" optional:"yes"`
	Rights    string        `key:"rights" label:"rights" optional:"yes"`
	Consent   string        `key:"consent" label:"people in it agreed" enum:"yes|no|nobody in it|unknown" optional:"yes"`
	Read      quantity.Date `key:"added" label:"added" optional:"yes"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
