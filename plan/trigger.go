package plan

import (
	"oakum/quantity"
	"oakum/ship"
)

// Trigger is agreed before the water goes: if this is found there beyond that limit, then this course, worth so much. It runs both ways: worse
// calls money, better releases it.
type Trigger struct {
	Name string `key:"name" label:"trigger" optional:"yes"`
	ship.Place
	Finding   string        `key:"finding" label:"if this is found" enum:"plate|pit|crack|through|doubler|opening|gland|bearing|shaft|propeller|rudder|coating|anode|fouling|frames|timber|other"`
	Measure   string        `key:"measure" label:"measured as" enum:"thickness|share lost|area|length|depth|count|clearance|share|seen" default:"seen"`
	Limit     *float64      `key:"limit" label:"limit"`
	Unit      string        `key:"limit_unit" label:"unit of the limit" enum:"mm|m|m2|-|%|in|ft2" optional:"yes"`
	Direction string        `key:"direction" label:"direction" enum:"worse|better" default:"worse"`
	When      string        `key:"when" label:"it is lit when the finding is" enum:"above|below|at all" default:"above"`
	Course    string        `key:"course" label:"then" of:"course|work" optional:"yes"`
	Then      string        `key:"then" label:"then, in words" optional:"yes"`
	Money     *float64      `key:"money" unit:"money" label:"worth up to" help:"called when worse, released when better" min:"0"`
	Days      *float64      `key:"days" unit:"d" label:"days" min:"0" max:"1000"`
	Decider   string        `key:"decided_by" label:"decided by" optional:"yes"`
	Hours     *float64      `key:"hours" unit:"h" label:"within" min:"0" max:"2000"`
	Agreed    quantity.Date `key:"agreed" label:"agreed" optional:"yes"`
	Chance    *float64      `key:"chance" unit:"-" label:"chance, as guessed" min:"0" max:"1"`
	State     string        `key:"state" label:"state" enum:"ready|lit|answered|withdrawn" default:"ready"`
	Notes     string        `key:"notes" label:"notes" optional:"yes"`
}
