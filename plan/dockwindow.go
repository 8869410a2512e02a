package plan

import "oakum/quantity"

// DockWindow is a span of days in which a dock is free.
type DockWindow struct {
	Dock    string        `key:"dock" label:"dock" of:"dock"`
	Opens   quantity.Date `key:"opens" label:"from" optional:"yes"`
	Closes  quantity.Date `key:"closes" label:"to" optional:"yes"`
	Days    *float64      `key:"days" unit:"d" label:"days offered" over:"0" max:"2000"`
	Extra   *float64      `key:"extra_days" unit:"d" label:"days that may be added" min:"0" max:"2000"`
	HeldTo  quantity.Date `key:"held_until" label:"held for us until" optional:"yes"`
	Deposit *float64      `key:"deposit" unit:"money" label:"deposit" min:"0"`
	Chance  *float64      `key:"chance" unit:"-" label:"chance that it holds" min:"0" max:"1"`
	State   string        `key:"state" label:"state" enum:"offered|held|signed|lost|past" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
