package plan

import "oakum/quantity"

// Rate is the price of a unit of work.
type Rate struct {
	Name   string        `key:"name" label:"what"`
	Per    string        `key:"per" label:"per" help:"kg, m2, day, hour, piece"`
	Low    *float64      `key:"low" unit:"money" label:"low" min:"0"`
	Likely *float64      `key:"likely" unit:"money" label:"likely" min:"0"`
	High   *float64      `key:"high" unit:"money" label:"high" min:"0"`
	Dated  quantity.Date `key:"dated" label:"prices of" optional:"yes"`
	Source string        `key:"source" label:"source" optional:"yes"`
	Notes  string        `key:"notes" label:"notes" optional:"yes"`
}
