package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Found is one condition-found report. What was measured stands in its own field, so that triggers can read it.
type Found struct {
	Number string        `key:"number" label:"number" optional:"yes"`
	Date   quantity.Date `key:"date" label:"date" optional:"yes"`
	Who    string        `key:"who" label:"found by" optional:"yes"`
	ship.Place
	Finding     string        `key:"finding" label:"what was found" enum:"plate|pit|crack|through|doubler|opening|gland|bearing|shaft|propeller|rudder|coating|anode|fouling|frames|timber|other"`
	Against     string        `key:"against" label:"against expectation" enum:"better|as expected|worse|unknown" optional:"yes"`
	Condition   string        `key:"condition" label:"condition, in words" optional:"yes"`
	Thickness   *float64      `key:"thickness" unit:"mm" label:"thickness" min:"0" max:"500"`
	ShareLost   *float64      `key:"share_lost" unit:"-" label:"share lost" min:"-1" max:"1"`
	Area        *float64      `key:"area" unit:"m2" label:"area" min:"0"`
	Length      *float64      `key:"length" unit:"m" label:"length" min:"0"`
	Depth       *float64      `key:"depth" unit:"mm" label:"depth" min:"0"`
	Clearance   *float64      `key:"clearance" unit:"mm" label:"clearance" min:"0"`
	Share       *float64      `key:"share" unit:"-" label:"share affected" min:"0" max:"1"`
	Count       *int          `key:"count" label:"how many" min:"0"`
	Part        string        `key:"part" label:"part" of:"*" optional:"yes"`
	Work        string        `key:"work" label:"item" of:"work" optional:"yes"`
	Cause       string        `key:"cause" label:"cause" optional:"yes"`
	Proposed    string        `key:"proposed" label:"proposed repair" optional:"yes"`
	Quantity    *float64      `key:"quantity" label:"quantity" min:"0"`
	Per         string        `key:"per" label:"unit" optional:"yes"`
	Cost        *float64      `key:"cost" unit:"money" label:"cost" min:"0"`
	Days        *float64      `key:"days" unit:"d" label:"days" min:"0" max:"1000"`
	Disposition string        `key:"disposition" label:"what is done" enum:"open|repair|renew|insert|clad|double|fill|leave|monitor|defer" default:"open"`
	Decider     string        `key:"decided_by" label:"decided by" optional:"yes"`
	Decided     quantity.Date `key:"decided_on" label:"decided on" optional:"yes"`
	AsLeft      string        `key:"as_left" label:"as left" optional:"yes"`
	Photos      []string      `key:"photos" label:"photographs" of:"photo" optional:"yes"`
	Trigger     string        `key:"trigger" label:"trigger" of:"trigger" optional:"yes"`
	Notes       string        `key:"notes" label:"notes" optional:"yes"`
}
