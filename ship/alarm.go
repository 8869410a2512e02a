package ship

import "oakum/quantity"

// Alarm watches for water, fire, list or lost power.
type Alarm struct {
	Name     string        `key:"name" label:"name"`
	Watches  string        `key:"watches" label:"watches for" enum:"bilge water|fire|smoke|intruder|list|power|impressed current|other" optional:"yes"`
	Space    string        `key:"space" label:"space" optional:"yes"`
	Height   *float64      `key:"height" unit:"m" label:"set at" help:"above the baseline"`
	Reaches  string        `key:"reaches" label:"who it reaches" help:"a person by day and by night, or a bell on an empty ship" optional:"yes"`
	Response *float64      `key:"response" unit:"h" label:"until somebody is aboard" min:"0" max:"240"`
	Tested   quantity.Date `key:"last_tested" label:"last tested" optional:"yes"`
	State    string        `key:"state" label:"state" enum:"works|faulty|switched off|unknown" optional:"yes"`
	Power    string        `key:"power" label:"power" enum:"shore|battery|both" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
