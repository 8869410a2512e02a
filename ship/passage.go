package ship

import "oakum/quantity"

// Passage is an opening between two spaces of the ship by which water can run on: a door, a hatch, a gap under a door, a cable hole.
type Passage struct {
	Name       string        `key:"name" label:"name"`
	What       string        `key:"what" label:"what it is" enum:"door|watertight door|hatch|manhole|valve|gap|cable or pipe hole|trunk|other" optional:"yes"`
	From       string        `key:"space" label:"between the space" of:"compartment"`
	To         string        `key:"into" label:"and the space" of:"compartment"`
	X          *float64      `key:"x" unit:"m" label:"forward of the after perpendicular" help:"left out: where the two spaces meet"`
	Y          *float64      `key:"y" unit:"m" label:"to port of the centre line" help:"left out: on the centre line"`
	Sill       *float64      `key:"sill" unit:"m" label:"sill" help:"above the baseline: the height at which water begins to run through"`
	Width      *float64      `key:"width" unit:"m" label:"clear width" over:"0" max:"20"`
	Height     *float64      `key:"height" unit:"m" label:"clear height over the sill" over:"0" max:"10"`
	Area       *float64      `key:"area" unit:"mm2" label:"area" help:"of a hatch that lies flat, a hole or a gap, instead of a width" over:"0" max:"20e6"`
	State      string        `key:"state" label:"state" enum:"open|shut and tight|shut but leaks|unknown" help:"unknown counts as open" optional:"yes"`
	LeakArea   *float64      `key:"leak_area" unit:"mm2" label:"gap that is left when it is shut" over:"0" max:"20e6"`
	LastProven quantity.Date `key:"last_proven" label:"last shut and proven" optional:"yes"`
	Notes      string        `key:"notes" label:"notes" optional:"yes"`
}
