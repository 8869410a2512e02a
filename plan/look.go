package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Look is a way of finding out before deciding: a dive, a gauging campaign, one gland opened. What it is worth is reckoned against its price.
type Look struct {
	Name string `key:"name" label:"look"`
	ship.Place
	Kind     string        `key:"type" label:"type" enum:"dive|gauging|gland|tank entry|valve trial|inclining|potential survey|depth survey|other" optional:"yes"`
	Matter   string        `key:"matter" label:"matter" of:"matter" optional:"yes"`
	About    []string      `key:"about" label:"parts it tells about" of:"*" optional:"yes"`
	Price    *float64      `key:"price" unit:"money" label:"price" min:"0"`
	Days     *float64      `key:"days" unit:"d" label:"days until it tells" min:"0" max:"2000"`
	Readings *int          `key:"readings" label:"readings" min:"0"`
	Error    *float64      `key:"error" unit:"mm" label:"error of a reading" min:"0"`
	Right    *float64      `key:"right" unit:"-" label:"chance that it tells right" min:"0" max:"1"`
	Risk     string        `key:"risk" label:"risk in looking" optional:"yes"`
	Ordered  quantity.Date `key:"ordered" label:"ordered" optional:"yes"`
	Done     quantity.Date `key:"done" label:"done" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
