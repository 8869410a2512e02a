package plan

import "oakum/quantity"

// Day is one day's log in dock.
type Day struct {
	Date     quantity.Date `key:"date" label:"date"`
	Number   *int          `key:"number" label:"day in dock" min:"0" max:"5000"`
	Weather  string        `key:"weather" label:"weather" optional:"yes"`
	Lost     *float64      `key:"lost" unit:"h" label:"hours lost to weather" min:"0" max:"24"`
	Men      *int          `key:"people" label:"people at work" min:"0" max:"5000"`
	Hours    *float64      `key:"hours" unit:"h" label:"hours worked" min:"0"`
	Done     string        `key:"done" label:"done" optional:"yes"`
	Problems string        `key:"problems" label:"problems" optional:"yes"`
	Decided  string        `key:"decided" label:"decided" optional:"yes"`
	Visitors string        `key:"visitors" label:"visitors" optional:"yes"`
	Level    *float64      `key:"level" unit:"m" label:"water in dock" min:"-20" max:"30"`
	Spent    *float64      `key:"spent" unit:"money" label:"spent to date" min:"0"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
