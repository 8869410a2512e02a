package ship

import "oakum/quantity"

// Weight is one entry of the weight register: a part of the light ship, or something that came aboard or went ashore on a day.
type Weight struct {
	Name    string        `key:"name" label:"what"`
	Group   string        `key:"group" label:"group" enum:"light ship|fixed ballast|equipment|exhibit|stores|people|growth|water|other" optional:"yes"`
	Mass    *float64      `key:"mass" unit:"t" label:"mass" help:"negative for what went ashore"`
	LCG     *float64      `key:"lcg" unit:"m" label:"centre forward of the after perpendicular"`
	VCG     *float64      `key:"vcg" unit:"m" label:"centre above the baseline"`
	TCG     *float64      `key:"tcg" unit:"m" label:"centre to port" help:"negative to starboard"`
	X0      *float64      `key:"x0" unit:"m" label:"after end"`
	X1      *float64      `key:"x1" unit:"m" label:"fore end"`
	Added   quantity.Date `key:"added" label:"came aboard" help:"left out: always there" optional:"yes"`
	Removed quantity.Date `key:"removed" label:"went ashore" optional:"yes"`
	Paper   string        `key:"paper" label:"paper" of:"document" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
