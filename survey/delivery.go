package survey

import "oakum/quantity"

// Delivery is one lot of entries that a phone made without a network and handed over later. It keeps the phone's own time beside the program's, and the
// key of each entry, so that the same lot sent twice lands once.
type Delivery struct {
	Device   string        `key:"device" label:"phone"`
	Who      string        `key:"who" label:"carried by" optional:"yes"`
	Date     quantity.Date `key:"date" label:"handed over" optional:"yes"`
	Sent     string        `key:"sent" label:"handed over, by the phone's clock" optional:"yes"`
	Received string        `key:"received" label:"handed over, by the program's clock" optional:"yes"`
	Behind   *float64      `key:"behind" unit:"s" label:"how far the phone's clock is behind" help:"negative where it is ahead"`
	Keys     []string      `key:"keys" label:"keys of the entries" optional:"yes"`
	Landed   *int          `key:"landed" label:"entries that landed" min:"0"`
	Clashes  *int          `key:"clashes" label:"second edits kept beside" min:"0"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}

// Clash is an edit that was made on a version which somebody else had changed in the meantime. The record stands as it was; the edit is kept here until
// somebody says which is right.
type Clash struct {
	Of       string        `key:"about" label:"about" of:"*"`
	Kind     string        `key:"rows_of" label:"kind of record" optional:"yes"`
	Key      string        `key:"key" label:"key of the entry" optional:"yes"`
	Who      string        `key:"who" label:"edited by" optional:"yes"`
	Date     quantity.Date `key:"date" label:"handed over" optional:"yes"`
	Made     string        `key:"made" label:"made, by the phone's clock" optional:"yes"`
	Base     *int          `key:"made_on" label:"made on version" min:"0"`
	Standing *int          `key:"stood" label:"version that stood" min:"0"`
	Edit     string        `key:"edit" label:"the edit, as JSON"`
	Settled  quantity.Date `key:"settled" label:"settled" optional:"yes"`
	Taken    string        `key:"taken" label:"what was taken" enum:"the record as it stood|the edit|both, by hand" optional:"yes"`
	Settler  string        `key:"settled_by" label:"settled by" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
