package plan

import "oakum/quantity"

// Matter is a question that must be settled.
type Matter struct {
	Name     string        `key:"name" label:"matter"`
	Question string        `key:"question" label:"question" optional:"yes"`
	Due      quantity.Date `key:"due" label:"to be settled by" optional:"yes"`
	Decider  string        `key:"decided_by" label:"who decides" optional:"yes"`
	State    string        `key:"state" label:"state" enum:"open|settled|dropped" default:"open"`
	Why      string        `key:"why" label:"why it matters" optional:"yes"`
	Notes    string        `key:"notes" label:"notes" optional:"yes"`
}
