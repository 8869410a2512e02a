package survey

import "oakum/ship"

// Film is one set of dry-film readings on one area.
type Film struct {
	Seen
	ship.Place
	Zone       string    `key:"zone" label:"zone" of:"coating_zone" optional:"yes"`
	Coat       string    `key:"coat" label:"coat" of:"coat" optional:"yes"`
	Readings   []float64 `key:"readings" unit:"um" label:"readings" min:"0" max:"20000" optional:"yes"`
	Nominal    *float64  `key:"nominal" unit:"um" label:"nominal film" over:"0" max:"20000"`
	Rule       string    `key:"rule" label:"accepted by" enum:"iso-19840|pspc-90-10|pa2" optional:"yes"`
	Instrument string    `key:"instrument" label:"gauge" optional:"yes"`
	Holiday    string    `key:"holiday" label:"holiday test" enum:"pass|fail|not done" optional:"yes"`
	Notes      string    `key:"notes" label:"notes" optional:"yes"`
}
