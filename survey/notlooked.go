package survey

import (
	"oakum/quantity"
	"oakum/ship"
)

// NotLooked says that a place was not looked at, and why.
type NotLooked struct {
	Seen
	ship.Place
	What   string        `key:"what" label:"what was not looked at"`
	Why    string        `key:"why" label:"why" enum:"no access|covered|not opened|water|no time|no money|unsafe|forgotten|unknown" optional:"yes"`
	Behind string        `key:"behind" label:"behind" of:"*" optional:"yes"`
	Area   *float64      `key:"area" unit:"m2" label:"area" min:"0"`
	Last   quantity.Date `key:"last_looked" label:"last looked at" optional:"yes"`
	Needs  string        `key:"needs" label:"what it would take" optional:"yes"`
	Price  *float64      `key:"price" unit:"money" label:"price of looking" min:"0"`
	Notes  string        `key:"notes" label:"notes" optional:"yes"`
}
