package plan

import "oakum/quantity"

// Watch says who watches what, and until when: an idle ship is lost when nobody was given the watch.
type Watch struct {
	Space    string        `key:"space" label:"space or duty"`
	Who      string        `key:"who" label:"who" optional:"yes"`
	Begins   quantity.Date `key:"begins" label:"from" optional:"yes"`
	Ends     quantity.Date `key:"ends" label:"to" optional:"yes"`
	Hours    string        `key:"hours" label:"hours" optional:"yes"`
	Reach    string        `key:"reach" label:"reached by" optional:"yes"`
	Occasion string        `key:"occasion" label:"occasion" enum:"berth|tow|in dock|flooding|storm|closed season" optional:"yes"`
	Look     string        `key:"looks_for" label:"looks for" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
