package survey

import "oakum/ship"

// AnodeSeen is what a diver or a look in dock said of an anode or a group of them.
type AnodeSeen struct {
	Seen
	Anode string `key:"anode" label:"anode" of:"anode" optional:"yes"`
	ship.Place
	ShareLeft *float64 `key:"share_left" unit:"-" label:"share left" help:"of the mass when new" min:"0" max:"1"`
	MassLeft  *float64 `key:"mass_left" unit:"kg" label:"mass left" min:"0"`
	Counted   *int     `key:"counted" label:"how many were seen" min:"0" max:"2000"`
	Missing   *int     `key:"missing" label:"how many are gone" min:"0" max:"2000"`
	Surface   string   `key:"surface" label:"surface" enum:"active|passive|painted over|loose|gone|unknown" optional:"yes"`
	Photo     string   `key:"photo" label:"photograph" of:"photo" optional:"yes"`
	Notes     string   `key:"notes" label:"notes" optional:"yes"`
}
