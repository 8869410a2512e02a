package survey

import "oakum/ship"

// Dive is one dive or remote look under water.
type Dive struct {
	Seen
	ship.Place
	Purpose    string   `key:"purpose" label:"purpose" optional:"yes"`
	Firm       string   `key:"firm" label:"firm" optional:"yes"`
	Means      string   `key:"means" label:"means" enum:"diver|remote vehicle|sonar|camera on a pole" optional:"yes"`
	Fixing     string   `key:"fixing" label:"how position was fixed" help:"grid lines, tape from a mark, frame numbers called down" optional:"yes"`
	Visibility *float64 `key:"visibility" unit:"m" label:"visibility" min:"0" max:"50"`
	Area       *float64 `key:"area" unit:"m2" label:"area looked at" min:"0"`
	Fouling    *float64 `key:"fouling" unit:"-" label:"share fouled" min:"0" max:"1"`
	Bare       *float64 `key:"bare" unit:"-" label:"share bare of coating" min:"0" max:"1"`
	Found      string   `key:"found" label:"what was found" optional:"yes"`
	Report     string   `key:"report" label:"report" of:"document" optional:"yes"`
	Price      *float64 `key:"price" unit:"money" label:"price" min:"0"`
	Notes      string   `key:"notes" label:"notes" optional:"yes"`
}
