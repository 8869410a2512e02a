package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Activity is one bar of the calendar.
type Activity struct {
	Name string `key:"name" label:"activity"`
	ship.Place
	Low       *float64      `key:"low" unit:"d" label:"days, low" min:"0" max:"5000"`
	Likely    *float64      `key:"likely" unit:"d" label:"days, likely" min:"0" max:"5000"`
	High      *float64      `key:"high" unit:"d" label:"days, high" min:"0" max:"5000"`
	After     []string      `key:"after" label:"after" of:"activity" optional:"yes"`
	Phase     string        `key:"phase" label:"phase" enum:"before|tow|in dock|after" optional:"yes"`
	Work      string        `key:"work" label:"work" of:"work" optional:"yes"`
	Crews     []string      `key:"crews" label:"crews or gear it takes" optional:"yes"`
	CrewCount []int         `key:"crew_count" label:"how many of each" optional:"yes"`
	Dry       *bool         `key:"dry_weather" label:"needs paint weather"`
	Earliest  quantity.Date `key:"earliest" label:"not before" optional:"yes"`
	Deadline  quantity.Date `key:"deadline" label:"not after" optional:"yes"`
	Started   quantity.Date `key:"started" label:"started" optional:"yes"`
	Finished  quantity.Date `key:"finished" label:"finished" optional:"yes"`
	Hold      *bool         `key:"hold_point" label:"stop until somebody has looked"`
	Who       string        `key:"who" label:"who" optional:"yes"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
