package ship

import "oakum/quantity"

// Repair is a temporary repair: it holds until its date, and then asks to be looked at.
type Repair struct {
	Name string `key:"name" label:"what"`
	Place
	Kind      string        `key:"type" label:"type" enum:"cement box|patch|bolted patch|wooden plug|epoxy|clamp|sealant|weld|other" optional:"yes"`
	Fitted    quantity.Date `key:"fitted" label:"fitted" optional:"yes"`
	Expires   quantity.Date `key:"expires" label:"good until" help:"common practice: ten years at the very most" optional:"yes"`
	Closes    string        `key:"closes" label:"what it closes" help:"the leak, crack or hole, and its size" optional:"yes"`
	Area      *float64      `key:"area" unit:"mm2" label:"area of the hole behind" min:"0"`
	FittedBy  string        `key:"fitted_by" label:"fitted by" optional:"yes"`
	State     string        `key:"state" label:"state" enum:"dry|weeping|leaking|gone|replaced|unknown" optional:"yes"`
	LastSeen  quantity.Date `key:"last_seen" label:"last looked at" optional:"yes"`
	Permanent string        `key:"permanent" label:"what will replace it" optional:"yes"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
